package importers

import (
	"math"
	"slices"
)

// A file whose fields shift from row to row would be read into wrong columns; it is refused instead. So is
// one whose commas separate the cells and mark the fractions too.

// shiftedShare is the share of rows, one in so many, from which on a shift is no damage to some rows but the
// file's way; minShifted is how many rows it takes at least. Common practice, no source.
const shiftedShare, minShifted = 10, 3

// shifted is the first line whose fields stand in other columns than those of most rows; 0 when too few do.
func (l *layout) shifted(records []record) int {
	if l.allStand(records) {
		return 0
	}
	first, found, timed := 0, 0, 0
	spans, oneTime := l.spans(records), l.hasOneTime(records)
	var padded [][]byte
	for _, r := range records {
		if r.line < l.line || isVacant(r.cells) {
			continue
		}
		moved := false
		if l.reads(r) {
			timed++
			moved = len(r.cells) != l.width && fitsMoved(numbersIn(r.cells, l.mark), spans)
		} else {
			padded = besideEmpty(padded, r.cells)
			moved = oneTime && l.timeMoved(padded)
		}
		if moved {
			if found++; first == 0 {
				first = r.line
			}
		}
	}
	if found < minShifted || found*shiftedShare < timed {
		return 0
	}
	return first
}

// allStand says whether every row of the table is as wide as it should be and has its time.
func (l *layout) allStand(records []record) bool {
	return !slices.ContainsFunc(records, func(r record) bool {
		return r.line >= l.line && !isVacant(r.cells) && (len(r.cells) != l.width || !l.reads(r))
	})
}

// misplaced is why a file's fields can't be told apart, or nil.
func (l *layout) misplaced(records []record, name string) error {
	records = above(records, l.below)
	if line := l.twoCommas(records, l.names); line > 0 {
		return &Refusal{Name: name, Code: RefusedTwoCommas, Line: line}
	}
	if line := l.shifted(records); line > 0 {
		return &Refusal{Name: name, Code: RefusedShifted, Line: line}
	}
	return nil
}

// hasOneTime says whether no row has a second time, in UTC perhaps, beside the clock's.
func (l *layout) hasOneTime(records []record) bool {
	var padded [][]byte
	for _, r := range records {
		padded = besideEmpty(padded, r.cells)
		if l.reads(r) && l.timeMoved(padded) {
			return false
		}
	}
	return true
}

// besideEmpty is a row behind three empty cells, in the memory of the one before.
func besideEmpty(padded, cells [][]byte) [][]byte {
	return append(append(padded[:0], nil, nil, nil), cells...)
}

// timeMoved says whether a row, behind three empty cells, has a time one to three cells beside the clock's columns.
func (l *layout) timeMoved(padded [][]byte) bool {
	for by := range 7 {
		if by < len(padded) && by != 3 {
			if _, _, ok := l.clock.read(l.clock, padded[by:]); ok {
				return true
			}
		}
	}
	return false
}

// span is where the numbers of a column lie in rows of full width.
type span struct{ low, high float64 }

// spans are the columns' spans, a quarter wider on both sides.
func (l *layout) spans(records []record) []span {
	out := make([]span, l.width)
	for i := range out {
		out[i] = span{math.Inf(1), math.Inf(-1)}
	}
	for _, r := range records {
		if len(r.cells) != l.width || !l.reads(r) {
			continue
		}
		for i, cell := range r.cells {
			if l.clock.uses(i) {
				continue
			}
			if v, _, _, ok := numberInText(trim(cell), l.mark); ok {
				out[i] = span{min(out[i].low, v), max(out[i].high, v)}
			}
		}
	}
	for i := range out {
		out[i].widen()
	}
	return out
}

// widen makes a span a quarter wider on both sides.
func (s *span) widen() {
	more := (s.high - s.low) / 4
	s.low, s.high = s.low-more, s.high+more
}

// numbersIn are the numbers of cells, missing where one is none.
func numbersIn(cells [][]byte, mark byte) []float64 {
	out := make([]float64, len(cells))
	for i, cell := range cells {
		if v, _, _, ok := numberInText(trim(cell), mark); ok {
			out[i] = v
		} else {
			out[i] = missing
		}
	}
	return out
}

// fitsMoved says whether more of a row's numbers lie in the spans of columns when the cells behind some place
// are moved by as many places as the row lacks or has too many.
func fitsMoved(numbers []float64, spans []span) bool {
	return mostMoved(numbers, spans, len(numbers)) > inSpans(numbers, spans, len(numbers), 0)
}

// mostMoved is how many of a row's numbers lie in the spans at most when those behind one of so many places are moved.
func mostMoved(numbers []float64, spans []span, places int) (most int) {
	for place := range places {
		most = max(most, inSpans(numbers, spans, place, len(spans)-len(numbers)))
	}
	return most
}

// inSpans counts the numbers that lie in their column's span, those from a place on moved.
func inSpans(numbers []float64, spans []span, place, by int) (n int) {
	for i, v := range numbers {
		if i >= place && i < place-by {
			continue
		}
		if i >= place {
			i += by
		}
		n += one(i >= 0 && i < len(spans) && v >= spans[i].low && v <= spans[i].high)
	}
	return n
}

// twoCommas is the first line whose numbers seem to be cut in two by the commas of their fractions; 0 when
// there are too few. The header names fewer columns than these lines have, no number has a point, and what
// is beyond the names are digits.
func (l *layout) twoCommas(records []record, names int) int {
	if l.delimiter != "," || l.marked || names == 0 {
		return 0
	}
	first, found, timed := 0, 0, 0
	for _, r := range records {
		if r.line < l.line || !l.reads(r) {
			continue
		}
		timed++
		if n := len(r.cells) - names; n < 1 || n > names-len(l.clock.columns) || !allDigits(r.cells[names:]) {
			continue
		}
		if found++; first == 0 {
			first = r.line
		}
	}
	if found*shiftedShare < timed {
		return 0
	}
	return first
}

// allDigits says whether the cells are whole numbers without a sign.
func allDigits(cells [][]byte) bool {
	for _, c := range cells {
		c = trim(c)
		for _, d := range c {
			if !isDigit(d) {
				return false
			}
		}
		if len(c) == 0 {
			return false
		}
	}
	return true
}
