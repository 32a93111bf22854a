package series_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

// Against gonum's quantile of the sorted values, to the last bit; values of few digits, so that many are equal, and of
// many, in rising, falling and any order.
func TestQuantileIsThatOfTheSortedValues(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for _, n := range []int{1, 2, 3, 4, 10, 101, 1000} {
		for _, digits := range []float64{1, 10, 1e9} {
			v := make([]float64, n)
			for i := range v {
				v[i] = math.Round(random.NormFloat64()*digits) / digits
			}
			sorted := slices.Sorted(slices.Values(v))
			falling := slices.Clone(sorted)
			slices.Reverse(falling)
			for _, p := range []float64{0, 0.01, 0.1, 1.0 / 3, 0.5, 0.9, 0.95, 0.99, 1} {
				want := stat.Quantile(p, stat.LinInterp, sorted, nil)
				for _, order := range [][]float64{v, sorted, falling} {
					before := slices.Clone(order)
					if got := series.Quantile(p, order); got != want {
						t.Fatalf("%g-quantile of %d values to 1/%g: %v, want %v", p, n, digits, got, want)
					}
					if !slices.Equal(order, before) {
						t.Fatal("the values were reordered")
					}
				}
			}
		}
	}
}

func TestMedian(t *testing.T) {
	for _, r := range []struct {
		of   []float64
		want float64
	}{{[]float64{3}, 3}, {[]float64{5, 1}, 3}, {[]float64{9, 1, 4}, 4}, {[]float64{8, 2, 9, 4}, 6}, {[]float64{2, 2, 2, 7}, 2}} {
		near(t, fmt.Sprint(r.of), series.Median(r.of), r.want, 0)
	}
	if v := series.Median(nil); !math.IsNaN(v) {
		t.Errorf("of nothing %v", v)
	}
	if v := series.Quantile(0.5, nil); !math.IsNaN(v) {
		t.Errorf("of nothing %v", v)
	}
}

// Readings every ten minutes: fifteen minutes before the third, at 20 min, the line stood half way between the first
// two; before the second there was none, nor across the gap and the break, but at a reading there is a value.
func TestLagged(t *testing.T) {
	nan := math.NaN()
	for _, r := range []struct {
		notation string
		lag      int64
		want     []float64
	}{
		{"10 20 40 50", 15 * minute, []float64{nan, nan, 15, 30}},
		{"10 20 40 50", 0, []float64{10, 20, 40, 50}},
		{"10 20 _ _ 50 60", 15 * minute, []float64{nan, nan, nan, nan}},
		{"10 20 _ _ 50 60", 30 * minute, []float64{nan, nan, 20, nan}},
		{"10 20 | 40 50", 15 * minute, []float64{nan, nan, 15, nan}},
	} {
		for i, v := range line(t, r.notation).Lagged(r.lag) {
			if v != r.want[i] && !(math.IsNaN(v) && math.IsNaN(r.want[i])) {
				t.Errorf("%s, %d min before reading %d: %v, want %v", r.notation, r.lag/minute, i, v, r.want[i])
			}
		}
	}
}
