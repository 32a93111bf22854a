package ui

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// columnsOf says which columns of a file are whose, with the way to group them otherwise.
func (u *UI) columnsOf(p desk.FilePage) fyne.CanvasObject {
	lines := byHandfuls(2, len(p.Columns.Loggers), func(i int) fyne.CanvasObject { return body(p.Columns.Loggers[i]) })
	return container.New(column{gap: 0}, lines, container.NewHBox(u.quiet("Group them otherwise…", func() { u.columnsDialog(p) })))
}

// columnsDialog asks for each column which logger it is of; what is wrong stands beneath.
func (u *UI) columnsDialog(p desk.FilePage) {
	var s *sheet
	shut := func() { s.close() }
	grid := container.New(spread{wide: []float32{0, 1.4, 1, 0.8, 1.4}, high: 40})
	for _, title := range []string{"", "In the file", "Measures", "First", "Logger"} {
		grid.Add(line(title, theme.SizeNameCaptionText, colorMuted, false))
	}
	entries := make([]*keyChoice, len(p.Columns.Columns))
	for i, c := range p.Columns.Columns {
		entries[i] = newKeyChoice(append(p.Columns.Names(), desk.LeftOutColumn), c.Logger, shut)
		cells := []string{strconv.Itoa(c.Number), c.Header, c.What, c.First}
		for _, text := range cells {
			grid.Add(line(text, theme.SizeNameText, theme.ColorNameForeground, false))
		}
		grid.Add(entries[i])
	}
	wrong := body("")
	commit := func() {
		var loggers []string
		for _, e := range entries {
			loggers = append(loggers, e.Text)
		}
		e, problem := u.book.Regroup(p.Name, p.Columns, loggers)
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		if e != nil {
			u.edit(e)
		}
	}
	set := newKeyButton("Group them so", commit, shut)
	set.Importance = widget.HighImportance
	words := body("Columns with the same logger belong together. Choose one of the names, write another, or leave a column out.")
	s = newSheet(u.win, "Which columns belong together?", container.New(column{gap: 8}, words, inSight(grid, len(entries)), wrong, caption(p.Columns.Holds)), 700, set)
}

// inSight is a table of so many columns of a file, in a scroll where they are many.
func inSight(grid fyne.CanvasObject, columns int) fyne.CanvasObject {
	if columns <= mostColumnsInSight {
		return grid
	}
	scroll := container.NewVScroll(grid)
	scroll.SetMinSize(fyne.NewSize(0, 40*mostColumnsInSight))
	return scroll
}

// mostColumnsInSight is how many columns of a file are shown without scrolling.
const mostColumnsInSight = 9

// spread gives the cells of a table their shares of the width, the first column what a number needs, and one
// height to every row but the first.
type spread struct {
	wide []float32
	high float32
}

const numberWide, titleHigh, spreadGap = 28, 20, 10

// Layout places the cells, as fyne.Layout.
func (t spread) Layout(o []fyne.CanvasObject, size fyne.Size) {
	sum := float32(0)
	for _, w := range t.wide {
		sum += w
	}
	room := size.Width - numberWide - spreadGap*float32(len(t.wide)-1)
	x, y := float32(0), float32(0)
	for i, c := range o {
		at := i % len(t.wide)
		if at == 0 {
			x = 0
		}
		w, h, row := room*t.wide[at]/sum, t.high, i/len(t.wide)
		if at == 0 {
			w = numberWide
		}
		if y = titleHigh + float32(row-1)*t.high; row == 0 {
			y, h = 0, titleHigh
		}
		own := c.MinSize().Height
		c.Move(fyne.NewPos(x, y+(h-own)/2))
		c.Resize(fyne.NewSize(w, own))
		x += w + spreadGap
	}
}

// MinSize is the table's height, as fyne.Layout: its width is what there is.
func (t spread) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(240, titleHigh+t.high*float32(max(0, len(o)/len(t.wide)-1)))
}

// keyChoice is a text field with a list to choose from that passes Escape on.
type keyChoice struct {
	widget.SelectEntry
	escape func()
}

func newKeyChoice(options []string, text string, escape func()) *keyChoice {
	c := &keyChoice{escape: escape}
	c.Wrapping = fyne.TextWrapOff
	c.ExtendBaseWidget(c)
	c.SetOptions(options)
	c.SetText(text)
	return c
}

// TypedKey closes on Escape, as fyne.Focusable.
func (c *keyChoice) TypedKey(k *fyne.KeyEvent) {
	if k.Name == fyne.KeyEscape {
		c.escape()
		return
	}
	c.SelectEntry.TypedKey(k)
}
