package ui

import (
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// loggerDialog asks where a logger hung, from which day, and what its clock was; what is wrong stands beside it.
func (u *UI) loggerDialog(l desk.FileLogger) {
	var s *sheet
	shut := func() { s.close() }
	at := l.Entry.At
	is, barns := u.book.LoggerText(at), u.book.BarnNames()
	list := newKeySelect(append(append([]string{}, barns...), everyBarn, nowhere), listName(at.List, barns), shut)
	place := newKeySelect(desk.Places(), is.Place, shut)
	if at.List < 0 {
		place.Selected = "room"
	}
	dst := newKeySelect(desk.DSTWords, is.DST, shut)
	since, km, zone, wrong := newKeyEntry(shut), newKeyEntry(shut), newKeyEntry(shut), body("")
	for _, e := range []*keyEntry{since, km, zone} {
		e.MultiLine = false
	}
	km.Text, zone.Text = is.KMs, is.Zone
	since.SetPlaceHolder("the whole record, or a day like " + exampleIn)
	km.SetPlaceHolder("only for a weather station's file")
	zone.SetPlaceHolder("as the file says, or Europe/Tallinn, or +02:00")
	list.OnChanged = func(choice string) {
		setEnabled(place, choice != everyBarn && choice != nowhere)
		if choice == everyBarn {
			km.Enable()
		} else {
			km.Disable()
		}
	}
	list.OnChanged(list.Selected)
	commit := func() {
		e, problem := u.book.SetLogger(at, desk.LoggerText{List: listNumber(list.Selected, barns), Place: place.Selected, Since: since.Text, Zone: zone.Text, DST: dst.Selected, KMs: km.Text})
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}
	since.OnSubmitted, km.OnSubmitted, zone.OnSubmitted = func(string) { commit() }, func(string) { commit() }, func(string) { commit() }
	set := newKeyButton("Set it down", commit, shut)
	set.Importance = widget.HighImportance
	form := container.New(layout.NewFormLayout(), widget.NewLabel("Barn"), list, widget.NewLabel("Hung at"), place, widget.NewLabel("From"), since,
		widget.NewLabel("Distance, km"), km, widget.NewLabel("Time zone"), zone, widget.NewLabel("Summer time"), dst)
	s = newSheet(u.win, "Where did "+l.Name+" hang?", container.New(column{gap: 8}, form, wrong, caption(desk.HelpLine("hangs_at"))), 480, set)
}

// leaveOutDialog asks which stretch of a logger's readings is not to count.
func (u *UI) leaveOutDialog(l desk.FileLogger) {
	var s *sheet
	shut := func() { s.close() }
	from, to, why, wrong := newKeyEntry(shut), newKeyEntry(shut), newKeyEntry(shut), body("")
	from.SetPlaceHolder(exampleIn)
	to.SetPlaceHolder(exampleOut)
	why.SetPlaceHolder("such as: lay on the desk")
	commit := func() {
		e, problem := u.book.LeaveOut(l.Entry.At, from.Text, to.Text, why.Text)
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}
	for _, e := range []*keyEntry{from, to, why} {
		e.MultiLine = false
		e.OnSubmitted = func(string) { commit() }
	}
	leave := newKeyButton("Leave it out", commit, shut)
	leave.Importance = widget.HighImportance
	form := container.New(layout.NewFormLayout(), widget.NewLabel("From"), from, widget.NewLabel("To"), to, widget.NewLabel("Why"), why)
	s = newSheet(u.win, "What of "+l.Name+" is not to count?", container.New(column{gap: 8}, form, wrong, caption("Nothing is deleted: the stretch can be counted again at any time.")), 420, leave)
	u.win.Canvas().Focus(from)
}
