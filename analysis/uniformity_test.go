package analysis

import "testing"

// Three weeks; the far logger reads 1 K above the middle one, and 3 K for 48 h of the second week, when it is also
// the drier one.
func TestUniformity(t *testing.T) {
	far := func(h float64) float64 {
		if h >= 200 && h < 248 {
			return 7
		}
		return 5
	}
	in := one(through(0, 504, 1, constant(4)), through(0, 504, 1, constant(0.6)), span(0, 504))
	in.Loggers[0].TempErrK = 0.3
	in.Loggers = append(in.Loggers, Logger{Name: "far", Place: "room", TempErrK: 0.3, TempC: through(0, 504, 1, far),
		RelHum: through(0, 504, 1, func(h float64) float64 { return 0.6 + 0.1*oneIf(h < 168) - 0.1*oneIf(h >= 168) })})
	r := Judge(in)
	if len(r.Uniformity) != 1 || len(r.Uniformity[0].Weeks) != 3 {
		t.Fatalf("%+v, want one place and three weeks", r.Uniformity)
	}
	u := r.Uniformity[0]
	// On straight lines the hours in which it rises and falls have a mean of 6 °C, 2 K apart and not more.
	near(t, "hours apart", u.ApartHours.Mid, 47, 0)
	// Two loggers of ±0.3 K read 0.42 K apart in the same air: the 3 K may be 2.58 K, the 1 K 1.42 K.
	near(t, "at least", u.ApartHours.Low, 47, 0)
	near(t, "at most", u.ApartHours.High, 49, 0)
	near(t, "known", u.KnownHours, 504, 0)
	for i, w := range u.Weeks {
		if w.Warmest != "far" || w.Coldest != "mid" {
			t.Errorf("week %d: warmest %s, coldest %s", i, w.Warmest, w.Coldest)
		}
		if want := []string{"far", "mid", "mid"}[i]; w.Dampest != want {
			t.Errorf("week %d: dampest %s, want %s", i, w.Dampest, want)
		}
	}
	near(t, "mean of the second week", u.Weeks[1].WarmestC, (48*7+120*5)/168.0, 0.02)
}
