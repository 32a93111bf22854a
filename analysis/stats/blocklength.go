package stats

import "math"

// BlockLengths are the mean length of the blocks of the stationary bootstrap and the length of those of the circular
// one that serve a series best, in steps, 1 to ⌈min(3√n, n/3)⌉: the automatic choice of Politis & White (2004),
// Econometric Reviews 23:53, with the constant for the stationary one as corrected by Patton, Politis & White (2009),
// Econometric Reviews 28:372. A series that does not vary, or is shorter than 9, has length 1.
func BlockLengths(x []float64) (stationary, circular float64) {
	n := float64(len(x))
	if n < 9 {
		return 1, 1
	}
	inRow := max(5, int(math.Ceil(math.Sqrt(math.Log10(n)))))
	most := min(int(math.Ceil(math.Sqrt(n)))+inRow, len(x)-1)
	cov := Autocovariances(x, most)
	if !(cov[0] > 0) {
		return 1, 1
	}
	m := min(2*lastingLag(cov, n, inRow), most)
	slope, level := 0.0, cov[0]
	for k := 1; k <= m; k++ {
		w := 2 * flatTop(float64(k)/float64(m)) * cov[k]
		slope, level = slope+w*float64(k), level+w
	}
	if level == 0 {
		return 1, 1
	}
	length := func(d float64) float64 {
		b := math.Cbrt(2 * slope * slope / (d * level * level) * n)
		return min(max(1, b), math.Ceil(min(3*math.Sqrt(n), n/3)))
	}
	return length(2), length(4.0 / 3)
}

// lastingLag is the first of so many lags in a row whose autocorrelations are no larger than chance would have them,
// 2√(log10 n / n); the last lag there is where there are none.
func lastingLag(cov []float64, n float64, inRow int) int {
	small, run := 2*math.Sqrt(math.Log10(n)/n), 0
	for k := 1; k < len(cov); k++ {
		if run++; math.Abs(cov[k]/cov[0]) >= small {
			run = 0
		}
		if run == inRow {
			return k - inRow + 1
		}
	}
	return len(cov) - 1
}

// flatTop is the trapezoidal lag window: 1 up to a half, from there straight down to 0 at 1.
func flatTop(t float64) float64 {
	return min(1, max(0, 2*(1-t)))
}
