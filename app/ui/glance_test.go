package ui

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// The winter at a glance takes the place of the time axis and gives it back; its cells have the colours of their states, the
// pointer reads them, a press shows that day on the axis.
func TestTheWinterAtAGlance(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "warm.csv", 7.5)) // twenty days above 6 °C
	s.showPage(1)
	s.settled(t)
	toggle := s.button(t, "Day by day")
	test.Tap(toggle)
	g, ok := find(s.win.Content(), func(*glance) bool { return true })
	if !ok {
		t.Fatal("no glance is shown")
	}
	g.Resize(fyne.NewSize(glanceLeft+240, glanceBelow+200))
	r := test.WidgetRenderer(g).(*glanceRenderer)
	im := r.paint(240, 200)
	want := chart.Light().State("warm").Fill
	if got := color.NRGBAModel.Convert(im.At(125, 100)); got != want {
		t.Errorf("an hour of a warm day is %v, want %v", got, want)
	}
	g.MouseMoved(at(glanceLeft+125, 100))
	s.lacks(t, "warm 7.5 °C")
	g.Tapped(&fyne.PointEvent{Position: fyne.NewPos(glanceLeft+125, 100)})
	if view := s.plot.view(); view.To-view.From > 4*24*3600*1000 || toggle.Text != "Day by day" {
		t.Errorf("the axis shows %v, the button says %q", view, toggle.Text)
	}
}

// An hour that was both has half a cell of each.
func TestAnHourOfTwoStates(t *testing.T) {
	inks := chart.Light()
	g := newGlance(desk.Glance{Hours: make([]desk.GlanceHour, 24), Months: []desk.GlanceMonth{{Name: "March"}}}, inks, nil, nil)
	g.of.Hours[0] = desk.GlanceHour{Temp: "warm", Air: "damp", Judged: true, Known: true}
	g.of.Hours[1] = desk.GlanceHour{Judged: true, Known: true}
	im := (&glanceRenderer{glance: g}).paint(480, 40)
	for x, want := range map[int]color.NRGBA{4: inks.State("warm").Fill, 16: inks.State("damp").Fill, 30: inks.Surface} {
		if got := color.NRGBAModel.Convert(im.At(x, 20)); got != want {
			t.Errorf("at %d: %v, want %v", x, got, want)
		}
	}
}
