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
