package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/moistair"
)

// Recalled or worked out, a pair has the dew point of package moistair, which is held to published tables there: pairs
// to 0.01 K and 0.1 %, those between, below zero, and far apart, which lie in one another's place.
func TestADewPointRecalledIsTheOneWorkedOut(t *testing.T) {
	memo := newMemo(dewPointC)
	for range 2 {
		for tempC := -12.0; tempC < 14; tempC += 0.1275 {
			for relHum := 0.3; relHum <= 1; relHum += 0.0085 {
				want := moistair.DewPointC(moistair.VapPresPa(tempC, relHum))
				for range 2 {
					if got := memo.of(tempC, relHum); got != want {
						t.Fatalf("%v °C, %v: %v, want %v", tempC, relHum, got, want)
					}
				}
			}
		}
		for _, v := range [][2]float64{{math.NaN(), 0.5}, {4, math.NaN()}, {math.Inf(1), 0.5}, {4, 0}} {
			if got := memo.of(v[0], v[1]); !math.IsNaN(got) {
				t.Errorf("%v has a dew point: %v", v, got)
			}
		}
	}
}
