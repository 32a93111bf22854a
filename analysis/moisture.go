package analysis

import (
	"math"
	"sync"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// dewPointsC are the loggers' dew points in °C, each at instants where it read both temperature and humidity.
func dewPointsC(loggers []Logger, spread Spread) []series.Curve {
	memos := sync.Pool{New: func() any { return newDewMemo() }} // one for each worker
	dew := make([]series.Curve, len(loggers))
	spread(len(loggers), func(i int) {
		memo := memos.Get().(*dewMemo)
		dew[i] = series.Zip(loggers[i].TempC, loggers[i].RelHum, memo.dewPointC)
		memos.Put(memo)
	})
	return dew
}

// dewMemo recalls dew points, °C, of pairs met lately. Loggers print few digits, so that a winter of a barn holds some
// ten thousand pairs, over and over, and from one hour to the next it keeps to few of them. Pairs that differ by
// 0.01 K or 0.1 % lie side by side, up to 5 K and 25 %.
type dewMemo [1 << (tempBits + humBits)]struct{ tempC, relHum, dewC float64 }

const tempBits, humBits = 9, 8

func newDewMemo() *dewMemo {
	var m dewMemo
	for i := range m {
		m[i].tempC = math.NaN() // equals nothing
	}
	return &m
}

func (m *dewMemo) dewPointC(tempC, relHum float64) float64 {
	row, column := int64(100*tempC+0.5)&(1<<tempBits-1), int64(1000*relHum+0.5)&(1<<humBits-1)
	p := &m[row<<humBits|column]
	if p.tempC != tempC || p.relHum != relHum {
		p.tempC, p.relHum, p.dewC = tempC, relHum, moistair.DewPointC(moistair.VapPresPa(tempC, relHum))
	}
	return p.dewC
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
