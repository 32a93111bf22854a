package analysis

import (
	"math"
	"testing"
)

// Recalled or worked out, a pair gives the same; a pair that is no number is worked out.
func TestWhatIsRecalledIsWhatIsWorkedOut(t *testing.T) {
	worked := 0
	f := recalled(func(x, y float64) float64 { worked++; return 3*x - y })
	for range 3 {
		for i := range 50 {
			for j := range 40 {
				x, y := float64(i)/10, float64(j)
				if got, want := f(x, y), 3*x-y; got != want {
					t.Fatalf("f(%v, %v) = %v, want %v", x, y, got, want)
				}
			}
		}
	}
	if worked < 2000 || worked > 4000 {
		t.Errorf("2000 pairs were worked out %d times in three rounds", worked)
	}
	for range 2 {
		if !math.IsNaN(f(math.NaN(), 1)) {
			t.Error("no number gave a number")
		}
	}
}
