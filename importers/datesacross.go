package importers

import (
	"maps"
	"slices"
)

// A table may have a row for each time of day and a column for each day, as a pivot of a spreadsheet has. Such columns are
// one series, day after day.

// leastDates is how many dates over columns make such a table.
const leastDates = 4

// acrossFit looks for times of day, or the hours' numbers, at the side of a table under a row of dates.
func acrossFit(rows []record) (clockFit, bool) {
	const highest = 20 // lines above the first time
	for i, r := range rows[:min(len(rows), highest)] {
		dates, form, ok := datesAcross(r.cells)
		if !ok {
			continue
		}
		for _, read := range []timeReader{readTimeAlone, readHourAlone} {
			c := &clock{columns: []int{0}, read: read, form: form, dates: dates}
			if fit, ok := firstRead(rows, i+1, c); ok && c.rises(rows[fit.first:]) {
				return fit, true
			}
		}
	}
	return clockFit{}, false
}

// rises says whether the times of some rows, several of them, rise from row to row: numbers that do not are no hours.
func (c *clock) rises(rows []record) bool {
	before, read := int64(-1), 0
	for _, r := range rows {
		at, _, ok := c.read(c, r.cells)
		if ok && at <= before {
			return false
		}
		if ok {
			before, read = at, read+1
		}
	}
	return read >= leastHours
}

// readHourAlone reads the number of an hour.
func readHourAlone(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	hour, ok := wholeNumber(c.cell(cells, 0))
	return int64(hour) * hourMS, 0, ok && hour <= 24
}

// datesAcross are the midnights of the dates that stand over columns behind the first, by column, and how they are
// written: under the order that makes most of them follow one another day by day, where there is one such.
func datesAcross(cells [][]byte) (dates map[int]int64, form dateForm, ok bool) {
	if len(cells) <= leastDates || isNumber(trim(cells[0]), '.') {
		return nil, form, false
	}
	most, tied := 0, false
	for _, f := range dateForms {
		for _, o := range f.orders {
			found := f.midnights(cells, o)
			switch steps := dailySteps(found); {
			case len(found) < leastDates || steps < most:
			case steps == most && most > 0 && !maps.Equal(found, dates):
				tied = true
			case steps > most:
				dates, form, most, tied = found, dateForm{f.pattern, []order{o}}, steps, false
			}
		}
	}
	return dates, form, most > 0 && !tied
}

// midnights are those of the dates of a form in a row of cells, by column; nil where others follow the first of them than
// dates that rise and words.
func (f dateForm) midnights(cells [][]byte, o order) map[int]int64 {
	out, before := map[int]int64{}, int64(noTime)
	for i := 1; i < len(cells); i++ {
		cell := trim(cells[i])
		v, n, ok := f.parseDate(cell)
		if !ok || n < len(cell) || countDigits(cell) == len(cell) {
			if hasNumber(cells[i : i+1]) {
				return nil
			}
			continue
		}
		at, valid := dateMS(v, o)
		if !valid || at <= before {
			return nil
		}
		out[i], before = at, at
	}
	return out
}

// dailySteps counts the dates that are the day after the one before.
func dailySteps(dates map[int]int64) (n int) {
	all := slices.Sorted(maps.Keys(dates))
	for k := 1; k < len(all); k++ {
		n += one(dates[all[k]]-dates[all[k-1]] == dayMS)
	}
	return n
}

// dropUndated drops the columns that have no date where others do: what was made of those.
func (l *layout) dropUndated() {
	undated := map[int]bool{}
	for _, c := range l.columns {
		undated[c.index] = len(l.hours) > 0 && l.clock.dates != nil && !c.hourly
	}
	l.drop(undated)
}

// spreadDates makes one series of the columns of days, one day after the other.
func (s *scan) spreadDates() {
	if len(s.hours) == 0 {
		return
	}
	n := len(s.at)
	at := make([]int64, 0, n*len(s.hours))
	for _, midnight := range s.hours {
		for _, time := range s.at {
			at = append(at, midnight+time)
		}
	}
	whole := s.columns[0]
	whole.rows, whole.val, whole.decimals = nil, nil, [fastDigits + 2]int{}
	for k := range s.columns {
		c := &s.columns[k]
		for i := range c.val {
			whole.rows, whole.val = append(whole.rows, int32(k*n+c.row(i))), append(whole.val, c.val[i])
		}
		for d, count := range c.decimals {
			whole.decimals[d] += count
		}
	}
	whole.changed()
	s.at, s.readRows, s.columns = at, n, []values{whole}
}
