package ui

import (
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// sheet is a dialog that Escape closes, whatever in it has the focus.
type sheet struct {
	pop    *widget.PopUp
	closed func()
	before func(*fyne.KeyEvent)
}

// newSheet shows content over the window under a title, with a button that closes it.
func newSheet(win fyne.Window, title string, content fyne.CanvasObject, width float32, actions ...fyne.CanvasObject) *sheet {
	s := &sheet{}
	shut := newKeyButton("Close", s.close, s.close)
	shut.others = func(e *fyne.KeyEvent) { scrollByKey(firstScroll(content), e.Name) }
	row := container.NewHBox(append([]fyne.CanvasObject{layout.NewSpacer()}, append(actions, shut)...)...)
	words := container.New(column{gap: 12}, sentence(title), content, row)
	s.pop = widget.NewModalPopUp(container.New(inset{12, 12, 12, 8}, container.New(fixed{width: width}, words)), win.Canvas())
	s.before = win.Canvas().OnTypedKey()
	win.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			s.close()
		}
	})
	s.pop.Show()
	win.Canvas().Focus(shut)
	return s
}

func (s *sheet) close() {
	if s.pop.Hidden {
		return
	}
	s.pop.Canvas.SetOnTypedKey(s.before)
	s.pop.Hide()
	if s.closed != nil {
		s.closed()
	}
}

// closeOnEscape lets Escape close a pop-up that a press beside it closes too. Nothing says when that was: the keys go back
// to whose they were with the next one.
func closeOnEscape(pop *widget.PopUp) {
	before := pop.Canvas.OnTypedKey()
	pop.Canvas.SetOnTypedKey(func(e *fyne.KeyEvent) {
		open := pop.Visible()
		switch {
		case open && e.Name != fyne.KeyEscape:
			return
		case open:
			pop.Hide()
		}
		pop.Canvas.SetOnTypedKey(before)
		if !open && before != nil {
			before(e)
		}
	})
}

// sheetFrame is how much of the window's height a sheet's title, buttons and edges take.
const sheetFrame = 160

// keyButton is a button that passes Escape on.
type keyButton struct {
	widget.Button
	escape func()
	others func(*fyne.KeyEvent) // what is done with other keys, or nil
}

func newKeyButton(text string, tapped, escape func()) *keyButton {
	b := &keyButton{escape: escape}
	b.Text, b.OnTapped = text, tapped
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey closes on Escape and presses on Enter, as fyne.Focusable.
func (b *keyButton) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		b.escape()
	case fyne.KeyReturn, fyne.KeyEnter:
		b.Tapped(nil)
	default:
		b.Button.TypedKey(e)
		if b.others != nil {
			b.others(e)
		}
	}
}

// keySelect is a list to choose from that passes Escape on.
type keySelect struct {
	widget.Select
	escape func()
}

func newKeySelect(options []string, chosen string, escape func()) *keySelect {
	s := &keySelect{escape: escape}
	s.Options, s.Selected = options, chosen
	s.ExtendBaseWidget(s)
	return s
}

// TypedKey closes on Escape and shows what there is to choose from, as fyne.Focusable.
func (s *keySelect) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		s.escape()
	case fyne.KeySpace, fyne.KeyUp, fyne.KeyDown:
		s.Tapped(nil)
	default:
		s.Select.TypedKey(e)
	}
}

// keyEntry is a text field that passes Escape on.
type keyEntry struct {
	widget.Entry
	escape func()
}

func newKeyEntry(escape func()) *keyEntry {
	e := &keyEntry{escape: escape}
	e.MultiLine, e.Wrapping = true, fyne.TextWrapOff
	e.ExtendBaseWidget(e)
	return e
}

// TypedKey closes on Escape, as fyne.Focusable.
func (e *keyEntry) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyEscape {
		e.escape()
		return
	}
	e.Entry.TypedKey(k)
}

// Words of the list of places beside the barns.
const (
	everyBarn = "outdoors, for every barn"
	nowhere   = "nowhere yet"
)

func setEnabled(s *keySelect, on bool) {
	if on {
		s.Enable()
		return
	}
	s.Disable()
}

func listName(list int, barns []string) string {
	switch {
	case list == desk.OutdoorList:
		return everyBarn
	case list >= 0 && list < len(barns):
		return barns[list]
	}
	return nowhere
}

func listNumber(name string, barns []string) int {
	for i, b := range barns {
		if b == name {
			return i
		}
	}
	if name == everyBarn {
		return desk.OutdoorList
	}
	return desk.TrayList
}

