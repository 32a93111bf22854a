package importers

import (
	"bytes"
	"encoding/binary"
	"math/bits"
)

// The quick path reads a row in one pass over its bytes when nothing about it is odd: no quotes, a time on the
// date of the row above, plain numbers or empty cells. It gives up on anything else before it has kept
// anything, and the plain path reads the row; both give the same bits.

// step is what the quick path does with a cell.
type step struct {
	kind  stepKind
	value int // which column of values
}

type stepKind int

const (
	stepOver stepKind = iota
	stepClock
	stepNumber
)

// quickCell is a number that was read and not kept yet.
type quickCell struct {
	v        float64
	decimals int
}

// planQuick lists the steps of a row; none when the layout is not for the quick path.
func (s *scan) planQuick() {
	if s.clock.stamps && !s.clock.zoned && !s.clock.form.hour() && len(s.delimiter) == 1 && !s.split.dressed && s.keyed == nil && s.sides == nil {
		s.steps = make([]step, s.need)
		s.steps[s.clock.columns[0]] = step{kind: stepClock}
	}
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind != number && c.kind != vacant {
			s.steps = nil
		}
		if s.steps != nil {
			s.steps[c.index] = step{stepNumber, i}
		}
	}
	s.held = make([]quickCell, len(s.columns))
}

// quick reads the row at pos. end is where the next one starts.
func (s *scan) quick(chunk []byte, pos int) (end int, ok bool) {
	var at int64
	p, delimiter := pos, s.delimiter[0]
	for i := range s.steps {
		switch st := s.steps[i]; st.kind {
		case stepClock:
			at, p, ok = s.clock.quick(chunk, p)
		case stepNumber:
			h := &s.held[st.value]
			h.v, h.decimals, p, ok = quickNumber(chunk, p, s.mark)
		default:
			for p < len(chunk) && chunk[p] != delimiter && chunk[p] != '\n' {
				p++
			}
			ok = true
		}
		if !ok || p >= len(chunk) {
			return 0, false
		}
		if i < len(s.steps)-1 {
			if chunk[p] != delimiter {
				return 0, false
			}
			p++
		}
	}
	if end, ok = s.quickEnd(chunk, p, delimiter); ok {
		s.keep(at)
	}
	return end, ok
}

// quickEnd finds the end of the line behind the last cell that is looked at.
func (s *scan) quickEnd(chunk []byte, p int, delimiter byte) (end int, ok bool) {
	if chunk[p] == '\r' && p+1 < len(chunk) {
		p++
	}
	if chunk[p] == '\n' {
		return p + 1, true
	}
	if chunk[p] != delimiter || s.need == s.width {
		return 0, false
	}
	n := bytes.IndexByte(chunk[p:], '\n')
	return p + n + 1, n >= 0
}

// keep keeps a row that was read.
func (s *scan) keep(at int64) {
	if len(s.pending) > 0 && !s.startsBlock(at) {
		s.settle(false)
	}
	s.time(at, 0)
	for i := range s.columns {
		c, h := &s.columns[i], s.held[i]
		if h.decimals >= 0 {
			c.decimals[h.decimals]++
		}
		c.cells.add(h.v)
	}
	s.rows++
	s.line++
}

// quick reads a time whose date was the last one, printed hh:mm:ss or hh:mm, perhaps with AM or PM behind a blank.
func (c *clock) quick(b []byte, p int) (at int64, next int, ok bool) {
	n := c.memoLen
	if n == 0 || !c.memoOpen || len(b)-p < n+9 || string(b[p:p+n]) != string(c.memo[:n]) {
		return 0, 0, false
	}
	t := b[p+n : p+n+9 : p+n+9]
	h, m := pair(t[0], t[1]), pair(t[3], t[4])
	if h > 23 || m > 59 || t[2] != ':' {
		return 0, 0, false
	}
	ms, next := int64(h)*hourMS+int64(m)*minuteMS, p+n+5
	if t[5] == ':' {
		s := pair(t[6], t[7])
		if s > 59 {
			return 0, 0, false
		}
		ms, next = ms+int64(s)*secondMS, next+3
	}
	if b[next] == ' ' {
		half, ok := quickHalf(b, next+1, h)
		return c.memoBase + ms + half, next + 3, ok
	}
	return c.memoBase + ms, next, true
}

