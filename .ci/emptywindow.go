//go:build ignore

// A window of the toolkit, as large as the program's, with a label and a button: the peer that the program's own window is
// measured beside.
package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

func main() {
	window := app.NewWithID("thawbook.emptywindow").NewWindow("An empty window")
	window.SetContent(container.NewVBox(widget.NewLabel("A window with nothing in it"), widget.NewButton("A button", nil)))
	window.Resize(fyne.NewSize(1200, 690))
	window.ShowAndRun()
}
