package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"thawbook/app/desk"
)

// stagesPage is the fan stages of a barn: one sentence, the way to set them down, the hours per day and the table.
func stagesPage(v desk.StagesView, set fyne.CanvasObject, read func(string)) fyne.CanvasObject {
	page := container.New(column{gap: 12}, container.NewBorder(nil, nil, nil, container.NewVBox(set), titled(v.Sentence, v.Sure)))
	if v.Lacks != "" {
		page.Add(body(v.Lacks))
		return container.NewVScroll(container.New(inset{20, 14, 12, 16}, page))
	}
	for _, note := range v.Notes {
		page.Add(body(note))
	}
	page.Add(newShareStrips(desk.DayStrips(v.Days), dayHigh, func(day int) string { return desk.ReadDay(v.Days, day) }, read))
	page.Add(caption(desk.HelpLine("hours_per_day")))
	page.Add(tableOf(v.Table))
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
		page.Add(body(p.Text))
	}
	if len(p.Strips) > 0 {
		page.Add(newShareStrips(p.Strips, patternHigh, p.Read, read))
	}
}

// tableOf is a plain table: heads with their units, a hairline, rows; numbers stand at the right. The right button copies it.
func tableOf(t desk.Table) fyne.CanvasObject {
	grid := container.New(tableLayout{columns: len(t.Columns)})
	for _, c := range t.Columns {
		grid.Add(cell(c.Head(), colorMuted, c.Number, false))
	}
	for _, r := range t.Rows {
		for i, text := range r {
			grid.Add(cell(text, theme.ColorNameForeground, t.Columns[i].Number, i == 0))
		}
	}
	return newCopyable(grid, "Copy the table", func() string { return tabbed(t) })
}

func cell(text string, ink fyne.ThemeColorName, right, bold bool) *prose {
	p := newProse(text, theme.SizeNameText, ink, bold)
	p.align = fyne.TextAlignLeading
	if right {
		p.align = fyne.TextAlignTrailing
	}
	return p
}

// tableLayout gives every column the width of its widest cell.
type tableLayout struct{ columns int }

const rowHigh, columnGap = 26, 28

func (t tableLayout) widths(o []fyne.CanvasObject) []float32 {
	w := make([]float32, t.columns)
	for i, c := range o {
		w[i%t.columns] = max(w[i%t.columns], natural(c))
	}
	return w
}

// Layout places the cells, as fyne.Layout.
func (t tableLayout) Layout(o []fyne.CanvasObject, _ fyne.Size) {
	w := t.widths(o)
	x := float32(0)
	for i, c := range o {
		if i%t.columns == 0 {
			x = 0
		}
		c.Move(fyne.NewPos(x, float32(i/t.columns)*rowHigh))
		c.Resize(fyne.NewSize(w[i%t.columns], c.MinSize().Height))
		x += w[i%t.columns] + columnGap
	}
}

// MinSize is the whole table, as fyne.Layout.
func (t tableLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	width := float32(0)
	for _, w := range t.widths(o) {
		width += w + columnGap
	}
	return fyne.NewSize(width, float32((len(o)+t.columns-1)/t.columns)*rowHigh)
}
