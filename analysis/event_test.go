package analysis

import (
	"math"
	"slices"
	"testing"
	"time"

	"thawbook/analysis/series"
)

// kinds are the events of a kind.
func kinds(events []Event, kind string) (out []Event) {
	for _, e := range events {
		if e.Kind == kind {
			out = append(out, e)
		}
	}
	return out
}

// figureOf is a figure of an event by its name; the test fails where there is none.
func figureOf(t *testing.T, e Event, name string) Figure {
	t.Helper()
	for _, f := range e.Figures {
		if f.Name == name {
			return f.Figure
		}
	}
	t.Fatalf("%s has no %s: %+v", e.Kind, name, e.Figures)
	return Figure{}
}

// The ledger's worked example of the house rules, with a room that stands at 4 °C, at 3 °C while the batch is out: 2 March
// 10:00 to 8 March 18:00 are 6 d 8 h.
func TestABatchOutAndBack(t *testing.T) {
	start := instant(t, "2025-11-10 12:00")
	out, back := instant(t, "2026-03-02 10:00"), instant(t, "2026-03-08 18:00")
	c := series.Curve{MaxStepMS: 2 * hourMS}
	for at := start; at <= instant(t, "2026-04-10 12:00"); at += hourMS {
		v := 4.0
		if at >= out && at <= back {
			v = 3
		}
		c.Readings.At, c.Val = append(c.Readings.At, at), append(c.Val, v)
	}
	in := one(c, series.Curve{}, series.Span{})
	in.BeesIn, in.BeesOut = nil, nil
	in.Heads = []HeadChange{{start, 600}, {instant(t, "2026-02-01 09:00"), -8}, {out, -150}, {back, 148}, {instant(t, "2026-04-10 12:00"), -590}}
	all := Judge(in).Events
	batches := kinds(all, batchOut)
	if len(batches) != 1 {
		t.Fatalf("%d batches, want one; dead-outs and the takeout are none: %+v", len(batches), batches)
	}
	b := batches[0]
	near(t, "out", figureOf(t, b, "hives_out").Mid, 150, 0)
	near(t, "back", figureOf(t, b, "hives_back").Mid, 148, 0)
	near(t, "days", figureOf(t, b, "days").Mid, 6+8.0/24, 1e-9)
	near(t, "before", figureOf(t, b, "temperature_before_c").Mid, 4, 0.03)
	near(t, "meanwhile", figureOf(t, b, "temperature_meanwhile_c").Mid, 3, 0.03)
	near(t, "after", figureOf(t, b, "temperature_after_c").Mid, 4, 0.03)
	if f := figureOf(t, b, "humidity_before_percent"); f.OK {
		t.Errorf("a thermometer knows no humidity: %+v", f)
	}
	if c := kinds(all, carryIn); len(c) != 1 || c[0].Span.From != start || c[0].Evidence != YourSetting {
		t.Errorf("carry-in %+v", c)
	}
	if c := kinds(all, takeout); len(c) != 1 || c[0].Span.To != instant(t, "2026-04-10 12:00") {
		t.Errorf("takeout %+v", c)
	}
}

// Nobody said when the bees went in and the trace does not show it: there is no carry-in to tell of.
// Whatever their kinds, events stand in order of time: doors noted on the second day come before a cut noted on the third,
// the bees' coming in first and their leaving last.
func TestEventsStandInOrderOfTime(t *testing.T) {
	in := one(through(0, 120, 0.5, constant(4)), series.Curve{}, span(0, 120))
	noted := func(kind string, from, to float64) Note {
		until := int64(to * hourMS)
		return Note{At: int64(from * hourMS), Until: &until, Kind: kind}
	}
	in.Notes = []Note{noted("power cut", 60, 62), noted("doors open", 30, 31), noted("power cut", 20, 21), noted("doors open", 100, 101)}
	var at []float64
	for _, e := range Judge(in).Events {
		at = append(at, float64(e.Span.From)/hourMS)
	}
	if want := []float64{0, 20, 30, 60, 100, 120}; !slices.Equal(at, want) {
		t.Errorf("events at %v h, want %v", at, want)
	}
}

func TestNoCarryInWithoutEvidence(t *testing.T) {
	in := one(through(0, 40*24, 1, constant(4)), series.Curve{}, span(0, 1))
	in.BeesIn, in.BeesOut = nil, nil
	if e := Judge(in).Events; len(e) != 0 {
		t.Errorf("%+v, want none", e)
	}
}

