package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// findingOf is a finding by its code; the test fails where there is none.
func findingOf(t *testing.T, all []Finding, code string) Finding {
	t.Helper()
	for _, f := range all {
		if f.Code == code {
			return f
		}
	}
	t.Fatalf("no %s among %+v", code, all)
	return Finding{}
}

// Five humps above 8 °C for an hour each; two calls logged, the second 40 minutes late, one in between for nothing: of
// five due calls three are missed, for certain with a logger of ±0.3 K: above 8.3 °C each lasts 42 minutes.
func TestFindingsOfAnAlarmLog(t *testing.T) {
	var vals []float64
	for range 5 {
		vals = append(vals, 4, 4, 7, 9, 7, 4, 4, 4)
	}
	in := one(line(0, 1, vals...), series.Curve{}, span(0, 39))
	in.Loggers[0].TempErrK = 0.3
	in.Notes = []Note{alarmCall(3), alarmCall(11 + 40.0/60), alarmCall(15)}
	all := Judge(in).Findings
	near(t, "missed", findingOf(t, all, "alarm_missed").Figure("missed").Mid, 3, 0)
	near(t, "due", findingOf(t, all, "alarm_missed").Figure("due").Mid, 5, 0)
	latest := findingOf(t, all, "alarm_late").Figure("latest_min") // 2 K an hour: 0.3 K are nine minutes
	near(t, "late", latest.Mid, 40, 1e-3)
	near(t, "late at least", latest.Low, 31, 1e-3)
	near(t, "late at most", latest.High, 49, 1e-3)
	near(t, "without cause", findingOf(t, all, "alarm_without_cause").Figure("calls").Mid, 1, 0)
	in.Notes = nil
	for _, f := range Judge(in).Findings {
		if f.Code == "alarm_missed" {
			t.Errorf("without a log nothing is missed: %+v", f)
		}
	}
}

// A noted cut after which the room was above its band for hours is both a finding and what the spell went with.
func TestAPowerCutIsAFindingAndACause(t *testing.T) {
	room := through(0, 400, 0.25, func(h float64) float64 {
		if h >= 200 && h < 208 {
			return 4 + 4*(h-200)/8
		}
		if h >= 208 && h < 210 {
			return 8 - 2*(h-208)
		}
		return 4
	})
	in := one(room, series.Curve{}, span(0, 400))
	until := int64(208 * hourMS)
	in.Notes = []Note{{At: 200 * hourMS, Until: &until, Kind: "power cut"}}
	r := Judge(in)
	f := findingOf(t, r.Findings, "power_cut")
	near(t, "cuts", f.Figure("cuts").Mid, 1, 0)
	near(t, "half a degree an hour", f.Figure("first_hour_k_per_h").Mid, 0.5, 1e-9)
	if len(r.Spells) != 1 || len(r.Spells[0].WentWith) != 1 || r.Spells[0].WentWith[0].Code != PowerCut {
		t.Errorf("%+v, want one warm spell that went with the cut", r.Spells)
	}
}
