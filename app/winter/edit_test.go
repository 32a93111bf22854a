package winter

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"
)

func at(ms int64) *int64 { return &ms }

// sample is a winter of two barns with a logger in each list.
func sample() Winter {
	on, off, higher := 5.0, 4.0, 6.0
	return Winter{
		Name: "2025–26", Zone: "Europe/Tallinn",
		Barns: []Barn{
			{
				Name: "Alder", BeesIn: at(10), BeesOut: at(90), Heads: []HeadCount{{At: 10, Change: 300}},
				Stages:  []Stage{{Name: "1", AlwaysOn: true}, {Name: "2", OnC: &on, OffC: &off}, {Name: "2", From: at(50), OnC: &higher, OffC: &on}},
				Phases:  []Phase{{Name: "deep winter", From: at(20)}},
				Mixing:  []Circulation{{Name: "m"}},
				Loggers: []Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room", Assumed: true, OffsetC: 0.2, Anchors: []Anchor{{1, 2}}, Exclusions: []Exclusion{{From: 1, To: 2}}}},
				Notes:   []Note{{At: 30, Kind: "wet boxes", Text: "Wet."}}, Exclusions: []Exclusion{{From: 12, To: 14}},
			},
			{Name: "Rowan", Loggers: []Logger{{Name: "b", Files: []string{"b.csv"}, Place: "room"}}},
		},
		Outdoor: []Logger{{Name: "o", Files: []string{"o.csv"}, Place: "outdoor"}},
		Tray:    []Logger{{Name: "b", Files: []string{"b2.csv"}}, {Name: "t", Files: []string{"t.csv"}}},
	}
}

// applied makes the next winter and makes sure that the one before is as it was.
func applied(t *testing.T, w Winter, e Edit) Winter {
	t.Helper()
	before, _ := json.Marshal(w)
	next, err := e.Apply(w)
	if err != nil {
		t.Fatalf("%s: %v", e.What(), err)
	}
	if after, _ := json.Marshal(w); string(after) != string(before) {
		t.Fatalf("%s changed the winter it was made from", e.What())
	}
	return next
}

func names(loggers []Logger) string {
	var out []string
	for _, l := range loggers {
		out = append(out, l.Name+"@"+l.Place+":"+strings.Join(l.Files, "+"))
	}
	return strings.Join(out, " ")
}

func TestHanging(t *testing.T) {
	w := sample()
	next := applied(t, w, Hang{Slot{TrayList, 1}, 0, "wall"})
	if names(next.Tray) != "b@:b2.csv" || names(next.Barns[0].Loggers) != "a@room:a.csv t@wall:t.csv" {
		t.Errorf("%s | %s", names(next.Tray), names(next.Barns[0].Loggers))
	}
	joined := applied(t, next, Hang{Slot{TrayList, 0}, 1, "room"})
	if len(joined.Tray) != 0 || names(joined.Barns[1].Loggers) != "b@room:b.csv+b2.csv" {
		t.Errorf("a second read-out: %s", names(joined.Barns[1].Loggers))
	}
	out := applied(t, joined, Hang{Slot{0, 0}, OutdoorList, "outdoor"})
	if names(out.Outdoor) != "o@outdoor:o.csv a@outdoor:a.csv" || out.Outdoor[1].Assumed || names(out.Barns[0].Loggers) != "t@wall:t.csv" {
		t.Errorf("%s", names(out.Outdoor))
	}
	same := applied(t, w, Hang{Slot{0, 0}, 0, "room"})
	if names(same.Barns[0].Loggers) != "a@room:a.csv" || same.Barns[0].Loggers[0].Assumed {
		t.Errorf("hung where it hung: %+v", same.Barns[0].Loggers)
	}
	back := applied(t, w, Hang{Slot{1, 0}, TrayList, ""})
	if names(back.Tray) != "b@:b2.csv t@:t.csv b@:b.csv" {
		t.Errorf("in the tray every one stays apart: %s", names(back.Tray))
	}
}

