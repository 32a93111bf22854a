package desk_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"thawbook/app/desk"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// inspectFiles writes files into a folder of their own and inspects them by name.
func inspectFiles(t *testing.T, answers []winter.Answer, text map[string]string, names ...string) []desk.InspectDoc {
	t.Helper()
	dir := t.TempDir()
	var paths []string
	for _, name := range names {
		if body, found := text[name]; found {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(body), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		paths = append(paths, filepath.Join(dir, name))
	}
	read, err := engine.Inspect(context.Background(), paths, answers, nil)
	if err != nil {
		t.Fatal(err)
	}
	docs := desk.Inspect(read)
	holdTo(t, "inspect.schema.json", docs)
	return docs
}

// The figures follow from the five lines by hand: in °C 4, 5, 5 and 9, so a mean of 5.75; steps of 600, 0
// and 1,800 s, of which 600 and 1,800 are equally frequent and the smaller counts.
const shortLog = "Time (UTC+2),Temp (°F),RH (%)\n2026-01-13 10:00,39.2,81\n2026-01-13 10:10,41,\n2026-01-13 10:10,41,warm\n2026-01-13 10:40,48.2,83\n"

func TestInspectSeries(t *testing.T) {
	d := inspectFiles(t, nil, map[string]string{"north.csv": shortLog}, "north.csv")[0]
	if d.Refused != "" || d.Rows != 4 || *d.Encoding != "utf-8" || *d.Delimiter != "," || *d.DecimalMark != "." || *d.FirstDataLine != 2 || *d.Clock.Zone != "+02:00" {
		t.Errorf("%+v", d)
	}
	s := d.Series[0]
	if s.Logger != "north" || s.Column != "Temp (°F)" || s.ColumnIndex != 2 || s.Quantity != "air_temperature" || *s.Unit != "degF" || *s.UnitSource != "header" {
		t.Errorf("%+v", s)
	}
	if s.Readings != 4 || *s.First != "2026-01-13T10:00:00+02:00" || *s.Last != "2026-01-13T10:40:00+02:00" || *s.IntervalS != 600 || s.Gaps != 1 || s.Duplicates != 1 || s.OutOfOrder != 0 {
		t.Errorf("%+v", s)
	}
	if !near(*s.Min, 4) || !near(*s.Mean, 5.75) || !near(*s.Max, 9) {
		t.Errorf("levels %v %v %v, want 4, 5.75, 9", *s.Min, *s.Mean, *s.Max)
	}
	h := d.Series[1]
	if h.Readings != 2 || h.Missing != 1 || h.Unreadable != 1 || !near(*h.Mean, 82) || *h.Unit != "percent" {
		t.Errorf("%+v", h)
	}
	if len(d.Remarks) != 1 || *d.Remarks[0].Line != 4 || *d.Remarks[0].Column != 3 || !strings.Contains(d.Remarks[0].Text, "“warm”") {
		t.Errorf("%+v", d.Remarks)
	}
}

// near allows 1e-9 of the value, as external checks do.
func near(got, want float64) bool { return got-want < 1e-9*want && want-got < 1e-9*want }

func TestInspectOpenQuestions(t *testing.T) {
	text := map[string]string{"a.csv": "time;temp\n03/04/2026 10:00;38,5\n03/04/2026 11:00;39,5\n"}
	d := inspectFiles(t, nil, text, "a.csv")[0]
	if d.Clock.OrderCertain || d.Series[0].First != nil || d.Series[0].Min != nil || d.Series[0].Unit != nil || len(d.Questions) != 2 {
		t.Errorf("open: %+v", d)
	}
	answers := []winter.Answer{{ID: "day_month", Option: "mdy"}, {ID: "temperature_unit", Option: "degF"}, {ID: "zone", Option: "Europe/Tallinn"}, {ID: "humidity_unit", Option: "furlongs"}}
	d = inspectFiles(t, answers, text, "a.csv")[0]
	s := d.Series[0]
	if !d.Clock.OrderCertain || *d.Clock.Order != "mdy" || *s.First != "2026-03-04T10:00:00" || *s.UnitSource != "answer" || len(d.Questions) != 0 || d.Clock.ZoneSource != "answer" {
		t.Errorf("answered: %+v", d)
	}
	if !near(*s.Max, 7.5/1.8) || len(d.Remarks) != 1 || d.Remarks[0].Code != "unknown_answer" {
		t.Errorf("answered: %v, %+v", *s.Max, d.Remarks)
	}
}

// Every kind of file that can't be read gives one sentence, and the others are read all the same.
func TestInspectRefusals(t *testing.T) {
	text := map[string]string{
		"empty.csv": "", "one.csv": "time,temp\n", "nul.csv": "time,temp\n2026-01-13 10:00,4\n2026-01-13 11:00,\x00\n",
		"noclock.csv": "depth,temp\n1,4.5\n2,5.5\n", "novalues.csv": "time,note\n2026-01-13 10:00,dry\n2026-01-13 11:00,wet\n", "good.csv": shortLog,
	}
	wants := []struct {
		name, code string
		line       string
	}{
		{"empty.csv", "empty", ""}, {"one.csv", "one_line", "line 1"}, {"nul.csv", "binary", "line 3"}, {"noclock.csv", "no_clock", ""},
		{"novalues.csv", "no_values", ""}, {"absent.csv", "missing", ""}, {"good.csv", "", ""},
	}
	var names []string
	for _, w := range wants {
		names = append(names, w.name)
	}
	for i, d := range inspectFiles(t, nil, text, names...) {
		w := wants[i]
		if d.RefusedCode != w.code || filepath.Base(d.File) != w.name {
			t.Errorf("%s: code %q, want %q (%s)", w.name, d.RefusedCode, w.code, d.Refused)
			continue
		}
		if w.code != "" && (!strings.Contains(d.Refused, w.name) || !strings.Contains(d.Refused, w.line) || !strings.HasSuffix(d.Refused, ".")) {
			t.Errorf("%s: %q", w.name, d.Refused)
		}
	}
}
