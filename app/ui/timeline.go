package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// timelinePage is a barn's winter on one time axis under one sentence.
type timelinePage struct {
	object   fyne.CanvasObject
	plot     *chart.Chart // nil when there is nothing to draw
	measured *prose       // the stretch that was measured, else how to measure one
	at       desk.Span    // the stretch to show once there is something to draw
}

func newTimelinePage(t desk.Timeline, f *chart.Figure, read func(string)) *timelinePage {
	p := &timelinePage{}
	if t.Lacks != "" {
		p.object = container.New(inset{20, 14, 12, 8}, container.New(column{gap: 10}, sentence(t.Sentence), body(t.Lacks)))
		return p
	}
	p.measured = caption(desk.HelpLine("timeline"))
	p.plot = newPlot(t, f, read)
	p.plot.OnMeasure = func(s desk.Span) { p.measured.setText(t.Measured(s)) }
	top := container.New(column{gap: 2}, p.measured)
	if t.Sentence != "" {
		top = titled(t.Sentence, "")
		top.Add(p.measured)
	}
	p.object = container.New(inset{20, 14, 12, 4}, container.NewBorder(container.New(inset{0, 0, 0, 6}, top), nil, nil, nil, p.plot))
	return p
}

// look shows a stretch with some room on both sides.
func (p *timelinePage) look(s desk.Span) {
	if p.plot == nil {
		return
	}
	room := max((s.To-s.From)/2, 24*3600*1000)
	p.plot.SetView(desk.Span{From: s.From - room, To: s.To + room})
}

// view is the stretch shown, or to be shown; empty when there is none.
func (p *timelinePage) view() desk.Span {
	switch {
	case p == nil:
		return desk.Span{}
	case p.plot == nil:
		return p.at
	}
	return p.plot.View()
}
