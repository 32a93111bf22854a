package ui

import (
	"context"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// Demo writes a demo winter and returns its plan: the rich one, or the thin one of a single logger.
type Demo func(ctx context.Context, thin bool, tell func(done, total int)) (plan string, err error)

// UI is the window. Its methods belong to the main goroutine.
type UI struct {
	Do      func(func()) // runs something on the main goroutine
	Demo    Demo
	Quit    func() // ends the program
	Keeper  *desk.Keeper
	Memory  Memory
	Version string

	app   fyne.App
	win   fyne.Window
	theme Theme
	units desk.Units
	book  desk.Book
	barn  int
	page  int

	work     *worker
	troubles []desk.Fault // what went wrong since the keeper turned to something
	stopped  bool         // the keeper stopped the figures from being worked out
	status   *status
	strip    *strip
	rail     *rail
	frame    *fyne.Container // all of them
	centre   *fyne.Container
	tabs     *container.AppTabs
	plot     *timelinePage
	files    filesScreen

	state     int // counts the states of the book
	barnViews beside[barnKey, barnView]
	fileViews beside[fileKey, desk.FilePage]
}

// Memory is what the program remembers for a user from one start to the next. Its methods are quick and tell
// of no failure: a winter is safe without it.
type Memory interface {
	Recent() []desk.Recent          // latest first
	Opened(desk.Recent)             // a winter was opened, or bears another name
	Screen(path string) desk.Screen // where the keeper was in a winter
	SetScreen(path string, s desk.Screen)
}

// Names under which the keeper's choices are kept.
const (
	prefTemperature = "temperature"
	prefVariant     = "theme"
)

// Show builds the window and shows it; the fields that are exported must be set.
func (u *UI) Show(app fyne.App) fyne.Window {
	u.app = app
	u.units.Temperature = desk.TemperatureUnit(app.Preferences().StringWithFallback(prefTemperature, string(desk.Celsius)))
	u.theme.Variant = Variant(app.Preferences().StringWithFallback(prefVariant, string(Light)))
	app.Settings().SetTheme(u.theme)
	u.win = app.NewWindow("Thawbook")
	u.work = &worker{do: u.Do, guard: u.Keeper.Guarded, begun: u.begun, progress: u.progressed, ended: u.ended}
	u.barnViews = beside[barnKey, barnView]{do: u.Do, guard: u.Keeper.Guarded, failed: u.broke}
	u.fileViews = beside[fileKey, desk.FilePage]{do: u.Do, guard: u.Keeper.Guarded, failed: u.broke}
	u.status = newStatus(u.stopWork)
	u.strip = newStrip()
	u.rail = newRail(u.showBarn, u.pressLogger, u.showFiles)
	u.rail.swap, u.rail.tell = u.swapped, u.status.read
	u.centre = container.NewStack()
	u.win.SetMainMenu(u.menu())
	u.win.SetOnDropped(func(_ fyne.Position, dropped []fyne.URI) { u.Take(pathsOf(dropped)) })
	u.win.SetCloseIntercept(u.Leave)
	u.frame = container.NewBorder(u.strip.object, u.status.object, u.rail.object, nil, u.centre)
	u.refresh()
	u.win.SetContent(u.frame)
	u.win.Resize(fyne.NewSize(1280, 800))
	u.win.SetPadded(false)
	u.win.Show()
	return u.win
}

// Take opens a winter file or a plan, or adds logger files and folders.
func (u *UI) Take(paths []string) {
	if len(paths) == 0 {
		return
	}
	for _, p := range paths {
		if ending := strings.ToLower(filepath.Ext(p)); ending == desk.PlanEnding || ending == desk.WinterEnding {
			u.open(p)
			if len(paths) > 1 {
				u.trouble(desk.Fault{Text: "Of all that was dropped only " + filepath.Base(p) + " was opened.", Next: "Drop logger files by themselves to add them."})
			}
			return
		}
	}
	u.change("Reading files", func(ctx context.Context, b desk.Book, tell Tell) (desk.Book, error) {
		return u.Keeper.Add(ctx, b, paths, tell)
	})
}

// change has a change of the winter kept and shows it; the figures follow.
func (u *UI) change(what string, keep func(context.Context, desk.Book, Tell) (desk.Book, error)) {
	before := u.book
	u.start(what, func(ctx context.Context, tell Tell) (func(), error) {
		kept, err := keep(ctx, before, tell)
		return func() { u.setBook(kept) }, err
	})
}

// start runs work that is not dropped for other work. When it has ended the figures are worked out if they are
// behind.
func (u *UI) start(what string, work Work) {
	if !u.work.busy() {
		u.troubles = nil
	}
	u.work.start(what, work)
}

// settled is how long after a change no other may come before it is worked out.
const settled = 120 * time.Millisecond

// catchUp works the figures out beside the window, if they are not those of the winter as it stands.
func (u *UI) catchUp() {
	if !u.book.Behind() || u.stopped {
		return
	}
	book, pause := u.book, settled
	if book.Barns() == 0 { // just opened
		pause = 0
	}
	u.work.judge("Working it out", func(ctx context.Context, tell Tell) (func(), error) {
		select { // of changes made quickly only the last is worked out
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(pause):
		}
		judged, err := u.Keeper.Review(ctx, book, tell)
		return func() { u.setBook(judged) }, err
	})
}

// edit is a change that is one edit of the document.
func (u *UI) edit(e desk.Edit) {
	u.change("Keeping the change", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.Edit(b, e) })
}

