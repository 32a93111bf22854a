package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// later is a page that is made when it first comes into sight: of a barn's pages only the chosen one is there.
type later struct {
	widget.BaseWidget
	make func() fyne.CanvasObject
	page fyne.CanvasObject // nil until it was in sight
}

func newLater(make func() fyne.CanvasObject) *later {
	l := &later{make: make}
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer makes the page, as fyne.Widget.
func (l *later) CreateRenderer() fyne.WidgetRenderer {
	if l.page == nil {
		l.page = l.make()
	}
	return widget.NewSimpleRenderer(l.page)
}

// MinSize is the page's, nothing before it is made, as fyne.CanvasObject.
func (l *later) MinSize() fyne.Size {
	if l.page == nil {
		return fyne.Size{}
	}
	return l.page.MinSize()
}

// Refresh refreshes the page where there is one, as fyne.CanvasObject.
func (l *later) Refresh() {
	if l.page != nil {
		l.BaseWidget.Refresh()
	}
}
