package desk

import (
	"fmt"
	"testing"

	"thawbook/app/engine"
	"thawbook/importers"
)

// Lines of objects are not cut at commas: over them stands what was recognised. Columns that are hours of one series bear its
// name.
func TestHeadsOfWhatIsNoPlainTable(t *testing.T) {
	series := []importers.Series{{ColumnIndex: 2, Quantity: importers.AirTemperature}, {ColumnIndex: 3, Quantity: importers.RelativeHumidity}}
	layout := importers.Layout{Delimiter: ",", Objects: true, Clock: importers.Clock{Columns: []int{1}}}
	f := engine.File{Export: &importers.Export{Layout: layout, Series: series}}
	h := headOf(f, []TextLine{{Number: 1, Text: `[{"time": "2026-01-13", "temperature": 4.5}`}})
	if len(h.Columns) != 1 || h.Columns[0].What != "time, temperature and humidity" || len(h.Rows[0].Cells) != 1 {
		t.Errorf("%+v", h)
	}
	f.Export.Layout.Objects, f.Export.Layout.Hours = false, []int{2, 3, 4}
	f.Export.Series = series[:1]
	h = headOf(f, []TextLine{{Number: 1, Text: "2026-01-13,4.5,4.6,4.7"}})
	if len(h.Columns) != 4 || h.Columns[3].What != "temperature" {
		t.Errorf("%+v", h)
	}
}

// Of many columns as many are shown as have room for what was recognised and for their readings: twenty pairs of a humidity
// and a temperature are not forty stumps. What is not used comes last and makes do with little.
func TestAHeadsColumnsHaveRoom(t *testing.T) {
	var series []importers.Series
	header, row := "time,remark", "2025-01-13 08:30,a long remark that says nothing of the air"
	for k := range 20 {
		name := fmt.Sprintf("Bay %d", k+1)
		series = append(series, importers.Series{ColumnIndex: 2*k + 3, Quantity: importers.AirTemperature, Logger: name},
			importers.Series{ColumnIndex: 2*k + 4, Quantity: importers.RelativeHumidity, Logger: name})
		header, row = header+",Temperature in bay,Humidity in bay", row+",4.5,62"
	}
	f := engine.File{Export: &importers.Export{Layout: importers.Layout{Delimiter: ",", FirstDataLine: 2, Clock: importers.Clock{Columns: []int{1}}}, Series: series}}
	lines := []TextLine{{Number: 1, Text: header}, {Number: 2, Text: row}}
	h := headOf(f, lines)
	letters := 0
	for _, c := range h.Columns {
		letters += max(len(c.What), len("4.5")) + betweenRunes
	}
	if len(h.Columns) < 4 || letters > lineRunes || h.Columns[0].What != "time" || h.Columns[1].What != "temperature" {
		t.Errorf("%d letters: %+v", letters, h.Columns)
	}
	if want := fmt.Sprintf("%d more columns are not shown.", 42-len(h.Columns)); h.More != want {
		t.Errorf("%q, want %q", h.More, want)
	}
	f.Export.Series = series[:2]
	if h = headOf(f, lines); len(h.Columns) != headColumns || h.Columns[1].What != "" {
		t.Errorf("of two in use %+v", h.Columns)
	}
}
