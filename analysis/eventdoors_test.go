package analysis

import (
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
