package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// A door lets the room go towards the air outdoors, whichever way that is; where outdoors is not known, down.
func TestADoorsStepGoesTowardsTheAirOutdoors(t *testing.T) {
	room := line(0, 1, 4, 4, 4)
	step := func(change float64) sharpStep { return sharpStep{span(1, 1.5), change} }
	for _, row := range []struct {
		name    string
		change  float64
		outdoor series.Curve
		want    bool
	}{
		{"down to the frost", -2, line(0, 1, -10, -10, -10), true},
		{"up in frost", 2, line(0, 1, -10, -10, -10), false},
		{"up to a warm day", 2, line(0, 1, 15, 15, 15), true},
		{"down on a warm day", -2, line(0, 1, 15, 15, 15), false},
		{"down, outdoors unknown", -2, series.Curve{}, true},
		{"up, outdoors unknown", 2, series.Curve{}, false},
	} {
		if got := goesTowards(step(row.change), room, row.outdoor); got != row.want {
			t.Errorf("%s: %v", row.name, got)
		}
	}
}

// Two traces show a step between hours 2 and 3, the larger of 3 K down; those before and after, though larger, do not
// count, and one that only touches the stretch neither.
func TestTheLargestStepOfAStretch(t *testing.T) {
	traces := [][]sharpStep{
		{{span(0, 0.5), -9}, {span(2, 2.4), -1.5}},
		{{span(2.5, 2.9), -3}, {span(3, 3.4), -8}},
		{{span(1, 2), -7}, {span(5, 5.4), -9}},
	}
	n, change := largest(traces, span(2, 3))
	if n != 2 || change != -3 {
		t.Errorf("%d traces, %v K; want 2, −3 K", n, change)
	}
}

// One logger shows an open door by its temperature and its dew point both: where the room cools by 2 K within twenty minutes
// and its water stays (the humidity rises as the Magnus formula has it, 17.62 and 243.12 °C over water), it
// is none; where the humidity stays at 70 %, so that the dew point falls as well, it may be one. Of two loggers the
// temperatures are enough. Where fans move the humidity by 4 points, 0.8 K of dew point, within twenty minutes of every other
// hour, a fall of 2 K is two and a half times that: it may be a door.
func TestOneLoggerShowsADoorByItsWaterToo(t *testing.T) {
	temp := func(h float64) float64 { return 4 - 2*math.Min(1, math.Max(0, 3*(h-30))) }
	saturated := func(c float64) float64 { return math.Exp(17.62 * c / (243.12 + c)) }
	for _, c := range []struct {
		name   string
		relHum func(h float64) float64
		two    bool
		want   int
	}{
		{"its water stays", func(h float64) float64 { return 0.7 * saturated(4) / saturated(temp(h)) }, false, 0},
		{"its water goes too", func(float64) float64 { return 0.7 }, false, 1},
		{"its water goes further than with the fans", func(h float64) float64 {
			return 0.7 + 0.04*math.Min(1, math.Max(0, 3*math.Mod(h+1, 2))) - 0.04*math.Max(0, 3*(math.Mod(h+1, 2)-5.0/3))
		}, false, 1},
		{"two loggers", func(h float64) float64 { return 0.7 * saturated(4) / saturated(temp(h)) }, true, 1},
	} {
		in := one(through(0, 60, 1.0/6, temp), through(0, 60, 1.0/6, c.relHum), span(0, 60))
		if c.two {
			second := in.Loggers[0]
			second.Name = "second"
			in.Loggers = append(in.Loggers, second)
		}
		if open := kinds(Judge(in).Events, doorsOpen); len(open) != c.want {
			t.Errorf("%s: %d openings, want %d: %+v", c.name, len(open), c.want, open)
		}
	}
}

// A room that climbed by 4 K within six hours and falls back by 3 K within twenty minutes, as when fans start that had stood, was
// not opened; one that falls as far from where it was all day may have been.
func TestFallingBackFromAClimbIsNoDoor(t *testing.T) {
	for _, climbed := range []bool{true, false} {
		temp := func(h float64) float64 {
			base := 5.0
			if climbed {
				base += 4 * math.Min(1, math.Max(0, (h-24)/6))
			}
			return base - 3*math.Min(1, math.Max(0, 3*(h-30)))
		}
		in := one(through(0, 60, 1.0/6, temp), series.Curve{}, span(0, 60))
		second := in.Loggers[0]
		second.Name = "second"
		in.Loggers = append(in.Loggers, second)
		if open := kinds(Judge(in).Events, doorsOpen); (len(open) == 0) != climbed {
			t.Errorf("climbed %v: %+v", climbed, open)
		}
	}
}

// A contact on a door, whichever way it is wired, tells an opening from 30 to 31 h and one from 40 h for six minutes; one of
// two minutes is passed over. The step the room makes at 30 h is the same opening, that at 50 h another, which the contact,
// should it be on another door, does not tell. Two openings a quarter of an hour apart are one.
func TestAContactTellsWhenADoorStoodOpen(t *testing.T) {
	temp := func(h float64) float64 {
		fall := func(at float64) float64 { return math.Min(1, math.Max(0, 3*(h-at))) }
		return 5 - 2*fall(30) + 2*math.Min(1, math.Max(0, (h-32)/8)) - 2*fall(50)
	}
	opened := []series.Span{span(20, 20+2.0/60), span(30, 30.5), span(30.75, 31), span(40, 40.1)}
	for _, closedIs := range []float64{0, 1} {
		in := one(through(0, 120, 1.0/6, temp), series.Curve{}, span(0, 120))
		second := in.Loggers[0]
		second.Name = "second"
		contact := recordOver("", 120, opened...)
		contact.Name, contact.Place = "contact", "door"
		for i, v := range contact.State.Val {
			contact.State.Val[i] = math.Abs(v - closedIs)
		}
		in.Loggers = append(in.Loggers, second, contact)
		open := kinds(Judge(in).Events, doorsOpen)
		if len(open) != 3 {
			t.Fatalf("closed is %v: %+v", closedIs, open)
		}
		for i, want := range []struct {
			series.Span
			evidence Evidence
		}{{span(30, 31), Recorded}, {span(40, 40.1), Recorded}, {span(50, 50+1.0/3), WorkedOut}} {
			if e := open[i]; e.Evidence != want.evidence || e.Evidence == Recorded && e.Span != want.Span || math.Abs(float64(e.Span.From-want.Span.From)) > minuteMS {
				t.Errorf("closed is %v: opening %d: %+v, want %+v", closedIs, i, e, want)
			}
		}
	}
}