// A light logger in a dark room from midnight UTC, every half hour: lit 10:00–14:00 on days 3 to 9, from 9:00 on
// in the first four of them, and once on day 12 from 20:00 to 21:00. In Helsinki's winter (UTC+2) the leak is from 11:00,
// which more than half of its days share, to 16:00.
func TestLightInTheDark(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Helsinki")
	if err != nil {
		t.Fatal(err)
	}
	lit := func(h float64) bool {
		day, hour := math.Floor(h/24), math.Mod(h, 24)
		from := 10.0
		if day <= 6 {
			from = 9
		}
		return day >= 3 && day <= 9 && hour >= from && hour < 14 || day == 12 && hour >= 20 && hour < 21
	}
	for _, lux := range []float64{1, 40} {
		in := one(through(0, 480, 1, constant(4)), series.Curve{}, span(0, 480))
		in.Zone = zone
		in.Loggers = append(in.Loggers, Logger{Name: "eye", Place: "room", Light: through(0, 480, 0.5, func(h float64) float64 {
			if lit(h) {
				return lux
			}
			return 0
		})}, Logger{Name: "yard", Place: "outdoor", Light: through(0, 480, 1, constant(9000))})
		all := Judge(in).Events
		seen, leaks := kinds(all, lightSeen), kinds(all, lightLeak)
		if len(seen) != 8 || len(leaks) != 1 {
			t.Fatalf("%v lux: %d stretches and %d leaks, want 8 and 1", lux, len(seen), len(leaks))
		}
		near(t, "minutes", figureOf(t, seen[0], "minutes").Mid, 300, 30)
		near(t, "days", figureOf(t, leaks[0], "days").Mid, 7, 0)
		near(t, "from hour", figureOf(t, leaks[0], "from_hour").Mid, 11, 0.5)
		near(t, "to hour", figureOf(t, leaks[0], "to_hour").Mid, 16, 0.5)
		if first, last := leaks[0].Span.From/(24*hourMS), leaks[0].Span.To/(24*hourMS); first != 3 || last != 9 {
			t.Errorf("from day %d to %d, want 3 to 9", first, last)
		}
		if lux > 1 {
			near(t, "peak", figureOf(t, seen[0], "peak_lux").Mid, 40, 0)
		}
	}
}

// By hand: outdoors above 3 °C (three below the band's 6) from 34 to 42 h; the room falls from 5 to 3 °C from 20 to 30 h,
// stands there, and climbs half a degree an hour from 34 h on: it passes 6 °C at 40 h, six hours in, and is back at 43 h.
func TestAWarmDayIsCoastedThrough(t *testing.T) {
	room := through(0, 48, 0.5, func(h float64) float64 {
		switch {
		case h < 20:
			return 5
		case h < 30:
			return 5 - 0.2*(h-20)
		case h < 34:
			return 3
		case h <= 42:
			return 3 + 0.5*(h-34)
		}
		return math.Max(5, 7-(h-42))
	})
	outdoor := through(0, 48, 0.5, func(h float64) float64 {
		if h >= 34 && h <= 42 {
			return 10
		}
		return -2
	})
	in := one(room, series.Curve{}, span(0, 48))
	in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: outdoor})
	all := Judge(in).Events
	days, nights := kinds(all, warmDay), kinds(all, nightCooling)
	if len(days) != 1 || len(nights) != 1 {
		t.Fatalf("%d days, %d nights, want one of each: %+v", len(days), len(nights), all)
	}
	// The outdoor line passes 3 °C 5/12 of a step after 33.5 h.
	near(t, "coasted", figureOf(t, days[0], "coasted_h").Mid, 40-(33.5+0.5*5/12), 1e-6)
	near(t, "cooled", figureOf(t, nights[0], "cooled_k").Mid, 2, 1e-9)
	near(t, "night outdoors", figureOf(t, nights[0], "outdoors_c").Mid, -2, 1e-9)
	in.Loggers = in.Loggers[:1]
	if e := Judge(in).Events; len(kinds(e, warmDay)) != 0 {
		t.Errorf("without weather: %+v", e)
	}
}

// A keeper who looks in every Wednesday and Saturday from 11:00 to 11:30 for ten weeks has lit the same half hour on
// twenty days, four of any fortnight: no leak. Five days running are one.
func TestVisitsEveryFewDaysAreNoLeak(t *testing.T) {
	lamp := func(days ...int) Input {
		in := one(through(0, 75*24, 1, constant(4)), series.Curve{}, span(0, 75*24))
		in.Loggers = append(in.Loggers, Logger{Name: "eye", Place: "room", Light: through(0, 75*24, 0.25, func(h float64) float64 {
			if day, hour := int(h/24), math.Mod(h, 24); slices.Contains(days, day) && hour >= 11 && hour < 11.5 {
				return 60
			}
			return 0
		})})
		return in
	}
	var visits []int
	for week := range 10 {
		visits = append(visits, 7*week+2, 7*week+5)
	}
	for _, row := range []struct {
		days  []int
		leaks int
	}{{visits, 0}, {append(slices.Clone(visits), 71, 72, 73, 74), 1}} {
		all := Judge(lamp(row.days...)).Events
		if n := len(kinds(all, lightLeak)); n != row.leaks {
			t.Errorf("%d leaks, want %d", n, row.leaks)
		}
		if n := len(kinds(all, lightSeen)); n != len(row.days) {
			t.Errorf("%d stretches of light, want %d", n, len(row.days))
		}
	}
}

// Light from 7:20 to 7:40 on six days running belongs to two half hours, 7:00 and 7:30: the leak ends at 8:00.
func TestALeakReachesIntoItsLastHalfHour(t *testing.T) {
	in := one(through(0, 240, 1, constant(4)), series.Curve{}, span(0, 240))
	in.Loggers = append(in.Loggers, Logger{Name: "eye", Place: "room", Light: through(0, 240, 1.0/6, func(h float64) float64 {
		minute := math.Round(60 * math.Mod(h, 24))
		return oneIf(h < 6*24 && minute >= 440 && minute < 460)
	})})
	leaks := kinds(Judge(in).Events, lightLeak)
	if len(leaks) != 1 {
		t.Fatalf("%d leaks, want 1", len(leaks))
	}
	near(t, "from hour", figureOf(t, leaks[0], "from_hour").Mid, 7, 0)
	near(t, "to hour", figureOf(t, leaks[0], "to_hour").Mid, 8, 0)
}
