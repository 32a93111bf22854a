package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// simCuts are two power cuts on cold days, simDoors three door openings of half an hour.
var (
	simCuts  = []series.Span{span(80*24+2, 80*24+8), span(110*24+20, 110*24+23)}
	simDoors = []series.Span{span(60*24+10, 60*24+10.5), span(95*24+14, 95*24+14.5), span(130*24+9, 130*24+9.5)}
)

// within says that the bees' time was noted.
func withBees(in Input, b simBarn) Input {
	from, to := int64(b.in*hourMS), int64(b.out*hourMS)
	in.BeesIn, in.BeesOut = &from, &to
	return in
}

// matched is the event that overlaps a true stretch, within an hour of it.
func matched(events []Event, s series.Span) (Event, bool) {
	for _, e := range events {
		if e.Span.From < s.To+hourMS && s.From-hourMS < e.Span.To {
			return e, true
		}
	}
	return Event{}, false
}

// tally counts what was planted and what was seen.
type simTally struct{ planted, found, wrong int }

func (s *simTally) add(events []Event, planted []series.Span) {
	s.planted += len(planted)
	for _, p := range planted {
		if _, ok := matched(events, p); ok {
			s.found++
		}
	}
	for _, e := range events {
		hit := false
		for _, p := range planted {
			hit = hit || e.Span.From < p.To+hourMS && p.From-hourMS < e.Span.To
		}
		if !hit {
			s.wrong++
		}
	}
}

// With records a power cut is certain: an always-on fan stands still. Every one must be found, to two record intervals,
// and none where there was none. Its climb must be the true one within a tenth, or a tenth of a degree, the loggers'
// resolution. Without records and for doors, how many are found and how many are wrong is reported; a barn without
// either must not be full of them.
func TestCutsAndDoorsOfSimulatedBarns(t *testing.T) {
	const seeds = 3
	var recorded, quietRecorded, climbed, quietClimbed, doors, quietDoors, alone, quietAlone simTally
	climbs := [3]int{}
	for seed := uint64(1); seed <= seeds; seed++ {
		for _, quiet := range []bool{false, true} {
			b := simBees(seed)
			cuts, open := &recorded, &doors
			thin, one := &climbed, &alone
			if quiet {
				cuts, open, thin, one = &quietRecorded, &quietDoors, &quietClimbed, &quietAlone
			} else {
				b.cuts, b.doors = simCuts, simDoors
			}
			trace := b.run()
			single := withBees(simInput(b, trace, 5, nil), b)
			pair := withRoomLogger(single, b, trace, 10)
			rich := Judge(withRecords(pair, trace)).Events
			cuts.add(kinds(rich, powerCut), b.cuts)
			open.add(kinds(rich, doorsOpen), b.doors)
			few := Judge(single).Events
			thin.add(kinds(few, powerCut), b.cuts)
			one.add(kinds(few, doorsOpen), b.doors)
			for _, e := range kinds(few, powerCut) {
				if !e.MayBe {
					t.Errorf("seed %d: a climb alone is no more than a may be: %+v", seed, e)
				}
			}
			for _, c := range b.cuts {
				e, ok := matched(kinds(rich, powerCut), c)
				if !ok {
					continue
				}
				if e.Evidence != Recorded || e.MayBe || apart(e.Span.From, c.From) > 4*minuteMS || apart(e.Span.To, c.To) > 4*minuteMS {
					t.Errorf("seed %d: %+v, truly %v", seed, e, c)
				}
				for k, good := range climbRight(t, e, c, trace) {
					if good {
						climbs[k]++
					}
				}
			}
		}
	}
	for _, row := range []struct {
		what         string
		busy, silent simTally
	}{{"cuts with records", recorded, quietRecorded}, {"cuts by the climb alone", climbed, quietClimbed}, {"doors by two loggers", doors, quietDoors}, {"doors by one", alone, quietAlone}} {
		t.Logf("%s: %d of %d found, %d wrong; in quiet barns %d in %d winters", row.what, row.busy.found, row.busy.planted, row.busy.wrong, row.silent.wrong, seeds)
	}
	t.Logf("climb of the first hour within a tenth: %d of %d; in its range: %d; of the later hours: %d", climbs[0], recorded.planted, climbs[2], climbs[1])
	if recorded.found != recorded.planted || recorded.wrong+quietRecorded.wrong > 0 {
		t.Errorf("cuts with records: %+v, quiet %+v", recorded, quietRecorded)
	}
	if climbs[0] < recorded.planted || climbs[2] < recorded.planted {
		t.Errorf("first hours right: %d, in their range %d of %d", climbs[0], climbs[2], recorded.planted)
	}
}

