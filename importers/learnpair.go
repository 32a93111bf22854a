package importers

// The time of a day may stand in a column of its own beside the date. This file finds it.

// pairFit looks for the time that belongs to a column of dates: a time of day, with AM or PM beside it, or
// columns of its parts.
func pairFit(rows []record, s stampFit) (clockFit, bool) {
	data := rows[s.first:]
	names := nameRow(rows[:s.first])
	dates := s.fit(readDate).clock
	if _, across := dates.hoursOf(names); across {
		return clockFit{}, false
	}
	s.empty = len(data) - filledFrom(rows, s.column, s.first)
	for _, col := range nearestFirst(len(rows[0].cells), s.column) {
		name := ""
		if col < len(names) {
			name = names[col]
		}
		course, proven := courseOfDay(data, dates, col, name)
		if _, counted := dayCount(name); !counted && !proven && anyPhrase(otherTimes, words(name)) {
			continue
		}
		if p, ok := partBeside(data, s.column, col, name); ok && p != partTime {
			fit := s.fit(readDateParts, col)
			fit.clock.parts = []part{p}
			fit.clock.takeRest(data, names, p, col)
			return fit, true
		}
		if p, ok := namelessPart(data, s, col); ok && name == "" {
			course, proven = p, true
		}
		if proven {
			fit := s.fit(readDateParts, col)
			fit.clock.parts = []part{course}
			return fit, true
		}
		named := anyPhrase(clockNames, words(name)) || isTimeName(name)
		if share(data, col, func(c []byte) bool { return isTimeOfDay(c, named) }) || name == "" && isDotted(data, s.column, col) {
			fit := s.fit(readPair, col)
			if half := col + 1; half < len(data[0].cells) && share(data, half, isHalf) {
				fit = s.fit(readPair, col, half)
			}
			fit.clock.zoned, fit.clock.paired = share(data, col, isZonedTime), true
			return fit, true
		}
	}
	return clockFit{}, false
}

// otherTimes are the names of columns that hold times beside a date which are not the row's.
var otherTimes = append([]string{"sunrise*", "sunset*", "time* max*", "time* min*", "hour* max*", "hour* min*", "heure* max*", "heure* min*", "hora* max*", "hora* min*", "uhrzeit max*", "uhrzeit min*"}, elapsedNames...)

// nearestFirst are all columns but one: the one behind it, the one before it, those behind, those before.
func nearestFirst(width, col int) (out []int) {
	for _, c := range []int{col + 1, col - 1} {
		if c >= 0 && c < width {
			out = append(out, c)
		}
	}
	for c := col + 2; c < width; c++ {
		out = append(out, c)
	}
	for c := range max(col-1, 0) {
		out = append(out, c)
	}
	return out
}

// partBeside says which part of a time a column beside a date holds by its name: one named as an hour and
// nothing else, or as a time where several rows share their date or its cells are times in one number.
func partBeside(rows []record, date, col int, name string) (p part, ok bool) {
	if hasSpans(rows, col) {
		return partSpan, true
	}
	if p, counted := dayCount(name); counted && share(rows, col, reads(p)) {
		return p, true
	}
	named := isPart(name, int(partHour)) || isTimeName(name) && datesRepeat(rows, date)
	if !named && !anyPhrase(clockNames, words(name)) {
		return 0, false
	}
	p, ok = timePart(rows, col, name)
	compact := (p == partHHMM || p == partHHMMSS) && share(rows, col, func(c []byte) bool { return isTimeOfDay(c, true) })
	return p, ok && (named || compact)
}

// datesRepeat says whether at least every third row has the date of the row above.
func datesRepeat(rows []record, date int) bool {
	same := 0
	for i := 1; i < len(rows); i++ {
		same += one(string(rows[i].cells[date]) == string(rows[i-1].cells[date]))
	}
	return same > 0 && 3*same >= len(rows)-1
}

// namelessPart says which part of a time a column without a name, next to the date, holds: numbers with which
// the time goes on from row to row where the date alone stands still.
func namelessPart(rows []record, s stampFit, col int) (part, bool) {
	if col != s.column+1 || !datesRepeat(rows, s.column) || count(rows, col, hasMarks) > 0 {
		return 0, false
	}
	for _, p := range []part{partHour, partHHMM, partHHMMSS} {
		c := s.fit(readDateParts, col).clock
		c.parts = []part{p}
		if _, rises, _ := stepsBetween(rows, c); 10*rises >= 9*(len(rows)-1) {
			return p, true
		}
	}
	return 0, false
}

// hasMarks says whether anything but digits is in a cell.
func hasMarks(cell []byte) bool { return countDigits(cell) < len(cell) }

// isDotted says whether a column without a name, next to the date, holds times printed 18.00 where the file's
// fractions follow a comma.
func isDotted(rows []record, date, col int) bool {
	if mark, _ := learnMark(rows, &clock{columns: []int{date, col}}); mark != ',' || col != date+1 {
		return false
	}
	return share(rows, col, func(c []byte) bool { return isTimeOfDay(c, true) })
}

// isTimeOfDay says whether a cell is a time; without a name that says so it needs colons or two dots, lest
// a number be taken for one.
func isTimeOfDay(cell []byte, named bool) bool {
	cell = cutDayZero(cell)
	_, ok := parseTime(cell)
	if _, spelled := spelledTime(cell); spelled {
		return true
	}
	marks := 0
	for _, c := range cell {
		if c == ':' {
			marks += 2
		}
		if c == '.' {
			marks++
		}
	}
	return ok && (named || marks >= 2)
}

func isHalf(cell []byte) bool {
	_, ok := halfOf(cell)
	return ok
}

func isZonedTime(cell []byte) bool {
	t, ok := parseTime(cell)
	return ok && t.zoned
}