func TestTheOtherEdits(t *testing.T) {
	w := sample()
	if got := applied(t, w, AddLoggers{[]Logger{{Name: "n"}}}); names(got.Tray) != "b@:b2.csv t@:t.csv n@:" {
		t.Error(names(got.Tray))
	}
	if got := applied(t, w, SetBeesTime{1, at(5), nil}); *got.Barns[1].BeesIn != 5 || got.Barns[1].BeesOut != nil {
		t.Errorf("%+v", got.Barns[1])
	}
	if got := applied(t, w, Rename{-1, "Other"}); got.Name != "Other" {
		t.Error(got.Name)
	}
	if got := applied(t, w, Rename{1, "Willow"}); got.Barns[1].Name != "Willow" {
		t.Error(got.Barns[1].Name)
	}
	if got := applied(t, w, AddNote{0, Note{At: 40, Kind: "power cut"}}); len(got.Barns[0].Notes) != 2 || len(w.Barns[0].Notes) != 1 {
		t.Errorf("%+v", got.Barns[0].Notes)
	}
}

func TestEditsThatDoNotFit(t *testing.T) {
	for _, e := range []Edit{
		Hang{Slot{TrayList, 2}, 0, "room"}, Hang{Slot{0, -1}, 0, "room"}, Hang{Slot{5, 0}, 0, "room"}, Hang{Slot{0, 0}, 2, "room"}, Hang{Slot{0, 0}, -3, "room"},
		SetBeesTime{2, nil, nil}, SetBeesTime{0, at(9), at(9)}, Rename{-1, ""}, Rename{0, "Rowan"}, Rename{7, "x"}, AddNote{-1, Note{}}, TakeOver{Winter{Name: "empty"}},
	} {
		w := sample()
		next, err := e.Apply(w)
		if err == nil || !reflect.DeepEqual(next, sample()) {
			t.Errorf("%#v goes through", e)
		}
	}
}

func TestTheNextWinter(t *testing.T) {
	w := sample()
	next := Next(w, "2026–27")
	b := next.Barns[0]
	if next.Name != "2026–27" || next.Zone != w.Zone || len(next.Barns) != 2 || len(next.Tray) != 0 || len(next.Answers) != 0 {
		t.Errorf("%+v", next)
	}
	if b.BeesIn != nil || b.BeesOut != nil || b.Heads != nil || b.Notes != nil || b.Exclusions != nil {
		t.Errorf("last winter's days came along: %+v", b)
	}
	if len(b.Stages) != 2 || *b.Stages[1].OnC != 6 || b.Stages[1].From != nil || b.Phases[0].From != nil {
		t.Errorf("the last settings should hold from the start: %+v", b.Stages)
	}
	if names(b.Loggers) != "a@room:" || b.Loggers[0].OffsetC != 0.2 || b.Loggers[0].Anchors != nil || names(next.Outdoor) != "o@outdoor:" {
		t.Errorf("%+v", b.Loggers)
	}
	if *sample().Barns[0].Phases[0].From != *w.Barns[0].Phases[0].From || w.Barns[0].Stages[2].From == nil {
		t.Error("the winter it was made from changed")
	}
}

func TestTakingBarnsOver(t *testing.T) {
	got := applied(t, sample(), TakeOver{sample()})
	var all []string
	for _, b := range got.Barns {
		all = append(all, b.Name)
	}
	if strings.Join(all, ", ") != "Alder, Rowan, Alder (2), Rowan (2)" || names(got.Barns[2].Loggers) != "a@room:" {
		t.Errorf("%v, %s", all, names(got.Barns[2].Loggers))
	}
}

// A logger that read +0.3 in ice and 0.5 too high beside another is off by the mean of both: 0.4 is taken off.
func TestTheOffsetOfChecks(t *testing.T) {
	c := func(v float64) *float64 { return &v }
	l := Logger{Checks: []Calibration{{Method: "ice", SaidC: c(0.3), TrueC: c(0)}, {Method: "side by side", SaidC: c(4.5), TrueC: c(4)}, {Method: "salt", SaidRelHum: c(0.79), TrueRelHum: c(0.75)}}}
	offC, offRH, checkedC, checkedRH := l.Offset()
	if !near(offC, -0.4) || !near(offRH, -0.04) || !checkedC || !checkedRH {
		t.Errorf("%v %v %v %v", offC, offRH, checkedC, checkedRH)
	}
	l.OffsetC = 0.1
	if offC, _, _, _ = l.Offset(); offC != 0.1 {
		t.Errorf("what the keeper set himself holds: %v", offC)
	}
	if _, _, checkedC, checkedRH = (Logger{}).Offset(); checkedC || checkedRH {
		t.Error("nobody checked it")
	}
}

func near(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }
