package importers

import (
	"slices"
	"strings"
)

// The keeper may say that columns hold something else than their header says: another unit, or each other's values.

// swappedColumns is the answer which columns stand under each other's names: "2+3", or "2+3, 5+6". No file asks it.
const swappedColumns = "swapped"

// unitsOfTemperature are the units that temperatures can be said to be in.
var unitsOfTemperature = []string{"degC", "degF", "K"}

// unitSaid takes an answer apart such as "degF", for all temperatures of a file, or "degF:2+4" for those of two columns.
func unitSaid(answer string) (unit string, columns []int, ok bool) {
	unit, list, some := strings.Cut(answer, ":")
	if !slices.Contains(unitsOfTemperature, unit) {
		return "", nil, false
	}
	if !some {
		return unit, nil, true
	}
	groups, ok := ParseGroups(list)
	if !ok || len(groups) != 1 || groups[0].Out || groups[0].Name != "" {
		return "", nil, false
	}
	return unit, groups[0].Columns, true
}

func isUnitSaid(answer string) bool {
	_, _, ok := unitSaid(answer)
	return ok
}

// isSwaps says whether an answer is pairs of columns.
func isSwaps(answer string) bool {
	groups, ok := ParseGroups(answer)
	return ok && !slices.ContainsFunc(groups, func(g ColumnGroup) bool { return len(g.Columns) != 2 || g.Out || g.Name != "" })
}

// takeUnitSaid gives a column of temperatures the unit that the keeper says, whatever its header has. Values that were
// converted row by row are in °C already.
func (c *values) takeUnitSaid(answer string) {
	unit, columns, ok := unitSaid(answer)
	if ok && c.unitFrom != "column" && (len(columns) == 0 || slices.Contains(columns, c.index+1)) {
		c.unit, c.unitFrom = unit, "answer"
	}
}

// swapSaid lets columns change what they measure, and in which unit, as the keeper says.
func (s *scan) swapSaid(answers Answers) {
	groups, ok := ParseGroups(answers[swappedColumns])
	if !ok {
		return
	}
	for _, rows := range s.byRows() {
		for _, g := range groups {
			one, other := columnNumbered(rows, g.Columns[0]), columnNumbered(rows, g.Columns[1])
			if one == nil || other == nil {
				continue
			}
			one.quantity, other.quantity = other.quantity, one.quantity
			one.unit, other.unit = other.unit, one.unit
			one.unitFrom, other.unitFrom = other.unitFrom, one.unitFrom
			one.divisor, other.divisor = other.divisor, one.divisor
		}
	}
}

// columnNumbered is the column of a number counted from 1; nil where there is none.
func columnNumbered(columns []*values, number int) *values {
	for _, c := range columns {
		if c.index+1 == number {
			return c
		}
	}
	return nil
}
