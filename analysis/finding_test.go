package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

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

// A control logger that died after 100 h of 1000, cold all the while, and a fan that ran every other 10 h to the end: of
// the 100 h at which both are known it was called for none and ran 50. Of what came after nothing can be said, and
// where the logger stood between the limits throughout, nothing at all.
func TestCalledAndRanAreSetSideBySideWhereBothAreKnown(t *testing.T) {
	winter := func(tempC float64) Review {
		in := one(through(0, 100, 0.5, constant(tempC)), series.Curve{}, span(0, 1000))
		in.Loggers[0].TempErrK = 0.1
		in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(-1, 1001), OnC: 5, OffC: 4}}}}
		in.Loggers = append(in.Loggers, Logger{Name: "switch", Place: "other", RecordsStage: "two",
			State: through(0, 1000, 0.5, func(h float64) float64 { return oneIf(int(h/10)%2 == 0) })})
		return Judge(in)
	}
	cold := winter(2)
	a := cold.Stages[0].Agreement
	near(t, "both known", float64(a.KnownMS)/hourMS, 100, 1e-9)
	near(t, "called for", a.Called.Mid, 0, 1e-9)
	near(t, "ran", a.Ran.Mid, 50, 1e-9)
	top := cold.Findings[0]
	if top.Code != "stage_ran_uncalled" {
		t.Fatalf("%+v, want the fan that ran uncalled on top", top)
	}
	near(t, "ran, in the finding", top.Figure("ran_hours").Mid, 50, 1e-9)
	near(t, "of hours", top.Figure("both_hours").Mid, 100, 1e-9)
	for _, f := range winter(4.5).Findings {
		if f.Code == "stage_ran_uncalled" || f.Code == "stage_did_not_run" {
			t.Errorf("%+v, though nothing is known of what it was called for", f)
		}
	}
}
