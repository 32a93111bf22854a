package desk

import (
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Six readings an hour apart, 4 1 5 9 3 0 °C, of which the last is not scored: lowest at the second hour, highest at the
// fourth, and of two warm spells the longer one (arithmetic).
func TestWhereFiguresAreSeen(t *testing.T) {
	const h = series.HourMS
	room := series.Curve{Readings: series.Readings{At: []int64{0, h, 2 * h, 3 * h, 4 * h, 5 * h}, Val: []float64{4, 1, 5, 9, 3, 0}}, MaxStepMS: 2 * h}
	low, high := 2.0, 6.0
	scored := []Span{{From: 0, To: 5 * h}}
	r := analysis.Review{BeesIn: 0, BeesOut: 6 * h, Traces: analysis.Traces{Room: room}, Phases: []analysis.Phase{{Name: "deep winter", Parts: scored}},
		Spells: []analysis.Spell{{Kind: "warm", Place: "room", Span: Span{From: 10, To: 20}}, {Kind: "warm", Place: "room", Span: Span{From: 2 * h, To: 4 * h}},
			{Kind: "cold", Place: "north wall", Span: Span{From: h, To: 2 * h}}},
		Quantities: []analysis.QuantityRow{{Quantity: "air_temperature", Place: "room", Min: figureOf(1, 1, 1), Mean: figureOf(4.4, 4, 5), Max: figureOf(9, 9, 9),
			Bands: []analysis.BandRow{{Name: "good", Low: &low, High: &high, HoursBelow: 1, HoursIn: 3, HoursAbove: 1}}}}}
	in := analysis.Input{Loggers: []analysis.Logger{{Name: "mid", Place: "room", TempC: room}}}
	table, _ := newBarn(in, r, Units{}).exposureTable()
	for column, want := range map[int]Span{3: {From: h, To: h + 1}, 4: {}, 5: {From: 3 * h, To: 3*h + 1}, 6: {}, 8: {From: 2 * h, To: 4 * h}} {
		if got := table.Look(0, column); got != want {
			t.Errorf("%s is seen at %v, want %v", table.Columns[column].Title, got, want)
		}
	}
}
