package ui

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"thawbook/app/desk"
)

// rename names the winter and its barns.
func (s *shown) rename(winter string, barns ...string) {
	if e, changes := s.book.Rename(winter, barns); changes {
		s.edit(e)
	}
}

// menuItem is an item of the main menu by the beginning of its label.
func (s *shown) menuItem(t *testing.T, label string) *fyne.MenuItem {
	t.Helper()
	for _, m := range s.win.MainMenu().Items {
		for _, i := range m.Items {
			if strings.HasPrefix(i.Label, label) {
				return i
			}
		}
	}
	t.Fatalf("the menu has no %q", label)
	return nil
}

// choose presses an item of the menu.
func (s *shown) choose(t *testing.T, label string) {
	t.Helper()
	i := s.menuItem(t, label)
	if i.Disabled {
		t.Fatalf("%q can't be pressed", label)
	}
	i.Action()
}

// press presses a button of the open dialog.
func (s *shown) press(t *testing.T, text string) {
	t.Helper()
	b, ok := find(s.win.Canvas().Overlays().Top(), func(b *keyButton) bool { return b.Text == text })
	if !ok {
		t.Fatalf("no button %q", text)
	}
	test.Tap(b)
}

// entries are the text fields of the open dialog.
func (s *shown) entries() (out []*keyEntry) {
	var gather func(o fyne.CanvasObject)
	gather = func(o fyne.CanvasObject) {
		if e, ok := o.(*keyEntry); ok {
			out = append(out, e)
			return
		}
		for _, c := range below(o) {
			gather(c)
		}
	}
	gather(s.win.Canvas().Overlays().Top())
	return out
}

func TestAChangeIsUndoneAndDoneAgain(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	if !s.menuItem(t, "Undo").Disabled || !s.menuItem(t, "Redo").Disabled {
		t.Error("there is nothing to undo, yet it can be pressed")
	}
	s.choose(t, "Rename…")
	s.entries()[1].SetText("Alder")
	s.press(t, "Rename")
	s.settled(t)
	s.lacks(t, "Alder · ")
	s.choose(t, "Undo renaming")
	s.settled(t)
	s.lacks(t, "Barn · ")
	s.choose(t, "Redo renaming")
	s.settled(t)
	s.lacks(t, "Alder · ")
}

func TestUndoIsTheDialogsWhileOneIsOpen(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	s.rename("New winter", "Alder")
	s.settled(t)
	s.noteDialog("")
	s.choose(t, "Undo")
	s.settled(t)
	s.lacks(t, "Alder · ")
}

func TestANoteIsSetDown(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	s.choose(t, "Set down a note…")
	s.press(t, "Set it down")
	s.lacks(t, "Say when it was")
	fields := s.entries()
	fields[0].SetText("2024-11-15")
	fields[1].SetText("2,5")
	s.press(t, "Set it down")
	s.settled(t)
	s.lacks(t, "You noted 15 November: sweepings, 2.5 pails.")
}

// Of dead hives it is asked how many were looked at, and of nothing else.
func TestADeadCountIsOfSoManyLookedAt(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	s.choose(t, "Set down a note…")
	fields := s.entries()
	if !fields[2].Disabled() {
		t.Error("sweepings are asked for how many were looked at")
	}
	kind, _ := find(s.win.Canvas().Overlays().Top(), func(k *keySelect) bool { return slices.Contains(k.Options, "dead count") })
	kind.SetSelected("dead count")
	for i, text := range []string{"2024-11-15", "5", "50"} {
		fields[i].SetText(text)
	}
	s.press(t, "Set it down")
	s.settled(t)
	s.lacks(t, "You noted 15 November: dead count, 5 hives of 50 looked at.")
}

func TestAWinterIsKeptUnderAName(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	s.lacks(t, "not saved under a name yet")
	dir := t.TempDir()
	s.choose(t, "Keep under a name…")
	name, folder := s.entries()[0], s.entries()[1]
	for _, wrong := range []struct{ name, folder, says string }{{"", dir, "Give it a name."}, {"a/b", dir, "can't hold a folder"}, {"a", filepath.Join(dir, "none"), "no such folder"}} {
		name.SetText(wrong.name)
		folder.SetText(wrong.folder)
		s.press(t, "Keep it")
		s.lacks(t, wrong.says)
	}
	name.SetText("alder 2024.thawbook")
	folder.SetText(dir)
	s.press(t, "Keep it")
	s.settled(t)
	if strings.Contains(s.said(), "not saved under a name yet") || s.win.Title() != "Thawbook – alder 2024" {
		t.Errorf("%q", s.win.Title())
	}
	if _, err := os.Stat(filepath.Join(dir, "alder 2024.thawbook")); err != nil {
		t.Error(err)
	}
}

