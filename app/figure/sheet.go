package figure

import (
	"image"
	"image/color"
	"image/draw"

	"golang.org/x/image/font"
	"golang.org/x/image/math/fixed"
	"gonum.org/v1/plot"
	vgfont "gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// sheet is what a figure is drawn on. Everything is in device pixels from the top left, y downwards;
// data are clipped to the rectangle handed along.
type sheet interface {
	fill(r image.Rectangle, c color.NRGBA)
	hatch(r image.Rectangle, pitch float64, c color.NRGBA)
	text(s string, x, y float64, f typeface, c color.NRGBA) // x left edge, y baseline
	columns(r image.Rectangle, layers []layer)              // back to front
	polyline(r image.Rectangle, pts []point, width float64, c color.NRGBA)
}

type point struct{ x, y float64 }

// pixelColumn is what a curve covers of one pixel column, from top to bottom: nothing when known is
// false. Joined: the line comes in from the column on the left.
type pixelColumn struct {
	top, bottom   float64
	known, joined bool
}

// layer is a dense line, one stretch per pixel column of its lane, drawn width wide; for a width of 0,
// the area the stretches cover.
type layer struct {
	cols  []pixelColumn
	width float64
	color color.NRGBA
	paint paint
}

// typeface is a weight at a size in device pixels.
type typeface struct {
	bold bool
	px   float64
}

// Sans is the typeface of every figure.
var Sans = vgfont.Font{Typeface: "Liberation", Variant: "Sans"}

func init() { plot.DefaultFont = Sans }

// vgFace returns the face for a vector canvas, where one design pixel is 1/96 inch.
func (t typeface) vgFace() vgfont.Face {
	f := Sans
	if t.bold {
		f.Weight = font.WeightBold
	}
	return vgfont.DefaultCache.Lookup(f, vg.Length(t.px)*pixel)
}

// pixel is the length of one design pixel.
const pixel = vg.Inch / 96

// faces keeps the screen faces in use.
type faces map[typeface]font.Face

func (f *faces) face(t typeface) font.Face {
	if *f == nil {
		*f = faces{}
	}
	face, ok := (*f)[t]
	if !ok {
		vf := t.vgFace()
		face = unkerned{vf.FontFace(96), map[spot]glyph{}}
		(*f)[t] = face
	}
	return face
}

// unkerned is a face whose digits keep their width, so that figures stand in columns: the typeface
// would set "11" tighter than other pairs.
//
// It keeps the glyphs it has drawn: a figure sets the same words again in every frame.
type unkerned struct {
	font.Face
	drawn map[spot]glyph
}

// spot is a rune and where in a pixel it stands.
type spot struct {
	r    rune
	x, y fixed.Int26_6
}

// glyph is a rune as drawn at the corner of the sheet.
type glyph struct {
	at      image.Rectangle
	mask    image.Alpha
	advance fixed.Int26_6
	ok      bool
}

// Glyph implements font.Face.
func (u unkerned) Glyph(dot fixed.Point26_6, r rune) (image.Rectangle, image.Image, image.Point, fixed.Int26_6, bool) {
	const pixel = 1<<6 - 1
	p := spot{r, dot.X & pixel, dot.Y & pixel}
	g, known := u.drawn[p]
	if !known {
		g = u.draw(p)
		u.drawn[p] = g
	}
	return g.at.Add(image.Pt(dot.X.Floor(), dot.Y.Floor())), &g.mask, g.at.Min, g.advance, g.ok
}

// Kern implements font.Face.
func (unkerned) Kern(_, _ rune) fixed.Int26_6 { return 0 }

func (u unkerned) draw(p spot) glyph {
	at, mask, from, advance, ok := u.Face.Glyph(fixed.Point26_6{X: p.x, Y: p.y}, p.r)
	g := glyph{at, *image.NewAlpha(at), advance, ok}
	if ok {
		draw.Draw(&g.mask, at, mask, from, draw.Src)
	}
	return g
}

// width returns how wide s is set, in device pixels.
func (f *faces) width(s string, t typeface) float64 {
	return float64(font.MeasureString(f.face(t), s)) / 64
}

// fit returns s, cut with an ellipsis where it is wider than room.
func (f *faces) fit(s string, t typeface, room float64) string {
	if f.width(s, t) <= room {
		return s
	}
	r := []rune(s)
	for n := len(r) - 1; n > 0; n-- {
		if c := string(r[:n]) + "…"; f.width(c, t) <= room {
			return c
		}
	}
	return ""
}

func fix(x float64) fixed.Int26_6 { return fixed.Int26_6(x*64 + 0.5) }
