package engine

import (
	"context"
	"math"
	"strconv"
	"strings"
	"testing"

	"thawbook/analysis/compare"
)

// student is Student's t that 2.5 % lie above at 23.8 degrees of freedom, 2,496 hours in blocks of 100.6 h less one: between the
// 2.0687 and 2.0639 that tables have for 23 and 24.
const student = 2.0649

// Two winters of the open data's attic, each by its own outdoor air, beside what testdata/two_winters.py worked out from the
// same files by numpy and pandas alone. Figures of sums agree to 1e-9; the standard error is that of 2,000 draws, which know it
// to 1.6 %, against the exact one.
func TestTwoWintersAsNumpyHasThem(t *testing.T) {
	first, second := winterOfAttic(t, "2010-12-01", "2011-03-15"), winterOfAttic(t, "2011-12-01", "2012-03-14")
	pairs, err := Winters(context.Background(), &first, &second)
	if err != nil || len(pairs) != 1 || pairs[0].OverlapHours != 104*24 {
		t.Fatalf("%d pairs, %v", len(pairs), err)
	}
	got := map[[3]string]compare.Row{}
	for _, r := range pairs[0].Rows {
		if r.Phase == "" {
			got[[3]string{r.Quantity, r.Measure, r.Of}] = r
		}
	}
	for _, want := range cellsOf(t, "testdata/two_winters.csv")[1:] {
		r, ok := got[[3]string{want[0], want[1], want[2]}]
		if !ok {
			t.Errorf("%v is not compared", want[:3])
			continue
		}
		alike(t, want[0]+" "+want[1]+" A", r.A, want[3], 1e-9)
		alike(t, want[0]+" "+want[1]+" B", r.B, want[4], 1e-9)
		if want[6] != "" {
			alike(t, want[0]+" "+want[1]+" blocks", r.BlockHours, want[6], 1e-9)
			alike(t, want[0]+" "+want[1]+" standard error", r.ResampledHalf/student, want[5], 0.05)
		}
	}
}

// alike holds a figure to a number of a fixture, within a part of it.
func alike(t *testing.T, what string, got float64, want string, within float64) {
	t.Helper()
	v, err := strconv.ParseFloat(want, 64)
	if err != nil || math.Abs(got-v) > within*math.Max(1, math.Abs(v)) {
		t.Errorf("%s is %.12g, want %s", what, got, want)
	}
}

// winterOfAttic is the attic's review from one day to another, under a name of its own.
func winterOfAttic(t *testing.T, in, out string) Result {
	t.Helper()
	return atticReview(t, strings.NewReplacer("2010-11-23", in, "2011-04-15", out, "An attic", "The winter of "+in[:4]).Replace(atticPlan))
}
