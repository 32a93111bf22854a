package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

// onTimeline is a window that shows the Timeline of ten days.
func onTimeline(t *testing.T) *shown {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	s.showPage(1)
	s.settled(t)
	drawPlot(t, s)
	return s
}

// drawPlot draws the Timeline: what is not drawn has no instants.
func drawPlot(t *testing.T, s *shown) {
	t.Helper()
	raster, found := find(test.WidgetRenderer(s.plot.plot).Objects()[0], func(*canvas.Raster) bool { return true })
	if !found {
		t.Fatal("the chart has no raster")
	}
	raster.Generator(900, 400)
}

// A note is set down in place: N asks for it with the day filled in, the pointer reads it there, the list of notes changes it
// and takes it away, and that is undone.
func TestANoteInPlace(t *testing.T) {
	s := onTimeline(t)
	view := s.plot.view()
	middle := view.From + (view.To-view.From)/2
	s.plot.plot.TypedRune('n')
	fields := s.entries()
	if day := fields[0].Text; day != s.book.NoteMoment(middle) {
		t.Errorf("the day is %q", day)
	}
	fields[len(fields)-1].SetText("Lines down in the valley")
	s.press(t, "Set it down")
	s.settled(t)

	s.plot.plot.OnHover(middle, nil)
	s.lacks(t, "Lines down in the valley")

	s.choose(t, "Notes…")
	list := s.entries()
	list[len(list)-1].SetText("All lines down")
	s.press(t, "Set")
	s.settled(t)
	s.lacks(t, "All lines down")
	s.choose(t, "Undo the notes")
	s.settled(t)
	s.lacks(t, "Lines down in the valley")
}

// The right button opens what can be done at an instant: copy what is read there, save the picture.
func TestTheTimelinesMenu(t *testing.T) {
	s := onTimeline(t)
	told, _ := s.book.Barn(0, s.units)
	item := func(label string) *fyne.MenuItem {
		t.Helper()
		c := s.plot.plot
		c.TappedSecondary(&fyne.PointEvent{Position: fyne.NewPos(c.Size().Width/2, 40), AbsolutePosition: fyne.NewPos(300, 300)})
		open := s.win.Canvas().Overlays().Top()
		if open == nil {
			t.Fatal("no menu opens")
		}
		s.win.Canvas().Overlays().Remove(open)
		for _, i := range s.timelineMenu(c, told.Timeline, s.plot.view().From, func(int64) {}).Items {
			if strings.HasPrefix(i.Label, label) {
				return i
			}
		}
		t.Fatalf("no %q in the menu", label)
		return nil
	}
	item("Copy what is read here").Action()
	if got := s.app.Clipboard().Content(); !strings.Contains(got, "°C") {
		t.Errorf("copied %q", got)
	}
	dir := t.TempDir()
	item("Save the picture…").Action()
	fields := s.entries()
	fields[0].SetText("winter")
	fields[1].SetText(dir)
	s.press(t, "Save the picture")
	s.settled(t)
	data, err := os.ReadFile(filepath.Join(dir, "winter.png"))
	if err != nil || !strings.HasPrefix(string(data), "\x89PNG\r\n\x1a\n") { // PNG (W3C, third edition, 5.2)
		t.Errorf("%v, %.8q", err, data)
	}
}
