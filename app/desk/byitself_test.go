package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
)

// A mean that held hides a cold corner and a warm one: of loggers that were surely outside longer than the mean, even read
// half a degree off, those that were so longest are named, and all stand in a table.
func TestLoggersByThemselves(t *testing.T) {
	good := func(below, belowLow, above, aboveLow float64) []analysis.BandRow {
		low, high := 2.0, 6.0
		return []analysis.BandRow{{Name: "good", Low: &low, High: &high, HoursBelow: below, HoursIn: 3000 - below - above, HoursAbove: above,
			BelowRange: analysis.Range{Low: belowLow, High: 2 * below}, AboveRange: analysis.Range{Low: aboveLow, High: 2 * above}}}
	}
	row := func(name string, least, mean, most float64, bands []analysis.BandRow) analysis.QuantityRow {
		return analysis.QuantityRow{Quantity: "air_temperature", Place: "control", Logger: name, Bands: bands,
			Min: figureOf(least, least, least), Mean: figureOf(mean, mean, mean), Max: figureOf(most, most, most)}
	}
	room := row("", 2.1, 4.4, 6.3, good(0, 0, 20, 0))
	far, mid, door := row("far end", -4.5, 4.1, 5.9, good(412, 300, 0, 0)), row("middle", 1.8, 4.4, 7.1, good(30, 0.5, 60, 20.5)), row("door", -1, 4.6, 11.2, good(80, 40, 212, 90))
	for _, c := range []struct {
		rows []analysis.QuantityRow
		want string
		n    int
	}{
		{[]analysis.QuantityRow{room, far, mid, door}, "By itself far end was below 2 °C for 412 h, at coldest −4.5 °C, and door was above 6 °C for 212 h, at warmest 11.2 °C.", 3},
		{[]analysis.QuantityRow{room, mid, row("near", 3, 4.4, 5, good(0, 0, 0, 0))}, "side by side.", 2},
	} {
		b := newBarn(analysis.Input{}, analysis.Review{Quantities: c.rows}, Units{})
		if got := plain(b.spread()[0].Text); !strings.HasSuffix(got, c.want) {
			t.Errorf("got %q\nwant at the end %q", got, c.want)
		}
		if table := b.loggerTable(); len(table.Rows) != c.n || table.Rows[0][0] != c.rows[1].Logger {
			t.Errorf("%d rows, want %d, the one longest outside first: %v", len(table.Rows), c.n, table.Rows)
		}
	}
	b := newBarn(analysis.Input{}, analysis.Review{Quantities: []analysis.QuantityRow{room, far}}, Units{})
	if len(b.spread()) != 0 || len(b.loggerTable().Rows) != 0 {
		t.Error("a logger alone is the room")
	}
}
