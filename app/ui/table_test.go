package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"thawbook/app/desk"
)

// On less room than its cells would take a table breaks the words of its widest column alone, makes that row higher and the
// next one begin below it, and asks the window for no more than its widest words.
func TestATableNarrowsItsWidestColumn(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	words := strings.Repeat("doors open and fans called for ", 8)
	table := tableOf(desk.Table{Columns: []desk.Column{{Title: "Hour"}, {Title: "Ash barn", Number: true}, {Title: "In Ash barn"}},
		Rows: [][]string{{"25 March 14:00", "4.4", words}, {"26 March 02:00", "4.1", "none"}}}, nil, func(string) {})
	page := container.New(column{}, table)
	w := test.NewTempWindow(t, container.NewVScroll(page))
	w.SetPadded(false)
	w.Resize(fyne.NewSize(600, 400))
	if got := w.Canvas().Size().Width; got > 600 {
		t.Fatalf("the window is %g wide", got)
	}
	long, _ := find(page, func(p *prose) bool { return p.text == words })
	next, _ := find(page, func(p *prose) bool { return p.text == "26 March 02:00" })
	hour, _ := find(page, func(p *prose) bool { return p.text == "25 March 14:00" })
	if len(long.lines) < 3 || long.Position().X+long.Size().Width > 600 || len(hour.lines) != 1 {
		t.Errorf("%d lines from %g to %g, the hour on %d", len(long.lines), long.Position().X, long.Position().X+long.Size().Width, len(hour.lines))
	}
	if bottom := long.Position().Y + long.MinSize().Height; next.Position().Y < bottom || page.MinSize().Height < next.Position().Y+rowHigh {
		t.Errorf("the next row is at %g, the words end at %g, the page at %g", next.Position().Y, bottom, page.MinSize().Height)
	}
	w.Resize(fyne.NewSize(4000, 400))
	if len(long.lines) != 1 || next.Position().Y != 2*rowHigh {
		t.Errorf("with room for all: %d lines, the next row at %g", len(long.lines), next.Position().Y)
	}
}
