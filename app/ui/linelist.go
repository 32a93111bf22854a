package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// lineList is a list of lines of which only those in sight are made: a winter may have five hundred loggers. Tab comes to it
// as to one thing; the arrows go along it, Space and Enter press. Other keys are the page's.
type lineList struct {
	widget.List
	at    int  // the line the keys are at
	keyed bool // has the keys
}

func newLineList(length func() int, made func(i int) fyne.CanvasObject, press func(i int)) *lineList {
	high := lineHigh()
	l := &lineList{}
	l.Length, l.HideSeparators = length, true
	l.CreateItem = func() fyne.CanvasObject { return container.New(fixed{height: high}) }
	l.UpdateItem = func(i int, o fyne.CanvasObject) {
		line, place := made(i), o.(*fyne.Container)
		if r, ok := line.(*row); ok && l.keyed && i == l.at {
			r.aims = true
		}
		place.Objects = []fyne.CanvasObject{line}
		place.Refresh()
	}
	l.OnSelected = func(i int) {
		l.Unselect(i)
		press(i)
	}
	l.ExtendBaseWidget(l)
	return l
}

// lineHigh is the height of a line.
func lineHigh() float32 {
	return newRow(desk.MarkNone, "name", "note", nil).MinSize().Height
}

// FocusGained puts a ring around the line the keys are at, as fyne.Focusable.
func (l *lineList) FocusGained() {
	l.keyed = true
	l.backInside()
	l.List.FocusGained()
}

// FocusLost takes it off, as fyne.Focusable.
func (l *lineList) FocusLost() {
	l.keyed = false
	l.List.FocusLost()
}

// backInside brings the keys back to the last line where lines have become fewer.
func (l *lineList) backInside() {
	for l.at > 0 && l.at >= l.Length() {
		l.at--
		l.List.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	}
}

// TypedKey moves along the lines and presses one, as fyne.Focusable.
func (l *lineList) TypedKey(e *fyne.KeyEvent) {
	l.backInside()
	switch e.Name {
	case fyne.KeyUp:
		l.at = max(0, l.at-1)
	case fyne.KeyDown:
		l.at = max(0, min(l.Length()-1, l.at+1))
	case fyne.KeySpace:
	case fyne.KeyReturn, fyne.KeyEnter:
		e = &fyne.KeyEvent{Name: fyne.KeySpace}
	default:
		passOn(l, e)
		return
	}
	l.List.TypedKey(e)
}
