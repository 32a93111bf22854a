package engine

import (
	"context"
	"strings"
	"testing"

	"thawbook/app/winter"
)

// The first days of December may be of January to May as well. A file from the same drawer that goes on to the 13th
// tells; one written otherwise does not, nor one that was only told by its keeper, nor two that disagree.
func TestNeighboursTellDayFromMonth(t *testing.T) {
	const header, other = "when,temp (°C),RH (%)\n", "day,temp (°C),RH (%)\n"
	for _, c := range []struct {
		name    string
		files   map[string]string
		answers []winter.Answer
		order   string // of a.csv, "" while it is asked
	}{
		{"alone", map[string]string{}, nil, ""},
		{"day first", map[string]string{"b.csv": aDay(header, "13/12/2025")}, nil, "dmy"},
		{"month first", map[string]string{"b.csv": aDay(header, "12/13/2025")}, nil, "mdy"},
		{"another layout", map[string]string{"b.csv": aDay(other, "13/12/2025")}, nil, ""},
		{"as open as itself", map[string]string{"b.csv": aDay(header, "02/12/2025")}, nil, ""},
		{"told by the keeper", map[string]string{"b.csv": aDay(header, "02/12/2025")}, []winter.Answer{{File: "b.csv", ID: "day_month", Option: "dmy"}}, ""},
		{"at odds", map[string]string{"b.csv": aDay(header, "13/12/2025"), "c.csv": aDay(header, "12/13/2025")}, nil, ""},
	} {
		c.files["a.csv"] = aDay(header, "01/12/2025")
		read, err := Inspect(context.Background(), []string{folder(t, c.files)}, c.answers, nil)
		if err != nil || !strings.HasSuffix(read[0].Name, "a.csv") {
			t.Fatal(err)
		}
		e := read[0].Export
		if c.order == "" {
			if len(e.Questions) != 1 || e.Questions[0].ID != "day_month" {
				t.Errorf("%s: asks %v", c.name, e.Questions)
			}
		} else if e.Layout.Clock.Order != c.order || len(e.Questions) > 0 {
			t.Errorf("%s: %s, asks %v", c.name, e.Layout.Clock.Order, e.Questions)
		}
	}
}

// Two loggers without a zone are one remark, and that only where an hour would matter: not where what hung outdoors
// stands in the same rows.
func TestAssumedZonesAreOneRemark(t *testing.T) {
	log := hourly(t, "2026-11-12 00:00", 240, saw, flat(60))
	files := map[string]string{"a.csv": log, "b.csv": log + "2026-12-01 00:00:00,4.00,60.0\n"}
	barn := planHead + planLogger("1", "a.csv", "room") + planLogger("2", "b.csv", "room")
	for plan, want := range map[string]int{
		barn: 0,
		barn + "[[outdoor]]\nname = \"out\"\nfiles = [\"a.csv\"]\n":              1,
		barn + "[[outdoor]]\nname = \"out\"\nfiles = [\"b.csv\", \"a.csv\"]\n":   0,
		barn + "[[barn]]\nname = \"Rowan\"\n":                                    0,
		barn + "[[barn]]\nname = \"Rowan\"\n" + planLogger("3", "a.csv", "room"): 1,
	} {
		files["w.toml"] = plan
		result, err := ReviewFile(context.Background(), folder(t, files)+"/w.toml", nil)
		if err != nil {
			t.Fatal(err)
		}
		if open := 2 * want; len(result.ZoneOpen) != open {
			t.Errorf("%v open, want %d, of\n%s", result.ZoneOpen, open, plan)
		}
		said := 0
		for _, r := range result.Remarks {
			if r.Code == ClockZoneAssumed {
				if said++; r.Count != 2 || r.Args[1] != "UTC" {
					t.Errorf("%+v", r)
				}
			}
		}
		if said != want {
			t.Errorf("%d remarks, want %d, of\n%s", said, want, plan)
		}
	}
}
