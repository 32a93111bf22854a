package series

import "math"

// baseBlock readings make a block of the lowest level of a pyramid, and fanOut blocks one of the next.
const (
	baseBlock = 8
	fanOut    = 4
)

// Pyramid holds the extremes of ever larger blocks of a curve's readings, so that a plot of any stretch
// costs time by its columns and not by its readings. It is safe for concurrent use.
type Pyramid struct {
	c      Curve
	levels []level
}

// level is one layer of a pyramid: the extremes of blocks of size readings each.
type level struct {
	size   int
	lo, hi []float64
}

// Column is what the line does in one pixel column: Lo and Hi its extremes, First and Last its values
// where it enters (or begins) and leaves (or ends). Lo is NaN when nothing is known there, and so are
// the others. Gap: the line is broken before First, so nothing joins it to the column on the left.
type Column struct {
	Lo, Hi, First, Last float64
	Gap                 bool
}

// NewPyramid prepares c for drawing, in one pass over its readings.
func NewPyramid(c Curve) *Pyramid {
	p := &Pyramid{c: c}
	below := level{size: 1, lo: c.Val, hi: c.Val}
	for fan := baseBlock; len(below.lo) > fan; fan = fanOut {
		below = below.fold(fan)
		p.levels = append(p.levels, below)
	}
	return p
}

// fold is the level whose blocks are fan blocks of l each.
func (l level) fold(fan int) level {
	n := (len(l.lo) + fan - 1) / fan
	up := level{size: l.size * fan, lo: make([]float64, n), hi: make([]float64, n)}
	for b := range up.lo {
		i, j := b*fan, min((b+1)*fan, len(l.lo))
		up.lo[b], up.hi[b] = extremes(l.lo[i:j], l.hi[i:j], math.Inf(1), math.Inf(-1))
	}
	return up
}

// extremes widens lo and hi by the values of two lists of equal length.
func extremes(los, his []float64, lo, hi float64) (float64, float64) {
	for i, v := range los {
		if v < lo {
			lo = v
		}
		if w := his[i]; w > hi {
			hi = w
		}
	}
	return lo, hi
}

// Columns fills dst with the line over s in len(dst) equal columns. A column has the readings at
// instants from its left edge to before its right edge, and the line up to both edges: where two joined
// readings lie in different columns, every column from one to the other carries the line between them.
func (p *Pyramid) Columns(dst []Column, s Span) {
	if s.From >= s.To {
		for i := range dst {
			dst[i] = unknownColumn
		}
		return
	}
	left, stride := p.cut(float64(s.From), p.c.firstFrom(s.From)), 0
	for i := range dst {
		edge := float64(s.From) + float64(s.To-s.From)*float64(i+1)/float64(len(dst))
		right := p.cut(edge, p.seek(left.next, stride, int64(math.Ceil(edge))))
		dst[i] = p.column(&left, &right)
		left, stride = right, right.next-left.next
	}
}

// unknownColumn is one where nothing is known.
var unknownColumn = Column{Lo: math.NaN(), Hi: math.NaN(), First: math.NaN(), Last: math.NaN(), Gap: true}

// lineCut is where a column's edge cuts the line: the first reading at or after it, whether a line leads
// to that reading from the one before, and its value at the edge if so.
type lineCut struct {
	next  int
	known bool
	val   float64
}

// cut is the line cut at an instant whose first reading at or after is next.
func (p *Pyramid) cut(at float64, next int) lineCut {
	if !p.c.Joined(next) {
		return lineCut{next: next}
	}
	return lineCut{next, true, p.c.between(next, at-float64(p.c.Readings.At[next-1]))}
}

// column is the line between two cuts.
func (p *Pyramid) column(left, right *lineCut) Column {
	i, j := left.next, right.next
	if i == j && !left.known {
		return unknownColumn
	}
	col := Column{First: left.val, Last: right.val, Gap: !left.known}
	if !left.known {
		col.First = p.c.Val[i]
	}
	if !right.known {
		col.Last = p.c.Val[j-1]
	}
	col.Lo, col.Hi = p.extremes(i, j, min(col.First, col.Last), max(col.First, col.Last))
	return col
}

// extremes widens lo and hi by the readings i to before j: whole blocks where they fit, and the ends
// of each level from the one below.
func (p *Pyramid) extremes(i, j int, lo, hi float64) (float64, float64) {
	below := level{size: 1, lo: p.c.Val, hi: p.c.Val}
	for _, up := range p.levels {
		fan := up.size / below.size
		if j-i < 2*fan {
			break
		}
		head, tail := (i+fan-1)/fan*fan, j/fan*fan
		lo, hi = extremes(below.lo[i:head], below.hi[i:head], lo, hi)
		lo, hi = extremes(below.lo[tail:j], below.hi[tail:j], lo, hi)
		i, j, below = head/fan, tail/fan, up
	}
	return extremes(below.lo[i:j], below.hi[i:j], lo, hi)
}

// seek is the first reading at or after t, searched from reading k on in doubling strides: the work
// grows with the logarithm of how far it lies, not of how many readings there are. It starts two short
// of the last stride, which is where evenly spaced readings have it.
func (p *Pyramid) seek(k, lastStride int, t int64) int {
	at := p.c.Readings.At
	if guess := k + lastStride - 2; guess > k && guess < len(at) && at[guess] < t {
		k = guess
	}
	step := 1
	for k < len(at) && at[k] < t { // stride out
		k += step
		step *= 2
	}
	lo, hi := k-step/2, min(k, len(at))
	for lo < hi { // and halve
		if mid := int(uint(lo+hi) >> 1); at[mid] < t {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}