// climbRight says whether the first hour's climb is the true one within a tenth or 0.1 K, whether the later hours' true
// climb lies in the range given, and the first hour's in its own.
func climbRight(t *testing.T, e Event, c series.Span, trace simTrace) [3]bool {
	t.Helper()
	m, end := int(c.From/minuteMS), int(c.To/minuteMS)-2
	first := trace.roomC[m+60] - trace.roomC[m]
	later := (trace.roomC[end] - trace.roomC[m+60]) / float64(end-m-60) * 60
	f, l := figureOf(t, e, "first_hour_k_per_h"), figureOf(t, e, "later_k_per_h")
	t.Logf("first hour %.2f (%.2f to %.2f), truly %.2f; later %.3f (%.3f to %.3f), truly %.3f K/h", f.Mid, f.Low, f.High, first, l.Mid, l.Low, l.High, later)
	return [3]bool{math.Abs(f.Mid-first) <= math.Max(0.1*first, 0.1), l.Low-0.02 <= later && later <= l.High+0.02, f.Low <= first && first <= f.High}
}

// By hand: a room that climbs 2 K in the first hour and 0.5 K in each later one from 4 °C, fans stopped for four hours. It
// reaches 7.5 °C at the end; at 0.5 K/h the line at 8 °C lies an hour further, five hours from the start.
func TestTheClimbIsMeasuredInTwoParts(t *testing.T) {
	room := through(0, 40, 0.25, func(h float64) float64 {
		switch {
		case h < 20:
			return 4
		case h < 21:
			return 4 + 2*(h-20)
		case h <= 24:
			return 6 + 0.5*(h-21)
		}
		return math.Max(4, 7.5-4*(h-24))
	})
	in := one(room, series.Curve{}, span(0, 40))
	until := int64(24 * hourMS)
	in.Notes = []Note{{At: 20 * hourMS, Until: &until, Kind: "power cut"}}
	cuts := kinds(Judge(in).Events, powerCut)
	if len(cuts) != 1 || !cuts[0].Noted || cuts[0].Evidence != YourSetting || cuts[0].MayBe {
		t.Fatalf("%+v, want the noted cut", cuts)
	}
	near(t, "climb", figureOf(t, cuts[0], "climb_k").Mid, 3.5, 1e-9)
	near(t, "first hour", figureOf(t, cuts[0], "first_hour_k_per_h").Mid, 2, 1e-9)
	// A tenth for where one logger hung and a step of 0.1 K are 0.224 K together; above, a lag of a third of an hour at the
	// 1.25 K/h round the end of that hour, and an eighth of a kelvin between quarter-hourly readings.
	near(t, "first hour, low", figureOf(t, cuts[0], "first_hour_k_per_h").Low, 2-0.2236, 1e-4)
	near(t, "first hour, high", figureOf(t, cuts[0], "first_hour_k_per_h").High, 2+0.2236+1.25/3+0.125, 1e-4)
	near(t, "later hours", figureOf(t, cuts[0], "later_k_per_h").Mid, 0.5, 1e-9)
	near(t, "hours to the alarm", figureOf(t, cuts[0], "hours_to_alarm_h").Mid, 5, 1e-6)
	// Without an end in the note the climb itself says how long it was.
	in.Notes[0].Until = nil
	cuts = kinds(Judge(in).Events, powerCut)
	near(t, "climb of a cut without an end", figureOf(t, cuts[0], "climb_k").Mid, 3.5, 1e-9)
	// Half an hour is too short to tell either slope.
	until = int64(20.5 * hourMS)
	in.Notes[0].Until = &until
	cuts = kinds(Judge(in).Events, powerCut)
	if f := figureOf(t, cuts[0], "first_hour_k_per_h"); f.OK || f.Unknown != "too_short" {
		t.Errorf("first hour of half an hour: %+v", f)
	}
}

