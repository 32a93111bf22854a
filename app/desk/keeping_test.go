package desk

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"thawbook/app/engine"
	"thawbook/app/winter"
	"thawbook/app/winter/store"
)

func held(t *testing.T, b Book) string {
	t.Helper()
	v, ok := b.Barn(0, Units{})
	if !ok {
		t.Fatal("no barn is judged")
	}
	return plain(v.FirstLook.Headline)
}

// Files dropped on an empty window are safe from that moment: the sources may go, the program may end.
func TestDroppedFilesAreKept(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, dir, "cheap.csv", 4))
	if !b.Draft || b.Shell().Note == "" {
		t.Errorf("a winter without a name is not called so: %+v", b.Shell())
	}
	headline := held(t, b)
	b = edited(t, k, b, winter.Rename{Winter: b.Name(), Barns: []string{"Alder"}})
	path := b.Path
	k.Close()
	os.RemoveAll(dir)
	again := keeper(t)
	again.Drafts = k.Drafts
	b = opened(t, again, path)
	if held(t, b) != headline || b.BarnNames()[0] != "Alder" || !b.Draft || b.Undo != "renaming" {
		t.Errorf("%q, %v, undo %q", held(t, b), b.BarnNames(), b.Undo)
	}
}

func TestUndoInTheBook(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	if b.Undo != "" || b.Redo != "" {
		t.Errorf("before any change: undo %q, redo %q", b.Undo, b.Redo)
	}
	edit, _ := b.SetBeesInOut(0, BeesTime{In: "2024-11-14", Out: "2024-11-20"})
	b = edited(t, k, b, edit)
	line := func(b Book) string { v, _ := b.Barn(0, Units{}); return v.Header.Line }
	if !strings.HasPrefix(line(b), "In 14 November") || b.Undo != "bees in and out" {
		t.Fatalf("%q, %q", line(b), b.Undo)
	}
	b, err := k.UndoEdit(b)
	if err != nil || b.Standing().Text == "" {
		t.Errorf("%v; the figures are behind and nothing says so", err)
	}
	if b = judged(t, k, b); !strings.HasPrefix(line(b), "Record from") || b.Redo != "bees in and out" || b.Standing().Text != "" {
		t.Errorf("%q, redo %q, %+v", line(b), b.Redo, b.Standing())
	}
	b, err = k.RedoEdit(b)
	if b = judged(t, k, b); err != nil || !strings.HasPrefix(line(b), "In 14 November") {
		t.Errorf("%q, %v", line(b), err)
	}
}

// After an undo of adding it, a file is still kept and can be added again; nothing is stored twice.
func TestAddingAgainAfterUndo(t *testing.T) {
	dir := t.TempDir()
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, dir, "a.csv", 4))
	second := loggerFile(t, dir, "b.csv", 5)
	b = added(t, k, b, second)
	b, err := k.UndoEdit(b)
	if err != nil || len(b.Shell().Tray) != 0 || len(k.store.Exports()) != 2 {
		t.Fatalf("%v, %d in the tray, %d files", err, len(b.Shell().Tray), len(k.store.Exports()))
	}
	b = added(t, k, b, second)
	if len(b.Shell().Tray) != 1 || len(b.Faults) != 0 || len(k.store.Exports()) != 2 {
		t.Errorf("%+v, %v, %d files", b.Shell().Tray, b.Faults, len(k.store.Exports()))
	}
}

func TestKeepingUnderAName(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	draft, headline := b.Path, held(t, b)
	to := filepath.Join(t.TempDir(), "winter of 2024")
	b, err := k.KeepAs(b, to)
	if err != nil || b.Path != to+".thawbook" || b.Draft || b.Name() != "winter of 2024" || held(t, b) != headline || b.Standing().Text != "" {
		t.Errorf("%+v, %v", b.Path, err)
	}
	if _, err := os.Stat(draft); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the draft is still there: %v", err)
	}
	other := filepath.Join(t.TempDir(), "copy.thawbook")
	if err := k.SaveCopy(other); err != nil {
		t.Fatal(err)
	}
	if b, err = k.KeepAs(b, filepath.Join(t.TempDir(), "second.thawbook")); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(to + ".thawbook"); err != nil {
		t.Errorf("a winter with a name went with its copy: %v", err)
	}
	if held(t, opened(t, keeper(t), other)) != headline {
		t.Error("the copy says something else")
	}
}

// A plan that was only looked at leaves no draft; one that was changed does.
func TestADraftOfAPlan(t *testing.T) {
	dir := t.TempDir()
	loggerFile(t, dir, "a.csv", 4)
	path := written(t, dir, "plan.toml", planText)
	k := keeper(t)
	for _, change := range []bool{false, true} {
		b := opened(t, k, path)
		if change {
			b = edited(t, k, b, winter.Rename{Winter: "Changed", Barns: b.BarnNames()})
		}
		k.Close()
		if _, err := os.Stat(b.Path); (err == nil) != change {
			t.Errorf("changed %v, kept: %v", change, err)
		}
	}
}

