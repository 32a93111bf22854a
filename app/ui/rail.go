package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

const railWidth = 244

// rail is the left side: the winter, its barns with their loggers, the weather and the tray.
type rail struct {
	list   *widget.List
	inside *fyne.Container
	object *fyne.Container
	choose func(barn int)
	hang   func(desk.LoggerEntry)
	files  func()
}

func newRail(choose func(barn int), hang func(desk.LoggerEntry), files func()) *rail {
	r := &rail{inside: container.NewStack(), choose: choose, hang: hang, files: files}
	padded := container.New(inset{4, 8, 8, 8}, r.inside)
	r.object = container.New(fixed{width: railWidth}, container.NewBorder(nil, nil, nil, hairline(), padded))
	return r
}

// railLine is a line of the rail: made makes it when it comes into sight, and press is what it does.
type railLine struct {
	made  func() fyne.CanvasObject
	press func()
}

// show fills the rail.
func (r *rail) show(s desk.Shell, chosen int, files bool) {
	head := container.New(column{}, container.New(inset{8, 4, 4, 6}, line(s.Winter, theme.SizeNameText, theme.ColorNameForeground, true)))
	if s.Note != "" {
		head.Add(container.New(inset{8, 0, 4, 6}, line(s.Note, theme.SizeNameCaptionText, colorMuted, false)))
	}
	before := r.list
	r.list = railList(r.lines(s, chosen, files))
	r.inside.Objects = []fyne.CanvasObject{container.NewBorder(head, nil, nil, nil, r.list)}
	r.inside.Refresh()
	if before != nil {
		r.list.ScrollToOffset(before.GetScrollOffset())
	}
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
		out = append(out, railLine{press: press, made: func() fyne.CanvasObject {
			entry := newRow(l.Mark, l.Name, note, press)
			entry.indent = 8
			return entry
		}})
	}
	return out
}

// railList is a list of lines of which only those in sight are made: a winter may have five hundred loggers.
func railList(all []railLine) *widget.List {
	high := newRow(desk.MarkNone, "name", "note", nil).MinSize().Height - theme.Padding() // which the list leaves between lines
	template := func() fyne.CanvasObject { return container.New(fixed{height: high}) }
	list := widget.NewList(func() int { return len(all) }, template, func(i int, o fyne.CanvasObject) {
		place := o.(*fyne.Container)
		place.Objects = []fyne.CanvasObject{all[i].made()}
		place.Refresh()
	})
	list.HideSeparators = true
	list.OnSelected = func(i int) { all[i].press() } // by the keys
	return list
}
