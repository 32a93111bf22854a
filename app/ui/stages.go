package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// stagesPage is the fan stages of a barn: one sentence, the hours per day and the table.
func stagesPage(v desk.StagesView, read func(string)) fyne.CanvasObject {
	page := container.New(column{gap: 0}, sentence(v.Sentence))
	if v.Sure != "" {
		page.Add(up(caption(v.Sure)))
	}
	if v.Lacks != "" {
		page.Add(body(v.Lacks))
		return container.NewVScroll(container.New(inset{12, 4, 12, 16}, page))
	}
	page.Add(newDayStrips(v.Days, read))
	page.Add(up(caption(desk.HelpLine("hours_per_day"))))
	page.Add(tableOf(v.Table))
	page.Add(caption(desk.HelpLine("called_for")))
	for _, c := range v.Cautions {
		page.Add(up(caption(c)))
	}
	return container.NewVScroll(container.New(inset{12, 4, 12, 16}, page))
}

// tableOf is a plain table: heads with their units, a hairline, rows; numbers stand at the right.
func tableOf(t desk.Table) fyne.CanvasObject {
	grid := container.New(tableLayout{columns: len(t.Columns)})
	for _, c := range t.Columns {
		head := c.Title
		if c.Unit != "" {
			head += ", " + c.Unit
		}
		grid.Add(cell(head, colorMuted, c.Number, false))
	}
	for _, r := range t.Rows {
		for i, text := range r {
			grid.Add(cell(text, theme.ColorNameForeground, t.Columns[i].Number, i == 0))
		}
	}
	return container.New(inset{0, 8, 0, 0}, grid)
}

func cell(text string, ink fyne.ThemeColorName, right, bold bool) *widget.RichText {
	r := widget.NewRichText(&widget.TextSegment{Text: text, Style: widget.RichTextStyle{
		SizeName: theme.SizeNameText, ColorName: ink, TextStyle: fyne.TextStyle{Bold: bold}, Alignment: alignment(right),
	}})
	return r
}

func alignment(right bool) fyne.TextAlign {
	if right {
		return fyne.TextAlignTrailing
	}
	return fyne.TextAlignLeading
}

// tableLayout gives every column the width of its widest cell.
type tableLayout struct{ columns int }

const rowHigh, columnGap = 26, 12

func (t tableLayout) widths(o []fyne.CanvasObject) []float32 {
	w := make([]float32, t.columns)
	for i, c := range o {
		w[i%t.columns] = max(w[i%t.columns], c.MinSize().Width)
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
	return fyne.NewSize(width, float32((len(o)+t.columns-1)/t.columns)*rowHigh+8)
}