// A plan and the files given back into one folder are the winter again: the review is the same.
func TestAPlanAndItsFilesGoRound(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"room.csv", "outdoor.csv", "north wall.csv"} {
		loggerFile(t, dir, name, float64(len(name))/3)
	}
	k := keeper(t)
	b := added(t, k, Book{}, dir)
	out := t.TempDir()
	if err := k.SavePlan(filepath.Join(out, "plan")); err != nil {
		t.Fatal(err)
	}
	for range 2 { // the second time they lie there already
		said, err := k.GiveBack(context.Background(), out, nil)
		if err != nil || !strings.HasPrefix(said, "3 files lie in ") {
			t.Fatalf("%q, %v", said, err)
		}
	}
	for _, name := range []string{"room.csv", "outdoor.csv", "north wall.csv"} {
		was, _ := os.ReadFile(filepath.Join(dir, name))
		is, err := os.ReadFile(filepath.Join(out, name))
		if err != nil || string(was) != string(is) {
			t.Errorf("%s is not what it was: %v", name, err)
		}
	}
	result, err := engine.ReviewFile(context.Background(), filepath.Join(out, "plan.toml"), nil)
	if err != nil || result.Refused() || HeaderOf(result.Inputs[0], result.Barns[0], Units{}).Line != HeaderOf(b.Result.Inputs[0], b.Result.Barns[0], Units{}).Line || result.Barns[0].Verdict.Held.Figure.Mid != b.Result.Barns[0].Verdict.Held.Figure.Mid {
		t.Errorf("%v: the plan's review is another", err)
	}
	if err := os.WriteFile(filepath.Join(out, "room.csv"), []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	if said, err := k.GiveBack(context.Background(), out, nil); err != nil || !strings.HasPrefix(said, "2 files lie in") || !strings.Contains(said, "left as they are: room.csv.") {
		t.Errorf("%q, %v", said, err)
	}
	if mine, _ := os.ReadFile(filepath.Join(out, "room.csv")); string(mine) != "mine" {
		t.Error("a file was written over")
	}
}

func TestTheNextWinterAndBarnsTakenOver(t *testing.T) {
	dir := t.TempDir()
	loggerFile(t, dir, "a.csv", 4)
	path := written(t, dir, "plan.toml", strings.Replace(planText, "Two rooms", "Two rooms, 2024–25", 1))
	k := keeper(t)
	opened(t, k, path)
	b, err := k.NextWinter()
	if err != nil {
		t.Fatal(err)
	}
	b = judged(t, k, b)
	if b.Name() != "Two rooms, 2025–26" || len(b.BarnNames()) != 2 || len(b.Faults) != 0 || !b.Draft {
		t.Errorf("%q, %v, %v", b.Name(), b.BarnNames(), b.Faults)
	}
	if got := b.BeesInOut(0); got != (BeesTime{}) {
		t.Errorf("last winter's dates came along: %v", got)
	}
	b, err = k.TakeOver(b, path)
	if names := strings.Join(b.BarnNames(), ", "); err != nil || names != "Upper, Lower, Upper (2), Lower (2)" || b.Undo != "taking barns over" {
		t.Errorf("%s, %v", names, err)
	}
}