// quickHalf is by how much AM or PM at p moves a time of that hour.
func quickHalf(b []byte, p int, hour uint) (half int64, ok bool) {
	if hour > 12 || len(b)-p < 3 || b[p+1]|0x20 != 'm' {
		return 0, false
	}
	if hour == 12 {
		half = -noonMS
	}
	switch b[p] | 0x20 {
	case 'a':
		return half, true
	case 'p':
		return half + noonMS, true
	}
	return 0, false
}

// pair is the number two digits make, more than 99 when they are none.
func pair(a, b byte) uint {
	a, b = a-'0', b-'0'
	if a > 9 || b > 9 {
		return 100
	}
	return uint(a)*10 + uint(b)
}

// Eight bytes at a time: every byte less '0', which bytes are then more than 9, and what joins eight digits to a number.
const (
	eachZero  = 0x3030303030303030
	toTop     = 0x7676767676767676 // 10 and more reach the byte's highest bit
	topBits   = 0x8080808080808080
	pairMask  = 0x000000FF000000FF
	fromPairs = 100 + 1_000_000<<32
	fromEnds  = 1 + 10_000<<32
)

// quickNumber reads a number of at most fastDigits digits, or an empty cell, and where it stops. decimals is
// −1 for an empty cell. What stops it is for the caller to judge. A number that ends within eight bytes, as
// loggers print it, is read from all of them at once.
func quickNumber(b []byte, p int, mark byte) (v float64, decimals, next int, ok bool) {
	first := p
	if p < len(b) && b[p] == '-' {
		first++
	}
	if len(b)-first < 8 {
		return slowNumber(b, p, mark)
	}
	word := binary.LittleEndian.Uint64(b[first:]) ^ eachZero
	others := (word + toTop | word) & topBits // right up to the first byte that is no digit, or the second where that is a mark
	digits := bits.TrailingZeros64(others) / 8
	end := digits
	if digits < 8 && b[first+digits] == mark {
		whole := uint64(1)<<(8*digits) - 1
		end = bits.TrailingZeros64(others&^(0x80<<(8*digits))) / 8
		word = word&whole | word>>8&^whole
		decimals = end - digits - 1
		digits = end - 1
	}
	switch {
	case end == 8:
		return slowNumber(b, p, mark)
	case end == 0 && first == p:
		return missing, -1, p, true
	case digits == 0:
		return 0, 0, first + end, false
	}
	word <<= 8 * (8 - digits)
	word = word*10 + word>>8
	v = float64((word&pairMask*fromPairs + word>>16&pairMask*fromEnds) >> 32)
	if decimals > 0 {
		v /= pow10[decimals]
	}
	if first > p {
		v = -v
	}
	return v, decimals, first + end, true
}

// slowNumber is quickNumber byte by byte.
func slowNumber(b []byte, p int, mark byte) (v float64, decimals, next int, ok bool) {
	start, point := p, -1
	if p < len(b) && b[p] == '-' {
		p++
	}
	first := p
	var digits uint64
	for ; p < len(b); p++ {
		if c := b[p] - '0'; c <= 9 {
			digits = digits*10 + uint64(c)
		} else if b[p] == mark && point < 0 {
			point = p
		} else {
			break
		}
	}
	count := p - first
	if point >= 0 {
		decimals = p - 1 - point
		count--
	}
	if p == start {
		return missing, -1, p, true
	}
	if count == 0 || count > fastDigits {
		return 0, 0, p, false
	}
	v = float64(digits)
	if decimals > 0 {
		v /= pow10[decimals]
	}
	if first > start {
		v = -v
	}
	return v, decimals, p, true
}
