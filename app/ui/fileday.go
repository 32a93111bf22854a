package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// typedAnswer is a line to type an answer into, with what the file would then say beside it while it is typed.
func (u *UI) typedAnswer(p desk.FilePage, q desk.FileQuestion) fyne.CanvasObject {
	said, hint := newKeyEntry(func() {}), body("")
	said.MultiLine = false
	said.SetPlaceHolder("such as " + q.Typed)
	option := ""
	take := widget.NewButton("Take this", func() { u.answer(p, q, desk.FileOption{Option: option, Label: option}) })
	take.Disable()
	said.OnChanged = func(text string) {
		var preview, problem string
		option, preview, problem = u.book.Typed(p.Name, q, text, u.units)
		hint.setText(preview + problem)
		take.Disable()
		if option != "" && u.book.Changeable() {
			take.Enable()
		}
	}
	said.OnSubmitted = func(string) {
		if !take.Disabled() {
			take.OnTapped()
		}
	}
	line := bordered(nil, nil, nil, take, said)
	return bordered(nil, nil, container.New(fixed{width: 344}, container.NewVBox(line)), nil, container.New(inset{12, 9, 0, 0}, hint))
}
