package desk

import (
	"archive/zip"
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"
)

// aDay is a day of hourly readings whose date reads both ways; the first is 38.4 °F, which is 32/9 = 3.6 °C.
func aDay(t *testing.T, dir, name, date, head string) string {
	t.Helper()
	var b strings.Builder
	b.WriteString(head)
	for h := range 24 {
		fmt.Fprintf(&b, "%s %02d:00,%.1f,%d\n", date, h, 38.4+float64(h%4)/10, 70+h%3)
	}
	return written(t, dir, name, b.String())
}

const inFahrenheit, withoutUnit = "when,temp (F),RH (%)\n", "when,temp,RH (%)\n"

func pageOf(t *testing.T, b Book, name string) FilePage {
	t.Helper()
	p, ok := b.File(name, Units{})
	if !ok {
		t.Fatalf("no file %q; there are %+v", name, b.Files())
	}
	return p
}

// A file that is read without a question is quiet: what it is in one sentence, and no mark to look at.
func TestAFileThatIsUnderstood(t *testing.T) {
	b := added(t, keeper(t), Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	v, p := b.Files(), pageOf(t, b, "cheap.csv")
	if v.Sentence != "1 file was read; no question is open." || v.Files[0].Mark != MarkGood || b.Shell().Files != (FilesRow{"1, no question is open", MarkNone}) {
		t.Errorf("%+v, %+v", v, b.Shell().Files)
	}
	// 240 rows from 13 November 0:00, an hour apart: the last is 239 h later, 22 November 23:00.
	if want := "Temperature and humidity every hour from 13 November 2024 00:00 to 22 November 2024 23:00, 240 rows."; plain(p.Sentence) != want {
		t.Errorf("got  %s\nwant %s", p.Sentence, want)
	}
	if p.Clock != "Dates are written year first. The file names no time zone. It is the winter's, UTC, unless the logger has one of its own." {
		t.Error(p.Clock)
	}
	if len(p.Notes) != 0 || len(p.Questions) != 0 || len(p.Loggers) != 1 || p.Loggers[0].Hangs != "in Barn, room" || !strings.HasPrefix(p.Loggers[0].Why, "Assumed: ") {
		t.Errorf("%+v", p)
	}
	want := []HeadColumn{{1, "time"}, {2, "temperature"}, {3, "humidity"}}
	if !reflect.DeepEqual(p.Head.Columns, want) || len(p.Head.Rows) != 6 || p.Head.Rows[0].Data || !p.Head.Rows[1].Data ||
		!reflect.DeepEqual(p.Head.Rows[1], HeadRow{2, []string{"2024-11-13 00:00:00", "4.00", "60.0"}, true}) {
		t.Errorf("%+v", p.Head)
	}
}

// The two answers are shown with what the first row would then be: 3 April or 4 March.
func TestAFileThatAsksAndIsAnswered(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, aDay(t, dir, "a.csv", "03/04/2024", inFahrenheit), aDay(t, dir, "b.csv", "05/06/2024", inFahrenheit), loggerFile(t, dir, "c.csv", 4))
	v := b.Files()
	if v.Sentence != "3 files: a.csv and b.csv wait for an answer." || v.Files[0].Name != "a.csv" || v.Files[0].Mark != MarkAct || v.Files[2].Name != "c.csv" {
		t.Errorf("%+v", v)
	}
	s := b.Shell()
	if s.Files != (FilesRow{"2 of 3 wait for an answer", MarkAct}) || s.Barns[0].Loggers[0].Note != "waits for an answer" || s.Barns[0].Loggers[0].Mark != MarkAct {
		t.Errorf("%+v, %+v", s.Files, s.Barns[0].Loggers)
	}
	p := pageOf(t, b, "a.csv")
	if len(p.Questions) != 1 || strings.Contains(p.Questions[0].Text, "dmy") || !strings.Contains(p.Sentence, "hangs on the answer") {
		t.Fatalf("%+v", p)
	}
	q := p.Questions[0]
	got := map[string]string{}
	for _, o := range q.Options {
		got[o.Label] = plain(o.Preview)
	}
	want := map[string]string{"Day first": "first reading 3 April 2024 00:00, 3.6 °C; last 3 April 2024 23:00", "Month first": "first reading 4 March 2024 00:00, 3.6 °C; last 4 March 2024 23:00"}
	if !reflect.DeepEqual(got, want) || !reflect.DeepEqual(q.Alike, []string{"b.csv"}) {
		t.Errorf("%v, alike %v", got, q.Alike)
	}

	one := edited(t, k, b, Answered("a.csv", q, "dmy", true))
	if s := one.Files().Sentence; s != "3 files: b.csv waits for an answer." || one.Undo != "an answer" {
		t.Errorf("%q, undo %q", s, one.Undo)
	}
	if other := pageOf(t, one, "b.csv"); other.Questions[0].Before != "For a.csv, which is written the same way, you said: Day first." {
		t.Error(other.Questions[0].Before)
	}
	p = pageOf(t, one, "a.csv")
	if !strings.HasPrefix(plain(p.Sentence), "Temperature and humidity every hour from 3 April 2024 00:00 to 3 April 2024 23:00, 24 rows.") || len(p.Answers) != 1 || !strings.HasSuffix(p.Answers[0].Text, "You said: Day first.") {
		t.Errorf("%+v", p)
	}
	again := edited(t, k, one, p.Answers[0].Undo)
	if again.Files().Sentence != v.Sentence {
		t.Error(again.Files().Sentence)
	}
	both := edited(t, k, again, Answered("a.csv", q, "mdy", false))
	if s := both.Files().Sentence; s != "3 files were read; no question is open." {
		t.Error(s)
	}
	back, err := k.UndoEdit(both)
	if err != nil || judged(t, k, back).Files().Sentence != v.Sentence {
		t.Error("an undo of both answers does not open both questions again")
	}
}

