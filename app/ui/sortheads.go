package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
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

// sortHeads are a table's column heads as buttons; read is told what the figures below the one under the pointer are.
func sortHeads(columns []desk.Column, widths []float32, press func(column int), read func(string)) fyne.CanvasObject {
	row := container.New(cellsLayout{widths, 0})
	for i, c := range columns {
		row.Add(newHeadButton(c, func() { press(i) }, read))
	}
	return row
}

// headButton is a column's head that can be pressed.
type headButton struct {
	widget.Button
	column desk.Column
	read   func(string)
}

func newHeadButton(c desk.Column, press func(), read func(string)) *headButton {
	b := &headButton{column: c, read: read}
	b.Text, b.OnTapped, b.Importance, b.Alignment = c.Head(), press, widget.LowImportance, widget.ButtonAlignLeading
	if c.Number {
		b.Alignment = widget.ButtonAlignTrailing
	}
	b.ExtendBaseWidget(b)
	return b
}

// MouseIn reads what the column's figures are, as desktop.Hoverable.
func (b *headButton) MouseIn(e *desktop.MouseEvent) {
	b.Button.MouseIn(e)
	b.read(b.column.Says())
}

// MouseOut empties the reading, as desktop.Hoverable.
func (b *headButton) MouseOut() {
	b.Button.MouseOut()
	b.read("")
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
