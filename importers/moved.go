package importers

import (
	"bytes"
	"math"
	"slices"

	"thawbook/analysis/series"
)

// A row with a cell too many or too few, of a comma that stands for a decimal mark or by mistake, has the values behind it
// in wrong columns. Once all rows are read, their values tell which columns it fits; it is left out where it fits others.

// oddRow is a row with fewer or more cells than the table has.
type oddRow struct {
	row     int
	numbers []float64 // of its cells, missing where one is none
	whole   bool      // all its cells behind the time are digits
	long    bool
}

// mostOddRows is how many such rows are looked at; a file with more of them has its way.
const mostOddRows = 1000

// isLong says whether a row with cells beyond those that are looked at has more than the table.
func (s *scan) isLong(record []byte) bool {
	if s.need == s.width {
		return true
	}
	if len(s.delimiter) != 1 || s.split.dressed || bytes.Count(record, []byte(s.delimiter)) < s.width {
		return false
	}
	_, more := s.split.quoted(nil, record, s.width)
	return more
}

// keepOdd keeps a row of another width for the time when all are read, and says whether there was room.
func (s *scan) keepOdd(record []byte, long bool) bool {
	if len(s.oddRows) == mostOddRows {
		return false
	}
	cells, _ := s.split.quoted(nil, record, 2*s.width)
	behind := cells[min(s.clock.last()+1, len(cells)):]
	s.oddRows = append(s.oddRows, oddRow{s.times.n, numbersIn(cells, s.mark), allDigits(behind), long})
	return true
}

// leaveMoved leaves out the values of the odd rows that fit other columns than they stand in, and remarks all odd rows.
func (s *scan) leaveMoved() {
	if len(s.oddRows) == 0 {
		return
	}
	spans := s.spansOfEven()
	for i, r := range s.oddRows {
		code := RemarkShortLine
		switch {
		case s.isMoved(i, spans):
			code = RemarkMovedLine
			for k := range s.columns {
				s.columns[k].val[r.row] = unreadable
			}
		case r.long && s.need < s.width:
			continue // what is beyond is none of the columns'
		case r.long:
			code = RemarkLongLine
		}
		s.notes.add(series.Remark{Code: code, Line: s.lineOf(r.row)})
	}
}

// isMoved says whether an odd row has its values in wrong columns: they fit others better, its fractions are cut off, or
// it has a number beyond the table, as no row beside it, and as many fit others.
func (s *scan) isMoved(i int, spans []span) bool {
	r := s.oddRows[i]
	if fitsMoved(r.numbers, spans) {
		return true
	}
	if !r.long || !slices.ContainsFunc(r.numbers[s.width:], func(v float64) bool { return v == v }) {
		return false
	}
	beside := func(k, row int) bool {
		return k >= 0 && k < len(s.oddRows) && s.oddRows[k].long && s.oddRows[k].row == row
	}
	alone := !beside(i-1, r.row-1) && !beside(i+1, r.row+1)
	return r.whole && s.anyFraction() || alone && mostMoved(r.numbers, spans, s.width-1) >= inSpans(r.numbers, spans, len(r.numbers), 0)
}

// spansOfEven are the spans of the columns in the rows that are as wide as the table; those of columns that are not read
// hold nothing.
func (s *scan) spansOfEven() []span {
	out := make([]span, s.width)
	for i := range out {
		out[i] = span{math.Inf(1), math.Inf(-1)}
	}
	for i := range s.columns {
		c := &s.columns[i]
		of, odd := &out[c.index], s.oddRows
		for row, v := range c.val {
			if len(odd) > 0 && odd[0].row == row {
				odd = odd[1:]
			} else if v < of.low || v > of.high {
				of.low, of.high = min(of.low, v), max(of.high, v)
			}
		}
		of.widen()
	}
	return out
}
