package desk

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"thawbook/app/engine"
)

// twoPairs is a log of a day with two temperatures and two humidities in one row, all standing still.
func twoPairs(t *testing.T, dir, name, header, date string) string {
	t.Helper()
	text := "time," + header + "\n"
	for h := range 24 {
		text += fmt.Sprintf("%s %02d:00,4.5,60,5.5,70\n", date, h)
	}
	return written(t, dir, name, text)
}

const pairs, inBlocks = "Temp A,RH A,Temp B,RH B", "Temp A,RH X,RH Y,Temp B"

// The keeper pairs the humidities the other way round, renames a logger and leaves a column out; the winter's
// loggers follow, the next file written the same way is read so from the start, and one undo takes it all back.
func TestColumnsAreGroupedByHand(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, twoPairs(t, dir, "one.csv", pairs, "2026-01-13"))
	p := pageOf(t, b, "one.csv")
	want := []string{"A: Temp A (column 2) 4.5 °C, RH A (column 3) 60 %", "B: Temp B (column 4) 5.5 °C, RH B (column 5) 70 %"}
	for i, w := range want {
		if plain(p.Columns.Loggers[i]) != w {
			t.Errorf("got %q, want %q", plain(p.Columns.Loggers[i]), w)
		}
	}
	e, problem := b.Regroup(p.Name, p.Columns, []string{"north", LeftOutColumn, "B", "north"})
	if problem != "" {
		t.Fatal(problem)
	}
	next := edited(t, k, b, e)
	p = pageOf(t, next, "one.csv")
	if got := plain(strings.Join(p.Columns.Loggers, "; ")); got != "north: Temp A (column 2) 4.5 °C, RH B (column 5) 70 %; B: Temp B (column 4) 5.5 °C; Left out: RH A (column 3)" && !strings.HasPrefix(got, "north: Temp A (column 2) 4.5 °C, RH B (column 5) 70 %; B: Temp B (column 4) 5.5 °C; Left out: RH A (column 3)") {
		t.Error(got)
	}
	l := next.doc.Barns[0].Loggers
	if len(l) != 2 || l[0].Name != "north" || l[0].Channel != "north" || l[1].Name != "B" || next.Undo != "which columns belong together" {
		t.Errorf("%+v, undo %q", l, next.Undo)
	}
	if in := next.Result.Inputs[0].Loggers; in[0].RelHum.Len() != 24 || in[0].RelHum.Val[0] != 0.7 || in[1].RelHum.Len() != 0 || in[1].TempC.Val[0] != 5.5 {
		t.Errorf("%+v", in)
	}
	if len(p.Answers) != 1 || p.Answers[0].Text != "Which columns belong together? You said: as they stand below." || p.Answers[0].Undo != nil {
		t.Errorf("%+v", p.Answers)
	}
	later := added(t, k, next, twoPairs(t, dir, "two.csv", pairs, "2026-01-14"))
	q := pageOf(t, later, "two.csv")
	if q.Answers[0].Text != "Which columns belong together? As you said for one.csv: as they stand below." || q.Columns.Columns[3].Logger != "north" || later.doc.Tray[0].Name != "north" {
		t.Errorf("%+v, %+v", q.Answers, later.doc.Tray)
	}
	back, err := k.UndoEdit(later)
	if err == nil {
		back, err = k.UndoEdit(back)
	}
	if err != nil || !reflect.DeepEqual(pageOf(t, judged(t, k, back), "one.csv").Columns, pageOf(t, b, "one.csv").Columns) {
		t.Error("undone, the columns are not as they were")
	}
}

