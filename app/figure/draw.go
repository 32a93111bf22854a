package figure

import (
	"image"
	"image/color"
	"math"
	"slices"
	"sort"

	"thawbook/analysis/series"
)

// Draw draws the figure over the whole of im, at scale device pixels per design pixel. The image is kept
// by the caller and used again; a drawing allocates little.
func (f *Figure) Draw(im *image.RGBA, scale float64) Layout {
	l := f.Layout(im.Rect.Dx(), im.Rect.Dy(), scale)
	f.draw(&raster{im: im, faces: &f.fonts, mask: &f.mask}, &l, im.Rect)
	return l
}

// draw puts everything on the sheet, back to front.
func (f *Figure) draw(s sheet, l *Layout, page image.Rectangle) {
	f.drawPaper(s, l, page)
	for i := range f.Lanes {
		f.drawGround(s, l, i)
	}
	for i := range f.Lanes {
		f.drawHead(s, l, i)
		if f.Lanes[i].Kind == Bars {
			f.drawBars(s, l, i)
			continue
		}
		f.drawTraces(s, l, i)
	}
	f.drawMarks(s, l)
	f.drawTimeAxis(s, l)
}

// drawTraces draws what lane i shows of its traces: lines, where they leave the lane, and names.
func (f *Figure) drawTraces(s sheet, l *Layout, i int) {
	f.readColumns(l, i)
	lane := &f.Lanes[i]
	odd := f.oddness(lane)
	names := f.labels(l, i, lane.byImportance(odd))
	f.chooseInks(lane, names)
	f.drawCurves(s, l, i, lane.frontToBack(odd))
	f.drawBeyond(s, l, i)
	f.drawNames(s, l, i, names)
}

// drawPaper fills what the lanes leave of the page.
func (f *Figure) drawPaper(s sheet, l *Layout, page image.Rectangle) {
	top := page.Min.Y
	for _, r := range l.Lanes {
		s.fill(image.Rect(page.Min.X, top, page.Max.X, r.Min.Y), f.Theme.Paper)
		s.fill(image.Rect(page.Min.X, r.Min.Y, r.Min.X, r.Max.Y), f.Theme.Paper)
		s.fill(image.Rect(r.Max.X, r.Min.Y, page.Max.X, r.Max.Y), f.Theme.Paper)
		top = r.Max.Y
	}
	s.fill(image.Rect(page.Min.X, top, page.Max.X, page.Max.Y), f.Theme.Paper)
}

// drawGround lays the data area, what is not judged, the band and the grid.
func (f *Figure) drawGround(s sheet, l *Layout, i int) {
	r, lane := l.Lanes[i], &f.Lanes[i]
	s.fill(r, f.Theme.Surface)
	if lane.Kind == Curves {
		for _, b := range lane.Bands {
			f.drawBand(s, l, i, b)
		}
	}
	for _, sh := range f.Shades {
		if sh.Outside {
			s.fill(l.across(sh.Span, r), f.Theme.Outside)
		}
	}
	hair := max(1, l.px(1))
	for _, t := range l.ticks {
		x := int(math.Round(l.TimeToPixel(t.At)))
		s.fill(image.Rect(x, r.Min.Y, x+hair, r.Max.Y).Intersect(r), alpha(f.Theme.Line, 0.55))
	}
	face := l.font(false)
	for _, t := range l.lanes[i].ticks {
		y := l.y(i, t.Value, false)
		s.fill(image.Rect(r.Min.X, int(y), r.Max.X, int(y)+hair).Intersect(r), alpha(f.Theme.Line, 0.55))
		s.text(t.Label, float64(r.Min.X)-7*l.scale-f.fonts.width(t.Label, face), y+4.2*l.scale, face, f.Theme.Muted)
	}
	s.fill(image.Rect(r.Min.X, r.Max.Y-hair, r.Max.X, r.Max.Y), f.Theme.Line)
}

// drawBand tints a safe range and rules its limits.
func (f *Figure) drawBand(s sheet, l *Layout, i int, b Band) {
	r, lane := l.Lanes[i], &f.Lanes[i]
	if b.Span.To > b.Span.From {
		r = l.across(b.Span, r)
	}
	at := func(v float64) int {
		y := l.y(i, lane.shown(v), false)
		return int(math.Round(min(max(y, float64(r.Min.Y)), float64(r.Max.Y))))
	}
	top, bottom := at(b.High), at(b.Low)
	s.fill(image.Rect(r.Min.X, top, r.Max.X, bottom), f.Theme.Tint)
	hair := max(1, l.px(1))
	for _, y := range []int{top, bottom} {
		if y > r.Min.Y && y < r.Max.Y {
			s.fill(image.Rect(r.Min.X, y, r.Max.X, y+hair), mix(f.Theme.Tint, f.Theme.Ink, 0.22))
		}
	}
}

