package ui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// dayFile is a day of hourly readings whose date reads day first or month first.
func dayFile(t *testing.T, dir, name, date string) string {
	t.Helper()
	text := "when,temp (C),RH (%)\n"
	for h := range 24 {
		text += fmt.Sprintf("%s %02d:00,%.1f,60\n", date, h, 4+float64(h%4)/10)
	}
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// tapRow presses a row of the rail or of the list of files, the last of that title.
func (s *shown) tapRow(t *testing.T, title string) {
	t.Helper()
	var last *row
	find(s.win.Content(), func(r *row) bool {
		if r.title == title {
			last = r
		}
		return false
	})
	if last == nil {
		t.Fatalf("no row %q", title)
	}
	test.Tap(last)
}

// Two files ask; one answer, ticked for both, leaves nothing open, and one undo opens both again.
func TestAFileIsAnsweredInPlace(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	s.take(t, dayFile(t, dir, "a.csv", "03/04/2024"), dayFile(t, dir, "b.csv", "05/06/2024"), loggerFile(t, dir, "c.csv", 4))
	s.lacks(t, "Files · 2 of 3 wait for an answer")
	s.tapRow(t, "Files")
	s.lacks(t, "a.csv and b.csv wait for an answer", "day first or month first", "first reading 3 April 2024 00:00, 4.0 °C", "first reading 4 March 2024 00:00, 4.0 °C", "03/04/2024 01:00")
	test.Tap(s.button(t, "Day first"))
	s.lacks(t, "Day first: for the other files too?", "b.csv is written the same way and asks the same.")
	s.press(t, "For all 2")
	s.settled(t)
	s.lacks(t, "3 files were read; no question is open.", "from 3 April 2024 00:00 to 3 April 2024 23:00", "You said: Day first.", "Files · 3, no question is open")
	s.choose(t, "Undo")
	s.settled(t)
	s.lacks(t, "a.csv and b.csv wait for an answer")
}

// A log of times of day waits for its first day; what is typed is shown with where the last row then lies and is taken by Enter.
func TestADayIsTyped(t *testing.T) {
	s := show(t)
	path := filepath.Join(t.TempDir(), "a.csv")
	if err := os.WriteFile(path, []byte("time,temp (C)\n22:00,4.0\n06:00,4.1\n14:00,4.2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.take(t, path)
	s.tapRow(t, "Files")
	s.lacks(t, "On which day was the first row recorded?")
	var entry *keyEntry
	find(s.win.Content(), func(e *keyEntry) bool { entry = e; return true })
	test.Type(entry, "2024-12-3")
	s.lacks(t, "is no day; write it like")
	test.Type(entry, "1")
	s.lacks(t, "first reading 31 December 2024 22:00, 4.0 °C; last 1 January 2025 14:00")
	entry.OnSubmitted("")
	s.settled(t)
	s.lacks(t, "1 file was read; no question is open.", "You said: 31 December 2024.")
}

// Two humidities are told the other way round, column by column; a change that can't be is refused in place.
func TestColumnsAreGroupedOtherwise(t *testing.T) {
	s := show(t)
	text := "time,Temp A,RH A,Temp B,RH B\n"
	for h := range 24 {
		text += fmt.Sprintf("2026-01-13 %02d:00,4.5,60,5.5,70\n", h)
	}
	path := filepath.Join(t.TempDir(), "both.csv")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	s.take(t, path)
	s.choose(t, "Files")
	s.lacks(t, "A: Temp A (column 2) 4.5 °C, RH A (column 3) 60 %")
	test.Tap(s.button(t, "Group them otherwise…"))
	var choices []*keyChoice
	find(s.win.Canvas().Overlays().Top(), func(c *keyChoice) bool { choices = append(choices, c); return false })
	if len(choices) != 4 {
		t.Fatalf("%d columns", len(choices))
	}
	choices[1].SetText("B")
	s.press(t, "Group them so")
	s.lacks(t, "B would have the humidity of two columns, 3 and 5.")
	choices[3].SetText("A")
	s.press(t, "Group them so")
	s.settled(t)
	s.lacks(t, "A: Temp A (column 2) 4.5 °C, RH B (column 5) 70 %", "Which columns belong together? You said: as they stand below.", "humidity, B")
	s.choose(t, "Undo")
	s.settled(t)
	s.lacks(t, "A: Temp A (column 2) 4.5 °C, RH A (column 3) 60 %")
}

// What can't be read stays on the list with its reason until the keeper takes it off.
func TestARefusedFileStaysOnTheList(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	empty := filepath.Join(dir, "empty.csv")
	if err := os.WriteFile(empty, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	s.take(t, loggerFile(t, dir, "a.csv", 4), empty)
	s.lacks(t, "Files · 1 of 2 could not be read")
	s.choose(t, "Files")
	s.lacks(t, "empty.csv is empty; read the logger out again.")
	test.Tap(s.button(t, "Take it off the list"))
	s.settled(t)
	s.lacks(t, "1 file was read; no question is open.")
}

func TestAnotherFileIsShownAndKept(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	s.take(t, loggerFile(t, dir, "a.csv", 4), loggerFile(t, dir, "b.csv", 9))
	s.choose(t, "Files")
	s.tapRow(t, "b.csv")
	s.lacks(t, "9.00", "time", "temperature", "humidity", "b: in Barn, room")
	s.setTemperature(desk.Fahrenheit)
	s.lacks(t, "b: in Barn, room")
	s.tapRow(t, "Barn")
	if s.page != 0 || s.tabs.chosen() != 0 {
		t.Errorf("page %d after a barn was pressed", s.page)
	}
	s.choose(t, "Files")
	s.choose(t, "Timeline")
	if s.page != 1 || s.tabs.chosen() != 1 {
		t.Errorf("page %d after the Timeline was chosen", s.page)
	}
}

// A note leads to its line, with the lines round it.
func TestANoteLeadsToItsLine(t *testing.T) {
	s := show(t)
	path := loggerFile(t, t.TempDir(), "a.csv", 4)
	text, _ := os.ReadFile(path)
	lines := strings.Split(string(text), "\n")
	lines[99] = "no time at all,4.00,60.0"
	if err := os.WriteFile(path, []byte(strings.Join(lines, "\n")), 0o600); err != nil {
		t.Fatal(err)
	}
	s.take(t, path)
	s.choose(t, "Files")
	s.lacks(t, "1 row (line 100) left out")
	test.Tap(s.button(t, "Show"))
	s.settled(t)
	s.lacks(t, "Line 100 of a.csv", "no time at all,4.00,60.0", lines[98], lines[100], "95", "105")
}

func TestALoggerIsSetDownInTheFilesScreen(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "a.csv", 4))
	s.choose(t, "Files")
	test.Tap(s.button(t, "Change…"))
	place, _ := find(s.win.Canvas().Overlays().Top(), func(k *keySelect) bool { return k.Selected == "room" })
	place.SetSelected("don't know")
	since := s.entries()[0]
	since.SetText("soon")
	s.press(t, "Hang it there")
	s.lacks(t, "is no day; write it like")
	since.SetText("2024-11-20")
	s.press(t, "Hang it there")
	s.settled(t)
	s.lacks(t, "a: in Barn, room", "a: in Barn, don't know, from 20 November 2024 (kept out of the verdict)")

	test.Tap(s.button(t, "Leave a stretch out…"))
	for i, text := range []string{"2024-11-14", "2024-11-16", "lay on the desk"} {
		s.entries()[i].SetText(text)
	}
	s.press(t, "Leave it out")
	s.settled(t)
	s.lacks(t, "Left out 14–15 November: lay on the desk.")
	test.Tap(s.button(t, "Count it again"))
	s.settled(t)
	if strings.Contains(s.said(), "Left out") {
		t.Error("it is still left out")
	}
}

// railRow is the row of a logger in the rail.
func (s *shown) railRow(t *testing.T, title string) *row {
	t.Helper()
	r, ok := find(s.rail.object, func(r *row) bool { return r.title == title })
	if !ok {
		t.Fatalf("no row %q in the rail", title)
	}
	return r
}

// dragOnto drags one logger of the rail onto another and lets go.
func (s *shown) dragOnto(t *testing.T, one, other string) {
	t.Helper()
	from := s.railRow(t, one)
	target := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.railRow(t, other)).Add(fyne.NewPos(20, 10))
	from.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: target}})
	s.lacks(t, "Let go: "+one+" and "+other+" change places for the whole record.")
	from.DragEnd()
	s.settled(t)
}

