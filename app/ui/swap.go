package ui

import (
	"slices"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// pressLogger asks where a logger hung, or leads to its file that waits for an answer.
func (u *UI) pressLogger(l desk.LoggerEntry) {
	if l.Waits == "" {
		u.loggerDialog(l)
		return
	}
	u.files.chosen = l.Waits
	u.showFiles()
}

// swapped lets two loggers change places for the whole record, since one was dragged onto the other.
func (u *UI) swapped(one, other desk.LoggerEntry) {
	if !u.book.Changeable() {
		return
	}
	e, problem := u.book.Swap(one.At, other.At, "")
	if problem != "" {
		u.trouble(desk.Fault{Text: problem})
		return
	}
	u.edit(e)
}

// swapDialog asks which two loggers change places, and from which day on.
func (u *UI) swapDialog(first int) {
	var s *sheet
	shut := func() { s.close() }
	all := u.book.Loggers()
	if len(all) < 2 {
		return
	}
	var titles []string
	for _, l := range all {
		titles = append(titles, u.book.Titled(l))
	}
	one, other := newKeySelect(titles, titles[first], shut), newKeySelect(titles, "", shut)
	since, wrong := newKeyEntry(shut), body("")
	since.MultiLine = false
	since.SetPlaceHolder("the whole record, or a day like " + exampleIn)
	commit := func() {
		i, j := slices.Index(titles, one.Selected), slices.Index(titles, other.Selected)
		if j < 0 {
			wrong.setText("Choose the logger it changes places with.")
			return
		}
		e, problem := u.book.Swap(all[i].At, all[j].At, since.Text)
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}
	since.OnSubmitted = func(string) { commit() }
	swap := newKeyButton("Swap them", commit, shut)
	swap.Importance = widget.HighImportance
	form := container.New(layout.NewFormLayout(), widget.NewLabel("Logger"), one, widget.NewLabel("With"), other, widget.NewLabel("From"), since)
	s = newSheet(u.win, "Which two loggers change places?", container.New(column{gap: 8}, form, wrong, caption("In the list on the left, drag one logger onto the other: that swaps them for the whole record.")), 520, swap)
	u.win.Canvas().Focus(other)
}

// swapOf asks with which other logger one changes places.
func (u *UI) swapOf(l desk.LoggerEntry) {
	u.swapDialog(max(0, slices.IndexFunc(u.book.Loggers(), func(o desk.LoggerEntry) bool { return o.At == l.At })))
}
