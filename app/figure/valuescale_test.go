package figure

import (
	"math"
	"strings"
	"testing"
)

func TestValueTicks(t *testing.T) {
	rows := []struct {
		low, high float64
		wanted    int
		labels    string
	}{
		{2, 12, 6, "2 4 6 8 10 12"},
		{-30, 30, 7, "−30 −20 −10 0 10 20 30"},
		{0, 1, 5, "0.0 0.2 0.4 0.6 0.8 1.0"},
		{35, 44, 4, "35 40"},
		{0, 0.004, 4, "0.000 0.001 0.002 0.003 0.004"},
		{3, 3, 4, ""},
		{0, math.Inf(1), 4, ""},
	}
	for _, r := range rows {
		var got []string
		for _, k := range (ValueTicks{Wanted: r.wanted}).Ticks(r.low, r.high) {
			got = append(got, k.Label)
		}
		if s := strings.Join(got, " "); s != r.labels {
			t.Errorf("%v to %v: %q, want %q", r.low, r.high, s, r.labels)
		}
	}
}

// A true minus (U+2212) and a thin space (U+2009) before the unit: SI Brochure, 9th edition, 5.4.3, asks
// for a space; its being thin is the program's own choice.
func TestNumbersInPrint(t *testing.T) {
	for _, r := range []struct{ got, want string }{
		{Number(-3.25, 1), "\u22123.2"}, {Number(-0.04, 1), "0.0"}, {Number(12, 0), "12"},
		{Quantity(-2, "°C"), "\u22122\u2009°C"}, {Quantity(42.8, "°F"), "42.8\u2009°F"}, {Quantity(75, "%"), "75\u2009%"},
		{Quantity(6, ""), "6"},
	} {
		if r.got != r.want {
			t.Errorf("%q, want %q", r.got, r.want)
		}
	}
}

func TestWidenHoldsTheRange(t *testing.T) {
	for _, r := range [][2]float64{{2, 6}, {-31.3, 12.2}, {0.41, 0.43}, {5, 5}, {-1e-3, 1e3}} {
		low, high := widen(r[0], r[1])
		if low > r[0]+1e-12 || high < r[1]-1e-12 || high-low > 1.5*(r[1]-r[0])+2 {
			t.Errorf("widen%v = %v, %v", r, low, high)
		}
	}
}