// One drag swaps two loggers, and one undo restores them; a hand that trembles presses.
func TestADragSwapsTwoLoggers(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	s.take(t, loggerFile(t, dir, "shed mid.csv", 4), loggerFile(t, dir, "north wall.csv", 2), loggerFile(t, dir, "outdoor.csv", -3))
	s.lacks(t, "shed mid · room, assumed", "north wall · wall, assumed")
	s.dragOnto(t, "shed mid", "north wall")
	s.lacks(t, "shed mid · wall", "north wall · room")
	s.dragOnto(t, "north wall", "outdoor")
	s.lacks(t, "outdoor · room", "north wall · outdoor")
	s.choose(t, "Undo")
	s.settled(t)
	s.choose(t, "Undo")
	s.settled(t)
	s.lacks(t, "shed mid · room, assumed", "north wall · wall, assumed")

	r := s.railRow(t, "shed mid")
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(r).Add(fyne.NewPos(9, 9))
	r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: at}})
	r.DragEnd()
	s.lacks(t, "Where did shed mid hang?")
	s.press(t, "Close")
	r.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{AbsolutePosition: fyne.NewPos(900, 400)}})
	r.DragEnd()
	s.lacks(t, "shed mid · room, assumed")
}

// From the menu two loggers change places from a day on.
func TestASwapFromADayOn(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	s.take(t, loggerFile(t, dir, "shed mid.csv", 4), loggerFile(t, dir, "north wall.csv", 2))
	s.choose(t, "Swap two loggers…")
	s.press(t, "Swap them")
	s.lacks(t, "Choose the logger it changes places with.")
	other, _ := find(s.win.Canvas().Overlays().Top(), func(k *keySelect) bool { return k.Selected == "" })
	other.SetSelected("north wall, in Barn, wall")
	s.entries()[0].SetText("2024-11-16")
	s.press(t, "Swap them")
	s.settled(t)
	s.choose(t, "Files")
	s.tapRow(t, "shed mid.csv")
	s.lacks(t, "shed mid: in Barn, room", "shed mid: in Barn, wall, from 16 November 2024")
}

