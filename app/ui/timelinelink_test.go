package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"thawbook/app/desk"
)

// A figure that can be seen in the Timeline leads there by a press and by Space; the others lead nowhere.
func TestAFigureLeadsToTheTimeline(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	seen := desk.Span{From: 10, To: 20}
	var looked []desk.Span
	table := tableOf(desk.Table{Columns: []desk.Column{{Title: "Logger"}, {Title: "Highest", Number: true}}, Rows: [][]string{{"far end", "9.8 °C"}},
		Looks: map[desk.TableCell]desk.Span{{Row: 0, Column: 1}: seen}}, func(s desk.Sentence) { looked = append(looked, s.Look) }, func(string) {})
	w := test.NewTempWindow(t, table)
	w.Resize(fyne.NewSize(400, 200))
	link, ok := find(table, func(l *timelineLink) bool { return l.cell.text == "9.8 °C" })
	if !ok {
		t.Fatal("the highest reading leads nowhere")
	}
	if _, ok := find(table, func(l *timelineLink) bool { return l.cell.text == "far end" }); ok {
		t.Error("the logger's name leads somewhere")
	}
	test.Tap(link)
	w.Canvas().Focus(link)
	if link.ring.StrokeWidth == 0 {
		t.Error("the focus is not seen")
	}
	link.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	if w.Canvas().Unfocus(); link.ring.StrokeWidth != 0 || len(looked) != 2 || looked[0] != seen || looked[1] != seen {
		t.Errorf("it led to %v, want twice %v", looked, seen)
	}
}

// Far down a page the focus brings such a figure into sight, and from it the keys move the page.
func TestAFigureInFocusComesIntoSight(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	table := tableOf(desk.Table{Columns: []desk.Column{{Title: "Highest"}}, Rows: [][]string{{"9.8 °C"}},
		Looks: map[desk.TableCell]desk.Span{{}: {From: 10, To: 20}}}, func(desk.Sentence) {}, func(string) {})
	page := container.NewVScroll(container.NewVBox(gap(10, 900), table))
	w := test.NewTempWindow(t, page)
	w.Resize(fyne.NewSize(400, 200))
	link, _ := find(page, func(*timelineLink) bool { return true })
	w.Canvas().Focus(link)
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject
	if top := at(link).Y - at(page).Y; top < 0 || top+link.Size().Height > page.Size().Height {
		t.Errorf("in focus it stands at %g of %g", top, page.Size().Height)
	}
	if link.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome}); page.Offset.Y != 0 {
		t.Errorf("Home leaves the page at %g", page.Offset.Y)
	}
}

// Another barn's Timeline begins with its own stretch; one that the keeper turned to goes with him.
func TestAnotherBarnHasItsOwnStretch(t *testing.T) {
	if testing.Short() {
		t.Skip("it judges the demo winter")
	}
	s := show(t)
	s.take(t, winters(t)["rich"])
	stretch := func(barn int) (now, first desk.Span) {
		s.showBarn(barn)
		s.turnTo(t, 1)
		told, _ := s.book.Barn(barn, s.units)
		return s.plot.view(), told.Timeline.View
	}
	stretch(0)
	if now, first := stretch(1); now != first {
		t.Errorf("the other barn shows %v, its own is %v", now, first)
	}
	chosen := desk.Span{From: s.plot.view().From, To: s.plot.view().From + 10*24*3600*1000}
	s.plot.plot.SetView(chosen)
	if now, _ := stretch(0); now != chosen {
		t.Errorf("%v, chosen was %v", now, chosen)
	}
}
