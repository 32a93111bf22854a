package chart

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"thawbook/app/figure"
)

// press is a mouse button held down on the chart.
type press struct {
	x       float64 // device pixels
	at      int64
	view    figure.Span
	measure bool
	moved   bool
}

var (
	_ desktop.Mouseable  = (*Chart)(nil)
	_ desktop.Hoverable  = (*Chart)(nil)
	_ desktop.Cursorable = (*Chart)(nil)
	_ fyne.Draggable     = (*Chart)(nil)
	_ fyne.Scrollable    = (*Chart)(nil)
	_ fyne.Focusable     = (*Chart)(nil)

	_ fyne.SecondaryTappable = (*Chart)(nil)
)

// perPixel returns how many device pixels a unit of the toolkit is.
func (c *Chart) perPixel() float64 {
	if c.im == nil || c.Size().Width < 1 {
		return 1
	}
	return float64(c.im.Rect.Dx()) / float64(c.Size().Width)
}

// x returns the device pixel of a position, kept on the time axis.
func (c *Chart) x(p fyne.Position) float64 {
	px := float64(p.X) * c.perPixel()
	return min(max(px, float64(c.layout.Plot.Min.X)), float64(c.layout.Plot.Max.X))
}

// MouseDown starts a drag, or with shift a measurement, and takes the focus.
func (c *Chart) MouseDown(ev *desktop.MouseEvent) {
	if ev.Button != desktop.MouseButtonPrimary || c.layout.Plot.Empty() {
		return
	}
	if cv := fyne.CurrentApp().Driver().CanvasForObject(c); cv != nil {
		cv.Focus(c)
	}
	x := c.x(ev.Position)
	c.press = &press{x: x, at: c.layout.PixelToTime(x), view: c.figure.View,
		measure: ev.Modifier&fyne.KeyModifierShift != 0}
}

// Dragged moves the view, or the end of the measured stretch, with the pointer.
func (c *Chart) Dragged(ev *fyne.DragEvent) {
	p := c.press
	if p == nil {
		return
	}
	p.moved = true
	if p.measure {
		t := c.layout.PixelToTime(c.x(ev.Position))
		c.Select(figure.Span{From: min(p.at, t), To: max(p.at, t)})
		return
	}
	perMS := float64(p.view.To-p.view.From) / float64(c.layout.Plot.Dx())
	by := int64(math.Round((p.x - float64(ev.Position.X)*c.perPixel()) * perMS))
	c.look(figure.Span{From: p.view.From + by, To: p.view.To + by})
}

// MouseUp ends the drag; a press that did not move drops the measured stretch.
func (c *Chart) MouseUp(*desktop.MouseEvent) {
	p := c.press
	c.press = nil
	switch {
	case p == nil:
	case p.measure && p.moved:
		c.measured(c.selected)
	case !p.moved:
		c.drop()
	}
}

// DragEnd ends the drag where the button was let go outside the chart.
func (c *Chart) DragEnd() { c.MouseUp(nil) }

func (c *Chart) measured(s figure.Span) {
	if c.OnMeasure != nil {
		c.OnMeasure(s)
	}
}

// drop takes the measured stretch away.
func (c *Chart) drop() {
	if c.selected != (figure.Span{}) {
		c.Select(figure.Span{})
		c.measured(figure.Span{})
	}
}

// look shows s on behalf of the keeper.
func (c *Chart) look(s figure.Span) {
	before := c.figure.View
	c.SetView(s)
	if c.figure.View != before && c.OnView != nil {
		c.OnView(c.figure.View)
	}
}

// notch is how far the toolkit says a wheel turned for one notch.
const notch = 25

// Scrolled zooms at the pointer; sideways (or with shift) it moves along the time axis.
func (c *Chart) Scrolled(ev *fyne.ScrollEvent) {
	if c.layout.Plot.Empty() {
		return
	}
	if dx := float64(ev.Scrolled.DX); dx != 0 {
		c.move(-dx / notch * 0.1)
	}
	if dy := float64(ev.Scrolled.DY); dy != 0 {
		c.zoom(math.Pow(1.25, -min(max(dy/notch, -4), 4)), c.layout.PixelToTime(c.x(ev.Position)))
	}
}

// zoom makes the view factor times as long and keeps the instant at where it is on the screen.
func (c *Chart) zoom(factor float64, at int64) {
	v, w := c.figure.View, c.whole
	length := min(max(float64(v.To-v.From)*factor, shortestView), float64(w.To-w.From))
	share := float64(at-v.From) / float64(v.To-v.From)
	from := at - int64(math.Round(share*length))
	c.look(figure.Span{From: from, To: from + int64(math.Round(length))})
}

// move shifts the view by a share of its length.
func (c *Chart) move(share float64) {
	v := c.figure.View
	by := int64(math.Round(share * float64(v.To-v.From)))
	c.look(figure.Span{From: v.From + by, To: v.To + by})
}