func (u *UI) undo() {
	u.change("Undoing", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.UndoEdit(b) })
}

func (u *UI) redo() {
	u.change("Doing it again", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return u.Keeper.RedoEdit(b) })
}

// workOut works the figures out once more, as after they were stopped.
func (u *UI) workOut() {
	u.stopped = false
	u.change("Working it out", func(_ context.Context, b desk.Book, _ Tell) (desk.Book, error) { return b.Outdated(), nil })
}

// open opens a winter file or a plan; what is refused is told in the strip, and of a damaged winter more is offered.
func (u *UI) open(path string) {
	u.leaveScreen()
	u.start("Opening "+filepath.Base(path), func(ctx context.Context, tell Tell) (func(), error) { return u.opened(ctx, path, tell) })
}

// opened opens a file beside the window.
func (u *UI) opened(ctx context.Context, path string, tell Tell) (func(), error) {
	next, err := u.Keeper.Open(ctx, path, tell)
	if err != nil && ctx.Err() == nil {
		return func() { u.refused(path, err) }, nil
	}
	return func() { u.setBook(next) }, err
}

func (u *UI) refused(path string, err error) {
	if desk.IsDamaged(err) {
		u.rescueDialog(path, err)
		return
	}
	u.trouble(desk.OpenFault(path, err))
}

func (u *UI) openDemo(thin bool) {
	u.leaveScreen()
	u.start("Making the demo winter", func(ctx context.Context, tell Tell) (func(), error) {
		path, err := u.Demo(ctx, thin, func(done, total int) { tell(int64(done), int64(total), "Making the demo winter") })
		if err != nil {
			return nil, err
		}
		return u.opened(ctx, path, tell)
	})
}

func (u *UI) begun(what string) { u.status.begin(what) }

func (u *UI) progressed(done, total int64, what string) { u.status.tell(done, total, what) }

func (u *UI) ended(err error, review bool) {
	next := "The winter is as it was."
	if review {
		next = "What you changed is kept; the figures are those from before it."
		u.stopped = u.stopped || err != nil
	}
	if err != nil {
		u.trouble(desk.Fault{Text: desk.Sentenced(err), Next: next})
	}
	if !u.work.busy() {
		u.catchUp()
	}
	if !u.work.busy() {
		u.status.end()
	}
	u.tellFaults()
}

