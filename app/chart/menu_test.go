package chart

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// The right button and the menu key ask for a menu, N for a note: at the pointer, and without one in the middle.
func TestAsksForAMenuAndANote(t *testing.T) {
	c, _ := shown(t, waves())
	var menu, note int64
	c.OnMenu = func(t int64, _ fyne.Position) { menu = t }
	c.OnNote = func(t int64) { note = t }
	c.TypedRune('n')
	c.TypedKey(&fyne.KeyEvent{Name: desktop.KeyMenu})
	if middle := 1200 * int64(hour); note != middle || !near(menu, middle, pixelMS(c)) {
		t.Errorf("in the middle: a note at %d, a menu at %d", note, menu)
	}
	c.TappedSecondary(&fyne.PointEvent{Position: at(c, 300*hour)})
	if !near(menu, 300*hour, pixelMS(c)) {
		t.Errorf("the menu is of %d", menu)
	}
	c.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at(c, 600*hour)}})
	c.TypedRune('N')
	if !near(note, 600*hour, pixelMS(c)) {
		t.Errorf("the note is of %d", note)
	}
}