// across returns the part of r that a stretch of time covers.
func (l *Layout) across(sp series.Span, r image.Rectangle) image.Rectangle {
	x0, x1 := l.clampX(sp.From), l.clampX(sp.To)
	return image.Rect(int(math.Round(x0)), r.Min.Y, int(math.Round(x1)), r.Max.Y).Intersect(r)
}

func (l *Layout) clampX(t int64) float64 {
	return min(max(l.TimeToPixel(t), float64(l.Plot.Min.X)), float64(l.Plot.Max.X))
}

// titleRise is how far above a lane its title stands, in design pixels.
const titleRise = 7.0

// drawHead sets the lane's title and unit, and the name of the second scale.
func (f *Figure) drawHead(s sheet, l *Layout, i int) {
	lane, r := &f.Lanes[i], l.Lanes[i]
	if lane.Bare {
		return
	}
	bold, face := l.font(true), l.font(false)
	y := float64(r.Min.Y) - titleRise*l.scale
	x := float64(r.Min.X)
	s.text(lane.Title, x, y, bold, f.Theme.Ink)
	s.text(lane.Unit, x+f.fonts.width(lane.Title+"  ", bold), y, face, f.Theme.Muted)
	if l.lanes[i].own {
		f.drawSecondAxis(s, l, i)
	}
}

// drawSecondAxis draws the scale of the traces that have one of their own, at the right edge.
func (f *Figure) drawSecondAxis(s sheet, l *Layout, i int) {
	r, face := l.Lanes[i], l.font(false)
	x := r.Max.X + l.names
	hair := max(1, l.px(1))
	s.fill(image.Rect(x, r.Min.Y, x+hair, r.Max.Y), f.Theme.Line)
	for _, t := range l.lanes[i].ticks2 {
		y := l.y(i, t.Value, true)
		s.fill(image.Rect(x, int(y), x+l.px(4), int(y)+hair), f.Theme.Line)
		s.text(t.Label, float64(x)+7*l.scale, y+4.2*l.scale, face, f.Theme.Muted)
	}
	name := ""
	for _, t := range f.Lanes[i].Traces {
		if t.OwnScale {
			name = t.Name + " " + f.Lanes[i].Unit
			break
		}
	}
	// Higher than the lane's title: names and figures beside the lane reach up to its top.
	right := float64(x + l.second)
	s.text(name, right-f.fonts.width(name, face), float64(r.Min.Y)-11*l.scale, face, f.Theme.Muted)
}

// drawCurves draws the lane's veil, then its traces, given from front to back. The lane's columns must have been read.
func (f *Figure) drawCurves(s sheet, l *Layout, i int, frontToBack []int) {
	lane := &f.Lanes[i]
	f.layers = f.layers[:0]
	if lane.Veil {
		f.addVeil(l, i)
	}
	swings := !lane.Veil || lane.loggers() <= mostSwings
	for _, j := range slices.Backward(frontToBack) {
		t := &lane.Traces[j]
		if t.Pyramid == nil || t.Curve.Len() == 0 || t.Veiled {
			continue
		}
		width := t.width() * l.scale
		if f.sparse(l, t) {
			s.columns(l.Lanes[i], f.layers)
			f.layers = f.layers[:0]
			f.drawLine(s, l, i, j, width)
			continue
		}
		if swings || !t.Muted {
			a := f.addLayer(alpha(f.inks[j], swing), 0)
			a.cols = append(a.cols, f.px[j]...)
		}
		m := f.addLayer(f.inks[j], width)
		m.cols = middles(m.cols, f.px[j])
	}
	s.columns(l.Lanes[i], f.layers)
}

// readColumns finds what every trace of lane i that is dense, or under a veil, covers of each column.
func (f *Figure) readColumns(l *Layout, i int) {
	lane := &f.Lanes[i]
	for len(f.px) < len(lane.Traces) {
		f.px, f.cols = append(f.px, nil), append(f.cols, nil)
	}
	inParallel(len(lane.Traces), func(j int) {
		t := &lane.Traces[j]
		if f.reads(l, lane, t) {
			f.px[j], f.cols[j] = f.columns(f.px[j], f.cols[j], l, i, t)
		}
	})
}

// reads tells whether the columns of a trace of a lane are read: it is dense, or under a veil.
func (f *Figure) reads(l *Layout, lane *Lane, t *Trace) bool {
	return t.Pyramid != nil && !t.Veiled && (lane.Veil || !f.sparse(l, t))
}

