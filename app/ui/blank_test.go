package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// The window comes back as large as it was left; the first fits a screen of 1366 × 768 with a task bar and a title.
func TestTheWindowIsAsLargeAsItWasLeft(t *testing.T) {
	s := show(t)
	if first := s.win.Canvas().Size(); first.Width > 1366 || first.Height > 768-75 {
		t.Errorf("the first window is %v", first)
	}
	s.win.Resize(fyne.NewSize(1500, 900))
	s.Leave()
	if again := blankWindow(s.app).Canvas().Size(); again != fyne.NewSize(1500, 900) {
		t.Errorf("%v, want 1500 by 900", again)
	}
}

// A window as low as a small laptop's screen at a larger text size holds every page: what is higher is scrolled.
func TestALowWindowHoldsEveryPage(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	for i, name := range pageNames {
		s.turnTo(t, i)
		if least := s.win.Content().MinSize(); least.Height > 520 {
			t.Errorf("%s is never lower than %v", name, least.Height)
		}
	}
}

// What has no room in a line goes on below it, whole.
func TestFlowGoesOnBelow(t *testing.T) {
	test.NewTempApp(t)
	a, b, c := gap(60, 10), gap(50, 20), gap(30, 10)
	objects := []fyne.CanvasObject{a, b, c}
	for _, w := range []struct {
		width float32
		at    [3]fyne.Position
		high  float32
	}{
		{200, [3]fyne.Position{{X: 0, Y: 5}, {X: 64, Y: 0}, {X: 118, Y: 5}}, 20},
		{120, [3]fyne.Position{{X: 0, Y: 5}, {X: 64, Y: 0}, {X: 0, Y: 20}}, 30},
		{40, [3]fyne.Position{{X: 0, Y: 0}, {X: 0, Y: 10}, {X: 0, Y: 30}}, 40},
	} {
		l := &flow{gap: 4}
		l.Layout(objects, fyne.NewSize(w.width, 100))
		if got := [3]fyne.Position{a.Position(), b.Position(), c.Position()}; got != w.at || l.MinSize(objects).Height != w.high {
			t.Errorf("%v wide: %v, %v high; want %v, %v high", w.width, got, l.MinSize(objects).Height, w.at, w.high)
		}
	}
}
