package analysis

import (
	"math"
	"slices"
	"testing"
)

// Critical humidity by the published cubic (Hukka and Viitanen 1999), worked out by hand.
func TestCriticalHumidityOfMould(t *testing.T) {
	for tempC, want := range map[float64]float64{2: 94.36, 4: 89.87, 5: 88.02, 6: 86.40, 8: 83.83, 10: 82.03, 20: 80.04, 25: 80} {
		near(t, "critical humidity", criticalPct(tempC), want, 0.006)
	}
	if !math.IsInf(criticalPct(0), 1) || !math.IsInf(criticalPct(-5), 1) {
		t.Error("mould does not grow at or below 0 °C")
	}
}

// Constant climates, hour by hour without decline; values of the published equations by a separate computation,
// the last of sensitive wood at 22 °C by hand.
func TestMouldIndexInConstantClimates(t *testing.T) {
	sensitive := mouldClass{k1Below: 0.578, k1From: 0.386, a: 0.3, b: 6, c: 1}
	for _, row := range []struct {
		class      mouldClass
		tempC, pct float64
		days       float64
		want       float64
	}{
		{sensitive, 22, 90, 84, 1.4971},
		{sensitive, 22, 90, 3650, 3.05}, // the highest there is: above 20 °C x is (80 − 90)/(80 − 100), and 0.3 + 6/2 − 1/4
		{sawnPine, 4, 92, 150, 2.3593}, {sawnPine, 4, 95, 150, 4.0295}, {sensitive, 4, 95, 150, 1.7118},
		{sawnPine, 4, 88, 150, 0}, {sawnPine, 6, 95, 150, 4.6263},
	} {
		hours := int(row.days * 24)
		got := row.class.mouldIndex(slices.Repeat([]float64{row.tempC}, hours), slices.Repeat([]float64{row.pct}, hours))
		near(t, "index", got, row.want, 0.005)
	}
}

// Response times to the first growth in weeks (Hukka and Viitanen 1999): 5.92 at 4 °C and 95 %, 3.94 at 22 °C and
// 90 %. Below index 1, with the highest index far off, the index of pine rises by 1 in that time.
func TestTimeToTheFirstMould(t *testing.T) {
	near(t, "4 °C, 95 %", 1/(7*sawnPine.growthPerDay(0, 4, 95)), 5.92, 0.02)
	near(t, "22 °C, 90 %", 1/(7*sawnPine.growthPerDay(0, 22, 90)), 3.94, 0.02)
}

// After growth stops the index falls for six hours by 0.032 a day, stands until the twenty-fourth, then falls by
// 0.016 a day (Hukka and Viitanen 1999).
func TestMouldDeclinesWhenDry(t *testing.T) {
	fall := 0.0
	for h := 1.0; h <= 48; h++ {
		fall += declinePerHour(h)
	}
	near(t, "two dry days", fall, 6*0.032/24+24*0.016/24, 1e-12)
}
