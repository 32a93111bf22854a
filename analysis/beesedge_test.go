package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// point is a temperature at an hour; a story goes from one to the next in straight lines, read every half hour.
type point struct{ h, tempC float64 }

func story(points ...point) series.Curve {
	return through(points[0].h, points[len(points)-1].h, 0.5, func(h float64) float64 {
		i := 1
		for i+1 < len(points) && points[i].h < h {
			i++
		}
		a, b := points[i-1], points[i]
		return math.Round(10*(a.tempC+(b.tempC-a.tempC)*(h-a.h)/(b.h-a.h))) / 10
	})
}

// held are points of a room that a thermostat holds between two temperatures, up and down within six hours.
func held6(from, to, lowC, highC float64) (out []point) {
	for h := from; h < to; h += 6 {
		out = append(out, point{h, lowC}, point{h + 3, highC})
	}
	return out
}

// A logger lay on a table at 20 °C and was hung at hour 100 in a barn at −12 °C that bees warm to −3 °C from hour 170 on. A
// week of −8 °C parts those days from the longest stay; they are still not the table's.
func TestABarnTooColdForAStay(t *testing.T) {
	trace := story(append([]point{{40, 20}, {99, 20}, {99.5, 8}, {100, -12}, {170, -12}, {174, -8}, {190, -3}, {480, -3}, {520, -8}, {680, -8}, {740, 4}}, held6(745, 1600, 4, 5.5)...)...)
	e := beesSeen(staysOf([]Logger{{Name: "one", Place: "room", TempC: trace}}, Logger{}, inTurn)).In
	if at := float64(e.At) / hourMS; math.Abs(at-170) > 4 || e.Sure != EdgeLikely || e.Reason != "grew_warm" {
		t.Errorf("hour %.1f, %+v; want 170, grew warm", at, e)
	}
}

// What each trace tells was written into it: a logger lay on a table at 20 °C or rode in a truck, was hung at hour 100, and the
// bees came at hour 100, or at 130 into a barn that had stood at −2 or at 2.5 °C. Weather that warms an empty barn as far
// brings none, nor does a cold spell.
func TestWhenTheBeesCameToAHungLogger(t *testing.T) {
	table := []point{{40, 20}, {99, 20}, {99.5, 8}}
	winter := held6(150, 1000, 4, 5.5)
	yard := func(before, after float64) series.Curve {
		return story(point{0, before}, point{129, before}, point{150, after}, point{1000, after})
	}
	for _, c := range []struct {
		name     string
		trace    []point
		outdoors series.Curve
		at       float64
		reason   string
	}{
		{"hung with the bees, cold from the road", []point{{100, -1}, {115, 5}}, series.Curve{}, 100, "stood_warmer"},
		{"hung in a cold barn before", []point{{100, -2}, {130, -2}, {140, 4}}, series.Curve{}, 130, "grew_warm"},
		{"hung in a cool barn before", []point{{100, 2.6}, {130, 2.5}, {134, 7.5}}, series.Curve{}, 130, "grew_warm"},
		{"the same, the air outdoors known", []point{{100, 2.6}, {130, 2.5}, {134, 7.5}}, yard(-8, -6), 130, "grew_warm"},
		{"a thaw warmed it", []point{{100, -2}, {130, -2}, {140, 4}}, yard(-8, 6), 100, "stood_warmer"},
		{"a cold spell after", []point{{100, 3}, {106, 4.5}, {112, 3}, {118, 4.5}, {126, -1}, {144, 4}}, series.Curve{}, 100, "stood_warmer"},
	} {
		trace := story(append(append(table, c.trace...), winter...)...)
		e := beesSeen(staysOf([]Logger{{Name: "one", Place: "room", TempC: trace}}, Logger{TempC: c.outdoors}, inTurn)).In
		if math.Abs(float64(e.At)/hourMS-c.at) > 3 || e.Reason != c.reason || e.Sure != EdgeLikely {
			t.Errorf("%s: hour %.1f, %+v; want %v, %s", c.name, float64(e.At)/hourMS, e, c.at, c.reason)
		}
	}
}

