package report

import (
	"bytes"
	"encoding/csv"
	"testing"

	"thawbook/app/desk"
)

func TestTablesKeepUnknownEmptyAndNamesHarmless(t *testing.T) {
	v, low := 3.25, 2.0
	d := desk.ReviewDoc{Barns: []desk.BarnDoc{{
		Name: "=1+1",
		Quantities: []desk.QuantityDoc{
			{Quantity: "air_temperature", Place: "room", HoursKnown: 10, Mean: &v, Unit: "degC", Bands: []desk.BandDoc{{Name: "good", Low: &low, HoursBelow: 1.5}}},
			{Quantity: "dew_point", Place: "room", Unit: "degC"},
		},
		Stages: []desk.StageDoc{{Name: "two", Ran: &desk.WorkDoc{Hours: &v, HoursKnown: 10}}},
		Events: []desk.EventDoc{{Kind: "power cut", MayBe: true, Figures: map[string]*float64{"climb_k": &v, "later_k_per_h": nil}}, {Kind: "doors open"}},
		Alarms: []desk.AlarmDoc{{Limit: 8, DelayMin: 30, Due: []desk.AlarmCallDoc{{Due: "a", LateMin: &v}, {Due: "b"}}}, {Limit: 10}},
	}}}
	want := map[string][]map[string]string{
		"hours.csv": {
			{"barn": "'=1+1", "time_weighted_mean": "3.25", "band": "good", "band_low": "2", "band_high": "", "hours_below": "1.5"},
			{"quantity": "dew_point", "band": "", "hours_below": "", "time_weighted_mean": ""},
		},
		"spells.csv":   {},
		"stages.csv":   {{"stage": "two", "called_hours": "", "ran_hours": "3.25", "ran_hours_known": "10"}},
		"surfaces.csv": {},
		"events.csv": {
			{"kind": "power cut", "may_be": "true", "figure": "climb_k", "value": "3.25"}, {"figure": "later_k_per_h", "value": ""},
			{"kind": "doors open", "figure": ""},
		},
		"alarms.csv": {{"limit_c": "8", "due": "a", "late_min": "3.25"}, {"due": "b", "late_min": "", "logged": ""}, {"limit_c": "10", "due": ""}},
	}
	for _, table := range Tables(d) {
		rows := parsed(t, table)
		if len(rows) != len(want[table.Name]) {
			t.Errorf("%s: %d rows, want %d", table.Name, len(rows), len(want[table.Name]))
			continue
		}
		for i, cells := range want[table.Name] {
			for column, text := range cells {
				if rows[i][column] != text {
					t.Errorf("%s row %d, %s: %q, want %q", table.Name, i+1, column, rows[i][column], text)
				}
			}
		}
	}
}

// parsed reads a table back with the standard library's reader.
func parsed(t *testing.T, table Table) []map[string]string {
	t.Helper()
	var buf bytes.Buffer
	if err := table.WriteCSV(&buf); err != nil {
		t.Fatal(err)
	}
	lines, err := csv.NewReader(&buf).ReadAll()
	if err != nil || len(lines) == 0 {
		t.Fatalf("%s: %v, %d lines", table.Name, err, len(lines))
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, name := range lines[0] {
			row[name] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}
