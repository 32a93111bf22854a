package desk

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

func TestALoggerFindsItsBarnByItsName(t *testing.T) {
	b := Book{doc: winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "Alder barn", Loggers: []winter.Logger{{Name: "7", Place: "ceiling"}}}, {Name: "Rowan shed"}}}}
	for _, c := range []struct {
		logger      winter.Logger
		list        int
		place, said string
	}{
		{winter.Logger{Name: "1", Files: []string{"rowan north wall.csv"}}, 1, "wall", "“rowan”"},
		{winter.Logger{Name: "shed mid"}, 1, "room", "“shed” is in its name and in no other barn's; its name says “mid”"},
		{winter.Logger{Name: "9", Files: []string{"the 9.csv"}}, TrayList, "", "Nothing in its name"},
		{winter.Logger{Name: "Indoor", Channel: "Indoor", Files: []string{"outdoor and alder.csv"}}, 0, "room", "“alder”"},
		{winter.Logger{Name: "Outdoor", Channel: "Outdoor", Files: []string{"alder.csv"}}, OutdoorList, "outdoor", "Its name says “outdoor”"},
		{winter.Logger{Name: "7"}, 0, "ceiling", "of that name"},
		{winter.Logger{Name: "alder outdoor"}, OutdoorList, "outdoor", "“outdoor”"},
		{winter.Logger{Name: "2", Files: []string{"alderney.csv"}}, TrayList, "", "Nothing in its name"},
	} {
		list, place, why := b.belongs(c.logger)
		if list != c.list || place != c.place || !strings.Contains(why, c.said) {
			t.Errorf("%s: %d, %q, %q", c.logger.Name, list, place, why)
		}
	}
	b.doc.Barns = b.doc.Barns[1:]
	if list, place, why := b.belongs(winter.Logger{Name: "shed mid"}); list != 0 || place != "room" || !strings.Contains(why, "one barn only") || !strings.Contains(why, "“mid”") {
		t.Errorf("%d, %q, %q", list, place, why)
	}
}

// A word counts as a whole: “mid” is not in humidity, nor a wall in a wallet. A file of several loggers that is
// called after the weather does not put them all outdoors.
func TestAPlaceByItsName(t *testing.T) {
	for _, c := range []struct {
		logger    winter.Logger
		place, by string
	}{
		{winter.Logger{Name: "humidity 3"}, "room", "nothing"},
		{winter.Logger{Name: "shed_mid"}, "room", "“mid”"},
		{winter.Logger{Name: "Wallet"}, "room", "nothing"},
		{winter.Logger{Name: "NorthWall2"}, "wall", "its name says “wall”"},
		{winter.Logger{Name: "3", Files: []string{"logs/ceiling.csv"}}, "ceiling", "its file's name says “ceiling”"},
		{winter.Logger{Name: "Außenfühler"}, "outdoor", "“außen”"},
		{winter.Logger{Name: "2", Files: []string{"weather.csv"}}, "outdoor", "file's name says “weather”"},
		{winter.Logger{Name: "2", Channel: "2", Files: []string{"weather.csv"}}, "room", "nothing"},
		{winter.Logger{Name: "weather", Channel: "weather", Files: []string{"weather.csv"}}, "room", "nothing"},
		{winter.Logger{Name: "Outside", Channel: "Outside", Files: []string{"north wall.csv"}}, "outdoor", "its name says “outside”"},
		{winter.Logger{Name: "east", Channel: "east", Files: []string{"all.zip!ceiling.csv"}}, "ceiling", "file's name"},
	} {
		if place, by := placeByName(c.logger); place != c.place || !strings.Contains(by, c.by) {
			t.Errorf("%s of %v: %s, %s", c.logger.Name, c.logger.Files, place, by)
		}
	}
}

func TestSettingALoggerDown(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, dir, "mid.csv", 4), loggerFile(t, dir, "weather.csv", -4))
	station := Slot{List: OutdoorList, Index: 0}
	text := b.LoggerText(station)
	text.KMs = "40"
	e, problem := b.SetLogger(station, text)
	if problem != "" {
		t.Fatal(problem)
	}
	b = edited(t, k, b, e)
	if got := plain(pageOf(t, b, "weather.csv").Loggers[0].Hangs); got != "outdoors, for every barn, a weather station 40 km away" {
		t.Error(got)
	}
	if got := b.LoggerText(station); got != text {
		t.Errorf("%+v, want %+v", got, text)
	}
	e, problem = b.SetLogger(Slot{}, LoggerText{List: 0, Place: "don't know", Since: "2024-11-20"})
	if problem != "" {
		t.Fatal(problem)
	}
	b = edited(t, k, b, e)
	if l := pageOf(t, b, "mid.csv").Loggers; len(l) != 2 || l[0].Hangs != "in Barn, room" || l[1].Hangs != "in Barn, don't know, from 20 November 2024 (kept out of the verdict)" {
		t.Errorf("%+v", l)
	}
	for _, wrong := range []LoggerText{{Place: "room", Since: "soon"}, {List: OutdoorList, KMs: "far"}, {List: 9, Place: "room"}} {
		if _, problem := b.SetLogger(Slot{}, wrong); !strings.HasSuffix(problem, ".") {
			t.Errorf("%+v was taken: %q", wrong, problem)
		}
	}
}

