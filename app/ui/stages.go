package ui

import (
	"slices"
	"sort"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"thawbook/app/desk"
)

// stagesPage is the fan stages of a barn: one sentence, the way to set them down, the hours per day and the table.
func stagesPage(v desk.StagesView, set fyne.CanvasObject, look func(desk.Sentence), read func(string)) fyne.CanvasObject {
	page := container.New(column{gap: 12}, bordered(nil, nil, nil, container.NewVBox(set), titled(v.Sentence, v.Sure)))
	if v.Lacks != "" {
		page.Add(body(v.Lacks))
		return container.NewVScroll(container.New(inset{20, 14, 12, 16}, page))
	}
	for _, note := range v.Notes {
		page.Add(container.New(column{widest: readable}, body(note)))
	}
	page.Add(newShareStrips(desk.DayStrips(v.Days), dayHigh, func(day int) string { return desk.ReadDay(v.Days, day) }, read))
	page.Add(caption(desk.HelpLine("hours_per_day")))
	page.Add(tableOf(v.Table, look, read))
	for _, p := range v.Patterns {
		page.Add(heading(p.Title))
		addPattern(page, p, read)
	}
	page.Add(captions(append([]string{desk.HelpLine("called_for")}, v.Cautions...)))
	return container.NewVScroll(container.New(inset{20, 14, 12, 16}, page))
}

// addPattern adds a pattern's sentence and strips to a page.
func addPattern(page *fyne.Container, p desk.Pattern, read func(string)) {
	if p.Text != "" {
		page.Add(container.New(column{widest: readable}, body(p.Text)))
	}
	if len(p.Strips) > 0 {
		page.Add(newShareStrips(p.Strips, patternHigh, p.Read, read))
	}
}

// tableOf is a plain table: heads with their units, a hairline, rows; numbers stand at the right. The right button copies it,
// read is told what the figure under the pointer is, and look shows one in the Timeline.
func tableOf(t desk.Table, look func(desk.Sentence), read func(string)) fyne.CanvasObject {
	places := tableLayout{columns: len(t.Columns)}
	grid := container.New(places)
	says := func(at fyne.Position) string {
		row, column := places.at(grid.Objects, at)
		return t.Read(row-1, column)
	}
	table := newCopyable(grid, "Copy the table", func() string { return tabbed(t) }, says, read)
	for _, c := range t.Columns {
		grid.Add(cell(c.Head(), colorMuted, c.Number, false))
	}
	for k, r := range t.Rows {
		for i, text := range r {
			c := cell(text, theme.ColorNameForeground, t.Columns[i].Number, i == 0)
			if at := t.Look(k, i); at.To > at.From && look != nil {
				grid.Add(newTimelineLink(c, func() { look(desk.Sentence{Look: at}) }, table.showMenu))
				continue
			}
			grid.Add(c)
		}
	}
	return table
}

func cell(text string, ink fyne.ThemeColorName, right, bold bool) *prose {
	p := newProse(text, theme.SizeNameText, ink, bold)
	p.align = fyne.TextAlignLeading
	if right {
		p.align = fyne.TextAlignTrailing
	}
	return p
}

// tableLayout gives every column the width of its widest cell; where there is less room, the widest columns are narrowed and
// their words go onto further lines.
type tableLayout struct{ columns int }

const rowHigh, columnGap = 26, 28

// widths are the columns' on so much room: none wider than one width that makes them fit, nor narrower than its widest word.
func (t tableLayout) widths(o []fyne.CanvasObject, room float32) []float32 {
	widest, least := make([]float32, t.columns), make([]float32, t.columns)
	for i, c := range o {
		k := i % t.columns
		widest[k], least[k] = max(widest[k], natural(c)), max(least[k], min(natural(c), c.MinSize().Width+1))
	}
	out := make([]float32, t.columns)
	over := func(atMost int) bool {
		sum := float32(0)
		for k := range out {
			out[k] = max(least[k], min(widest[k], float32(atMost)))
			sum += out[k] + columnGap
		}
		return sum > room+columnGap
	}
	if most := int(slices.Max(widest)) + 1; over(most) {
		over(sort.Search(most, over) - 1)
	}
	return out
}

// widthIn is the whole table's width on so much room.
func (t tableLayout) widthIn(o []fyne.CanvasObject, room float32) (sum float32) {
	for _, w := range t.widths(o, room) {
		sum += w + columnGap
	}
	return sum
}

// Layout places the cells, as fyne.Layout.
func (t tableLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	w := t.widths(o, size.Width)
	for i, c := range o {
		c.Resize(fyne.NewSize(w[i%t.columns], c.MinSize().Height))
	}
	y := float32(0)
	for row := range slices.Chunk(o, t.columns) {
		x := float32(0)
		for k, c := range row {
			c.Resize(fyne.NewSize(w[k], c.MinSize().Height)) // it knows its height once it has a width
			c.Move(fyne.NewPos(x, y))
			x += w[k] + columnGap
		}
		y += highOf(row)
	}
}

// at is the row and the column of a place; the gap behind a cell is the cell's.
func (t tableLayout) at(o []fyne.CanvasObject, place fyne.Position) (row, column int) {
	for i, c := range o {
		if c.Position().Y <= place.Y && c.Position().X <= place.X {
			row, column = i/t.columns, i%t.columns
		}
	}
	return row, column
}

// highOf is a row's height at its cells' present widths: that of a line, and more where words are broken.
func highOf(row []fyne.CanvasObject) float32 {
	lines, one := float32(0), float32(rowHigh)
	for _, c := range row {
		lines = max(lines, c.MinSize().Height)
		if p, ok := c.(*prose); ok {
			one = min(one, p.measured().high)
		}
	}
	return rowHigh + max(0, lines-one)
}

// MinSize is the whole table with its columns as narrow as they can be, as fyne.Layout.
func (t tableLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	s := fyne.NewSize(t.widthIn(o, 0), 0)
	for row := range slices.Chunk(o, t.columns) {
		s.Height += highOf(row)
	}
	return s
}
