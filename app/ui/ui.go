package ui

import (
	"context"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"thawbook/app/desk"
)

// UI is the window. Its methods belong to the main goroutine.
type UI struct {
	Do      func(func())                                                                   // runs something on the main goroutine
	Demo    func(ctx context.Context, tell func(done, total int)) (plan string, err error) // writes the demo, returns its plan
	Quit    func()                                                                         // ends the program
	Version string

	app    fyne.App
	win    fyne.Window
	theme  Theme
	units  desk.Units
	keeper desk.Keeper
	book   desk.Book
	barn   int
	page   int

	work   *worker
	status *status
	strip  *strip
	rail   *rail
	centre *fyne.Container
	tabs   *container.AppTabs
	plot   *timelinePage
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
	u.work = &worker{do: u.Do, begun: u.begun, progress: u.progressed, ended: u.ended}
	u.status = newStatus(u.work.stop)
	u.strip = newStrip()
	u.rail = newRail(u.showBarn, u.hangDialog)
	u.centre = container.NewStack()
	u.win.SetMainMenu(u.menu())
	u.win.SetOnDropped(func(_ fyne.Position, dropped []fyne.URI) { u.Take(pathsOf(dropped)) })
	u.win.SetCloseIntercept(u.Leave)
	u.refresh()
	u.win.SetContent(container.NewBorder(u.strip.object, u.status.object, u.rail.object, nil, u.centre))
	u.win.Resize(fyne.NewSize(1280, 800))
	u.win.SetPadded(false)
	u.win.Show()
	return u.win
}

// Take opens a plan or adds logger files and folders.
func (u *UI) Take(paths []string) {
	if len(paths) == 0 {
		return
	}
	for _, p := range paths {
		if strings.HasSuffix(strings.ToLower(p), ".toml") {
			u.openPlan(p)
			return
		}
	}
	book := u.book
	u.work.start("Reading files", func(ctx context.Context, tell Tell) (func(), error) {
		next, err := u.keeper.Add(ctx, book, paths, tell)
		return func() { u.setBook(next, 0) }, err
	})
}

func (u *UI) openPlan(path string) {
	u.work.start("Opening the plan", func(ctx context.Context, tell Tell) (func(), error) {
		return u.opened(ctx, path, tell)
	})
}

// opened reads a plan beside the window; a refused plan is told in the strip.
func (u *UI) opened(ctx context.Context, path string, tell Tell) (func(), error) {
	next, err := u.keeper.Open(ctx, path, tell)
	if err != nil && ctx.Err() == nil {
		return func() { u.strip.show([]desk.Fault{desk.PlanFault(path, err)}) }, nil
	}
	return func() { u.page = 0; u.setBook(next, 0) }, err
}

func (u *UI) openDemo() {
	u.work.start("Making the demo winter", func(ctx context.Context, tell Tell) (func(), error) {
		path, err := u.Demo(ctx, func(done, total int) { tell(int64(done), int64(total), "Making the demo winter") })
		if err != nil {
			return nil, err
		}
		return u.opened(ctx, path, tell)
	})
}

func (u *UI) hang(from desk.Slot, list int, place string) {
	book, barn := u.book, u.barn
	u.work.start("Working it out anew", func(ctx context.Context, tell Tell) (func(), error) {
		next, err := u.keeper.Hang(ctx, book, from, list, place, tell)
		return func() { u.setBook(next, barn) }, err
	})
}

func (u *UI) begun(what string) { u.status.begin(what) }

func (u *UI) progressed(done, total int64, what string) { u.status.tell(done, total, what) }

func (u *UI) ended(err error) {
	u.status.end()
	if err != nil {
		u.strip.show([]desk.Fault{{Text: err.Error(), Next: "Nothing was changed."}})
	}
}

// setBook shows another state of the winter.
func (u *UI) setBook(b desk.Book, barn int) {
	u.book, u.barn, u.plot = b, barn, nil
	u.strip.show(b.Faults)
	u.refresh()
}

func (u *UI) showBarn(barn int) {
	u.barn, u.plot = barn, nil
	u.refresh()
}

// Leave ends the work and the program.
func (u *UI) Leave() {
	u.work.stop()
	u.work.wait(time.Second)
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
	u.app.Settings().SetTheme(u.theme)
	u.win.SetMainMenu(u.menu())
	u.refresh()
}

// refresh rebuilds what the window shows from the book.
func (u *UI) refresh() {
	shell := u.book.Shell()
	u.win.SetTitle(shell.Title)
	u.status.read("")
	u.rail.show(shell, u.barn)
	u.rail.object.(interface{ Refresh() }).Refresh()
	if !u.book.Loaded() {
		u.rail.object.Hide()
		u.centre.Objects = []fyne.CanvasObject{startPage(u.openDemo, func() { u.pickFile(".toml") }, u.addDialog)}
		u.centre.Refresh()
		return
	}
	u.rail.object.Show()
	u.centre.Objects = []fyne.CanvasObject{u.barnPage()}
	u.centre.Refresh()
}

// barnPage is a barn's header over its three screens.
func (u *UI) barnPage() fyne.CanvasObject {
	v, ok := u.book.Barn(u.barn, u.units)
	if !ok {
		return body("This winter has no barn yet.")
	}
	view := u.plot.view()
	u.plot = newTimelinePage(v.Timeline, u.theme.IsDark(u.app.Settings().ThemeVariant()), u.status.read)
	if u.plot.plot != nil && view.To > view.From {
		u.plot.plot.SetView(view)
	}
	u.tabs = container.NewAppTabs(
		container.NewTabItem("First look", firstLookPage(v.FirstLook, u.book.Notes(u.barn), u.look)),
		container.NewTabItem("Timeline", u.plot.object),
		container.NewTabItem("Stages", stagesPage(v.Stages, u.status.read)),
	)
	u.tabs.SelectIndex(u.page)
	u.tabs.OnSelected = func(*container.TabItem) { u.page = u.tabs.SelectedIndex(); u.status.read("") }
	return container.NewBorder(headerOf(v.Header, u.beesDialog), nil, nil, nil, u.tabs)
}

// showPage shows one of the three screens.
func (u *UI) showPage(page int) {
	if u.book.Loaded() {
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
