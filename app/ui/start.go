package ui

import (
	"cmp"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// mostRecent is how many winters the start page lists.
const mostRecent = 5

// startPage is what shows while no winter is open: one sentence why, or what is in hand, and what to do.
func startPage(inHand string, recent []desk.RecentView, open func(path string), demo func(thin bool), pick, add func()) fyne.CanvasObject {
	first := widget.NewButtonWithIcon("Add logger files…", theme.ContentAddIcon(), add)
	first.Importance = widget.HighImportance
	own := container.NewHBox(first, widget.NewButtonWithIcon("Open a winter or plan…", theme.FolderOpenIcon(), pick))
	demos := container.NewHBox(
		widget.NewButtonWithIcon("Look at the demo winter", theme.MediaPlayIcon(), func() { demo(false) }),
		widget.NewButtonWithIcon("Look at one with a single logger", theme.MediaPlayIcon(), func() { demo(true) }))
	words := container.New(column{widest: 620, gap: 12},
		sentence(cmp.Or(inHand, "No winter is open")+"."),
		body("Drop the loggers' CSV files, a folder of them or a plan anywhere on this window. One logger that hung in the room is enough for a first answer: how long it held, when it was warm, damp or dry, and what can't be told yet."),
		own,
		demos,
		caption("The demos are invented: two barns with loggers, records and notes, and a shed with a single logger. Nothing you open is changed or sent anywhere."),
	)
	if len(recent) > 0 {
		words.Add(hairline())
		words.Add(recentList(recent[:min(len(recent), mostRecent)], open))
	}
	return container.New(layout.NewCenterLayout(), container.New(fixed{width: 620}, words))
}

// recentList is the winters that were open lately, to be opened by a press.
func recentList(recent []desk.RecentView, open func(path string)) fyne.CanvasObject {
	list := container.New(column{gap: 0}, caption("Open again"))
	for _, r := range recent {
		list.Add(newKeyRow(r.Name, r.Note, func() { open(r.Path) }))
	}
	return list
}
