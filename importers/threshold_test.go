package importers

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"
)

// repeated is each value so many times.
func repeated(n int, values ...float64) (out []float64) {
	for _, v := range values {
		out = append(out, slices.Repeat([]float64{v}, n)...)
	}
	return out
}

// normal are n values spread like a normal distribution's, without chance.
func normal(n int, mean, sigma float64) (out []float64) {
	d := distuv.Normal{Mu: mean, Sigma: sigma}
	for i := range n {
		out = append(out, d.Quantile((float64(i)+0.5)/float64(n)))
	}
	return out
}

func TestThreshold(t *testing.T) {
	even := make([]float64, 100)
	for i := range even {
		even[i] = float64(i)
	}
	nan := math.NaN()
	for _, c := range []struct {
		name  string
		val   []float64
		limit float64 // NaN: the values are not two clusters
	}{
		{"off and on", repeated(10, 0, 1), 0.5},
		{"half way between the nearest values", repeated(5, 1, 2, 3, 11, 12, 13), 7},
		{"on by turns, with gaps", append(repeated(4, 3, 500), nan, nan), 251.5},
		{"seldom on", append(repeated(500, 0.02), repeated(5, 2.2)...), 1.11},
		{"off with a draw below nought", append(repeated(50, -0.02, 0), repeated(20, 3)...), 1.5},
		{"one value alone", repeated(50, 2), nan},
		{"an even spread", even, nan},
		{"one cluster", normal(400, 5, 1), nan},
		{"two clusters that run together", append(normal(200, 0, 1), normal(200, 3, 1)...), nan},
		{"three clusters", repeated(30, 0, 2, 4), nan},
		{"two stray values", append(repeated(100, 1), 50, 50), nan},
		{"too few", []float64{0, 0, 5, 5}, nan},
		{"none", nil, nan},
	} {
		limit, ok := Threshold(c.val)
		if ok != !math.IsNaN(c.limit) || ok && math.Abs(limit-c.limit) > 1e-12 {
			t.Errorf("%s: got %v, %v, want %v", c.name, limit, ok, c.limit)
		}
	}
	// Two clusters of standard deviation 1, ten apart: the cut lies between them, at 5 by symmetry.
	if limit, ok := Threshold(append(normal(200, 0, 1), normal(200, 10, 1)...)); !ok || math.Abs(limit-5) > 1e-9 {
		t.Errorf("two clusters: %v, %v", limit, ok)
	}
}

func TestAsState(t *testing.T) {
	s := Series{Column: "fan current (A)", Quantity: Current, Unit: "A", Decimals: 2, FaceMS: []int64{0, 1, 2, 3, 4, 5, 6}, Val: []float64{0.02, 0.02, 2.2, 2.3, 2.2, 0.02, 0}}
	state, limit, ok := s.AsState()
	if !ok || math.Abs(limit-1.11) > 1e-12 || state.Quantity != State || state.Unit != "" || !slices.Equal(state.Val, []float64{0, 0, 1, 1, 1, 0, 0}) || s.Val[2] != 2.2 {
		t.Errorf("%+v, %v, %v", state, limit, ok)
	}
	s.Quantity = AirTemperature
	if _, _, ok := s.AsState(); ok {
		t.Error("a temperature has no states")
	}
}
