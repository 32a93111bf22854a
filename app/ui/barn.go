package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// barnView is what is shown of a barn, ok when it is judged, and barnKey all that it hangs on.
type (
	barnKey struct {
		state, barn, other int
		units              desk.Units
	}
	barnView struct {
		desk.BarnView
		ok     bool
		figure *chart.Figure
		notes  []string
	}
	// besideView is the barn beside another, made when its page is first looked at.
	besideView struct {
		beside desk.TwoBarns
		curves *chart.Figure // of both barns
		all    desk.AllBarns
		small  *chart.Figure // of all barns
	}
)

// barnView is what is shown of the chosen barn; fresh is false while it is made.
func (u *UI) barnView() (v barnView, fresh bool) {
	book, key := u.book, barnKey{u.state, u.barn, 0, u.units}
	return u.barnViews.of(key, func() (v barnView) {
		v.BarnView, v.ok = book.Barn(key.barn, key.units)
		v.figure, v.notes = figureOf(v.Timeline), book.Notes(key.barn)
		return v
	}, u.refresh)
}

// besideView is what is shown of the chosen barn beside another; fresh is false while it is made.
func (u *UI) besideView() (v besideView, fresh bool) {
	book, key := u.book, barnKey{u.state, u.barn, u.other, u.units}
	return u.besideViews.of(key, func() (v besideView) {
		v.beside = book.Beside(key.barn, key.other, key.units)
		v.curves = figureOf(v.beside.Both)
		v.all = book.AllBarns(key.units)
		v.small = figureOf(v.all.Plots)
		return v
	}, u.refresh)
}

// isDark says whether the window's palette is the dark one.
func (u *UI) isDark() bool { return u.theme.IsDark(u.app.Settings().ThemeVariant()) }

// pageNames are a barn's screens in order.
var pageNames = []string{"First look", "Timeline", "Spells", "Stages", "Air and water", "Side by side", "Before next winter"}

// sideBySidePage is the number of the page with two barns.
const sideBySidePage = 5

// barnPage is a barn's header over its screens; nil while it is made.
func (u *UI) barnPage() fyne.CanvasObject {
	v, fresh := u.barnView()
	if !fresh {
		return nil
	}
	if !v.ok {
		return container.New(inset{20, 14, 12, 8}, body(u.nothingToShow()))
	}
	inPalette(v.figure, u.isDark())
	view := u.plot.chosen()
	u.plot = newTimelinePage(v.Timeline, v.figure, &u.lanes, u.status.read)
	u.takeNotes(u.plot, v.Timeline)
	if u.plot.plot != nil && view.To > view.From {
		u.plot.plot.SetView(view)
	}
	u.tabs = u.pagesOf(v, u.plot.object)
	u.tabs.choose(u.page)
	u.tabs.turned = func() { u.page = u.tabs.chosen(); u.status.read("") }
	return bordered(headerOf(v.Header, u.beesDialog, u.status.read), nil, nil, nil, u.tabs)
}

// pagesOf are a barn's screens behind their tabs, each made when it is first chosen.
func (u *UI) pagesOf(v barnView, timeline fyne.CanvasObject) *pageTabs {
	tabs := newPageTabs()
	for i, page := range []func() fyne.CanvasObject{
		func() fyne.CanvasObject {
			u.lookSoon()
			return firstLookPage(v.FirstLook, v.notes, u.look)
		},
		func() fyne.CanvasObject { return timeline },
		func() fyne.CanvasObject { return newSpellsPage(v.Spells, u.look, u.status.read) },
		func() fyne.CanvasObject {
			return stagesPage(v.Stages, u.quiet("Fan stages…", u.stageSheet), u.look, u.status.read)
		},
		func() fyne.CanvasObject { return airWaterPage(v.AirWater, u.airSheets(), u.look, u.status.read) },
		u.twoBarnsPage,
		func() fyne.CanvasObject { return beforeNextPage(v.Before, u.look, u.status.read) },
	} {
		tabs.add(pageNames[i], page)
	}
	return tabs
}

// twoBarnsPage is the chosen barn beside another. What was looked at of it stays when it is made anew.
func (u *UI) twoBarnsPage() fyne.CanvasObject {
	v, fresh := u.besideView()
	switch {
	case !fresh:
		return container.New(inset{20, 14, 12, 8}, body("The barns are being set side by side."))
	case v.curves == nil: // a fault, which is told above
		return container.New(inset{20, 14, 12, 8}, body("The barns could not be set side by side."))
	}
	inPalette(v.curves, u.isDark())
	inPalette(v.small, u.isDark())
	p := newTwoBarnsPage(v.beside, v.curves, &u.lanes, u.look, u.status.read, func(other int) { u.other = other; u.refresh() }, u.besideDialog)
	if u.comparing = p.tabs; p.tabs != nil {
		if len(v.all.Rows) > 0 {
			p.tabs.add("All barns", func() fyne.CanvasObject { return allBarnsPage(v.all, v.small, u.status.read) })
		}
		p.tabs.choose(u.compared)
		p.tabs.turned = func() { u.compared = p.tabs.chosen(); u.status.read("") }
	}
	return p.object
}

// nothingToShow says why no barn's page is shown.
func (u *UI) nothingToShow() string {
	switch {
	case u.work.busy(), u.book.Behind() && !u.stopped:
		return "The figures are being worked out."
	case len(u.book.BarnNames()) > 0:
		return "The figures are not worked out yet. Edit, Work it out again does it."
	}
	return "This winter has no barn yet. Drop the loggers' files on this window, or take barns over from another winter (File)."
}

func (u *UI) showBarn(barn int) {
	u.barn = barn
	if u.other != desk.InOtherWinter {
		u.other = 0
	}
	if u.page == filesPageNumber {
		u.page = 0
	}
	u.refresh()
}

// showPage shows one of a barn's screens.
func (u *UI) showPage(page int) {
	if u.page == filesPageNumber {
		u.page = page
		u.refresh()
	}
	if u.tabs != nil && u.page != page {
		u.tabs.choose(page)
	}
}

// nextCompared turns to the next way two barns are looked at, after the last to the first.
func (u *UI) nextCompared() {
	if t := u.comparing; t != nil {
		t.choose((t.chosen() + 1) % len(t.pages))
	}
}

// look shows a sentence's stretch in the Timeline.
func (u *UI) look(s desk.Sentence) {
	from := u.page
	u.showPage(1)
	u.plot.look(s.Look)
	if from != u.page && from < len(pageNames) {
		u.plot.offer("Back to "+pageNames[from], func() { u.showPage(from) })
	}
}
