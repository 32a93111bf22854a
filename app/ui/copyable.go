package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// copyable is something that is read under the pointer and that a press of the right button offers to copy as text.
type copyable struct {
	pointed
	label string
	text  func() string
}

// nothing is read on something that explains itself.
func nothing(fyne.Position) string { return "" }

func newCopyable(content fyne.CanvasObject, label string, text func() string, says func(at fyne.Position) string, read func(string)) *copyable {
	c := &copyable{pointed{content: content, says: says, read: read}, label, text}
	c.ExtendBaseWidget(c)
	return c
}

// TappedSecondary offers to copy, as fyne.SecondaryTappable.
func (c *copyable) TappedSecondary(at *fyne.PointEvent) { c.showMenu(at.AbsolutePosition) }

func (c *copyable) showMenu(at fyne.Position) {
	widget.ShowPopUpMenuAtPosition(c.menu(), fyne.CurrentApp().Driver().CanvasForObject(c), at)
}

func (c *copyable) menu() *fyne.Menu {
	return fyne.NewMenu("", copyItem(c.label, c.text))
}

// copyItem is an item that puts a text on the clipboard.
func copyItem(label string, text func() string) *fyne.MenuItem {
	return fyne.NewMenuItem(label, func() { fyne.CurrentApp().Clipboard().SetContent(text()) })
}

// tabbed is a table as spreadsheets take it from the clipboard: cells parted by tabs, a line a row.
func tabbed(t desk.Table) string {
	var out strings.Builder
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		heads[i] = c.Head()
	}
	for _, row := range append([][]string{heads}, t.Rows...) {
		out.WriteString(strings.Join(row, "\t") + "\n")
	}
	return out.String()
}
