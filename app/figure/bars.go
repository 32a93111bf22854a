package figure

import (
	"image"
	"image/color"
	"math"

	"thawbook/analysis/series"
)

// drawBars draws the rows of a bar lane with their names at the left.
func (f *Figure) drawBars(s sheet, l *Layout, i int) {
	r, face, size := l.Lanes[i], l.font(false), l.bars
	y := float64(r.Min.Y) + size.rowGap/2*l.scale
	for _, row := range f.Lanes[i].Rows {
		height := row.height(size) * l.scale
		name := f.fonts.fit(row.Name, face, maxNames*l.scale)
		x := float64(r.Min.X) - 8*l.scale - f.fonts.width(name, face)
		s.text(name, x, y+height/2+4.2*l.scale, face, f.Theme.Ink)
		ty := y + (height-row.tracksHeight(size)*l.scale)/2
		for _, t := range row.Tracks {
			top := int(math.Round(ty))
			f.drawTrack(s, l, image.Rect(r.Min.X, top, r.Max.X, top+l.px(size.track)), row, t)
			ty += (size.track + size.gap) * l.scale
		}
		y += height + size.rowGap*l.scale
	}
}

func (r BarRow) tracksHeight(size barSize) float64 {
	n := float64(len(r.Tracks))
	return n*size.track + max(0, n-1)*size.gap
}

func (f *Figure) barColor(row BarRow) color.NRGBA {
	if row.Color == (color.NRGBA{}) {
		return f.Theme.Bar
	}
	return row.Color
}

// drawTrack draws one track: a hairline where it was off, hatching where that is unknown, and what was on.
// A run narrower than a pixel weighs as much as it covers.
func (f *Figure) drawTrack(s sheet, l *Layout, r image.Rectangle, row BarRow, t Track) {
	hair := max(1, l.px(1))
	mid := (r.Min.Y + r.Max.Y) / 2
	s.fill(image.Rect(r.Min.X, mid, r.Max.X, mid+hair), f.Theme.Line)
	place := l.across
	if row.Rare {
		place = l.wide
	}
	for _, u := range within(t.Unknown, l.View) {
		if a := place(u, r); !a.Empty() {
			s.fill(a, f.Theme.Surface)
			s.hatch(a, 5*l.scale, f.Theme.Hatch)
		}
	}
	c := f.barColor(row)
	if row.Rare {
		for _, on := range within(t.On, l.View) {
			f.drawRun(s, place(on, r), t.Style, c, 1, hair)
		}
		return
	}
	f.cover = coverage(f.cover, r.Dx(), l.View, t.On)
	for x := 0; x < len(f.cover); {
		end := x + 1
		for end < len(f.cover) && level(f.cover[end]) == level(f.cover[x]) {
			end++
		}
		if k := float64(level(f.cover[x])) / levels; k > 0 {
			run := image.Rect(r.Min.X+x, r.Min.Y, r.Min.X+end, r.Max.Y)
			f.drawRun(s, run, t.Style, c, k, hair)
		}
		x = end
	}
	if t.Style == Called {
		f.drawEnds(s, l, r, t.On, c, hair)
	}
}

// leastWide is how wide what is rare is drawn at least.
const leastWide = 3

// wide is where a stretch lies in a track, at least as wide as can be seen.
func (l *Layout) wide(s series.Span, r image.Rectangle) image.Rectangle {
	from, to := int(math.Round(l.TimeToPixel(s.From))), int(math.Round(l.TimeToPixel(s.To)))
	if least := l.px(leastWide); to-from < least {
		from = (from + to - least) / 2
		to = from + least
	}
	return image.Rect(from, r.Min.Y, to, r.Max.Y).Intersect(r)
}

const levels = 24

func level(k float64) int { return int(math.Ceil(k*levels - 1e-9)) }

// drawRun draws columns that are on for the share k: solid, or two outlines with a faint filling.
func (f *Figure) drawRun(s sheet, r image.Rectangle, style Style, c color.NRGBA, k float64, hair int) {
	if style == Ran {
		s.fill(r, alpha(c, k))
		return
	}
	s.fill(r, alpha(f.Theme.Surface, k))
	s.fill(r, alpha(c, 0.16*k))
	s.fill(image.Rect(r.Min.X, r.Min.Y, r.Max.X, r.Min.Y+hair), alpha(c, k))
	s.fill(image.Rect(r.Min.X, r.Max.Y-hair, r.Max.X, r.Max.Y), alpha(c, k))
}

// drawEnds closes the outlines of runs wide enough to have an inside.
func (f *Figure) drawEnds(s sheet, l *Layout, r image.Rectangle, on []series.Span, c color.NRGBA, hair int) {
	for _, sp := range within(on, l.View) {
		x0, x1 := l.TimeToPixel(sp.From), l.TimeToPixel(sp.To)
		if x1-x0 < 4*l.scale {
			continue
		}
		a, b := int(x0), int(math.Ceil(x1))
		s.fill(image.Rect(a, r.Min.Y, a+hair, r.Max.Y).Intersect(r), c)
		s.fill(image.Rect(b-hair, r.Min.Y, b, r.Max.Y).Intersect(r), c)
	}
}

// within returns the spans that touch s.
func within(spans []series.Span, s series.Span) []series.Span {
	lo, hi := 0, len(spans)
	for lo < hi && spans[lo].To <= s.From {
		lo++
	}
	for hi > lo && spans[hi-1].From >= s.To {
		hi--
	}
	return spans[lo:hi]
}

// coverage returns, for each of n equal slices of s, the share of it that the spans cover.
func coverage(dst []float64, n int, s series.Span, spans []series.Span) []float64 {
	dst = append(dst[:0], make([]float64, n)...)
	perMS := float64(n) / float64(s.To-s.From)
	for _, sp := range within(spans, s) {
		a := max(0, float64(sp.From-s.From)*perMS)
		b := min(float64(n), float64(sp.To-s.From)*perMS)
		for k := int(a); float64(k) < b && k < n; k++ {
			dst[k] += min(b, float64(k+1)) - max(a, float64(k))
		}
	}
	return dst
}
