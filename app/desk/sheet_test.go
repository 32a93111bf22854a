package desk

import (
	"math"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"thawbook/app/winter"
)

// settledBook is a book over a plan with something in every list a sheet shows.
func settledBook(t *testing.T) (*Keeper, Book) {
	t.Helper()
	k, dir := keeper(t), t.TempDir()
	loggerFile(t, dir, "one.csv", 4)
	path := written(t, dir, "winter.toml", `[winter]
name = "Sheets"
zone = "America/Winnipeg"
[bands.air_temperature]
good_high = 5.5
[[barn]]
name = "Alder"
[[barn.heads]]
at = 2024-11-13T12:00:30Z
change = 340
[[barn.stage]]
name = "small"
always_on = true
flow_m3h = 1234
[[barn.stage]]
name = "big"
on_c = 4.3
off_c = 3.9
flow_low = 2500
flow_high = 3500
watts = 180
[[barn.stage]]
name = "air"
timer_on_s = 60
timer_every_s = 600
[[barn.heat]]
name = "floor"
kind = "floor"
into = "floor"
with_stage = "small"
[[barn.heat]]
name = "sun"
kind = "solar"
[[barn.surface]]
name = "north"
kind = "wall"
factor = 0.91
low = 0.9
high = 0.92
[[barn.logger]]
name = "one"
files = ["one.csv"]
place = "room"
[[barn.logger]]
name = "on the wall"
files = []
place = "wall"
[[barn.exclude]]
from = 2024-11-20T08:00:10Z
to = 2024-11-20T09:00:20Z
[[barn.phase]]
name = "late winter"
from = 2025-02-20T08:00:10Z
[barn.phase.bands.air_temperature]
good_high = 6.3
watch_high = 7.1
`)
	if filepath.Dir(path) != dir {
		t.Fatal("the plan must lie beside its file")
	}
	return k, opened(t, k, path)
}

// A sheet that was only looked at changes nothing, whatever unit it was shown in.
func TestASheetLookedAtChangesNothing(t *testing.T) {
	_, b := settledBook(t)
	for _, unit := range []TemperatureUnit{Celsius, Fahrenheit} {
		u := Units{Temperature: unit}
		for _, s := range []Sheet{b.StageSheet(0, u), b.WallSheet(0), b.HeatSheet(0), b.HiveSheet(0), b.LimitSheet(u), b.PhaseSheet(0, u), b.ExcludedSheet(0), b.RoomSheet(0, u)} {
			e, problem := s.Edit(append(s.Rows, s.NewRow())[:len(s.Rows)+1-map[bool]int{true: 1}[s.Fixed]])
			if problem != "" {
				t.Fatalf("%s: %s", s.Title, problem)
			}
			after, err := e.Apply(b.doc)
			if err != nil || !reflect.DeepEqual(after, b.doc) {
				t.Errorf("%s in °%s: %+v, want %+v (%v)", s.Title, unit, after.Barns[0], b.doc.Barns[0], err)
			}
		}
	}
}

