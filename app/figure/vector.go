package figure

import (
	"image"
	"image/color"
	"math"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// vector is the sheet for files: one device pixel is 1/96 inch of a vg.Canvas.
type vector struct {
	c      vg.Canvas
	height vg.Length
	widths []vg.Length // of the strings set, in order
}

func (s *vector) at(x, y float64) vg.Point {
	return vg.Point{X: vg.Length(x) * pixel, Y: s.height - vg.Length(y)*pixel}
}

func (s *vector) fill(r image.Rectangle, c color.NRGBA) {
	if r.Empty() || c.A == 0 {
		return
	}
	s.fillPoints(c, s.corner(r.Min), s.corner(image.Pt(r.Max.X, r.Min.Y)), s.corner(r.Max), s.corner(image.Pt(r.Min.X, r.Max.Y)))
}

func (s *vector) corner(p image.Point) vg.Point { return s.at(float64(p.X), float64(p.Y)) }

func (s *vector) fillPoints(c color.NRGBA, pts ...vg.Point) {
	var p vg.Path
	p.Move(pts[0])
	for _, q := range pts[1:] {
		p.Line(q)
	}
	p.Close()
	s.c.SetColor(c)
	s.c.Fill(p)
}

// stroke draws one open path in a solid line.
func (s *vector) stroke(p vg.Path, width float64, c color.NRGBA) {
	s.c.SetColor(c)
	s.c.SetLineWidth(vg.Length(width) * pixel)
	s.c.SetLineDash(nil, 0)
	s.c.Stroke(p)
}

// hatch draws the 45° lines y = k·pitch − x, cut to the rectangle, as one path.
func (s *vector) hatch(r image.Rectangle, pitch float64, c color.NRGBA) {
	x0, x1, y0, y1 := float64(r.Min.X), float64(r.Max.X), float64(r.Min.Y), float64(r.Max.Y)
	var p vg.Path
	for sum := math.Ceil((x0+y0)/pitch) * pitch; sum < x1+y1; sum += pitch {
		left, right := max(x0, sum-y1), min(x1, sum-y0)
		if left < right {
			p.Move(s.at(left, sum-left))
			p.Line(s.at(right, sum-right))
		}
	}
	if len(p) > 0 {
		s.stroke(p, 1, c)
	}
}

func (s *vector) text(str string, x, y float64, f typeface, c color.NRGBA) {
	if str == "" {
		return
	}
	face := f.vgFace()
	s.widths = append(s.widths, face.Width(str))
	s.c.SetColor(c)
	s.c.FillString(face, s.at(x, y), str)
}

// pathColumns bounds the columns in one path: raster canvases take time quadratic in a path's length.
const pathColumns = 64

func (s *vector) columns(r image.Rectangle, layers []layer) {
	for _, l := range layers {
		s.layer(r, l.cols, l.width, l.color)
	}
}

// layer draws a dense line as a zigzag through the columns, or the area they cover for a width of 0.
func (s *vector) layer(r image.Rectangle, cols []pixelColumn, width float64, c color.NRGBA) {
	for i := 0; i < len(cols); {
		for i < len(cols) && !cols[i].known {
			i++
		}
		from := i
		for i < len(cols) && cols[i].known && i-from < pathColumns {
			i++
		}
		if from == i {
			continue
		}
		to := i
		if width > 0 && to < len(cols) && cols[to].known {
			to++ // so that neighbouring paths join
		}
		s.run(r, from, cols[from:to], width, c)
	}
}

func (s *vector) run(r image.Rectangle, from int, cols []pixelColumn, width float64, c color.NRGBA) {
	clip := func(y float64) float64 { return min(max(y, float64(r.Min.Y)), float64(r.Max.Y)) }
	if width == 0 {
		s.area(r, from, cols, c, clip)
		return
	}
	var p vg.Path
	for k, col := range cols {
		if outsideLane(r, col) {
			continue
		}
		x := float64(r.Min.X+from+k) + 0.5
		top, bottom := clip(col.top), clip(col.bottom)
		if bottom-top < width {
			mid := (top + bottom) / 2
			top, bottom = mid, mid
		}
		first, second := s.at(x, top), s.at(x, bottom)
		if n := len(p); n > 0 && distanceY(p[n-1].Pos, second) < distanceY(p[n-1].Pos, first) {
			first, second = second, first
		}
		if k == 0 || !col.joined || outsideLane(r, cols[k-1]) {
			p.Move(first)
		} else {
			p.Line(first)
		}
		if first != second {
			p.Line(second)
		}
	}
	switch {
	case len(p) == 1: // a single instant: a dot
		p.Line(vg.Point{X: p[0].Pos.X + vg.Length(width)*pixel, Y: p[0].Pos.Y})
	case len(p) == 0:
		return
	}
	s.stroke(p, width, c)
}

func outsideLane(r image.Rectangle, c pixelColumn) bool {
	return c.bottom < float64(r.Min.Y) || c.top > float64(r.Max.Y)
}

func distanceY(a, b vg.Point) vg.Length { return max(a.Y-b.Y, b.Y-a.Y) }

// area fills between the tops and the bottoms of the columns.
func (s *vector) area(r image.Rectangle, from int, cols []pixelColumn, c color.NRGBA, clip func(float64) float64) {
	var pts []vg.Point
	for k, col := range cols {
		x := float64(r.Min.X + from + k)
		pts = append(pts, s.at(x, clip(col.top)), s.at(x+1, clip(col.top)))
	}
	for k := len(cols) - 1; k >= 0; k-- {
		x := float64(r.Min.X + from + k)
		pts = append(pts, s.at(x+1, clip(cols[k].bottom)), s.at(x, clip(cols[k].bottom)))
	}
	s.fillPoints(c, pts...)
}

func (s *vector) polyline(r image.Rectangle, pts []point, width float64, c color.NRGBA) {
	if len(pts) == 0 {
		return
	}
	if len(pts) == 1 {
		p := image.Pt(int(math.Round(pts[0].x)), int(math.Round(pts[0].y)))
		s.fill(image.Rect(p.X-1, p.Y-1, p.X+1, p.Y+1).Intersect(r), c)
		return
	}
	line := make([]vg.Point, len(pts))
	for i, p := range pts {
		line[i] = s.at(p.x, p.y)
	}
	low, high := s.corner(image.Pt(r.Min.X, r.Max.Y)), s.corner(image.Pt(r.Max.X, r.Min.Y))
	canvas := draw.Canvas{Canvas: s.c, Rectangle: vg.Rectangle{Min: low, Max: high}}
	for from := 0; from < len(line)-1; from += pathColumns {
		for _, piece := range canvas.ClipLinesXY(line[from:min(from+pathColumns+1, len(line))]) {
			var p vg.Path
			p.Move(piece[0])
			for _, q := range piece[1:] {
				p.Line(q)
			}
			s.stroke(p, width, c)
		}
	}
}
