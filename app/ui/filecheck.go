package ui

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// checkDialog asks when a logger was held against something known, and what that was.
func (u *UI) checkDialog(l desk.FileLogger) {
	var s *sheet
	shut := func() { s.close() }
	way := newKeySelect(desk.CheckWords, desk.CheckWords[0], shut)
	from, to, wrong, hint, caution := newKeyEntry(shut), newKeyEntry(shut), body(""), caption(""), caption("")
	from.SetPlaceHolder("such as 2024-11-12 10:00")
	to.SetPlaceHolder("such as 2024-11-12 11:30")
	way.OnChanged = func(choice string) {
		said, mind := desk.CheckHint(choice)
		hint.setText(said)
		caution.setText(mind)
	}
	way.OnChanged(way.Selected)
	commit := func() {
		span, problem := u.book.CheckSpan(from.Text, to.Text)
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.check(l, way.Selected, span)
	}
	submitAll(commit, from, to)
	look := newKeyButton("Look what it said", commit, shut)
	look.Importance = widget.HighImportance
	form := container.New(layout.NewFormLayout(), widget.NewLabel("It was"), way, widget.NewLabel("From"), from, widget.NewLabel("To"), to)
	s = newSheet(u.win, "When was "+l.Name+" checked?", container.New(column{gap: 8}, form, wrong, hint, caution), 500, look)
}

// check looks what a logger said in a check and shows it.
func (u *UI) check(l desk.FileLogger, way string, span desk.Span) {
	before, units := u.book, u.units
	u.start("Looking at the check", func(ctx context.Context, _ Tell) (func(), error) {
		c, err := u.Keeper.Check(ctx, before, l.Entry.At, way, span, units)
		return func() { u.checkSheet(l, c); u.lookClosely() }, err
	})
}

// checkSheet shows what a check found, with the press that takes it over where there is something to take.
func (u *UI) checkSheet(l desk.FileLogger, c desk.FileCheck) {
	var s *sheet
	var ways []fyne.CanvasObject
	if c.Take != nil {
		take := newKeyButton("Take it over", func() { s.close(); u.edit(c.Take) }, func() { s.close() })
		take.Importance = widget.HighImportance
		setUsable(&take.Button, u.book.Changeable())
		ways = append(ways, take)
	}
	words := container.New(column{gap: 8}, body(c.Text))
	if c.Caution != "" {
		words.Add(caption(c.Caution))
	}
	s = newSheet(u.win, "The check of "+l.Name, words, 520, ways...)
}