// 38.4 to 38.7 as they stand, or in °F, which is (38.4 − 32)·5/9 = 3.6 and (38.7 − 32)·5/9 = 3.7 °C.
func TestDegreesAreAskedWithWhatTheyWouldBe(t *testing.T) {
	dir := t.TempDir()
	b := added(t, keeper(t), Book{}, aDay(t, dir, "a.csv", "2024-04-03", withoutUnit))
	p := pageOf(t, b, "a.csv")
	if len(p.Questions) != 1 || p.Questions[0].ID != "temperature_unit" {
		t.Fatalf("%+v", p.Questions)
	}
	for i, want := range []string{"°C: first reading 38.4 °C; all 38.4 °C to 38.7 °C", "°F: first reading 3.6 °C; all 3.6 °C to 3.7 °C"} {
		o := p.Questions[0].Options[i]
		if got := plain(o.Label + ": " + o.Preview); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// A log without a year is asked for the years in which the others begin and the ones before.
func TestAYearIsAskedFor(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	text := "when,temp (C)\n"
	for h := range 24 {
		text += fmt.Sprintf("14/11 %02d:00,%.1f\n", h, 4+float64(h%4)/10)
	}
	b := added(t, k, Book{}, loggerFile(t, dir, "a.csv", 4), written(t, dir, "b.csv", text))
	p := pageOf(t, b, "b.csv")
	if len(p.Questions) != 1 || len(p.Questions[0].Options) != 2 {
		t.Fatalf("%+v", p.Questions)
	}
	if o := p.Questions[0].Options[0]; o.Label != "2024" || plain(o.Preview) != "first reading 14 November 2024 00:00, 4.0 °C; last 14 November 2024 23:00" {
		t.Errorf("%+v", o)
	}
	b = edited(t, k, b, Answered("b.csv", p.Questions[0], "2024", true))
	if got := b.Files().Sentence; got != "2 files were read; no question is open." {
		t.Error(got)
	}
}

// Two temperatures and two humidities whose names tell nothing: each answer shows what would hang together.
func TestAPairingIsShown(t *testing.T) {
	four, sixty, eighty := 4.0, 0.6, 0.8
	p := preview{id: "pairing", quantity: "air_temperature", pairs: []pair{{"mid", &four, &sixty}, {"door", &four, nil}, {"roof", nil, &eighty}, {"none", nil, nil}}}
	if got := plain(p.words(Units{})); got != "mid 4.0 °C with 60 %; door 4.0 °C alone; roof 80 % alone" {
		t.Error(got)
	}
	if got := withoutCodes(Question("pairing")); strings.ContainsAny(got, "(_") || !strings.HasPrefix(got, "Which humidity") {
		t.Error(got)
	}
}

// Loggers of an open winter that hang nowhere are shown with their files too.
func TestFilesOfTheTrayAreShown(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, dir, "first.csv", 4))
	b = added(t, k, b, aDay(t, dir, "later.csv", "03/04/2024", inFahrenheit))
	if got := b.Files().Sentence; got != "2 files: later.csv waits for an answer." {
		t.Error(got)
	}
	p := pageOf(t, b, "later.csv")
	if len(p.Questions[0].Options) < 2 || p.Questions[0].Options[0].Preview == "" || len(p.Head.Rows) == 0 {
		t.Errorf("%+v", p)
	}
	l := p.Loggers[0]
	if l.Hangs != "hangs nowhere yet" || l.Suggestion != "Hang it in Barn, room" {
		t.Fatalf("%+v", l)
	}
	b = edited(t, k, b, l.Suggested)
	if p = pageOf(t, b, "later.csv"); p.Loggers[0].Hangs != "in Barn, room" || len(b.Files().Files) != 2 {
		t.Errorf("%+v", p.Loggers)
	}
}

