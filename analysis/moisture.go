package analysis

import (
	"math"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// dewPointC is the logger's dew point in °C, at instants where it read both temperature and humidity.
func (l Logger) dewPointC() series.Curve {
	return series.Zip(l.TempC, l.RelHum, func(tempC, relHum float64) float64 {
		return moistair.DewPointC(moistair.VapPresPa(tempC, relHum))
	})
}

// onsetC is the surface temperature, °C, at which air of a vapour pressure begins to leave water: the dew
// point, or below the triple point the frost point, which lies above it (WMO-No. 8: RH is over water).
func onsetC(vapPresPa float64) float64 {
	if vapPresPa >= triplePointPa {
		return moistair.DewPointC(vapPresPa)
	}
	return moistair.FrostPointC(vapPresPa)
}

// triplePointPa is the vapour pressure at which water and ice coexist (IAPWS).
const triplePointPa = 611.657

// onsetSlopes are the changes of the onset temperature with the errors of the two sensors, each error taken
// alone: K for an error of errK and for one of errRelHum.
func onsetSlopes(tempC, relHum, errK, errRelHum float64) (byTempK, byRelHumK float64) {
	mid := onsetC(moistair.VapPresPa(tempC, relHum))
	byTempK = onsetC(moistair.VapPresPa(tempC+errK, relHum)) - mid
	byRelHumK = onsetC(moistair.VapPresPa(tempC, relHum+errRelHum)) - mid
	return byTempK, byRelHumK
}

// quadrature adds independent half-widths.
func quadrature(parts ...float64) float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p * p
	}
	return math.Sqrt(sum)
}