// addLayer adds an empty layer that uses the memory of an earlier one.
func (f *Figure) addLayer(c color.NRGBA, width float64) *layer {
	if n := len(f.layers); n < cap(f.layers) {
		f.layers = f.layers[:n+1]
	} else {
		f.layers = append(f.layers, layer{})
	}
	a := &f.layers[len(f.layers)-1]
	*a = layer{cols: a.cols[:0], width: width, color: c, paint: newPaint(c)}
	return a
}

// swing is how firmly a dense trace's extremes stand beside the line through their middle. Of more than mostSwings thin
// traces under a veil nobody could tell whose are whose: there the veil shows them.
const swing, mostSwings = 0.35, 6

// loggers is how many loggers a lane has a thin trace of.
func (l *Lane) loggers() (n int) {
	for i := range l.Traces {
		if l.Traces[i].thin() {
			n++
		}
	}
	return n
}

// middles returns the line through the middle of the columns, evened out over three of them (1:2:1) so that
// a swing about as fast as the pixels does not beat with them; it never leaves what its column covers.
func middles(dst, px []pixelColumn) []pixelColumn {
	mid := func(k int) float64 { return (px[k].top + px[k].bottom) / 2 }
	dst = dst[:0]
	last := 0.0
	for k, p := range px {
		y := mid(k)
		left, right := y, y
		if p.joined {
			left = mid(k - 1)
		}
		if k+1 < len(px) && px[k+1].joined {
			right = mid(k + 1)
		}
		y = min(max((left+2*y+right)/4, p.top), p.bottom)
		m := pixelColumn{top: y, bottom: y, known: p.known, joined: p.joined}
		if p.joined {
			m.top, m.bottom = min(y, last), max(y, last)
		}
		dst, last = append(dst, m), y
	}
	return dst
}

func (t *Trace) width() float64 {
	switch {
	case t.Width > 0:
		return t.Width
	case t.Muted:
		return 1
	}
	return 1.5
}

func (f *Figure) traceColor(t *Trace) color.NRGBA {
	switch {
	case t.Color != color.NRGBA{}:
		return t.Color
	case t.weather():
		return f.Theme.Weather
	case t.Muted:
		return f.Theme.Muted
	}
	return f.Theme.Ink
}

// window returns the range of readings that shape the line inside the view.
func window(c series.Curve, s series.Span) (lo, hi int) {
	lo = sort.Search(c.Len(), func(i int) bool { return c.Readings.At[i] >= s.From })
	hi = sort.Search(c.Len(), func(i int) bool { return c.Readings.At[i] > s.To })
	return max(0, lo-1), min(c.Len(), hi+1)
}

// sparse tells whether the readings lie wide enough apart to draw the line through them.
func (f *Figure) sparse(l *Layout, t *Trace) bool {
	lo, hi := window(t.Curve, l.View)
	return hi-lo < 2*l.Plot.Dx()/3
}

// drawLine draws the line of trace j's own readings, piece by piece.
func (f *Figure) drawLine(s sheet, l *Layout, i, j int, width float64) {
	lane, t := &f.Lanes[i], &f.Lanes[i].Traces[j]
	c := t.Curve
	lo, hi := window(c, l.View)
	f.pts = f.pts[:0]
	for k := lo; k < hi; k++ {
		if k > lo && !c.Joined(k) {
			s.polyline(l.Lanes[i], f.pts, width, f.inks[j])
			f.pts = f.pts[:0]
		}
		f.pts = append(f.pts, point{l.TimeToPixel(c.Readings.At[k]), l.y(i, lane.shown(c.Val[k]), t.OwnScale)})
	}
	s.polyline(l.Lanes[i], f.pts, width, f.inks[j])
}

// columns turns a trace into what it covers of each pixel column of lane i, joined to its neighbour
// unless the line is broken there.
func (f *Figure) columns(dst []pixelColumn, cols []series.Column, l *Layout, i int, t *Trace) ([]pixelColumn, []series.Column) {
	n := l.Plot.Dx()
	if cap(cols) < n {
		cols = make([]series.Column, n)
	}
	cols = cols[:n]
	t.Pyramid.Columns(cols, l.View)
	lane := &f.Lanes[i]
	// The scale is a straight line: two values of it are enough.
	y0 := l.y(i, lane.shown(0), t.OwnScale)
	slope := l.y(i, lane.shown(1), t.OwnScale) - y0
	dst = dst[:0]
	last := math.NaN()
	for _, c := range cols {
		p := pixelColumn{top: y0 + slope*c.Hi, bottom: y0 + slope*c.Lo, known: c.Lo == c.Lo}
		if p.joined = p.known && !c.Gap && last == last; p.joined {
			y := y0 + slope*last
			p.top, p.bottom = min(p.top, y), max(p.bottom, y)
		}
		last = c.Last
		if !p.known {
			last = math.NaN()
		}
		dst = append(dst, p)
	}
	return dst, cols
}
