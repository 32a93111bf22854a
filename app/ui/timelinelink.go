package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// timelineLink is a figure of a table that can be seen in the Timeline: a press, or Space and Enter, leads there. Over it the
// pointer reads what it reads on the rest of the table.
type timelineLink struct {
	widget.BaseWidget
	cell *prose
	ring *canvas.Rectangle
	look func()
	menu func(at fyne.Position) // the table's
}

func newTimelineLink(cell *prose, look func(), menu func(at fyne.Position)) *timelineLink {
	l := &timelineLink{cell: cell, ring: canvas.NewRectangle(nil), look: look, menu: menu}
	cell.ink = theme.ColorNamePrimary
	l.ring.CornerRadius = 3
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer draws the figure and the focus around it, as fyne.Widget.
func (l *timelineLink) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewStack(l.ring, l.cell))
}

// natural is its width when nothing presses.
func (l *timelineLink) natural() float32 { return l.cell.natural() }

// Tapped leads to the Timeline, as fyne.Tappable.
func (l *timelineLink) Tapped(*fyne.PointEvent) { l.look() }

// TappedSecondary shows the table's menu, as fyne.SecondaryTappable.
func (l *timelineLink) TappedSecondary(at *fyne.PointEvent) { l.menu(at.AbsolutePosition) }

// Cursor says that it can be pressed, as desktop.Cursorable.
func (l *timelineLink) Cursor() desktop.Cursor { return desktop.PointerCursor }

// FocusGained shows the focus where it can be seen, as fyne.Focusable.
func (l *timelineLink) FocusGained() {
	l.ring.StrokeColor, l.ring.StrokeWidth = l.Theme().Color(theme.ColorNamePrimary, fyne.CurrentApp().Settings().ThemeVariant()), 1
	l.ring.Refresh()
	reveal(l, scrollAround(l))
}

// FocusLost takes the focus off, as fyne.Focusable.
func (l *timelineLink) FocusLost() {
	l.ring.StrokeWidth = 0
	l.ring.Refresh()
}

// TypedRune has no use, as fyne.Focusable.
func (l *timelineLink) TypedRune(rune) {}

// TypedKey leads to the Timeline, or scrolls the page, as fyne.Focusable.
func (l *timelineLink) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		l.look()
	default:
		scrollByKey(scrollAround(l), e.Name)
	}
}
