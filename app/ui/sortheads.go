package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// sorting is the column a table is in the order of, and which way.
type sorting struct {
	column  int
	falling bool
}

// pressed is the order after a press on a head: numbers from the largest, words and dates from the first; pressed again
// the other way round.
func (s sorting) pressed(columns []desk.Column, column int) sorting {
	if column == s.column {
		return sorting{column, !s.falling}
	}
	return sorting{column, columns[column].Number}
}

// sortHeads are a table's column heads as buttons.
func sortHeads(columns []desk.Column, widths []float32, press func(column int)) fyne.CanvasObject {
	row := container.New(cellsLayout{widths, 0})
	for i, c := range columns {
		b := widget.NewButton(c.Head(), func() { press(i) })
		b.Importance = widget.LowImportance
		b.Alignment = widget.ButtonAlignLeading
		if c.Number {
			b.Alignment = widget.ButtonAlignTrailing
		}
		row.Add(b)
	}
	return row
}

// sortRow is an empty row under such heads; one column stands out.
func sortRow(columns []desk.Column, widths []float32, bold int) *fyne.Container {
	cells := container.New(cellsLayout{widths, buttonPad})
	for i, c := range columns {
		cell := line("", theme.SizeNameText, theme.ColorNameForeground, i == bold)
		if c.Number {
			cell.align = fyne.TextAlignTrailing
		}
		cells.Add(cell)
	}
	return cells
}

// fillRow writes cells into a row.
func fillRow(row fyne.CanvasObject, cells []string) {
	for i, cell := range row.(*fyne.Container).Objects {
		cell.(*prose).setText(cells[i])
	}
}
