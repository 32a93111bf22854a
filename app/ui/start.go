package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// startPage is what shows while no winter is open: one sentence why, and what to do.
func startPage(demo, open, add func()) fyne.CanvasObject {
	first := widget.NewButtonWithIcon("Look at the demo winter", theme.MediaPlayIcon(), demo)
	first.Importance = widget.HighImportance
	buttons := container.NewHBox(first,
		widget.NewButtonWithIcon("Open a plan…", theme.FolderOpenIcon(), open),
		widget.NewButtonWithIcon("Add logger files…", theme.ContentAddIcon(), add),
	)
	words := container.New(column{widest: 620, gap: 12},
		sentence("No winter is open."),
		body("Drop the loggers' CSV files, a folder of them or a plan anywhere on this window. One logger that hung in the room is enough for a first answer: how long it held, when it was warm, and what can't be told yet."),
		buttons,
		caption("The demo is an invented winter of two barns. Nothing you open is changed or sent anywhere."),
	)
	return container.New(layout.NewCenterLayout(), container.New(fixed{width: 620}, words))
}
