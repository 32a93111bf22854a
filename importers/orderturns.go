package importers

import (
	"slices"

	"thawbook/analysis/series"
)

// Two read-outs one below the other may have their dates in different orders: then the rows leap by months in either,
// and go on evenly where the order turns at the row that is the second one's first.

// turn is a row from which on dates are of another order.
type turn struct {
	above, below order
	row          int
	leaps        int  // that are left when read so
	step         bool // the row follows on the one above by the usual step
	sure         bool // no other row would do as well and have some row read otherwise
}

// turnIn is the row of a file's dates at which their order turns; found says whether the rows show one: they leap far less
// than in the better order alone, or not at all any more and go on by the usual step.
func turnIn(packed []int64, alone orderFit, orders []order) (best turn, found bool) {
	usual := modeOf(alone.steps)
	if !slices.Contains(orders, dmy) || !slices.Contains(orders, mdy) || alone.leaps(usual)+alone.lost == 0 {
		return best, false
	}
	first, whole := bestTurn(packed, dmy, mdy, usual)
	second, other := bestTurn(packed, mdy, dmy, usual)
	best, leaps := first, min(whole, other)
	if second.leaps < first.leaps {
		best = second
	}
	far := best.leaps+fewestLeaps <= leaps && sparedLeaps*best.leaps <= leaps
	return best, best.sure && first.leaps != second.leaps && (far || best.leaps == 0 && leaps > 0 && best.step)
}

// bestTurn is the row from which on the lower order leaves the fewest leaps, and how many the upper one has in all rows.
// A row that is no date under its order counts as a leap.
func bestTurn(packed []int64, above, below order, usual int64) (best turn, whole int) {
	upper, lower := leaper{unpacker: unpacker{o: above}, usual: usual}, leaper{unpacker: unpacker{o: below}, usual: usual}
	for _, p := range packed {
		lower.next(p)
	}
	left := lower.leaps
	lower = leaper{unpacker: unpacker{o: below}, usual: usual}
	best.leaps = left + 1
	same := true // since the best row
	for row, p := range packed {
		before := upper
		upper.next(p)
		lower.next(p)
		if row > 0 && p>>packBits != packed[row-1]>>packBits {
			across := before
			across.unpacker = unpacker{o: below}
			across.next(p)
			switch leaps := across.leaps + left - lower.leaps; {
			case leaps < best.leaps:
				step := across.before - before.before
				best, same = turn{above, below, row, leaps, max(step, -step) == usual, true}, true
			case leaps == best.leaps && !same:
				best.sure = false
			}
		}
		same = same && upper.before == lower.before
	}
	return best, upper.leaps
}

// leaper counts the leaps of rows under an order.
type leaper struct {
	unpacker
	usual  int64
	before int64 // the last row's time
	leaps  int
	begun  bool
}

// next takes a row.
func (l *leaper) next(packed int64) {
	at, ok := l.at(packed)
	if !ok {
		l.leaps++
		return
	}
	if l.begun && max(at-l.before, l.before-at)/2 > l.usual {
		l.leaps++
	}
	l.before, l.begun = at, true
}

// unpackAll turns packed times into faces, those from the row on at which they turn under its lower order where there is one.
func (s *scan) unpackAll(read unpacker, turned *turn) {
	if turned != nil {
		read = unpacker{o: turned.above}
		s.notes.add(series.Remark{Code: RemarkOrderTurns, Line: s.lineOf(turned.row), Column: s.clock.columns[0] + 1})
	}
	for row, packed := range s.at {
		if turned != nil && row == turned.row {
			read = unpacker{o: turned.below}
		}
		at, ok := read.at(packed)
		if !ok {
			at = noTime
			s.loseRow(row)
		}
		s.at[row] = at
	}
}
