package series

import (
	"math"
	"slices"
)

// baseBlock readings make a block of the lowest level of a pyramid, and fanOut blocks one of the next.
const (
	baseBlock = 8
	fanOut    = 4
)

// Pyramid holds the extremes of ever larger blocks of a curve's readings, so that a plot of any stretch
// costs time by its columns and not by its readings. It is safe for concurrent use.
type Pyramid struct {
	c      Curve
	levels [][]block // the lowest one first, of baseBlock readings a block
}

// block is some readings: when they begin, the first of them, the lowest and the highest. In the lowest level
// first is NaN where the line is broken in the block or the one before it.
type block struct {
	at            int64
	first, lo, hi float64
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
	for level := base(c); ; level = fold(level) {
		p.levels = append(p.levels, level)
		if len(level) <= fanOut {
			return p
		}
	}
}

// base is the lowest level.
func base(c Curve) []block {
	level := make([]block, (c.Len()+baseBlock-1)/baseBlock)
	for b := range level {
		i := b * baseBlock
		level[b] = block{at: c.Readings.At[i], first: c.Val[i]}
		level[b].lo, level[b].hi = extremes(c.Val[i:min(i+baseBlock, c.Len())], math.Inf(1), math.Inf(-1))
	}
	seam := c.seamsFrom(math.MinInt64)
	for k, t := range c.Readings.At {
		if b := k / baseBlock; seam.at(t) || k == 0 || t-c.Readings.At[k-1] > c.MaxStepMS {
			level[b].first, level[min(b+1, len(level)-1)].first = math.NaN(), math.NaN()
		}
	}
	return level
}

// fold is the level above: each of its blocks is fanOut of those below, the last one perhaps fewer.
func fold(below []block) []block {
	up := make([]block, 0, (len(below)+fanOut-1)/fanOut)
	for bs := range slices.Chunk(below, fanOut) {
		b := bs[0]
		b.lo, b.hi = blockExtremes(bs, b.lo, b.hi)
		up = append(up, b)
	}
	return up
}

// extremes widens lo and hi by some values.
func extremes(vs []float64, lo, hi float64) (float64, float64) {
	for _, v := range vs {
		if v < lo {
			lo = v
		}
		if v > hi {
			hi = v
		}
	}
	return lo, hi
}

// blockExtremes widens lo and hi by those of blocks.
func blockExtremes(bs []block, lo, hi float64) (float64, float64) {
	for i := range bs {
		if v := bs[i].lo; v < lo {
			lo = v
		}
		if v := bs[i].hi; v > hi {
			hi = v
		}
	}
	return lo, hi
}

// Columns fills dst with the line over s in len(dst) equal columns. A column has the readings at
// instants from its left edge to before its right edge, and the line up to both edges: where two joined
// readings lie in different columns, every column from one to the other carries the line between them.
// Where readings are so dense that a block of the lowest level takes less than a sixteenth of a column, an
// edge lies at the first block that begins after it.
func (p *Pyramid) Columns(dst []Column, s Span) {
	if s.From >= s.To {
		for i := range dst {
			dst[i] = unknownColumn
		}
		return
	}
	width := float64(s.To-s.From) / float64(len(dst))
	next := p.c.firstFrom(s.From)
	left := p.cut(float64(s.From), next)
	b, stride := next/baseBlock, 0
	for i := range dst {
		edge := float64(s.From) + float64(s.To-s.From)*float64(i+1)/float64(len(dst))
		to := p.seek(b, stride, int64(math.Ceil(edge)))
		b, stride = to, to-b
		right := p.cutNear(edge, b, int64(width/16))
		dst[i] = p.column(&left, &right)
		left = right
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

// cutNear is the line cut at an instant after which block b is the first to begin: there or, where blocks
// take no longer than slack milliseconds, at the beginning of b.
func (p *Pyramid) cutNear(at float64, b int, slack int64) lineCut {
	blocks := p.levels[0]
	if b > 0 && b < len(blocks) {
		if v := blocks[b].first; v == v && blocks[b].at-blocks[b-1].at <= slack {
			return lineCut{b * baseBlock, true, v}
		}
	}
	from := max(0, b-1) * baseBlock
	k, _ := slices.BinarySearch(p.c.Readings.At[from:min(b*baseBlock, p.c.Len())], int64(math.Ceil(at)))
	return p.cut(at, from+k)
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
	if j-i < 2*baseBlock {
		return extremes(p.c.Val[i:j], lo, hi)
	}
	head, tail := (i+baseBlock-1)/baseBlock, j/baseBlock
	lo, hi = extremes(p.c.Val[i:head*baseBlock], lo, hi)
	lo, hi = extremes(p.c.Val[tail*baseBlock:j], lo, hi)
	for _, level := range p.levels {
		if i, j = head, tail; j-i < 2*fanOut {
			return blockExtremes(level[i:j], lo, hi)
		}
		head, tail = (i+fanOut-1)/fanOut, j/fanOut
		lo, hi = blockExtremes(level[i:head*fanOut], lo, hi)
		lo, hi = blockExtremes(level[tail*fanOut:j], lo, hi)
	}
	return lo, hi
}

// seek is the first block that begins at or after t, searched from block k on in doubling strides: the work
// grows with the logarithm of how far it lies, not of how many there are. It starts two short of the last
// stride, which is where evenly spaced readings have it.
func (p *Pyramid) seek(k, lastStride int, t int64) int {
	blocks := p.levels[0]
	if guess := k + lastStride - 2; guess > k && guess < len(blocks) && blocks[guess].at < t {
		k = guess
	}
	step := 1
	for k < len(blocks) && blocks[k].at < t { // stride out
		k += step
		step *= 2
	}
	lo, hi := k-step/2, min(k, len(blocks))
	for lo < hi { // and halve
		if mid := int(uint(lo+hi) >> 1); blocks[mid].at < t {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo
}
