package figure

import (
	"image"
	"image/color"
	"io"
	"math"
	"time"

	"gonum.org/v1/plot/vg"

	"thawbook/analysis/series"
)

// DayBars shows how many hours of each day something was on: one lane per row, days across, 0–24 h up.
// What a record shows is solid, what was worked out is outlined, unknown hours are hatched from the top.
type DayBars struct {
	Rows  []DayRow // top to bottom; the always-on stage belongs last
	Days  []series.Span
	View  series.Span // the stretch shown; empty: all days
	Zone  *time.Location
	Theme Theme

	f Figure
}

// DayRow is one stage. Each list has a value for every day, in hours, or is nil; NaN is no value.
type DayRow struct {
	Name    string
	Color   color.NRGBA // zero: the theme's bar colour
	Ran     []float64
	Called  []float64
	Unknown []float64 // hours of the day for which it can't be said
}

// Layout places the figure as Figure.Layout does; each row is a lane.
func (d *DayBars) Layout(w, h int, scale float64) Layout {
	d.f = Figure{View: d.view(), Zone: d.Zone, Theme: d.Theme, fonts: d.f.fonts}
	for _, r := range d.Rows {
		d.f.Lanes = append(d.f.Lanes, Lane{Title: r.Name, Unit: "h a day", Range: &Range{0, 24}})
	}
	l := d.f.Layout(w, h, scale)
	for i := range l.lanes {
		l.lanes[i].ticks = dayTicks(l.Lanes[i].Dy(), scale)
	}
	return l
}

// dayTicks divides the day by what is usual for hours: 6, 12 or 24.
func dayTicks(h int, scale float64) (ticks []valueTick) {
	step := 24.0
	for _, s := range []float64{12, 6} {
		if float64(h)/scale >= 24/s*18 {
			step = s
		}
	}
	for v := 0.0; v <= 24; v += step {
		ticks = append(ticks, valueTick{Value: v, Label: Number(v, 0)})
	}
	return ticks
}

func (d *DayBars) view() series.Span {
	if d.View.To > d.View.From || len(d.Days) == 0 {
		return d.View
	}
	return series.Span{From: d.Days[0].From, To: d.Days[len(d.Days)-1].To}
}

// DayAt returns the index of the day that holds t, or -1.
func (d *DayBars) DayAt(t int64) int {
	for i, s := range d.Days {
		if s.From <= t && t < s.To {
			return i
		}
	}
	return -1
}

// Draw draws the figure over the whole of im, at scale device pixels per design pixel.
func (d *DayBars) Draw(im *image.RGBA, scale float64) Layout {
	l := d.Layout(im.Rect.Dx(), im.Rect.Dy(), scale)
	d.draw(&raster{im: im, faces: &d.f.fonts, mask: &d.f.mask}, &l, im.Rect)
	return l
}

// WritePNG writes the figure as a picture of w × h design pixels, scale device pixels each.
func (d *DayBars) WritePNG(out io.Writer, w, h int, scale float64) error {
	return writePNG(d, out, w, h, scale)
}

// WriteSVG writes the figure as vectors, w × h design pixels in size.
func (d *DayBars) WriteSVG(out io.Writer, w, h int) error { return writeSVG(d, out, w, h) }

// DrawOn draws the figure over a whole vector canvas of w × h.
func (d *DayBars) DrawOn(c vg.Canvas, w, h vg.Length) { drawOn(d, c, w, h) }

func (d *DayBars) drawVector(s sheet, w, h int) {
	l := d.Layout(w, h, 1)
	d.draw(s, &l, image.Rect(0, 0, w, h))
}

func (d *DayBars) draw(s sheet, l *Layout, page image.Rectangle) {
	s.fill(page, d.Theme.Paper)
	for i := range d.Rows {
		d.f.drawGround(s, l, i)
		d.f.drawHead(s, l, i)
		for j, day := range d.Days {
			if day.To > l.View.From && day.From < l.View.To {
				d.drawDay(s, l, i, j)
			}
		}
	}
	d.f.drawTimeAxis(s, l)
}

// drawDay draws one day of row i: hatching down from the top, the solid bar, the outline over it.
func (d *DayBars) drawDay(s sheet, l *Layout, i, day int) {
	row, r := d.Rows[i], l.Lanes[i]
	hair := max(1, l.px(1))
	cell := l.across(d.Days[day], r)
	if cell.Dx() >= 6*hair {
		cell.Max.X -= hair * 2
	} else if cell.Dx() >= 3*hair {
		cell.Max.X -= hair
	}
	c := d.f.barColor(BarRow{Color: row.Color})
	if v := hoursOf(row.Unknown, day); v > 0 {
		top := image.Rect(cell.Min.X, r.Min.Y, cell.Max.X, int(math.Round(l.y(i, 24-v, false))))
		s.hatch(top.Intersect(r), 5*l.scale, d.Theme.Hatch)
	}
	if v := hoursOf(row.Ran, day); v > 0 {
		s.fill(image.Rect(cell.Min.X, int(math.Round(l.y(i, v, false))), cell.Max.X, r.Max.Y), c)
	}
	if v := hoursOf(row.Called, day); v > 0 {
		box := image.Rect(cell.Min.X, int(math.Round(l.y(i, v, false))), cell.Max.X, r.Max.Y)
		d.outline(s, box, hoursOf(row.Ran, day) > 0, c, hair)
	}
}

// outline draws the called-for hours: a frame, faintly filled where nothing solid stands in it.
func (d *DayBars) outline(s sheet, r image.Rectangle, over bool, c color.NRGBA, hair int) {
	edge := mix(c, d.Theme.Ink, 0.45)
	if !over {
		s.fill(r, alpha(c, 0.16))
	}
	s.fill(image.Rect(r.Min.X, r.Min.Y, r.Max.X, r.Min.Y+hair), edge)
	if r.Dx() >= 4*hair {
		s.fill(image.Rect(r.Min.X, r.Min.Y, r.Min.X+hair, r.Max.Y), edge)
		s.fill(image.Rect(r.Max.X-hair, r.Min.Y, r.Max.X, r.Max.Y), edge)
	}
}

// hoursOf returns the value of a day; 0 when there is none.
func hoursOf(list []float64, day int) float64 {
	if day >= len(list) || math.IsNaN(list[day]) {
		return 0
	}
	return list[day]
}
