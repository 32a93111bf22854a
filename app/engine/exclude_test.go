package engine

import (
	"context"
	"path/filepath"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// A day of hourly readings, hours 6 to 9 of which are left out: 4 of 24 of the quantity that is named, none of the
// other; of both where none is, as in plans from before there was a choice.
func TestAStretchOfOneQuantityIsLeftOut(t *testing.T) {
	day := "time,temperature (°C),humidity (%)\n"
	for h := range 24 {
		day += "2025-01-10T" + string(rune('0'+h/10)) + string(rune('0'+h%10)) + ":00:00Z,4." + string(rune('0'+h%10)) + ",70\n"
	}
	for _, c := range []struct {
		quantity     string
		temp, relHum int
		left         []string
	}{
		{"", 20, 20, []string{"temperature", "humidity"}}, {"quantity = \"both\"", 20, 20, []string{"temperature", "humidity"}},
		{"quantity = \"humidity\"", 24, 20, []string{"humidity"}}, {"quantity = \"temperature\"", 20, 24, []string{"temperature"}},
	} {
		text := "[winter]\nname = \"w\"\nzone = \"UTC\"\n[[barn]]\nname = \"b\"\n[[barn.logger]]\nname = \"n\"\nfiles = [\"n.csv\"]\nplace = \"room\"\n" +
			"[[barn.logger.exclude]]\nfrom = \"2025-01-10T06:00\"\nto = \"2025-01-10T10:00\"\nreason = \"doors\"\n" + c.quantity + "\n"
		r, err := ReviewFile(context.Background(), filepath.Join(folder(t, map[string]string{"n.csv": day, "w.toml": text}), "w.toml"), nil)
		if err != nil {
			t.Fatal(err)
		}
		l := r.Inputs[0].Loggers[0]
		if l.TempC.Len() != c.temp || l.RelHum.Len() != c.relHum {
			t.Errorf("%q: %d temperatures and %d humidities stay", c.quantity, l.TempC.Len(), l.RelHum.Len())
		}
		var left []string
		for _, m := range r.Remarks {
			if m.Code == LeftOut {
				left = append(left, m.Args[1])
				if m.Args[0] != "n" || m.Args[2] != "doors" || m.Count != 4 || m.Span.To-m.Span.From != 3*series.HourMS+1 {
					t.Errorf("%+v", m)
				}
			}
		}
		if !slices.Equal(left, c.left) {
			t.Errorf("%q: said to be left out: %q", c.quantity, left)
		}
	}
}
