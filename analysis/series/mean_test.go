package series_test

import (
	"math"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// readingsOf lists a curve's readings as minutes and values; a break is marked by a NaN before it.
func readingsOf(c series.Curve) (minutes, vals []float64) {
	for i, at := range c.Readings.At {
		if slices.Contains(c.Breaks, at) {
			minutes, vals = append(minutes, math.NaN()), append(vals, math.NaN())
		}
		minutes, vals = append(minutes, float64(at)/minute), append(vals, c.Val[i])
	}
	return minutes, vals
}

func TestMean(t *testing.T) {
	const before = 1.0 / minute // 1 ms in minutes
	nan := math.NaN()
	for _, row := range []struct {
		what    string
		lines   []string
		minutes []float64
		vals    []float64
	}{
		{"one logger on the grid is itself", []string{"1 3 2"}, []float64{0, 10, 20}, []float64{1, 3, 2}},
		{"two loggers", []string{"1 3 2", "3 5 6"}, []float64{0, 10, 20}, []float64{2, 4, 4}},
		{"one drops out: a break, no gap", []string{"1 1 1 1", "3 3"},
			[]float64{0, 10 - before, nan, 10, 20, 30}, []float64{2, 2, nan, 1, 1, 1}},
		{"one comes in", []string{"1 1 1", "_ 3 3"},
			[]float64{0, 10 - before, nan, 10, 20}, []float64{1, 1, nan, 2, 2}},
		{"one is away for a while", []string{"1 1 1 1 1 1", "3 3 _ _ 3 3"},
			[]float64{0, 10 - before, nan, 10, 20, 30, 40 - before, nan, 40, 50},
			[]float64{2, 2, nan, 1, 1, 1, 1, nan, 2, 2}},
		{"one replaces the other", []string{"1 1 1", "_ _ 5 5"},
			[]float64{0, 10, 20 - before, nan, 20, 30}, []float64{1, 1, 1, nan, 5, 5}},
		{"no logger for long: a gap", []string{"1 1 _ _ 3 3"}, []float64{0, 10, 40, 50}, []float64{1, 1, 3, 3}},
		{"no logger for one interval: a gap too", []string{"1 1 | 3 3"}, []float64{0, 10, nan, 20, 30}, []float64{1, 1, nan, 3, 3}},
		{"a reading that nothing joins has no interval", []string{"1 1 1", "_ 9 _"}, []float64{0, 10, 20}, []float64{1, 1, 1}},
		{"no loggers", nil, nil, nil},
		{"no readings", []string{"", ""}, nil, nil},
	} {
		var curves []series.Curve
		for _, l := range row.lines {
			curves = append(curves, line(t, l))
		}
		got := series.Mean(curves, tenMin)
		minutes, vals := readingsOf(got)
		if len(minutes) != len(row.minutes) {
			t.Errorf("%s: %v: %v", row.what, minutes, vals)
			continue
		}
		for i := range minutes {
			near(t, row.what+", minute", minutes[i], row.minutes[i], 1e-9)
			near(t, row.what+", value", vals[i], row.vals[i], 1e-12)
		}
	}
}

func TestMeanOffTheGrid(t *testing.T) {
	// Every 10 minutes from :03, on a grid of 5: the grid points inside the line, interpolated.
	c := line(t, "0 10 20")
	for i := range c.Readings.At {
		c.Readings.At[i] += 3 * minute
	}
	got := series.Mean([]series.Curve{c}, 5*minute)
	minutes, vals := readingsOf(got)
	if !slices.Equal(minutes, []float64{5, 10, 15, 20}) {
		t.Fatalf("grid %v", minutes)
	}
	for i, want := range []float64{2, 7, 12, 17} {
		near(t, "value", vals[i], want, 1e-12)
	}
}

func TestMeanBeforeTheDropIsTheOldSets(t *testing.T) {
	// The second logger ends at 10 min on 5; 1 ms earlier the mean of both lines is 3 - 2e-4/60, not the
	// first logger's.
	got := series.Mean([]series.Curve{line(t, "1 1 1"), line(t, "3 5")}, tenMin)
	near(t, "value 1 ms before", got.Val[1], (1+5-2.0/tenMin)/2, 1e-12)
}

func TestNoRunEdgeFromALoggerDroppingOut(t *testing.T) {
	// A warm and a cool logger, limit 8: the mean is 9 while both are known and 7 after the warm one
	// dropped out. The run ends there, but is marked cut; and only the millisecond is unknown.
	got := series.Mean([]series.Curve{line(t, "7 7 7 7 7"), line(t, "11 11 11")}, tenMin)
	s := whole(got)
	runs := got.Above(s, 8)
	if len(runs) != 1 || !runs[0].CutTo || runs[0].To != 20*minute-1 {
		t.Errorf("runs %+v", runs)
	}
	if below := got.Below(s, 8); len(below) != 1 || !below[0].CutFrom {
		t.Errorf("below %+v", below)
	}
	if lost := s.To - s.From - got.KnownMS(s); lost != 1 {
		t.Errorf("%d ms unknown, want 1", lost)
	}
}

func TestMeanOfAnAbsurdStep(t *testing.T) {
	if got := series.Mean([]series.Curve{line(t, "1 1")}, 0); got.Len() != 0 {
		t.Errorf("step 0 gave %d readings", got.Len())
	}
}
