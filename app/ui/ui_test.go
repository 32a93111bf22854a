package ui

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// turn collects what workers hand to the main goroutine; the test is that goroutine.
type turn struct {
	lock  sync.Mutex
	queue []func()
}

func (m *turn) do(f func()) {
	m.lock.Lock()
	defer m.lock.Unlock()
	m.queue = append(m.queue, f)
}

func (m *turn) step() bool {
	m.lock.Lock()
	defer m.lock.Unlock()
	if len(m.queue) == 0 {
		return false
	}
	f := m.queue[0]
	m.queue = m.queue[1:]
	m.lock.Unlock()
	f()
	m.lock.Lock()
	return true
}

// until runs the main goroutine's turn until something holds.
func (m *turn) until(t *testing.T, what string, holds func() bool) {
	t.Helper()
	for end := time.Now().Add(20 * time.Second); !holds(); {
		if time.Now().After(end) {
			t.Fatalf("never: %s", what)
		}
		if !m.step() {
			time.Sleep(time.Millisecond)
		}
	}
}

// shown is a window under test.
type shown struct {
	*UI
	main turn
	left bool
}

func show(t *testing.T, paths ...string) *shown {
	t.Helper()
	s := &shown{}
	s.UI = &UI{Do: s.main.do, Version: "test", Keeper: &desk.Keeper{Drafts: filepath.Join(t.TempDir(), "drafts")}, Memory: &remembered{screens: map[string]desk.Screen{}}, Quit: func() { s.left = true }, Demo: func(context.Context, bool, func(int, int)) (string, error) {
		return "", errors.New("there is no room on the disk")
	}}
	s.UI.Show(test.NewTempApp(t), paths...)
	t.Cleanup(func() { s.stopWork(); s.work.wait(20 * time.Second); s.Keeper.Close() })
	return s
}

// remembered is a memory that lasts as long as the test.
type remembered struct {
	recent  []desk.Recent
	screens map[string]desk.Screen
}

func (m *remembered) Recent() []desk.Recent { return m.recent }

func (m *remembered) Opened(r desk.Recent) { m.recent = append([]desk.Recent{r}, m.recent...) }

func (m *remembered) Screen(path string) desk.Screen { return m.screens[path] }

func (m *remembered) SetScreen(path string, s desk.Screen) { m.screens[path] = s }

func (s *shown) take(t *testing.T, paths ...string) {
	t.Helper()
	s.Take(paths)
	s.settled(t)
}

func (s *shown) settled(t *testing.T) {
	t.Helper()
	s.main.until(t, "the work ends", func() bool { return !s.work.busy() })
}

// below are the objects inside an object; those of every tab, chosen or not.
func below(o fyne.CanvasObject) []fyne.CanvasObject {
	switch w := o.(type) {
	case *fyne.Container:
		return w.Objects
	case *container.Scroll:
		return []fyne.CanvasObject{w.Content}
	case *pageTabs:
		out := []fyne.CanvasObject{w.titles}
		for _, page := range w.pages {
			out = append(out, below(page)...)
		}
		return out
	case *widget.PopUp:
		return []fyne.CanvasObject{w.Content}
	case fyne.Widget:
		return test.WidgetRenderer(w).Objects()
	}
	return nil
}

// said is everything that is on the screen or on another tab.
func (s *shown) said() string {
	var b strings.Builder
	say(&b, s.win.Content())
	for _, o := range s.win.Canvas().Overlays().List() {
		say(&b, o)
	}
	return strings.ReplaceAll(b.String(), "\u2009", " ")
}

func say(b *strings.Builder, o fyne.CanvasObject) {
	if !o.Visible() {
		return
	}
	switch w := o.(type) {
	case *prose:
		fmt.Fprintln(b, w.text)
	case *widget.Button:
		fmt.Fprintln(b, w.Text)
	case *row:
		fmt.Fprintln(b, w.title, "·", w.note)
	case *keyRow:
		fmt.Fprintln(b, w.title, "·", w.note)
	default:
		for _, c := range below(o) {
			say(b, c)
		}
	}
}

func (s *shown) lacks(t *testing.T, words ...string) {
	t.Helper()
	all := s.said()
	for _, w := range words {
		if !strings.Contains(all, w) {
			t.Errorf("the window does not say %q; it says:\n%s", w, all)
		}
	}
}

// find is the first object of a kind that passes.
func find[T fyne.CanvasObject](o fyne.CanvasObject, pass func(T) bool) (found T, ok bool) {
	if w, is := o.(T); is && o.Visible() && pass(w) {
		return w, true
	}
	for _, c := range below(o) {
		if found, ok = find(c, pass); ok {
			return found, true
		}
	}
	return found, false
}

