package sampledata

import (
	"math"
	"time"
)

const weatherStepMS = 10 * minuteMS

// weather is the outdoor air and the sun: straight lines between values ten minutes apart, the first at from.
type weather struct {
	from      int64
	tempC     []float64
	vapPresPa []float64
	sunWM2    []float64 // on the level
}

// moment is the weather at an instant.
type moment struct{ tempC, vapPresPa, sunWM2 float64 }

// at is the weather at an instant of the winter.
func (w *weather) at(atMS int64) moment {
	i := int((atMS - w.from) / weatherStepMS)
	part := float64((atMS-w.from)%weatherStepMS) / weatherStepMS
	between := func(v []float64) float64 { return v[i] + part*(v[i+1]-v[i]) }
	return moment{between(w.tempC), between(w.vapPresPa), between(w.sunWM2)}
}

// site is where an operation lies: its time, the stretch that is simulated, and the winter it had there.
type site struct {
	zone
	simulated span
	latitude  float64 // degrees north
	streams   uint64  // the number its random streams start from
	meanC     []anchor
	swingC    []anchor // half the daily swing under a middling sky
	spreadK   []anchor // of the dew point below the air
	airMasses []airMass
}

// anchor is a value of a season at an instant.
type anchor struct {
	atMS  int64
	value float64
}

// season interpolates between anchors.
func season(anchors []anchor, atMS int64) float64 {
	for i := 1; i < len(anchors); i++ {
		a, b := anchors[i-1], anchors[i]
		if atMS < b.atMS {
			return a.value + (b.value-a.value)*float64(atMS-a.atMS)/float64(b.atMS-a.atMS)
		}
	}
	return anchors[len(anchors)-1].value
}

// airMass is a stretch of weather unlike its season.
type airMass struct {
	span
	deltaC float64
	spread float64 // what the dew-point spread is multiplied by
}

// part is how far the air mass has arrived, 0–1; it comes and goes over eighteen hours.
func (a airMass) part(atMS int64) float64 {
	const edge = 18 * hourMS
	in := min(1, max(0, float64(atMS-a.from)/edge))
	out := min(1, max(0, float64(a.to-atMS)/edge))
	x := min(in, out)
	return x * x * (3 - 2*x)
}

// newWeather makes the outdoor air of a site: season and air masses, a synoptic and a fast wander, a
// daily swing that a cloudy sky flattens. The dew or frost point lies a wandering spread below the day's mean
// temperature and never above the air's own.
func newWeather(s *site) *weather {
	const stepS = weatherStepMS / secondMS
	synoptic := newWander(noise(s.streams+1), 2.4, 2.2*86400, stepS)
	fast := newWander(noise(s.streams+2), 0.5, 4*3600, stepS)
	sky := newWander(noise(s.streams+3), 1.5, 1.5*86400, stepS)
	damp := newWander(noise(s.streams+4), 0.45, 0.8*86400, stepS)
	w := &weather{from: s.simulated.from}
	for t := s.simulated.from; t <= s.simulated.to+weatherStepMS; t += weatherStepMS {
		clear := 1 / (1 + math.Exp(-sky.next()))
		day := season(s.meanC, t) + synoptic.next() - 2*(clear-0.5)
		spread := season(s.spreadK, t) * math.Exp(damp.next()) * (0.5 + clear)
		for _, a := range s.airMasses {
			day += a.deltaC * a.part(t)
			spread *= 1 + (a.spread-1)*a.part(t)
		}
		swing := season(s.swingC, t) * (0.3 + 1.4*clear) * math.Cos(2*math.Pi*(s.hourOfDay(t)-14.5)/24)
		tempC := day + swing + fast.next()
		w.tempC = append(w.tempC, tempC)
		w.vapPresPa = append(w.vapPresPa, satPresPa(min(day+0.3*swing-spread, tempC-0.1)))
		w.sunWM2 = append(w.sunWM2, clearSunWM2(s.sunHeight(t))*(0.2+0.8*clear))
	}
	return w
}

// hourOfDay is the winter time's hour, 0–24.
func (s *site) hourOfDay(atMS int64) float64 {
	day := (atMS + s.winterMS) % dayMS
	return float64(day) / hourMS
}

// sunHeight is the sine of the sun's height, by its declination (Cooper 1969) and the winter time's hour.
func (s *site) sunHeight(atMS int64) float64 {
	const degree = math.Pi / 180
	n := float64(time.UnixMilli(atMS).UTC().YearDay())
	declination := 23.45 * degree * math.Sin(2*math.Pi*(284+n)/365)
	hour := 15 * degree * (s.hourOfDay(atMS) - 12)
	lat := s.latitude * degree
	return math.Sin(lat)*math.Sin(declination) + math.Cos(lat)*math.Cos(declination)*math.Cos(hour)
}

// clearSunWM2 is what a clear sky sends onto the level from a sun of that height (Haurwitz 1945).
func clearSunWM2(sineOfHeight float64) float64 {
	if sineOfHeight <= 0 {
		return 0
	}
	return 1098 * sineOfHeight * math.Exp(-0.057/sineOfHeight)
}