func TestLeavingAStretchOutInTheBook(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "mid.csv", 4))
	e, problem := b.LeaveOut(Slot{}, "2024-11-14", "2024-11-16", LeaveOutWords[0], "lay on the desk")
	if problem != "" {
		t.Fatal(problem)
	}
	b = edited(t, k, b, e)
	left := pageOf(t, b, "mid.csv").Loggers[0].Left
	if len(left) != 1 || left[0].Text != "Left out 14–15 November: lay on the desk." || b.Undo != "leaving a stretch out" {
		t.Fatalf("%+v", left)
	}
	if b = edited(t, k, b, left[0].Undo); len(pageOf(t, b, "mid.csv").Loggers[0].Left) != 0 {
		t.Error("it is still left out")
	}
	for _, days := range [][2]string{{"", "2024-11-16"}, {"2024-11-14", "soon"}, {"2024-11-16", "2024-11-14"}} {
		if _, problem := b.LeaveOut(Slot{}, days[0], days[1], "", ""); !strings.HasSuffix(problem, ".") {
			t.Errorf("%v was taken", days)
		}
	}
}

func TestWhereALoggerHangsInWords(t *testing.T) {
	km := 40.0
	b := Book{doc: winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "Alder"}}}}
	for _, c := range []struct {
		logger winter.Logger
		list   int
		want   string
	}{
		{winter.Logger{Place: "wall"}, 0, "in Alder, wall"},
		{winter.Logger{RecordsStage: "Stage 2"}, 0, "in Alder, records Stage 2"},
		{winter.Logger{Place: "outdoor", StationKM: &km}, OutdoorList, "outdoors, for every barn, a weather station 40 km away"},
		{winter.Logger{}, TrayList, "hangs nowhere yet"},
	} {
		if got := plain(b.hangsAt(c.logger, Slot{List: c.list})); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// A logger that stood at one value for four days, after and before changing every hour, is called stuck; what
// is left out by one press counts again by one press.
func TestOddReadingsAreProposed(t *testing.T) {
	var text strings.Builder
	text.WriteString("time,temperature (°C)\n")
	at := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC)
	for h := range 40 * 24 {
		v := 4 + float64(h*h%17)/10
		if h >= 480 && h < 576 {
			v = 4.4
		}
		fmt.Fprintf(&text, "%s,%.2f\n", at.Add(time.Duration(h)*time.Hour).Format("2006-01-02 15:04"), v)
	}
	k := keeper(t)
	b := added(t, k, Book{}, written(t, t.TempDir(), "still.csv", text.String()))
	if b.Closely() || b.Files().Files[0].Mark != MarkGood {
		t.Error("nobody looked yet")
	}
	look := func(b Book) Book {
		b, err := k.LookClosely(context.Background(), b)
		if err != nil || !b.Closely() {
			t.Fatal(err)
		}
		return b
	}
	b = look(b)
	doubts := pageOf(t, b, "still.csv").Loggers[0].Doubts
	if len(doubts) != 1 || !strings.Contains(plain(doubts[0].Text), "stood at 4.4 °C for 9") || doubts[0].Take == nil || b.Files().Files[0].Mark != MarkWatch {
		t.Fatalf("%+v, %+v", doubts, b.Files())
	}
	b = look(edited(t, k, b, doubts[0].Take))
	p := pageOf(t, b, "still.csv").Loggers[0]
	// Hour 480 is 20 days after 13 November, 3 December; the four days end with the 6th.
	if len(p.Doubts) != 0 || len(p.Left) != 1 || !strings.HasPrefix(p.Left[0].Text, "Left out 3") || !strings.HasSuffix(p.Left[0].Text, ": it stood still.") {
		t.Fatalf("%+v", p)
	}
	b = look(edited(t, k, b, p.Left[0].Undo))
	if p = pageOf(t, b, "still.csv").Loggers[0]; len(p.Doubts) != 1 || len(p.Left) != 0 {
		t.Errorf("%+v", p)
	}
}

// Every doubt that can be left out has a short reason.
func TestEveryDoubtHasAReason(t *testing.T) {
	for code := range doubtNotes {
		alone := slices.Contains([]string{engine.DoubtDriftOfTwo, engine.DoubtClock, engine.DoubtClockHours, engine.DoubtIce, engine.DoubtFormula, engine.DoubtSwap, engine.DoubtOff}, code)
		if (reasonWord(code) == code) != alone {
			t.Errorf("%s: %q", code, reasonWord(code))
		}
	}
}

// Loggers called 1 and 2 are given a barn by how they went up and down, and the reason is said.
func TestALoggerFindsItsBarnByItsReadings(t *testing.T) {
	dir := t.TempDir()
	swing := func(name string, mean, hours float64) string {
		text := "time,temp (C)\n"
		for i := range 480 {
			text += fmt.Sprintf("%s,%.2f\n", time.Date(2024, time.November, 13, i, 0, 0, 0, time.UTC).Format("2006-01-02 15:04"), mean+math.Sin(2*math.Pi*float64(i)/hours))
		}
		return written(t, dir, name, text)
	}
	k := keeper(t)
	b := added(t, k, Book{}, swing("alder mid.csv", 4, 31), swing("outdoor.csv", -4, 24))
	b = edited(t, k, b, winter.TakeOver{From: winter.Winter{Barns: []winter.Barn{{Name: "Rowan"}}}})
	b = added(t, k, b, swing("1.csv", 2, 31), swing("2.csv", -3, 24), swing("3.csv", 4, 47))
	for name, want := range map[string][2]string{
		"1.csv": {"Hang it in Barn, room", "Hour by hour its temperature goes up and down with that of alder mid there, and far less with any elsewhere."},
		"2.csv": {"Hang it outdoors, for every barn", "Hour by hour its temperature goes up and down with that of outdoor there, and far less with any elsewhere."},
		"3.csv": {"", "Nothing in its name or its readings says which barn it hung in."},
	} {
		if l := pageOf(t, b, name).Loggers[0]; l.Suggestion != want[0] || l.Why != want[1] {
			t.Errorf("%s: %q, %q", name, l.Suggestion, l.Why)
		}
	}
}
