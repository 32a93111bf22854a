package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// twoBarnsPage is a barn beside another: a sentence over a table, the curves of both, and how sure it is.
type twoBarnsPage struct {
	object fyne.CanvasObject
	curves *timelinePage // nil where there is nothing to compare
	tabs   *pageTabs
}

// newTwoBarnsPage is the Side by side screen; choose asks for another of the barns it can be set beside, winter for another
// winter's file.
func newTwoBarnsPage(v desk.TwoBarns, f *chart.Figure, lanes *laneChoice, look func(desk.Sentence), read func(string), choose func(other int), winter func()) *twoBarnsPage {
	p := &twoBarnsPage{}
	top := container.New(column{widest: readable, gap: 6}, titled(v.Sentence, v.Sure))
	for _, text := range []string{v.Settle, v.Lacks} {
		if text != "" {
			top.Add(body(text))
		}
	}
	top.Add(barnChoice(v, choose, winter))
	if v.Lacks != "" {
		p.object = container.New(inset{20, 14, 12, 8}, top)
		return p
	}
	p.curves = newTimelinePage(v.Both, f, lanes, read)
	p.tabs = newPageTabs()
	p.tabs.add("In figures", func() fyne.CanvasObject { return comparedTables(v, read) })
	p.tabs.add("On one time axis", func() fyne.CanvasObject { return p.curves.object })
	p.tabs.add("Hours and weather", func() fyne.CanvasObject { return hoursAndWeather(v, look, read) })
	p.tabs.add("How sure?", func() fyne.CanvasObject { return howSure(v, read) })
	p.object = bordered(container.New(inset{20, 14, 12, 4}, top), nil, nil, nil, p.tabs)
	return p
}

// barnChoice lets the keeper pick the other barn, or another winter.
func barnChoice(v desk.TwoBarns, choose func(other int), winter func()) fyne.CanvasObject {
	another := newTabButton("Beside another winter…", winter)
	if len(v.Others) < 2 {
		return inLine(container.NewHBox(another))
	}
	pick := widget.NewSelect(v.Others, nil)
	pick.SetSelectedIndex(v.Other)
	pick.OnChanged = func(string) { choose(pick.SelectedIndex()) }
	return bordered(nil, nil, nil, another, container.New(sideBySide{8}, body("Beside"), pick))
}

// comparedTables are the whole time both have in common, then each phase.
func comparedTables(v desk.TwoBarns, read func(string)) fyne.CanvasObject {
	page := container.New(column{gap: 10}, tableOf(v.Table, nil, read))
	if v.Losses != "" {
		page.Add(body(v.Losses))
	}
	if len(v.Totals.Rows) > 0 {
		page.Add(heading("Each winter as a whole"))
		page.Add(tableOf(v.Totals, nil, read))
	}
	for _, phase := range v.Phases {
		page.Add(heading(phase.Title))
		page.Add(tableOf(phase.Table, nil, read))
	}
	page.Add(hairline())
	page.Add(captions(slices.Concat(v.Paired, v.Notes, v.Cautions)))
	return scrolled(page)
}

// hoursAndWeather are both barns by the outdoor air, by the time at each temperature, and hour by hour where they differed most.
func hoursAndWeather(v desk.TwoBarns, look func(desk.Sentence), read func(string)) fyne.CanvasObject {
	page := container.New(column{gap: 10})
	for _, part := range []struct {
		title   string
		pattern desk.Pattern
		help    string
		table   desk.Table
	}{
		{"In the same weather", desk.Pattern{}, "", v.Weather},
		{v.Stages.Title, v.Stages, "stages", desk.Table{}},
		{v.Warmth.Title, v.Warmth, "", v.Levels},
		{"The ten hours farthest apart", desk.Pattern{}, "", v.Apart},
	} {
		if len(part.table.Rows)+len(part.pattern.Strips) == 0 {
			continue
		}
		page.Add(heading(part.title))
		addPattern(page, part.pattern, read)
		if part.help != "" {
			page.Add(caption(desk.HelpLine(part.help)))
		}
		if len(part.table.Rows) > 0 {
			page.Add(tableOf(part.table, look, read))
		}
	}
	return scrolled(page)
}

// howSure is what the ranges are made of.
func howSure(v desk.TwoBarns, read func(string)) fyne.CanvasObject {
	return scrolled(container.New(column{gap: 10}, tableOf(v.Behind, nil, read), caption(desk.HelpLine("resampled"))))
}

// scrolled is a page's content in a scroller.
func scrolled(content fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVScroll(container.New(inset{20, 14, 12, 16}, content))
}
