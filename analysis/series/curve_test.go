package series_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

func TestNewReadingsRefusesWhatBreaksTheRules(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for what, in := range map[string]series.Readings{
		"unequal lengths": {At: []int64{1, 2}, Val: []float64{1}},
		"equal instants":  {At: []int64{1, 1}, Val: []float64{1, 2}},
		"falling":         {At: []int64{2, 1}, Val: []float64{1, 2}},
		"NaN":             {At: []int64{1, 2}, Val: []float64{1, nan}},
		"Inf":             {At: []int64{1}, Val: []float64{inf}},
		"too far":         {At: []int64{math.MaxInt64}, Val: []float64{1}},
		"too long ago":    {At: []int64{math.MinInt64, 0}, Val: []float64{1, 1}},
	} {
		if r, err := series.NewReadings(in.At, in.Val); err == nil || r.Len() != 0 {
			t.Errorf("%s: accepted, %d readings", what, r.Len())
		}
	}
	r, err := series.NewReadings([]int64{-5, 0, 7}, []float64{1, 2, 3})
	if err != nil || r.Len() != 3 {
		t.Errorf("good readings: %v, %d", err, r.Len())
	}
}

func TestInterval(t *testing.T) {
	for _, row := range []struct {
		at   []int64
		want int64
	}{
		{nil, 0},
		{[]int64{5}, 0},
		{[]int64{0, 10, 20, 50, 60}, 10},
		{[]int64{0, 10, 40, 50, 80}, 10},  // tie of 10 and 30: the smaller
		{[]int64{0, 30, 40, 70, 80}, 10},  // the same, other order
		{[]int64{0, 30, 60, 70, 100}, 30}, // the mode, not the smallest
	} {
		r := series.Readings{At: row.at, Val: make([]float64, len(row.at))}
		if got := r.Interval(); got != row.want {
			t.Errorf("%v: interval %d, want %d", row.at, got, row.want)
		}
	}
}

func TestAtAndKnown(t *testing.T) {
	c := line(t, "20 21+0.5x2 _ _ 23 | 24 25")
	for _, row := range []struct {
		at    int64
		want  float64
		known bool
	}{
		{-1, 0, false},                     // before the first reading
		{0, 20, true},                      //
		{4 * minute, 20.4, true},           // on the line
		{tenMin, 21, true},                 //
		{30 * minute, 22, true},            // last before the gap
		{30*minute + 1, 0, false},          // in the gap
		{60 * minute, 23, true},            // a reading that nothing joins
		{61 * minute, 0, false},            // the break's own step
		{70 * minute, 24, true},            // the break
		{75 * minute, 24.5, true},          //
		{80*minute + 1, 0, false},          // after the last
		{math.MaxInt64, 0, false},          //
		{math.MinInt64, 0, false},          //
		{30*minute - 1, 22 - .5/6e5, true}, //
	} {
		v, known := c.At(row.at)
		if known != row.known || known != !math.IsNaN(v) {
			t.Errorf("At(%d) = %g, %v", row.at, v, known)
		}
		if known {
			near(t, "At", v, row.want, 1e-12)
		}
	}
	s := series.Span{From: 5 * minute, To: 3 * hour}
	want := []series.Span{{From: 5 * minute, To: 30 * minute}, {From: 70 * minute, To: 80 * minute}}
	if got := c.Known(s); !reflect.DeepEqual(got, want) {
		t.Errorf("Known = %v, want %v", got, want)
	}
	if got := c.KnownMS(s); got != 35*minute {
		t.Errorf("KnownMS = %d", got)
	}
	c.MaxStepMS = 30 * minute // a step equal to the limit is bridged
	if got, known := c.At(45 * minute); !known || got != 22.5 {
		t.Errorf("bridged: %g, %v", got, known)
	}
	joined := []bool{}
	for i := range c.Len() + 1 {
		joined = append(joined, c.Joined(i))
	}
	if want := []bool{false, true, true, true, true, false, true, false}; !slices.Equal(joined, want) {
		t.Errorf("joined %v, want %v", joined, want)
	}
}

func TestKnownKeepsPiecesApartAtABreak(t *testing.T) {
	c := line(t, "1 2 3 4")
	c.Readings.At[1] = 2*tenMin - 1 // a piece ends 1 ms before the next begins
	c.MaxStepMS, c.Breaks = 2*tenMin, []int64{2 * tenMin}
	want := []series.Span{{From: 0, To: 2*tenMin - 1}, {From: 2 * tenMin, To: 3 * tenMin}}
	if got := c.Known(whole(c)); !reflect.DeepEqual(got, want) {
		t.Errorf("Known = %v, want %v", got, want)
	}
}

func TestSlice(t *testing.T) {
	c := line(t, "1 2 | 3 4 | 5 6")
	got := c.Slice(series.Span{From: 2 * tenMin, To: 4 * tenMin})
	if !slices.Equal(got.Val, []float64{3, 4}) || !slices.Equal(got.Breaks, []int64{2 * tenMin}) {
		t.Errorf("slice %v, breaks %v", got.Val, got.Breaks)
	}
	if &got.Val[0] != &c.Val[2] {
		t.Error("the slice copied its readings")
	}
	_ = append(got.Val, 99)
	if c.Val[4] != 5 {
		t.Error("appending to the slice wrote into the curve")
	}
	if empty := c.Slice(series.Span{From: 9, To: 3}); empty.Len() != 0 {
		t.Errorf("a reversed span holds %d readings", empty.Len())
	}
}