func TestNextNames(t *testing.T) {
	for name, want := range map[string]string{
		"2024–25": "2025–26", "Winter 2024/2025": "Winter 2025/2026", "Alder 2024-25, north": "Alder 2025-26, north", "2024": "2025", "Demo winter": "Demo winter (next)", "": "(next)",
		"1999–00": "2000–01", "Barn 12": "Barn 12 (next)", "Log 2024-12-31": "Log 2025-12-31",
	} {
		if got := nextName(name); got != want {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
}

func TestAWinterOpenElsewhere(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	second := keeper(t)
	seen := opened(t, second, b.Path)
	if said := seen.Standing(); !strings.Contains(said.Text, "another window") || held(t, seen) != held(t, b) {
		t.Errorf("%+v", said)
	}
	after, err := second.Edit(seen, winter.Rename{Winter: "x", Barns: seen.BarnNames()})
	if err == nil || after.Name() != b.Name() || after.Undo != "" {
		t.Errorf("%v, %q", err, after.Name())
	}
	if same, err := k.Open(context.Background(), b.Path, nil); err != nil || same.Standing().Text != "" {
		t.Errorf("opened once more in the same window: %+v, %v", same.Standing(), err)
	}
}

func TestRescuingADamagedWinter(t *testing.T) {
	k := keeper(t)
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	headline := held(t, b)
	b, err := k.KeepAs(b, filepath.Join(t.TempDir(), "w.thawbook"))
	if err != nil {
		t.Fatal(err)
	}
	k.Close()
	text, err := os.ReadFile(b.Path)
	if err != nil {
		t.Fatal(err)
	}
	copy(text, "garbage in the header")
	if err := os.WriteFile(b.Path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := k.Open(context.Background(), b.Path, nil); !IsDamaged(err) {
		t.Fatalf("%v", err)
	}
	r, err := k.Rescue(context.Background(), b.Path)
	if err != nil || !strings.Contains(r.Faults[0].Text, "1 file whole") {
		t.Fatalf("%+v, %v", r.Faults, err)
	}
	if r = judged(t, k, r); held(t, r) != headline || !r.Draft {
		t.Errorf("%q", held(t, r))
	}
	if after, _ := os.ReadFile(b.Path); string(after) != string(text) {
		t.Error("the damaged file was written to")
	}
}

func TestWhatARescueSays(t *testing.T) {
	for want, r := range map[string]store.Rescued{
		"Rescued: 2 files whole, and what you had set down.":                                                            {Whole: []string{"a", "b"}, Steps: 3},
		"Rescued: 0 files whole, only the beginning of part of a.csv, nothing of b.csv. What you had set down is lost.": {InPart: []string{"part of a.csv"}, Lost: []string{"b.csv"}},
	} {
		if got := rescuedWords(r).Text; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// After an update the figures of the same document may differ: then it is said which, and why; never when the
// document changed, never when the figures did not.
func TestFiguresThatChangedWithTheProgram(t *testing.T) {
	was := lastSeen{Document: "d", Program: "1", Rules: 1, Reader: 1, TZData: "a", Figures: []seenFigure{{"Alder", "Held", "percent", 97.04}, {"Alder", "Dry", "h", 12}, {"Alder", "Fans", "percent", 90}}}
	is := was
	is.Program, is.Rules = "2", 2
	is.Figures = []seenFigure{{"Alder", "Held", "percent", 96.4}, {"Alder", "Dry", "h", 12 + 1e-12}, {"Rowan", "Held", "percent", 80}}
	want := "Figures changed because the rules of the figures are others (1, now 2): Alder, held: 97.0 %, now 96.4 %; Rowan, held: can't be told, now 80.0 %; Alder, fans: 90.0 %, now can't be told."
	if got := changeOf(was, is).Text; got != want {
		t.Errorf("%q", got)
	}
	is.Figures = was.Figures
	if got := changeOf(was, is).Text; got != "" {
		t.Errorf("no figure changed: %q", got)
	}
	is.Figures, is.Rules = nil, 1
	if got := changeOf(was, is).Text; !strings.Contains(got, "because the program was updated: ") {
		t.Errorf("%q", got)
	}
}

func TestReopeningAfterAnUpdate(t *testing.T) {
	k := keeper(t)
	k.Program = Program{Version: "1", TZData: "2025a"}
	b := added(t, k, Book{}, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	b, err := k.KeepAs(b, filepath.Join(t.TempDir(), "w"))
	if err != nil {
		t.Fatal(err)
	}
	judged(t, k, b)
	if b = opened(t, k, b.Path); len(b.Faults) != 0 {
		t.Errorf("nothing changed: %+v", b.Faults)
	}
	other := k.seenOf(b)
	other.Program, other.Rules, other.Figures[0].Value = "0.9", 0, 50
	k.store.See([]byte(asJSON(t, other)))
	k.Close()
	b = opened(t, k, b.Path)
	if len(b.Faults) != 1 || !strings.Contains(b.Faults[0].Text, "held: 50.0 %, now 100.0 %") || !strings.Contains(b.Faults[0].Text, "rules") {
		t.Errorf("%+v", b.Faults)
	}
	if b = judged(t, k, b); len(b.Faults) != 1 { // said once, and still standing while the winter is open
		t.Errorf("%+v", b.Faults)
	}
	k.Close()
	if b = opened(t, k, b.Path); len(b.Faults) != 0 {
		t.Errorf("said again: %+v", b.Faults)
	}
}

func TestAFaultOfTheProgramIsPassedOn(t *testing.T) {
	var notes []string
	k := Keeper{Crash: func(note string) { notes = append(notes, note) }}
	fault := &engine.Fault{Doing: "room.csv", Kind: "string", Where: []string{"f g.go:1"}}
	k.tellOfFaults(engine.Result{Files: []engine.File{{Name: "room.csv", Err: fault}, {Name: "b.csv", Err: os.ErrNotExist}}, Faults: []error{fault}})
	if len(notes) != 2 || strings.Contains(notes[0], "room.csv") || !strings.Contains(notes[0], "g.go:1") {
		t.Errorf("%q", notes)
	}
}

func asJSON(t *testing.T, v any) string {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
