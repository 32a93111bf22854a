package sampledata_test

import (
	"context"
	"math"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// A humidity that sticks is pointed out for the very days it stuck, a logger that was carried out late from when that
// was; nothing else in these winters looks odd, and nothing in the thin one.
func TestWhatLooksOddIsWhatWasPlanted(t *testing.T) {
	r := judged(t, rich)
	proposals, _, err := engine.Proposals(context.Background(), r.Result)
	if err != nil || len(proposals) != 2 {
		t.Fatalf("%v, %+v", err, proposals)
	}
	stuck := r.truth.Barns[1].Loggers[1].Channels[1].Stuck
	carried := r.truth.Barns[0].Loggers[1].InHouse[0]
	for _, p := range proposals {
		span := p.Spans[0]
		switch p.Remark.Code {
		case engine.DoubtStuck:
			if p.Remark.Args[0] != "Rowan south" {
				t.Errorf("stuck is said to be %v", p.Remark.Args)
			}
			within(t, "stuck from", 0, hoursAfter(span.From, stuck.Start)-1, hoursAfter(span.From, stuck.Start)+1)
			within(t, "stuck to", 0, hoursAfter(span.To, stuck.End)-1, hoursAfter(span.To, stuck.End)+1)
		case engine.DoubtCarried:
			if p.Remark.Args[0] != "Alder west" {
				t.Errorf("carried out is said to be %v", p.Remark.Args)
			}
			within(t, "carried out", 0, hoursAfter(span.From, carried.Start)-2, hoursAfter(span.From, carried.Start)+2)
		default:
			t.Errorf("%+v", p)
		}
	}
	within(t, "seen to be carried out", 0, hoursAfter(r.Barns[0].Seen.Out.At, carried.Start)-1, hoursAfter(r.Barns[0].Seen.Out.At, carried.Start)+1)
	if odd, _, err := engine.Proposals(context.Background(), judged(t, thin).Result); err != nil || len(odd) > 0 {
		t.Errorf("in the thin winter: %v, %+v", err, odd)
	}
}

// The clock that gains half an hour is set right by the keeper's three looks at his watch: every reading stands within
// a minute of when it was taken. What both read-outs hold is counted once.
func TestTheClockThatGainsIsSetRight(t *testing.T) {
	r := judged(t, rich)
	truth := r.truth.Barns[0].Loggers[0]
	at := r.Inputs[0].Loggers[0].TempC.Readings.At
	if r.Inputs[0].Loggers[0].Name != truth.Name || truth.ClockGainMin < 30 {
		t.Fatalf("%s gains %g min", r.Inputs[0].Loggers[0].Name, truth.ClockGainMin)
	}
	const minuteH = 1.0 / 60
	first, last := hoursAfter(at[0], truth.Files[0].First), hoursAfter(at[len(at)-1], truth.Files[1].Last)
	within(t, "first reading", 0, first-minuteH, first+minuteH)
	within(t, "last reading", 0, last-minuteH, last+minuteH)
	steps := float64(at[len(at)-1]-at[0]) / float64(truth.IntervalS*1000)
	if want := int(math.Round(steps*(1+31.0/(158*24*60)))) + 1; len(at) != want {
		t.Errorf("%d readings, want %d", len(at), want)
	}
}

// The clocks of the demo's loggers differ (UTC, local with and without summer time, one gains); on one clock
// the two room loggers of a barn agree within their errors at every hour.
func TestLoggersOfABarnAgreeOnOneClock(t *testing.T) {
	r := judged(t, rich)
	for _, in := range r.Inputs {
		var room []analysis.Logger
		for _, l := range in.Loggers {
			if l.Place == "room" {
				room = append(room, l)
			}
		}
		if len(room) != 2 {
			t.Fatalf("%s: %d room loggers, want 2", in.Name, len(room))
		}
		worst, n := 0.0, 0
		for at := *in.BeesIn; at < *in.BeesOut; at += time.Hour.Milliseconds() {
			a, okA := room[0].TempC.At(at)
			b, okB := room[1].TempC.At(at)
			if okA && okB {
				worst, n = math.Max(worst, math.Abs(a-b)), n+1
			}
		}
		if n < 3000 || worst > 2 {
			t.Errorf("%s: over %d hours the loggers differ by up to %.2f K", in.Name, n, worst)
		}
	}
}

// The read-outs that overlap, the clock that was put forward and the one that was held against a watch are each said
// once, of the logger they are planted in; the lines two files share are counted by hand: 7002 of the 10 411 of the first
// come before the second begins (see TestFilesParse).
func TestWhatTheRecordsLackIsRemarked(t *testing.T) {
	r := judged(t, rich)
	for _, want := range []struct {
		code, logger string
		count        int
	}{
		{engine.SameReadings, "Alder east", 10411 - 7002},
		{engine.ClockAnchored, "Alder east", 3},
		{engine.ClockSkippedHour, "Rowan north", 1},
	} {
		var said []series.Remark
		for _, m := range r.Remarks {
			if m.Code == want.code {
				said = append(said, m)
			}
		}
		if len(said) != 1 || said[0].Args[0] != want.logger || said[0].Count != want.count {
			t.Errorf("%s: %+v, want one of %s, %d times", want.code, said, want.logger, want.count)
		}
	}
}

// Where a battery was empty nothing is known: the wall's surface is unknown from its last reading until the bees are out.
func TestAnEmptyBatteryLeavesUnknownHours(t *testing.T) {
	r := judged(t, rich)
	wall := r.truth.Barns[1].Loggers[3]
	want := hoursAfter(r.Barns[1].BeesOut, wall.Files[0].Last)
	for _, q := range r.Barns[1].Quantities {
		if q.Quantity == "surface_temperature" && q.Logger == wall.Name && q.Phase == "" {
			within(t, "hours unknown", want, float64(q.UnknownMS)/series.HourMS-0.01, float64(q.UnknownMS)/series.HourMS+0.01)
			return
		}
	}
	t.Error("the wall's surface is not in the review")
}
