package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// recordOf asks in place what a record is of, or for the stages it can be of.
func (u *UI) recordOf(r desk.FileRecord) fyne.CanvasObject {
	labels := make([]string, len(r.Choices))
	for i, c := range r.Choices {
		labels[i] = c.Label
	}
	which := widget.NewSelect(labels, nil)
	which.PlaceHolder, which.Selected = "choose one", r.Chosen
	which.OnChanged = func(string) { u.edit(r.Choices[which.SelectedIndex()].Edit) }
	if !u.book.Changeable() {
		which.Disable()
	}
	asked := container.NewHBox(widget.NewLabel("It is a record of:"), container.New(fixed{width: 260}, which))
	if r.Lacks == "" {
		return asked
	}
	way := u.quiet("Fan stages…", func() { u.fillIn(u.book.StageSheet(r.Barn, u.units)) })
	return container.New(column{gap: 2}, caption(r.Lacks), container.NewHBox(way), asked)
}
