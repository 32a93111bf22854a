package desk_test

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// The house's worked example from a file alone: one logger, every half hour in °F, on a table at about 68 °F from 20 October,
// in the barn at 39.2 °F (4 °C) from 9 November to 7 April, on the table again to 20 April. Nobody says when the bees were
// in: both days are read off the trace, within a day, and no hour between them lies outside the band.
func TestTheBeesTimeIsReadOffALogger(t *testing.T) {
	plan := strings.Replace(strings.Replace(thinPlan, "bees_in = 2026-01-01T00:00:00\n", "", 1), "bees_out = 2026-01-11T00:00:00\n", "", 1)
	in, out := time.Date(2025, 11, 9, 15, 0, 0, 0, time.UTC), time.Date(2026, 4, 7, 9, 0, 0, 0, time.UTC)
	files := func(end time.Time) map[string]string {
		var log strings.Builder
		log.WriteString("Time,Temp (°F)\n")
		for at := time.Date(2025, 10, 20, 0, 0, 0, 0, time.UTC); at.Before(end); at = at.Add(30 * time.Minute) {
			tempF := 68 + float64(at.Hour()%5)/2
			if !at.Before(in) && at.Before(out) {
				tempF = 39.2 + float64(at.Hour()%3)/5
			}
			fmt.Fprintf(&log, "%s,%.1f\n", at.Format("2006-01-02 15:04:05"), tempF)
		}
		return map[string]string{"plan.toml": plan, "one.csv": log.String()}
	}
	b := reviewed(t, files(time.Date(2026, 4, 20, 0, 0, 0, 0, time.UTC))).Barns[0]
	for _, edge := range []struct {
		what string
		got  *string
		want time.Time
	}{{"in", b.BeesIn, in}, {"out", b.BeesOut, out}, {"seen in", b.BeesSeen.In.At, in}, {"seen out", b.BeesSeen.Out.At, out}} {
		got, err := time.Parse(time.RFC3339, *edge.got)
		if err != nil || got.Sub(edge.want).Abs() > 24*time.Hour {
			t.Errorf("%s: %v %v, want %v within a day", edge.what, got, err, edge.want)
		}
	}
	if b.BeesTime != "worked_out" || b.BeesSeen.In.Reason != "stood_warmer" || b.BeesSeen.Out.Sure != "sure" || b.Verdict.Held.State != "yes" {
		t.Errorf("%s %+v %+v", b.BeesTime, b.BeesSeen, b.Verdict.Held)
	}
	if good := b.Quantities[0].Bands[0]; good.Name != "good" || good.HoursAbove != 0 || good.HoursBelow != 0 {
		t.Errorf("outside the band: %+v", good)
	}
	for _, kind := range []string{"carry in", "takeout"} {
		if e := eventOf(t, b, kind); e.Evidence != "worked_out" || e.MayBe != (kind == "carry in") { // the bees may have come after the logger
			t.Errorf("%+v", e)
		}
	}
	// Read out while it still hung in the barn: only the first day can be read off.
	b = reviewed(t, files(out)).Barns[0]
	if b.BeesTime != "assumed" || b.BeesSeen.In.At == nil || b.BeesSeen.Out.At != nil || b.BeesSeen.Out.Reason != "record_ends_inside" {
		t.Errorf("%s %+v", b.BeesTime, b.BeesSeen)
	}
	if b.Remarks[0].Code != "bees_time_half_seen" {
		t.Errorf("%+v", b.Remarks)
	}
}
