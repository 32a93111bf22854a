package figure

import (
	"encoding/binary"
	"image"
	"image/color"
	"math"
	"runtime"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/math/fixed"
)

// raster is the sheet for screens and PNG: it draws straight into an image.
type raster struct {
	im    *image.RGBA
	faces *faces
	mask  *mask
}

func (s *raster) fill(r image.Rectangle, c color.NRGBA) {
	r = r.Intersect(s.im.Rect)
	if r.Empty() || c.A == 0 {
		return
	}
	if c.A < 0xFF {
		for y := r.Min.Y; y < r.Max.Y; y++ {
			s.blendRow(r.Min.X, r.Max.X, y, c)
		}
		return
	}
	first := s.im.Pix[s.im.PixOffset(r.Min.X, r.Min.Y):][:4*r.Dx()]
	for i := 0; i < len(first); i += 4 {
		first[i], first[i+1], first[i+2], first[i+3] = c.R, c.G, c.B, 0xFF
	}
	rows := r.Dy() - 1
	parts := min(runtime.GOMAXPROCS(0), 1+r.Dx()*rows/leastPart)
	inParallel(parts, func(k int) {
		for y := r.Min.Y + 1 + rows*k/parts; y < r.Min.Y+1+rows*(k+1)/parts; y++ {
			copy(s.im.Pix[s.im.PixOffset(r.Min.X, y):], first)
		}
	})
}

// leastPart is how many pixels are worth a processor of their own.
const leastPart = 200_000

func (s *raster) blendRow(x0, x1, y int, c color.NRGBA) {
	row := s.im.Pix[s.im.PixOffset(x0, y):][:4*(x1-x0)]
	newPaint(c).row(row)
}

// blend lays c over an opaque pixel with coverage a, 0–255.
func blend(p []uint8, c color.NRGBA, a uint32) {
	n := 255 - a
	p[0] = uint8((uint32(p[0])*n + uint32(c.R)*a + 127) / 255)
	p[1] = uint8((uint32(p[1])*n + uint32(c.G)*a + 127) / 255)
	p[2] = uint8((uint32(p[2])*n + uint32(c.B)*a + 127) / 255)
}

// hatch draws 45° lines, anchored to the page so that neighbouring rectangles continue each other.
func (s *raster) hatch(r image.Rectangle, pitch float64, c color.NRGBA) {
	r = r.Intersect(s.im.Rect)
	p := max(3, int(math.Round(pitch)))
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			switch (x + y) % p {
			case 0:
				blend(s.im.Pix[s.im.PixOffset(x, y):], c, uint32(c.A))
			case 1, p - 1:
				blend(s.im.Pix[s.im.PixOffset(x, y):], c, uint32(c.A)/4)
			}
		}
	}
}

func (s *raster) text(str string, x, y float64, f typeface, c color.NRGBA) {
	d := font.Drawer{Dst: s.im, Src: image.NewUniform(c), Face: s.faces.face(f)}
	d.Dot = fixed.Point26_6{X: fix(x), Y: fix(math.Round(y))}
	d.DrawString(str)
}

// columns draws layers of lines given as one stretch per pixel column, their ends softened by how much
// of the pixel they cover. Each column is drawn by itself in a strip of its own, where it lies together in
// memory; stretches of the plot are drawn side by side.
func (s *raster) columns(r image.Rectangle, layers []layer) {
	clip := r.Intersect(s.im.Rect)
	parts := runtime.GOMAXPROCS(0)
	inParallel(parts, func(k int) {
		strip := make([]uint8, 4*clip.Dy())
		for x := clip.Min.X + clip.Dx()*k/parts; x < clip.Min.X+clip.Dx()*(k+1)/parts; x++ {
			s.column(clip, x, x-r.Min.X, layers, strip)
		}
	})
}

// inParallel runs f(0) to f(n-1), the last of them itself, and returns when all are done.
func inParallel(n int, f func(k int)) {
	var all sync.WaitGroup
	for k := range n - 1 {
		all.Go(func() { f(k) })
	}
	if n > 0 {
		f(n - 1)
	}
	all.Wait()
}

// column draws the layers' columns i at x.
func (s *raster) column(clip image.Rectangle, x, i int, layers []layer, strip []uint8) {
	top, bottom := math.Inf(1), math.Inf(-1)
	for _, l := range layers {
		if c := l.cols[i]; c.known {
			top, bottom = min(top, c.top-l.width/2), max(bottom, c.bottom+l.width/2)
		}
	}
	lo, hi := max(clip.Min.Y, int(max(top, 0))), min(clip.Max.Y, int(min(bottom, float64(clip.Max.Y)))+1)
	if lo >= hi {
		return
	}
	strip = strip[:4*(hi-lo)]
	from, stride := s.im.PixOffset(x, lo), s.im.Stride
	for y, p := 0, from; y < len(strip); y, p = y+4, p+stride {
		binary.LittleEndian.PutUint32(strip[y:], binary.LittleEndian.Uint32(s.im.Pix[p:]))
	}
	for _, l := range layers {
		if c := l.cols[i]; c.known {
			stretch(strip, c.top-l.width/2-float64(lo), c.bottom+l.width/2-float64(lo), l.color, l.paint)
		}
	}
	for y, p := 0, from; y < len(strip); y, p = y+4, p+stride {
		binary.LittleEndian.PutUint32(s.im.Pix[p:], binary.LittleEndian.Uint32(strip[y:]))
	}
}

