package importers

import (
	"bytes"
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

// quickRows reads rows from pos on for as long as nothing about them is odd, and says where the next one starts.
func (s *scan) quickRows(chunk []byte, pos int) int {
	steps, held, mark, delimiter := s.steps, s.held, s.mark, s.delimiter[0]
	for pos < len(chunk) {
		var at int64
		ok := true
		p := pos
		for i := range steps {
			if i > 0 {
				if p >= len(chunk) || chunk[p] != delimiter {
					return pos
				}
				p++
			}
			switch st := steps[i]; st.kind {
			case stepNumber:
				h := &held[st.value]
				h.v, h.decimals, p, ok = quickNumber(chunk, p, mark)
			case stepClock:
				at, p, ok = s.clock.quick(chunk, p)
			default:
				for p < len(chunk) && chunk[p] != delimiter && chunk[p] != '\n' {
					p++
				}
			}
			if !ok {
				return pos
			}
		}
		if p >= len(chunk) {
			return pos
		}
		end := p + 1
		if chunk[p] != '\n' {
			if end, ok = s.quickEnd(chunk, p, delimiter); !ok {
				return pos
			}
		}
		pos = end
		s.keep(at)
	}
	return pos
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

// keep keeps a row that was read. The lists are filled here and not by their add, which would be a call for each.
func (s *scan) keep(at int64) {
	if len(s.pending) > 0 && !s.startsBlock(at) {
		s.settle(false)
	}
	if row := s.times.n; len(s.lines) == 0 || s.line-s.lastLine.line != row-s.lastLine.row {
		s.beginLines(row)
	}
	t := &s.times
	if len(t.open) == cap(t.open) {
		t.grow()
	}
	t.open, t.n = append(t.open, at), t.n+1
	for i := range s.columns {
		c, h := &s.columns[i], &s.held[i]
		if h.decimals >= 0 {
			c.decimals[h.decimals]++
		}
		if len(c.cells.open) == cap(c.cells.open) {
			c.cells.grow()
		}
		c.cells.open, c.cells.n = append(c.cells.open, h.v), c.cells.n+1
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

// quickNumber reads a number of at most fastDigits digits, or an empty cell, and where it stops. decimals is
// −1 for an empty cell. What stops it is for the caller to judge.
func quickNumber(b []byte, p int, mark byte) (v float64, decimals, next int, ok bool) {
	neg := false
	if p < len(b) && b[p] == '-' {
		neg = true
		p++
	}
	first, digits := p, uint64(0)
	for p < len(b) {
		c := b[p] - '0'
		if c > 9 {
			break
		}
		digits = digits*10 + uint64(c)
		p++
	}
	count := p - first
	if p < len(b) && b[p] == mark {
		p++
		from := p
		for p < len(b) {
			c := b[p] - '0'
			if c > 9 {
				break
			}
			digits = digits*10 + uint64(c)
			p++
		}
		decimals = p - from
		count += decimals
	} else if count == 0 && !neg {
		return missing, -1, p, true
	}
	if count == 0 || count > fastDigits {
		return 0, 0, p, false
	}
	v = float64(digits)
	if decimals > 0 {
		v /= pow10[decimals]
	}
	if neg {
		v = -v
	}
	return v, decimals, p, true
}
