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
	list   *fyne.Container
	object fyne.CanvasObject
	choose func(barn int)
	hang   func(desk.LoggerEntry)
	files  func()
}

func newRail(choose func(barn int), hang func(desk.LoggerEntry), files func()) *rail {
	r := &rail{list: container.New(column{gap: 0}), choose: choose, hang: hang, files: files}
	padded := container.New(inset{4, 8, 8, 8}, r.list)
	r.object = container.New(fixed{width: railWidth}, container.NewBorder(nil, nil, nil, hairline(), container.NewVScroll(padded)))
	return r
}

// show fills the rail.
func (r *rail) show(s desk.Shell, chosen int, files bool) {
	r.list.RemoveAll()
	r.list.Add(container.New(inset{8, 4, 4, 6}, line(s.Winter, theme.SizeNameText, theme.ColorNameForeground, true)))
	if s.Note != "" {
		r.list.Add(container.New(inset{8, 0, 4, 6}, line(s.Note, theme.SizeNameCaptionText, colorMuted, false)))
	}
	all := newRow(s.Files.Mark, "Files", s.Files.Note, r.files)
	all.bold, all.chosen = true, files
	r.list.Add(all)
	for i, b := range s.Barns {
		entry := newRow(b.Mark, b.Name, b.Note, func() { r.choose(i) })
		entry.bold, entry.chosen = true, i == chosen && !files
		r.list.Add(entry)
		r.loggers(b.Loggers)
	}
	r.section("Weather, for every barn", s.Outdoor)
	r.section("Hangs nowhere yet", s.Tray)
	r.list.Refresh()
}

func (r *rail) section(title string, loggers []desk.LoggerEntry) {
	if len(loggers) == 0 {
		return
	}
	r.list.Add(gap(1, 8))
	r.list.Add(hairline())
	r.list.Add(container.New(inset{8, 8, 4, 2}, line(title, theme.SizeNameCaptionText, colorMuted, false)))
	r.loggers(loggers)
}

func (r *rail) loggers(all []desk.LoggerEntry) {
	for _, l := range all {
		note := l.Place
		if l.Note != "" {
			note += ", " + l.Note
		}
		entry := newRow(l.Mark, l.Name, note, func() { r.hang(l) })
		entry.indent = 8
		r.list.Add(entry)
	}
}
