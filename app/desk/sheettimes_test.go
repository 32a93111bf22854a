package desk

import (
	"strings"
	"testing"

	"thawbook/app/winter"
)

// filledIn is a book after a sheet with its cells as given.
func filledIn(t *testing.T, b Book, s Sheet, rows ...[]string) Book {
	t.Helper()
	var filled []SheetRow
	for i, cells := range rows {
		was := i + 1
		if i < len(s.Rows) {
			was = s.Rows[i].Was
		}
		filled = append(filled, SheetRow{cells, was})
	}
	e, problem := s.Edit(filled)
	if problem != "" {
		t.Fatal(problem)
	}
	doc, err := e.Apply(b.doc)
	if err != nil {
		t.Fatal(err)
	}
	b.doc = doc
	return b
}

// rowsOf are a sheet's cells, one line a row.
func rowsOf(s Sheet) string {
	var lines []string
	for _, r := range s.Rows {
		lines = append(lines, strings.Join(r.Cells, "|"))
	}
	return strings.Join(lines, "\n")
}

// What is filled in stands there when the sheet is opened again; 8 °C is 46.4 °F.
func TestPhasesAreSetDown(t *testing.T) {
	_, b := settledBook(t)
	filled := [][]string{{"Filling", "", "", "", "", "", ""}, {"Deep winter", "2024-11-20", "1", "5", "", "", "70"}, {"Late winter", "2025-02-15 06:00", "", "7", "9", "35", ""}, {"Emptying", "", "", "", "", "", ""}}
	b = filledIn(t, b, b.PhaseSheet(0, Units{}), filled...)
	if got, want := rowsOf(b.PhaseSheet(0, Units{})), "Filling||||||\nDeep winter|2024-11-20 00:00|1|5|||70\nLate winter|2025-02-15 06:00||7|9|35|\nEmptying||||||"; got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	if got := strings.Split(rowsOf(b.PhaseSheet(0, Units{Temperature: Fahrenheit})), "\n")[2]; got != "Late winter|2025-02-15 06:00||44.6|48.2|35|" {
		t.Error(got)
	}
	watch := 8.0
	b.doc.Barns[0].Phases[1].Bands.TempC.WatchHigh = &watch
	kept := filledIn(t, b, b.PhaseSheet(0, Units{}), filled...).doc.Barns[0].Phases
	if len(kept) != 2 || kept[1].Bands.TempC.WatchHigh == nil || *kept[1].Bands.TempC.WatchHigh != 8 {
		t.Errorf("a limit that is not shown is lost: %+v", kept)
	}
	for want, row := range map[string][]string{
		"good must lie inside watch": {"Late winter", "", "", "7", "6", "", ""}, "is no number": {"Late winter", "", "warm", "", "", "", ""},
		"is no day": {"Late winter", "March", "", "", "", "", ""}, "late winter must begin after deep winter": {"Late winter", "2024-11-01", "", "", "", "", ""},
	} {
		bad := []SheetRow{{filled[0], 1}, {filled[1], 2}, {row, 3}, {filled[3], 4}}
		if _, problem := b.PhaseSheet(0, Units{}).Edit(bad); !strings.Contains(strings.ToLower(problem), want) {
			t.Errorf("%q, want %q", problem, want)
		}
	}
}

func TestTimesThatAreNotJudgedAreSetDown(t *testing.T) {
	_, b := settledBook(t)
	b = filledIn(t, b, b.ExcludedSheet(0), []string{"2024-12-01", "2024-12-01 18:00", "doors open all day"})
	if got := rowsOf(b.ExcludedSheet(0)); got != "2024-12-01 00:00|2024-12-01 18:00|doors open all day" {
		t.Error(got)
	}
	for want, row := range map[string][]string{"ends before it begins": {"2024-12-02", "2024-12-01", ""}, "needs both": {"2024-12-02", "", ""}} {
		if _, problem := b.ExcludedSheet(0).Edit([]SheetRow{{Cells: row}}); !strings.Contains(problem, want) {
			t.Errorf("%q, want %q", problem, want)
		}
	}
	if b = filledIn(t, b, b.ExcludedSheet(0)); len(b.doc.Barns[0].Exclusions) != 0 {
		t.Error("an emptied list is not empty")
	}
}

func TestARoomIsSetDown(t *testing.T) {
	_, b := settledBook(t)
	b = filledIn(t, b, b.RoomSheet(0, Units{}), []string{"1250,5", "yes", "10", "15"})
	if room := b.doc.Barns[0]; room.VolumeM3 == nil || *room.VolumeM3 != 1250.5 || !room.WaterLines || *room.AlarmC != 10 || *room.AlarmMin != 15 {
		t.Errorf("%+v", room)
	}
	if got := rowsOf(b.RoomSheet(0, Units{Temperature: Fahrenheit})); got != "1250.5|yes|50|15" { // 10 °C
		t.Error(got)
	}
	if b = filledIn(t, b, b.RoomSheet(0, Units{}), []string{"", "no", "", ""}); b.doc.Barns[0].VolumeM3 != nil || b.doc.Barns[0].WaterLines {
		t.Error("it can't be taken back")
	}
	if _, err := (winter.SetRoom{Barn: 9}).Apply(b.doc); err == nil {
		t.Error("a barn that is not there")
	}
}

// A logger that hangs on a wall can be said to measure it; one in the room is not offered.
func TestALoggerIsSaidToHangOnAWall(t *testing.T) {
	_, b := settledBook(t)
	s := b.WallSheet(0)
	if got := strings.Join(s.Columns[3].Choices, "|"); got != "none|on the wall" {
		t.Error(got)
	}
	b = filledIn(t, b, s) // none is listed
	if s = b.WallSheet(0); rowsOf(s) != "on the wall|wall||on the wall" || s.Rows[0].Was != 0 {
		t.Errorf("the list begins with what the logger hangs on: %q", rowsOf(s))
	}
	b = filledIn(t, b, s, []string{"north", "wall", "", "on the wall"})
	if w := b.doc.Barns[0].Surfaces[0]; w.Logger != "on the wall" || w.Factor != nil {
		t.Errorf("%+v", w)
	}
	if got := rowsOf(b.WallSheet(0)); got != "north|wall||on the wall" {
		t.Error(got)
	}
}
