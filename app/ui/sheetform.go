package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// sheetForm is a desk.Sheet to be filled in: a field for each cell, rows added and taken away.
type sheetForm struct {
	sheet  desk.Sheet
	rows   []desk.SheetRow
	list   *fyne.Container
	first  fyne.Focusable // the field to begin with
	shut   func()
	commit func()
}

// Widths of the fields, and the height of the list at which it scrolls.
const narrowField, choiceField, wideField, longField, fieldHigh, listHigh = 108, 150, 180, 420, 38, 300

func newSheetForm(s desk.Sheet, shut, commit func()) *sheetForm {
	f := &sheetForm{sheet: s, list: container.New(column{gap: 4}), shut: shut, commit: commit}
	for _, r := range s.Rows {
		f.rows = append(f.rows, desk.SheetRow{Cells: slices.Clone(r.Cells), Was: r.Was})
	}
	if len(f.rows) == 0 {
		f.rows = append(f.rows, s.NewRow())
	}
	f.fill()
	return f
}

// fill makes the fields anew.
func (f *sheetForm) fill() {
	f.list.Objects, f.first = nil, nil
	for i := range f.rows {
		f.list.Add(container.New(fixed{height: fieldHigh}, f.row(i)))
	}
	f.list.Refresh()
}

// widths are those of the columns, and of the button behind them.
func (f *sheetForm) widths() []float32 {
	var out []float32
	for _, c := range f.sheet.Columns {
		switch {
		case c.Long:
			out = append(out, longField)
		case c.Wide:
			out = append(out, wideField)
		case len(c.Choices) > 0:
			out = append(out, choiceField)
		default:
			out = append(out, narrowField)
		}
	}
	return append(out, 36)
}

// width is that of a whole row.
func (f *sheetForm) width() float32 {
	sum := float32(24)
	for _, w := range f.widths() {
		sum += w + cellsGap
	}
	return sum
}

func (f *sheetForm) heads() fyne.CanvasObject {
	row := container.New(cellsLayout{f.widths(), 0})
	for _, c := range f.sheet.Columns {
		row.Add(line(c.Title, theme.SizeNameCaptionText, colorMuted, false))
	}
	row.Add(gap(1, 1))
	return row
}

func (f *sheetForm) row(i int) fyne.CanvasObject {
	row := container.New(cellsLayout{f.widths(), 0})
	for c, is := range f.sheet.Columns {
		cell := &f.rows[i].Cells[c]
		switch {
		case is.Label:
			row.Add(body(*cell))
		case len(is.Choices) > 0:
			pick := newKeySelect(is.Choices, *cell, f.shut)
			pick.OnChanged = func(text string) { *cell = text }
			row.Add(pick)
		default:
			field := newKeyEntry(f.shut)
			field.MultiLine, field.Text = false, *cell
			field.SetPlaceHolder(is.Hint)
			field.OnChanged = func(text string) { *cell = text }
			field.OnSubmitted = func(string) { f.commit() }
			row.Add(field)
			if i == 0 && f.first == nil {
				f.first = field
			}
		}
	}
	if f.sheet.Fixed {
		row.Add(gap(1, 1))
		return row
	}
	away := newKeyButton("", func() { f.rows = slices.Delete(f.rows, i, i+1); f.fill() }, f.shut)
	away.Icon, away.Importance = theme.DeleteIcon(), widget.LowImportance
	row.Add(away)
	return row
}

// object is the whole form.
func (f *sheetForm) object() fyne.CanvasObject {
	form := container.New(column{gap: 6}, f.heads(), container.New(fixed{height: listHigh}, container.NewVScroll(f.list)))
	if f.sheet.Fixed {
		form = container.New(column{gap: 6}, f.heads(), f.list)
	}
	if f.sheet.Add != "" {
		form.Add(container.NewHBox(newKeyButton(f.sheet.Add, func() { f.rows = append(f.rows, f.sheet.NewRow()); f.fill() }, f.shut)))
	}
	return form
}

// fillIn opens a sheet; what is wrong with it stands beneath.
func (u *UI) fillIn(of desk.Sheet) {
	var s *sheet
	var f *sheetForm
	wrong := body("")
	shut := func() { s.close() }
	commit := func() {
		e, problem := of.Edit(f.rows)
		if wrong.setText(problem); problem != "" {
			return
		}
		s.close()
		u.edit(e)
	}
	f = newSheetForm(of, shut, commit)
	set := newKeyButton("Set", commit, shut)
	set.Importance = widget.HighImportance
	s = newSheet(u.win, of.Title, container.New(column{gap: 8}, f.object(), wrong, caption(of.Help)), f.width(), set)
	if f.first != nil {
		u.win.Canvas().Focus(f.first)
	}
}

// ofBarn opens a sheet of the chosen barn.
func (u *UI) ofBarn(sheetOf func(barn int) desk.Sheet) {
	if u.barn < len(u.book.BarnNames()) {
		u.fillIn(sheetOf(u.barn))
	}
}

// airSheets are the ways to the sheets of Air and water.
func (u *UI) airSheets() fyne.CanvasObject {
	return inLine(container.NewHBox(u.quiet("Walls and ceilings…", func() { u.ofBarn(u.book.WallSheet) }), u.quiet("Heat…", func() { u.ofBarn(u.book.HeatSheet) })))
}

func (u *UI) stageSheet() {
	u.ofBarn(func(barn int) desk.Sheet { return u.book.StageSheet(barn, u.units) })
}

func (u *UI) phaseSheet() {
	u.ofBarn(func(barn int) desk.Sheet { return u.book.PhaseSheet(barn, u.units) })
}

func (u *UI) roomSheet() {
	u.ofBarn(func(barn int) desk.Sheet { return u.book.RoomSheet(barn, u.units) })
}
