package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// allBarnsColumns are the widths of the table's columns; the barn takes what is left.
var allBarnsColumns = []float32{0, 84, 84, 92, 104, 96, 116, 100, 76}

// barnLaneHigh is the least height of a barn's small plot.
const barnLaneHigh = 108

// allBarnsPage is a row for each barn, put in order by a press on a head, over a small plot of each on the same axes.
func allBarnsPage(v desk.AllBarns, f *chart.Figure, read func(string)) fyne.CanvasObject {
	rows := container.New(column{})
	for range v.Rows {
		rows.Add(sortRow(v.Columns, allBarnsColumns, 0))
	}
	by := sorting{}
	show := func() {
		for i, r := range v.Sorted(by.column, by.falling) {
			fillRow(rows.Objects[i], r.Cells)
		}
	}
	show()
	heads := sortHeads(v.Columns, allBarnsColumns, func(c int) { by = by.pressed(v.Columns, c); show() }, read)
	top := container.New(column{gap: 6}, body(v.Sentence), container.New(column{}, heads, hairline(), rows), captions(v.Notes))
	if v.Plots.Lacks != "" {
		top.Add(body(v.Plots.Lacks))
		return scrolled(top)
	}
	plots := container.New(fixed{height: float32(40 + barnLaneHigh*len(v.Plots.Lanes))}, newPlot(v.Plots, f, read))
	return scrolled(bordered(container.New(inset{0, 0, 0, 8}, top), nil, nil, nil, plots))
}
