package ui

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"thawbook/app/desk"
)

// shareStrips draws, a strip per stage, its share of time on in cells side by side; the pointer reads a cell.
type shareStrips struct {
	widget.BaseWidget
	strips []desk.Strip
	high   float32 // of a strip
	says   func(cell int) string
	read   func(string)
}

const (
	dayHigh     = 46 // a stage's days
	patternHigh = 32 // a stage's hours of the day, or degrees
	stripGap    = 12
	stripLeft   = 172 // names, with the day a setting held from
	stripRight  = 44
	ticksHigh   = 22
)

func newShareStrips(strips []desk.Strip, high float32, says func(cell int) string, read func(string)) *shareStrips {
	d := &shareStrips{strips: strips, high: high, says: says, read: read}
	d.ExtendBaseWidget(d)
	return d
}

// MinSize has room for every stage, as fyne.Widget.
func (d *shareStrips) MinSize() fyne.Size {
	return fyne.NewSize(480, float32(len(d.strips))*(d.high+stripGap)+ticksHigh)
}

// CreateRenderer draws the bars as one picture and the words above it, as fyne.Widget.
func (d *shareStrips) CreateRenderer() fyne.WidgetRenderer {
	r := &stripsRenderer{strips: d}
	r.bars = canvas.NewRaster(r.paint)
	for _, s := range d.strips {
		r.names = append(r.names, inkText(nameThatFits(s.Name), theme.ColorNameForeground, fyne.TextAlignTrailing))
		r.kinds = append(r.kinds, inkText(nameThatFits(s.Kind), colorMuted, fyne.TextAlignTrailing))
		r.tops = append(r.tops, inkText(s.Top, colorMuted, fyne.TextAlignLeading))
	}
	if len(d.strips) > 0 {
		for _, t := range d.strips[0].Ticks {
			r.ticks = append(r.ticks, inkText(t.Name, colorMuted, fyne.TextAlignLeading))
			r.starts = append(r.starts, t.Cell)
		}
	}
	return r
}

// nameThatFits is as much of a name as has room beside a strip.
func nameThatFits(name string) string { return caption(name).shortened(stripLeft - 8) }

func inkText(text string, ink fyne.ThemeColorName, align fyne.TextAlign) *canvas.Text {
	t := canvas.NewText(text, theme.Color(ink))
	t.TextSize, t.Alignment = theme.Size(theme.SizeNameCaptionText), align
	return t
}

type stripsRenderer struct {
	strips             *shareStrips
	bars               *canvas.Raster
	names, kinds, tops []*canvas.Text
	ticks              []*canvas.Text
	starts             []int
}

// MinSize is the widget's, as fyne.WidgetRenderer.
func (r *stripsRenderer) MinSize() fyne.Size { return r.strips.MinSize() }

// Layout places bars and words, as fyne.WidgetRenderer.
func (r *stripsRenderer) Layout(size fyne.Size) {
	wide := size.Width - stripLeft - stripRight
	r.bars.Move(fyne.NewPos(stripLeft, 0))
	r.bars.Resize(fyne.NewSize(wide, size.Height-ticksHigh))
	high := r.strips.high
	for i := range r.names {
		y := float32(i) * (high + stripGap)
		placeText(r.names[i], 0, y+high/2-16, stripLeft-8)
		placeText(r.kinds[i], 0, y+high/2, stripLeft-8)
		placeText(r.tops[i], size.Width-stripRight+6, y-4, stripRight)
	}
	for i, t := range r.ticks {
		n := float32(len(r.strips.strips[0].Shares))
		placeText(t, stripLeft+wide*float32(r.starts[i])/n+2, size.Height-ticksHigh+2, 80)
	}
}

func placeText(t *canvas.Text, x, y, w float32) {
	t.Move(fyne.NewPos(x, y))
	t.Resize(fyne.NewSize(w, t.MinSize().Height))
}

// Refresh repaints, as fyne.WidgetRenderer.
func (r *stripsRenderer) Refresh() { r.bars.Refresh() }

// Destroy has nothing to give back, as fyne.WidgetRenderer.
func (r *stripsRenderer) Destroy() {}

// Objects are the bars and the words, as fyne.WidgetRenderer.
func (r *stripsRenderer) Objects() []fyne.CanvasObject {
	out := []fyne.CanvasObject{r.bars}
	for _, list := range [][]*canvas.Text{r.names, r.kinds, r.tops, r.ticks} {
		for _, t := range list {
			out = append(out, t)
		}
	}
	return out
}

// paint draws a bar per cell from the bottom of its strip: full height is all the time; an unknown cell is hatched.
func (r *stripsRenderer) paint(w, h int) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	n := len(r.strips.strips)
	if n == 0 || w == 0 || h == 0 {
		return img
	}
	high := float64(r.strips.high)
	scale := float64(h) / (float64(n) * (high + stripGap))
	for i, s := range r.strips.strips {
		top := float64(i) * (high + stripGap) * scale
		r.paintStage(img, s, top, top+high*scale)
	}
	return img
}

func (r *stripsRenderer) paintStage(img *image.RGBA, s desk.Strip, top, bottom float64) {
	w := float64(img.Rect.Dx())
	rule, bar, muted, pale := theme.Color(theme.ColorNameSeparator), theme.Color(colorBar), theme.Color(colorMuted), theme.Color(theme.ColorNameBackground)
	fill(img, 0, top, w, top+1, rule)
	fill(img, 0, bottom-1, w, bottom, rule)
	each := w / float64(len(s.Shares))
	gap := math.Min(1, each/4)
	for i, share := range s.Shares {
		x0, x1 := float64(i)*each, float64(i+1)*each-gap
		if math.IsNaN(share) {
			hatch(img, x0, top+1, x1+gap, bottom-1, muted)
			continue
		}
		y := bottom - 1 - (bottom-top-1)*math.Min(share, 1)
		fill(img, x0, y, x1, bottom-1, bar)
		if !s.Ran && x1-x0 > 2 && bottom-1-y > 2 { // called for is an outline
			fill(img, x0+1, y+1, x1-1, bottom-1, pale)
		}
	}
}

func fill(img *image.RGBA, x0, y0, x1, y1 float64, c color.Color) {
	r := image.Rect(int(math.Round(x0)), int(math.Round(y0)), int(math.Round(x1)), int(math.Round(y1)))
	draw.Draw(img, r, image.NewUniform(c), image.Point{}, draw.Over)
}

// hatch draws slanted lines, so that unknown is never mistaken for off.
func hatch(img *image.RGBA, x0, y0, x1, y1 float64, c color.Color) {
	for y := int(y0); y < int(y1); y++ {
		for x := int(math.Round(x0)); x < int(math.Round(x1)); x++ {
			if (x+y)%6 == 0 {
				img.Set(x, y, c)
			}
		}
	}
}

// MouseIn reads the cell under the pointer, as desktop.Hoverable.
func (d *shareStrips) MouseIn(e *desktop.MouseEvent) { d.MouseMoved(e) }

// MouseMoved reads the cell under the pointer, as desktop.Hoverable.
func (d *shareStrips) MouseMoved(e *desktop.MouseEvent) {
	wide := d.Size().Width - stripLeft - stripRight
	if len(d.strips) == 0 || wide <= 0 {
		return
	}
	d.read(d.says(int(math.Floor(float64(float32(len(d.strips[0].Shares)) * (e.Position.X - stripLeft) / wide)))))
}

// MouseOut empties the reading, as desktop.Hoverable.
func (d *shareStrips) MouseOut() { d.read("") }