func (s *shown) button(t *testing.T, text string) *widget.Button {
	t.Helper()
	if b, ok := find(s.win.Content(), func(b *tabButton) bool { return b.Text == text }); ok {
		return &b.Button
	}
	b, ok := find(s.win.Content(), func(b *widget.Button) bool { return b.Text == text })
	if !ok {
		t.Fatalf("no button %q", text)
	}
	return b
}

func loggerFile(t *testing.T, dir, name string, tempC float64) string {
	t.Helper()
	var b strings.Builder
	b.WriteString("time,temperature (°C),relative humidity (%)\n")
	at := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC)
	for h := range 480 {
		fmt.Fprintf(&b, "%s,%.2f,60.0\n", at.Add(time.Duration(h)*time.Hour).Format("2006-01-02 15:04:05"), tempC)
	}
	path := filepath.Join(dir, name)
	if err := os.WriteFile(path, []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

const plan = `
[winter]
name = "Two rooms"
zone = "UTC"
[[barn]]
name = "Upper"
[[barn.logger]]
name = "a"
files = ["a.csv"]
place = "room"
[[barn.stage]]
name = "Stage 1"
always_on = true
[[barn.stage]]
name = "Stage 2"
on_c = 3.0
off_c = 2.5
[[barn.stage]]
name = "Stage 3"
on_c = 6.0
off_c = 5.0
[[barn]]
name = "Lower"
[[barn.logger]]
name = "b"
files = ["b.csv"]
place = "room"
`

func planFile(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	loggerFile(t, dir, "a.csv", 4)
	loggerFile(t, dir, "b.csv", 10)
	path := filepath.Join(dir, "plan.toml")
	if err := os.WriteFile(path, []byte(plan), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestTheStartPageSaysWhatToDo(t *testing.T) {
	s := show(t)
	s.lacks(t, "No winter is open.", "Drop the loggers' CSV files", "Look at the demo winter", "Look at one with a single logger", "Open a winter or plan…", "Add logger files…")
	if s.win.Title() != "Thawbook" {
		t.Errorf("title %q", s.win.Title())
	}
	if s.rail.object.Visible() {
		t.Error("an empty rail is shown")
	}
}

func TestTheStartPageSaysWhatIsInHand(t *testing.T) {
	absent := filepath.Join(t.TempDir(), "absent.toml")
	s := show(t, absent)
	s.lacks(t, "Opening absent.toml.") // in the first picture already
	s.Take([]string{absent})
	s.lacks(t, "Opening absent.toml.")
	s.settled(t)
	s.lacks(t, "No winter is open.")
	s.Take([]string{loggerFile(t, t.TempDir(), "a.csv", 4)})
	s.lacks(t, "Reading files.")
	s.settled(t)
	s.lacks(t, "a · room, assumed")
}

func TestAnOpenedWinterSaysThatItsFiguresCome(t *testing.T) {
	s := show(t)
	s.Take([]string{planFile(t)})
	s.main.until(t, "the plan is open", func() bool { return s.book.Loaded() })
	s.lacks(t, "The figures are being worked out.")
	s.stopWork()
	s.settled(t)
	s.lacks(t, "The figures are not worked out yet.")
}

func TestADroppedFileIsAnsweredAtOnce(t *testing.T) {
	s := show(t)
	uri := storage.NewFileURI(loggerFile(t, t.TempDir(), "cheap logger.csv", 4))
	s.Take(pathsOf([]fyne.URI{uri}))
	s.settled(t)
	s.lacks(t, "It held: 100 of 100 hours between 2 and 6 °C.", "cheap logger · room, assumed", "What would settle most")
	if s.win.Title() != "Thawbook – New winter" {
		t.Errorf("title %q", s.win.Title())
	}
}

func TestAPlanShowsItsBarns(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.lacks(t, "Two rooms", "Upper · all well", "Lower · needs attention", "It held: 100 of 100")
	lower, ok := find(s.rail.list, func(r *row) bool { return r.title == "Lower" })
	if !ok {
		t.Fatal("no row for Lower")
	}
	test.Tap(lower)
	s.lacks(t, "It did not hold: 0 of 100 hours between 2 and 6 °C.")
	s.win.Canvas().Focus(s.rail.list)
	s.rail.list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown}) // from Files to the first barn
	s.rail.list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	s.lacks(t, "It held: 100 of 100")
}

func TestFahrenheitIsKept(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.setTemperature(desk.Fahrenheit)
	s.lacks(t, "between 36 and 43 °F", "On / off, °F")
	if got := s.app.Preferences().String(prefTemperature); got != "F" {
		t.Errorf("kept %q", got)
	}
	s.setTemperature(desk.Celsius)
	s.lacks(t, "between 2 and 6 °C")
}

func TestAddedFilesWaitToBeHung(t *testing.T) {
	s := show(t)
	dir := t.TempDir()
	s.take(t, loggerFile(t, dir, "first.csv", 4))
	s.take(t, loggerFile(t, dir, "second.csv", 9))
	s.lacks(t, "Hangs nowhere yet", "second · hangs nowhere yet")
	waiting, _ := find(s.rail.list, func(r *row) bool { return r.title == "second" })
	test.Tap(waiting)
	pop := s.win.Canvas().Overlays().Top()
	hang, ok := find(pop, func(b *keyButton) bool { return b.Text == "Hang it there" })
	if !ok {
		t.Fatal("no way to hang it")
	}
	test.Tap(hang)
	s.settled(t)
	s.lacks(t, "second · room", "The loggers in the room read from 4.0 °C (first) to 9.0 °C (second) on average")
	if strings.Contains(s.said(), "nowhere yet") {
		t.Error("the tray still holds it")
	}
}

func TestEscapeClosesDialogsWhateverHasTheFocus(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	for name, open := range map[string]func(){
		"keys": s.keysDialog, "meanings": s.meaningsDialog, "about": s.aboutDialog, "add": s.addDialog,
		"hang": func() { s.loggerDialog(s.book.Shell().Barns[0].Loggers[0]) },
	} {
		open()
		if f := s.win.Canvas().Focused(); f == nil {
			t.Errorf("%s: nothing has the focus", name)
		} else {
			f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		}
		if top := s.win.Canvas().Overlays().Top(); top != nil && top.Visible() {
			t.Errorf("%s stayed open", name)
		}
	}
}

func TestFilesAndFoldersCanBePicked(t *testing.T) {
	s := show(t)
	for name, open := range map[string]func(){"a plan": s.openDialog, "a folder": func() { s.pickFolder(s.takeOne) }} {
		open()
		if s.win.Canvas().Overlays().Top() == nil {
			t.Errorf("%s: no dialog", name)
			continue
		}
		s.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if s.win.Canvas().Overlays().Top() != nil {
			t.Errorf("%s: Escape leaves it open", name)
		}
	}
}

func TestTheBeesTimeIsSetInTheWindow(t *testing.T) {
	s := show(t)
	s.take(t, loggerFile(t, t.TempDir(), "cheap.csv", 4))
	test.Tap(s.button(t, "Bees in and out…"))
	pop := s.win.Canvas().Overlays().Top()
	entry := func(text string) *keyEntry {
		e, ok := find(pop, func(e *keyEntry) bool { return e.PlaceHolder == text })
		if !ok {
			t.Fatalf("no entry %q", text)
		}
		return e
	}
	set, _ := find(pop, func(b *keyButton) bool { return b.Text == "Set" })
	entry(exampleIn).SetText("14. November")
	test.Tap(set)
	s.lacks(t, "is no day")
	entry(exampleIn).SetText("2024-11-14")
	entry(exampleOut).SetText("2024-11-24")
	test.Tap(set)
	s.settled(t)
	s.lacks(t, "In 14 November 2024, out 24 November 2024: 10 days, all known.")
}

// A logger that stood at 20 °C for a day, hung at 4 °C for twenty and stood at 20 °C again tells both days by itself: its
// first reading and its last at 4 °C are offered, and taken over at a press each.
func TestTheBeesTimeIsOfferedAsTheLoggersShowIt(t *testing.T) {
	rows := []string{"Time,Temperature (°C)"}
	for h := range 22 * 24 {
		temp := "4.0"
		if h < 24 || h >= 21*24 {
			temp = "20.0"
		}
		rows = append(rows, time.Date(2024, 11, 13, h, 0, 0, 0, time.UTC).Format("2006-01-02 15:04")+","+temp)
	}
	path := filepath.Join(t.TempDir(), "shed.csv")
	if err := os.WriteFile(path, []byte(strings.Join(rows, "\n")+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s := show(t)
	s.take(t, path)
	test.Tap(s.button(t, "Bees in and out…"))
	s.lacks(t, "came from a warmer place", "left for a warmer place")
	pop := s.win.Canvas().Overlays().Top()
	for _, press := range []string{"Take 2024-11-14 00:00", "Take 2024-12-03 23:00", "Set"} {
		b, ok := find(pop, func(b *keyButton) bool { return b.Text == press })
		if !ok {
			t.Fatalf("no button %q", press)
		}
		test.Tap(b)
	}
	s.settled(t)
	s.lacks(t, "In 14 November 2024, out 3 December 2024: 20 days, all known.")
}

func TestPastedPathsAreTaken(t *testing.T) {
	s := show(t)
	s.addDialog()
	pop := s.win.Canvas().Overlays().Top()
	entry, ok := find(pop, func(*keyEntry) bool { return true })
	if !ok {
		t.Fatal("nowhere to paste")
	}
	entry.SetText("  \"" + loggerFile(t, t.TempDir(), "pasted.csv", 4) + "\"\n\n")
	add, _ := find(pop, func(b *keyButton) bool { return b.Text == "Add these" })
	test.Tap(add)
	s.settled(t)
	s.lacks(t, "pasted · room, assumed")
}

func TestTroublesAreToldInTheStrip(t *testing.T) {
	s := show(t)
	s.openDemo(false)
	s.settled(t)
	s.lacks(t, "There is no room on the disk.")
	s.take(t, filepath.Join(t.TempDir(), "absent.csv"))
	s.lacks(t, "absent.csv", "No winter is open.")
	test.Tap(s.strip.dismiss)
	if s.strip.object.Visible() {
		t.Error("the strip can't be dismissed")
	}
	bad := filepath.Join(t.TempDir(), "bad.toml")
	if err := os.WriteFile(bad, []byte("[winter]\nname = 3\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.take(t, bad)
	s.lacks(t, "bad.toml:2", "Nothing was opened.")
}

func TestAFailureLeavesTheWinterOpen(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.take(t, filepath.Join(t.TempDir(), "absent.toml"))
	s.lacks(t, "absent.toml", "Two rooms", "Upper")
}

func TestShortcutsSitOnTheMenu(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	for _, m := range s.win.MainMenu().Items {
		for _, i := range m.Items {
			if strings.HasPrefix(i.Label, "Stages ") {
				i.Action()
			}
		}
	}
	if pageNames[s.tabs.chosen()] != "Stages" {
		t.Errorf("page %d", s.tabs.chosen())
	}
	s.setVariant(Dark)
	s.main.until(t, "the page is made anew", func() bool { return len(s.centre.Objects) > 0 })
	if pageNames[s.tabs.chosen()] != "Stages" || !s.theme.IsDark(0) {
		t.Error("another palette lost the page")
	}
}

// Where the system turns to the other palette while the window stands, plots and ground follow.
func TestThePageFollowsTheSystemsPalette(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.showPage(1)
	s.setVariant(System)
	s.main.until(t, "the page is made anew", func() bool { return len(s.centre.Objects) > 0 })
	before := s.centre.Objects[0]
	s.app.Settings().SetTheme(s.theme)
	s.main.until(t, "nothing is left to do", func() bool { return true })
	if s.centre.Objects[0] != before {
		t.Error("the page is made anew though the palette stayed")
	}
	s.dark = !s.dark // as if the other palette were shown
	s.app.Settings().SetTheme(s.theme)
	s.main.until(t, "the page is made anew", func() bool { return s.centre.Objects[0] != before && s.dark == s.isDark() })
	if want := s.theme.Color(theme.ColorNameBackground, s.app.Settings().ThemeVariant()); s.paper.FillColor != want {
		t.Errorf("the ground is %v, want %v", s.paper.FillColor, want)
	}
}

func TestTheReadingHasTheWholeLineWhenNothingRuns(t *testing.T) {
	s := show(t)
	s.win.Resize(fyne.NewSize(1280, 800))
	idle := s.status.reading.Size().Width
	s.status.begin("Reading files")
	busy := s.status.reading.Size().Width
	s.status.end()
	if again := s.status.reading.Size().Width; busy >= idle || again != idle {
		t.Errorf("%v wide, %v beside progress, then %v", idle, busy, again)
	}
}

func TestLeavingStopsTheWork(t *testing.T) {
	s := show(t)
	ended := make(chan error, 1)
	s.work.start("Long work", func(ctx context.Context, _ Tell) (func(), error) {
		<-ctx.Done()
		ended <- ctx.Err()
		return nil, ctx.Err()
	})
	if !s.status.busy.Visible() {
		t.Error("no progress is shown")
	}
	s.Leave()
	if err := <-ended; !errors.Is(err, context.Canceled) || !s.left {
		t.Errorf("%v, left %v", err, s.left)
	}
}

// The keys of the menu are the dialog's while one is open: they turn no page and open nothing over it. Leaving is always
// possible.
func TestMenusRestWhileADialogIsOpen(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	s.aboutDialog()
	for _, label := range []string{"Timeline", "Files", "Add files…", "Work it out again", "Set down a note…"} {
		s.choose(t, label)
	}
	if s.page != 0 || len(s.win.Canvas().Overlays().List()) != 1 || s.work.busy() {
		t.Errorf("page %d, %d dialogs, working: %v", s.page, len(s.win.Canvas().Overlays().List()), s.work.busy())
	}
	s.press(t, "Close")
	if s.choose(t, "Timeline"); s.page != 1 {
		t.Errorf("page %d once the dialog was closed", s.page)
	}
	s.aboutDialog()
	if s.choose(t, "Quit"); !s.left {
		t.Error("a dialog keeps the keeper in")
	}
}
