package importers

import (
	"bytes"
	"slices"
	"time"
)

// Spreadsheets count days from the beginning of 1900, or four years and a day later. No number tells which it is, but the
// file may: in words, by dates beside the count, or by a year above the table that only one of the two comes near.

// The days to 1970-01-01 in the system that is usual, and in that which begins with 1904.
const spreadsheet1900, spreadsheet1904 = 25569, spreadsheet1900 - laterDays

// laterDays is how much later the same number is when it is counted from 1904.
const laterDays = 1462

// dayZero asks from which year days are counted; its answers are the years.
const dayZero = "day_zero"

var dayZeros = []string{"1900", "1904"}

// learnOrigin finds out from where the days of a spreadsheet are counted where the lines above the table speak of 1904, or
// the rows have their dates in another column.
func (l *layout) learnOrigin(rows []record) {
	if l.clock.origin != spreadsheet1900 {
		return
	}
	later, dated := l.datedLater(rows)
	for _, r := range l.preamble {
		later = later || !dated && bytes.Contains(r.text, []byte("1904"))
	}
	if l.clock.sureZero = dated || later; later {
		l.clock.origin = spreadsheet1904
	}
}

// datedLater says whether the rows have dates beside their count of days, and these are the later ones.
func (l *layout) datedLater(rows []record) (later, dated bool) {
	bare := make([]record, len(rows))
	for i, r := range rows {
		bare[i] = r
		bare[i].cells = slices.Clone(r.cells)
		for _, col := range l.clock.columns {
			bare[i].cells[col] = nil
		}
	}
	beside := learnClock(bare).clock
	if beside == nil || beside.yearless || len(beside.form.orders) == 0 {
		return false, false
	}
	agree := map[int64]int{}
	for i, r := range bare {
		at, _, ok := beside.read(beside, r.cells)
		days, _, counted := l.clock.read(l.clock, rows[i].cells)
		if !ok || !counted {
			continue
		}
		for _, more := range []int64{0, laterDays} {
			agree[more] += one(slices.ContainsFunc(beside.form.orders, func(o order) bool {
				face := at
				if beside.unsure() {
					face, ok = unpack(at, o)
				}
				return ok && face/dayMS == days/dayMS+more
			}))
		}
	}
	return 2*agree[laterDays] > len(rows), 2*max(agree[0], agree[laterDays]) > len(rows)
}

// settleDayZero moves days that are counted from 1904 where the keeper says so, and asks where a year in the file's name or
// above the table is near the later dates alone.
func (s *scan) settleDayZero(answers Answers) (open []Question) {
	if s.clock.origin != spreadsheet1900 || s.clock.sureZero {
		return nil
	}
	later := false
	switch answer := answers[dayZero]; {
	case answer != "":
		later = answer == dayZeros[1]
	case s.yearsSayLater():
		open = append(open, Question{ID: dayZero, Options: dayZeros})
	}
	for row, at := range s.at {
		if later && at != noTime {
			s.at[row] = at + laterDays*dayMS
		}
	}
	return open
}

// yearsSayLater says whether some year that the file names is at most one from those of the later dates, and none is from
// those of the earlier.
func (s *scan) yearsSayLater() bool {
	first, last := int64(noTime), int64(noTime)
	for _, at := range s.at {
		if at != noTime {
			if first == noTime || at < first {
				first = at
			}
			last = max(last, at)
		}
	}
	near := func(more int64) bool {
		from, to := time.UnixMilli(first+more).UTC().Year()-1, time.UnixMilli(last+more).UTC().Year()+1
		return slices.ContainsFunc(s.yearsNamed(), func(year int) bool { return from <= year && year <= to })
	}
	return first != noTime && near(laterDays*dayMS) && !near(0)
}

// yearsNamed are the years in the file's name and in the lines above the table, in dates of eight digits too.
func (s *scan) yearsNamed() (years []int) {
	for _, line := range append(s.preambleLines(), s.base) {
		for _, w := range words(line) {
			if n := countDigits([]byte(w.low)); n == len(w.low) && (n == 4 || n == 8) && isYear([]byte(w.low[:4])) {
				year, _ := digits([]byte(w.low), 4)
				years = append(years, year)
			}
		}
	}
	return years
}
