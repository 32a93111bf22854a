package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// mostInMenu is how many lines the menu under a field may have, which makes all of them; a longer list to choose from
// makes those in sight.
const mostInMenu = 40

// longListHigh is how high such a list stands under its field.
const longListHigh = 320

// Tapped shows what there is to choose from, as fyne.Tappable.
func (s *keySelect) Tapped(e *fyne.PointEvent) {
	if len(s.Options) <= mostInMenu || s.Disabled() {
		s.Select.Tapped(e)
		return
	}
	s.showLongList()
}

// showLongList lets one choose from a list that is scrolled.
func (s *keySelect) showLongList() {
	c := fyne.CurrentApp().Driver().CanvasForObject(s)
	if c == nil {
		return
	}
	var pop *widget.PopUp
	back := func() { pop.Hide(); c.Focus(s) }
	list := &keyList{escape: back}
	list.Length = func() int { return len(s.Options) }
	list.CreateItem = func() fyne.CanvasObject { return widget.NewLabel("") }
	list.UpdateItem = func(i int, o fyne.CanvasObject) { o.(*widget.Label).SetText(s.Options[i]) }
	list.OnSelected = func(i int) { back(); s.SetSelectedIndex(i) }
	list.ExtendBaseWidget(list)
	pop = widget.NewPopUp(container.New(fixed{s.Size().Width, longListHigh}, list), c)
	pop.ShowAtRelativePosition(fyne.NewPos(0, s.Size().Height), s)
	list.ScrollTo(max(0, s.SelectedIndex()))
	c.Focus(list)
}

// keyList is a list that Escape leaves.
type keyList struct {
	widget.List
	escape func()
}

// TypedKey leaves on Escape, as fyne.Focusable.
func (l *keyList) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		l.escape()
		return
	}
	l.List.TypedKey(e)
}
