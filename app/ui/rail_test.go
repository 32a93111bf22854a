package ui

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"thawbook/app/desk"
)

// rows counts the rows made inside an object.
func rows(o fyne.CanvasObject) (n int) {
	if _, is := o.(*row); is {
		return 1
	}
	for _, c := range below(o) {
		n += rows(c)
	}
	return n
}

// Of five hundred loggers only those in sight are made: a row is 39 high with its gap, so 700 hold 18 and the two that
// are cut.
func TestOnlyRowsInSightAreMade(t *testing.T) {
	app := test.NewTempApp(t)
	r := newRail(func(int) {}, func(desk.LoggerEntry) {}, func() {})
	w := app.NewWindow("rail")
	w.SetContent(r.object)
	w.Resize(fyne.NewSize(railWidth, 760))
	shell := desk.Shell{Winter: "Large", Barns: []desk.BarnEntry{{Name: "Barn", Note: "all well"}}}
	for i := range 500 {
		shell.Barns[0].Loggers = append(shell.Barns[0].Loggers, desk.LoggerEntry{Name: fmt.Sprint("logger ", i), Place: "room"})
	}
	r.show(shell, 0, false)
	if n := rows(r.object); n < 15 || n > 22 {
		t.Errorf("%d rows were made", n)
	}
	r.list.ScrollToBottom()
	if _, found := find(r.list, func(l *row) bool { return l.title == "logger 499" }); !found {
		t.Error("the last logger does not come into sight")
	}
}

// A keeper who has scrolled the rail stays where he is when its rows are made anew.
func TestTheRailStaysWhereItWasScrolledTo(t *testing.T) {
	app := test.NewTempApp(t)
	r := newRail(func(int) {}, func(desk.LoggerEntry) {}, func() {})
	w := app.NewWindow("rail")
	w.SetContent(r.object)
	w.Resize(fyne.NewSize(railWidth, 760))
	shell := desk.Shell{Tray: make([]desk.LoggerEntry, 100)}
	r.show(shell, 0, false)
	r.list.ScrollToOffset(300)
	r.show(shell, 0, false)
	if at := r.list.GetScrollOffset(); at != 300 {
		t.Errorf("scrolled to %v", at)
	}
}

// Down goes along the lines with a ring around the one the keys are at, and stays there when the lines are made anew; Enter
// presses it as often as it is pressed.
func TestTheKeysGoAlongTheRail(t *testing.T) {
	app := test.NewTempApp(t)
	pressed := []string{}
	r := newRail(func(int) {}, func(l desk.LoggerEntry) { pressed = append(pressed, l.Name) }, func() { pressed = append(pressed, "files") })
	w := app.NewWindow("rail")
	w.SetContent(r.object)
	w.Resize(fyne.NewSize(railWidth, 760))
	shell := desk.Shell{Barns: []desk.BarnEntry{{Name: "Barn", Loggers: []desk.LoggerEntry{{Name: "upper"}, {Name: "lower"}}}}}
	r.show(shell, 0, false)
	w.Canvas().FocusNext()
	typed := func(keys ...fyne.KeyName) {
		for _, k := range keys {
			w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k})
		}
	}
	typed(fyne.KeyUp, fyne.KeyReturn, fyne.KeyDown, fyne.KeyDown)
	r.show(shell, 0, false)
	ringed, ok := find(r.list, func(l *row) bool { return l.aims })
	if typed(fyne.KeySpace, fyne.KeyEnter, fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn); !slices.Equal(pressed, []string{"files", "upper", "upper", "lower"}) {
		t.Error(pressed)
	}
	if !ok || ringed.title != "upper" {
		t.Errorf("the ring is around %v", ringed)
	}
	r.show(desk.Shell{Barns: []desk.BarnEntry{{Name: "Barn"}}}, 0, false) // another winter, with fewer lines
	pressed = nil
	if typed(fyne.KeyUp, fyne.KeyReturn); !slices.Equal(pressed, []string{"files"}) {
		t.Errorf("one up from the last of two lines: %v", pressed)
	}
	if w.Canvas().Unfocus(); rings(r.list) != 0 {
		t.Error("the ring stays")
	}
}

func rings(o fyne.CanvasObject) (n int) {
	if r, is := o.(*row); is && r.aims {
		n++
	}
	for _, c := range below(o) {
		n += rings(c)
	}
	return n
}
