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
	next := applied(t, w, Hang{Slot{TrayList, 1}, "t", 0, "wall"})
	if names(next.Tray) != "b@:b2.csv" || names(next.Barns[0].Loggers) != "a@room:a.csv t@wall:t.csv" {
		t.Errorf("%s | %s", names(next.Tray), names(next.Barns[0].Loggers))
	}
	joined := applied(t, next, Hang{Slot{TrayList, 0}, "b", 1, "room"})
	if len(joined.Tray) != 0 || names(joined.Barns[1].Loggers) != "b@room:b.csv+b2.csv" {
		t.Errorf("a second read-out: %s", names(joined.Barns[1].Loggers))
	}
	out := applied(t, joined, Hang{Slot{0, 0}, "a", OutdoorList, "outdoor"})
	if names(out.Outdoor) != "o@outdoor:o.csv a@outdoor:a.csv" || out.Outdoor[1].Assumed || names(out.Barns[0].Loggers) != "t@wall:t.csv" {
		t.Errorf("%s", names(out.Outdoor))
	}
	same := applied(t, w, Hang{Slot{0, 0}, "a", 0, "room"})
	if names(same.Barns[0].Loggers) != "a@room:a.csv" || same.Barns[0].Loggers[0].Assumed {
		t.Errorf("hung where it hung: %+v", same.Barns[0].Loggers)
	}
	back := applied(t, w, Hang{Slot{1, 0}, "b", TrayList, ""})
	if names(back.Tray) != "b@:b2.csv t@:t.csv b@:b.csv" {
		t.Errorf("in the tray every one stays apart: %s", names(back.Tray))
	}
}

// What was set down for a logger is not lost when it is hung beside one of its name.
func TestHangingKeepsSettings(t *testing.T) {
	w := sample()
	w.Tray = append(w.Tray, Logger{Name: "b", Files: []string{"b3.csv"}, OffsetC: -0.7})
	got := applied(t, w, Hang{Slot{TrayList, 2}, "b", 1, "room"})
	if names(got.Barns[1].Loggers) != "b@room:b.csv b@room:b3.csv" || got.Barns[1].Loggers[1].OffsetC != -0.7 {
		t.Errorf("%+v", got.Barns[1].Loggers)
	}
}

func TestTheOtherEdits(t *testing.T) {
	w := sample()
	if got := applied(t, w, AddLoggers{Loggers: []Logger{{Name: "n"}}}); names(got.Tray) != "b@:b2.csv t@:t.csv n@:" {
		t.Error(names(got.Tray))
	}
	if got := applied(t, w, SetBeesTime{1, at(5), nil, nil}); *got.Barns[1].BeesIn != 5 || got.Barns[1].BeesOut != nil {
		t.Errorf("%+v", got.Barns[1])
	}
	if got := applied(t, w, Rename{"Other", []string{"Rowan", "Alder"}}); got.Name != "Other" || got.Barns[0].Name != "Rowan" || got.Barns[1].Name != "Alder" {
		t.Errorf("%s, %s, %s", got.Name, got.Barns[0].Name, got.Barns[1].Name)
	}
	if got := applied(t, w, AddNote{0, Note{At: 40, Kind: "power cut"}}); len(got.Barns[0].Notes) != 2 || len(w.Barns[0].Notes) != 1 {
		t.Errorf("%+v", got.Barns[0].Notes)
	}
}

func TestEditsThatDoNotFit(t *testing.T) {
	for _, e := range []Edit{
		Hang{Slot{TrayList, 2}, "t", 0, "room"}, Hang{Slot{0, -1}, "a", 0, "room"}, Hang{Slot{5, 0}, "a", 0, "room"}, Hang{Slot{0, 0}, "a", 2, "room"}, Hang{Slot{0, 0}, "a", -3, "room"}, Hang{Slot{0, 0}, "b", 0, "room"},
		SetBeesTime{2, nil, nil, nil}, SetBeesTime{0, at(9), at(9), nil}, Rename{"", []string{"A", "B"}}, Rename{"W", []string{"A", ""}}, Rename{"W", []string{"A", "A"}}, Rename{"W", []string{"A"}}, AddNote{-1, Note{}}, TakeOver{Winter{Name: "empty"}},
	} {
		w := sample()
		next, err := e.Apply(w)
		if err == nil || !reflect.DeepEqual(next, sample()) {
			t.Errorf("%#v goes through", e)
		}
	}
}

