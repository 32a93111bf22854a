package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// prose is wrapping text of one style.
func prose(text string, size fyne.ThemeSizeName, ink fyne.ThemeColorName, bold bool) *widget.RichText {
	r := widget.NewRichText(&widget.TextSegment{Text: text, Style: widget.RichTextStyle{
		SizeName: size, ColorName: ink, TextStyle: fyne.TextStyle{Bold: bold},
	}})
	r.Wrapping = fyne.TextWrapWord
	return r
}

func sentence(text string) *widget.RichText {
	return prose(text, sizeSentence, theme.ColorNameForeground, true)
}

func body(text string) *widget.RichText {
	return prose(text, theme.SizeNameText, theme.ColorNameForeground, false)
}

func caption(text string) *widget.RichText {
	return prose(text, theme.SizeNameCaptionText, colorMuted, false)
}

// setText changes what prose says.
func setText(r *widget.RichText, text string) {
	seg := r.Segments[0].(*widget.TextSegment)
	if seg.Text == text {
		return
	}
	seg.Text = text
	r.Refresh()
}

// textOf is what prose says.
func textOf(r *widget.RichText) string { return r.Segments[0].(*widget.TextSegment).Text }

// column is a layout that stacks objects and keeps lines short enough to read.
type column struct{ widest, gap float32 }

// Layout stacks the objects, as fyne.Layout.
func (c column) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	w, y := size.Width, float32(0)
	if c.widest > 0 {
		w = min(w, c.widest)
	}
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		o.Resize(fyne.NewSize(w, o.MinSize().Height))
		h := o.MinSize().Height // wrapped text knows its height once it has a width
		o.Resize(fyne.NewSize(w, h))
		o.Move(fyne.NewPos(0, y))
		y += h + c.gap
	}
}

// MinSize is the stack's height at its present width, as fyne.Layout.
func (c column) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for _, o := range objects {
		if o.Visible() {
			m := o.MinSize()
			s.Width, s.Height = max(s.Width, m.Width), s.Height+m.Height+c.gap
		}
	}
	return s
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

// fixedWidth gives an object a width and leaves its height to it.
type fixedWidth struct{ width float32 }

// Layout gives the objects all there is, as fyne.Layout.
func (f fixedWidth) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Resize(size)
	}
}

// MinSize has the fixed width, as fyne.Layout.
func (f fixedWidth) MinSize(objects []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	for _, o := range objects {
		h = max(h, o.MinSize().Height)
	}
	return fyne.NewSize(f.width, h)
}

// hairline is a thin line across.
func hairline() fyne.CanvasObject { return widget.NewSeparator() }

// line is one line of text that ends in an ellipsis where there is no room.
func line(text string, size fyne.ThemeSizeName, ink fyne.ThemeColorName, bold bool) *widget.RichText {
	r := prose(text, size, ink, bold)
	r.Wrapping, r.Truncation = fyne.TextWrapOff, fyne.TextTruncateEllipsis
	return r
}

// gap is empty space.
func gap(w, h float32) fyne.CanvasObject {
	r := canvas.NewRectangle(nil)
	r.SetMinSize(fyne.NewSize(w, h))
	return r
}
