package importers

import (
	"bytes"
	"cmp"
	"math"
	"slices"
)

// decimalMark asks which mark stands before fractions, where 1,100 may be a little over one or over a thousand.
const decimalMark = "decimal_mark"

// learnMark counts the numbers that need a point or a comma for their fraction. Three digits behind a mark may be
// thousands: such numbers count only where no other number tells.
func learnMark(rows []record, c *clock) (mark byte, seen bool) {
	var sure, perhaps [2]int
	for _, r := range rows {
		for i, cell := range r.cells {
			if c.uses(i) {
				continue
			}
			for k, mark := range []byte{'.', ','} {
				fraction, doubtful := fractionBehind(cell, mark)
				sure[k] += one(fraction && !doubtful)
				perhaps[k] += one(fraction && doubtful)
			}
		}
	}
	if sure[0] == 0 && sure[1] == 0 {
		sure = perhaps
	}
	if sure[1] > sure[0] {
		return ',', true
	}
	return '.', sure[0] > 0
}

// hasGradedTenths says whether a cell of the rows holds tenths of a degree with their grade: the comma in it is no decimal mark.
func hasGradedTenths(rows []record) bool {
	return slices.ContainsFunc(rows, func(r record) bool {
		return slices.ContainsFunc(r.cells, func(cell []byte) bool { _, graded := gradedTenths(cell); return graded })
	})
}

// fractionBehind says whether a cell is a number with digits behind a mark, and whether those may be thousands.
func fractionBehind(cell []byte, mark byte) (fraction, doubtful bool) {
	if bytes.IndexByte(cell, mark) < 0 {
		return false, false
	}
	v, d, _, ok := numberInText(cell, mark)
	return ok && d > 0, d == 3 && math.Abs(v) >= 1 && math.Abs(v) < 1000
}

// settleMark takes numbers that were read as fractions for thousands where the keeper says so, or where what they
// measure or the numbers beside them leave no doubt, and asks where nothing decides. Points between commas are
// decimal marks.
func (s *scan) settleMark(answers Answers) (open []Question) {
	var doubtful []*values
	answer := answers[decimalMark]
	for i := range s.columns {
		c := &s.columns[i]
		switch c.thousands() {
		case noThousands:
			if c.hasFractions() {
				return nil
			}
			continue
		case surelyThousands:
			answer = cmp.Or(answer, string('.'+','-s.mark))
		}
		doubtful = append(doubtful, c)
	}
	switch {
	case len(doubtful) == 0 || s.mark == '.' && s.delimiter == "," || answer == string(s.mark):
		return nil
	case answer == "":
		return []Question{{ID: decimalMark, Options: []string{".", ","}}}
	}
	for _, c := range doubtful {
		c.takeThousands()
	}
	return nil
}

// hasFractions says whether a number of a column was read with a fraction.
func (c *values) hasFractions() bool {
	return slices.ContainsFunc(c.decimals[1:], func(n int) bool { return n > 0 })
}

// thousands is whether the marks in a column's numbers may part thousands.
type thousands int

const (
	noThousands thousands = iota
	mayBeThousands
	surelyThousands
)

// leastCO2 is less than any air holds, in ppm: the air outdoors had 280 before there was industry (IPCC 2021, AR6
// WG I, chapter 2). Beside numbers of three digits without a mark, fewer before it are thousands.
const leastCO2, wholeHundreds = 250, 100

// thousands looks at a column whose marks all have three digits behind them and up to three, no zero first, before
// them. Air is never so warm nor so damp.
func (c *values) thousands() thousands {
	if isTemperature(c.quantity) || c.quantity == RelativeHumidity || c.decimals[3] == 0 {
		return noThousands
	}
	for d, n := range c.decimals {
		if d != 3 && d != 0 && n > 0 {
			return noThousands
		}
	}
	low := math.Inf(1)
	for _, v := range c.val {
		if v != v {
			continue
		}
		v = math.Abs(v)
		if v < 1 || v >= 1000 || c.decimals[0] > 0 && v < wholeHundreds && v == math.Trunc(v) || c.decimals[0] > 0 && v > wholeHundreds && v > math.Trunc(v) {
			return noThousands
		}
		low = min(low, v)
	}
	if c.decimals[0] > 0 || low < leastCO2 && c.quantity == CO2 && c.namesCO2() {
		return surelyThousands
	}
	return mayBeThousands
}

// takeThousands makes thousands of what was read as ones with three digits behind the mark.
func (c *values) takeThousands() {
	mixed := c.decimals[0] > 0
	for i, v := range c.val {
		if v == v && !(mixed && math.Abs(v) >= wholeHundreds) {
			c.val[i] = math.Round(v * 1000)
		}
	}
	c.changed()
	c.decimals = [fastDigits + 2]int{c.decimals[0] + c.decimals[3]}
}
