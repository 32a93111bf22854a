package winter

import (
	"reflect"
	"testing"
)

// Of two loggers of a file one gets another name, a third comes to light, and one that has nothing left goes.
func TestRegrouping(t *testing.T) {
	w := sample()
	w.Barns[0].Loggers = []Logger{{Name: "A", Channel: "A", Place: "room", Files: []string{"both.csv"}}, {Name: "my own", Channel: "b", Place: "wall", Files: []string{"both.csv"}}}
	w.Barns[0].Surfaces = []Surface{{Name: "north wall", Logger: "A"}}
	answer := SetAnswer{Files: []string{"both.csv"}, ID: "pairing", Option: "2+5:north, 3+4:b, 6:new"}
	next := applied(t, w, Regroup{answer, []Regrouped{{"both.csv", "A", "north"}, {"both.csv", "B", "b"}, {"both.csv", "", "new"}}})
	want := []Logger{{Name: "north", Channel: "north", Place: "room", Files: []string{"both.csv"}}, {Name: "my own", Channel: "b", Place: "wall", Files: []string{"both.csv"}}}
	if b := next.Barns[0]; !reflect.DeepEqual(b.Loggers, want) || b.Surfaces[0].Logger != "north" || len(next.Answers) != 1 {
		t.Errorf("%+v", b)
	}
	if last := next.Tray[len(next.Tray)-1]; !reflect.DeepEqual(last, Logger{Name: "new", Channel: "new", Files: []string{"both.csv"}}) {
		t.Errorf("%+v", next.Tray)
	}
	next = applied(t, w, Regroup{answer, []Regrouped{{"both.csv", "A", "north"}, {"both.csv", "b", ""}}})
	if got := names(next.Barns[0].Loggers); got != "north@room:both.csv" {
		t.Error(got)
	}
}

// A logger that took its file whole becomes the first of those the file turns out to hold; its other read-outs
// follow, and other files' loggers stay as they are.
func TestAFileTurnsOutToHoldTwoLoggers(t *testing.T) {
	w := sample()
	w.Barns[0].Loggers[0].Files = []string{"a.csv", "a2.zip"}
	e := Regroup{SetAnswer{Files: []string{"a.csv"}, ID: "pairing", Option: "in_order", Layout: "1"}, []Regrouped{
		{"a.csv", "a", "in"}, {"a.csv", "", "out"}, {"a2.zip!a2.csv", "a2", "in"}, {"a2.zip!a2.csv", "", "out"},
	}}
	next := applied(t, w, e)
	l := next.Barns[0].Loggers[0]
	if l.Name != "in" || l.Channel != "in" || l.OffsetC != 0.2 || names(next.Barns[1].Loggers) != "b@room:b.csv" {
		t.Errorf("%+v", next.Barns)
	}
	if got := names(next.Tray[2:]); got != "out@:a.csv out@:a2.zip!a2.csv" {
		t.Error(got)
	}
}

func TestSwapping(t *testing.T) {
	w := sample()
	w.Barns[0].Loggers = append(w.Barns[0].Loggers, Logger{Name: "w", Place: "wall", OffsetC: 0.3})
	next := applied(t, w, Swap{A: Slot{0, 0}, B: Slot{0, 1}})
	if got := names(next.Barns[0].Loggers); got != "w@room: a@wall:a.csv" || next.Barns[0].Loggers[0].OffsetC != 0.3 || next.Barns[0].Loggers[1].Assumed {
		t.Errorf("%s, %+v", got, next.Barns[0].Loggers)
	}
	km := 40.0
	w.Outdoor[0].StationKM = &km
	next = applied(t, w, Swap{A: Slot{1, 0}, B: Slot{OutdoorList, 0}})
	if names(next.Barns[1].Loggers) != "o@room:o.csv" || names(next.Outdoor) != "b@outdoor:b.csv" || next.Barns[1].Loggers[0].StationKM != nil || next.Outdoor[0].StationKM == nil {
		t.Errorf("%+v, %+v", next.Barns[1].Loggers, next.Outdoor)
	}
	w.Barns[1].Loggers[0].RecordsStage = "2"
	for _, e := range []Swap{{A: Slot{0, 0}, B: Slot{1, 0}}, {A: Slot{0, 0}, B: Slot{0, 7}}, {A: Slot{TrayList, 0}, B: Slot{TrayList, 1}}} {
		if _, err := e.Apply(w); err == nil {
			t.Errorf("%+v was taken", e)
		}
	}
}

// From a day on both hang where the other did; until then where they were, in one barn and across two.
func TestSwappingFromADayOn(t *testing.T) {
	w := sample()
	w.Barns[0].Loggers = append(w.Barns[0].Loggers, Logger{Name: "w", Place: "wall", Zone: "+02:00"})
	l := applied(t, w, Swap{A: Slot{0, 0}, B: Slot{0, 1}, Since: at(50)}).Barns[0].Loggers
	if names(l) != "a@room:a.csv w@wall: a@wall:a.csv w@room:" || l[0].From != nil || *l[2].From != 50 || *l[3].From != 50 || l[3].Zone != "+02:00" {
		t.Errorf("%+v", l)
	}
	next := applied(t, w, Swap{A: Slot{0, 1}, B: Slot{1, 0}, Since: at(50)})
	if names(next.Barns[0].Loggers) != "a@room:a.csv w@wall: b@wall:b.csv" || names(next.Barns[1].Loggers) != "b@room:b.csv w@room:" {
		t.Errorf("%s | %s", names(next.Barns[0].Loggers), names(next.Barns[1].Loggers))
	}
	// Across barns the earlier stretches end by being left out from then on.
	for _, l := range []Logger{next.Barns[0].Loggers[1], next.Barns[1].Loggers[0]} {
		if n := len(l.Exclusions); n != 1 || l.Exclusions[0].From != 50 || l.Exclusions[0].Reason != HungElsewhere {
			t.Errorf("%+v", l)
		}
	}
}

// An answer for a layout holds in place of the earlier one, outlives the winter, and is taken back as one.
func TestAnAnswerForALayout(t *testing.T) {
	w := sample()
	w.Answers = []Answer{{"a.csv", "day_month", "dmy", ""}, {"z.csv", "day_month", "mdy", "1"}, {"z.csv", "day_month", "mdy", "2"}}
	next := applied(t, w, SetAnswer{Files: []string{"a.csv", "b.csv"}, ID: "day_month", Option: "ymd", Layout: "1"})
	want := []Answer{{"z.csv", "day_month", "mdy", "2"}, {"a.csv", "day_month", "ymd", "1"}}
	if !reflect.DeepEqual(next.Answers, want) {
		t.Errorf("%v", next.Answers)
	}
	if got := Next(w, "").Answers; !reflect.DeepEqual(got, w.Answers[1:]) {
		t.Errorf("%v", got)
	}
	if got := applied(t, next, SetAnswer{Files: []string{"b.csv"}, ID: "day_month", Layout: "1"}).Answers; len(got) != 1 {
		t.Errorf("%v", got)
	}
}
