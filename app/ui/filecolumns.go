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
	return container.New(column{gap: 0}, lines, inLine(container.NewHBox(u.quiet("Group them otherwise…", func() { u.columnsDialog(p) }))))
}

// columnsDialog asks for each column which logger it is of; what is wrong stands beneath. A column whose row was never
// shown stays with the logger it has.
func (u *UI) columnsDialog(p desk.FilePage) {
	var s *sheet
	shut := func() { s.close() }
	names := append(p.Columns.Names(), desk.LeftOutColumn)
	loggers := make([]string, len(p.Columns.Columns))
	for i, c := range p.Columns.Columns {
		loggers[i] = c.Logger
	}
	rows := byHandfuls(0, len(loggers), func(i int) fyne.CanvasObject {
		c := p.Columns.Columns[i]
		choice := newKeyChoice(names, loggers[i], shut)
		choice.OnChanged = func(text string) { loggers[i] = text }
		return columnRow(choiceHigh, theme.SizeNameText, theme.ColorNameForeground, choice, strconv.Itoa(c.Number), c.Header, c.What, c.First)
	})
	wrong := body("")
	commit := func() {
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
	titles := columnRow(titleHigh, theme.SizeNameCaptionText, colorMuted, line("Logger", theme.SizeNameCaptionText, colorMuted, false), "", "In the file", "Measures", "First")
	table := container.New(column{}, titles, inSight(rows, len(loggers)))
	s = newSheet(u.win, "Which columns belong together?", container.New(column{gap: 8}, words, table, wrong, caption(p.Columns.Holds)), 700, set)
}

// columnRow is a row of the table of columns: texts, and the logger behind them.
func columnRow(high float32, size fyne.ThemeSizeName, ink fyne.ThemeColorName, logger fyne.CanvasObject, texts ...string) fyne.CanvasObject {
	row := container.New(spread{wide: []float32{0, 1.4, 1, 0.8, 1.4}, high: high})
	for _, text := range texts {
		row.Add(line(text, size, ink, false))
	}
	row.Add(logger)
	return row
}

// inSight is a table of so many columns of a file, in a scroll where they are many.
func inSight(rows fyne.CanvasObject, columns int) fyne.CanvasObject {
	if columns <= mostColumnsInSight {
		return rows
	}
	scroll := container.NewVScroll(rows)
	scroll.SetMinSize(fyne.NewSize(0, choiceHigh*mostColumnsInSight))
	return scroll
}

// mostColumnsInSight is how many columns of a file are shown without scrolling.
const mostColumnsInSight = 9

// spread gives the cells of a table's row their shares of the width, the first what a number needs.
type spread struct {
	wide []float32
	high float32
}

const numberWide, titleHigh, choiceHigh, spreadGap = 28, 20, 40, 10

// Layout places the cells, as fyne.Layout.
func (t spread) Layout(o []fyne.CanvasObject, size fyne.Size) {
	sum := float32(0)
	for _, w := range t.wide {
		sum += w
	}
	room := size.Width - numberWide - spreadGap*float32(len(t.wide)-1)
	x := float32(0)
	for i, c := range o {
		w, own := room*t.wide[i]/sum, c.MinSize().Height
		if i == 0 {
			w = numberWide
		}
		c.Move(fyne.NewPos(x, (t.high-own)/2))
		c.Resize(fyne.NewSize(w, own))
		x += w + spreadGap
	}
}

// MinSize is the row's height, as fyne.Layout: its width is what there is.
func (t spread) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(240, t.high) }

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
