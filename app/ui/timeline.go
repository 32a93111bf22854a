package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// timelinePage is a barn's winter on one time axis under one sentence.
type timelinePage struct {
	object   fyne.CanvasObject
	plot     *chart.Chart // nil when there is nothing to draw
	measured *prose       // the stretch that was measured, else how to measure one
	at       desk.Span    // the stretch to show once there is something to draw
	first    desk.Span    // the stretch shown at first
	ways     *fyne.Container
	own      []fyne.CanvasObject // the ways that are always there
}

// newTimelinePage shows the lanes that are chosen of a figure that has them all.
func newTimelinePage(t desk.Timeline, f *chart.Figure, lanes *laneChoice, read func(string)) *timelinePage {
	p := &timelinePage{first: t.View}
	if t.Lacks != "" {
		p.object = container.New(inset{20, 14, 12, 8}, container.New(column{gap: 10}, sentence(t.Sentence), body(t.Lacks)))
		return p
	}
	all := f.Lanes
	shown := *f
	lanes.aside = t.Aside()
	shown.Lanes = lanes.of(all)
	p.measured = caption(t.Hint())
	p.plot = newPlot(t, &shown, read)
	p.plot.OnMeasure = func(s desk.Span) { p.measured.setText(t.Measured(s)) }
	pick := newTabButton("Lanes…", nil)
	pick.OnTapped = func() {
		p.pickLanes(pick, lanes.rows(all, func() {
			p.show(f, lanes.of(all))
			fyne.CurrentApp().Driver().CanvasForObject(pick).Unfocus() // what was pressed is made anew, and Escape is to close
		}))
	}
	shownPlot := container.NewStack(p.plot)
	if t.Glance.Days() > 0 {
		p.own = append(p.own, p.glanceButton(t.Glance, shownPlot, f, read))
	}
	p.own = append(p.own, pick)
	p.ways = container.NewHBox(p.own...)
	head := bordered(nil, nil, nil, container.NewVBox(p.ways), container.New(column{}, p.measured))
	if t.Sentence != "" {
		head = container.New(column{gap: 2}, sentence(t.Sentence), head)
	}
	p.object = container.New(inset{20, 10, 12, 2}, bordered(container.New(inset{0, 0, 0, 6}, head), nil, nil, nil, container.NewVScroll(shownPlot))) // a low window scrolls it
	return p
}

// glanceButton puts the winter at a glance in the place of the time axis, and the axis back.
func (p *timelinePage) glanceButton(g desk.Glance, place *fyne.Container, f *chart.Figure, read func(string)) fyne.CanvasObject {
	var button *tabButton
	show := func(o fyne.CanvasObject, label string) {
		button.SetText(label)
		place.Objects = []fyne.CanvasObject{o}
		place.Refresh()
	}
	axis := func() { p.measured.Show(); show(p.plot, "Day by day") }
	button = newTabButton("Day by day", nil)
	button.OnTapped = func() {
		if place.Objects[0] != fyne.CanvasObject(p.plot) {
			axis()
			return
		}
		look := func(h desk.Span) { axis(); p.look(h) }
		p.measured.Hide()
		show(glancePage(g, f.Theme, look, read), "Time axis")
	}
	return button
}

// pickLanes opens what lanes are picked with under its button.
func (p *timelinePage) pickLanes(under fyne.CanvasObject, rows fyne.CanvasObject) {
	driver := fyne.CurrentApp().Driver()
	pop := widget.NewPopUp(container.New(inset{8, 8, 8, 8}, rows), driver.CanvasForObject(under))
	closeOnEscape(pop)
	at := driver.AbsolutePositionForObject(under)
	pop.ShowAtPosition(fyne.NewPos(at.X+under.Size().Width-pop.MinSize().Width, at.Y+under.Size().Height))
}

// show draws some lanes of a figure; the stretch stays.
func (p *timelinePage) show(f *chart.Figure, lanes []chart.Lane) {
	some := *f
	some.Lanes, some.View = lanes, p.plot.View()
	whole := p.plot.Whole()
	p.plot.SetFigure(&some)
	p.plot.SetWhole(whole)
}

// offer puts a way back beside the sentence.
func (p *timelinePage) offer(label string, back func()) {
	if p.ways == nil {
		return
	}
	p.ways.Objects = append([]fyne.CanvasObject{newTabButton(label, back)}, p.own...)
}

// look shows a stretch with some room on both sides.
func (p *timelinePage) look(s desk.Span) {
	if p.plot == nil {
		return
	}
	room := max((s.To-s.From)/2, 24*3600*1000)
	p.plot.SetView(desk.Span{From: s.From - room, To: s.To + room})
}

// chosen is the stretch the keeper turned to, empty where it is the page's own: another barn has one of its own.
func (p *timelinePage) chosen() desk.Span {
	if p == nil || p.plot != nil && p.view() == p.first {
		return desk.Span{}
	}
	return p.view()
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
