package importers

import "strings"

// This file finds the columns that hold the parts of a time: by their names, else by their cells.

// partsFit looks for year, month and day, or year and day of the year, in columns of their own, and for the
// time of day in those beside them.
func partsFit(rows []record) (clockFit, bool) { return namedFit(rows, (*clock).takeDate) }

// namedFit looks for a row of names from which the date can be taken.
func namedFit(rows []record, takeDate func(c *clock, names []string) bool) (clockFit, bool) {
	for i := 0; i < min(len(rows)-1, trialRows); i++ {
		if len(rows[i].cells) < 2 || !hasLetter(rows[i].cells) || hasNumber(rows[i].cells) {
			continue
		}
		names := texts(rows[i].cells)
		c := &clock{read: readParts}
		if !takeDate(c, names) {
			continue
		}
		_, across := c.hoursOf(names)
		if !(across || c.takeTime(rows[i+1:], names)) && c.yearless && !c.hasFractions(rows[i+1:]) {
			continue
		}
		if fit, ok := firstRead(rows, i+1, c); ok {
			return fit, true
		}
	}
	return clockFit{}, false
}

func (c *clock) take(p part, column int) {
	c.parts, c.columns = append(c.parts, p), append(c.columns, column)
}

// takeDate takes the columns of the date by their names: a day beside a year but no month is one of the year.
func (c *clock) takeDate(names []string) bool {
	year, month, day := indexOfDate(names)
	yearDay := indexOfPhrase(names, yearDayNames)
	if yearDay < 0 && month < 0 {
		yearDay = day
	}
	switch {
	case year < 0:
		return false
	case month >= 0 && day >= 0:
		c.name = ymd
		c.take(partYear, year)
		c.take(partMonth, month)
		c.take(partDay, day)
	case yearDay >= 0 && yearDay != year:
		c.name = doy
		c.take(partYear, year)
		c.take(partYearDay, yearDay)
	default:
		return false
	}
	return true
}

// takeTime takes the columns of the time of day: by their names and as their cells read, else by their cells.
func (c *clock) takeTime(rows []record, names []string) (found bool) {
	for col, name := range names {
		if c.uses(col) || col >= len(rows[0].cells) || !isTimeName(name) && !isPart(name, 3) {
			continue
		}
		if p, ok := timePart(rows, col, name); ok {
			c.take(p, col)
			c.takeRest(rows, names, p, col)
			return true
		}
	}
	for col := range names {
		if !c.uses(col) && col < len(rows[0].cells) && share(rows, col, isPlainTime) {
			c.take(partTime, col)
			return true
		}
	}
	for col, name := range names {
		if c.uses(col) || col >= len(rows[0].cells) {
			continue
		}
		if p, ok := courseOfDay(rows, c, col, name); ok {
			c.take(p, col)
			return true
		}
	}
	return false
}

// isPlainTime says whether a cell is a time of day that needs no name to be known.
func isPlainTime(cell []byte) bool { return isTimeOfDay(cell, false) }

// takeRest takes the minute and the second that belong to an hour, and AM or PM beside a time.
func (c *clock) takeRest(rows []record, names []string, p part, col int) {
	for _, more := range []part{partMinute, partSecond} {
		at := c.freePart(names, more)
		if p != partHour || at < 0 || !share(rows, at, reads(more)) {
			break
		}
		c.take(more, at)
		col = max(col, at)
	}
	if half := col + 1; half < len(rows[0].cells) && share(rows, half, isHalf) {
		c.take(partHalf, half)
	}
}

// freePart is the first column named as a part that is none of the clock's yet: mm is a month and a minute.
func (c *clock) freePart(names []string, p part) int {
	for i, n := range names {
		if !c.uses(i) && isPart(n, int(p)) {
			return i
		}
	}
	return -1
}

// timePart says how the cells of a column named as a time read: as most of them do, as a printed time before an
// hour (18.10 is no fraction) and as an hour before hours and minutes in one number.
func timePart(rows []record, col int, name string) (best part, ok bool) {
	kinds, most := []part{partTime, partHour, partHHMM, partHHMMSS}, 0
	if anyPhrase(compactNames, words(name)) {
		kinds = []part{partHHMM, partHHMMSS, partTime}
	}
	if hasSpans(rows, col) {
		return partSpan, true
	}
	for _, p := range kinds {
		if n := count(rows, col, reads(p)); n > most && share(rows, col, reads(p)) {
			best, most = p, n
		}
	}
	return best, most > 0
}