// A temperature beside a pair is a logger of its own, hung by what its column is called and not by the file's name,
// and by nothing where that says nothing. Its readings are its column's: −4.5 outdoors.
func TestAFurtherTemperatureIsALoggerOfItsOwn(t *testing.T) {
	text := "time,Temp (°C),RH (%),Outdoor temp (°C),Probe temp (°C)\n"
	for h := range 24 {
		text += fmt.Sprintf("2026-01-13 %02d:00,4.5,60,-4.5,9.5\n", h)
	}
	k := keeper(t)
	b := added(t, k, Book{}, written(t, t.TempDir(), "weather.csv", text))
	if l := b.doc.Barns[0].Loggers; len(l) != 1 || l[0].Name != "weather" || l[0].Place != "room" || len(b.doc.Outdoor) != 1 || b.doc.Outdoor[0].Name != "Outdoor temp" || len(b.doc.Tray) != 1 || b.doc.Tray[0].Name != "Probe temp" {
		t.Fatalf("%+v", b.doc)
	}
	in := b.Result.Inputs[0].Loggers
	if in[0].TempC.Readings.Val[0] != 4.5 || in[0].RelHum.Len() != 24 || in[1].TempC.Readings.Val[0] != -4.5 || in[1].RelHum.Len() != 0 {
		t.Errorf("%+v", in)
	}
	p := pageOf(t, b, "weather.csv")
	if got := plain(strings.Join(p.Columns.Loggers, "; ")); got != "weather: Temp (°C) (column 2) 4.5 °C, RH (%) (column 3) 60 %; Outdoor temp: Outdoor temp (°C) (column 4) −4.5 °C; Probe temp: Probe temp (°C) (column 5) 9.5 °C" {
		t.Error(got)
	}
	e, problem := b.Regroup(p.Name, p.Columns, []string{"shed", "shed", "yard", LeftOutColumn})
	if problem != "" {
		t.Fatal(problem)
	}
	b = edited(t, k, b, e)
	if l := b.doc.Barns[0].Loggers[0]; l.Channel != "shed" || b.doc.Outdoor[0].Channel != "yard" || b.doc.Outdoor[0].Name != "yard" || len(b.doc.Tray) != 0 {
		t.Errorf("%+v", b.doc)
	}
}

func TestGroupsThatCannotBe(t *testing.T) {
	b := added(t, keeper(t), Book{}, twoPairs(t, t.TempDir(), "one.csv", pairs, "2026-01-13"))
	p := pageOf(t, b, "one.csv")
	for _, c := range []struct {
		loggers []string
		said    string
	}{
		{[]string{"A", "A", "A", "B"}, "A would have the temperature of two columns, 2 and 4."},
		{[]string{"A", "A", " ", "B"}, "Say which logger column 4 is of"},
	} {
		if e, problem := b.Regroup(p.Name, p.Columns, c.loggers); e != nil || !strings.HasPrefix(problem, c.said) {
			t.Errorf("%v: %q", c.loggers, problem)
		}
	}
	if e, problem := b.Regroup(p.Name, p.Columns, []string{"A", "A", "B", "B"}); e != nil || problem != "" {
		t.Error("nothing changed, yet there is an edit")
	}
	simple := added(t, keeper(t), Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	if len(pageOf(t, simple, "cheap.csv").Columns.Columns) != 0 {
		t.Error("one pair can't be paired otherwise")
	}
}

// A file whose pairing is in doubt turns out to hold two loggers: none of them is lost.
func TestAnAnswerBringsTheOtherLoggerToLight(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, twoPairs(t, dir, "a.csv", inBlocks, "2026-01-13"), twoPairs(t, dir, "b.csv", inBlocks, "2026-01-14"))
	p := pageOf(t, b, "a.csv")
	if len(p.Questions) != 1 || !p.Questions[0].Pairing || len(p.Questions[0].Alike) != 1 || len(p.Columns.Columns) != 4 {
		t.Fatalf("%+v", p)
	}
	b = edited(t, k, b, Answered("a.csv", p.Questions[0], "in_order", false))
	if b.Files().Sentence != "2 files were read; no question is open." {
		t.Error(b.Files().Sentence)
	}
	all := append(b.doc.Barns[0].Loggers, b.doc.Tray...)
	got := map[string]int{}
	for _, l := range all {
		got[l.Channel+" of "+strings.Join(l.Files, ",")]++
	}
	if want := map[string]int{"A of a.csv": 1, "B of a.csv": 1, "A of b.csv": 1, "B of b.csv": 1}; !reflect.DeepEqual(got, want) {
		t.Errorf("%v", got)
	}
}

