package ui

import (
	"context"
	"fmt"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"thawbook/app/desk"
)

// headOf is the beginning of a file's table: over each column what it was recognised as, beside each row its line.
func headOf(h desk.FileHead) fyne.CanvasObject {
	table := narrowTable{columns: len(h.Columns) + 1, firm: map[int]bool{0: true}}
	for i, c := range h.Columns {
		if c.What != "" {
			table.firm[i+1] = true
		}
	}
	grid := container.New(table)
	small := func(text string, ink fyne.ThemeColorName, bold bool) {
		grid.Add(line(text, theme.SizeNameCaptionText, ink, bold))
	}
	small("line", colorMuted, false)
	for _, c := range h.Columns {
		if c.What == "" {
			small("not used", colorMuted, false)
			continue
		}
		small(c.What, theme.ColorNamePrimary, true)
	}
	for _, r := range h.Rows {
		small(strconv.Itoa(r.Line), colorMuted, false)
		for i, text := range r.Cells {
			ink := theme.ColorNameForeground
			if !r.Data || h.Columns[i].What == "" {
				ink = colorMuted
			}
			small(text, ink, false)
		}
	}
	page := container.New(column{gap: 4}, grid)
	if h.More != "" {
		page.Add(caption(h.More))
	}
	return page
}

// narrowTable gives every column the width of its widest cell, and less to the widest ones where that is
// more than there is, to the firm ones last.
type narrowTable struct {
	columns int
	firm    map[int]bool
}

const smallRowHigh, smallColumnGap = 20, 18

func (t narrowTable) widths(o []fyne.CanvasObject, room float32) []float32 {
	w := make([]float32, t.columns)
	for i, c := range o {
		w[i%t.columns] = max(w[i%t.columns], natural(c))
	}
	room -= smallColumnGap * float32(t.columns-1)
	t.fit(w, true, room-leastWide*float32(t.columns-len(t.firm)))
	for i := range w {
		if t.firm[i] {
			room -= w[i]
		}
	}
	t.fit(w, false, room)
	return w
}

// leastWide is what a column keeps that gives way.
const leastWide = 24

// fit narrows the widest of the firm columns, or of the others, until they have room.
func (t narrowTable) fit(w []float32, firm bool, room float32) {
	var own []float32
	for i := range w {
		if t.firm[i] == firm {
			own = append(own, w[i])
		}
	}
	if len(own) == 0 {
		return
	}
	widest := fairest(own, room)
	for i := range w {
		if t.firm[i] == firm {
			w[i] = min(w[i], widest)
		}
	}
}

// fairest is the widest a column may be so that all have room: those that need less keep what they need.
func fairest(w []float32, room float32) float32 {
	sorted := slices.Sorted(slices.Values(w))
	for i, own := range sorted {
		share := room / float32(len(sorted)-i)
		if own > share {
			return max(share, 0)
		}
		room -= own
	}
	return sorted[len(sorted)-1]
}

// Layout places the cells, as fyne.Layout.
func (t narrowTable) Layout(o []fyne.CanvasObject, size fyne.Size) {
	w := t.widths(o, size.Width)
	x := float32(0)
	for i, c := range o {
		if i%t.columns == 0 {
			x = 0
		}
		c.Move(fyne.NewPos(x, float32(i/t.columns)*smallRowHigh))
		c.Resize(fyne.NewSize(w[i%t.columns], c.MinSize().Height))
		x += w[i%t.columns] + smallColumnGap
	}
}

// MinSize is the table's height, as fyne.Layout: its width is what there is.
func (t narrowTable) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(24, float32((len(o)+t.columns-1)/t.columns)*smallRowHigh)
}

// roundALine is how many lines are shown above and below the one a note leads to.
const roundALine = 5

// showLine shows the lines round the first that a note speaks of.
func (u *UI) showLine(p desk.FilePage, n desk.FileNoteLine) {
	u.start("Looking it up in "+p.Name, func(ctx context.Context, _ Tell) (func(), error) {
		lines, err := u.Keeper.Lines(ctx, p.Name, p.Encoding, max(1, n.Line-roundALine), n.Line+roundALine)
		return func() { u.lineSheet(p.Name, n, lines); u.lookClosely() }, err
	})
}

// lineSheet shows lines of a file, the one that is meant in bold.
func (u *UI) lineSheet(name string, n desk.FileNoteLine, lines []desk.TextLine) {
	grid := container.New(narrowTable{columns: 2})
	for _, l := range lines {
		ink, meant := theme.ColorNameForeground, l.Number == n.Line
		if meant {
			ink = theme.ColorNamePrimary
		}
		grid.Add(line(strconv.Itoa(l.Number), theme.SizeNameCaptionText, colorMuted, meant))
		grid.Add(line(l.Text, theme.SizeNameCaptionText, ink, meant))
	}
	newSheet(u.win, fmt.Sprintf("Line %d of %s", n.Line, name), container.New(column{gap: 10}, body(n.Text), hairline(), grid), 720)
}