// hasSpans says whether a column holds spans of time: an offset behind a time looks like one, but it hardly
// changes.
func hasSpans(rows []record, col int) bool {
	const offsets = 2 // of winter and of summer
	ends := map[string]bool{}
	return share(rows, col, func(cell []byte) bool {
		_, end, ok := timeSpan(cell)
		ends[string(end)] = true
		return ok
	}) && (len(ends) > offsets || len(rows) <= offsets)
}

// hasFractions says whether the days are printed with a fraction, which is the time.
func (c *clock) hasFractions(rows []record) bool {
	return share(rows, c.columns[len(c.columns)-1], func(cell []byte) bool {
		_, decimals, ok := anyNumber(cell)
		return ok && decimals > 0
	})
}

// reads is the test whether a cell can be a part. Four digits are left to partHHMM.
func reads(p part) func(cell []byte) bool {
	return func(cell []byte) bool {
		var d dayParts
		return d.set(p, cell) && d.ms <= dayMS && !(p == partTime && countDigits(cell) == len(cell) && len(cell) != 6)
	}
}

func count(rows []record, col int, test func(cell []byte) bool) (n int) {
	for _, r := range rows {
		if cell := trim(r.cells[col]); len(cell) > 0 && test(cell) {
			n++
		}
	}
	return n
}

func indexOfPart(names []string, p int) int {
	for i, n := range names {
		if isPart(n, p) {
			return i
		}
	}
	return -1
}

// indexOfDate are the columns of a year, a month and a day by their names, or by their initials one behind the other: y, or a
// name for the year, then m and d. −1 is none.
func indexOfDate(names []string) (year, month, day int) {
	year, month, day = indexOfPart(names, 0), indexOfPart(names, 1), indexOfPart(names, 2)
	for i := 2; i < len(names) && month < 0 && day < 0; i++ {
		ofYear := i-2 == year || strings.EqualFold(names[i-2], "y")
		if ofYear && strings.EqualFold(names[i-1], "m") && strings.EqualFold(names[i], "d") {
			return i - 2, i - 1, i
		}
	}
	return year, month, day
}

func indexOfPhrase(names, phrases []string) int {
	for i, n := range names {
		if w := words(n); len(w) > 0 && len(w) <= 4 && anyPhrase(phrases, w) {
			return i
		}
	}
	return -1
}

// namelessDates are the parts of dates that stand side by side in columns without names, and the parts of the time that
// may stand behind them.
var namelessDates = []struct {
	name       order
	date, time []part
}{
	{ymd, []part{partYear, partMonth, partDay}, []part{partHour, partMinute, partSecond}},
	{doy, []part{partYear, partYearDay}, []part{partHHMM, partSecond}},
}

// namelessFit looks for dates in columns without names, and behind them for their times. Each part of these is taken
// only where the parts before it leave rows with the same time.
func namelessFit(rows []record) (clockFit, bool) {
	for _, k := range namelessDates {
		for col := 0; col+len(k.date) <= len(rows[0].cells); col++ {
			c := &clock{read: readParts, name: k.name}
			for i, p := range k.date {
				c.take(p, col+i)
			}
			fit, ok := firstRead(rows, 0, c)
			if !ok || !isYear(trim(rows[fit.first].cells[col])) {
				continue
			}
			for _, p := range k.time {
				next := c.last() + 1
				if next == len(rows[0].cells) || !repeats(rows[fit.first:], c) {
					break
				}
				c.take(p, next)
				if further, ok := firstRead(rows, fit.first, c); !ok || further.first != fit.first {
					return clockFit{}, false
				}
			}
			if mostlyRises(rows[fit.first:], c) && (k.name == ymd || c.last() >= col+len(k.date)) {
				return fit, true
			}
		}
	}
	return clockFit{}, false
}

func isYear(cell []byte) bool {
	_, size, ok := dateMark('Y', cell)
	return ok && size == len(cell)
}

// repeats says whether at least every third row has the time of the row above.
func repeats(rows []record, c *clock) bool {
	same, _, _ := stepsBetween(rows, c)
	return same > 0 && 3*same >= len(rows)-1
}

// mostlyRises says whether a clock's times rise, and hardly ever fall.
func mostlyRises(rows []record, c *clock) bool {
	_, rises, falls := stepsBetween(rows, c)
	return 2*rises >= len(rows)-1 && rises > 0 && 10*falls <= len(rows)
}

// stepsBetween counts how the time goes on from row to row.
func stepsBetween(rows []record, c *clock) (same, rises, falls int) {
	before := int64(noTime)
	for _, r := range rows {
		at, _, ok := c.read(c, r.cells)
		if ok && before != noTime {
			same += one(at == before)
			rises += one(at > before)
			falls += one(at < before)
		}
		if ok {
			before = at
		}
	}
	return same, rises, falls
}
