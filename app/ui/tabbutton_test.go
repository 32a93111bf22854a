package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// A page of 1000 in a window of 200: the button at its end comes into sight when it gets the focus, and the one at its
// beginning again.
func TestTabBringsAButtonIntoSight(t *testing.T) {
	test.NewTempApp(t)
	first, last := newTabButton("first", nil), newTabButton("last", nil)
	scroll := container.NewVScroll(container.New(column{}, first, gap(1, 1000), last))
	tabs := newPageTabs()
	tabs.add("page", func() fyne.CanvasObject { return scroll })
	win := test.NewTempWindow(t, tabs)
	win.Resize(fyne.NewSize(300, 200))
	for _, b := range []*tabButton{last, first} {
		win.Canvas().Focus(b)
		at := fyne.CurrentApp().Driver().AbsolutePositionForObject
		if top := at(b).Y - at(scroll).Y; top < 0 || top+b.Size().Height > scroll.Size().Height {
			t.Errorf("%s lies at %v of %v", b.Text, top, scroll.Size().Height)
		}
	}
}
