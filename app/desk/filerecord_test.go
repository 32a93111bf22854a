package desk

import (
	"fmt"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"thawbook/app/winter"
)

// A fan that runs for the first half of every hour, one that never does, and a solar loop that runs from 10 to 14 o'clock:
// over ten days from midnight 120, 0 and 40 hours. The step is five minutes, and a state holds to the next row.
func fansLog() string {
	return logOf("time,Fan A,Fan B,Solar loop", "2024-12-01 00:00", 10, 5, isoFace, func(at time.Time) string {
		return fmt.Sprintf("%d,0,%d", 1-at.Minute()/30, oneIfBetween(at.Hour(), 10, 14))
	})
}

func oneIfBetween(v, from, to int) int {
	if v >= from && v < to {
		return 1
	}
	return 0
}

// shownLogger is a logger of a file as the Files screen shows it.
func (b Book) shownLogger(t *testing.T, name string) FileLogger {
	t.Helper()
	for _, f := range b.Files().Files {
		p, _ := b.File(f.Name, Units{})
		if i := slices.IndexFunc(p.Loggers, func(l FileLogger) bool { return l.Name == name }); i >= 0 {
			return p.Loggers[i]
		}
	}
	t.Fatalf("no file has a logger %q", name)
	return FileLogger{}
}

func TestARecordFindsItsStage(t *testing.T) {
	dir := folderOf(t, map[string]string{
		"fans.csv": fansLog(),
		"shed.csv": logOf("time,Temperature °C,RH %", "2024-12-01 00:00", 10, 30, isoFace, func(time.Time) string { return "4.4,60.0" }),
	})
	k := keeper(t)
	b := added(t, k, Book{}, dir)
	var names []string
	for _, l := range b.Shell().Barns[0].Loggers {
		names = append(names, l.Name+": "+l.Place+", "+l.Note)
	}
	if want := []string{"fans, Fan A: a record, of what?", "fans, Fan B: a record, of what?", "fans, Solar loop: a record, of what?", "shed: room, assumed"}; !slices.Equal(names, want) {
		t.Fatalf("%q", names)
	}
	if l := b.shownLogger(t, "fans, Fan A"); l.Record == nil || l.Record.Lacks == "" {
		t.Errorf("without stages: %+v", l.Record)
	}

	sheet := b.StageSheet(0, Units{})
	if len(sheet.Rows) != 2 || sheet.Rows[0].Cells[0] != "Fan A" || sheet.Rows[1].Cells[0] != "Fan B" {
		t.Fatalf("the sheet begins with %+v", sheet.Rows)
	}
	sheet.Rows[0].Cells[2], sheet.Rows[0].Cells[3] = "4", "3.5"
	sheet.Rows[1].Cells[2], sheet.Rows[1].Cells[3] = "5", "4.5"
	set, problem := sheet.Edit(sheet.Rows)
	if problem != "" {
		t.Fatal(problem)
	}
	b = edited(t, k, b, set)
	for i, want := range []float64{120, 0} {
		s := b.Result.Barns[0].Stages[i]
		if s.Ran == nil || !s.Ran.Hours.OK {
			t.Fatalf("%s: no record counted: %+v", s.Name, s.Ran)
		}
		within(t, s.Name+" ran, h", s.Ran.Hours.Mid, want, 0.1)
	}
	if l := b.shownLogger(t, "fans, Fan A"); l.Record.Chosen != "Fan A" || l.Why != "Assumed: it is called like Fan A." {
		t.Errorf("%q, %q", l.Record.Chosen, l.Why)
	}

	solar := b.shownLogger(t, "fans, Solar loop")
	var labels []string
	for _, c := range solar.Record.Choices {
		labels = append(labels, c.Label)
	}
	if want := []string{"Fan A", "Fan B", ofDoor, ofNone}; !slices.Equal(labels, want) || solar.Record.Chosen != "" {
		t.Fatalf("choices %q, chosen %q", labels, solar.Record.Chosen)
	}
	noted := func() bool {
		p, _ := b.File("fans.csv", Units{})
		return slices.ContainsFunc(p.Notes, func(n FileNoteLine) bool { return n.weight == toCheck })
	}
	if !noted() {
		t.Error("nothing is said of the record that counts for nothing")
	}
	b = edited(t, k, b, solar.Record.Choices[3].Edit)
	if l := b.shownLogger(t, "fans, Solar loop"); l.Record.Chosen != ofNone || noted() {
		t.Errorf("of none: chosen %q, still noted %v", l.Record.Chosen, noted())
	}
	b, err := k.UndoEdit(b)
	if err != nil {
		t.Fatal(err)
	}
	heat := b.HeatSheet(0)
	if len(heat.Rows) != 1 || !slices.Equal(heat.Rows[0].Cells, []string{"Solar loop", "solar", "air", "none"}) {
		t.Fatalf("the sheet of heat begins with %+v", heat.Rows)
	}
	set, _ = heat.Edit(heat.Rows)
	b = edited(t, k, b, set)
	within(t, "the solar loop ran, h", b.Result.Barns[0].Heats[0].Ran.Hours.Mid, 40, 0.1)
}