func (c *Chart) middle() int64 { return c.figure.View.From + (c.figure.View.To-c.figure.View.From)/2 }

const keyZoom = 1.5

// TypedKey implements fyne.Focusable.
func (c *Chart) TypedKey(ev *fyne.KeyEvent) {
	switch ev.Name {
	case fyne.KeyLeft:
		c.move(-0.1)
	case fyne.KeyRight:
		c.move(0.1)
	case fyne.KeyPageUp:
		c.move(-0.9)
	case fyne.KeyPageDown:
		c.move(0.9)
	case fyne.KeyUp:
		c.zoom(1/keyZoom, c.middle())
	case fyne.KeyDown:
		c.zoom(keyZoom, c.middle())
	case fyne.KeyHome:
		c.look(c.whole)
	case fyne.KeyEscape:
		c.drop()
	case desktop.KeyMenu:
		t, x := c.pointed()
		c.menu(t, fyne.CurrentApp().Driver().AbsolutePositionForObject(c).AddXY(x, c.units(c.layout.Plot.Min.Y)))
	}
}

// TappedSecondary asks for the menu of the instant under the pointer, as fyne.SecondaryTappable.
func (c *Chart) TappedSecondary(ev *fyne.PointEvent) {
	c.menu(c.layout.PixelToTime(c.x(ev.Position)), ev.AbsolutePosition)
}

func (c *Chart) menu(t int64, at fyne.Position) {
	if c.OnMenu != nil && !c.layout.Plot.Empty() {
		c.OnMenu(t, at)
	}
}

// pointed is the instant the keys are about and where it lies: that of the pointer, else the middle of the view.
func (c *Chart) pointed() (t int64, x float32) {
	if !c.cursor.Hidden {
		x = c.cursor.Position1.X
		return c.layout.PixelToTime(c.x(fyne.NewPos(x, 0))), x
	}
	return c.middle(), c.units(int(c.layout.TimeToPixel(c.middle())))
}

// TypedRune implements fyne.Focusable. Plus and minus are taken here and not as keys, since where they
// lie differs between keyboards.
func (c *Chart) TypedRune(r rune) {
	switch r {
	case '+', '=':
		c.zoom(1/keyZoom, c.middle())
	case '-', '−':
		c.zoom(keyZoom, c.middle())
	case 'n', 'N':
		if t, _ := c.pointed(); c.OnNote != nil && !c.layout.Plot.Empty() {
			c.OnNote(t)
		}
	}
}

// FocusGained shows the focus ring.
func (c *Chart) FocusGained() { c.ring.Show() }

// FocusLost hides it.
func (c *Chart) FocusLost() { c.ring.Hide() }

// MouseIn implements desktop.Hoverable.
func (c *Chart) MouseIn(ev *desktop.MouseEvent) { c.MouseMoved(ev) }

// MouseMoved sets the cursor under the pointer and tells what the figure says there.
func (c *Chart) MouseMoved(ev *desktop.MouseEvent) {
	x, y := float64(ev.Position.X)*c.perPixel(), float64(ev.Position.Y)*c.perPixel()
	plot := c.layout.Plot
	if plot.Empty() || x < float64(plot.Min.X) || x > float64(plot.Max.X) || y > float64(plot.Max.Y) {
		c.MouseOut()
		return
	}
	top, bottom := c.units(plot.Min.Y), c.units(plot.Max.Y)
	c.cursor.Position1 = fyne.NewPos(ev.Position.X, top)
	c.cursor.Position2 = fyne.NewPos(ev.Position.X, bottom)
	c.cursor.Show()
	c.cursor.Refresh()
	if c.OnHover != nil {
		t := c.layout.PixelToTime(x)
		c.OnHover(t, c.figure.Read(t))
	}
}

// MouseOut takes the cursor away.
func (c *Chart) MouseOut() {
	if c.cursor.Hidden {
		return
	}
	c.cursor.Hide()
	if c.OnLeave != nil {
		c.OnLeave()
	}
}

// Cursor implements desktop.Cursorable.
func (c *Chart) Cursor() desktop.Cursor { return desktop.CrosshairCursor }

// units returns a device pixel in the toolkit's units.
func (c *Chart) units(px int) float32 { return float32(float64(px) / c.perPixel()) }

// placeSelection puts the mark over the part of the measured stretch that is in view.
func (c *Chart) placeSelection() {
	v, plot := c.figure.View, c.layout.Plot
	s := figure.Span{From: max(c.selected.From, v.From), To: min(c.selected.To, v.To)}
	if s.To <= s.From || plot.Empty() {
		c.selection.Hide()
		return
	}
	x0, x1 := c.layout.TimeToPixel(s.From), c.layout.TimeToPixel(s.To)
	c.selection.Move(fyne.NewPos(float32(x0/c.perPixel()), c.units(plot.Min.Y)))
	c.selection.Resize(fyne.NewSize(float32((x1-x0)/c.perPixel()), c.units(plot.Dy())))
	c.selection.Show()
	c.selection.Refresh()
}
