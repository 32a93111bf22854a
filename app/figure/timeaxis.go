package figure

import (
	"image"
	"math"
)

// drawTimeAxis sets the tick labels and, below them, the days, months or years they belong to. The
// period at the left edge keeps its name in sight.
func (f *Figure) drawTimeAxis(s sheet, l *Layout) {
	if len(l.Lanes) == 0 {
		return
	}
	face, hair := l.font(false), max(1, l.px(1))
	base := l.Plot.Max.Y
	s.fill(image.Rect(l.Plot.Min.X, base, l.Plot.Max.X, base+hair), f.Theme.Muted)
	free := math.Inf(-1)
	for _, t := range l.ticks {
		x := l.TimeToPixel(t.At)
		px := int(math.Round(x))
		s.fill(image.Rect(px, base, px+hair, base+l.px(5)), f.Theme.Muted)
		w := f.fonts.width(t.Label, face)
		left := min(max(x-w/2, l.px0()), float64(l.Plot.Max.X)+float64(l.names)-w)
		if left >= free {
			s.text(t.Label, left, float64(base)+17*l.scale, face, f.Theme.Muted)
			free = left + w + 6*l.scale
		}
	}
	f.drawPeriods(s, l)
}

func (l *Layout) px0() float64 { return edge * l.scale }

func (f *Figure) drawPeriods(s sheet, l *Layout) {
	face, hair := l.font(false), max(1, l.px(1))
	base := l.Plot.Max.Y
	for _, p := range l.spans {
		x0, x1 := l.clampX(p.Span.From), l.clampX(p.Span.To)
		if p.Span.From > l.View.From {
			x := int(math.Round(x0))
			s.fill(image.Rect(x, base, x+hair, base+l.px(5)), f.Theme.Muted)
			s.fill(image.Rect(x, base+l.px(22), x+hair, base+l.px(36)), f.Theme.Muted)
		}
		room := x1 - x0 - 8*l.scale
		for _, name := range []string{p.Long, p.Short} {
			if f.fonts.width(name, face) <= room {
				s.text(name, x0+5*l.scale, float64(base)+33*l.scale, face, f.Theme.Ink)
				break
			}
		}
	}
}

// drawMarks names the phases and rules the marks over all lanes.
func (f *Figure) drawMarks(s sheet, l *Layout) {
	if !l.strip || len(l.Lanes) == 0 {
		return
	}
	face, hair := l.font(false), max(1, l.px(1))
	y := edge*l.scale + 10*l.scale
	free := math.Inf(-1)
	for _, m := range f.Marks {
		if m.At < l.View.From || m.At > l.View.To {
			continue
		}
		x := l.TimeToPixel(m.At)
		px := int(math.Round(x))
		head, rule := image.Rect(px, int(y)+l.px(4), px+hair, int(y)+l.px(9)), 0.45
		if m.Note {
			head, rule = image.Rect(px, int(y)+l.px(3), px+l.px(7), int(y)+l.px(8)), 0.2
		}
		s.fill(head, f.Theme.Muted)
		for _, r := range l.Lanes {
			s.fill(image.Rect(px, r.Min.Y, px+hair, r.Max.Y).Intersect(r), mix(f.Theme.Surface, f.Theme.Ink, rule))
		}
		if m.Note {
			continue
		}
		w := f.fonts.width(m.Name, face)
		left := min(max(x-w/2, l.px0()), float64(l.Plot.Max.X+l.names)-w)
		if left >= free {
			s.text(m.Name, left, y, face, f.Theme.Ink)
			free = left + w + 8*l.scale
		}
	}
	f.drawPhases(s, l, y)
}

// drawPhases names each shade in the strip where no mark stands in the way.
func (f *Figure) drawPhases(s sheet, l *Layout, y float64) {
	face := l.font(false)
	for _, sh := range f.Shades {
		x0, x1 := l.clampX(sh.Span.From), l.clampX(sh.Span.To)
		for _, m := range f.Marks {
			if m.Note {
				continue
			}
			half := f.fonts.width(m.Name, face)/2 + 8*l.scale
			x := l.TimeToPixel(m.At)
			if x-half <= x0 && x+half > x0 {
				x0 = x + half
			}
			if x-half < x1 && x+half >= x1 {
				x1 = x - half
			}
		}
		if w := f.fonts.width(sh.Name, face); sh.Name != "" && w <= x1-x0 {
			s.text(sh.Name, (x0+x1-w)/2, y, face, f.Theme.Muted)
		}
	}
}
