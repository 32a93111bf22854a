package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/chart"
	"thawbook/app/desk"
	"thawbook/app/engine"
)

// A press on a head puts the barns in its order, the most first, and again the other way round; the small plots stand beneath.
func TestAllBarnsTable(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(&Theme{})
	r := &engine.Result{}
	for i, name := range []string{"North", "South", "East"} {
		room := series.Curve{Readings: series.Readings{At: []int64{0, series.HourMS}, Val: []float64{4, 5}}, MaxStepMS: series.HourMS}
		b := analysis.Review{Barn: name, BeesOut: series.HourMS, Quantities: []analysis.QuantityRow{{Quantity: "air_temperature", Place: "room", KnownMS: int64(1+(i+1)%3) * series.HourMS}}}
		b.Traces.Room = room
		r.Barns, r.Inputs = append(r.Barns, b), append(r.Inputs, analysis.Input{Loggers: []analysis.Logger{{Place: "room", TempC: room}}})
	}
	v := desk.AllBarnsOf(r, desk.Units{})
	page := allBarnsPage(v, figureOf(v.Plots), func(string) {})
	w := test.NewTempWindow(t, page)
	w.Resize(fyne.NewSize(1000, 600))
	for _, want := range []string{"South", "East"} { // known for 3 h and for 1 h
		b, ok := find(page, func(b *headButton) bool { return b.Text == "Known, h" })
		if !ok {
			t.Fatal("the table has no head to press")
		}
		test.Tap(b)
		first, _ := find(page, func(p *prose) bool { return p.text == "North" || p.text == "South" || p.text == "East" })
		if first.text != want {
			t.Errorf("%s stands first, want %s", first.text, want)
		}
	}
	if plots, ok := find(page, func(*chart.Chart) bool { return true }); !ok || plots.Size().Height < 3*barnLaneHigh {
		t.Error("the small plots are not there, or have no room")
	}
}
