// Package chart is the time plot on screen: a figure the pointer and the keys can move through.
//
// The figure is drawn into one raster, again only when the view, the figure or the size changes. The
// cursor, the measured stretch and the focus ring are objects above it, so that pointing at something
// draws nothing anew. A chart handles presses itself and must not stand inside a scroll container,
// which would take its drags and its wheel.
package chart

import (
	"image"
	"image/color"
	"io"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/figure"
)

// shortestView is as far as one can zoom in, in milliseconds.
const shortestView = 10 * 60 * 1000

// Chart shows a figure. Dragging moves along the time axis, the wheel zooms at the pointer, dragging with
// shift measures a stretch; ← → move, ↑ ↓ + − zoom, Home shows the whole, Escape drops the measured
// stretch; the right button or the menu key asks for a menu, N for a note. All methods and callbacks run on the main goroutine.
type Chart struct {
	widget.BaseWidget

	OnHover   func(t int64, r []figure.Reading) // the pointer is at instant t, ms UTC
	OnLeave   func()                            // the pointer left the plot
	OnView    func(figure.Span)                 // the keeper moved the view; not called by SetView
	OnMeasure func(figure.Span)                 // the keeper measured a stretch; empty: he dropped it
	OnMenu    func(t int64, at fyne.Position)   // the right button, or the menu key, at instant t; where on the canvas
	OnNote    func(t int64)                     // N was pressed with the pointer at instant t, or in the middle

	figure *figure.Figure
	whole  figure.Span
	layout figure.Layout
	im     *image.RGBA
	stale  bool // the figure must be drawn again
	drawn  int  // how often it was

	raster    *canvas.Raster
	cursor    *canvas.Line
	selection *canvas.Rectangle
	ring      *canvas.Rectangle
	selected  figure.Span
	press     *press
}

// New returns a chart of f that can be moved through f's whole extent. It starts at f's view, or at the
// whole where that is empty.
func New(f *figure.Figure) *Chart {
	c := &Chart{}
	c.raster = canvas.NewRaster(c.generate)
	c.cursor = canvas.NewLine(color.Transparent)
	c.selection = canvas.NewRectangle(color.Transparent)
	c.ring = canvas.NewRectangle(color.Transparent)
	c.ring.StrokeWidth = 2
	for _, o := range []fyne.CanvasObject{c.cursor, c.selection, c.ring} {
		o.Hide()
	}
	c.ExtendBaseWidget(c)
	c.SetFigure(f)
	return c
}

// SetFigure shows another figure. The view is the new figure's, or the old one where that is empty.
func (c *Chart) SetFigure(f *figure.Figure) {
	if f == nil {
		f = &figure.Figure{Theme: figure.Light()}
	}
	view := f.View
	if view.To <= view.From && c.figure != nil {
		view = c.figure.View
	}
	c.figure, c.whole = f, f.Extent()
	c.colour()
	c.figure.View = c.clamped(view)
	c.redraw()
}

// SetWhole sets how far one can move; empty: from the first to the last reading of the figure.
func (c *Chart) SetWhole(s figure.Span) {
	if s.To <= s.From {
		s = c.figure.Extent()
	}
	c.whole = s
	c.SetView(c.figure.View)
}

// Whole returns how far one can move.
func (c *Chart) Whole() figure.Span { return c.whole }

// View returns the stretch of time shown.
func (c *Chart) View() figure.Span { return c.figure.View }

// SetView shows s, kept inside the whole; an empty s shows the whole.
func (c *Chart) SetView(s figure.Span) {
	if s = c.clamped(s); s != c.figure.View {
		c.figure.View = s
		c.redraw()
	}
}

// Read tells what the figure says at an instant.
func (c *Chart) Read(t int64) []figure.Reading { return c.figure.Read(t) }

// Picture writes what is shown as a PNG of the size it has on the screen.
func (c *Chart) Picture(out io.Writer) error {
	size, scale := c.Size(), c.perPixel()
	return c.figure.WritePNG(out, int(size.Width), int(size.Height), scale)
}

// Selected returns the marked stretch, empty when there is none.
func (c *Chart) Selected() figure.Span { return c.selected }

// Select marks a stretch; an empty one drops the mark.
func (c *Chart) Select(s figure.Span) {
	c.selected = s
	c.placeSelection()
}

// MinSize is the smallest size at which nothing is cut short.
func (c *Chart) MinSize() fyne.Size {
	c.ExtendBaseWidget(c)
	w, h := c.figure.MinSize()
	return fyne.NewSize(float32(w), float32(h))
}

// clamped returns s with its length and its ends kept inside the whole.
func (c *Chart) clamped(s figure.Span) figure.Span {
	w := c.whole
	if s.To <= s.From || w.To <= w.From {
		return w
	}
	length := min(max(s.To-s.From, shortestView), w.To-w.From)
	from := min(max(s.From, w.From), w.To-length)
	return figure.Span{From: from, To: from + length}
}

// redraw has the figure drawn again and moves what lies above it along.
func (c *Chart) redraw() {
	c.stale = true
	c.relayout()
	c.cursor.Hide()
	c.placeSelection()
	c.raster.Refresh()
}

// generate is called by the toolkit with the raster's size in device pixels.
func (c *Chart) generate(w, h int) image.Image {
	if w < 1 || h < 1 {
		return image.NewRGBA(image.Rect(0, 0, 1, 1))
	}
	if c.im == nil || c.im.Rect.Dx() != w || c.im.Rect.Dy() != h {
		c.im, c.stale = image.NewRGBA(image.Rect(0, 0, w, h)), true
	}
	if c.stale {
		c.layout = c.figure.Draw(c.im, float64(w)/float64(max(c.Size().Width, 1)))
		c.stale = false
		c.drawn++
	}
	return c.im
}

// relayout finds where things lie before the next drawing, at the size of the last one.
func (c *Chart) relayout() {
	size := c.Size()
	if size.Width < 1 || size.Height < 1 {
		return
	}
	w, h, scale := int(size.Width), int(size.Height), 1.0
	if c.im != nil {
		w, h = c.im.Rect.Dx(), c.im.Rect.Dy()
		scale = float64(w) / float64(size.Width)
	}
	c.layout = c.figure.Layout(w, h, scale)
}

// colour gives the objects above the raster the figure's colours.
func (c *Chart) colour() {
	t := c.figure.Theme
	c.cursor.StrokeColor, c.cursor.StrokeWidth = t.Ink, 1
	c.ring.StrokeColor = t.Accent
	wash := t.Accent
	wash.A = 0x2E
	c.selection.FillColor = wash
}

// CreateRenderer implements fyne.Widget.
func (c *Chart) CreateRenderer() fyne.WidgetRenderer { return &renderer{c} }

type renderer struct{ c *Chart }

func (r *renderer) Destroy()           {}
func (r *renderer) MinSize() fyne.Size { return r.c.MinSize() }

func (r *renderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.c.raster, r.c.selection, r.c.cursor, r.c.ring}
}

func (r *renderer) Layout(size fyne.Size) {
	r.c.stale = true
	r.c.raster.Resize(size)
	r.c.ring.Move(fyne.NewPos(1, 1))
	r.c.ring.Resize(size.SubtractWidthHeight(2, 2))
	r.c.relayout()
	r.c.placeSelection()
}

func (r *renderer) Refresh() { r.c.redraw() }
