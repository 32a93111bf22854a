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
	s.lanes, s.digits = make([][]float64, len(s.columns)), make([]int, len(s.columns))
}

// quickRows reads rows from pos on for as long as nothing about them is odd, and says where the next one starts. No
// line may be pending.
func (s *scan) quickRows(chunk []byte, pos int) int {
	for pos < len(chunk) && s.makeRoom() {
		room := cap(s.times.open) - len(s.times.open)
		rows, next := s.quickBlock(chunk, pos, s.times.open[:cap(s.times.open)], len(s.times.open))
		s.keep(rows)
		if pos = next; rows < room {
			break
		}
	}
	return pos
}

// makeRoom sees that the lists of times and values, which grow alike, have room for a row. It is false where they do not
// stand alike.
func (s *scan) makeRoom() bool {
	t := &s.times
	if len(t.open) == cap(t.open) {
		t.grow()
	}
	for i := range s.columns {
		c := &s.columns[i].cells
		if len(c.open) == cap(c.open) {
			c.grow()
		}
		if len(c.open) != len(t.open) || cap(c.open) != cap(t.open) {
			return false
		}
		s.lanes[i] = c.open[:cap(c.open)]
	}
	return true
}

// quickBlock reads rows into the room of times from row on, and into the lanes beside it, until it is full or a row is
// odd. It says how many they are, and where the next one starts.
func (s *scan) quickBlock(chunk []byte, pos int, times []int64, row int) (rows, next int) {
	steps, lanes, digits, mark, delimiter := s.steps, s.lanes, s.digits, s.mark, s.delimiter[0]
	for ; row < len(times) && pos < len(chunk); row++ {
		ok := true
		p := pos
		for i := range steps {
			if i > 0 {
				if p >= len(chunk) || chunk[p] != delimiter {
					return rows, pos
				}
				p++
			}
			switch st := steps[i]; st.kind {
			case stepNumber:
				lanes[st.value][row], digits[st.value], p, ok = quickNumber(chunk, p, mark)
			case stepClock:
				times[row], p, ok = s.clock.quick(chunk, p)
			default:
				for p < len(chunk) && chunk[p] != delimiter && chunk[p] != '\n' {
					p++
				}
			}
			if !ok {
				return rows, pos
			}
		}
		if p >= len(chunk) {
			return rows, pos
		}
		end := p + 1
		if chunk[p] != '\n' {
			if end, ok = s.quickEnd(chunk, p, delimiter); !ok {
				return rows, pos
			}
		}
		for i, d := range digits {
			if d >= 0 {
				s.columns[i].decimals[d]++
			}
		}
		pos, rows = end, rows+1
	}
	return rows, pos
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
	if n < 0 || n > s.width-s.need && bytes.Count(chunk[p:p+n], []byte{delimiter}) > s.width-s.need {
		return 0, false // cut short, or too long
	}
	return p + n + 1, true
}

// keep keeps rows that were read into the room behind the lists.
func (s *scan) keep(rows int) {
	if rows == 0 {
		return
	}
	if row := s.times.n; len(s.lines) == 0 || s.line-s.lastLine.line != row-s.lastLine.row {
		s.beginLines(row)
	}
	s.times.take(rows)
	for i := range s.columns {
		s.columns[i].cells.take(rows)
	}
	s.rows += rows
	s.line += rows
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
	s := b[p:]
	i, digits := 0, uint64(0)
	neg := len(s) > 0 && s[0] == '-'
	if neg {
		i = 1
	}
	first := i
	for ; i < len(s) && s[i]-'0' <= 9; i++ {
		digits = digits*10 + uint64(s[i]-'0')
	}
	count := i - first
	if i < len(s) && s[i] == mark {
		i++
		from := i
		for ; i < len(s) && s[i]-'0' <= 9; i++ {
			digits = digits*10 + uint64(s[i]-'0')
		}
		decimals = i - from
		count += decimals
	} else if count == 0 && !neg {
		return missing, -1, p + i, true
	}
	if count == 0 || count > fastDigits {
		return 0, 0, p + i, false
	}
	v = float64(digits)
	if decimals > 0 {
		v /= pow10[decimals]
	}
	if neg {
		v = -v
	}
	return v, decimals, p + i, true
}
