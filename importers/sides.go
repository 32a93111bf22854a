package importers

import (
	"slices"

	"thawbook/analysis/series"
)

// Tables may stand side by side, each with a clock of its own under the name of the first one's. Their rows have
// nothing to do with each other but their lines.

// side is a table beside the first.
type side struct {
	*clock
	from  int    // its first column
	name  string // over its clock
	times store[int64]
}

// shifts are how many columns further right the names over the clock come again, or the time of another value.
func (c *clock) shifts(names []string) (out []int) {
	valued := len(c.columns) == 1 && isTimeOfValue(names, c.columns[0])
	for by := 1; c.last()+by < len(names); by++ {
		again := true
		for _, i := range c.columns {
			again = again && i < len(names) && names[i] != "" && names[i+by] == names[i]
		}
		if again || valued && isTimeOfValue(names, c.columns[0]+by) {
			out = append(out, by)
		}
	}
	return out
}

// isTimeOfValue says whether a column is named as the time of the one behind it: fan 1 time, fan 1 value; Time2, T2.
func isTimeOfValue(names []string, col int) bool {
	if col+1 >= len(names) {
		return false
	}
	time, value := words(names[col]), words(names[col+1])
	own := slices.DeleteFunc(slices.Clone(time), func(w nameWord) bool { return anyPhrase(clockNames, []nameWord{w}) })
	if len(own) == 0 || len(own) == len(time) || anyPhrase(clockNames, value) {
		return false
	}
	return !slices.ContainsFunc(own, func(w nameWord) bool {
		return !slices.ContainsFunc(value, func(k nameWord) bool { return k.low == w.low })
	})
}

// learnSides takes the columns under the clock's names further right for clocks where they read as the first does.
func (l *layout) learnSides(rows []record, names []string) {
	if l.clock.yearless || l.long {
		return
	}
	for _, by := range l.clock.shifts(names[:min(len(names), l.width)]) {
		c := *l.clock
		c.columns, c.memoLen = nil, 0
		for _, i := range l.clock.columns {
			c.columns = append(c.columns, i+by)
		}
		read, filled := 0, 0
		for _, r := range rows {
			if _, _, ok := c.read(&c, r.cells); ok {
				read++
			}
			filled += one(len(trim(r.cells[c.columns[0]])) > 0)
		}
		if read > 0 && 10*read >= 9*filled {
			l.sides = append(l.sides, side{clock: &c, from: slices.Min(c.columns), name: names[c.columns[0]]})
		}
	}
}

// isSideClock says whether a column belongs to the clock of a table beside the first.
func (l *layout) isSideClock(column int) bool {
	return slices.ContainsFunc(l.sides, func(s side) bool { return s.uses(column) })
}

// readSides reads the times of the tables beside the first. ok is whether any has one, and at the first of them.
func (s *scan) readSides() (at int64, ok bool) {
	for i := range s.sides {
		t := &s.sides[i]
		then, _, read := t.read(t.clock, s.cells)
		if !read {
			s.lostBeside(t)
			then = noTime
		} else if !ok {
			at, ok = then, true
		}
		s.sideAt[i] = then
	}
	return at, ok
}

// lostBeside remarks a time that can't be read in a table beside the first.
func (s *scan) lostBeside(t *side) {
	if cell := t.cell(s.cells, 0); !isMissing(cell) && !t.isHeaderAgain(cell) {
		s.notes.add(series.Remark{Code: RemarkBadTime, Line: s.line, Column: t.columns[0] + 1, Args: []string{clip(text(cell))}})
	}
}

// isHeaderAgain says whether a cell is the clock's name.
func (t *side) isHeaderAgain(cell []byte) bool { return text(cell) == t.name }

// keepSides keeps the times of the tables beside the first.
func (s *scan) keepSides() {
	for i := range s.sides {
		s.sides[i].times.add(s.sideAt[i])
	}
}

// spreadSides gives the columns of every table beside the first its own times: they follow the rows' own.
func (s *scan) spreadSides(o order) {
	if len(s.sides) == 0 || s.keyed != nil || s.readRows > 0 {
		return
	}
	n := len(s.at)
	s.readRows = n
	for k := range s.sides {
		for _, at := range s.sides[k].times.whole() {
			s.at = append(s.at, s.sideFace(at, o))
		}
	}
	for _, row := range s.sideOnly {
		s.at[row] = noTime
	}
	before := -1
	for i := range s.columns {
		c := &s.columns[i]
		table := s.tableOf(c.index)
		c.lead = c.lead || table != before
		before = table
		c.rows = make([]int32, n)
		for row := range n {
			c.rows[row] = int32(table*n + row)
		}
	}
	s.joinSides(n)
}

// joinSides makes one table of those side by side, each of n rows, where every next one goes on where the one before it
// ended and bears the same names, as a long list does that is printed in columns.
func (s *scan) joinSides(n int) {
	parts := make([][]*values, len(s.sides)+1)
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind == vacant {
			continue
		}
		parts[s.tableOf(c.index)] = append(parts[s.tableOf(c.index)], c)
	}
	for k := 1; k < len(parts); k++ {
		if !goesOn(s.at[(k-1)*n:k*n], s.at[k*n:(k+1)*n]) || !slices.EqualFunc(parts[0], parts[k], func(a, b *values) bool { return a.header == b.header }) {
			return
		}
	}
	for _, part := range parts[1:] {
		for i, c := range part {
			whole := parts[0][i]
			whole.val, whole.rows = append(whole.val, c.val...), append(whole.rows, c.rows...)
			for k, count := range c.decimals {
				whole.decimals[k] += count
			}
			whole.changed()
		}
	}
	s.columns = slices.DeleteFunc(s.columns, func(c values) bool { return s.tableOf(c.index) > 0 })
}

// goesOn says whether the times of a list, from its first on, follow the last of another's no later than two of the steps
// between those.
func goesOn(before, after []int64) bool {
	before, after = timesOf(before), timesOf(after)
	if len(before) < 2 || len(after) == 0 {
		return false
	}
	first, last := before[0], before[len(before)-1]
	next := after[0] - last
	return next > 0 && next*int64(len(before)-1) <= 2*(last-first)
}

// timesOf is a list of times without those that could not be read.
func timesOf(list []int64) []int64 {
	return slices.DeleteFunc(slices.Clone(list), func(at int64) bool { return at == noTime })
}

// sideFace is the time of a table beside the first under an order; noTime where that makes it no date.
func (s *scan) sideFace(at int64, o order) int64 {
	if at == noTime || !s.clock.unsure() {
		return at
	}
	if face, ok := unpack(at, o); ok {
		return face
	}
	return noTime
}

// tableOf is which of the tables side by side a column is of: 0 is the first.
func (s *scan) tableOf(column int) (table int) {
	for k := range s.sides {
		if column >= s.sides[k].from {
			table = k + 1
		}
	}
	return table
}
