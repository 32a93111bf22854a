package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// strip says what went wrong, above everything else, until it is dismissed.
type strip struct {
	text, next *widget.RichText
	dismiss    *widget.Button
	object     *fyne.Container
}

const mostFaults = 3 // named one by one

func newStrip() *strip {
	s := &strip{text: body(""), next: caption("")}
	s.dismiss = widget.NewButtonWithIcon("", theme.CancelIcon(), func() { s.object.Hide() })
	s.dismiss.Importance = widget.LowImportance
	icon := container.New(inset{12, 8, 0, 0}, widget.NewIcon(markIcon(desk.MarkAct)))
	words := container.New(column{gap: -14}, s.text, s.next)
	s.object = container.NewVBox(container.NewBorder(nil, nil, icon, container.NewVBox(s.dismiss), words), hairline())
	s.object.Hide()
	return s
}

// show tells the faults; none hides the strip.
func (s *strip) show(faults []desk.Fault) {
	if len(faults) == 0 {
		s.object.Hide()
		return
	}
	text := ""
	for i, f := range faults {
		if i == mostFaults && len(faults) > mostFaults {
			text += fmt.Sprintf("\nand %d more.", len(faults)-mostFaults)
			break
		}
		if i > 0 {
			text += "\n"
		}
		text += f.Text
	}
	setText(s.text, text)
	setText(s.next, faults[0].Next)
	s.next.Hidden = faults[0].Next == ""
	s.object.Show()
	s.object.Refresh()
}
