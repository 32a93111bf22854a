package importers

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
)

// Of readings printed over several lines each a remark names the line the reading begins in, and what is no table at all
// is refused for that.
func TestObjectsKeepTheirLines(t *testing.T) {
	text := "[{\n \"time\": \"2026-01-13 10:00\",\n \"temp\": 4.5\n},\n{ \"time\": \"2026-01-13 10:10\",\n \"temp\": 4.0 },\n\n{\n \"time\": \"soon\",\n \"temp\": 4.1\n},\n{\"time\": \"2026-01-13 10:30\",\n\"temp\": 3.5}]\n"
	e, err := Read(context.Background(), strings.NewReader(text), "f.json", nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(e.Series) != 1 || len(e.Series[0].Val) != 3 {
		t.Fatalf("%+v, want three readings of a temperature", e.Series)
	}
	if len(e.Remarks) != 1 || e.Remarks[0].Code != RemarkBadTime || e.Remarks[0].Line != 8 {
		t.Errorf("remarks %+v, want a bad time in line 8", e.Remarks)
	}
}

// What stands beside the readings in the object around them is of no row and makes no column, on one line or on several.
func TestWhatWrapsReadingsIsNoColumn(t *testing.T) {
	rows := make([]string, 24)
	for h := range rows {
		rows[h] = fmt.Sprintf(`{"time":"2026-01-13T%02d:00:00Z","temperature":%.1f}`, h, 4+float64(h%3)/10)
	}
	for _, text := range []string{
		`{"name":"Shed","unit":"C","readings":[` + strings.Join(rows, ",") + "]}\n",
		"{\n  \"name\": \"Shed\",\n  \"unit\": \"C\",\n  \"readings\": [\n" + strings.Join(rows, ",\n") + "\n  ]\n}\n",
		`{"station":"12","interval":60,"data":[` + strings.Join(rows, ",") + "]}\n",
	} {
		e, err := Read(context.Background(), strings.NewReader(text), "f.json", nil)
		if err != nil {
			t.Fatalf("%.60q: %v", text, err)
		}
		if len(e.Series) != 1 || e.Series[0].Column != "temperature" || len(e.Series[0].Val) != 24 || len(e.Questions) > 0 {
			t.Errorf("%.60q: %d series, %+v", text, len(e.Series), e.Questions)
		}
	}
}

func TestReadingsOverSeveralLinesAreRefused(t *testing.T) {
	for _, text := range []string{
		strings.Repeat("- time: 2026-01-13 10:00\n  temperature: 4.5\n  humidity: 80\n", 8),
		strings.Repeat("[2026-01-13 10:00]\ntemperature=4.5\nhumidity=80\n\n", 8),
		strings.Repeat("2026-01-13 10:00\n4.5 80\n", 8),
		strings.Repeat("Time: 2026-01-13 10:00\nTemp: 4.5 C  Hum: 80 %\n", 8),
		`{"time":"2026-01-13 10:00","temperature":4.5}`,
	} {
		_, err := Read(context.Background(), strings.NewReader(text), "f.txt", nil)
		var no *Refusal
		if !errors.As(err, &no) || no.Code != RefusedManyLines {
			t.Errorf("%.40q: %v", text, err)
		}
	}
}

// Lines that name their values are no table that could be cut at blanks, nor rows with commas within dates or two values
// to a cell one that could be cut at commas; those of a plain table are.
func TestLinesOfNamesAreObjects(t *testing.T) {
	for in, want := range map[string]bool{
		"[2026-01-13 10:00:00] Temp: 4.5C  Humidity: 80%\n[2026-01-13 10:10:00] Temp: 4.0C  Humidity: 81%\n": true,
		"2026-01-13 10:00:00 temp=4.5 hum=80\n2026-01-13 10:10:00 temp=4.0 hum=81\n":                         true,
		"time,temp °C\n2026-01-13 10:00,4.5\n2026-01-13 10:10,4.0\n":                                         false,
		"date time temp_c\n2026-01-13 10:00 4.5\n2026-01-13 10:10 4.0\n":                                     false,
		"time,temp °C\nJan 13, 2026 10:00,4.5\nJan 13, 2026 10:10,4.0\n":                                     true,
		"time,temp/RH\n2026-01-13 10:00,4.5/80\n2026-01-13 10:10,4.0/81\n":                                   true,
	} {
		if got := readText(t, in).Layout.Objects; got != want {
			t.Errorf("%q: %v", in, got)
		}
	}
}
