package ui

import (
	"context"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

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

	app             fyne.App
	win             fyne.Window
	theme           Theme
	units           desk.Units
	book            desk.Book
	barn            int
	other, compared int // Side by side: the other barn, and how it is looked at
	comparing       *pageTabs
	page            int

	work     *worker
	inHand   string       // the latest work, while no winter is open
	troubles []desk.Fault // what went wrong since the keeper turned to something
	stopped  bool         // the keeper stopped the figures from being worked out
	status   *status
	strip    *strip
	rail     *rail
	frame    *fyne.Container   // all of them
	dark     bool              // the palette that is shown
	paper    *canvas.Rectangle // under them: the toolkit clears a window to a paler colour than it is told
	centre   *fyne.Container
	tabs     *pageTabs
	plot     *timelinePage
	lanes    laneChoice
	files    filesScreen
	soon     *time.Timer // till odd readings are looked for; nil before that

	state       int // counts the states of the book
	barnViews   beside[barnKey, barnView]
	besideViews beside[barnKey, besideView]
	fileViews   beside[fileKey, desk.FilePage]
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
	prefFolder      = "folder"
	prefWidth       = "width" // of the window
	prefHeight      = "height"
)

// Show builds the window and shows it, and takes what paths name once it stands; the fields that are exported must be set.
func (u *UI) Show(app fyne.App, paths ...string) fyne.Window {
	u.app = app
	u.units.Temperature = desk.TemperatureUnit(app.Preferences().StringWithFallback(prefTemperature, string(desk.Celsius)))
	u.theme.Variant = Variant(app.Preferences().StringWithFallback(prefVariant, string(Light)))
	app.Settings().SetTheme(u.theme)
	u.win = blankWindow(app)
	u.work = &worker{do: u.Do, guard: u.Keeper.Guarded, begun: u.begun, progress: u.progressed, ended: u.ended}
	u.barnViews = beside[barnKey, barnView]{do: u.Do, guard: u.Keeper.Guarded, failed: u.broke}
	u.besideViews = beside[barnKey, besideView]{do: u.Do, guard: u.Keeper.Guarded, failed: u.broke}
	u.fileViews = beside[fileKey, desk.FilePage]{do: u.Do, guard: u.Keeper.Guarded, failed: u.broke}
	u.status = newStatus(u.stopWork)
	u.strip = newStrip()
	u.rail = newRail(u.showBarn, u.pressLogger, u.showFiles)
	u.rail.swap, u.rail.tell = u.swapped, u.status.read
	u.centre = container.NewStack()
	u.win.SetMainMenu(u.menu())
	u.win.SetOnDropped(func(_ fyne.Position, dropped []fyne.URI) { u.Take(pathsOf(dropped)) })
	u.win.SetCloseIntercept(u.Leave)
	u.frame = bordered(u.strip.object, u.status.object, u.rail.object, nil, u.centre)
	u.paper = canvas.NewRectangle(nil)
	if len(paths) > 0 {
		u.inHand = "Opening " + filepath.Base(paths[0])
		app.Lifecycle().SetOnStarted(func() { u.Take(paths) })
	}
	u.refresh()
	u.win.SetContent(container.NewStack(u.paper, u.frame))
	u.win.Canvas().SetOnTypedKey(u.typed)
	app.Settings().AddListener(func(fyne.Settings) { go u.Do(u.followPalette) })
	return u.win
}

// setBook shows another state of the winter, or another winter where the keeper left it.
func (u *UI) setBook(b desk.Book) {
	other, renamed := !b.Same(u.book), b.Name() != u.book.Name() || b.Path != u.book.Path
	u.book = b
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
		u.win.Canvas().Overlays().Remove(o) // one that were only hidden would go on taking every press
	}
	u.win.Canvas().SetOnTypedKey(u.typed)
}

// leaveScreen remembers where the keeper is in the open winter.
func (u *UI) leaveScreen() {
	if u.book.Loaded() {
		view := u.plot.view()
		u.Memory.SetScreen(u.book.Path, desk.Screen{Page: u.page, Barn: u.barn, From: view.From, To: view.To})
	}
}

// Leave ends the work, closes the winter and ends the program. What was changed is on the disk already.
func (u *UI) Leave() {
	u.leaveScreen()
	keepWindowSize(u.app.Preferences(), u.win)
	if u.soon != nil {
		u.soon.Stop()
	}
	u.stopWork()
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
	u.dark = u.isDark()
	u.app.Settings().SetTheme(u.theme)
	u.win.SetMainMenu(u.menu())
	go u.Do(u.refresh) // when the toolkit has taken its fonts up anew: both at once hold the window up
}

// followPalette shows everything anew where the system asks for the other palette: the toolkit repaints its own, not the plots.
func (u *UI) followPalette() {
	if u.dark != u.isDark() {
		u.refresh()
	}
}

// refresh rebuilds what the window shows from the book.
func (u *UI) refresh() {
	shell := u.book.Shell()
	u.win.SetTitle(shell.Title)
	u.dark = u.isDark()
	u.paper.FillColor = u.theme.Color(theme.ColorNameBackground, u.app.Settings().ThemeVariant())
	u.status.read("")
	u.rail.show(shell, u.barn, u.page == filesPageNumber)
	u.showRail(u.book.Loaded())
	if !u.book.Loaded() {
		recent := desk.RecentsOf(u.Memory.Recent(), u.units)
		u.centre.Objects = []fyne.CanvasObject{startPage(u.inHand, recent, u.open, u.openDemo, u.openDialog, u.addDialog)}
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
