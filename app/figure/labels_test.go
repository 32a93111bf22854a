package figure

import (
	"image/color"
	"math"
	"testing"

	"thawbook/analysis/series"
)

// A name stands at its line's height at the end of the focus (day 20: 5 °C), not where the logger lay afterwards (12 °C) or
// before (3 °C); in a view that ends before, at the view's end; in one that begins later, where it lay then. A logger that
// was hung only after the focus has its name all the same.
func TestANameStandsWhereTheFocusEnds(t *testing.T) {
	level := func(from, to int64, v func(day int64) float64) Trace {
		var r series.Readings
		for at := from * dayMS; at < to*dayMS; at += series.HourMS {
			r.At, r.Val = append(r.At, at), append(r.Val, v(at/dayMS))
		}
		return NewTrace("logger", series.Curve{Readings: r, MaxStepMS: 2 * series.HourMS}, color.NRGBA{})
	}
	moved := func(day int64) float64 {
		switch {
		case day < 15:
			return 3
		case day <= 20:
			return 5
		}
		return 12
	}
	late := level(22, 30, func(int64) float64 { return 8 })
	stopped := level(0, 18, moved)
	moving := level(0, 30, moved)
	f := &Figure{Theme: Light(), Focus: Span{From: 2 * dayMS, To: 20*dayMS + series.HourMS}, Lanes: []Lane{{Range: &Range{0, 15}, Traces: []Trace{moving, stopped, late}}}}
	for _, r := range []struct {
		trace    int
		from, to int64
		want     float64
		unseen   bool
	}{
		{trace: 0, from: 0, to: 30, want: 5}, {trace: 0, from: 5, to: 10, want: 3}, {trace: 0, from: 22, to: 30, want: 12},
		{trace: 1, from: 0, to: 30, want: 5}, {trace: 1, from: 22, to: 30, unseen: true}, {trace: 2, from: 0, to: 30, want: 8},
	} {
		f.View = Span{From: r.from * dayMS, To: r.to * dayMS}
		l := f.Layout(900, 300, 1)
		y, seen := f.endOf(&l, 0, &f.Lanes[0].Traces[r.trace])
		if seen == r.unseen || seen && math.Abs(y-l.y(0, r.want, false)) > 1e-9 {
			t.Errorf("trace %d in days %d to %d: seen %v at %v, want at %v", r.trace, r.from, r.to, seen, y, l.y(0, r.want, false))
		}
	}
}
