package desk

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"thawbook/app/winter"
)

// stationFile is ten days of hourly weather as public records print them, at −4 °C.
func stationFile(t *testing.T, dir, name string) string {
	t.Helper()
	text := "Date/Time,Temp (°C),Rel Hum (%),Wind Spd (km/h),Stn Press (kPa)\n"
	for h := range 240 {
		text += fmt.Sprintf("%s,%.1f,80,%d,101.1\n", time.Date(2024, time.November, 13, h, 0, 0, 0, time.UTC).Format("2006-01-02 15:04"), -4+float64(h%3)/10, h%20)
	}
	return written(t, dir, name, text)
}

// A public record is hung outdoors by what it holds; how far off it stands is asked once, and its error is the
// wider one of a station: 1.5 K for 0.5 K.
func TestAWeatherStationIsAskedForItsDistance(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, dir, "shed mid.csv", 4), stationFile(t, dir, "hourly 1840 11.csv"))
	at := Slot{List: OutdoorList}
	p := pageOf(t, b, "hourly 1840 11.csv")
	if len(p.Loggers) != 1 || p.Loggers[0].Entry.At != at || !strings.HasPrefix(p.Loggers[0].Distance, "How far from your barns") || p.Mark != MarkWatch {
		t.Fatalf("%+v", p)
	}
	if e := b.Shell().Outdoor[0]; e.Note != "how far away?" || p.Loggers[0].Why != "Assumed: its file holds wind and air pressure too, as a weather station's does." {
		t.Errorf("%+v, %q", e, p.Loggers[0].Why)
	}
	for _, wrong := range []string{"", "far", "-3", "4000"} {
		if e, problem := b.SetDistance(at, wrong); e != nil || !strings.HasSuffix(problem, ".") {
			t.Errorf("%q was taken: %q", wrong, problem)
		}
	}
	e, problem := b.SetDistance(at, "40")
	if problem != "" {
		t.Fatal(problem)
	}
	far := edited(t, k, b, e)
	if l := far.Result.Inputs[0].Loggers[1]; l.TempErrK != 1.5 || plain(far.Shell().Outdoor[0].Place) != "outdoor, station 40 km" || pageOf(t, far, p.Name).Loggers[0].Distance != "" {
		t.Errorf("%+v, %+v", l, far.Shell().Outdoor)
	}
	b, err := k.UndoEdit(far)
	if err != nil {
		t.Fatal(err)
	}
	mine := edited(t, k, judged(t, k, b), b.OwnLogger(at))
	p = pageOf(t, mine, p.Name)
	if p.Loggers[0].Distance != "" || len(p.Answers) != 1 || p.Answers[0].Text != "Are these a weather station's readings? You said: Your own logger's." {
		t.Errorf("%+v", p)
	}
	if len(pageOf(t, edited(t, k, mine, p.Answers[0].Undo), p.Name).Loggers[0].Distance) == 0 {
		t.Error("taken back, it is not asked again")
	}
}

// Pressure alone, as some loggers in a barn read it, makes no station.
func TestALoggerWithABarometerIsNoStation(t *testing.T) {
	text := "time,Temp (°C),RH (%),Pressure (hPa)\n"
	for h := range 24 {
		text += fmt.Sprintf("2026-01-13 %02d:00,4,60,1011\n", h)
	}
	b := added(t, keeper(t), Book{}, written(t, t.TempDir(), "a.csv", text))
	if len(b.doc.Outdoor) != 0 || len(b.doc.Barns[0].Loggers) != 1 {
		t.Errorf("%+v", b.doc)
	}
}