// Two notes a day apart are two cuts, and one outside the bees' time is none of theirs.
func TestNotesFarApartAreTwoCuts(t *testing.T) {
	in := one(through(0, 100, 0.25, constant(4)), series.Curve{}, span(0, 90))
	in.Notes = []Note{{At: 20 * hourMS, Kind: "power cut"}, {At: 44 * hourMS, Kind: "power cut"}, {At: 95 * hourMS, Kind: "power cut"}}
	cuts := kinds(Judge(in).Events, powerCut)
	if len(cuts) != 2 || cuts[0].Span.From != 20*hourMS || cuts[1].Span.From != 44*hourMS {
		t.Errorf("%+v", cuts)
	}
}

// Two stages of three tripped while the always-on one ran: no power cut.
func TestABreakerIsNoPowerCut(t *testing.T) {
	b := simBees(3)
	trace := b.run()
	in := withBees(simInput(b, trace, 5, nil), b)
	in = withRecords(in, trace)
	for _, k := range []int{3, 4, 5} { // the loggers of stages 2 to 4
		for i, at := range in.Loggers[k].State.Readings.At {
			if at > 80*24*hourMS && at < 81*24*hourMS {
				in.Loggers[k].State.Val[i] = 0
			}
		}
	}
	if cuts := kinds(Judge(in).Events, powerCut); len(cuts) != 0 {
		t.Errorf("%+v, want none", cuts)
	}
}

// Doors the keeper noted are told with what the room did, seen or not.
func TestDoorsAsNoted(t *testing.T) {
	until := int64(31 * hourMS)
	in := one(through(0, 60, 0.25, func(h float64) float64 { return 4 - 0.5*math.Max(0, 1-math.Abs(h-30.5)) }), series.Curve{}, span(0, 60))
	in.Notes = []Note{{At: 30 * hourMS, Until: &until, Kind: "doors open"}}
	open := kinds(Judge(in).Events, doorsOpen)
	if len(open) != 1 || !open[0].Noted || open[0].Evidence != YourSetting {
		t.Fatalf("%+v, want the noted one", open)
	}
	near(t, "before", figureOf(t, open[0], "temperature_before_c").Mid, 4, 0.01)
	near(t, "lowest", figureOf(t, open[0], "lowest_c").Mid, 3.5, 1e-9)
}

// A front that comes in through the fans is no open door: outdoors goes from 0 to 12 °C in an hour and two loggers in the
// room follow by 2 K within twenty minutes of it; a door at 2 °C outdoors, where nothing changed, is one.
func TestAFrontIsNoOpenDoor(t *testing.T) {
	step := func(at, by float64) func(float64) float64 {
		return func(h float64) float64 { return by * math.Min(1, math.Max(0, 3*(h-at))) }
	}
	for _, front := range []bool{true, false} {
		room, change := step(30, 2), func(h float64) float64 { return 12 * math.Min(1, math.Max(0, h-29.5)) }
		if !front {
			room, change = step(30, -2), constant(2)
		}
		in := one(through(0, 60, 1.0/6, func(h float64) float64 { return 5 + room(h) }), series.Curve{}, span(0, 60))
		in.Loggers = append(in.Loggers, Logger{Name: "b", Place: "room", TempC: through(0, 60, 1.0/6, func(h float64) float64 { return 5.2 + room(h) })},
			Logger{Name: "yard", Place: "outdoor", TempC: through(0, 60, 1, change)})
		open := kinds(Judge(in).Events, doorsOpen)
		if (len(open) == 0) != front {
			t.Errorf("front %v: %+v", front, open)
		}
	}
}