// Of 240 rows three have no readable time: more than one in a thousand, so it is worth a look and leads to
// the first of them. A line below the table is a blemish and stands last.
func TestNotesAreCountedAndLeadToTheirLine(t *testing.T) {
	var text strings.Builder
	text.WriteString("time,temperature (°C)\n")
	at := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC)
	for h := range 240 {
		when := at.Add(time.Duration(h) * time.Hour).Format("2006-01-02 15:04")
		if h == 50 || h == 60 || h == 70 {
			when = "soon"
		}
		fmt.Fprintf(&text, "%s,%.1f\n", when, 4+float64(h%5)/10)
	}
	text.WriteString("end of data\n")
	b := added(t, keeper(t), Book{}, written(t, t.TempDir(), "holes.csv", text.String()))
	p := pageOf(t, b, "holes.csv")
	if len(p.Notes) < 2 || p.Notes[0].Line != 52 || p.Notes[0].Mark != MarkWatch || !strings.HasPrefix(p.Notes[0].Text, "3 rows") || p.Notes[len(p.Notes)-1].Mark != MarkNone {
		t.Errorf("%+v", p.Notes)
	}
	if p.Mark != MarkWatch || b.Files().Sentence != "1 file: it has notes worth a look." {
		t.Errorf("%v, %s", p.Mark, b.Files().Sentence)
	}
}

// A file the plan names and that can't be read says why and shows how it begins.
func TestAFileThatIsRefused(t *testing.T) {
	dir := t.TempDir()
	loggerFile(t, dir, "a.csv", 4)
	written(t, dir, "b.csv", "this is a letter,and no table\nwith best wishes,from nobody\n")
	b := opened(t, keeper(t), written(t, dir, "plan.toml", strings.Replace(planText, `"a.csv"`, `"a.csv", "b.csv"`, 1)))
	p := pageOf(t, b, "b.csv")
	if p.Mark != MarkAct || p.State != "could not be read" || !strings.Contains(p.Sentence, "no column that can be read as date") || b.Shell().Files.Mark != MarkAct {
		t.Errorf("%+v", p)
	}
	if len(p.Head.Rows) != 2 || p.Head.Rows[0].Cells[0] != "this is a letter,and no table" {
		t.Errorf("%+v", p.Head)
	}
	if _, ok := b.File("nothing.csv", Units{}); ok {
		t.Error("there is no such file")
	}
}