// stopWork is the keeper's Cancel: what runs ends, and figures that were behind stay so until he asks for them.
func (u *UI) stopWork() {
	u.stopped = true
	u.work.stop()
}

// trouble says in the strip what went wrong, until the keeper turns to something else.
func (u *UI) trouble(f desk.Fault) {
	u.troubles = append(u.troubles, f)
	u.tellFaults()
}

// tellFaults says in the strip what there is to say of the book: while work runs, what went wrong alone.
func (u *UI) tellFaults() {
	var faults []desk.Fault
	if standing := u.book.Standing(); standing.Text != "" && !u.work.busy() {
		faults = append(faults, standing)
	}
	u.strip.show(slices.Concat(faults, u.troubles, u.book.Faults))
}

// setBook shows another state of the winter, or another winter where the keeper left it.
func (u *UI) setBook(b desk.Book) {
	other, renamed := !b.Same(u.book), b.Name() != u.book.Name() || b.Path != u.book.Path
	u.book, u.stopped = b, false
	u.state++
	if other {
		u.closeSheets()
		s := u.Memory.Screen(b.Path)
		u.page, u.barn, u.plot = s.Page, s.Barn, &timelinePage{at: desk.Span{From: s.From, To: s.To}}
		u.files = filesScreen{}
	}
	if b.Loaded() && (other || renamed) {
		u.Memory.Opened(desk.Recent{Path: b.Path, Name: b.Name(), At: time.Now().UnixMilli(), Draft: b.Draft})
	}
	if u.barn >= max(1, len(b.BarnNames())) {
		u.barn = 0
	}
	u.win.SetMainMenu(u.menu())
	u.tellFaults()
	u.refresh()
}

// closeSheets closes what was asked of another winter.
func (u *UI) closeSheets() {
	for _, o := range u.win.Canvas().Overlays().List() {
		o.Hide()
	}
	u.win.Canvas().SetOnTypedKey(nil)
}

// leaveScreen remembers where the keeper is in the open winter.
func (u *UI) leaveScreen() {
	if u.book.Loaded() {
		view := u.plot.view()
		u.Memory.SetScreen(u.book.Path, desk.Screen{Page: u.page, Barn: u.barn, From: view.From, To: view.To})
	}
}

func (u *UI) showBarn(barn int) {
	u.barn = barn
	if u.page == filesPageNumber {
		u.page = 0
	}
	u.refresh()
}

// Leave ends the work, closes the winter and ends the program. What was changed is on the disk already.
func (u *UI) Leave() {
	u.leaveScreen()
	u.work.stop()
	if u.work.wait(time.Second) {
		u.Keeper.Close()
	}
	u.Quit()
}

func (u *UI) setTemperature(t desk.TemperatureUnit) {
	u.units.Temperature = t
	u.app.Preferences().SetString(prefTemperature, string(t))
	u.win.SetMainMenu(u.menu())
	u.refresh()
}

func (u *UI) setVariant(v Variant) {
	u.theme.Variant = v
	u.app.Preferences().SetString(prefVariant, string(v))
	u.centre.Objects, u.rail.inside.Objects = nil, nil // made anew below: no need to paint the old ones over first
	u.app.Settings().SetTheme(u.theme)
	u.win.SetMainMenu(u.menu())
	u.refresh()
}

// refresh rebuilds what the window shows from the book.
func (u *UI) refresh() {
	shell := u.book.Shell()
	u.win.SetTitle(shell.Title)
	u.status.read("")
	u.rail.show(shell, u.barn, u.page == filesPageNumber)
	u.showRail(u.book.Loaded())
	if !u.book.Loaded() {
		recent := desk.RecentsOf(u.Memory.Recent(), u.units)
		u.centre.Objects = []fyne.CanvasObject{startPage(recent, u.open, u.openDemo, u.openDialog, u.addDialog)}
		u.centre.Refresh()
		return
	}
	page := u.barnPage
	if u.page == filesPageNumber {
		page = u.filesPage
	}
	if made := page(); made != nil { // else the page before stays until it is made
		u.centre.Objects = []fyne.CanvasObject{made}
		u.centre.Refresh()
	}
}