// The bees went out of a barn that had been warm for days and stood cold at the end, while they were carried out; from there the
// logger came to a table: it was in the barn until hour 1036. Another stood by a door that was open for two hours two days
// before it was taken away in a truck, at hour 1036 too: the door is not the end.
func TestWhenALoggerWasTakenFromColdRoomsAndPastDoors(t *testing.T) {
	truck := []point{}
	for h := 1037.0; h < 1085; h += 24 {
		truck = append(truck, point{h, -8}, point{h + 12, 7})
	}
	for _, c := range []struct {
		name   string
		end    []point
		within float64
		reason string
	}{
		{"a cold room, then a table", []point{{940, 9}, {1000, 9}, {1004, 3}, {1036, 2}, {1038, 20}, {1060, 20}}, 2, "stood_warmer"},
		{"an open door, then a truck", append([]point{{940, 5}, {988, 5}, {989, -3}, {991, 5}, {1036, 5}}, truck...), 12, "swung_with_days"},
	} {
		trace := story(append(held6(0, 940, 4, 5.5), c.end...)...)
		e := beesSeen(staysOf([]Logger{{Name: "one", Place: "room", TempC: trace}}, Logger{}, inTurn)).Out
		if math.Abs(float64(e.At)/hourMS-1036) > c.within || e.Reason != c.reason {
			t.Errorf("%s: hour %.1f, %+v", c.name, float64(e.At)/hourMS, e)
		}
	}
}

// A week outdoors of 15 °C by day and 8 by night took the barn with it from hour 940 on, and it was held again from 1120 to the
// end: nobody carried the logger out.
func TestAWarmWeekIsNoTakeout(t *testing.T) {
	warm := []point{}
	for h := 940.0; h < 1120; h += 24 {
		warm = append(warm, point{h, 7}, point{h + 12, 19})
	}
	trace := story(append(append(held6(0, 940, 4, 5.5), warm...), held6(1130, 1200, 4, 5.5)...)...)
	if e := beesSeen(staysOf([]Logger{{Name: "one", Place: "room", TempC: trace}}, Logger{}, inTurn)).Out; e.OK() {
		t.Errorf("hour %.1f, %+v", float64(e.At)/hourMS, e)
	}
}

// The keeper says that the bees were in from hour 90 to 1041. The logger was hung at hour 100 and taken to a table at 1036: it stood
// elsewhere for 15 of these hours, give or take the drive. Where the bees' days are the logger's there is nothing to remark.
func TestALoggerElsewhereWhileBeesWereIn(t *testing.T) {
	trace := story(append(append([]point{{40, 20}, {99.5, 20}, {100, 4}}, held6(106, 1036, 4, 5.5)...), point{1036, 4}, point{1036.5, 20}, point{1060, 20})...)
	for _, c := range []struct {
		bees  [2]float64
		hours string
	}{{[2]float64{90, 1041}, "15"}, {[2]float64{100, 1036}, ""}} {
		got := ""
		for _, r := range Judge(one(trace, series.Curve{}, span(c.bees[0], c.bees[1]))).Remarks {
			if r.Code == "logger_elsewhere" {
				got = r.Args[1]
			}
		}
		if got != c.hours {
			t.Errorf("bees from %v to %v: %q h elsewhere, want %q", c.bees[0], c.bees[1], got, c.hours)
		}
	}
}

// The barn had grown to 16 °C within four hours and stayed there for four days, until the logger was driven to a table at hour 1036: if it is
// told at all when it left, then by the drive, not by the warmth of the barn.
func TestAHotBarnBeforeATableIsNoTable(t *testing.T) {
	trace := story(append(held6(0, 940, 4, 5.5), point{940, 5}, point{942, 16}, point{1036, 17}, point{1037, 10}, point{1038, 20}, point{1060, 20})...)
	e := beesSeen(staysOf([]Logger{{Name: "one", Place: "room", TempC: trace}}, Logger{}, inTurn)).Out
	if e.OK() && math.Abs(float64(e.At)/hourMS-1036) > 3 {
		t.Errorf("hour %.1f, %+v", float64(e.At)/hourMS, e)
	}
}
