package importers

import (
	"bytes"
	"slices"
)

// clockFit is a clock that was found and the first row it reads.
type clockFit struct {
	clock *clock
	first int
}

// learnClock finds the columns and the form of the time. A clock must read at least half of the rows from
// the first it reads on. What is printed as a date goes before numbers that may count time.
func learnClock(rows []record) clockFit {
	if len(rows) == 0 {
		return clockFit{}
	}
	fit := findClock(rows)
	if fit.clock != nil {
		fit.takeOtherForm(rows)
		fit.clock.learnZone(rows[fit.first:], nameRow(rows[:fit.first]))
	}
	return fit
}

// findClock is learnClock for the columns and the form.
func findClock(rows []record) clockFit {
	stamps := certainFirst(rows, stampFits(rows, dateForms))
	for _, s := range stamps {
		if fit, ok := instantsBeside(rows, s); ok {
			return fit
		}
		if s.midnights == s.timed && s.timed > 0 {
			if fit, ok := pairFit(rows, s); ok {
				return fit
			}
		}
		if 2*s.timed > s.hits {
			fit := s.fit(readStamp)
			fit.clock.stamps, fit.clock.bare = true, s.midnights == 0 && s.timed < s.hits
			return fit
		}
	}
	for _, s := range stamps {
		if fit, ok := pairFit(rows, s); ok {
			return fit
		}
	}
	for _, find := range []func([]record) (clockFit, bool){turnedFit, partsFit, compactFit, epochFit, serialFit, yearsFit, namelessFit} {
		if fit, ok := find(rows); ok {
			return fit
		}
	}
	for _, s := range stamps {
		fit := s.fit(readDate)
		fit.clock.untimed = true
		return fit
	}
	return yearlessFit(rows)
}

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

func (s stampFit) isCertain(rows []record) bool {
	names := nameRow(rows[:s.first])
	return 2*s.zoned > s.hits || s.column < len(names) && zoneInName(names[s.column]) != ""
}

// turnedFit looks for columns in which the time stands before the date, or before its year.
func turnedFit(rows []record) (clockFit, bool) {
	for col := range rows[0].cells {
		around := make([]record, len(rows))
		changed := 0
		for i, r := range rows {
			cell := trim(r.cells[col])
			put := turned(nil, cell)
			changed += one(!bytes.Equal(put, cell))
			around[i].cells = slices.Clone(r.cells)
			around[i].cells[col] = put
		}
		if 2*changed < len(rows) {
			continue
		}
		if s, ok := bestStamp(around, col, dateForms); ok && 2*s.timed > s.hits {
			return s.fit(readTurned), true
		}
	}
	return clockFit{}, false
}

// compactForms are the dates without marks whose year has two digits. They look like any number: all cells must be
// dates under one of the orders, several rows of them, and a date alone must be named as one.
var compactForms = []dateForm{{"222", []order{ymd, dmy, mdy}}}

const leastCompact = 12

// compactFit looks for a column of such dates, with the time behind them or in a column beside.
func compactFit(rows []record) (clockFit, bool) {
	for col := range rows[0].cells {
		s, ok := bestStamp(rows, col, compactForms)
		switch {
		case !ok || s.hits < leastCompact || s.hits < filledFrom(rows, col, s.first):
		case s.timed == s.hits:
			fit := s.fit(readStamp)
			fit.clock.stamps = true
			return fit, true
		case s.timed == 0 && namedAs(rows[:s.first], col, clockNames):
			if fit, ok := pairFit(rows, s); ok {
				return fit, true
			}
		}
	}
	return clockFit{}, false
}

// instantsBeside looks beside a column of times for one that counts them from 1970: where the two differ by the
// same hours in every row the count says where the clock stands. A count of local time as if it were UTC's says
// nothing.
func instantsBeside(rows []record, s stampFit) (clockFit, bool) {
	if 2*s.timed <= s.hits || len(s.form.orders) > 1 || s.isCertain(rows) {
		return clockFit{}, false
	}
	fit, ok := epochFit(rows[s.first:])
	if !ok {
		return clockFit{}, false
	}
	face := s.fit(readStamp).clock
	for _, r := range rows[s.first:] {
		at, _, ok := face.read(face, r.cells)
		instant, _, counted := fit.clock.read(fit.clock, r.cells)
		if apart := max(at-instant, instant-at); ok && counted && (apart < minuteMS || apart > 14*hourMS || !quarters(apart)) {
			return clockFit{}, false
		}
	}
	fit.first += s.first
	return fit, true
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

// probe says whether something holds for one of a few rows spread over all.
func probe(rows []record, holds func(record) bool) bool {
	const probes = 12
	for i := range probes {
		if holds(rows[(len(rows)-1)*i/(probes-1)]) {
			return true
		}
	}
	return false
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

func one(b bool) int {
	if b {
		return 1
	}
	return 0
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

// isSecondClock says whether a column is named as a time and holds the numbers of dates, or of hours and minutes
// beside such a column: a clock beside the one that is read.
func isSecondClock(rows []record, names []string, col int) bool {
	if col >= len(names) || !anyPhrase(clockNames, words(names[col])) {
		return false
	}
	if share(rows, col, isCompactDate) {
		return true
	}
	return col > 0 && isTimeLike(rows, col) && isSecondClock(rows, names, col-1)
}

func isTimeLike(rows []record, col int) bool {
	return share(rows, col, reads(partHHMM)) || share(rows, col, reads(partTime))
}

// isCompactDate says whether a cell is a date of eight digits, alone or with a time behind it.
func isCompactDate(cell []byte) bool {
	for _, form := range []dateForm{{"Y22", []order{ymd}}, {"Y22h", []order{ymd}}} {
		if _, _, ok := form.fits(cell); ok {
			return true
		}
	}
	return false
}

// share says whether at least half of a column's filled cells, and one of them, pass a test.
func share(rows []record, col int, test func(cell []byte) bool) bool {
	passed, filled := 0, 0
	for _, r := range rows {
		cell := trim(r.cells[col])
		if len(cell) == 0 {
			continue
		}
		filled++
		if test(cell) {
			passed++
		}
	}
	return passed > 0 && 2*passed >= filled
}

// nameRow is the last row above the data without numbers: the header, as far as it is known yet.
func nameRow(above []record) []string {
	for i := len(above) - 1; i >= 0; i-- {
		if !hasNumber(above[i].cells) && !isUnitsRow(above[i].cells) && !isVacant(above[i].cells) {
			return texts(above[i].cells)
		}
	}
	return nil
}

// firstRead accepts a clock that reads at least half of the rows from the first one on that it reads.
func firstRead(rows []record, from int, c *clock) (clockFit, bool) {
	first, hits := -1, 0
	for i := from; i < len(rows); i++ {
		if _, _, ok := c.read(c, rows[i].cells); ok {
			if hits++; first < 0 {
				first = i
			}
		}
	}
	return clockFit{c, first}, hits > 0 && 2*hits >= len(rows)-first
}
