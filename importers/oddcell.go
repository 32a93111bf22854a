package importers

import (
	"slices"

	"thawbook/analysis/series"
)

// What a cell says that is not a plain number.

// oddCell reads a cell that is not a plain number: padded, with its unit, a word for a state or for nothing.
func (s *scan) oddCell(c *values, cell []byte) float64 {
	cell = trim(cell)
	switch c.kind {
	case runEnd:
		return s.runEnd(c)
	case grading:
		return c.verdictCell(cell)
	}
	if isMissing(cell) {
		return missing
	}
	if c.kind == event || c.kind == message {
		return s.eventCell(c, cell)
	}
	if c.kind == state {
		if v, ok := parseState(cell); ok {
			return v
		}
		return s.unreadableCell(c, cell)
	}
	if v, ok := parseState(cell); ok && s.long {
		s.keyed.stated[s.keyed.lastID] = true
		return v
	}
	return s.oddNumber(c, cell)
}

// oddNumber reads a number that is dressed, or written with the other decimal mark.
func (s *scan) oddNumber(c *values, cell []byte) float64 {
	v, d, _, ok := numberInText(cell, s.mark)
	if ok && !c.graded && isGrouped(cell, s.mark) && !s.mayGroup(c) {
		ok = false
	}
	if !ok && !s.marked && !s.anyFraction() {
		if v, d, _, ok = numberInText(cell, ','); ok && d > 0 {
			s.mark, s.marked = ',', true
		}
	}
	if !ok {
		v, d, ok = s.otherMark(c, cell)
	}
	if !ok {
		v, d, ok = s.remarkedNumber(c, cell)
	}
	if !ok {
		return s.unreadableCell(c, cell)
	}
	s.noteBracket(c, cell)
	if len(cutComparison(cell)) < len(cell) {
		s.notes.add(series.Remark{Code: RemarkLimit, Line: s.line, Column: c.index + 1, Args: []string{clip(text(cell)), c.header}})
	}
	c.decimals[min(d, len(c.decimals)-1)]++
	return v
}

// mayGroup says whether the mark that is not the decimal one can part a column's thousands: not while no
// fraction has shown which is which, and no air is that warm or damp.
func (s *scan) mayGroup(c *values) bool {
	return (s.marked || s.anyFraction()) && !isTemperature(c.quantity) && c.quantity != RelativeHumidity
}

// anyFraction says whether a number with a fraction was read.
func (s *scan) anyFraction() bool {
	for i := range s.columns {
		for _, n := range s.columns[i].decimals[1:] {
			if n > 0 {
				return true
			}
		}
	}
	return false
}

// unreadableCell remarks a cell that is neither value nor missing. A column that held nothing so far and whose
// name says nothing is a place for words, not worth a remark.
func (s *scan) unreadableCell(c *values, cell []byte) float64 {
	if c.kind == vacant && c.quantity == Other {
		return unreadable
	}
	s.notes.add(series.Remark{Code: RemarkUnreadable, Line: s.line, Column: c.index + 1, Args: []string{clip(text(cell)), c.header}})
	return unreadable
}

// otherMark reads a number whose fraction stands behind the other decimal mark than most of the file's: read-outs of two
// programs in one file. It must be a fraction by itself: three digits behind a mark may be thousands, but not of air.
func (s *scan) otherMark(c *values, cell []byte) (v float64, decimals int, ok bool) {
	mark := byte('.' + ',' - s.mark)
	v, decimals, _, ok = numberInText(cell, mark)
	if !ok || decimals == 0 || isGraded(cell) || isGrouped(cell, mark) || decimals == 3 && !isTemperature(c.quantity) && c.quantity != RelativeHumidity {
		return 0, 0, false
	}
	s.notes.add(series.Remark{Code: RemarkMixedMarks, Line: s.line, Column: c.index + 1, Args: []string{clip(text(cell)), c.header}})
	return v, decimals, true
}

// trustedRows is how many rows must show how a number is printed for one with fewer digits to be one that was cut.
const trustedRows = 12

// distrustLast takes the last number of a text that does not end its line for cut off where no other of its column has
// so few digits behind the mark.
func (s *scan) distrustLast() {
	if s.times.n <= trustedRows || s.lineOf(s.times.n-1) != s.line {
		return // it has no time
	}
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind != number || c.index != len(s.cells)-1 {
			continue
		}
		_, d, ok := parseNumber(s.cells[c.index], s.mark)
		fewest := slices.IndexFunc(c.decimals[:], func(n int) bool { return n > 0 })
		if ok && d == fewest && c.decimals[d] == 1 {
			c.decimals[d]--
			c.cells.open[len(c.cells.open)-1] = missing
			s.notes.add(series.Remark{Code: RemarkCutLine, Line: s.line, Column: c.index + 1})
		}
	}
}
