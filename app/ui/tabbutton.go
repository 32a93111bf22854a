package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// tabButton is a button on a page that comes into sight when Tab reaches it.
type tabButton struct{ widget.Button }

func newTabButton(label string, press func()) *tabButton {
	b := &tabButton{}
	b.Text, b.OnTapped, b.Importance = label, press, widget.LowImportance
	b.ExtendBaseWidget(b)
	return b
}

// inLine moves buttons that show nothing but their words to where the text above begins.
func inLine(words fyne.CanvasObject) fyne.CanvasObject {
	return container.New(inset{left: -buttonPad}, words)
}

// FocusGained shows the focus, where it can be seen, as fyne.Focusable.
func (b *tabButton) FocusGained() {
	b.Button.FocusGained()
	reveal(b, scrollAround(b))
}

// TypedKey scrolls the page the button is on, as fyne.Focusable.
func (b *tabButton) TypedKey(e *fyne.KeyEvent) {
	b.Button.TypedKey(e)
	scrollByKey(scrollAround(b), e.Name)
}

// reveal scrolls just as far as it takes to see an object of a scroll.
func reveal(o fyne.CanvasObject, s *container.Scroll) {
	if s == nil {
		return
	}
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject
	top := at(o).Y - at(s).Y
	bottom := top + o.Size().Height
	switch {
	case top < 0:
		s.ScrollToOffset(fyne.NewPos(s.Offset.X, s.Offset.Y+top))
	case bottom > s.Size().Height:
		s.ScrollToOffset(fyne.NewPos(s.Offset.X, s.Offset.Y+bottom-s.Size().Height))
	}
}

// scrollAround is the scroll on the page that holds an object, or nil.
func scrollAround(sought fyne.CanvasObject) *container.Scroll {
	c := fyne.CurrentApp().Driver().CanvasForObject(sought)
	if c == nil {
		return nil
	}
	return scrollOf(c.Content(), func(s *container.Scroll) bool { return holds(s.Content, sought) })
}

// scrollOf is the first scroll among the objects of a page that is as wanted, or nil.
func scrollOf(page fyne.CanvasObject, wanted func(*container.Scroll) bool) *container.Scroll {
	switch p := page.(type) {
	case *container.Scroll:
		if wanted(p) {
			return p
		}
	case *pageTabs:
		return scrollOf(p.page(), wanted)
	case *later:
		return scrollOf(p.page, wanted)
	case *fyne.Container:
		for _, o := range p.Objects {
			if s := scrollOf(o, wanted); s != nil {
				return s
			}
		}
	}
	return nil
}

// holds says whether an object is another, or a container, or something that is read under the pointer, with it.
func holds(o, sought fyne.CanvasObject) bool {
	if o == sought {
		return true
	}
	switch o := o.(type) {
	case *fyne.Container:
		return slices.ContainsFunc(o.Objects, func(part fyne.CanvasObject) bool { return holds(part, sought) })
	case *copyable:
		return holds(o.content, sought)
	}
	return false
}