func TestAnswering(t *testing.T) {
	w := sample()
	w.Answers = []Answer{{"a.csv", "day_month", "dmy", ""}, {"a.csv", "temperature_unit", "degC", ""}}
	next := applied(t, w, SetAnswer{[]string{"a.csv", "b.csv"}, "day_month", "mdy", ""})
	want := []Answer{{"a.csv", "temperature_unit", "degC", ""}, {"a.csv", "day_month", "mdy", ""}, {"b.csv", "day_month", "mdy", ""}}
	if !reflect.DeepEqual(next.Answers, want) {
		t.Errorf("%v", next.Answers)
	}
	if open := applied(t, next, SetAnswer{[]string{"a.csv"}, "day_month", "", ""}); !reflect.DeepEqual(open.Answers, []Answer{want[0], want[2]}) {
		t.Errorf("an answer taken back: %v", open.Answers)
	}
	if _, err := (SetAnswer{ID: "day_month", Option: "dmy"}).Apply(w); err == nil {
		t.Error("an answer for no file was taken")
	}
}

// A logger carried from Alder's room to Rowan's wall on a day counts in each until and from that day.
func TestALoggerHungElsewhereFromADay(t *testing.T) {
	next := applied(t, sample(), SetLogger{At: Slot{0, 0}, List: 1, Place: "wall", Since: at(50)})
	before, after := next.Barns[0].Loggers[0], next.Barns[1].Loggers[1]
	if before.Place != "room" || len(before.Exclusions) != 2 || before.Exclusions[1].From != 50 || before.Exclusions[1].Reason != HungElsewhere {
		t.Errorf("where it hung: %+v", before)
	}
	if after.Place != "wall" || *after.From != 50 || after.Assumed || len(after.Exclusions) != 1 || names(next.Barns[1].Loggers) != "b@room:b.csv a@wall:a.csv" {
		t.Errorf("where it hangs: %+v", after)
	}
	within := applied(t, sample(), SetLogger{At: Slot{0, 0}, List: 0, Place: "wall", Since: at(50)})
	if names(within.Barns[0].Loggers) != "a@room:a.csv a@wall:a.csv" || len(within.Barns[0].Loggers[0].Exclusions) != 1 {
		t.Errorf("in one barn: %+v", within.Barns[0].Loggers)
	}
	if _, err := (SetLogger{At: Slot{1, 1}, List: 0, Place: "room", Since: at(40)}).Apply(next); err == nil {
		t.Error("it was hung elsewhere before it was hung there")
	}
}

func TestAStationsDistance(t *testing.T) {
	km := 40.0
	next := applied(t, sample(), SetLogger{At: Slot{OutdoorList, 0}, List: OutdoorList, Place: "outdoor", StationKM: &km})
	if l := next.Outdoor[0]; *l.StationKM != 40 || len(next.Outdoor) != 1 {
		t.Errorf("%+v", l)
	}
	hung := applied(t, next, SetLogger{At: Slot{OutdoorList, 0}, List: 0, Place: "don't know", StationKM: &km})
	if l := hung.Barns[0].Loggers[1]; l.Place != "don't know" || l.StationKM != nil || len(hung.Outdoor) != 0 {
		t.Errorf("%+v", l)
	}
	far := 1e5
	for _, e := range []SetLogger{
		{At: Slot{0, 9}, List: 0, Place: "room"},
		{At: Slot{0, 0}, List: 9, Place: "room"},
		{At: Slot{0, 0}, List: OutdoorList, Place: "outdoor", StationKM: &far},
	} {
		if _, err := e.Apply(sample()); err == nil {
			t.Errorf("%+v was taken", e)
		}
	}
}

func TestLeavingAStretchOutAndTakingItBack(t *testing.T) {
	next := applied(t, sample(), Exclude{Slot{0, 0}, []Exclusion{{From: 20, To: 30, Reason: "lay on the desk"}, {From: 40, To: 50, Reason: "lay on the desk"}}})
	if got := next.Barns[0].Loggers[0].Exclusions; len(got) != 3 || got[1].Reason != "lay on the desk" {
		t.Errorf("%+v", got)
	}
	back := applied(t, next, Include{Slot{0, 0}, "lay on the desk", ""})
	if got := back.Barns[0].Loggers[0].Exclusions; len(got) != 1 || got[0].From != 1 {
		t.Errorf("%+v", got)
	}
	for _, e := range []Edit{Exclude{Slot{0, 0}, []Exclusion{{From: 3, To: 3}}}, Exclude{Slot{7, 0}, []Exclusion{{From: 3, To: 4}}}, Include{Slot{0, 0}, "stuck", ""}, Include{Slot{0, 0}, "lay on the desk", OfHumidity}, Include{Slot{TrayList, 0}, "", ""}} {
		if _, err := e.Apply(sample()); err == nil {
			t.Errorf("%+v was taken", e)
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