// Days as they may be written.
const exampleIn, exampleOut = "2024-11-12", "2025-04-04 07:30"

// beesDialog asks when the bees of the shown barn went in and came out; what is wrong stands beside it.
func (u *UI) beesDialog() {
	var s *sheet
	shut := func() { s.close() }
	was := u.book.BeesInOut(u.barn)
	in, out, hives, wrong := beesEntry(was.In, exampleIn, shut), beesEntry(was.Out, exampleOut, shut), beesEntry(was.Hives, "340", shut), body("")
	commit := func() {
		typed := desk.BeesTime{In: in.Text, Out: out.Text, Hives: hives.Text, Ledger: was.Ledger}
		text := u.book.CheckBeesInOut(typed)
		if wrong.setText(text); text != "" {
			return
		}
		s.close()
		if e, ok := u.book.SetBeesInOut(u.barn, typed); ok {
			u.edit(e)
		}
	}
	form := container.New(layout.NewFormLayout(), widget.NewLabel("Bees in"), in, widget.NewLabel("Bees out"), out)
	if !was.Ledger {
		form.Objects = append(form.Objects, widget.NewLabel("Hives"), hives)
	}
	for _, field := range []*keyEntry{in, out, hives} {
		field.OnSubmitted = func(string) { commit() }
	}
	set := newKeyButton("Set", commit, shut)
	set.Importance = widget.HighImportance
	seenIn, seenOut := u.book.BeesSeen(u.barn)
	content := container.New(column{gap: 8}, form, wrong, proposed(seenIn, in, shut), proposed(seenOut, out, shut), caption(desk.HelpLine("bees_time")))
	s = newSheet(u.win, "When were the bees in, in how many hives?", content, 480, set)
	u.win.Canvas().Focus(in)
}

// beesEntry is a field of one line, with an example of what is meant.
func beesEntry(text, example string, shut func()) *keyEntry {
	e := newKeyEntry(shut)
	e.MultiLine, e.Text = false, text
	e.SetPlaceHolder(example)
	return e
}

// proposed is what the loggers tell of a day, with a button that takes it over into its field.
func proposed(p desk.DayProposal, field *keyEntry, shut func()) fyne.CanvasObject {
	if p.Text == "" {
		return caption(p.Why)
	}
	take := newKeyButton("Take "+p.Text, func() { field.SetText(p.Text) }, shut)
	return container.New(column{gap: 4}, caption(p.Why), container.NewHBox(take))
}

// addDialog takes files by pasted paths, by folder or one by one.
func (u *UI) addDialog() {
	var s *sheet
	entry := newKeyEntry(func() { s.close() })
	entry.SetPlaceHolder("Paths of files or folders, one a line")
	entry.SetMinRowsVisible(4)
	add := newKeyButton("Add these", func() {
		paths := linesOf(entry.Text)
		s.close()
		u.Take(paths)
	}, func() { s.close() })
	add.Importance = widget.HighImportance
	one := widget.NewButtonWithIcon("One file…", theme.FileIcon(), func() { s.close(); u.pickFile("Add a logger file", u.takeOne, ".csv", ".txt", ".tsv", ".zip", ".gz") })
	folder := widget.NewButtonWithIcon("A folder…", theme.FolderIcon(), func() { s.close(); u.pickFolder(u.takeOne) })
	content := container.New(column{gap: 8}, body("Paste paths, pick a file or a folder, or drop files anywhere on the window."), entry, container.NewHBox(one, folder))
	s = newSheet(u.win, "Add logger files", content, 520, add)
}

func linesOf(text string) []string {
	var out []string
	for l := range strings.SplitSeq(text, "\n") {
		if l = strings.Trim(strings.TrimSpace(l), `"'`); l != "" {
			out = append(out, strings.TrimPrefix(l, "file://"))
		}
	}
	return out
}

// openDialog picks a winter file or a plan.
func (u *UI) openDialog() {
	u.pickFile("Open a winter or a plan", u.open, desk.WinterEnding, desk.PlanEnding)
}

// takeOne takes one picked path.
func (u *UI) takeOne(path string) { u.Take([]string{path}) }

func (u *UI) pickFile(title string, picked func(path string), endings ...string) {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if f == nil || err != nil {
			return
		}
		path := f.URI().Path()
		f.Close()
		u.cameFrom(path)
		picked(path)
	}, u.win)
	d.SetTitleText(title)
	d.SetFilter(storage.NewExtensionFileFilter(endings))
	d.SetLocation(u.lastFolder())
	d.SetView(dialog.ListView)
	d.Show()
	d.Resize(fyne.NewSize(760, 520)) // only a shown file dialog has a size
	u.escapes(d.Hide, d.SetOnClosed)
}

