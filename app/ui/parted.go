package ui

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// parted is a page of parts, each a title with what stands under it: one below the other, in a wide window in two columns,
// where that saves scrolling.
func parted(parts ...fyne.CanvasObject) *fyne.Container {
	return container.New(&twoColumns{}, parts...)
}

// part is a part of a page: running text as wide as can be read, tables as wide as they are.
func part(objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(column{gap: 10, widest: readable}, objects...)
}

// twoColumns is the layout of a page of parts.
type twoColumns struct {
	left int // how many parts stand on the left; the others stand on the right
}

// The narrowest column of two, what lies between them, how far apart parts are, and the height from which two are better
// than one.
const leastColumn, betweenColumns, betweenParts, tallPage = 640, 40, 10, 600

// Layout places the parts, as fyne.Layout.
func (c *twoColumns) Layout(parts []fyne.CanvasObject, size fyne.Size) {
	if size.Width == 0 {
		return
	}
	var first, second float32
	c.left, first, second = columnsOf(parts, size.Width)
	place := func(parts []fyne.CanvasObject, x, width float32) {
		y := float32(0)
		for _, o := range parts {
			h := heightAt(o, width)
			o.Move(fyne.NewPos(x, y))
			y += h + betweenParts
		}
	}
	place(parts[:c.left], 0, first)
	place(parts[c.left:], first+betweenColumns, second)
}

// heightAt gives a part a width, and tells how high it is then.
func heightAt(o fyne.CanvasObject, width float32) float32 {
	o.Resize(fyne.NewSize(width, o.MinSize().Height))
	h := o.MinSize().Height // running text knows its height once it has a width
	o.Resize(fyne.NewSize(width, h))
	return h
}

// columnsOf is how many of the parts stand on the left so that the higher column is as low as it can be, and how wide the
// two columns are; all stand there where two have no room or one is low enough.
func columnsOf(parts []fyne.CanvasObject, width float32) (left int, first, second float32) {
	heights, total := make([]float32, len(parts)), float32(0)
	for i, o := range parts {
		heights[i] = heightAt(o, width) + betweenParts
		total += heights[i]
	}
	left, best, above := len(parts), total, float32(0)
	for k := 1; k < len(parts) && total > tallPage; k++ {
		above += heights[k-1]
		a, b := widest(parts[:k]), widest(parts[k:])
		if higher := max(above, total-above); higher < best && a+b+betweenColumns <= width {
			left, best, first, second = k, higher, a, b
		}
	}
	if left == len(parts) {
		return left, width, 0
	}
	spare := width - first - second - betweenColumns
	more := min(spare, max(0, readable-first))
	return left, first + more, min(second+spare-more, max(second, readable))
}

// widest is how wide a column of some parts has to be.
func widest(parts []fyne.CanvasObject) float32 {
	w := float32(leastColumn)
	for _, o := range parts {
		w = max(w, o.MinSize().Width, tableWide(o))
	}
	return w
}

// tableWide is how wide the widest table of a part is when nothing presses.
func tableWide(o fyne.CanvasObject) (w float32) {
	switch o := o.(type) {
	case *copyable:
		return tableWide(o.content)
	case *fyne.Container:
		if t, ok := o.Layout.(tableLayout); ok {
			return t.widthIn(o.Objects, math.MaxFloat32)
		}
		for _, c := range o.Objects {
			w = max(w, tableWide(c))
		}
	}
	return w
}

// MinSize is the page's height as it stands, as fyne.Layout.
func (c *twoColumns) MinSize(parts []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	left := min(c.left, len(parts))
	if left == 0 {
		left = len(parts)
	}
	for _, some := range [][]fyne.CanvasObject{parts[:left], parts[left:]} {
		h := float32(0)
		for _, o := range some {
			m := o.MinSize()
			s.Width, h = max(s.Width, m.Width), h+m.Height+betweenParts
		}
		s.Height = max(s.Height, h-betweenParts)
	}
	return s
}
