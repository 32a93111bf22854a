package plausible

import (
	"math"
	"math/rand/v2"
	"testing"
)

// What the blocks add up to is what a reader would add up term by term.
func TestCrossSums(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 6))
	for _, c := range [][2]int{{200, 5}, {1000, 312}, {3, 1}, {64, 0}} {
		n, most := c[0], c[1]
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i], y[i] = random.NormFloat64(), random.NormFloat64()
		}
		got := crossSums(x, y, most)
		if len(got) != 2*most+1 {
			t.Fatalf("%d sums for %d lags", len(got), 2*most+1)
		}
		for k := range got {
			want := 0.0
			for i := range y {
				if j := i + k - most; j >= 0 && j < n {
					want += x[j] * y[i]
				}
			}
			if math.Abs(got[k]-want) > 1e-9 {
				t.Errorf("%d steps, lag %d: %v, want %v", n, k-most, got[k], want)
			}
		}
	}
}
