package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// handful is how much of a long list is made at once: all of five hundred would hold the window up.
const handful = 25

// byHandfuls is a list of n objects with a gap between them: the first handful is made at once, the next at a press.
func byHandfuls(gap float32, n int, made func(i int) fyne.CanvasObject) *fyne.Container {
	list := container.New(column{gap: gap})
	more := widget.NewButton("", nil)
	more.Importance = widget.LowImportance
	shown := 0
	more.OnTapped = func() {
		all := list.Objects[:shown:shown] // those before the button
		for shown = min(shown+handful, n); len(all) < shown; {
			all = append(all, made(len(all)))
		}
		if shown < n {
			more.SetText(fmt.Sprintf("Show %d more of the %d left", min(handful, n-shown), n-shown))
			all = append(all, container.NewHBox(more))
		}
		list.Objects = all
		list.Refresh()
	}
	more.OnTapped()
	return list
}
