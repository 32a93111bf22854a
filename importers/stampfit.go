package importers

import (
	"bytes"
	"math"
	"slices"
)

// How far a column's cells read as dates, alone or with the time behind them.

// stampFit counts how a column's cells read as dates of one form.
type stampFit struct {
	column, first int
	form          dateForm
	hits          int
	timed, zoned  int // with a time behind the date; with an offset
	offsets       int // how many different ones
	empty         int // rows without a date, where a time is looked for beside it
	midnights     int // timed at midnight: a date that was printed as if it were a time
}

func (s stampFit) fit(read timeReader, more ...int) clockFit {
	c := &clock{read: read, form: s.form, columns: append([]int{s.column}, more...), zoned: 2*s.zoned > s.hits, above: noTime}
	c.fills = s.empty > s.hits && len(more) > 0
	return clockFit{c, s.first}
}

// stampFits are the columns that hold dates, from the left, each with the form that reads most of it.
func stampFits(rows []record, forms []dateForm) []stampFit {
	var out []stampFit
	for col := range rows[0].cells {
		if best, ok := bestStamp(rows, col, forms); ok {
			out = append(out, best)
		}
	}
	return out
}

// bestStamp is the form that reads most of a column.
func bestStamp(rows []record, col int, forms []dateForm) (best stampFit, ok bool) {
	cells := probes(rows, col)
	for _, form := range forms {
		if !worthTrying(cells, form) {
			continue
		}
		if s := countStamps(rows, col, form); s.hits > best.hits {
			best = s
		}
	}
	if best.offsets > 2 { // more than winter's and summer's: the ends of spans perhaps
		if s := countStamps(rows, col, dateForm{best.form.pattern + "~", best.form.orders}); s.hits >= best.hits {
			best = s
		}
	}
	return best, best.hits > 0 && 2*best.hits >= filledFrom(rows, col, alikeFrom(rows, col, best.first))
}

// alikeFrom is the first of the rows above one that have as many digits, and nothing else, in a column: what stands
// above dates in a run of digits and is none itself is no header.
func alikeFrom(rows []record, col, first int) int {
	if first < 0 {
		return 0
	}
	cell := trim(rows[first].cells[col])
	for first > 0 && !hasMarks(cell) {
		above := trim(rows[first-1].cells[col])
		if len(above) != len(cell) || hasMarks(above) {
			break
		}
		first--
	}
	return first
}

// certainFirst puts the columns whose name or cells say how far from UTC they are before the others, where there
// are several: local time beside UTC says less. Those that stand still, the times of a whole query perhaps, go last.
func certainFirst(rows []record, stamps []stampFit) []stampFit {
	if len(stamps) < 2 {
		return stamps
	}
	first := stamps[0]
	rank := func(s stampFit) int {
		return one(s.isCertain(rows) && (first.standsStill(rows) || s.keepsStep(rows, first))) - 2*one(s.standsStill(rows))
	}
	slices.SortStableFunc(stamps, func(a, b stampFit) int { return rank(b) - rank(a) })
	return stamps
}

// keepsStep says whether two columns of times differ by whole quarters of an hour, as clocks of two zones do: the
// times at which readings were sent on do not.
func (s stampFit) keepsStep(rows []record, other stampFit) bool {
	kept, read := 0, 0
	for _, r := range rows[max(s.first, other.first):] {
		a, _, ok1 := s.form.fits(trim(r.cells[s.column]))
		b, _, ok2 := other.form.fits(trim(r.cells[other.column]))
		if ok1 && ok2 {
			read++
			kept += one(quarters(a.ms - b.ms))
		}
	}
	return 10*kept >= 9*read
}

// quarters says whether a stretch of time is a number of quarters of an hour, give or take a minute.
func quarters(ms int64) bool {
	const quarter = 15 * minuteMS
	rest := max(ms, -ms) % quarter
	return min(rest, quarter-rest) < minuteMS
}

// standsStill says whether a column holds the same in each of several rows.
func (s stampFit) standsStill(rows []record) bool {
	rows = rows[s.first:]
	return s.hits > 1 && count(rows, s.column, func(cell []byte) bool { return !bytes.Equal(cell, trim(rows[0].cells[s.column])) }) == 0
}

// isBeyondSeconds says whether a column holds ten digits that change and that counted in seconds from 1970 were later than
// 2038, where the counts of 31 bits end.
func (s stampFit) isBeyondSeconds(rows []record) bool {
	v, _, ok := anyNumber(trim(rows[s.first].cells[s.column]))
	return ok && v > math.MaxInt32 && v < 1e10 && s.timed == s.hits && s.hits > 1 && !s.standsStill(rows)
}

func (s stampFit) isCertain(rows []record) bool {
	names := nameRow(rows[:s.first])
	return 2*s.zoned > s.hits || s.column < len(names) && zoneInName(names[s.column]) != ""
}

// probes are a few of a column's filled cells, spread over the rows: a date may stand in the first of a day's rows alone.
func probes(rows []record, col int) (cells [][]byte) {
	const most = 12
	for i, next := range rows {
		if len(cells) < most && i*most >= len(cells)*len(rows) {
			if cell := cutApostrophe(trim(next.cells[col])); len(cell) > 0 {
				cells = append(cells, cell)
			}
		}
	}
	if last := cutApostrophe(trim(rows[len(rows)-1].cells[col])); len(last) > 0 {
		cells = append(cells, last)
	}
	return cells
}

// worthTrying reads the probes. Each mark of a form takes a byte at least.
func worthTrying(probes [][]byte, form dateForm) bool {
	return slices.ContainsFunc(probes, func(cell []byte) bool {
		_, _, ok := form.parseDate(cell)
		return ok && len(cell) >= len(form.pattern)
	})
}

func countStamps(rows []record, col int, form dateForm) stampFit {
	s := stampFit{column: col, form: form, first: -1}
	offsets := map[int64]bool{}
	for i, r := range rows {
		t, timed, ok := form.fits(trim(r.cells[col]))
		if !ok {
			continue
		}
		if s.first < 0 {
			s.first = i
		}
		s.hits++
		s.timed += one(timed)
		s.zoned += one(t.zoned)
		if t.zoned {
			offsets[t.offsetMS] = true
		}
		s.midnights += one(timed && t.ms == 0)
	}
	s.offsets = len(offsets)
	return s
}

// fits says whether a cell is a date of the form, alone or with a time behind it.
func (f dateForm) fits(cell []byte) (t timeOfDay, timed, ok bool) {
	cell = cutApostrophe(cell)
	v, n, ok := f.parseDate(cell)
	if !ok {
		return t, false, false
	}
	valid := false
	for _, o := range f.orders {
		_, good := dateMS(v, o)
		valid = valid || good
	}
	if n == len(cell) {
		return t, false, valid
	}
	t, ok = f.parseTime(afterDate(cell[n:]))
	return t, true, ok && valid
}

func filledFrom(rows []record, col, first int) int {
	n := 0
	for _, r := range rows[first:] {
		if len(trim(r.cells[col])) > 0 {
			n++
		}
	}
	return n
}