// A logger whose file waits leads to the question.
func TestAWaitingLoggerLeadsToItsQuestion(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	s.take(t, loggerFile(t, dir, "a.csv", 4), dayFile(t, dir, "b.csv", "05/06/2024"), dayFile(t, dir, "c.csv", "03/04/2024"))
	test.Tap(s.railRow(t, "c"))
	s.lacks(t, "first reading 3 April 2024 00:00")
	if s.page != filesPageNumber || s.files.chosen != "c.csv" {
		t.Errorf("page %d, %q", s.page, s.files.chosen)
	}
}

// How far off a weather station stands is asked in place.
func TestADistanceIsAskedInPlace(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	text := "time,Temp (°C),RH (%),Wind speed (km/h),Precip (mm)\n"
	for h := range 24 {
		text += fmt.Sprintf("2024-11-13 %02d:00,-3,80,%d,0\n", h, h)
	}
	path := filepath.Join(dir, "hourly.csv")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	s.take(t, loggerFile(t, dir, "a.csv", 4), path)
	s.lacks(t, "hourly · outdoor, how far away?")
	s.choose(t, "Files")
	s.tapRow(t, "hourly.csv")
	s.lacks(t, "Assumed: its file holds wind and rain or snow too, as a weather station's does.", "How far from your barns does the station stand")
	km, _ := find(s.win.Content(), func(e *widget.Entry) bool { return e.PlaceHolder == "such as 40" })
	km.SetText("far")
	test.Tap(s.button(t, "Set"))
	s.lacks(t, "“far” is no distance")
	km.SetText("40")
	test.Tap(s.button(t, "Set"))
	s.settled(t)
	s.lacks(t, "hourly · outdoor, station 40 km", "a weather station 40 km away")
}

