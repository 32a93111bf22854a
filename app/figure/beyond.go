package figure

import (
	"math"

	"thawbook/analysis/series"
)

// chevron is half as wide as the sign at a lane's edge that a line leaves it there, in design pixels; nearer signs become one.
const chevron = 4.0

// drawBeyond marks where lines on the shared scale leave lane i, at the edge they leave it by.
func (f *Figure) drawBeyond(s sheet, l *Layout, i int) {
	above, below := f.columnsBeyond(l, i)
	r, c := l.Lanes[i], chevron*l.scale
	mark := func(beyond []bool, tip, down float64) { // down: from the tip to the feet
		for _, x := range middlesOfRuns(beyond, int(4*c)) {
			x += float64(r.Min.X)
			s.polyline(r, []point{{x - c, tip + down}, {x, tip}, {x + c, tip + down}}, 1.5*l.scale, f.Theme.Ink)
		}
	}
	mark(above, float64(r.Min.Y)+c/4, c)
	mark(below, float64(r.Max.Y)-c/4, -c)
}

// columnsBeyond are the pixel columns of lane i in which a line on its shared scale reaches above or below the lane; nil
// where none does.
func (f *Figure) columnsBeyond(l *Layout, i int) (above, below []bool) {
	lane, r := &f.Lanes[i], l.Lanes[i]
	top, bottom := float64(r.Min.Y)-0.5, float64(r.Max.Y)+0.5
	var px []pixelColumn
	var cols []series.Column
	for j := range lane.Traces {
		t := &lane.Traces[j]
		if reached := t.rangeIn(l.View); t.OwnScale || !reached.known() ||
			l.y(i, lane.shown(reached.High), false) >= top && l.y(i, lane.shown(reached.Low), false) <= bottom {
			continue
		}
		if above == nil {
			above, below = make([]bool, r.Dx()), make([]bool, r.Dx())
		}
		px, cols = f.columns(px, cols, l, i, t)
		for k, p := range px {
			above[k] = above[k] || p.known && p.top < top
			below[k] = below[k] || p.known && p.bottom > bottom
		}
	}
	return above, below
}

// middlesOfRuns are the middles of the runs of true; runs less than gap apart are one.
func middlesOfRuns(on []bool, gap int) (out []float64) {
	from, last := -1, 0
	for k := 0; k <= len(on); k++ {
		switch {
		case k < len(on) && on[k]:
			if from < 0 {
				from = k
			}
			last = k
		case from >= 0 && (k == len(on) || k-last >= gap):
			out = append(out, float64(from+last+1)/2)
			from = -1
		}
	}
	return out
}

// rangeIn is from the lowest to the highest a trace reaches in a stretch of time.
func (t *Trace) rangeIn(s Span) Range {
	if t.Pyramid == nil || s.To <= s.From {
		return noRange
	}
	var one [1]series.Column
	t.Pyramid.Columns(one[:], s)
	return noRange.with(one[0].Lo).with(one[0].Hi)
}

// notShown says how far the lines on lane i's shared scale reach beyond it, inside the focus and the view; empty where they
// do not.
func (f *Figure) notShown(l *Layout, i int) string {
	lane, s := &f.Lanes[i], l.View
	if f.Focus.To > f.Focus.From {
		s = Span{From: max(s.From, f.Focus.From), To: min(s.To, f.Focus.To)}
	}
	reached := noRange
	for j := range lane.Traces {
		if t := &lane.Traces[j]; !t.OwnScale {
			in := t.rangeIn(s)
			reached = reached.with(in.Low).with(in.High)
		}
	}
	told := func(v float64) string { return Quantity(math.Round(lane.shown(v)), lane.Unit) }
	scale := l.lanes[i]
	up, down := reached.known() && lane.shown(reached.High) > scale.high, reached.known() && lane.shown(reached.Low) < scale.low
	switch {
	case up && down:
		return "down to " + told(reached.Low) + " and up to " + told(reached.High) + " not shown"
	case up:
		return "up to " + told(reached.High) + " not shown"
	case down:
		return "down to " + told(reached.Low) + " not shown"
	}
	return ""
}