// Of 40 columns with faults of their own in each, a kind is told in one line that leads to the first of its lines.
func TestVeryManyFaultsAreFewLines(t *testing.T) {
	header, rows := "time", ""
	for c := range 40 {
		header += fmt.Sprintf(",T%d (°C)", c)
	}
	for i := range 1600 {
		cells := make([]string, 40)
		for c := range cells {
			cells[c] = "4.5"
		}
		if i < 400 {
			cells[i%40] = []string{fmt.Sprintf("x%d", i), ">39"}[i/40%2]
		}
		day := time.Date(2026, time.January, 13, 0, i, 0, 0, time.UTC).Format("2006-01-02 15:04")
		if i == 1000 {
			day = "?"
		}
		rows += day + "," + strings.Join(cells, ",") + "\n"
	}
	b := added(t, keeper(t), Book{}, written(t, t.TempDir(), "many.csv", header+"\n"+rows))
	notes := pageOf(t, b, "many.csv").Notes
	// Five rounds of 40 columns are words, five are limits: 200 cells of each kind, 5 in the first column.
	if len(notes) != 3 || notes[0].Line != 2 || notes[0].Text != "5 cells in column 2, T0 (°C), left out (lines 2 to 322): “x0” is no value. The same in 39 more columns, 195 times." || notes[0].Mark != MarkWatch ||
		!strings.Contains(notes[1].Text+notes[2].Text, "1 row (line 1002) left out") || !strings.Contains(notes[1].Text+notes[2].Text, "“>39”; the limit itself was taken. The same in 39 more columns, 195 times.") {
		t.Errorf("%+v", notes)
	}
}

// The next winter's files are read by what was said in this one.
func TestAnAnswerOutlivesTheWinter(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, aDay(t, dir, "a.csv", "03/04/2024", inFahrenheit))
	edited(t, k, b, Answered("a.csv", pageOf(t, b, "a.csv").Questions[0], "dmy", false))
	next, err := k.NextWinter()
	if err != nil {
		t.Fatal(err)
	}
	b = added(t, k, next, aDay(t, dir, "later.csv", "05/06/2025", inFahrenheit))
	p := pageOf(t, b, "later.csv")
	if len(p.Questions) != 0 || len(p.Answers) != 1 || !strings.HasSuffix(p.Answers[0].Text, "As you said for a.csv: Day first.") || !strings.Contains(p.Sentence, "from 5 June 2025") {
		t.Fatalf("%+v", p)
	}
	b = edited(t, k, b, p.Answers[0].Undo)
	if len(pageOf(t, b, "later.csv").Questions) != 1 {
		t.Error("taken back, it does not ask again")
	}
}

// What can't be taken is set down with its reason, file by file, also when nothing else was given; taken once it
// is put right, it is on the list no more.
func TestRefusedFilesAreOnTheList(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	photo := written(t, dir, "photo.csv", "\x89PNG\x00\x00\x00\x0d")
	useless := written(t, dir, "doors.csv", "time,note\n2026-01-13 10:00,8\n2026-01-13 11:00,9\n")
	b := added(t, k, Book{}, loggerFile(t, dir, "a.csv", 4), photo)
	b = added(t, k, b, useless, filepath.Join(dir, "gone.csv"))
	if b.Files().Sentence != "4 files: 3 could not be read." || b.Shell().Files.Note != "3 of 4 could not be read" {
		t.Errorf("%+v", b.Files())
	}
	for name, said := range map[string]string{"photo.csv": "no text has", "doors.csv": "could be used; export", "gone.csv": "gone.csv"} {
		p := pageOf(t, b, name)
		if p.Mark != MarkAct || !strings.Contains(p.Sentence, said) || len(p.Dismissals) == 0 {
			t.Errorf("%+v", p)
		}
		fit(t, name, p.Sentence)
	}
	text, _ := os.ReadFile(filepath.Join(dir, "a.csv"))
	b = added(t, k, b, written(t, dir, "photo.csv", strings.ReplaceAll(string(text), "4.00", "5.00")))
	both := pageOf(t, b, "gone.csv").Dismissals
	one := edited(t, k, b, both[0].Edit)
	if one.Files().Sentence != "3 files: 1 could not be read." {
		t.Error(one.Files().Sentence)
	}
	if r := one.refused([]engine.File{{Name: "doors.csv"}}); len(r) != 1 || r[0].Name != "doors.csv (not taken)" || len(one.dismissals(r[0])) != 1 {
		t.Errorf("%+v", r)
	}
	if b, err := k.UndoEdit(one); err != nil || len(both) != 2 || edited(t, k, judged(t, k, b), both[1].Edit).Files().Sentence != "2 files were read; no question is open." {
		t.Errorf("%v, %+v", err, both)
	}
}
