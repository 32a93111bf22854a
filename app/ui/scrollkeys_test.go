package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// The keys move a page by a line, by a page less a line, and to either end, and never past one.
func TestKeysMoveAPage(t *testing.T) {
	s := container.NewVScroll(container.New(fixed{300, 1000}, gap(1, 1)))
	w := test.NewTempWindow(t, s)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(300, 240))
	for _, c := range []struct {
		key fyne.KeyName
		y   float32
	}{{fyne.KeyUp, 0}, {fyne.KeyDown, 40}, {fyne.KeyPageDown, 240}, {fyne.KeyEnd, 760}, {fyne.KeyPageDown, 760}, {fyne.KeyPageUp, 560}, {fyne.KeyA, 560}, {fyne.KeyHome, 0}} {
		if scrollByKey(s, c.key); s.Offset.Y != c.y {
			t.Errorf("after %s at %g, want %g", c.key, s.Offset.Y, c.y)
		}
	}
	scrollByKey(nil, fyne.KeyDown)
}

// On a page nothing of which has the keys they move it; in help that is longer than the window they move the help.
func TestKeysMoveWhatIsShown(t *testing.T) {
	s := show(t)
	s.win.Resize(fyne.NewSize(1000, 500))
	s.take(t, planFile(t))
	s.turnTo(t, sideBySidePage)
	page := firstScroll(s.centre)
	if s.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEnd}); page == nil || page.Offset.Y == 0 {
		t.Fatal("End does not move the page")
	}
	s.win.Canvas().Focus(s.rail.list)
	if s.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome}); page.Offset.Y != 0 {
		t.Error("Home does not move the page while the list has the keys")
	}
	s.win.Canvas().Unfocus()
	s.win.Resize(fyne.NewSize(1000, 300))
	s.meaningsDialog()
	help := s.win.Canvas().Overlays().Top()
	if over := help.MinSize().Height; over > 300 {
		t.Errorf("the help is %g high", over)
	}
	s.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyPageDown})
	moved, ok := find(help, func(s *container.Scroll) bool { return s.Offset.Y > 0 })
	if !ok {
		t.Errorf("Page Down does not move the help: %v", moved)
	}
	s.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if s.win.Canvas().Overlays().Top() != nil {
		t.Error("Escape does not close it")
	}
}