func TestCellsAsTheyAreCut(t *testing.T) {
	for _, c := range []struct {
		text, delimiter string
		want            []string
	}{
		{`a,b,,d`, ",", []string{"a", "b", "", "d"}},
		{`"12,5";"x;y"; 3`, ";", []string{"12,5", "x;y", "3"}},
		{"2024-11-13  00:00   4.0", "blanks", []string{"2024-11-13", "00:00", "4.0"}},
		{"", ",", []string{""}},
	} {
		if got := cellsOf(c.text, c.delimiter); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q: %q, want %q", c.text, got, c.want)
		}
	}
	// Of 14 columns the recognised 1, 12 and 14 stay, and the first others as far as there is room.
	if got := shownColumns(map[int]string{1: "time", 12: "temperature", 14: "humidity"}, 14, func(int) int { return 3 }); !reflect.DeepEqual(got, []int{1, 2, 3, 4, 5, 6, 7, 8, 12, 14}) {
		t.Error(got)
	}
}

// A blank line between the title and the table is left away.
func TestABlankLineIsNoRow(t *testing.T) {
	path := loggerFile(t, t.TempDir(), "a.csv", 4)
	text, _ := os.ReadFile(path)
	b := added(t, keeper(t), Book{}, written(t, filepath.Dir(path), "titled.csv", "Read out in April\n\n"+string(text)))
	if h := pageOf(t, b, "titled.csv").Head; len(h.Rows) != 6 || h.Rows[0].Line != 3 || h.Rows[1].Line != 4 {
		t.Errorf("%+v", h.Rows)
	}
}

// A member of an archive is a file like another: it is shown, asks and is answered.
func TestAFileInAnArchive(t *testing.T) {
	dir := t.TempDir()
	text, _ := os.ReadFile(aDay(t, dir, "a.csv", "03/04/2024", inFahrenheit))
	var packed bytes.Buffer
	w := zip.NewWriter(&packed)
	for _, name := range []string{"a.csv", "b.csv"} {
		member, _ := w.Create(name)
		fmt.Fprintf(member, "%s03/04/2024 23:30,%s,70\n", text, map[string]string{"a.csv": "38.1", "b.csv": "38.2"}[name])
	}
	w.Close()
	k := keeper(t)
	b := added(t, k, Book{}, written(t, dir, "both.zip", packed.String()))
	p := pageOf(t, b, "both.zip!b.csv")
	if len(p.Questions) != 1 || len(p.Questions[0].Alike) != 1 || len(p.Head.Rows) == 0 || len(p.Loggers) != 1 {
		t.Fatalf("%+v", p)
	}
	b = edited(t, k, b, Answered(p.Name, p.Questions[0], "dmy", false))
	if got := b.Files().Sentence; got != "2 files were read; no question is open." {
		t.Error(got)
	}
}

func TestIntervalsInWords(t *testing.T) {
	for ms, want := range map[int64]string{10_000: "10 s", 60_000: "minute", 900_000: "15 min", 3_600_000: "hour", 7_200_000: "2 h", 86_400_000: "day", 500: "0.5 s", 90_000: "90 s"} {
		if got := plain(everyWords(ms)); got != want {
			t.Errorf("%d: %q, want %q", ms, got, want)
		}
	}
}

// 1807 s and 3590 s are within a fiftieth of a round minute, 330 s is not.
func TestDriftingIntervalsAreSaidRound(t *testing.T) {
	for ms, want := range map[int64]string{900_000: "every 15 min", 1_807_000: "about every 30 min", 3_590_000: "about every hour", 330_000: "every 330 s", 90_000: "every 90 s"} {
		if got := plain(everyPhrase(ms)); got != want {
			t.Errorf("%d: %q, want %q", ms, got, want)
		}
	}
}
