package engine

import (
	"testing"

	"thawbook/app/winter"
	"thawbook/importers"
)

// column is a series with one reading.
func column(logger, name string, q importers.Quantity) importers.Series {
	return importers.Series{Logger: logger, Column: name, Quantity: q, FaceMS: []int64{0}, Val: []float64{0}}
}

func TestWhichColumnsAreALoggers(t *testing.T) {
	export := &importers.Export{Series: []importers.Series{
		column("North", "Battery", importers.Other),
		column("North", "T", importers.AirTemperature),
		column("North", "RH", importers.RelativeHumidity),
		column("South", "T", importers.AirTemperature),
		column("South", "Probe", importers.SurfaceTemperature),
		column("South", "RH", importers.RelativeHumidity),
		column("South", "Stage 2", importers.State),
		column("South", "Stage 3", importers.State),
	}}
	for _, c := range []struct {
		what             string
		logger           winter.Logger
		temp, hum, state int // numbers of the columns, −1 for none
	}{
		{"the first", winter.Logger{Name: "x", Place: "room"}, 1, 2, -1},
		{"the one of its name", winter.Logger{Name: "south", Place: "room"}, 3, 5, -1},
		{"a channel that is a logger", winter.Logger{Channel: "SOUTH", Place: "room"}, 3, 5, -1},
		{"on a wall the probe", winter.Logger{Channel: "south", Place: "wall"}, 4, 5, -1},
		{"a channel that is a column", winter.Logger{Channel: "probe", Place: "room"}, 4, -1, -1},
		{"a part of a column", winter.Logger{Channel: "pro", Place: "wall"}, 4, -1, -1},
		{"a record", winter.Logger{Channel: "stage 3", RecordsStage: "3"}, -1, -1, 7},
		{"no such channel", winter.Logger{Channel: "attic"}, -1, -1, -1},
	} {
		p := pick(c.logger, export)
		for i, got := range []*importers.Series{p.temp, p.relHum, p.state} {
			want := []int{c.temp, c.hum, c.state}[i]
			if want < 0 && got != nil || want >= 0 && got != &export.Series[want] {
				t.Errorf("%s: choice %d is %+v, want column %d", c.what, i, got, want)
			}
		}
	}
}