func TestMapLeavesOutWhatHasNoValue(t *testing.T) {
	c := line(t, "4 1 -1 9 16 | 25")
	c.MaxStepMS = 3 * tenMin
	got := c.Map(math.Sqrt)
	if !slices.Equal(got.Val, []float64{2, 1, 3, 4, 5}) {
		t.Fatalf("values %v", got.Val)
	}
	// Nothing is drawn across the reading without a value, though 20 minutes are within the limit.
	if want := []int64{3 * tenMin, 5 * tenMin}; !slices.Equal(got.Breaks, want) {
		t.Errorf("breaks %v, want %v", got.Breaks, want)
	}
	if c.Val[0] != 4 {
		t.Error("Map changed its input")
	}
	all := c.Map(func(float64) float64 { return math.Inf(1) })
	if all.Len() != 0 {
		t.Errorf("infinite values kept: %v", all.Val)
	}
}

func TestZip(t *testing.T) {
	sum := func(x, y float64) float64 { return x + y }
	for _, row := range []struct {
		what, a, b string
		maxStep    int64
		val        []float64
		breaks     []int64
	}{
		{"the same instants", "1 2 3", "10 20 30", tenMin, []float64{11, 22, 33}, nil},
		{"one reading missing, bridged by both", "1 2 3", "10 _ 30", 2 * tenMin, []float64{11, 33}, nil},
		{"one reading missing, a gap", "1 2 3", "10 _ 30", tenMin, []float64{11, 33}, nil},
		{"a break in one", "1 2 3", "10 20 | 30", tenMin, []float64{11, 22, 33}, []int64{2 * tenMin}},
		{"a break at an instant of one only", "1 2 | 3 4", "10 20 _ 40", 2 * tenMin, []float64{11, 22, 44}, []int64{3 * tenMin}},
		{"no common instant", "1 _ 3", "_ 10 _", tenMin, nil, nil},
		{"no value", "1 2 3", "10 nan 30", 2 * tenMin, []float64{11, 33}, []int64{2 * tenMin}},
	} {
		a, b := line(t, row.a), line(t, row.b)
		a.MaxStepMS, b.MaxStepMS = row.maxStep, row.maxStep
		got := series.Zip(a, b, sum)
		if !slices.Equal(got.Val, row.val) || !slices.Equal(got.Breaks, row.breaks) || got.MaxStepMS != row.maxStep {
			t.Errorf("%s: %v, breaks %v", row.what, got.Val, got.Breaks)
		}
	}
}

func TestZipBreaksWhereTheFinerLineHasAGap(t *testing.T) {
	// Half-hourly against 10 minutes: the wider limit would bridge 30 minutes, but the finer line was
	// unknown in between.
	a, b := line(t, "1 _ _ 2 _ _ 3"), line(t, "10 10 10 10 _ _ 10")
	a.MaxStepMS = 6 * tenMin
	got := series.Zip(a, b, func(x, y float64) float64 { return x + y })
	if !slices.Equal(got.Val, []float64{11, 12, 13}) || !slices.Equal(got.Breaks, []int64{6 * tenMin}) {
		t.Errorf("%v, breaks %v", got.Val, got.Breaks)
	}
}

func TestZipAlong(t *testing.T) {
	difference := func(x, y float64) float64 { return x - y }
	for _, row := range []struct {
		what, a, b string
		stepB      int64
		val        []float64
		breaks     []int64
	}{
		{"between readings", "5 5 5 5", "0 _ 2 _", 2, []float64{5, 4, 3}, nil},
		{"b ends in a gap", "5 5 5 5 5", "0 _ 2", 1, []float64{5, 3}, []int64{2 * tenMin}},
		{"b breaks between", "5 5 5 5", "0 1 | 2 3", 1, []float64{5, 4, 3, 2}, []int64{2 * tenMin}},
		{"a breaks", "5 5 | 5 5", "0 _ _ 3", 3, []float64{5, 4, 3, 2}, []int64{2 * tenMin}},
		{"b starts late", "5 5 5", "_ 1 2", 1, []float64{4, 3}, nil},
		{"b is empty", "5 5 5", "", 1, nil, nil},
		{"b breaks at an instant a lacks", "5 _ 5 5", "0 | 1 2 3", 1, []float64{5, 3, 2}, []int64{2 * tenMin}},
	} {
		a, b := line(t, row.a), line(t, row.b)
		a.MaxStepMS, b.MaxStepMS = 2*tenMin, row.stepB*tenMin
		got := series.ZipAlong(a, b, difference)
		if !slices.Equal(got.Val, row.val) || !slices.Equal(got.Breaks, row.breaks) {
			t.Errorf("%s: %v, breaks %v", row.what, got.Val, got.Breaks)
		}
	}
}

func TestSpanLists(t *testing.T) {
	a := []series.Span{{From: 0, To: 10}, {From: 20, To: 30}, {From: 40, To: 50}}
	b := []series.Span{{From: 5, To: 22}, {From: 25, To: 26}, {From: 50, To: 60}}
	if got, want := series.Intersect(a, b), []series.Span{{From: 5, To: 10}, {From: 20, To: 22}, {From: 25, To: 26}}; !slices.Equal(got, want) {
		t.Errorf("Intersect = %v", got)
	}
	if got, want := series.Subtract(a, b), []series.Span{{From: 0, To: 5}, {From: 22, To: 25}, {From: 26, To: 30}, {From: 40, To: 50}}; !slices.Equal(got, want) {
		t.Errorf("Subtract = %v", got)
	}
	if got := series.LengthMS(append(a, series.Span{From: 9, To: 3})); got != 30 {
		t.Errorf("LengthMS = %d", got)
	}
	if got := series.Intersect(a, nil); got != nil {
		t.Errorf("with nothing in common: %v", got)
	}
	if got := series.Subtract(a, nil); !slices.Equal(got, a) {
		t.Errorf("less nothing: %v", got)
	}
}
