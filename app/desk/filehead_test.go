package desk

import (
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