func (u *UI) pickFolder(picked func(path string)) {
	d := dialog.NewFolderOpen(func(f fyne.ListableURI, err error) {
		if f != nil && err == nil {
			picked(f.Path())
		}
	}, u.win)
	d.SetLocation(u.lastFolder())
	d.Show()
	d.Resize(fyne.NewSize(760, 520)) // only a shown file dialog has a size
	u.escapes(d.Hide, d.SetOnClosed)
}

// cameFrom sets down the folder of what the keeper picked, dropped or named last; a winter opened again from the list of those
// lately open may lie where the keeper never goes.
func (u *UI) cameFrom(path string) {
	if whole, err := filepath.Abs(path); err == nil {
		u.app.Preferences().SetString(prefFolder, filepath.Dir(whole))
	}
}

// lastFolder is where a dialog that looks for files begins: where the keeper was last; nil where that is gone.
func (u *UI) lastFolder() fyne.ListableURI {
	folder := u.app.Preferences().String(prefFolder)
	if folder == "" {
		return nil
	}
	uri, err := storage.ListerForURI(storage.NewFileURI(folder))
	if err != nil {
		return nil
	}
	return uri
}

// escapes lets Escape close a dialog of the toolkit's.
func (u *UI) escapes(hide func(), onClosed func(func())) {
	before := u.win.Canvas().OnTypedKey()
	onClosed(func() { u.win.Canvas().SetOnTypedKey(before) })
	u.win.Canvas().Unfocus()
	u.win.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			hide()
		}
	})
}

// keysDialog lists keys and cautions.
func (u *UI) keysDialog() {
	content := container.New(column{gap: 8})
	for _, k := range keyLines {
		content.Add(body(k))
	}
	content.Add(hairline())
	for _, c := range desk.Cautions() {
		content.Add(caption(c))
	}
	newSheet(u.win, "Keys and cautions", content, 560)
}

// meaningsDialog says what the figures of the page that is shown are, then what answers and words mean.
func (u *UI) meaningsDialog() {
	content := container.New(column{gap: 8})
	for _, m := range desk.Unrepeated(append(u.meanings(), desk.Meanings()...)) {
		content.Add(body(m))
	}
	newSheet(u.win, "What the figures mean", tallest(content, 680, u.win.Canvas().Size().Height-sheetFrame), 680)
}

// meanings are what the figures of the barn's page that is shown are, a line each.
func (u *UI) meanings() []string {
	if !u.book.Loaded() {
		return nil
	}
	v, _ := u.barnView()
	of := map[int]func() []string{1: v.Timeline.Meanings, 2: v.Spells.Meanings, 3: v.Stages.Meanings, 4: v.AirWater.Meanings, sideBySidePage: u.besideMeanings, 6: v.Before.Meanings}[u.page]
	if of == nil || !v.ok {
		return nil
	}
	return of()
}

func (u *UI) besideMeanings() []string {
	v, _ := u.besideView()
	return append(v.beside.Meanings(), v.all.Meanings()...)
}

var keyLines = []string{
	"Ctrl+O opens a winter or a plan, Ctrl+I adds files, Ctrl+S keeps the winter under a name, Ctrl+Q quits. Every change is on the disk as soon as it is made.",
	"Ctrl+Z undoes the last change, Ctrl+Y takes it up again, also after the program was closed; Ctrl+N sets down a note.",
	"Ctrl+1 to Ctrl+7 show First look, Timeline, Spells, Stages, Air and water, Side by side, and Before next winter; Ctrl+8 shows the files. Ctrl+6 again turns the parts of Side by side.",
	"In the Timeline: drag pans, the wheel zooms at the pointer, shift and drag measures a stretch; arrow keys pan, + and − zoom, Home shows the whole winter; N sets a note down where the pointer is, the right button or the menu key opens what else can be done there.",
	"Drag one logger onto another in the list on the left and the two change places; Edit, Swap two loggers… does it from a day on.",
	"Tab goes from one thing to the next, Space and Enter press it, Escape closes a dialog. Arrows, Page Up and Down, Home and End move a long page.",
}

func (u *UI) aboutDialog() {
	content := container.New(column{gap: 8},
		body("Thawbook "+u.Version+" reads the loggers of an indoor wintering, judges the bees' time in each barn and says how sure it is."),
		caption("It looks back. It is no alarm and no safety device. Nothing is sent anywhere."),
		caption("The Thawbook authors, MIT licence."))
	newSheet(u.win, "Thawbook", content, 480)
}