// A file that is there already is replaced only when the keeper presses twice.
func TestACopyIsNotWrittenOverUnasked(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	dir := t.TempDir()
	path := filepath.Join(dir, "w.thawbook")
	if err := os.WriteFile(path, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.choose(t, "Save a copy…")
	s.entries()[0].SetText("w.thawbook")
	s.entries()[1].SetText(dir)
	s.press(t, "Save the copy")
	s.settled(t)
	s.lacks(t, "Press once more to replace it.")
	if text, _ := os.ReadFile(path); string(text) != "mine" {
		t.Fatal("it was written over")
	}
	s.press(t, "Save the copy")
	s.settled(t)
	if text, _ := os.ReadFile(path); len(text) < 1000 {
		t.Errorf("nothing was written: %d bytes", len(text))
	}
	s.lacks(t, "The copy lies in")
}

// The next start offers the winter again and shows it where the keeper left it.
func TestAWinterIsOpenedWhereItWasLeft(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.showBarn(1)
	s.tabs.choose(1)
	s.plot.plot.SetView(desk.Span{From: 1731700000000, To: 1731800000000})
	view := s.plot.view()
	s.rename("Two rooms, changed", "Upper", "Lower") // an untouched draft of a plan is not kept
	s.settled(t)
	s.Leave()

	next := show(t)
	next.Memory, next.Keeper = s.Memory, s.Keeper
	next.refresh()
	next.lacks(t, "Open again", "Two rooms, changed · not saved under a name yet, opened")
	recent, _ := find(next.win.Content(), func(r *keyRow) bool { return r.title == "Two rooms, changed" })
	test.Tap(recent)
	next.settled(t)
	next.lacks(t, "Two rooms, changed", "Upper", "Lower")
	if next.barn != 1 || next.tabs.chosen() != 1 || next.plot.view() != view {
		t.Errorf("barn %d, page %d, view %v; want 1, 1, %v", next.barn, next.tabs.chosen(), next.plot.view(), view)
	}
}

func TestAWinterOpenElsewhereSaysSo(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	other := show(t)
	other.take(t, s.book.Path)
	other.lacks(t, "open in another window", "Save a copy…")
	for _, label := range []string{"Rename…", "Set down a note…", "Take barns over…", "Undo"} {
		if !other.menuItem(t, label).Disabled {
			t.Errorf("%s can be pressed", label)
		}
	}
	if other.menuItem(t, "Save a copy…").Disabled {
		t.Error("a copy can't be saved")
	}
}

func TestADamagedWinterIsOffered(t *testing.T) {
	s := show(t)
	path := filepath.Join(t.TempDir(), "bad.thawbook")
	if err := os.WriteFile(path, []byte("no winter at all"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.take(t, path)
	s.lacks(t, "This winter's file is damaged", "bad.thawbook is damaged and was left as it is")
	s.press(t, "Rescue what it holds")
	s.settled(t)
	s.lacks(t, "0 files whole. What you had set down is lost.", "Rescued winter")
}

// Files dropped one after another are all taken in, and so are changes made meanwhile.
func TestNothingOvertakesAChange(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	s.Take([]string{loggerFile(t, dir, "first.csv", 4)})
	s.Take([]string{loggerFile(t, dir, "second.csv", 5)})
	s.settled(t)
	s.Take([]string{loggerFile(t, dir, "third.csv", 6)})
	s.rename("New winter", "Alder")
	s.aside("Doing something else", func(context.Context, Tell) (string, error) { return "", nil })
	s.settled(t)
	s.lacks(t, "first · ", "second · ", "third · ", "Alder · ")
	if s.book.Behind() {
		t.Error("the figures were not worked out")
	}
}

func TestWhatFailedStaysSaid(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "a.csv", 4))
	s.rename("", "Barn")
	s.rename("Another", "Barn")
	s.settled(t)
	s.lacks(t, "A name can't be empty.", "The winter is as it was.", "Another")
	s.rename("Third", "Barn")
	s.settled(t)
	if strings.Contains(s.said(), "can't be empty") {
		t.Error("what failed long ago is still said")
	}
}

// Stopped by the keeper, the figures stay behind and it is said how to bring them up to date.
func TestStoppedFiguresAreSaid(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "a.csv", 4))
	s.rename("Another", "Barn")
	s.main.until(t, "the review waits", func() bool { return s.work.review != nil && s.book.Name() == "Another" })
	s.stopWork()
	s.settled(t)
	s.lacks(t, "The change is kept, but the figures are still those from before it.")
	s.choose(t, "Work it out again")
	s.settled(t)
	if s.book.Behind() || strings.Contains(s.said(), "from before it") {
		t.Error("the figures are still behind")
	}
}

func TestADialogOfAnotherWinterIsClosed(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "a.csv", 4))
	s.choose(t, "Rename…")
	s.take(t, planFile(t))
	if top := s.win.Canvas().Overlays().Top(); top != nil && top.Visible() {
		t.Error("a dialog of the winter before is still open")
	}
}

// A change that was done before it heard of the Cancel stays, but nothing is worked out after it until he asks.
func TestWhatIsStoppedStaysStopped(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.change("Keeping the change", func(ctx context.Context, b desk.Book, _ Tell) (desk.Book, error) {
		<-ctx.Done()
		return b.Outdated(), nil
	})
	s.stopWork()
	s.settled(t)
	if !s.book.Behind() {
		t.Error("it was worked out all the same")
	}
	s.lacks(t, "The change is kept, but the figures are still those from before it.")
	s.choose(t, "Work it out again")
	s.settled(t)
	if s.book.Behind() {
		t.Error("it was not worked out when he asked")
	}
}

// A dialog that looks for files begins where the keeper opened the last ones; where that is gone, at the toolkit's choice.
func TestADialogBeginsWhereTheKeeperWas(t *testing.T) {
	s := show(t)
	if s.lastFolder() != nil {
		t.Errorf("before anything was opened: %v", s.lastFolder())
	}
	plan := planFile(t)
	s.take(t, plan)
	if at := s.lastFolder(); at == nil || at.Path() != filepath.ToSlash(filepath.Dir(plan)) {
		t.Errorf("after a plan: %v", at)
	}
	dir := t.TempDir()
	s.take(t, loggerFile(t, dir, "one.csv", 4))
	if at := s.lastFolder(); at == nil || at.Path() != filepath.ToSlash(dir) {
		t.Errorf("after a logger's file: %v", at)
	}
	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	if at := s.lastFolder(); at != nil {
		t.Errorf("of a folder that is gone: %v", at)
	}
}
