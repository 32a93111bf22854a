package figure

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"io"
	"regexp"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// page is anything that can be drawn on a sheet of w × h design pixels.
type page interface {
	drawVector(s sheet, w, h int)
	Draw(im *image.RGBA, scale float64) Layout
}

// WritePNG writes the figure as a picture of w × h design pixels, scale device pixels each.
func (f *Figure) WritePNG(out io.Writer, w, h int, scale float64) error {
	return writePNG(f, out, w, h, scale)
}

// WriteSVG writes the figure as vectors, w × h design pixels in size.
func (f *Figure) WriteSVG(out io.Writer, w, h int) error { return writeSVG(f, out, w, h) }

// DrawOn draws the figure over a whole vector canvas of w × h, for any format that has one.
func (f *Figure) DrawOn(c vg.Canvas, w, h vg.Length) { drawOn(f, c, w, h) }

func (f *Figure) drawVector(s sheet, w, h int) {
	l := f.Layout(w, h, 1)
	f.draw(s, &l, image.Rect(0, 0, w, h))
}

func writePNG(p page, out io.Writer, w, h int, scale float64) error {
	im := image.NewRGBA(image.Rect(0, 0, int(float64(w)*scale+0.5), int(float64(h)*scale+0.5)))
	p.Draw(im, scale)
	return png.Encode(out, im)
}

// drawOn returns how wide each string was set, in order.
func drawOn(p page, c vg.Canvas, w, h vg.Length) []vg.Length {
	s := &vector{c: c, height: h}
	p.drawVector(s, int(w/pixel+0.5), int(h/pixel+0.5))
	return s.widths
}

var textElement = regexp.MustCompile(`<text `)

// writeSVG names fallbacks for machines without the typeface and holds every string to its width there.
func writeSVG(p page, out io.Writer, w, h int) error {
	width, height := vg.Length(w)*pixel, vg.Length(h)*pixel
	c := vgsvg.NewWith(vgsvg.UseWH(width, height))
	widths := drawOn(p, c, width, height)
	var b bytes.Buffer
	if _, err := c.WriteTo(&b); err != nil {
		return err
	}
	text := bytes.ReplaceAll(b.Bytes(), []byte("font-family:Liberation Sans;"),
		[]byte("font-family:'Liberation Sans',Arial,sans-serif;"))
	text = textElement.ReplaceAllFunc(text, func([]byte) []byte {
		length := widths[0].Points()
		widths = widths[1:]
		return fmt.Appendf(nil, `<text textLength="%.2f" lengthAdjust="spacingAndGlyphs" `, length)
	})
	_, err := out.Write(text)
	return err
}
