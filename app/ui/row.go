package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// row is a line of a list that can be pressed; the keys are the list's.
type row struct {
	widget.BaseWidget
	mark          desk.Mark
	title, note   string
	bold          bool
	indent        float32
	chosen        bool
	press         func()
	drag          func(over fyne.Position) // where on the window it is dragged to; nil where it can't be
	drop          func()                   // let go
	hovered, aims bool
	ground        *canvas.Rectangle
}

func newRow(mark desk.Mark, title, note string, press func()) *row {
	r := &row{mark: mark, title: title, note: note, press: press}
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer draws the mark, the title and the note beneath it, as fyne.Widget.
func (r *row) CreateRenderer() fyne.WidgetRenderer {
	r.ground = canvas.NewRectangle(nil)
	r.ground.CornerRadius = 3
	icon := gap(14, 14)
	if res := markIcon(r.mark); res != nil {
		icon = container.New(fixed{14, 14}, widget.NewIcon(res))
	}
	icon = container.New(inset{0, 3, 8, 0}, container.NewVBox(icon))
	texts := container.New(column{}, line(r.title, theme.SizeNameText, theme.ColorNameForeground, r.bold))
	if r.note != "" {
		texts.Add(line(r.note, theme.SizeNameCaptionText, colorMuted, false))
	}
	content := container.New(inset{8 + r.indent, 4, 4, 4}, bordered(nil, nil, icon, nil, texts))
	r.paint()
	return &rowRenderer{widget.NewSimpleRenderer(container.NewStack(r.ground, content)), r}
}

type rowRenderer struct {
	fyne.WidgetRenderer
	row *row
}

// Refresh repaints the ground, as fyne.WidgetRenderer.
func (r *rowRenderer) Refresh() {
	r.row.paint()
	r.WidgetRenderer.Refresh()
}

// paint gives the ground its colour and the focus ring.
func (r *row) paint() {
	if r.ground == nil {
		return
	}
	ink := fyne.CurrentApp().Settings().Theme()
	variant := fyne.CurrentApp().Settings().ThemeVariant()
	r.ground.FillColor, r.ground.StrokeWidth = nil, 0
	switch {
	case r.hovered:
		r.ground.FillColor = ink.Color(theme.ColorNameHover, variant)
	case r.chosen:
		r.ground.FillColor = ink.Color(theme.ColorNameButton, variant)
	}
	if r.aims {
		r.ground.StrokeColor, r.ground.StrokeWidth = ink.Color(theme.ColorNamePrimary, variant), 2
	}
	r.ground.Refresh()
}

// Tapped presses the row, as fyne.Tappable.
func (r *row) Tapped(*fyne.PointEvent) {
	if r.press != nil {
		r.press()
	}
}

// MouseIn shows that the row can be pressed, as desktop.Hoverable.
func (r *row) MouseIn(*desktop.MouseEvent) { r.hovered = true; r.paint() }

// MouseMoved does nothing, as desktop.Hoverable.
func (r *row) MouseMoved(*desktop.MouseEvent) {}

// MouseOut ends it, as desktop.Hoverable.
func (r *row) MouseOut() { r.hovered = false; r.paint() }

// Dragged tells where the row is dragged to, as fyne.Draggable.
func (r *row) Dragged(e *fyne.DragEvent) {
	if r.drag != nil {
		r.drag(e.AbsolutePosition)
	}
}

// DragEnd lets go, as fyne.Draggable. A row that can't be dragged is pressed: the hand only trembled.
func (r *row) DragEnd() {
	if r.drop == nil {
		r.Tapped(nil)
		return
	}
	r.drop()
}

// keyRow is a row by itself, which Space and Enter press.
type keyRow struct{ row }

func newKeyRow(title, note string, press func()) *keyRow {
	r := &keyRow{row{title: title, note: note, press: press}}
	r.ExtendBaseWidget(r)
	return r
}

// FocusGained shows the focus ring, as fyne.Focusable.
func (r *keyRow) FocusGained() { r.aims = true; r.paint() }

// FocusLost hides it, as fyne.Focusable.
func (r *keyRow) FocusLost() { r.aims = false; r.paint() }

// TypedRune presses on a space, as fyne.Focusable.
func (r *keyRow) TypedRune(c rune) {
	if c == ' ' {
		r.Tapped(nil)
	}
}

// TypedKey presses on Enter, as fyne.Focusable; other keys are the page's.
func (r *keyRow) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyReturn || e.Name == fyne.KeyEnter {
		r.Tapped(nil)
		return
	}
	passOn(r, e)
}

// passOn gives a key that an object has no use for to the page it is on.
func passOn(o fyne.CanvasObject, e *fyne.KeyEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(o); c != nil && c.OnTypedKey() != nil {
		c.OnTypedKey()(e)
	}
}
