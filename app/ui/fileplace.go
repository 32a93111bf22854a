package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// loggerDialog asks where a logger hung, from which day; what is wrong stands beside it.
func (u *UI) loggerDialog(l desk.LoggerEntry) {
	var s *sheet
	shut := func() { s.close() }
	at := l.At
	is, barns := u.book.LoggerText(at), u.book.BarnNames()
	list := newKeySelect(append(append([]string{}, barns...), everyBarn, nowhere), listName(at.List, barns), shut)
	if at.List == desk.TrayList && len(barns) > 0 {
		list.Selected = barns[u.barn]
	}
	place := newKeySelect(desk.Places(), is.Place, shut)
	if at.List < 0 {
		place.Selected = "room"
	}
	since, km, wrong := newKeyEntry(shut), newKeyEntry(shut), body("")
	for _, e := range []*keyEntry{since, km} {
		e.MultiLine = false
	}
	km.Text = is.KMs
	since.SetPlaceHolder("the whole record, or a day like " + exampleIn)
	km.SetPlaceHolder("only for a weather station's file")
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
		e, problem := u.book.SetLogger(at, desk.LoggerText{List: listNumber(list.Selected, barns), Place: place.Selected, Since: since.Text, KMs: km.Text})
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}
	since.OnSubmitted, km.OnSubmitted = func(string) { commit() }, func(string) { commit() }
	set := newKeyButton("Hang it there", commit, shut)
	set.Importance = widget.HighImportance
	form := container.New(layout.NewFormLayout(), widget.NewLabel("Barn"), list, widget.NewLabel("Hung at"), place, widget.NewLabel("From"), since,
		widget.NewLabel("Distance, km"), km)
	s = newSheet(u.win, "Where did "+l.Name+" hang?", container.New(column{gap: 8}, form, wrong, caption(desk.HelpLine("hangs_at"))), 480, set)
}

// distanceOf asks in place how far off a weather station stands; what is wrong stands beneath.
func (u *UI) distanceOf(l desk.FileLogger) fyne.CanvasObject {
	km, wrong := widget.NewEntry(), body("")
	km.SetPlaceHolder("such as 40")
	commit := func() {
		e, problem := u.book.SetDistance(l.Entry.At, km.Text)
		if wrong.setText(problem); problem == "" {
			u.edit(e)
		}
	}
	km.OnSubmitted = func(string) { commit() }
	set := widget.NewButton("Set", commit)
	setUsable(set, u.book.Changeable())
	row := container.NewHBox(container.New(fixed{width: 120}, km), set, u.quiet("It is my own logger", func() { u.edit(u.book.OwnLogger(l.Entry.At)) }))
	return container.New(column{gap: 6}, newProse(l.Distance, theme.SizeNameText, theme.ColorNameForeground, true), row, wrong)
}
