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
// dates under one of the orders, several rows of them unless only years to come can be counted so high, and a date alone
// must be named as one.
var compactForms = []dateForm{{"222", []order{ymd, dmy, mdy}}}

const leastCompact = 12

// compactFit looks for a column of such dates, with the time behind them or in a column beside.
func compactFit(rows []record) (clockFit, bool) {
	for col := range rows[0].cells {
		s, ok := bestStamp(rows, col, compactForms)
		switch {
		case !ok || s.hits < leastCompact && !s.isBeyondSeconds(rows) || s.hits < filledFrom(rows, col, s.first):
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

func one(b bool) int {
	if b {
		return 1
	}
	return 0
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
