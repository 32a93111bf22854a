package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// warmFor is a room at 4 °C that stands at a higher temperature for some hours out of 1,000.
func warmFor(hours, tempC float64) Input {
	c := series.Curve{MaxStepMS: hourMS}
	add := func(h, v float64) {
		c.Readings.At, c.Val = append(c.Readings.At, int64(h*hourMS)), append(c.Val, v)
	}
	for h := 0.0; h <= 1000; h += 0.5 {
		v := 4.0
		if h >= 100 && h < 100+hours {
			v = tempC
		}
		add(h, v)
	}
	return one(c, series.Curve{}, span(0, 1000))
}

// The lines of the house rules: 98 % and nothing to act on, 90 %, coverage 0.5.
func TestHeld(t *testing.T) {
	for _, row := range []struct {
		name string
		in   Input
		want State
	}{
		{"steady", warmFor(0, 4), Yes},
		{"10 of 1,000 h at 7", warmFor(10, 7), Yes},
		{"10 h at 9 calls for action", warmFor(10, 9), Mostly},
		{"4 h at 9 does not", warmFor(4, 9), Yes},
		{"3 h at 11 does", warmFor(3, 11), Mostly},
		{"50 of 1,000 h at 7", warmFor(50, 7), Mostly},
		{"150 of 1,000 h at 7", warmFor(150, 7), No},
	} {
		if got := Judge(row.in).Verdict.Held; got.State != row.want {
			t.Errorf("%s: %s (%.2f %%), want %s", row.name, got.State, got.Figure.Mid, row.want)
		}
	}
}

// By turns 1.8 and 5.6 °C for ten hours: half of it lies in the band as read, and half with every reading half a degree higher
// or lower, but all of it with a quarter of a degree more.
func TestHeldMayBeBestBetweenTheEndsOfTheError(t *testing.T) {
	in := one(through(0, 1000, 0.5, func(h float64) float64 { return 1.8 + 3.8*float64(int(h/10)%2) }), series.Curve{}, span(0, 1000))
	in.Loggers[0].TempErrK = 0.5
	held := Judge(in).Verdict.Held.Figure
	near(t, "as read, %", held.Mid, 50, 3)
	near(t, "at most, %", held.High, 100, 0.1)
}

func TestVerdictIsUnknownBelowHalfCoverage(t *testing.T) {
	in := one(through(0, 49, 0.5, constant(4)), through(0, 49, 0.5, constant(0.6)), span(0, 100))
	v := Judge(in).Verdict
	for name, a := range map[string]Answer{"held": v.Held, "damp": v.Damp, "dry": v.Dry, "fans": v.Fans} {
		if a.State != Unknown || a.Figure.OK {
			t.Errorf("%s: %+v, want unknown", name, a)
		}
	}
	near(t, "coverage is told", v.Held.Coverage, 0.49, 1e-9)
}

func TestOneThermometerAnswersOnlyWhatItCan(t *testing.T) {
	r := Judge(warmFor(0, 4))
	if r.Verdict.Held.State != Yes {
		t.Errorf("held %s", r.Verdict.Held.State)
	}
	for name, a := range map[string]Answer{"damp": r.Verdict.Damp, "dry": r.Verdict.Dry, "fans": r.Verdict.Fans} {
		if a.State != Unknown {
			t.Errorf("%s: %s, want unknown", name, a.State)
		}
	}
	for _, code := range []string{"no_humidity", "no_outdoor"} {
		if !hasRemark(r.Remarks, code) {
			t.Errorf("%s not remarked", code)
		}
	}
}

func TestDryAndDampCountLongStretches(t *testing.T) {
	hum := through(0, 1000, 0.5, func(h float64) float64 {
		switch {
		case h >= 100 && h < 220:
			return 0.30
		case h >= 300 && h < 320: // too short to be a dry stretch
			return 0.30
		case h >= 500 && h < 550:
			return 0.95
		}
		return 0.60
	})
	v := Judge(one(through(0, 1000, 0.5, constant(4)), hum, span(0, 1000))).Verdict
	near(t, "dry hours", v.Dry.Figure.Mid, 120, 0.6)
	near(t, "damp hours", v.Damp.Figure.Mid, 50, 0.6)
	if v.Dry.State != Yes || v.Damp.State != Mostly {
		t.Errorf("dry %s, damp %s; want yes, mostly", v.Dry.State, v.Damp.State)
	}
}

// A ramp of humidity from 60 to 100 % and back over 800 h, 0.1 % an hour, by a logger of ±5 %: above 85 % for 300 h, with
// every reading 5 % lower for 200, higher for 400; by the same ramp from 80 to 40 and back with a limit of 45, below it for
// 100 h, 0 and 200. By hand.
func TestDampAndDryCarryTheLoggersError(t *testing.T) {
	ramp := func(from, slope float64) series.Curve {
		return through(0, 800, 0.5, func(h float64) float64 { return from + slope*min(h, 800-h) })
	}
	temp := through(0, 800, 0.5, constant(4))
	within := func(what string, f Figure, low, mid, high float64) {
		near(t, what, f.Mid, mid, 0.01)
		near(t, what+", low", f.Low, low, 0.01)
		near(t, what+", high", f.High, high, 0.01)
		if f.Evidence != Recorded {
			t.Errorf("%s: %s, want recorded", what, f.Evidence)
		}
	}
	within("damp", Judge(one(temp, ramp(0.6, 0.001), span(0, 800))).Verdict.Damp.Figure, 200, 300, 400)
	in := one(temp, ramp(0.8, -0.001), span(0, 800))
	in.Bands.RelHumPct.GoodLow = ptr(45)
	within("dry", Judge(in).Verdict.Dry.Figure, 0, 100, 200)
}

// Ten per cent of the time above the third stage's on-temperature: the small fans carried the rest alone.
func TestFansShareOfTheSmallStages(t *testing.T) {
	in := warmFor(100, 8)
	in.Stages = []Stage{
		{Name: "one", Settings: []Setting{{Span: span(-1, 1001), AlwaysOn: true}}},
		{Name: "two", Settings: []Setting{{Span: span(-1, 1001), OnC: 5, OffC: 4.5}}},
		{Name: "three", Settings: []Setting{{Span: span(-1, 1001), OnC: 6.4, OffC: 5.9}}},
	}
	a := Judge(in).Verdict.Fans
	near(t, "share", a.Figure.Mid, 90, 0.1)
	if a.State != Mostly || a.Figure.Evidence != WorkedOut {
		t.Errorf("%+v, want mostly, worked out", a)
	}
	in.Loggers = append(in.Loggers, Logger{Name: "fan three", Place: "other", RecordsStage: "three",
		State: through(0, 1000, 0.5, func(h float64) float64 {
			if h >= 100 && h < 130 {
				return 1
			}
			return 0
		})})
	a = Judge(in).Verdict.Fans
	near(t, "share by the record", a.Figure.Mid, 97, 0.1)
	if a.State != Yes || a.Figure.Evidence != Recorded {
		t.Errorf("%+v, want yes, recorded", a)
	}
}
