package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
)

// The table shows what the rows hold, and a line for what they can't tell.
func TestExposureTable(t *testing.T) {
	low, high, near := 2.0, 6.0, 1.0
	lack := analysis.Figure{Unknown: "no_humidity"}
	r := analysis.Review{Quantities: []analysis.QuantityRow{
		{Quantity: "air_temperature", Place: "room", Min: figureOf(1, 1, 1), Mean: figureOf(4.2, 4, 5), Max: figureOf(9, 9, 9), Bands: []analysis.BandRow{
			{Name: "good", Low: &low, High: &high, HoursBelow: 3, HoursIn: 84, HoursAbove: 12, BelowRange: analysis.Range{Low: 0, High: 9}, AboveRange: analysis.Range{Low: 12, High: 12}}}},
		{Quantity: "air_temperature", Place: "room", Logger: "mid", Mean: figureOf(4, 4, 4)},
		{Quantity: "dew_point", Place: "room", Min: lack, Mean: lack, Max: lack},
		{Quantity: "surface_margin", Place: "north wall", Phase: "late winter", Min: figureOf(-0.3, 0, 0), Mean: figureOf(2, 1, 3), Max: figureOf(5, 5, 5), Bands: []analysis.BandRow{
			{Name: "good", Low: &near, HoursBelow: 7, HoursIn: 20}}},
	}}
	in := analysis.Input{Loggers: []analysis.Logger{{Name: "mid", Place: "room", TempC: r.Traces.Room}}}
	b := newBarn(in, r, Units{})
	for i := range b.r.Quantities {
		if b.r.Quantities[i].Place == "room" {
			b.r.Quantities[i].Place = b.place()
		}
	}
	table, untold := b.exposureTable()
	var got []string
	for _, row := range table.Rows {
		got = append(got, plain(strings.Join(row, "|")))
	}
	want := []string{
		"Temperature|whole winter|2–6 °C|1.0 °C|4.2 °C|9.0 °C|3 (0–9)|84|12",
		"Dew point|whole winter|–|–|–|–|–|–|–",
		"Margin of the north wall|late winter|1.0 °C and more|−0.3 °C|2.0 °C|5.0 °C|7|20|0",
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if len(untold) != 1 || untold[0] != "Dew point can't be told: no logger in the room recorded humidity." {
		t.Errorf("%q", untold)
	}
}
