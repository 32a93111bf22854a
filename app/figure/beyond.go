package figure

import (
	"math"

	"thawbook/analysis/series"
)

// chevron is half as wide as the sign at a lane's edge that a line leaves it there, in design pixels; nearer signs become one.
const chevron = 4.0

// drawBeyond marks where lines on the shared scale leave lane i, at the edge they leave it by, and says beside the title how far
// they go. The lane's curves must have been drawn.
func (f *Figure) drawBeyond(s sheet, l *Layout, i int) {
	above, below := f.columnsBeyond(l, i)
	r, c := l.Lanes[i], chevron*l.scale
	up, down := middlesOfRuns(above, int(4*c)), middlesOfRuns(below, int(4*c))
	if len(up)+len(down) == 0 {
		return
	}
	mark := func(at []float64, tip, feet float64) {
		for _, x := range at {
			x += float64(r.Min.X)
			s.polyline(r, []point{{x - c, feet}, {x, tip}, {x + c, feet}}, 1.5*l.scale, f.Theme.Ink)
		}
	}
	top, bottom := float64(r.Min.Y), float64(r.Max.Y)
	mark(up, top+c/4, top+5*c/4)
	mark(down, bottom-c/4, bottom-5*c/4)
	lane, face := &f.Lanes[i], l.font(false)
	x := float64(r.Min.X) + f.fonts.width(lane.Title+"  ", l.font(true)) + f.fonts.width(lane.Unit+"    ", face)
	s.text(f.notShown(l, i), x, top-titleRise*l.scale, face, f.Theme.Ink)
}

// columnsBeyond are the pixel columns of lane i in which a line on its shared scale reaches above or below the lane.
func (f *Figure) columnsBeyond(l *Layout, i int) (above, below []bool) {
	lane, r := &f.Lanes[i], l.Lanes[i]
	top, bottom := float64(r.Min.Y)-0.5, float64(r.Max.Y)+0.5
	above, below = make([]bool, r.Dx()), make([]bool, r.Dx())
	find := func(px []pixelColumn) {
		for k := range px {
			if p := &px[k]; p.known && (p.top < top || p.bottom > bottom) {
				above[k], below[k] = above[k] || p.top < top, below[k] || p.bottom > bottom
			}
		}
	}
	if lane.Veil {
		find(f.veil)
	}
	for j := range lane.Traces {
		t := &lane.Traces[j]
		if t.OwnScale || t.Veiled || t.Pyramid == nil || lane.Veil && t.spreads() {
			continue
		}
		if !f.reads(l, lane, t) {
			f.px[j], f.cols[j] = f.columns(f.px[j], f.cols[j], l, i, t)
		}
		find(f.px[j])
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
