package desk

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"thawbook/app/winter"
)

// loggerFile writes an hourly file of temperature and humidity and returns its path.
func loggerFile(t *testing.T, dir, name string, tempC float64) string {
	t.Helper()
	var b strings.Builder
	b.WriteString("time,temperature (°C),relative humidity (%)\n")
	at := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC)
	for h := range 240 {
		fmt.Fprintf(&b, "%s,%.2f,%.1f\n", at.Add(time.Duration(h)*time.Hour).Format("2006-01-02 15:04:05"), tempC+float64(h%5)/10, 60+float64(h%7)/10)
	}
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func written(t *testing.T, dir, name, text string) string {
	t.Helper()
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// keeper is one whose drafts lie in a folder of the test.
func keeper(t *testing.T) *Keeper {
	t.Helper()
	k := &Keeper{Drafts: filepath.Join(t.TempDir(), "drafts")}
	t.Cleanup(func() { k.Close() })
	return k
}

// judged is a book with its review.
func judged(t *testing.T, k *Keeper, b Book) Book {
	t.Helper()
	b, err := k.Review(context.Background(), b, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func added(t *testing.T, k *Keeper, b Book, paths ...string) Book {
	t.Helper()
	next, err := k.Add(context.Background(), b, paths, nil)
	if err != nil {
		t.Fatal(err)
	}
	return judged(t, k, next)
}

func edited(t *testing.T, k *Keeper, b Book, e winter.Edit) Book {
	t.Helper()
	next, err := k.Edit(b, e)
	if err != nil {
		t.Fatal(err)
	}
	return judged(t, k, next)
}

func opened(t *testing.T, k *Keeper, path string) Book {
	t.Helper()
	b, err := k.Open(context.Background(), path, nil)
	if err != nil {
		t.Fatal(err)
	}
	return judged(t, k, b)
}

func TestOneLoggerGivesAFullAnswer(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	if !b.Loaded() || b.Barns() != 1 || len(b.Faults) != 0 {
		t.Fatalf("loaded %v, %d barns, faults %v", b.Loaded(), b.Barns(), b.Faults)
	}
	s := b.Shell()
	if len(s.Barns) != 1 || len(s.Barns[0].Loggers) != 1 || s.Barns[0].Loggers[0].Place != "room" || s.Title != "Thawbook – New winter" {
		t.Fatalf("%+v", s)
	}
	if s.Barns[0].Loggers[0].Note != "assumed" {
		t.Errorf("nobody said that it hung in the room, yet: %+v", s.Barns[0].Loggers[0])
	}
	v, ok := b.Barn(0, Units{})
	if !ok || !strings.HasPrefix(plain(v.FirstLook.Headline), "It held: 100 of 100 hours") {
		t.Errorf("%q", v.FirstLook.Headline)
	}
	if _, ok := b.Barn(1, Units{}); ok {
		t.Error("a barn that is none was shown")
	}
}

func TestSeveralFilesHangByTheirNames(t *testing.T) {
	dir := t.TempDir()
	loggerFile(t, dir, "room.csv", 4)
	loggerFile(t, dir, "outdoor.csv", -5)
	loggerFile(t, dir, "north wall.csv", 2)
	k := keeper(t)
	s := added(t, k, Book{}, dir).Shell()
	places := map[string]string{}
	for _, l := range append(s.Barns[0].Loggers, s.Outdoor...) {
		places[l.Name] = l.Place
	}
	for name, want := range map[string]string{"room": "room", "outdoor": "outdoor", "north wall": "wall"} {
		if places[name] != want {
			t.Errorf("%s hangs at %q, want %q (all: %v)", name, places[name], want, places)
		}
	}
}

func TestFilesForAnOpenWinterWaitInTheTray(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	first := added(t, k, Book{}, loggerFile(t, dir, "first.csv", 4))
	b := added(t, k, first, loggerFile(t, dir, "second.csv", 7))
	if s := b.Shell(); len(s.Tray) != 1 || len(s.Barns[0].Loggers) != 1 || s.Tray[0].Place != "hangs nowhere yet" {
		t.Fatalf("%+v", s)
	}
	hung := edited(t, k, b, winter.Hang{From: Slot{List: TrayList}, Name: "second", List: 0, Place: "room"})
	if s := hung.Shell(); len(s.Tray) != 0 || len(s.Barns[0].Loggers) != 2 {
		t.Errorf("%+v", s)
	}
	if len(b.Shell().Tray) != 1 || len(b.Shell().Barns[0].Loggers) != 1 {
		t.Error("hanging changed the book it was made from")
	}
	v, _ := hung.Barn(0, Units{})
	if !strings.Contains(plain(v.FirstLook.Headline), "2 and 6 °C") || v.FirstLook.Headline == "" {
		t.Errorf("%q", v.FirstLook.Headline)
	}
	out := edited(t, k, hung, winter.Hang{From: Slot{List: 0, Index: 1}, Name: "second", List: OutdoorList, Place: "outdoor"})
	if len(out.Shell().Outdoor) != 1 {
		t.Errorf("%+v", out.Shell())
	}
	back := edited(t, k, out, winter.Hang{From: Slot{List: OutdoorList}, Name: "second", List: TrayList})
	if len(back.Shell().Tray) != 1 || len(back.Shell().Outdoor) != 0 {
		t.Errorf("%+v", back.Shell())
	}
	same, err := k.Edit(back, winter.Hang{From: Slot{List: 7}, List: 0, Place: "room"})
	if err == nil || len(same.Shell().Barns[0].Loggers) != 1 {
		t.Error("an empty slot was hung")
	}
}

func TestAPlaceOnceSaidIsNotAssumed(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	b = edited(t, k, b, winter.Hang{From: Slot{}, Name: "cheap", List: 0, Place: "room"})
	if b.Shell().Barns[0].Loggers[0].Note != "" {
		t.Errorf("%+v", b.Shell().Barns[0].Loggers[0])
	}
}

// The file runs for ten days from 13 November 2024, hourly; a bare day is its first instant (README, "A plan").
func TestSettingWhenTheBeesWentIn(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	if got := b.BeesInOut(0); got != (BeesTime{}) {
		t.Errorf("nothing was set, yet: %v", got)
	}
	edit, ok := b.SetBeesInOut(0, BeesTime{In: "14 November 2024", Out: " 2024-11-20  09:30", Hives: " 340 "})
	if !ok {
		t.Fatal("two good days are refused")
	}
	b = edited(t, k, b, edit)
	if got := b.BeesInOut(0); got != (BeesTime{In: "2024-11-14 00:00", Out: "2024-11-20 09:30", Hives: "340"}) {
		t.Error(got)
	}
	v, _ := b.Barn(0, Units{})
	if want := "340 hives, in 14 November 2024, out 20 November 2024: 6 days, all known."; v.Header.Line != want {
		t.Errorf("%q, want %q", v.Header.Line, want)
	}
	if heads := b.doc.Barns[0].Heads; len(heads) != 2 || heads[0].Change != 340 || heads[1].Change != -340 || heads[1].At != *b.doc.Barns[0].BeesOut {
		t.Error(heads)
	}
	edit, _ = b.SetBeesInOut(0, BeesTime{})
	b = edited(t, k, b, edit)
	if v, _ := b.Barn(0, Units{}); !strings.HasPrefix(v.Header.Line, "Record from") {
		t.Errorf("%q", v.Header.Line)
	}
	if b.BeesInOut(9) != (BeesTime{}) || len(b.doc.Barns[0].Heads) != 0 {
		t.Error("a barn that is none has dates, or hives stayed where their number was taken back")
	}
}

// A ledger of several moves is no one number: the dialog leaves it as it is.
func TestALedgerOutlivesOtherDays(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	ledger := []winter.HeadCount{{At: 1731499200000, Change: 300}, {At: 1731585600000, Change: 40}}
	b = edited(t, k, b, winter.SetSettings{Barn: 0, Of: "heads", Heads: ledger})
	was := b.BeesInOut(0)
	if !was.Ledger || was.Hives != "" {
		t.Fatal(was)
	}
	was.In = "2024-11-15"
	edit, _ := b.SetBeesInOut(0, was)
	if b = edited(t, k, b, edit); !slices.Equal(b.doc.Barns[0].Heads, ledger) || b.BeesInOut(0).In != "2024-11-15 00:00" {
		t.Error(b.doc.Barns[0])
	}
}

func TestWrongDaysAreSaid(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	for _, c := range []struct{ in, out, hives, want string }{
		{"", "", "", ""}, {"2024-11-14", "", "", ""}, {"2024-11-14", "2025-04-04 07:00", "", ""}, {"2024-11-14", "", "340", ""},
		{"11/12/2024", "", "", "Bees in: \"11/12/2024\" is no day"}, {"", "April", "", "Bees out: \"April\" is no day"},
		{"2024-02-30", "", "", "Bees in: \"2024-02-30\" is no day"}, {"2025-04-04", "2024-11-14", "", "can't come out before"},
		{"2025-04-04", "2025-04-04", "", "can't come out before"}, {"2024-11-14", "", "many", "Hives: “many” is no number."},
		{"2024-11-14", "", "0", "Hives: 0 is not between 1 and"}, {"2024-11-14", "", "3.5", "no whole number"}, {"", "", "340", "the day they went in"},
	} {
		typed := BeesTime{In: c.in, Out: c.out, Hives: c.hives}
		got := b.CheckBeesInOut(typed)
		if c.want == "" && got != "" || !strings.Contains(got, c.want) {
			t.Errorf("%v: %q, want %q", typed, got, c.want)
		}
		if _, ok := b.SetBeesInOut(0, typed); ok != (c.want == "") {
			t.Errorf("%v: taken %v", typed, ok)
		}
	}
}

func TestASecondReadOutJoinsItsLogger(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "middle.csv", 4))
	b = added(t, k, b, loggerFile(t, t.TempDir(), "middle.csv", 4.5))
	b = edited(t, k, b, winter.Hang{From: Slot{List: TrayList}, Name: "middle", List: 0, Place: "room"})
	if s := b.Shell(); len(s.Barns[0].Loggers) != 1 || len(b.Result.Files) != 2 {
		t.Errorf("%d loggers of %d files", len(s.Barns[0].Loggers), len(b.Result.Files))
	}
}

func TestWhatCouldNotBeAddedIsSaid(t *testing.T) {
	dir := t.TempDir()
	good := loggerFile(t, dir, "good.csv", 4)
	k := keeper(t)
	b := added(t, k, Book{}, good, good)
	if len(b.Shell().Barns[0].Loggers) != 1 || len(b.Faults) != 1 || !strings.Contains(b.Faults[0].Text, "good.csv is already here") {
		t.Errorf("the same file twice: %+v", b.Faults)
	}
	for name, path := range map[string]string{
		"empty":   written(t, dir, "empty.csv", ""),
		"absent":  filepath.Join(dir, "absent.csv"),
		"letters": written(t, dir, "letters.csv", "Dear all,\nthe bees are well.\n"),
	} {
		next := added(t, k, b, path)
		if len(next.Faults) != 1 || !strings.Contains(next.Faults[0].Text, filepath.Base(path)) {
			t.Errorf("%s: %+v", name, next.Faults)
			continue
		}
		fit(t, name, next.Faults[0].Text)
		if len(next.Shell().Barns) != 1 {
			t.Errorf("%s: the open winter was lost", name)
		}
	}
	if none := added(t, keeper(t), Book{}, filepath.Join(dir, "absent.csv")); none.Loaded() || len(none.Faults) != 1 {
		t.Errorf("nothing was read, yet: loaded %v, %v", none.Loaded(), none.Faults)
	}
}

const planText = `
[winter]
name = "Two rooms"
zone = "UTC"
[[barn]]
name = "Upper"
bees_in = 2024-11-14
bees_out = 2024-11-20
[[barn.logger]]
name = "a"
files = ["a.csv"]
place = "room"
[[barn.note]]
at = 2024-11-15
kind = "seen"
text = "All quiet."
[[barn]]
name = "Lower"
[[barn.logger]]
name = "gone"
files = ["gone.csv"]
place = "room"
`

func TestOpeningAPlan(t *testing.T) {
	dir := t.TempDir()
	loggerFile(t, dir, "a.csv", 4)
	k := keeper(t)
	b := opened(t, k, written(t, dir, "plan.toml", planText))
	s := b.Shell()
	if s.Title != "Thawbook – Two rooms" || len(s.Barns) != 2 || s.Barns[1].Loggers[0].Note != "nothing read" {
		t.Errorf("%+v", s)
	}
	if len(b.Faults) != 1 || !strings.Contains(b.Faults[0].Text, "gone.csv") || b.Faults[0].Next == "" {
		t.Errorf("%+v", b.Faults)
	}
	v, _ := b.Barn(0, Units{})
	if v.Header.Noted != "You noted 15 November: All quiet." || !strings.HasPrefix(v.Header.Line, "In 14 November 2024") {
		t.Errorf("%+v", v.Header)
	}
	if notes := b.Notes(1); len(notes) == 0 {
		t.Error("a barn without readings has no note on its data")
	}
	if got := b.BarnNames(); len(got) != 2 || got[1] != "Lower" {
		t.Errorf("%v", got)
	}
}

func TestARefusedPlanSaysWhere(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	for name, text := range map[string]string{
		"unknown key": strings.Replace(planText, "zone", "zoen", 1),
		"not a plan":  "time,temperature\n1,2\n",
	} {
		path := written(t, dir, "bad.toml", text)
		_, err := k.Open(context.Background(), path, nil)
		if err == nil {
			t.Errorf("%s was opened", name)
			continue
		}
		if f := OpenFault(path, err); !strings.Contains(f.Text, "bad.toml") || f.Next == "" {
			t.Errorf("%s: %+v", name, f)
		}
	}
}

func TestCancelledWorkIsNoFault(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	k := keeper(t)
	dir := t.TempDir()
	loggerFile(t, dir, "a.csv", 4)
	if _, err := k.Open(ctx, written(t, dir, "plan.toml", planText), nil); !errors.Is(err, context.Canceled) {
		t.Errorf("open: %v", err)
	}
	if _, err := k.Add(ctx, Book{}, []string{dir}, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("add: %v", err)
	}
}

func TestPlacesOfferedAreTheWintersWords(t *testing.T) {
	all := strings.Join(Places(), ",")
	if !strings.Contains(all, "room") || strings.Contains(all, "outdoor") {
		t.Errorf("%s: outdoors has a list of its own", all)
	}
}

func TestAnEmptyBook(t *testing.T) {
	var b Book
	if s := b.Shell(); s.Title != "Thawbook" || len(s.Barns) != 0 || b.Loaded() || b.Barns() != 0 {
		t.Errorf("%+v", s)
	}
}
