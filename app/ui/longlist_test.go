package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// Of a thousand names to choose from those in sight are made; one far down can be chosen, and Escape chooses none.
func TestALongChoiceIsAListInSight(t *testing.T) {
	s := show(t)
	var names []string
	for i := range 1000 {
		names = append(names, fmt.Sprint("logger ", i))
	}
	which := newKeySelect(names, names[0], func() {})
	newSheet(s.win, "Which?", which, 400)
	open := s.win.Canvas().Overlays()
	for _, press := range []func(){func() { test.Tap(which) }, func() { which.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace}) }} {
		press()
		list, ok := find(open.Top(), func(*keyList) bool { return true })
		if n := objects(open.Top()); !ok || n > 300 {
			t.Fatalf("a list: %v, %d objects", ok, n)
		}
		list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if len(open.List()) != 1 || which.Selected != names[0] {
			t.Fatalf("%d are open, %q is chosen", len(open.List()), which.Selected)
		}
	}
	test.Tap(which)
	list, _ := find(open.Top(), func(*keyList) bool { return true })
	list.Select(700)
	if which.Selected != "logger 700" || len(open.List()) != 1 {
		t.Errorf("%q is chosen, %d are open", which.Selected, len(open.List()))
	}
}
