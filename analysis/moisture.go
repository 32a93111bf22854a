package analysis

import (
	"math"
	"sync"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// dewPointsC are the loggers' dew points in °C, each at instants where it read both temperature and humidity.
func dewPointsC(loggers []Logger, spread Spread) []series.Curve {
	memos := sync.Pool{New: func() any { return recalled(dewPointC) }} // one for each worker
	dew := make([]series.Curve, len(loggers))
	spread(len(loggers), func(i int) {
		memo := memos.Get().(func(tempC, relHum float64) float64)
		dew[i] = series.Zip(loggers[i].TempC, loggers[i].RelHum, memo)
		memos.Put(memo)
	})
	return dew
}

func dewPointC(tempC, relHum float64) float64 {
	return moistair.DewPointC(moistair.VapPresPa(tempC, relHum))
}

// recalled is a function of two numbers that is not worked out twice for pairs met lately. Loggers print few
// digits, so that a winter of a barn holds some ten thousand pairs, over and over.
func recalled(f func(x, y float64) float64) func(x, y float64) float64 {
	const bits = 16
	type pair struct{ x, y, is float64 }
	lately := make([]pair, 1<<bits)
	for i := range lately {
		lately[i].x = math.NaN() // equals nothing
	}
	return func(x, y float64) float64 {
		mixed := (math.Float64bits(x)*0x9E3779B97F4A7C15 ^ math.Float64bits(y)) * 0xD6E8FEB86659FD93
		p := &lately[mixed>>(64-bits)]
		if p.x != x || p.y != y {
			*p = pair{x, y, f(x, y)}
		}
		return p.is
	}
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
