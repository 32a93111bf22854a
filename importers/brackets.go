package importers

import (
	"math"

	"thawbook/analysis/series"
)

// A ledger prints what is below nought in brackets, and a keeper what he is not sure of. The readings beside them tell.

// plainlyNearer is how many times nearer to the readings beside them the numbers in brackets must be above nought than
// below it, to be no ledger's. Common practice, no source.
const plainlyNearer = 3

// noteBracket keeps that a column's number in the row being read stood in brackets.
func (s *scan) noteBracket(c *values, cell []byte) {
	if len(cell) > 0 && cell[0] == '(' {
		c.bracketed = append(c.bracketed, s.times.n-1)
	}
}

// settleBrackets takes numbers in brackets for ones above nought where they are plainly nearer to the readings before
// them then, and remarks that they had brackets.
func (s *scan) settleBrackets() {
	for i := range s.columns {
		c := &s.columns[i]
		if len(c.bracketed) == 0 || s.keyed != nil || !c.areAboveNought() {
			continue
		}
		for _, row := range c.bracketed {
			c.val[row] = -c.val[row]
			s.notes.add(series.Remark{Code: RemarkRemarked, Line: s.lineOf(row), Column: c.index + 1, Args: []string{"(…)", c.header}})
		}
		c.changed()
	}
}

// areAboveNought says whether a column's numbers in brackets are so.
func (c *values) areAboveNought() bool {
	above, below, left := 0.0, 0.0, c.bracketed
	before := missing
	for row, v := range c.val {
		switch {
		case len(left) > 0 && left[0] == row:
			left = left[1:]
			if before == before {
				above, below = above+math.Abs(-v-before), below+math.Abs(v-before)
			}
		case v == v:
			before = v
		}
	}
	return plainlyNearer*above < below
}
