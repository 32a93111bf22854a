package ui

import (
	"context"
	"fmt"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// The Files screen is the fourth page; it belongs to the winter and not to a barn.
const filesPageNumber = 7 // behind a barn's pages

const fileListWidth = 264

// filesScreen is the list of the winter's files beside one of them.
type filesScreen struct {
	chosen string // the file shown; "" is the first
	list   *lineList
	all    []desk.FileEntry
	detail *fyne.Container
}

// showFiles shows the winter's files.
func (u *UI) showFiles() {
	if u.book.Loaded() {
		u.page = filesPageNumber
		u.refresh()
	}
}

// filesPage is the list of files under one sentence, those first that wait, and beside it the chosen one.
func (u *UI) filesPage() fyne.CanvasObject {
	u.lookClosely()
	v := u.book.Files()
	s := &u.files
	top := container.NewVBox(container.New(inset{20, 14, 12, 10}, bordered(nil, nil, nil, u.quiet("Add files…", u.addDialog), sentence(v.Sentence))), hairline())
	if len(v.Files) == 0 {
		return bordered(top, nil, nil, nil)
	}
	if !slices.ContainsFunc(v.Files, func(f desk.FileEntry) bool { return f.Name == s.chosen }) {
		s.chosen = v.Files[0].Name
	}
	if s.all = v.Files; s.list == nil {
		s.list, s.detail = u.fileList(), container.NewStack()
	}
	s.list.Refresh()
	u.fillFile()
	left := container.New(fixed{width: fileListWidth}, bordered(nil, nil, nil, hairline(), container.New(inset{12, 6, 8, 0}, s.list)))
	return bordered(top, nil, left, nil, s.detail)
}

// fileList is the list of files.
func (u *UI) fileList() *lineList {
	s := &u.files
	made := func(i int) fyne.CanvasObject {
		f := s.all[i]
		r := newRow(f.Mark, f.Name, f.Note, func() { u.showFile(f.Name) })
		r.chosen = f.Name == s.chosen
		return r
	}
	return newLineList(func() int { return len(s.all) }, made, func(i int) { u.showFile(s.all[i].Name) })
}

// dismissals are the ways to take files that could not be taken off the list.
func (u *UI) dismissals(p desk.FilePage) fyne.CanvasObject {
	ways := container.NewHBox()
	for _, d := range p.Dismissals {
		ways.Add(u.quiet(d.Label, func() { u.edit(d.Edit) }))
	}
	return ways
}

// showFile shows another file of the list.
func (u *UI) showFile(name string) {
	u.files.chosen = name
	u.files.list.Refresh()
	u.fillFile()
}

// fileKey is all that what is shown of a file hangs on.
type fileKey struct {
	state int
	name  string
	units desk.Units
}

// fillFile puts the chosen file beside the list, as soon as what is shown of it is made.
func (u *UI) fillFile() {
	book, key := u.book, fileKey{u.state, u.files.chosen, u.units}
	p, fresh := u.fileViews.of(key, func() desk.FilePage { p, _ := book.File(key.name, key.units); return p }, u.fillChosen)
	if fresh {
		u.files.detail.Objects = []fyne.CanvasObject{u.filePage(p)}
		u.files.detail.Refresh()
	}
}

// fillChosen is fillFile where the files are still shown.
func (u *UI) fillChosen() {
	if u.page == filesPageNumber && u.files.detail != nil {
		u.fillFile()
	}
}

// filePage is all that is shown of a file.
func (u *UI) filePage(p desk.FilePage) fyne.CanvasObject {
	page := container.New(column{widest: 860, gap: 12}, fileTitle(p))
	for _, q := range p.Questions {
		page.Add(u.questionOf(p, q))
	}
	for _, a := range p.Answers {
		page.Add(u.takenBack(a.Text, "Ask again", a.Undo))
	}
	if len(p.Dismissals) > 0 {
		page.Add(u.dismissals(p))
	}
	if len(p.Head.Rows) > 0 {
		page.Add(heading("As it stands in the file"))
		page.Add(headOf(p.Head))
	}
	if len(p.Columns.Columns) > 0 && len(p.Questions) == 0 {
		page.Add(heading("Which columns belong together"))
		page.Add(u.columnsOf(p))
	}
	for i, plot := range p.Plots {
		page.Add(smallPlot(plot, i == len(p.Plots)-1))
	}
	if len(p.Loggers) > 0 {
		page.Add(heading("Where it hung"))
		page.Add(byHandfuls(12, len(p.Loggers), func(i int) fyne.CanvasObject { return u.loggerOf(p.Loggers[i]) }))
	}
	if len(p.Notes) > 0 {
		page.Add(heading("Notes on the data"))
		page.Add(byHandfuls(12, len(p.Notes), func(i int) fyne.CanvasObject { return u.noteOf(p, p.Notes[i]) }))
	}
	return container.NewVScroll(container.New(inset{20, 14, 20, 16}, page))
}

// heading parts the page: a hairline and a small title.
func heading(text string) fyne.CanvasObject {
	return container.New(column{gap: 6}, gap(1, 2), hairline(), newProse(text, theme.SizeNameCaptionText, colorMuted, true))
}

// fileTitle is a file's name and how it stands, what was understood of it, and its clock.
func fileTitle(p desk.FilePage) fyne.CanvasObject {
	top := container.New(sideBySide{8})
	if res := markIcon(p.Mark); res != nil {
		top.Add(container.New(fixed{14, 14}, widget.NewIcon(res)))
	}
	top.Add(newProse(p.Name, theme.SizeNameText, theme.ColorNameForeground, true))
	top.Add(line(p.State, theme.SizeNameCaptionText, colorMuted, false))
	words := container.New(column{gap: 4}, top, body(p.Sentence))
	if p.Clock != "" {
		words.Add(caption(p.Clock))
	}
	return words
}

// questionOf asks one question, with a button for each answer and what the file would then say.
func (u *UI) questionOf(p desk.FilePage, q desk.FileQuestion) fyne.CanvasObject {
	ask := container.New(column{gap: 6}, hairline(), newProse(q.Text, theme.SizeNameText, theme.ColorNameForeground, true))
	for _, o := range q.Options {
		b := widget.NewButton(o.Label, func() { u.answer(p, q, o) })
		setUsable(b, u.book.Changeable())
		ask.Add(bordered(nil, nil, container.New(fixed{width: 164}, container.NewVBox(b)), nil, container.New(inset{12, 9, 0, 0}, body(o.Preview))))
	}
	if q.Typed != "" {
		ask.Add(u.typedAnswer(p, q))
	}
	if q.Pairing && len(p.Columns.Columns) > 0 {
		ask.Add(inLine(container.NewHBox(u.quiet("Say it column by column…", func() { u.columnsDialog(p) }))))
	}
	if q.Before != "" {
		ask.Add(caption(q.Before))
	}
	return ask
}

// answer answers a question; where other files written the same way ask the same it is asked once whether for all.
func (u *UI) answer(p desk.FilePage, q desk.FileQuestion, o desk.FileOption) {
	if len(q.Alike) == 0 {
		u.edit(desk.Answered(p.Name, q, o.Option, false))
		return
	}
	var s *sheet
	say := func(alone bool) func() {
		return func() { s.close(); u.edit(desk.Answered(p.Name, q, o.Option, alone)) }
	}
	shut := func() { s.close() }
	all := newKeyButton(fmt.Sprintf("For all %d", len(q.Alike)+1), say(false), shut)
	all.Importance = widget.HighImportance
	one := newKeyButton("For this one only", say(true), shut)
	s = newSheet(u.win, o.Label+": for the other files too?", body(q.Others), 520, one, all)
	u.win.Canvas().Focus(all)
}

func setUsable(b *widget.Button, on bool) {
	if !on {
		b.Disable()
	}
}

// takenBack is a sentence with a button that takes what it says back.
func (u *UI) takenBack(text, label string, undo desk.Edit) fyne.CanvasObject {
	if undo == nil {
		return caption(text)
	}
	return bordered(nil, nil, nil, u.quiet(label, func() { u.edit(undo) }), container.New(inset{0, 9, 0, 0}, caption(text)))
}

// quiet is a button that changes the winter and does not press itself on the eye.
func (u *UI) quiet(label string, press func()) *tabButton {
	b := newTabButton(label, press)
	setUsable(&b.Button, u.book.Changeable())
	return b
}

// loggerOf is a logger of the file: where it hangs and why, and the ways to change that.
func (u *UI) loggerOf(l desk.FileLogger) fyne.CanvasObject {
	words := container.New(column{gap: 2}, body(l.Name+": "+l.Hangs))
	if l.Why != "" {
		words.Add(caption(l.Why))
	}
	ways := container.NewHBox()
	if l.Suggested != nil {
		b := widget.NewButton(l.Suggestion, func() { u.edit(l.Suggested) })
		setUsable(b, u.book.Changeable())
		ways.Add(b)
	}
	page := container.New(column{gap: 0}, words)
	if l.Record != nil {
		page.Add(u.recordOf(*l.Record))
	} else {
		ways.Add(u.quiet("Change…", func() { u.loggerDialog(l.Entry) }))
		ways.Add(u.quiet("Swap…", func() { u.swapOf(l.Entry) }))
	}
	for _, way := range u.sensorWays(l) {
		ways.Add(way)
	}
	if l.Suggested == nil {
		page.Add(inLine(ways))
	} else {
		page.Add(ways)
	}
	if l.Distance != "" {
		page.Add(u.distanceOf(l))
	}
	for _, line := range u.sensorLines(l) {
		page.Add(line)
	}
	return page
}

// lookClosely looks for odd readings, which First look and Files tell of, when nothing else runs and nobody did yet. Whatever comes
// after it overtakes it.
func (u *UI) lookClosely() {
	before := u.book
	if before.Closely() || u.work.busy() {
		return
	}
	u.work.judge("Looking for odd readings", func(ctx context.Context, _ Tell) (func(), error) {
		looked, err := u.Keeper.LookClosely(ctx, before)
		return func() { u.takeLooked(looked) }, err
	})
}

// restBefore is how long First look stands before odd readings are looked for: whoever opens a winter or changes it has the machine
// to himself meanwhile.
const restBefore = time.Second

// lookSoon looks closely once First look has stood for a while. On Files, where each doubt is answered, it is looked at once.
func (u *UI) lookSoon() {
	if u.soon != nil {
		u.soon.Stop()
	}
	state := u.state
	u.soon = time.AfterFunc(restBefore, func() {
		u.Do(func() {
			if u.state == state && u.page == 0 {
				u.lookClosely()
			}
		})
	})
}

// takeLooked takes up what was found of odd readings. A page that says nothing of it stays as it stands: it may be read or
// scrolled just now.
func (u *UI) takeLooked(looked desk.Book) {
	if u.page != filesPageNumber && !looked.InDoubt() {
		u.book = looked
		return
	}
	u.setBook(looked)
}

// noteOf is a note with the way to its line.
func (u *UI) noteOf(p desk.FilePage, n desk.FileNoteLine) fyne.CanvasObject {
	icon := gap(14, 14)
	if res := markIcon(n.Mark); res != nil {
		icon = container.NewVBox(container.New(fixed{14, 14}, widget.NewIcon(res)))
	}
	var way fyne.CanvasObject
	if n.Line > 0 {
		way = container.NewVBox(newTabButton("Show", func() { u.showLine(p, n) }))
	}
	return container.New(sentenceLayout{}, icon, body(n.Text), orGap(way))
}
