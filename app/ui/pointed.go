package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// pointed is something of which the pointer over it reads what is there.
type pointed struct {
	widget.BaseWidget
	content fyne.CanvasObject
	says    func(at fyne.Position) string
	read    func(string)
}

func newPointed(content fyne.CanvasObject, says func(at fyne.Position) string, read func(string)) *pointed {
	p := &pointed{content: content, says: says, read: read}
	p.ExtendBaseWidget(p)
	return p
}

// CreateRenderer draws the content and nothing else, as fyne.Widget.
func (p *pointed) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(p.content) }

// MouseIn reads what is under the pointer, as desktop.Hoverable.
func (p *pointed) MouseIn(e *desktop.MouseEvent) { p.MouseMoved(e) }

// MouseMoved reads what is under the pointer, as desktop.Hoverable.
func (p *pointed) MouseMoved(e *desktop.MouseEvent) { p.read(p.says(e.Position)) }

// MouseOut empties the reading, as desktop.Hoverable.
func (p *pointed) MouseOut() { p.read("") }