// A swap changes places and nothing else, also from a day on; one undo restores them.
func TestTwoLoggersChangePlaces(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, dir, "shed mid.csv", 4), loggerFile(t, dir, "north wall.csv", 2))
	mid, wall := Slot{Index: 0}, Slot{Index: 1}
	e, problem := b.Swap(mid, wall, "")
	if problem != "" {
		t.Fatal(problem)
	}
	swapped := edited(t, k, b, e)
	if got := swapped.Titled(swapped.Loggers()[0]) + "; " + swapped.Titled(swapped.Loggers()[1]); got != "north wall, in Barn, room; shed mid, in Barn, wall" || swapped.Undo != "swapping two loggers" {
		t.Errorf("%s, undo %q", got, swapped.Undo)
	}
	// The room is where the colder logger hung now: its mean is 2 °C.
	if v := swapped.Result.Inputs[0].Loggers[0]; v.Place != "room" || v.TempC.Readings.Val[0] != 2 {
		t.Errorf("%+v", v)
	}
	back, err := k.UndoEdit(swapped)
	if err != nil || back.Titled(back.Loggers()[0]) != "shed mid, in Barn, room" {
		t.Errorf("%v, %+v", err, back.Loggers())
	}
	if e, problem = b.Swap(mid, wall, "2024-11-16"); problem != "" {
		t.Fatal(problem)
	}
	later := edited(t, k, judged(t, k, back), e)
	var all []string
	for _, l := range later.Loggers() {
		all = append(all, later.Titled(l))
	}
	if got := strings.Join(all, "; "); got != "shed mid, in Barn, room; north wall, in Barn, wall; shed mid, in Barn, wall, from 16 November 2024; north wall, in Barn, room, from 16 November 2024" {
		t.Error(got)
	}
	for _, c := range []struct {
		other Slot
		since string
	}{{wall, "soon"}, {Slot{Index: 9}, ""}, {mid, ""}} {
		if e, problem := b.Swap(mid, c.other, c.since); e != nil || !strings.HasSuffix(problem, ".") {
			t.Errorf("%+v was taken: %q", c, problem)
		}
	}
}

// A logger of which nobody knows where it hung changes no answer: they are those of the barn without it.
func TestDontKnowIsKeptOutOfTheVerdict(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	alone := added(t, k, Book{}, loggerFile(t, dir, "a.csv", 4))
	k = keeper(t)
	b := added(t, k, Book{}, loggerFile(t, dir, "a.csv", 4), loggerFile(t, dir, "b.csv", 14))
	if b.Result.Barns[0].Verdict.Held.State == alone.Result.Barns[0].Verdict.Held.State {
		t.Fatal("the warm logger says nothing in the room either")
	}
	b = edited(t, k, b, winter.Hang{From: Slot{Index: 1}, Name: "b", List: 0, Place: "don't know"})
	got, want := b.Result.Barns[0].Verdict, alone.Result.Barns[0].Verdict
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("got %+v, want %+v", got, want)
	}
}

// A console that reads indoors and outdoors in one row, with wind and rain, is no public station; a record of two
// stations, row by row, is.
func TestStationsAreToldFromConsoles(t *testing.T) {
	dir := t.TempDir()
	console, rows := "time,Indoor Temp (°C),Outdoor Temp (°C),Wind (m/s),Rain (mm)\n", "station,time,temp (°C),wind_speed,pressure\n"
	for h := range 24 {
		at := fmt.Sprintf("2026-01-13 %02d:00", h)
		console += at + ",4,-4,3,0\n"
		rows += "ABC," + at + ",-4,3,1012\nDEF," + at + ",-5,4,1013\n"
	}
	b := added(t, keeper(t), Book{}, written(t, dir, "console.csv", console))
	if len(b.doc.Outdoor) != 1 || b.doc.Outdoor[0].Channel != "Outdoor Temp (°C)" || len(b.doc.Barns[0].Loggers) != 1 || pageOf(t, b, "console.csv").Loggers[0].Distance != "" {
		t.Errorf("%+v", b.doc)
	}
	b = added(t, keeper(t), Book{}, written(t, dir, "rows.csv", rows))
	if len(b.doc.Outdoor) != 2 || len(b.doc.Barns[0].Loggers) != 0 {
		t.Errorf("%+v", b.doc)
	}
}

// One kind of a station's readings is enough where the file's name is a station's; without the name it is a logger's with an odd
// column, and with the name alone a logger's of that name.
func TestAStationsNameAndItsWindTellIt(t *testing.T) {
	for _, c := range []struct {
		name, wind string
		outdoors   bool
	}{{"station valley.csv", "WSPD", true}, {"valley.csv", "WSPD", false}, {"station valley.csv", "Battery V", false}} {
		text := "Time,TA,RHUM," + c.wind + "\n"
		for h := range 240 {
			text += fmt.Sprintf("%s,%.1f,80,%d\n", time.Date(2024, time.November, 13, h, 0, 0, 0, time.UTC).Format("2006-01-02 15:04"), -4+float64(h%3)/10, h%20)
		}
		dir := t.TempDir()
		b := added(t, keeper(t), Book{}, loggerFile(t, dir, "shed mid.csv", 4), written(t, dir, c.name, text))
		if got := len(b.Shell().Outdoor) == 1; got != c.outdoors {
			t.Errorf("%s with %s hangs outdoors: %v, want %v", c.name, c.wind, got, c.outdoors)
		}
	}
}
