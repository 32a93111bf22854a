package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/chart"
)

// laneChoice is which lanes of a Timeline are shown, and in which order, by their titles. The zero value shows all as
// they come; a lane it does not know comes last and is shown.
type laneChoice struct {
	order  []string
	folded map[string]bool
	aside  []string // folded for as long as the keeper says nothing of them
}

// of are lanes as they are chosen; where all are folded, all are shown.
func (c *laneChoice) of(all []chart.Lane) []chart.Lane {
	var out []chart.Lane
	for _, title := range c.titles(all) {
		if !c.isFolded(title) {
			out = append(out, all[slices.IndexFunc(all, func(l chart.Lane) bool { return l.Title == title })])
		}
	}
	if len(out) == 0 {
		return all
	}
	return out
}

// titles are the lanes' titles in the chosen order, folded ones too.
func (c *laneChoice) titles(all []chart.Lane) (out []string) {
	has := func(title string) bool {
		return slices.ContainsFunc(all, func(l chart.Lane) bool { return l.Title == title })
	}
	for _, title := range c.order {
		if has(title) {
			out = append(out, title)
		}
	}
	for _, l := range all {
		if !slices.Contains(out, l.Title) {
			out = append(out, l.Title)
		}
	}
	return out
}

func (c *laneChoice) isFolded(title string) bool {
	if folded, said := c.folded[title]; said {
		return folded
	}
	return slices.Contains(c.aside, title)
}

// fold hides a lane or shows it again.
func (c *laneChoice) fold(title string, folded bool) {
	if c.folded == nil {
		c.folded = map[string]bool{}
	}
	c.folded[title] = folded
}

// only folds every lane but one.
func (c *laneChoice) only(title string, all []chart.Lane) {
	for _, l := range all {
		c.fold(l.Title, l.Title != title)
	}
}

// all shows every lane, as they came.
func (c *laneChoice) all(all []chart.Lane) {
	c.order = nil
	for _, l := range all {
		c.fold(l.Title, false)
	}
}

// raise moves a lane up by one; the first stays.
func (c *laneChoice) raise(title string, all []chart.Lane) {
	c.order = c.titles(all)
	if i := slices.Index(c.order, title); i > 0 {
		c.order[i-1], c.order[i] = c.order[i], c.order[i-1]
	}
}

// rows are a row for each lane: shown or not, this one alone, one up. After a press changed is called.
func (c *laneChoice) rows(all []chart.Lane, changed func()) fyne.CanvasObject {
	list := container.NewVBox()
	var fill func()
	press := func(act func()) func() {
		return func() { act(); changed(); fill() }
	}
	fill = func() {
		list.Objects = nil
		for i, title := range c.titles(all) {
			shown := widget.NewCheck(title, nil)
			shown.Checked = !c.isFolded(title)
			shown.OnChanged = func(on bool) { press(func() { c.fold(title, !on) })() }
			only := widget.NewButton("Only this", press(func() { c.only(title, all) }))
			up := widget.NewButtonWithIcon("", theme.MoveUpIcon(), press(func() { c.raise(title, all) }))
			only.Importance, up.Importance = widget.LowImportance, widget.LowImportance
			if i == 0 {
				up.Disable()
			}
			list.Add(bordered(nil, nil, nil, container.NewHBox(only, up), shown))
		}
		every := widget.NewButton("Show all, as they came", press(func() { c.all(all) }))
		every.Importance = widget.LowImportance
		list.Add(every)
		list.Refresh()
	}
	fill()
	return list
}
