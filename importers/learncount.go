package importers

// Time may be counted in one number: from 1970, from the origin of a calendar of days, or in years. This file finds
// such columns.

// counts are the ways to count time, with the span of values that are taken for it: the years 1990 to 2069 in
// seconds, milliseconds, microseconds and nanoseconds since 1970 (the finer ones are told in milliseconds), in tenths of a
// microsecond since the year 1, of whatever zone, or since 1601 in UTC, which is 11,644,473,600 s before 1970, and in
// days. Numbers of the size of days are common: those need a name. Day 0 of the Julian days begins at noon, 2440587.5
// being 1970-01-01, and that of the modified ones at midnight of Julian day 2400000.5 (IAU 1997, resolution B1). A
// spreadsheet's day 25569 is 1970-01-01, and day 719529 is where they are counted from a year 0.
var counts = []struct {
	name          order
	low, high     float64
	origin, scale float64
	names         []string
	zone          string
}{
	{"epoch_s", 631152000, 3155760000, 0, secondMS, nil, ""},
	{"epoch_ms", 631152000000, 3155760000000, 0, 1, nil, ""},
	{"epoch_ms", 631152000e6, 3155760000e6, 0, 1e-3, nil, ""},
	{serial, 62766748800e7, 65291356800e7, 62135596800e7, 1e-4, nil, ""},
	{"epoch_ms", 12275625600e7, 14800233600e7, 11644473600e7, 1e-4, nil, ""},
	{"epoch_ms", 631152000e9, 3155760000e9, 0, 1e-6, nil, ""},
	{serial, 2447892.5, 2477112.5, 2440587.5, dayMS, []string{"jd", "julian*"}, "+00:00"},
	{serial, 47892, 77112, 40587, dayMS, []string{"mjd", "modif* julian*"}, "+00:00"},
	{serial, 726834, 756056, 719529, dayMS, clockNames, ""},
	{serial, 32874, 62093, spreadsheet1900, dayMS, clockNames, ""},
}

// serial is the order of times counted in days.
const serial order = "serial"

func epochFit(rows []record) (clockFit, bool) { return countedFit(rows, false) }

// serialFit looks for days: with their fractions, else with the fractions in a column beside them.
func serialFit(rows []record) (clockFit, bool) { return countedFit(rows, true) }

// countedFit looks for the counts that need a name, or for those that don't.
func countedFit(rows []record, named bool) (clockFit, bool) {
	for col := range rows[0].cells {
		for _, k := range counts {
			if (k.names != nil) != named {
				continue
			}
			fit, rises, ok := countFit(rows, col, k.low, k.high)
			if !ok || named && (!namedAs(rows[:fit.first], col, k.names) || 10*count(rows[:fit.first], col, isAnyNumber) > len(rows)-fit.first) {
				continue // its name says no time, or many of its numbers count none
			}
			fit.clock.name, fit.clock.origin, fit.clock.scale, fit.clock.zone = k.name, k.origin, k.scale, k.zone
			if named && fit.clock.takeFraction(rows[fit.first:]) || rises {
				return fit, true
			}
		}
	}
	return clockFit{}, false
}

// namedAs says whether the name above a column holds one of the phrases.
func namedAs(above []record, col int, phrases []string) bool {
	names := nameRow(above)
	return col < len(names) && anyPhrase(phrases, words(names[col]))
}

// takeFraction takes the column behind whole days for the time where it holds the fractions of the day.
func (c *clock) takeFraction(rows []record) bool {
	beside := c.columns[0] + 1
	if beside >= len(rows[0].cells) || share(rows, c.columns[0], func(cell []byte) bool { _, d, _ := anyNumber(cell); return d > 0 }) {
		return false
	}
	paired := *c
	paired.columns, paired.read = []int{c.columns[0], beside}, readDayAndFraction
	if !share(rows, beside, func(cell []byte) bool { _, d, _ := anyNumber(cell); return d > 1 }) || !mostlyRises(rows, &paired) {
		return false
	}
	*c = paired
	return true
}

// yearNames are the names of columns that hold years with their fractions.
var yearNames = append([]string{"year*", "decimal*", "jahr*", "annee*"}, clockNames...)

// yearsFit looks for years with their fractions: three digits of them are less than nine hours.
func yearsFit(rows []record) (clockFit, bool) {
	for col := range rows[0].cells {
		fit, rises, ok := countFit(rows, col, 1990, 2070)
		if !ok || !rises || !namedAs(rows[:fit.first], col, yearNames) {
			continue
		}
		if share(rows, col, func(cell []byte) bool { _, d, _ := anyNumber(cell); return d >= 3 }) {
			fit.clock.name, fit.clock.read = doy, readYears
			return fit, true
		}
	}
	return clockFit{}, false
}

// mostRowsATime is how many rows may share a time on average where each holds one value.
const mostRowsATime = 20

// countFit accepts a column whose numbers lie in a span and hardly ever fall; rises says whether they mostly rise.
// Rows of words, as headers that come again, don't count.
func countFit(rows []record, col int, low, high float64) (fit clockFit, rises, ok bool) {
	c := &clock{read: readCount, columns: []int{col}, scale: 1}
	if !probe(rows, func(r record) bool { v, _, ok := anyNumber(trim(r.cells[col])); return ok && v >= low && v <= high }) {
		return fit, false, false
	}
	first, hits, down, up, same, wordy := -1, 0, 0, 0, 0, 0
	before := low
	for i, r := range rows {
		v, _, ok := anyNumber(trim(r.cells[col]))
		if !ok || v < low || v > high {
			wordy += one(first >= 0 && !ok && !hasNumber(r.cells))
			continue
		}
		if first < 0 {
			first = i
		}
		down += one(v < before)
		up += one(v > before)
		same += one(v == before)
		hits, before = hits+1, v
	}
	return clockFit{c, first}, 2*up >= hits-same && mostRowsATime*up >= hits, hits > 0 && 10*hits >= 9*(len(rows)-first-wordy) && 10*down <= hits
}
