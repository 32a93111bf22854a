package desk

import (
	"cmp"
	"math"
	"slices"
)

// keyed is a row that can be put in the order of any column: its cells, and what each is ordered by, a number (NaN where
// it is not known), then a word.
type keyed struct {
	Cells []string
	keys  []float64
	words []string
}

func (k keyed) inRow() keyed { return k }

// rowsInOrder are rows in the order of a column, rising or falling; rows that are alike keep their order, and what is not known
// comes last either way.
func rowsInOrder[R interface{ inRow() keyed }](rows []R, column int, falling bool) []R {
	out := slices.Clone(rows)
	slices.SortStableFunc(out, func(x, y R) int {
		a, b := x.inRow(), y.inRow()
		if p, q := math.IsNaN(a.keys[column]), math.IsNaN(b.keys[column]); p != q {
			if p {
				return 1
			}
			return -1
		}
		c := cmp.Or(cmp.Compare(a.keys[column], b.keys[column]), cmp.Compare(a.words[column], b.words[column]))
		if falling {
			return -c
		}
		return c
	})
	return out
}
