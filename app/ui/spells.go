package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// spellColumns are the widths of the table's columns; the last takes what is left.
var spellColumns = []float32{148, 132, 128, 84, 96, 0}

// spellsPage is the table of spells: a press on a head puts it in order, a press on a row says what went with it.
type spellsPage struct {
	view   desk.SpellsView
	rows   []desk.SpellRow
	by     sorting
	list   *widget.List
	says   *prose
	way    *widget.Button
	look   func(desk.Sentence)
	chosen desk.SpellRow
}

// newSpellsPage is the Spells screen; look shows a spell in the Timeline.
func newSpellsPage(v desk.SpellsView, look func(desk.Sentence), read func(string)) fyne.CanvasObject {
	if len(v.Rows) == 0 {
		return container.New(inset{20, 14, 12, 8}, sentence(v.Sentence))
	}
	p := &spellsPage{view: v, rows: v.Rows, look: look, says: body("Choose a spell to see what went with it.")}
	p.way = widget.NewButton("Show", func() { p.look(desk.Sentence{Look: p.chosen.Look}) })
	p.way.Importance = widget.LowImportance
	p.way.Disable()
	p.list = widget.NewList(func() int { return len(p.rows) }, func() fyne.CanvasObject { return newSpellLine(p) },
		func(i widget.ListItemID, o fyne.CanvasObject) { o.(*spellLine).fill(p.rows[i]) })
	p.list.OnSelected = func(i widget.ListItemID) { p.choose(p.rows[i]) }
	top := container.New(column{gap: 8}, sentence(v.Sentence), sortHeads(v.Columns, spellColumns, p.order, read))
	below := container.New(column{gap: 4}, hairline(), bordered(nil, nil, nil, p.way, p.says), caption(v.Help))
	return container.New(inset{20, 14, 12, 8}, bordered(top, below, nil, nil, p.list))
}

// order puts the rows in the order of a column.
func (p *spellsPage) order(column int) {
	p.by = p.by.pressed(p.view.Columns, column)
	p.rows = p.view.Sorted(p.by.column, p.by.falling)
	p.list.UnselectAll()
	p.list.Refresh()
	p.list.ScrollToTop()
}

// choose tells of one spell.
func (p *spellsPage) choose(row desk.SpellRow) {
	p.chosen = row
	p.says.setText(row.Says)
	p.way.Enable()
}

// spellLine is a row of the table, whose menu the right button opens.
type spellLine struct {
	widget.BaseWidget
	page  *spellsPage
	cells *fyne.Container
	row   desk.SpellRow
}

func newSpellLine(p *spellsPage) *spellLine {
	l := &spellLine{page: p, cells: sortRow(p.view.Columns, spellColumns, 1)}
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer draws the cells, as fyne.Widget.
func (l *spellLine) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(l.cells) }

func (l *spellLine) fill(row desk.SpellRow) {
	l.row = row
	fillRow(l.cells, row.Cells)
}

// TappedSecondary opens the menu, as fyne.SecondaryTappable.
func (l *spellLine) TappedSecondary(at *fyne.PointEvent) {
	widget.ShowPopUpMenuAtPosition(l.menu(), fyne.CurrentApp().Driver().CanvasForObject(l), at.AbsolutePosition)
}

func (l *spellLine) menu() *fyne.Menu {
	p, row := l.page, l.row
	return fyne.NewMenu("",
		fyne.NewMenuItem("Show in the Timeline", func() { p.look(desk.Sentence{Look: row.Look}) }),
		copyItem("Copy the spell", func() string { return strings.Join(row.Cells, "\t") + "\t" + row.Says }),
		copyItem("Copy all spells", func() string { return tabbed(p.table()) }))
}

// table is what the page lists, as it stands.
func (p *spellsPage) table() desk.Table {
	t := desk.Table{Columns: p.view.Columns}
	for _, r := range p.rows {
		t.Rows = append(t.Rows, r.Cells)
	}
	return t
}

// cellsLayout sets cells side by side in columns of given widths, with some room on both sides of each; one of
// width 0 takes what is left.
type cellsLayout struct {
	widths []float32
	pad    float32
}

// buttonPad is the room a button leaves beside its words: rows under heads that are buttons leave as much.
const cellsHigh, cellsGap, buttonPad = 30, 12, 8

// Layout places the cells, as fyne.Layout.
func (l cellsLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	left := size.Width
	for _, w := range l.widths {
		left -= w + cellsGap
	}
	x := float32(0)
	for i, c := range o {
		w := l.widths[i]
		if w == 0 {
			w = max(left, 80)
		}
		high := c.MinSize().Height
		c.Resize(fyne.NewSize(w-2*l.pad, high))
		c.Move(fyne.NewPos(x+l.pad, (size.Height-high)/2))
		x += w + cellsGap
	}
}

// MinSize is one row, as fyne.Layout.
func (l cellsLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	width := float32(80)
	for _, w := range l.widths {
		width += w + cellsGap
	}
	return fyne.NewSize(width, cellsHigh)
}
