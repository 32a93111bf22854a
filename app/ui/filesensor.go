package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// sensorWays are the ways to set down how a logger read and how its clock went.
func (u *UI) sensorWays(l desk.FileLogger) []fyne.CanvasObject {
	ways := []fyne.CanvasObject{
		u.quiet("Leave a stretch out…", func() { u.leaveOutDialog(l) }),
		u.quiet("Clock…", func() { u.clockDialog(l) }),
	}
	if l.Record == nil {
		ways = append(ways, u.quiet("Check…", func() { u.checkDialog(l) }))
	}
	return ways
}

// sensorLines are what looks odd about a logger's readings and clock, each with its answers, and what was answered.
func (u *UI) sensorLines(l desk.FileLogger) (out []fyne.CanvasObject) {
	for _, d := range l.Doubts {
		out = append(out, u.doubtOf(d))
	}
	for _, x := range l.Left {
		out = append(out, u.takenBack(x.Text, x.Label, x.Undo))
	}
	return out
}

// doubtOf is what can hardly be right, with the press that acts on it and the one that keeps everything as it is.
func (u *UI) doubtOf(d desk.FileDoubt) fyne.CanvasObject {
	icon := gap(14, 14)
	if res := markIcon(d.Mark); res != nil {
		icon = container.New(fixed{14, 14}, widget.NewIcon(res))
	}
	icon = container.New(inset{0, 3, 10, 0}, container.NewVBox(icon))
	ways := container.NewHBox()
	if d.Take != nil {
		b := widget.NewButton(d.TakeIt, func() { u.edit(d.Take) })
		setUsable(b, u.book.Changeable())
		ways.Add(b)
	}
	if d.Also != nil {
		ways.Add(u.quiet(d.AlsoIt, func() { u.edit(d.Also) }))
	}
	ways.Add(u.quiet(d.KeepIt, func() { u.edit(d.Keep) }))
	return container.New(inset{0, 4, 0, 6}, bordered(nil, nil, icon, nil, container.New(column{gap: 4}, body(d.Text), ways)))
}

// leaveOutDialog asks which stretch of a logger's readings is not to count.
func (u *UI) leaveOutDialog(l desk.FileLogger) {
	var s *sheet
	shut := func() { s.close() }
	what := newKeySelect(desk.LeaveOutWords, desk.LeaveOutWords[0], shut)
	from, to, why, wrong := newKeyEntry(shut), newKeyEntry(shut), newKeyEntry(shut), body("")
	from.SetPlaceHolder(exampleIn)
	to.SetPlaceHolder(exampleOut)
	why.SetPlaceHolder("such as: lay on the desk")
	commit := func() {
		e, problem := u.book.LeaveOut(l.Entry.At, from.Text, to.Text, what.Selected, why.Text)
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}
	submitAll(commit, from, to, why)
	leave := newKeyButton("Leave it out", commit, shut)
	leave.Importance = widget.HighImportance
	form := container.New(layout.NewFormLayout(), widget.NewLabel("What"), what, widget.NewLabel("From"), from, widget.NewLabel("To"), to, widget.NewLabel("Why"), why)
	s = newSheet(u.win, "What of "+l.Name+" is not to count?", container.New(column{gap: 8}, form, wrong, caption("Nothing is deleted: the stretch can be counted again at any time.")), 460, leave)
	u.win.Canvas().Focus(from)
}

// submitAll lets every one of some lines of text commit with Enter.
func submitAll(commit func(), entries ...*keyEntry) {
	for _, e := range entries {
		e.MultiLine = false
		e.OnSubmitted = func(string) { commit() }
	}
}
