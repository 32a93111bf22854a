package analysis

import (
	"math"
	"sync"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// ofMoistAir is a function of temperature, °C, and humidity, 0–1, for each of some loggers, at instants where it read
// both.
func ofMoistAir(loggers []Logger, f func(tempC, relHum float64) float64, spread Spread) []series.Curve {
	memos := sync.Pool{New: func() any { return newMemo(f) }} // one for each worker
	out := make([]series.Curve, len(loggers))
	spread(len(loggers), func(i int) {
		m := memos.Get().(*memo)
		out[i] = series.Zip(loggers[i].TempC, loggers[i].RelHum, m.of)
		memos.Put(m)
	})
	return out
}

// memo recalls what a function of temperature and humidity gave for pairs met lately. Loggers print few digits, so that
// a winter of a barn holds some ten thousand pairs, over and over, and from one hour to the next it keeps to few of
// them. Pairs that differ by 0.01 K or 0.1 % lie side by side, up to 5 K and 25 %.
type memo struct {
	f    func(tempC, relHum float64) float64
	kept [1 << (tempBits + humBits)]struct{ tempC, relHum, is float64 }
}

const tempBits, humBits = 9, 8

func newMemo(f func(tempC, relHum float64) float64) *memo {
	m := memo{f: f}
	for i := range m.kept {
		m.kept[i].tempC = math.NaN() // equals nothing
	}
	return &m
}

func (m *memo) of(tempC, relHum float64) float64 {
	row, column := int64(100*tempC+0.5)&(1<<tempBits-1), int64(1000*relHum+0.5)&(1<<humBits-1)
	p := &m.kept[row<<humBits|column]
	if p.tempC != tempC || p.relHum != relHum {
		p.tempC, p.relHum, p.is = tempC, relHum, m.f(tempC, relHum)
	}
	return p.is
}

// dewPointC is the dew point, °C, of air of a temperature and relative humidity, 0–1.
func dewPointC(tempC, relHum float64) float64 {
	return moistair.DewPointC(moistair.VapPresPa(tempC, relHum))
}

// wetBelowC is onsetC of air of a temperature, °C, and relative humidity, 0–1.
func wetBelowC(tempC, relHum float64) float64 { return onsetC(moistair.VapPresPa(tempC, relHum)) }

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
	mid := wetBelowC(tempC, relHum)
	byTempK = wetBelowC(tempC+errK, relHum) - mid
	byRelHumK = wetBelowC(tempC, relHum+errRelHum) - mid
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
