package stats

import "gonum.org/v1/gonum/stat"

// Autocovariances are those of a series at lags 0 to most, which must be below its length: the mean over all n values
// of the products of deviations that far apart (the divisor is n at every lag; Box & Jenkins).
func Autocovariances(x []float64, most int) []float64 {
	mean := stat.Mean(x, nil)
	out := make([]float64, most+1)
	for lag := range out {
		sum := 0.0
		for i := lag; i < len(x); i++ {
			sum += (x[i] - mean) * (x[i-lag] - mean)
		}
		out[lag] = sum / float64(len(x))
	}
	return out
}

// Lag1 is how alike neighbours of a series are, −1 to 1: its autocorrelation at lag 1. It is 0 for a series that does
// not vary.
func Lag1(x []float64) float64 {
	if len(x) < 2 {
		return 0
	}
	c := Autocovariances(x, 1)
	if c[0] == 0 {
		return 0
	}
	return c[1] / c[0]
}
