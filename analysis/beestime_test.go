package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// The ledger's worked example of the house rules, by hand: 111 d 22 h × 600 + 6 d 8 h × 450 + 32 d 18 h × 600.
func TestHiveDaysOfALedger(t *testing.T) {
	heads := []HeadChange{
		{instant(t, "2025-11-10 12:00"), 600},
		{instant(t, "2026-03-02 10:00"), -150},
		{instant(t, "2026-03-08 18:00"), 150},
		{instant(t, "2026-04-10 12:00"), -600},
	}
	whole := series.Span{From: heads[0].At, To: heads[3].At}
	near(t, "hive-days", HiveDays(heads, whole).Mid, 89650, 1e-6)
	half := series.Span{From: heads[1].At, To: heads[2].At}
	near(t, "hive-days while a batch was out", HiveDays(heads, half).Mid, 6.0*450+450/3.0, 1e-6)
	if f := HiveDays(nil, whole); f.OK || f.Unknown != "no_head_count" {
		t.Errorf("without a ledger: %+v, want unknown", f)
	}
}

func TestBeesTimeTakesTheKeepersWordFirst(t *testing.T) {
	room := through(0, 100, 1, constant(4))
	in, out := int64(10*hourMS), int64(90*hourMS)
	heads := []HeadChange{{At: 20 * hourMS, Change: 5}, {At: 80 * hourMS, Change: -5}}
	none, both := BeesSeen{}, BeesSeen{Edge{At: 30 * hourMS, Sure: EdgeLikely}, Edge{At: 70 * hourMS, Sure: EdgeSure}}
	for _, row := range []struct {
		name string
		in   Input
		seen BeesSeen
		want series.Span
		by   BeesBy
	}{
		{"said", Input{BeesIn: &in, BeesOut: &out, Heads: heads}, none, span(10, 90), BeesBy{YourSetting, YourSetting}},
		{"ledger", Input{Heads: heads}, none, span(20, 80), BeesBy{YourSetting, YourSetting}},
		{"in said, ledger out", Input{BeesIn: &in, Heads: heads}, none, span(10, 80), BeesBy{YourSetting, YourSetting}},
		{"neither", Input{}, none, span(0, 100), BeesBy{Assumed, Assumed}},
		{"seen", Input{}, both, span(30, 70), BeesBy{WorkedOut, WorkedOut}},
		{"seen, but the keeper said", Input{BeesIn: &in, BeesOut: &out}, both, span(10, 90), BeesBy{YourSetting, YourSetting}},
		{"in said, out seen", Input{BeesIn: &in}, both, span(10, 70), BeesBy{YourSetting, WorkedOut}},
		{"in seen, out not", Input{}, BeesSeen{In: both.In}, span(30, 100), BeesBy{WorkedOut, Assumed}},
		{"out not seen, in said", Input{BeesIn: &in}, BeesSeen{In: both.In}, span(10, 100), BeesBy{YourSetting, Assumed}},
		{"out said, in not", Input{BeesOut: &out}, none, span(0, 90), BeesBy{Assumed, YourSetting}},
		{"emptied and filled again", Input{Heads: append(heads[:2:2], HeadChange{At: 85 * hourMS, Change: 5})}, none, span(20, 100), BeesBy{YourSetting, Assumed}},
		{"emptied but for the dead", Input{Heads: []HeadChange{{At: 20 * hourMS, Change: 600}, {At: 80 * hourMS, Change: -500}}}, none, span(20, 80), BeesBy{YourSetting, YourSetting}},
		{"half of them out", Input{Heads: []HeadChange{{At: 20 * hourMS, Change: 600}, {At: 80 * hourMS, Change: -300}}}, none, span(20, 100), BeesBy{YourSetting, Assumed}},
		{"never emptied", Input{Heads: heads[:1]}, none, span(20, 100), BeesBy{YourSetting, Assumed}},
	} {
		if got, e := beesTime(row.in, room, row.seen); got != row.want || e != row.by {
			t.Errorf("%s: %v %s, want %v %s", row.name, got, e, row.want, row.by)
		}
	}
}

// Without a record only two days that are said make a time to judge.
func TestOneDayAndNoRecordIsNoTime(t *testing.T) {
	in, out := int64(10*hourMS), int64(90*hourMS)
	for _, one := range []Input{{BeesIn: &in}, {BeesOut: &out}, {}} {
		if s, _ := beesTime(one, series.Curve{}, BeesSeen{}); s.From != s.To {
			t.Errorf("%+v: %v", one, s)
		}
	}
	if s, _ := beesTime(Input{BeesIn: &in, BeesOut: &out}, series.Curve{}, BeesSeen{}); s != span(10, 90) {
		t.Errorf("both said: %v", s)
	}
}