// Of two barns with a stage of one name, the file's name tells which the record is of.
func TestARecordForAnOpenWinterIsSuggestedItsStage(t *testing.T) {
	dir := folderOf(t, map[string]string{
		"rowan-fans.csv": fansLog(),
		"winter.toml": "[winter]\nname = \"Two\"\nzone = \"UTC\"\n[[barn]]\nname = \"Alder barn\"\n[[barn.stage]]\nname = \"Fan A\"\nalways_on = true\n" +
			"[[barn]]\nname = \"Rowan barn\"\nbees_in = 2024-12-01T00:00:00\nbees_out = 2024-12-11T00:00:00\n[[barn.stage]]\nname = \"Fan A\"\nalways_on = true\n",
	})
	k := keeper(t)
	b := added(t, k, opened(t, k, filepath.Join(dir, "winter.toml")), filepath.Join(dir, "rowan-fans.csv"))
	l := b.shownLogger(t, "rowan-fans, Fan A")
	if l.Suggestion != "It is of Fan A in Rowan barn" || len(l.Record.Choices) != 5 || l.Record.Choices[0].Label != "Fan A in Alder barn" {
		t.Fatalf("%q, %+v", l.Suggestion, l.Record)
	}
	b = edited(t, k, b, l.Suggested)
	got, _ := b.doc.List(1)
	if len(got) != 1 || got[0].RecordsStage != "Fan A" || got[0].Place != winter.RecordPlace || len(b.doc.Tray) != 2 {
		t.Errorf("Rowan barn has %+v, %d wait", got, len(b.doc.Tray))
	}
	within(t, "ran, h", b.Result.Barns[1].Stages[0].Ran.Hours.Mid, 120, 0.1)
}

// A record that is called a door's is taken to be of the door, says so, and tells when it stood open; of another the keeper
// says so.
func TestADoorsRecordFindsTheDoor(t *testing.T) {
	contact := logOf("time,Door,Gadget", "2024-12-01 00:00", 10, 10, isoFace, func(at time.Time) string {
		if at.Day() == 5 && at.Hour() == 9 {
			return "1,0"
		}
		return fmt.Sprintf("0,%d", at.Day()%2)
	})
	dir := folderOf(t, map[string]string{
		"contacts.csv": contact,
		"shed.csv":     logOf("time,Temperature °C,RH %", "2024-12-01 00:00", 10, 30, isoFace, func(time.Time) string { return "4.4,60.0" }),
	})
	k := keeper(t)
	b := added(t, k, Book{}, dir)
	door := b.shownLogger(t, "contacts, Door")
	if door.Record.Chosen != ofDoor || door.Why != "Assumed: its name says so." || door.Hangs == "" {
		t.Fatalf("%+v, %+v", door, door.Record)
	}
	open := func(b Book) (hours float64) {
		for _, e := range b.Result.Barns[0].Events {
			if e.Kind == "doors open" {
				hours += float64(e.Span.To-e.Span.From) / 3.6e6
			}
		}
		return hours
	}
	within(t, "open, h", open(b), 1, 0.01)
	gadget := b.shownLogger(t, "contacts, Gadget")
	i := slices.IndexFunc(gadget.Record.Choices, func(c RecordChoice) bool { return c.Label == ofDoor })
	if gadget.Record.Chosen != "" || i < 0 {
		t.Fatalf("%+v", gadget.Record)
	}
	b = edited(t, k, b, gadget.Record.Choices[i].Edit)
	if l := b.shownLogger(t, "contacts, Gadget"); l.Record.Chosen != ofDoor || l.Why != "" {
		t.Errorf("%q, %+v", l.Why, l.Record)
	}
}
