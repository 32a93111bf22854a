package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// column is a layout that stacks objects and keeps lines short enough to read; a table may be wider.
type column struct{ widest, gap float32 }

// Layout stacks the objects, as fyne.Layout. Before it has a width there is nothing to place: a stack that is still
// being filled is not laid out anew with every object.
func (c column) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	if size.Width == 0 {
		return
	}
	y := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		w := size.Width
		if _, table := o.(*copyable); c.widest > 0 && !table {
			w = min(w, c.widest)
		}
		o.Resize(fyne.NewSize(w, o.MinSize().Height))
		h := o.MinSize().Height // running text knows its height once it has a width
		o.Resize(fyne.NewSize(w, h))
		o.Move(fyne.NewPos(0, y))
		y += h + c.gap
	}
}

// MinSize is the stack's height at its present width, as fyne.Layout.
func (c column) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	n := 0
	for _, o := range objects {
		if o.Visible() {
			m := o.MinSize()
			s.Width, s.Height = max(s.Width, m.Width), s.Height+m.Height
			n++
		}
	}
	return s.Add(fyne.NewSize(0, c.gap*float32(max(0, n-1))))
}

// inset leaves white space round an object.
type inset struct{ left, top, right, bottom float32 }

// Layout places the objects inside the white space, as fyne.Layout.
func (i inset) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(i.left, i.top))
		o.Resize(fyne.NewSize(size.Width-i.left-i.right, size.Height-i.top-i.bottom))
	}
}

// MinSize is the largest object with its white space, as fyne.Layout.
func (i inset) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for _, o := range objects {
		s = s.Max(o.MinSize())
	}
	return s.Add(fyne.NewSize(i.left+i.right, i.top+i.bottom))
}

// fixed gives an object a width or a height, or both; zero leaves it to the object.
type fixed struct{ width, height float32 }

// Layout gives the objects all there is, as fyne.Layout.
func (f fixed) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(0, 0))
		o.Resize(size)
	}
}

// MinSize has what is fixed, as fyne.Layout.
func (f fixed) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for _, o := range objects {
		s = s.Max(o.MinSize())
	}
	if f.width > 0 {
		s.Width = f.width
	}
	if f.height > 0 {
		s.Height = f.height
	}
	return s
}

// sideBySide sets objects in a line at their own size, one text's natural width each, centred in height.
type sideBySide struct{ gap float32 }

// Layout sets the objects in a line, as fyne.Layout; the last takes what is left.
func (l sideBySide) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, o := range objects {
		w, h := natural(o), o.MinSize().Height
		if i == len(objects)-1 {
			w = max(0, size.Width-x)
		}
		o.Move(fyne.NewPos(x, (size.Height-h)/2))
		o.Resize(fyne.NewSize(w, h))
		x += w + l.gap
	}
}

// MinSize is as high as the highest object, as fyne.Layout.
func (l sideBySide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for _, o := range objects {
		s = fyne.NewSize(s.Width+min(natural(o), o.MinSize().Width)+l.gap, max(s.Height, o.MinSize().Height))
	}
	return s
}

// flow sets objects in lines at their own size, centred in height; what has no room in a line goes on below.
type flow struct {
	gap  float32
	high float32 // of the lines as they were last laid out
}

// Layout sets the objects in lines, as fyne.Layout.
func (f *flow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	f.high = 0
	for len(objects) > 0 {
		n, x, high := 0, float32(0), float32(0)
		for ; n < len(objects) && (n == 0 || x+natural(objects[n]) <= size.Width); n++ {
			x, high = x+natural(objects[n])+f.gap, max(high, objects[n].MinSize().Height)
		}
		x = 0
		for _, o := range objects[:n] {
			w, h := min(natural(o), size.Width), o.MinSize().Height
			o.Move(fyne.NewPos(x, f.high+(high-h)/2))
			o.Resize(fyne.NewSize(w, h))
			x += w + f.gap
		}
		objects, f.high = objects[n:], f.high+high
	}
}

// MinSize is the lines' height as they were last laid out, as fyne.Layout.
func (f *flow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for _, o := range objects {
		s = s.Max(o.MinSize())
	}
	return fyne.NewSize(s.Width, max(s.Height, f.high))
}

// natural is an object's width when nothing presses.
func natural(o fyne.CanvasObject) float32 {
	if p, ok := o.(interface{ natural() float32 }); ok {
		return p.natural() + 1
	}
	return o.MinSize().Width
}

// hairline is a thin line across.
func hairline() fyne.CanvasObject { return widget.NewSeparator() }

// gap is empty space.
func gap(w, h float32) fyne.CanvasObject {
	r := canvas.NewRectangle(nil)
	r.SetMinSize(fyne.NewSize(w, h))
	return r
}

// bordered sets objects around others as container.NewBorder does, nil where there is none, in the order they are read: that is
// how Tab goes through them.
func bordered(top, bottom, left, right fyne.CanvasObject, centre ...fyne.CanvasObject) *fyne.Container {
	c := container.New(layout.NewBorderLayout(top, bottom, left, right))
	for _, o := range slices.Concat([]fyne.CanvasObject{top, left}, centre, []fyne.CanvasObject{right, bottom}) {
		if o != nil {
			c.Add(o)
		}
	}
	return c
}
