package figure

import (
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// spell is a winter of 160 days of n loggers at 4 °C, of which the first so many read hot for six days from day 100 on.
func spell(n, of int, hot float64) *Figure {
	f := &Figure{Theme: Light(), View: Span{From: 0, To: 160 * dayMS}, Lanes: []Lane{{Title: "Temperature", Unit: "°C", Veil: n > 1, Bands: []Band{{Low: 2, High: 6}}}}}
	for i := range n {
		var r series.Readings
		for at := int64(0); at <= 160*dayMS; at += series.HourMS {
			v := 4.0
			if day := at / dayMS; i < of && day >= 100 && day < 106 {
				v = hot
			}
			r.At, r.Val = append(r.At, at), append(r.Val, v)
		}
		f.Lanes[0].Traces = append(f.Lanes[0].Traces, NewTrace("bay", series.Curve{Readings: r, MaxStepMS: 2 * series.HourMS}, color.NRGBA{}))
		f.Lanes[0].Traces[i].Muted = i > 0
	}
	return f
}

// The rest is 2–6 °C, 4 K high: what is hotter than 6 + 2·4 = 14 °C flattens it, but only where it is few readings: six days
// of 160 of one logger of ten are 0.4 in a hundred, of half the loggers 1.9, of a single one 3.75. A logger at 9 °C beside the
// hot one is no farther out than the rest is high: it stays in. The scale ends on a whole step, hence the tolerance.
func TestFewReadingsFarOutDoNotFlattenTheRest(t *testing.T) {
	nine := spell(10, 1, 62)
	for k := range nine.Lanes[0].Traces[5].Curve.Val[:48] {
		nine.Lanes[0].Traces[5].Curve.Val[k] = 9
	}
	nine.Lanes[0].Traces[5].Pyramid = nil
	bare := spell(10, 1, 62)
	bare.Lanes[0].Bands = nil
	for name, r := range map[string]struct {
		f    *Figure
		high float64
	}{
		"one of ten": {spell(10, 1, 62), 6}, "one of a crowd": {spell(300, 1, 62), 6}, "half of them": {spell(10, 5, 62), 6}, "not far": {spell(10, 1, 13.5), 13.5}, "far": {spell(10, 1, 14.5), 6},
		"a single logger": {spell(1, 1, 62), 62}, "one at 9 °C": {nine, 9}, "without limits": {bare, 62},
	} {
		if got := r.f.Layout(900, 300, 1).lanes[0]; got.high < r.high || got.high > 1.15*r.high+0.5 || got.low > 2 {
			t.Errorf("%s: the scale goes from %v to %v, want to %v", name, got.low, got.high, r.high)
		}
	}
	cold := spell(10, 1, -85).Layout(900, 300, 1).lanes[0]
	if cold.low < 1 || cold.low > 2 || cold.high < 6 {
		t.Errorf("with readings far below the scale goes from %v to %v", cold.low, cold.high)
	}
}

// A view of which at least half is hot shows it whole: of days 95 to 106 it is 6 in 11, of days 90 to 106 it is 6 in 16.
func TestAViewOfWhatLiesFarOutShowsIt(t *testing.T) {
	f := spell(10, 1, 62)
	for days, whole := range map[[2]int64]bool{{101, 104}: true, {95, 106}: true, {90, 106}: false, {10, 20}: false} {
		f.View = Span{From: days[0] * dayMS, To: days[1] * dayMS}
		if got := f.Layout(900, 300, 1).lanes[0].high; (got >= 62) != whole {
			t.Errorf("days %v: the scale goes to %v", days, got)
		}
	}
	f.View = Span{From: 0, To: 160 * dayMS}
	f.Focus = Span{From: 99 * dayMS, To: 107 * dayMS}
	if got := f.Layout(900, 300, 1).lanes[0].high; got < 62 {
		t.Errorf("in a focus of which it is most the scale goes to %v", got)
	}
}

// Where a line leaves the lane a sign stands at that edge, once over the six days, and the title says how far it goes; the
// pointer reads what was recorded. Where nothing leaves it there is no word.
func TestWhatIsNotShownIsSaid(t *testing.T) {
	for hot, want := range map[float64]string{62: "up to 62\u2009°C not shown", -85: "down to \u221285\u2009°C not shown", 7: ""} {
		f := spell(10, 1, hot)
		l := f.Layout(900, 300, 1)
		n := &notepad{faces: &f.fonts}
		f.draw(n, &l, image.Rect(0, 0, 900, 300))
		if want != "" && !slices.ContainsFunc(n.texts, func(s noted) bool { return s.text == want }) || f.notShown(&l, 0) != want {
			t.Errorf("%v °C: %q, want %q", hot, f.notShown(&l, 0), want)
		}
		above, below := f.columnsBeyond(&l, 0) // the lane drawn last
		up, down := middlesOfRuns(above, 16), middlesOfRuns(below, 16)
		if len(up) != map[float64]int{62: 1}[hot] || len(down) != map[float64]int{-85: 1}[hot] {
			t.Errorf("%v °C: signs above at %v, below at %v", hot, up, down)
		}
		for _, x := range append(up, down...) {
			if at := l.TimeToPixel(103 * dayMS); math.Abs(float64(l.Plot.Min.X)+x-at) > 2 {
				t.Errorf("%v °C: the sign stands at %v, day 103 at %v", hot, x, at)
			}
		}
		if v := f.Read(103 * dayMS)[0].Value; v != hot {
			t.Errorf("the pointer reads %v", v)
		}
	}
}

// Outside the focus nothing is judged: lines leave the scale there with the sign, and without a word.
func TestOutsideTheFocusNothingIsSaid(t *testing.T) {
	f := spell(10, 1, 62)
	f.Focus = Span{From: 0, To: 90 * dayMS}
	l := f.Draw(image.NewRGBA(image.Rect(0, 0, 900, 300)), 1)
	if above, _ := f.columnsBeyond(&l, 0); !slices.Contains(above, true) || f.notShown(&l, 0) != "" {
		t.Errorf("signs above %v, said %q", slices.Contains(above, true), f.notShown(&l, 0))
	}
}

func TestMiddlesOfRuns(t *testing.T) {
	on := make([]bool, 40)
	for _, k := range []int{0, 1, 10, 12, 39} {
		on[k] = true
	}
	if got := middlesOfRuns(on, 4); !slices.Equal(got, []float64{1, 11.5, 39.5}) {
		t.Errorf("middles at %v", got)
	}
	if got := middlesOfRuns(on, 100); !slices.Equal(got, []float64{20}) {
		t.Errorf("all as one at %v", got)
	}
}

// The scale follows what is drawn: other limits, another focus, other curves.
func TestTheScaleFollowsTheCurves(t *testing.T) {
	f := spell(10, 1, 62)
	high := func() float64 { return f.Layout(900, 300, 1).lanes[0].high }
	first := high()
	f.Lanes[0].Bands[0].High = 12
	wider := high()
	f.Lanes[0].Traces = spell(10, 1, 20).Lanes[0].Traces
	if other := high(); first > 8 || wider < 12 || wider > 14 || other < 20 {
		t.Errorf("to %v, with a limit of 12 to %v, with 20 °C in it to %v", first, wider, other)
	}
}
