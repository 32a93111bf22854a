package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"thawbook/app/desk"
)

// timelinePage is a barn's winter on one time axis under one sentence.
type timelinePage struct {
	object fyne.CanvasObject
	plot   *plot
}

func newTimelinePage(t desk.Timeline, dark bool, read func(string)) *timelinePage {
	p := &timelinePage{}
	top := titled(t.Sentence, "")
	if t.Lacks != "" {
		top.Add(body(t.Lacks))
		p.object = container.New(inset{20, 14, 12, 8}, top)
		return p
	}
	p.plot = newPlot(t, dark, read)
	p.object = container.New(inset{20, 14, 12, 8}, container.NewBorder(top, caption(desk.HelpLine("stages")), nil, nil, p.plot.object))
	return p
}

// look shows a stretch with some room on both sides.
func (p *timelinePage) look(s desk.Span) {
	if p.plot != nil {
		p.plot.look(s)
	}
}
