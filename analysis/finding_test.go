package analysis

import "testing"

// The worked example of a top stage: recorded for 12 h, called for 160 h.
func TestAStageThatHardlyRanIsTheTopFinding(t *testing.T) {
	in := warmFor(160, 8)
	in.Stages = []Stage{
		{Name: "two", Settings: []Setting{{Span: span(-1, 1001), OnC: 5, OffC: 4.5}}},
		{Name: "three", Settings: []Setting{{Span: span(-1, 1001), OnC: 7, OffC: 6.5}}},
	}
	in.Loggers = append(in.Loggers, Logger{Name: "switch", Place: "other", RecordsStage: "three",
		State: through(0, 1000, 0.5, func(h float64) float64 { return oneIf(h >= 100 && h < 112) })})
	r := Judge(in)
	if len(r.Findings) == 0 || r.Findings[0].Code != "stage_did_not_run" || r.Findings[0].About != "three" {
		t.Fatalf("%+v, want stage three on top", r.Findings)
	}
	near(t, "called", r.Findings[0].Figure("called_hours").Mid, 160, 0.5)
	near(t, "ran", r.Findings[0].Figure("ran_hours").Mid, 12, 0.01)
}

// A quiet winter has nothing worth a look.
func TestAQuietWinterHasNoFindings(t *testing.T) {
	in := one(through(0, 1000, 0.5, constant(4)), through(0, 1000, 0.5, constant(0.6)), span(0, 1000))
	if f := Judge(in).Findings; len(f) != 0 {
		t.Errorf("%+v", f)
	}
}