// Room for 300 and columns that want 40, 100 and 400: the first two keep theirs, the last gets what is left.
func TestTheWidestColumnsGiveWay(t *testing.T) {
	for _, c := range []struct {
		w          []float32
		room, want float32
	}{{[]float32{40, 400, 100}, 300, 160}, {[]float32{40, 50}, 300, 50}, {[]float32{200, 200}, 300, 150}} {
		if got := fairest(c.w, c.room); got != c.want {
			t.Errorf("%v in %v: %v, want %v", c.w, c.room, got, c.want)
		}
	}
}

// The columns that are not used share what the used ones leave: of 60 two get 30 each.
func TestUsedColumnsKeepTheirRoom(t *testing.T) {
	table := narrowTable{columns: 4, firm: map[int]bool{0: true, 1: true}}
	w := []float32{20, 120, 100, 100}
	table.fit(w, true, 300)
	table.fit(w, false, 60)
	if fmt.Sprint(w) != "[20 120 30 30]" {
		t.Error(w)
	}
}

// A line that rises from corner to corner, open in the middle third: ink at the bottom left and the top right
// only, and none in the middle.
func TestStrokesOfASmallPlot(t *testing.T) {
	show(t) // the colours are the window's
	var all []desk.PlotColumn
	for i := range 30 {
		v := float64(i) / 29
		all = append(all, desk.PlotColumn{Low: v, High: v, Known: i < 10 || i >= 20})
	}
	img := strokes(all, 300, 44)
	inked := func(x0, x1, y0, y1 int) bool {
		for x := x0; x < x1; x++ {
			for y := y0; y < y1; y++ {
				if _, _, _, a := img.At(x, y).RGBA(); a != 0 {
					return true
				}
			}
		}
		return false
	}
	if !inked(0, 10, 36, 43) || !inked(290, 300, 0, 6) || inked(0, 90, 0, 20) || inked(105, 195, 0, 42) {
		t.Error("the strokes don't stand where the values are")
	}
}

// A file of a thousand columns has a handful of rows made at once; the others come at a press.
func TestColumnsAreGroupedByHandfuls(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	columns := make([]desk.FileColumn, 1000)
	for i := range columns {
		columns[i] = desk.FileColumn{Number: i + 1, Header: "T", What: "temperature", First: "4 °C", Logger: "north"}
	}
	s.columnsDialog(desk.FilePage{Name: "cheap.csv", Columns: desk.FileColumns{Columns: columns}})
	made := 0
	find(s.win.Canvas().Overlays().Top(), func(*keyChoice) bool { made++; return false })
	if made != handful {
		t.Errorf("%d rows are made, want %d", made, handful)
	}
	s.lacks(t, "Show 25 more of the 975 left")
}

// Looking for odd readings leaves First look as it stands where nothing is found, and has it tell where something is.
func TestLookingCloselyDoesNotDisturb(t *testing.T) {
	s := show(t)
	s.Take([]string{loggerFile(t, t.TempDir(), "calm.csv", 4)})
	s.main.until(t, "First look is shown", func() bool { return s.tabs != nil })
	before := s.centre.Objects[0]
	s.main.until(t, "somebody looked", func() bool { return s.book.Closely() })
	if s.centre.Objects[0] != before {
		t.Error("the page was made anew though nothing was found")
	}
	odd, dir := show(t), t.TempDir()
	odd.take(t, loggerFile(t, dir, "north.csv", 4), loggerFile(t, dir, "south.csv", 4.4), loggerFile(t, dir, "mid.csv", 3.7), loggerFile(t, dir, "east.csv", 22))
	odd.main.until(t, "somebody looked", func() bool { return odd.book.Closely() })
	odd.settled(t)
	odd.lacks(t, "can hardly be right")
}
