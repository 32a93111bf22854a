package series_test

import (
	"math"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

func TestRuns(t *testing.T) {
	const open, cut = false, true
	// Edges in minutes, worked by hand: a reading every 10 minutes, limit 8, a gap limit of 10 minutes.
	type run struct {
		from, to       float64
		cutFrom, cutTo bool
		peak           float64
	}
	for _, row := range []struct {
		what, line string
		above      []run
		below      []run
	}{
		{"crossing up and down", "7 9 11 8", []run{{5, 30, open, open, 11}}, []run{{0, 5, cut, open, 7}}},
		{"touching the limit ends a run", "9 8 9", []run{{0, 10, cut, open, 9}, {10, 20, open, cut, 9}}, nil},
		{"a plateau on the limit is inside", "8 9 8 8 9 8", []run{{0, 20, open, open, 9}, {30, 50, open, open, 9}}, nil},
		{"starting on the limit is no cut", "8 9 9", []run{{0, 20, open, cut, 9}}, nil},
		{"a gap cuts", "9 9 _ 9 7", []run{{0, 10, cut, cut, 9}, {30, 35, cut, open, 9}}, []run{{35, 40, open, cut, 7}}},
		{"a break cuts", "9 9 | 10 10", []run{{0, 10, cut, cut, 9}, {20, 30, cut, cut, 10}}, nil},
		{"a reading that nothing joins", "7 7 _ 9 _ 7 7", nil, []run{{0, 10, cut, cut, 7}, {50, 60, cut, cut, 7}}},
		{"never", "7 8 7", nil, []run{{0, 10, cut, open, 7}, {10, 20, open, cut, 7}}},
		{"nothing at all", "", nil, nil},
		{"one reading", "9", nil, nil},
	} {
		c := line(t, row.line)
		s := series.Span{From: -hour, To: 2 * hour}
		for name, got := range map[string][]series.Run{"above": c.Above(s, 8), "below": c.Below(s, 8)} {
			want := row.above
			if name == "below" {
				want = row.below
			}
			if len(got) != len(want) {
				t.Errorf("%s, %s: %+v", row.what, name, got)
				continue
			}
			for i, w := range want {
				want := series.Run{From: w.from * minute, To: w.to * minute, CutFrom: w.cutFrom, CutTo: w.cutTo, Peak: w.peak}
				if got[i] != want {
					t.Errorf("%s, %s: %+v, want %+v", row.what, name, got[i], want)
				}
			}
		}
	}
}

func TestRunsAreCutAtTheSpan(t *testing.T) {
	c := line(t, "9 10 11 10 9")
	got := c.Above(series.Span{From: 5 * minute, To: 15 * minute}, 8)
	want := []series.Run{{From: 5 * minute, To: 15 * minute, CutFrom: true, CutTo: true, Peak: 10.5}}
	if !slices.Equal(got, want) {
		t.Errorf("%+v", got)
	}
}

func TestRunsOfOddLimits(t *testing.T) {
	c := line(t, "9 10 11")
	if got := c.Above(whole(c), math.NaN()); got != nil {
		t.Errorf("NaN: %+v", got)
	}
	if got := c.Above(whole(c), math.Inf(1)); got != nil {
		t.Errorf("above +Inf: %+v", got)
	}
	if got := c.Above(whole(c), math.Inf(-1)); len(got) != 1 || got[0].Peak != 11 || !got[0].CutFrom || !got[0].CutTo {
		t.Errorf("above -Inf: %+v", got)
	}
	if got := c.Below(whole(c), math.Inf(1)); len(got) != 1 || got[0].Peak != 9 {
		t.Errorf("below +Inf: %+v", got)
	}
}
