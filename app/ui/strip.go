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
	text, next *prose
	dismiss    *widget.Button
	object     *fyne.Container
}

const mostFaults = 3 // named one by one

func newStrip() *strip {
	s := &strip{text: body(""), next: caption("")}
	s.dismiss = widget.NewButtonWithIcon("", theme.CancelIcon(), func() { s.object.Hide() })
	s.dismiss.Importance = widget.LowImportance
	icon := container.New(inset{16, 9, 8, 0}, container.NewVBox(container.New(fixed{14, 14}, widget.NewIcon(markIcon(desk.MarkAct)))))
	words := container.New(inset{0, 6, 0, 6}, container.New(column{gap: 2}, s.text, s.next))
	s.object = container.NewVBox(bordered(nil, nil, icon, container.NewVBox(s.dismiss), words), hairline())
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
	s.text.setText(text)
	s.next.setText(faults[0].Next)
	s.next.Hidden = faults[0].Next == ""
	s.object.Show()
	s.object.Refresh()
}
