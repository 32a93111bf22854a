package analysis

import (
	"testing"
	"time"

	"thawbook/analysis/series"
)

// ledger is a head-count ledger from instants and changes in turn.
func ledger(t *testing.T, rows ...any) (out []HeadChange) {
	for i := 0; i < len(rows); i += 2 {
		out = append(out, HeadChange{instant(t, rows[i].(string)), rows[i+1].(int)})
	}
	return out
}

// The house rules' dates: late winter from 1 March; filling while hives come in, emptying while they go for good.
func TestPhasesOfAWinter(t *testing.T) {
	own := instant(t, "2026-02-15 00:00")
	type phase struct{ name, from string }
	for _, row := range []struct {
		name  string
		heads []HeadChange
		set   []PhaseSetting
		want  []phase
	}{
		{"no ledger", nil, nil, []phase{{"deep winter", "2025-11-10 12:00"}, {"late winter", "2026-03-01 00:00"}}},
		// The house rules' ledger: one move in, a batch out and back, one move out.
		{"a batch out and back", ledger(t, "2025-11-10 12:00", 600, "2026-03-02 10:00", -150, "2026-03-08 18:00", 150, "2026-04-10 12:00", -600), nil,
			[]phase{{"deep winter", "2025-11-10 12:00"}, {"late winter", "2026-03-01 00:00"}}},
		{"filled and emptied over days", ledger(t, "2025-11-10 12:00", 200, "2025-11-12 12:00", 200, "2025-11-15 12:00", 200,
			"2026-01-20 09:00", -3, "2026-04-06 08:00", -197, "2026-04-08 08:00", -200, "2026-04-10 12:00", -200), nil,
			[]phase{{"filling", "2025-11-10 12:00"}, {"deep winter", "2025-11-15 12:00"}, {"late winter", "2026-03-01 00:00"}, {"emptying", "2026-04-06 08:00"}}},
		{"the keeper's own date", nil, []PhaseSetting{{Name: "late winter", From: &own}},
			[]phase{{"deep winter", "2025-11-10 12:00"}, {"late winter", "2026-02-15 00:00"}}},
	} {
		from, to := instant(t, "2025-11-10 12:00"), instant(t, "2026-04-10 12:00")
		in := one(series.Curve{}, series.Curve{}, series.Span{From: from, To: to})
		in.Heads, in.Phases = row.heads, row.set
		got := Judge(in).Phases
		if len(got) != len(row.want) {
			t.Errorf("%s: %d phases, want %d: %+v", row.name, len(got), len(row.want), got)
			continue
		}
		for i, w := range row.want {
			end := to
			if i+1 < len(row.want) {
				end = instant(t, row.want[i+1].from)
			}
			if got[i].Name != w.name || got[i].Span != (series.Span{From: instant(t, w.from), To: end}) {
				t.Errorf("%s: %s %s to %s, want %s from %s", row.name, got[i].Name, time.UnixMilli(got[i].Span.From).UTC(), time.UnixMilli(got[i].Span.To).UTC(), w.name, w.from)
			}
		}
	}
}

// While filling, watch and act lie 2 K higher (house rules): 9 °C for a day in November is watched, in March it
// calls for action.
func TestWarmInNovemberIsAnotherThingThanInMarch(t *testing.T) {
	heads := ledger(t, "2025-11-10 00:00", 300, "2025-11-14 00:00", 300, "2026-03-30 00:00", -600)
	for _, row := range []struct {
		day  string
		want State
	}{{"2025-11-12 00:00", Yes}, {"2026-03-12 00:00", Mostly}} {
		s := series.Span{From: heads[0].At, To: heads[2].At}
		day := instant(t, row.day)
		from := float64(s.From) / hourMS
		in := one(through(from, float64(s.To)/hourMS, 1, func(h float64) float64 {
			if d := h*hourMS - float64(day); d >= 0 && d < 24*hourMS {
				return 9
			}
			return 4
		}), series.Curve{}, s)
		in.Heads = heads
		r := Judge(in)
		if got := r.Verdict.Held.State; got != row.want {
			t.Errorf("%s: held %s, want %s", row.day, got, row.want)
		}
		whole := r.Quantities[0].Bands
		if whole[1].High != nil || whole[2].High != nil || whole[0].High == nil || *whole[0].High != 6 {
			t.Error("the limits to watch and to act differ between the phases, so the whole winter has none; the good one is the same")
		}
	}
}

// 100 h of which 10 h at 9 °C are excluded: nothing of them is scored, and no spell or run reaches across.
func TestExcludedTimeIsNotScored(t *testing.T) {
	in := one(through(0, 100, 0.5, func(h float64) float64 {
		if h >= 40 && h <= 60 {
			return 9
		}
		return 4
	}), through(0, 100, 0.5, constant(0.6)), span(0, 100))
	in.Excluded = []series.Span{span(45, 55), span(44, 50), span(200, 300)} // one stretch, 44 to 55
	in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(-1, 101), OnC: 8, OffC: 5}}}}
	r := Judge(in)
	near(t, "known hours", float64(r.Quantities[0].KnownMS)/hourMS, 89, 1e-9)
	near(t, "unknown hours", float64(r.Quantities[0].UnknownMS)/hourMS, 0, 1e-9)
	near(t, "coverage", r.Coverage, 1, 1e-9)
	// Above 6: from 39.5 + 0.5·2/5 to 44, and from 55 to 60 + 0.5·3/5.
	near(t, "hours above", r.Quantities[0].Bands[0].HoursAbove, 4.3+5.3, 1e-9)
	if len(r.Spells) != 2 || !r.Spells[0].Cut || !r.Spells[1].Cut {
		t.Fatalf("spells %+v, want two that are cut", r.Spells)
	}
	// On from 39.5 + 0.5·4/5 to 44 and from 55 to 60 + 0.5·4/5; the thermostat ran on in between.
	near(t, "called for", r.Stages[0].Called.Hours.Mid, 4.1+5.4, 1e-9)
	near(t, "known of the stage", float64(r.Stages[0].Called.KnownMS)/hourMS, 89, 1e-9)
}