// stretch draws from top to bottom in a strip of pixels.
func stretch(strip []uint8, top, bottom float64, c color.NRGBA, p paint) {
	top, bottom = max(top, 0), min(bottom, float64(len(strip)/4))
	if top >= bottom {
		return
	}
	part := func(y int, share float64) { blend(strip[4*y:], c, uint32(share*float64(c.A)+0.5)) }
	from, to := int(math.Ceil(top)), int(bottom)
	if from > to { // inside one pixel
		part(to, bottom-top)
		return
	}
	if float64(from) > top {
		part(from-1, float64(from)-top)
	}
	p.row(strip[4*from : 4*to])
	if bottom > float64(to) {
		part(to, bottom-float64(to))
	}
}

// paint is a colour made ready to be laid over many opaque pixels, two at a time: their red and blue,
// and their green and opacity, each in a quarter of a word.
type paint struct{ rb, ga, keep uint64 }

const quarters = 0x00FF00FF00FF00FF

func newPaint(c color.NRGBA) paint {
	a := uint64(c.A) + uint64(c.A)>>7 // 0–256
	const twice, half = 1<<32 + 1, 0x0080008000800080
	return paint{
		rb:   (uint64(c.R)|uint64(c.B)<<16)*a*twice + half,
		ga:   (uint64(c.G)|0xFF<<16)*a*twice + half,
		keep: 256 - a,
	}
}

// row lays the paint over whole pixels lying side by side.
func (p paint) row(px []uint8) {
	for len(px) >= 8 {
		v := binary.LittleEndian.Uint64(px)
		rb := ((v&quarters)*p.keep + p.rb) >> 8 & quarters
		ga := (v>>8&quarters)*p.keep + p.ga
		binary.LittleEndian.PutUint64(px, rb|ga&^quarters)
		px = px[8:]
	}
	if len(px) >= 4 {
		v := uint64(binary.LittleEndian.Uint32(px))
		rb := ((v&quarters)*p.keep + p.rb) >> 8 & quarters
		ga := (v>>8&quarters)*p.keep + p.ga
		binary.LittleEndian.PutUint32(px, uint32(rb|ga&^quarters))
	}
}

// polyline draws joined segments with round ends; a single point is a dot. Segments that overlap are
// merged before they are laid on the page.
func (s *raster) polyline(r image.Rectangle, pts []point, width float64, c color.NRGBA) {
	clip := r.Intersect(s.im.Rect)
	if clip.Empty() || len(pts) == 0 {
		return
	}
	s.mask.reset(clip)
	if len(pts) == 1 {
		s.mask.segment(pts[0], pts[0], width*1.5)
	}
	for i := 1; i < len(pts); i++ {
		s.mask.segment(pts[i-1], pts[i], width)
	}
	s.mask.lay(s.im, c)
}

// mask collects the coverage of one line.
type mask struct {
	r      image.Rectangle
	alpha  []uint8 // row by row
	lo, hi []int   // touched rows of each column, half open
}

func (m *mask) reset(r image.Rectangle) {
	m.r = r
	if n := r.Dx() * r.Dy(); cap(m.alpha) < n {
		m.alpha = make([]uint8, n)
	} else {
		m.alpha = m.alpha[:n] // lay left it clean
	}
	m.lo, m.hi = m.lo[:0], m.hi[:0]
	for range r.Dx() {
		m.lo, m.hi = append(m.lo, r.Dy()), append(m.hi, 0)
	}
}

// segment covers the pixels nearer than half the width to the line from a to b.
func (m *mask) segment(a, b point, width float64) {
	if b.x < a.x {
		a, b = b, a
	}
	half := width / 2
	x0 := max(0, int(a.x-half-1)-m.r.Min.X)
	x1 := min(m.r.Dx()-1, int(b.x+half+1)-m.r.Min.X)
	for x := x0; x <= x1; x++ {
		cx := float64(x+m.r.Min.X) + 0.5
		lo, hi := segmentRows(a, b, cx, half+1)
		y0, y1 := max(0, int(lo)-m.r.Min.Y), min(m.r.Dy(), int(hi)+1-m.r.Min.Y)
		if y0 >= y1 {
			continue
		}
		m.lo[x], m.hi[x] = min(m.lo[x], y0), max(m.hi[x], y1)
		for y := y0; y < y1; y++ {
			cover := half + 0.5 - distance(point{cx, float64(y+m.r.Min.Y) + 0.5}, a, b)
			if v := uint8(min(max(cover, 0), 1) * 255); v > m.alpha[y*m.r.Dx()+x] {
				m.alpha[y*m.r.Dx()+x] = v
			}
		}
	}
}

// segmentRows returns the rows the line from a to b (a.x ≤ b.x) can touch, reach away from it, at x.
func segmentRows(a, b point, x, reach float64) (lo, hi float64) {
	if b.x-a.x < 1e-9 {
		return min(a.y, b.y) - reach, max(a.y, b.y) + reach
	}
	slope := (b.y - a.y) / (b.x - a.x)
	y0 := a.y + slope*(min(max(x-reach, a.x), b.x)-a.x)
	y1 := a.y + slope*(min(max(x+reach, a.x), b.x)-a.x)
	return min(y0, y1) - reach, max(y0, y1) + reach
}

func distance(p, a, b point) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	k := 0.0
	if n := dx*dx + dy*dy; n > 0 {
		k = min(max(((p.x-a.x)*dx+(p.y-a.y)*dy)/n, 0), 1)
	}
	return math.Hypot(p.x-a.x-k*dx, p.y-a.y-k*dy)
}

// lay draws the collected line and leaves the mask clean.
func (m *mask) lay(im *image.RGBA, c color.NRGBA) {
	for x := range m.lo {
		for y := m.lo[x]; y < m.hi[x]; y++ {
			i := y*m.r.Dx() + x
			if v := uint32(m.alpha[i]); v > 0 {
				blend(im.Pix[im.PixOffset(x+m.r.Min.X, y+m.r.Min.Y):], c, v*uint32(c.A)/255)
				m.alpha[i] = 0
			}
		}
	}
}
