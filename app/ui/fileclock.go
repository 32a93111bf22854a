package ui

import (
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// leastPairs is how many comparisons with a watch there is room for: one when it was hung and one when it was read out.
const leastPairs = 2

// clockDialog asks for a logger's zone, whether its clock followed summer time, and what it said when a watch said what.
func (u *UI) clockDialog(l desk.FileLogger) {
	var s *sheet
	shut := func() { s.close() }
	is := u.book.ClockText(l.Entry.At)
	zone, dst, wrong := newKeyEntry(shut), newKeySelect(desk.DSTWords, is.DST, shut), body("")
	zone.Text = is.Zone
	zone.SetPlaceHolder("as the file says, or Europe/Tallinn, or +02:00")
	entries := []*keyEntry{zone}
	for len(is.Pairs) < leastPairs {
		is.Pairs = append(is.Pairs, desk.ClockPair{})
	}
	for _, pair := range is.Pairs {
		watch, said := newKeyEntry(shut), newKeyEntry(shut)
		watch.Text, said.Text = pair.Watch, pair.Logger
		watch.SetPlaceHolder("my watch: 2025-04-10 14:30")
		said.SetPlaceHolder("the logger: 2025-04-10 14:12")
		entries = append(entries, watch, said)
	}
	commit := func() {
		text := desk.ClockText{Zone: zone.Text, DST: dst.Selected}
		for i := 1; i+1 < len(entries); i += 2 {
			text.Pairs = append(text.Pairs, desk.ClockPair{Watch: entries[i].Text, Logger: entries[i+1].Text})
		}
		e, problem := u.book.SetClock(l.Entry.At, text)
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}
	submitAll(commit, entries...)
	form := container.New(layout.NewFormLayout(), widget.NewLabel("Time zone"), zone, widget.NewLabel("Summer time"), dst)
	for i := 1; i+1 < len(entries); i += 2 {
		form.Add(widget.NewLabel("At one moment"))
		form.Add(container.NewGridWithColumns(2, entries[i], entries[i+1]))
	}
	set := newKeyButton("Set it down", commit, shut)
	set.Importance = widget.HighImportance
	s = newSheet(u.win, "How did the clock of "+l.Name+" go?", container.New(column{gap: 8}, form, wrong, caption(desk.HelpLine("clock"))), 600, set)
}