// showRail gives the rail its room, or takes it away.
func (u *UI) showRail(on bool) {
	if u.rail.object.Hidden == !on {
		return
	}
	u.rail.object.Hidden = !on
	u.frame.Refresh()
}

// barnView is what is shown of a barn, ok when it is judged, and barnKey all that it hangs on.
type (
	barnKey struct {
		state, barn int
		units       desk.Units
		dark        bool
	}
	barnView struct {
		desk.BarnView
		ok     bool
		figure *chart.Figure
		notes  []string
	}
)

// barnView is what is shown of the chosen barn; fresh is false while it is made.
func (u *UI) barnView() (v barnView, fresh bool) {
	book, key := u.book, barnKey{u.state, u.barn, u.units, u.theme.IsDark(u.app.Settings().ThemeVariant())}
	return u.barnViews.of(key, func() (v barnView) {
		v.BarnView, v.ok = book.Barn(key.barn, key.units)
		v.figure, v.notes = figureOf(v.Timeline, key.dark), book.Notes(key.barn)
		return v
	}, u.refresh)
}

// broke tells of a fault of the program in making what a page shows.
func (u *UI) broke(err error) { u.trouble(desk.Fault{Text: desk.Sentenced(err)}) }

// pageNames are a barn's screens in order.
var pageNames = []string{"First look", "Timeline", "Spells", "Stages", "Air and water", "Before next winter"}

// barnPage is a barn's header over its screens; nil while it is made.
func (u *UI) barnPage() fyne.CanvasObject {
	v, fresh := u.barnView()
	if !fresh {
		return nil
	}
	if !v.ok {
		return container.New(inset{20, 14, 12, 8}, body(u.nothingToShow()))
	}
	view := u.plot.view()
	u.plot = newTimelinePage(v.Timeline, v.figure, u.status.read)
	if u.plot.plot != nil && view.To > view.From {
		u.plot.plot.SetView(view)
	}
	u.tabs = container.NewAppTabs(
		container.NewTabItem(pageNames[0], firstLookPage(v.FirstLook, v.notes, u.look)),
		container.NewTabItem(pageNames[1], u.plot.object),
		container.NewTabItem(pageNames[2], newSpellsPage(v.Spells, u.look)),
		container.NewTabItem(pageNames[3], stagesPage(v.Stages, u.status.read)),
		container.NewTabItem(pageNames[4], airWaterPage(v.AirWater, u.look)),
		container.NewTabItem(pageNames[5], beforeNextPage(v.Before, u.look)),
	)
	u.tabs.SelectIndex(u.page)
	u.tabs.OnSelected = func(*container.TabItem) { u.page = u.tabs.SelectedIndex(); u.status.read("") }
	return container.NewBorder(headerOf(v.Header, u.beesDialog), nil, nil, nil, u.tabs)
}

// nothingToShow says why no barn's page is shown.
func (u *UI) nothingToShow() string {
	switch {
	case u.work.busy():
		return "The figures are being worked out."
	case len(u.book.BarnNames()) > 0:
		return "The figures are not worked out yet. Edit, Work it out again does it."
	}
	return "This winter has no barn yet. Drop the loggers' files on this window, or take barns over from another winter (File)."
}

// showPage shows one of a barn's screens.
func (u *UI) showPage(page int) {
	if u.page == filesPageNumber {
		u.page = page
		u.refresh()
	}
	if u.tabs != nil && u.page != page {
		u.tabs.SelectIndex(page)
	}
}

// look shows a sentence's stretch in the Timeline.
func (u *UI) look(s desk.Sentence) {
	u.showPage(1)
	u.plot.look(s.Look)
}

func pathsOf(dropped []fyne.URI) []string {
	var out []string
	for _, d := range dropped {
		out = append(out, d.Path())
	}
	return out
}
