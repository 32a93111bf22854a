package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"thawbook/app/desk"
)

const railWidth = 244

// rail is the left side: the winter, its barns with their loggers, the weather and the tray.
type rail struct {
	list   *lineList
	inside *fyne.Container
	object *fyne.Container
	choose func(barn int)
	hang   func(desk.LoggerEntry)
	files  func()

	swap func(one, other desk.LoggerEntry)
	tell func(text string)
	all  []railLine
	over int // the line a logger is dragged over, or −1
}

func newRail(choose func(barn int), hang func(desk.LoggerEntry), files func()) *rail {
	r := &rail{inside: container.NewStack(), choose: choose, hang: hang, files: files}
	r.list = newLineList(func() int { return len(r.all) }, func(i int) fyne.CanvasObject { return r.all[i].made() }, func(i int) { r.all[i].press() })
	padded := container.New(inset{4, 8, 8, 8}, r.inside)
	r.object = container.New(fixed{width: railWidth}, bordered(nil, nil, nil, hairline(), padded))
	return r
}

// railLine is a line of the rail: made makes it when it comes into sight, and press is what it does.
type railLine struct {
	made   func() fyne.CanvasObject
	press  func()
	logger *desk.LoggerEntry // whose line it is; nil where no logger's
}

// show fills the rail.
func (r *rail) show(s desk.Shell, chosen int, files bool) {
	head := container.New(column{}, container.New(inset{8, 4, 4, 6}, line(s.Winter, theme.SizeNameText, theme.ColorNameForeground, true)))
	if s.Note != "" {
		head.Add(container.New(inset{8, 0, 4, 6}, line(s.Note, theme.SizeNameCaptionText, colorMuted, false)))
	}
	r.all, r.over = r.lines(s, chosen, files), -1
	r.inside.Objects = []fyne.CanvasObject{bordered(head, nil, nil, nil, r.list)}
	r.inside.Refresh()
	r.list.Refresh()
}

// lines are all lines of the rail.
func (r *rail) lines(s desk.Shell, chosen int, files bool) []railLine {
	all := []railLine{headLine(s.Files.Mark, "Files", s.Files.Note, files, r.files)}
	for i, b := range s.Barns {
		all = append(all, headLine(b.Mark, b.Name, b.Note, i == chosen && !files, func() { r.choose(i) }))
		all = append(all, r.loggers(b.Loggers)...)
	}
	all = append(all, r.section("Weather, for every barn", s.Outdoor)...)
	return append(all, r.section("Hangs nowhere yet", s.Tray)...)
}

// headLine is a line that leads to a page.
func headLine(mark desk.Mark, title, note string, chosen bool, press func()) railLine {
	return railLine{press: press, made: func() fyne.CanvasObject {
		entry := newRow(mark, title, note, press)
		entry.bold, entry.chosen = true, chosen
		return entry
	}}
}

func (r *rail) section(title string, loggers []desk.LoggerEntry) []railLine {
	if len(loggers) == 0 {
		return nil
	}
	over := railLine{press: func() {}, made: func() fyne.CanvasObject {
		text := container.New(inset{8, 8, 4, 2}, line(title, theme.SizeNameCaptionText, colorMuted, false))
		return container.New(column{}, gap(1, 8), hairline(), text)
	}}
	return append([]railLine{over}, r.loggers(loggers)...)
}

func (r *rail) loggers(all []desk.LoggerEntry) (out []railLine) {
	for _, l := range all {
		note := l.Place
		if l.Note != "" {
			note += ", " + l.Note
		}
		press := func() { r.hang(l) }
		at := &l
		out = append(out, railLine{press: press, logger: at, made: func() fyne.CanvasObject {
			entry := newRow(l.Mark, l.Name, note, press)
			entry.indent = 8
			entry.aims = r.over >= 0 && r.all[r.over].logger == at
			entry.drag = func(over fyne.Position) { r.dragged(l, over) }
			entry.drop = func() { r.dropped(l) }
			return entry
		}})
	}
	return out
}

// dragged follows a logger that is dragged over the window, and shows with which one it would change places.
func (r *rail) dragged(l desk.LoggerEntry, over fyne.Position) {
	before := r.over
	r.over = r.at(over)
	for _, i := range []int{before, r.over} {
		if before != r.over && i >= 0 && r.all[i].logger.At != l.At {
			r.list.RefreshItem(i)
		}
	}
	text := "Let go over another logger: the two change places."
	if r.over >= 0 && r.all[r.over].logger.At != l.At {
		text = "Let go: " + l.Name + " and " + r.all[r.over].logger.Name + " change places for the whole record. From a day on: Edit, Swap two loggers…"
	}
	r.tell(text)
}

// dropped lets two loggers change places, or presses the one that was not moved off its line.
func (r *rail) dropped(l desk.LoggerEntry) {
	i := r.over
	r.over = -1
	r.tell("")
	switch {
	case i < 0:
	case r.all[i].logger.At == l.At:
		r.hang(l)
	default:
		r.list.RefreshItem(i)
		r.swap(l, *r.all[i].logger)
	}
}

// at is the logger's line at a place of the window, or −1.
func (r *rail) at(pos fyne.Position) int {
	in := pos.Subtract(fyne.CurrentApp().Driver().AbsolutePositionForObject(r.list))
	if in.X < 0 || in.Y < 0 || in.X > r.list.Size().Width || in.Y > r.list.Size().Height {
		return -1
	}
	i := int((in.Y + r.list.GetScrollOffset()) / (lineHigh() + theme.Padding()))
	if i >= len(r.all) || r.all[i].logger == nil {
		return -1
	}
	return i
}