// What is typed is taken in the unit shown: 40 °F is 4.44 °C, 1000 cfm 0.4719 m³/s (the foot is 0.3048 m).
func TestASheetIsReadInTheUnitsShown(t *testing.T) {
	_, b := settledBook(t)
	s := b.StageSheet(0, Units{Temperature: Fahrenheit})
	e, problem := s.Edit([]SheetRow{s.Rows[0], {Cells: []string{"big", byThermostat, "40", "39 °F", "1000", "", "2024-12-24"}}})
	if problem != "" {
		t.Fatal(problem)
	}
	st := e.(winter.SetSettings).Stages[1]
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"on", *st.OnC, 40.0/9*5 - 160.0/9}, {"off", *st.OffC, 35.0 / 9}, {"air", *st.FlowLow, 1000 * 0.3048 * 0.3048 * 0.3048 / 60}} {
		if math.Abs(c.got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	// Midnight in Winnipeg in winter is 06:00 UTC.
	if want := utcMS(t, "2024-12-24 06:00"); *st.From != want || st.Watts != nil {
		t.Errorf("from %d, want %d; %v W", *st.From, want, st.Watts)
	}
}

// What can't be taken is said in one sentence, and nothing is changed.
func TestASheetSaysWhatIsWrong(t *testing.T) {
	_, b := settledBook(t)
	small := b.StageSheet(0, Units{}).Rows[0]
	stage := func(cells ...string) string {
		_, problem := b.StageSheet(0, Units{}).Edit([]SheetRow{small, {Cells: cells}})
		return plain(problem)
	}
	for got, want := range map[string]string{
		stage("", byThermostat, "4", "3", "", "", ""):                        "the stage has no name",
		stage("big", byThermostat, "4", "", "", "", ""):                      "big needs both: when it goes on and when it goes off",
		stage("big", byThermostat, "4", "4,5", "", "", ""):                   "big goes off at 4,5 and on at 4; off must be the lower",
		stage("big", byThermostat, "warm", "4", "", "", ""):                  "on at: “warm” is no number",
		stage("big", byThermostat, "400", "4", "", "", ""):                   "on at: 400 is not between −60 and 80 °C",
		stage("small", alwaysOn, "4", "", "", "", ""):                        "small is always on: it has no temperature to switch at",
		stage("air", byTimer, "60", "30", "", "", ""):                        "a timer's seconds on must be fewer",
		stage("big", byThermostat, "4", "3", "3500-2500", "", ""):            "the first must be the lower",
		stage("big", byThermostat, "4", "3", "", "", "in December"):          "is no day; write it like 2024-11-12",
		sheetProblem(b.WallSheet(0), "north", "wall", "191", "none"):         "Surface north: 191 is not between 0 and 100 %",
		sheetProblem(b.WallSheet(0), "", "wall", "91", "none"):               "Surface 1 has no name",
		sheetProblem(b.HiveSheet(0), "2024-11-12", "2.5", ""):                "Row 1 needs a day and a whole number of hives",
		sheetProblem(b.LimitSheet(Units{}), "T", "6", "2", "", "", "", ""):   "of each two limits the first must be the lower",
		sheetProblem(b.LimitSheet(Units{}), "T", "2", "10", "", "", "", "8"): "good must lie inside watch",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
	twice := SheetRow{Cells: []string{"big", byThermostat, "4", "3", "", "", ""}}
	if _, problem := b.StageSheet(0, Units{}).Edit([]SheetRow{small, twice, twice}); !strings.Contains(problem, "Stage big is there twice") {
		t.Errorf("%q", problem)
	}
}

func sheetProblem(s Sheet, cells ...string) string {
	rows := []SheetRow{{Cells: cells}}
	if s.Fixed {
		rows = append(rows, SheetRow{Cells: append([]string{"RH"}, make([]string, 6)...)})
	}
	_, problem := s.Edit(rows)
	return plain(problem)
}

// A list that is emptied is empty afterwards, and undo brings it back.
func TestAnEmptiedListIsEmpty(t *testing.T) {
	k, b := settledBook(t)
	e, problem := b.WallSheet(0).Edit(nil)
	if problem != "" {
		t.Fatal(problem)
	}
	after := edited(t, k, b, e)
	if n := len(after.doc.Barns[0].Surfaces); n != 0 || after.Undo != "walls and ceilings" {
		t.Fatalf("%d surfaces left; undo offers %q", n, after.Undo)
	}
	back, err := k.UndoEdit(after)
	if err != nil || len(back.doc.Barns[0].Surfaces) != 1 {
		t.Errorf("%d surfaces after undo (%v)", len(back.doc.Barns[0].Surfaces), err)
	}
}

// The share of the room's warmth that reaches a wall is set down as a number, as a range or not at all, in percent.
func TestAWallsWarmthIsANumberOrARange(t *testing.T) {
	_, b := settledBook(t)
	for cell, want := range map[string]string{"88–95": "88–95", "57-74 %": "57–74", "91": "91", "": ""} {
		s := b.WallSheet(0)
		e, problem := s.Edit([]SheetRow{{Cells: []string{"north", "wall", cell, "none"}, Was: 1}})
		if problem != "" {
			t.Fatal(problem)
		}
		doc, err := e.Apply(b.doc)
		if err != nil {
			t.Fatal(err)
		}
		b.doc = doc
		if got := b.WallSheet(0).Rows[0].Cells[2]; got != want {
			t.Errorf("%q is shown as %q, want %q", cell, got, want)
		}
	}
	if problem := sheetProblem(b.WallSheet(0), "north", "wall", "95-88", "none"); !strings.Contains(problem, "of 95-88 the first must be the lower") {
		t.Errorf("%q", problem)
	}
}

// The usual limits are said in the unit of the fields: 2, 6 and 8 °C are 35.6, 42.8 and 46.4 °F, a degree is 1.8 °F.
func TestTheUsualLimitsAreSaidInTheUnitShown(t *testing.T) {
	_, b := settledBook(t)
	for unit, want := range map[TemperatureUnit]string{
		Celsius:    "good is 2–6 °C and 40–75 %; to watch 1 °C above the top stage and above 85 %; to act above 8 °C and 85 %",
		Fahrenheit: "good is 36–43 °F and 40–75 %; to watch 1.8 °F above the top stage and above 85 %; to act above 46 °F and 85 %",
	} {
		if got := plain(b.LimitSheet(Units{Temperature: unit}).Help); !strings.Contains(got, want) {
			t.Errorf("%q, want %q in it", got, want)
		}
	}
}

// A stage that heat is wired with keeps its name: a plan with heat of no stage is refused when it is read.
func TestAStageInUseKeepsItsName(t *testing.T) {
	_, b := settledBook(t)
	s := b.StageSheet(0, Units{})
	if _, problem := s.Edit(s.Rows[1:]); problem != "Heat floor is wired with small; change that first, under Heat." {
		t.Errorf("%q", problem)
	}
	if _, problem := s.Edit(s.Rows[:1]); problem != "" {
		t.Errorf("stages nobody refers to can't be taken away: %q", problem)
	}
}
