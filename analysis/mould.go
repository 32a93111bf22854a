package analysis

import (
	"math"

	"thawbook/analysis/moistair"
)

// mouldClass is a class of how readily a material grows mould: the rates below and from index 1, and the
// coefficients of the highest index (classes of the VTT model, about 2010).
type mouldClass struct{ k1Below, k1From, a, b, c float64 }

// sawnPine is the class taken for bare boards and hive boxes: very sensitive, pine sapwood.
var sawnPine = mouldClass{k1Below: 1, k1From: 2, a: 1, b: 7, c: 2}

// leastMouldPct is the relative humidity below which the sensitive classes never grow mould.
const leastMouldPct = 80

// criticalPct is the relative humidity of the air at a surface, in percent, from which mould grows on pine at a
// temperature in °C: −0.00267 T³ + 0.160 T² − 3.13 T + 100 up to 20 °C, 80 above, and never at or below 0 °C
// (Hukka and Viitanen 1999, Wood Science and Technology 33:475–485). It is infinite where nothing grows.
func criticalPct(tempC float64) float64 {
	switch {
	case tempC <= 0 || tempC >= 50:
		return math.Inf(1)
	case tempC > 20:
		return leastMouldPct
	}
	return math.Max(leastMouldPct, ((-0.00267*tempC+0.160)*tempC-3.13)*tempC+100)
}

// growthPerDay is how fast the mould index m (0–6) rises per day in air of a temperature, °C, and relative
// humidity, percent; 0 below the critical humidity (Hukka and Viitanen 1999, with the classes' k1 and k2).
func (c mouldClass) growthPerDay(m, tempC, relHumPct float64) float64 {
	critical := criticalPct(tempC)
	if relHumPct < critical {
		return 0
	}
	x := (critical - relHumPct) / (critical - 100)
	highest := c.a + c.b*x - c.c*x*x
	k1 := c.k1Below
	if m >= 1 {
		k1 = c.k1From
	}
	k2 := math.Max(1-math.Exp(2.3*(m-highest)), 0)
	return k1 * k2 / (7 * math.Exp(-0.68*math.Log(tempC)-13.9*math.Log(relHumPct)+66.02))
}

// declinePerHour is how fast the index falls after some hours without growth: in the first six and from the
// twenty-fourth on (Hukka and Viitanen 1999, for pine).
func declinePerHour(dryHours float64) float64 {
	switch {
	case dryHours <= 6:
		return 0.032 / 24
	case dryHours <= 24:
		return 0
	}
	return 0.016 / 24
}

// mouldIndex follows the index hour by hour along a surface's temperature and the relative humidity, percent, of
// the air at it, and gives the highest it reached; an hour that is not a number leaves it as it is. 1 is seen
// under a microscope, 3 is visible, 6 is all over.
func (c mouldClass) mouldIndex(tempC, relHumPct []float64) float64 {
	m, most, dry := 0.0, 0.0, 0.0
	for i := range tempC {
		if math.IsNaN(tempC[i]) || math.IsNaN(relHumPct[i]) {
			continue
		}
		if grown := c.growthPerDay(m, tempC[i], math.Min(relHumPct[i], 100)) / 24; grown > 0 {
			m, dry = m+grown, 0
		} else {
			dry++
			m = math.Max(m-declinePerHour(dry), 0)
		}
		most = math.Max(most, m)
	}
	return most
}

// mouldFigure is the highest mould index of a surface over the scored time, from the hourly means of its
// temperature and of the room's dew point, and with the surface and the dew point at the wet and at the dry end
// of what they may have been.
func mouldFigure(j judgement, mid, wet, dry wall) Figure {
	hours := j.scored.hours()
	dew, errK := j.room.mean.dewC.Means(hours, 0), j.room.mean.dewErrK(j.scored)
	at := func(w wall, shiftK float64) float64 {
		temps := w.surfaceC.Means(hours, 0)
		pct := make([]float64, len(temps))
		for i := range temps {
			pct[i] = 100 * moistair.SatPresWaterPa(dew[i]+shiftK) / moistair.SatPresWaterPa(temps[i])
		}
		return sawnPine.mouldIndex(temps, pct)
	}
	return enclosing(WorkedOut, at(mid, 0), at(wet, errK), at(dry, -errK))
}
