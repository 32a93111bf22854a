package ui

import (
	"fmt"
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// glanceStates are what an hour may be, in the order of the legend.
var glanceStates = []string{"warm", "cold", "damp", "dry"}

// glancePage is the winter at a glance over its legend; look goes to an hour on the time axis.
func glancePage(g desk.Glance, inks chart.Theme, look func(desk.Span), read func(string)) fyne.CanvasObject {
	legend := container.New(sideBySide{6})
	for _, state := range glanceStates {
		swatch := canvas.NewRectangle(inks.State(state).Fill)
		legend.Add(container.New(fixed{14, 14}, swatch))
		legend.Add(caption(state))
	}
	legend.Add(caption("· hatched: not known"))
	return bordered(container.New(column{gap: 4}, caption(desk.HelpLine("glance")), legend), nil, nil, nil, newGlance(g, inks, look, read))
}

// glance draws a cell for each hour, a row a day; the pointer reads it, a press goes there.
type glance struct {
	widget.BaseWidget
	of   desk.Glance
	inks chart.Theme
	look func(desk.Span)
	read func(string)
}

var (
	_ desktop.Hoverable = (*glance)(nil)
	_ fyne.Tappable     = (*glance)(nil)
)

// Room for the months' names and for the hours' numbers.
const glanceLeft, glanceBelow = 84, 20

func newGlance(g desk.Glance, inks chart.Theme, look func(desk.Span), read func(string)) *glance {
	w := &glance{of: g, inks: inks, look: look, read: read}
	w.ExtendBaseWidget(w)
	return w
}

// MinSize has a pixel for each day, as fyne.Widget.
func (g *glance) MinSize() fyne.Size { return fyne.NewSize(360, 160) }

// CreateRenderer draws the cells as one picture and the words beside it, as fyne.Widget.
func (g *glance) CreateRenderer() fyne.WidgetRenderer {
	r := &glanceRenderer{glance: g}
	r.cells = canvas.NewRaster(r.paint)
	for _, m := range g.of.Months {
		r.months = append(r.months, inkText(m.Name, theme.ColorNameForeground, fyne.TextAlignTrailing))
	}
	for h := 0; h < 24; h += 6 {
		r.hours = append(r.hours, inkText(fmt.Sprintf("%02d:00", h), colorMuted, fyne.TextAlignLeading))
	}
	return r
}

type glanceRenderer struct {
	glance        *glance
	cells         *canvas.Raster
	months, hours []*canvas.Text
}

// MinSize is the widget's, as fyne.WidgetRenderer.
func (r *glanceRenderer) MinSize() fyne.Size { return r.glance.MinSize() }

// Layout places cells and words, as fyne.WidgetRenderer. A month too short for its name beside the next goes without.
func (r *glanceRenderer) Layout(size fyne.Size) {
	wide, high := size.Width-glanceLeft, size.Height-glanceBelow
	r.cells.Move(fyne.NewPos(glanceLeft, 0))
	r.cells.Resize(fyne.NewSize(wide, high))
	days, free := float32(max(1, r.glance.of.Days())), float32(0)
	for i, text := range r.months {
		y := high * float32(r.glance.of.Months[i].Day) / days
		placeText(text, 0, y, glanceLeft-8)
		text.Hidden = y < free || y+text.MinSize().Height > size.Height
		if !text.Hidden {
			free = y + text.MinSize().Height
		}
	}
	for i, text := range r.hours {
		placeText(text, glanceLeft+wide*float32(6*i)/24, high+2, 60)
	}
}

// Refresh repaints, as fyne.WidgetRenderer.
func (r *glanceRenderer) Refresh() { r.cells.Refresh() }

// Destroy has nothing to give back, as fyne.WidgetRenderer.
func (r *glanceRenderer) Destroy() {}

// Objects are the cells and the words, as fyne.WidgetRenderer.
func (r *glanceRenderer) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.cells}
	for _, list := range [][]*canvas.Text{r.months, r.hours} {
		for _, text := range list {
			out = append(out, text)
		}
	}
	return out
}

// paint draws the cells. Where both temperature and humidity were outside their bands each has half of one.
func (r *glanceRenderer) paint(w, h int) image.Image {
	img, g := image.NewRGBA(image.Rect(0, 0, w, h)), r.glance
	days := g.of.Days()
	if days == 0 || w == 0 || h == 0 {
		return img
	}
	fill(img, 0, 0, float64(w), float64(h), g.inks.Surface)
	each, row := float64(w)/24, float64(h)/float64(days)
	for i, hour := range g.of.Hours {
		x, y := float64(i%24)*each, float64(i/24)*row
		paintHour(img, g.inks, hour, x, y, x+each, y+row)
	}
	for h := 6; h < 24; h += 6 {
		fill(img, float64(h)*each, 0, float64(h)*each+1, float64(img.Rect.Dy()), g.inks.Line)
	}
	for _, m := range g.of.Months[1:] {
		fill(img, 0, float64(m.Day)*row, float64(w), float64(m.Day)*row+1, g.inks.Hatch)
	}
	return img
}

func paintHour(img *image.RGBA, inks chart.Theme, h desk.GlanceHour, x0, y0, x1, y1 float64) {
	middle := (x0 + x1) / 2
	switch {
	case !h.Judged:
		fill(img, x0, y0, x1, y1, color.Color(inks.Outside))
	case !h.Known:
		hatch(img, x0, y0, x1, y1, inks.Hatch)
	case h.Temp != "" && h.Air != "":
		fill(img, x0, y0, middle, y1, inks.State(h.Temp).Fill)
		fill(img, middle, y0, x1, y1, inks.State(h.Air).Fill)
	case h.Temp+h.Air != "":
		fill(img, x0, y0, x1, y1, inks.State(h.Temp+h.Air).Fill)
	}
}

// cell is the hour under a point; −1 beside them.
func (g *glance) cell(at fyne.Position) int {
	wide, high := g.Size().Width-glanceLeft, g.Size().Height-glanceBelow
	if at.X < glanceLeft || at.X >= g.Size().Width || at.Y < 0 || at.Y >= high || wide <= 0 {
		return -1
	}
	return int(at.Y/high*float32(g.of.Days()))*24 + int((at.X-glanceLeft)/wide*24)
}

// MouseIn reads the hour under the pointer, as desktop.Hoverable.
func (g *glance) MouseIn(e *desktop.MouseEvent) { g.MouseMoved(e) }

// MouseMoved reads the hour under the pointer, as desktop.Hoverable.
func (g *glance) MouseMoved(e *desktop.MouseEvent) { g.read(g.of.Read(g.cell(e.Position))) }

// MouseOut empties the reading, as desktop.Hoverable.
func (g *glance) MouseOut() { g.read("") }

// Tapped goes to the hour on the time axis, as fyne.Tappable.
func (g *glance) Tapped(e *fyne.PointEvent) {
	if i := g.cell(e.Position); i >= 0 {
		g.look(g.of.Hours[i].Span)
	}
}
