package importers

import (
	"slices"
	"strings"
	"time"

	"thawbook/analysis/series"
)

// A table may have times of day and no date. The day of its first row then stands in the words above it, or only the
// keeper knows it; the rows tell where the days that follow begin.

// firstDay asks for the day of the first row, in the order of the file.
const firstDay = "first_day"

// Undated is the midnight, 2000-01-01, of the day on which the first row is put while it is asked on which it lies.
const Undated = 946_684_800_000

// dayPrint is how an answer and a proposal print a day.
const dayPrint = "2006-01-02"

func isDay(answer string) bool {
	_, err := time.Parse(dayPrint, answer)
	return err == nil
}

// datelessFit looks for a column of times of day in a table whose rows have no date.
func datelessFit(records, rows []record) (clockFit, bool) {
	if len(rows) == 0 {
		return clockFit{}, false
	}
	for col := range rows[0].cells {
		if !share(rows, col, isPlainTime) {
			continue
		}
		c := &clock{columns: []int{col}, read: readTimeAlone, form: dateForms[0]}
		if half := col + 1; half < len(rows[0].cells) && share(rows, half, isHalf) {
			c.columns = append(c.columns, half)
		}
		fit, ok := firstRead(rows, 0, c)
		names := nameRow(rows[:max(fit.first, 0)])
		if !ok || namesDate(names, col) || !c.tellsDays(rows[fit.first:]) {
			continue
		}
		from := dayAbove(records[:indexOfLine(records, rows[fit.first].line)])
		c.start, c.form = &from, from.form
		return fit, true
	}
	return clockFit{}, false
}

// namesDate says whether a column beside the one of the times is named as a date, or the times as a stretch of time: a
// date that can't be read is not one that is missing.
func namesDate(names []string, times int) bool {
	for i, name := range names {
		w := words(name)
		if i != times && anyPhrase(dateKeys, w) || i == times && anyPhrase(elapsedNames, w) {
			return true
		}
	}
	return false
}

// tellsDays says whether times of day change, and are told apart by halves of the day where they run from 1 to 12.
func (c *clock) tellsDays(rows []record) bool {
	changes, halves, half := false, false, len(c.columns) > 1
	before := int64(noTime)
	for _, r := range rows {
		at, _, ok := c.read(c, r.cells)
		if !ok {
			continue
		}
		t, _ := parseTime(c.cell(r.cells, 0))
		hour := at / hourMS
		half = half || t.meridiem || hour < 1 || hour > 12
		halves = halves || before != noTime && before/hourMS == 12 && hour == 1
		changes = changes || before != noTime && at != before
		before = at
	}
	return changes && (half || !halves)
}

// readTimeAlone reads a time of day, and AM or PM from a second cell where there is one.
func readTimeAlone(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	t, ok := parseTime(c.cell(cells, 0))
	if ok && len(c.columns) > 1 {
		half, known := halfOf(c.cell(cells, 1))
		ok = known && t.addHalf(half)
	}
	return t.ms, 0, ok && !t.zoned
}

// notTheLogs are the words of lines above a table whose dates are not those of its readings.
var notTheLogs = []string{"export*", "print*", "*druck*", "creat*", "*erstellt*", "download*", "saved", "calib*", "*kalib*", "version*", "firmware*", "software*", "model*", "serial*", "sn", "install*", "next", "due", "report*", "*bericht*"}

// dayAbove is the start on the one day that the lines above a table name; on no day, with those it may be, where they
// name none or several.
func dayAbove(above []record) start {
	if s, found := startAbove(above); found {
		s.ms, s.rolled = 0, true
		return s
	}
	var found []start
	for _, r := range above {
		line := text(r.text)
		if anyPhrase(notTheLogs, words(line)) {
			continue
		}
		for _, s := range datesIn(line, false) {
			s.line = r.line
			if !slices.ContainsFunc(found, func(o start) bool { return o.date == s.date }) {
				found = append(found, s)
			}
		}
	}
	if len(found) == 1 {
		return found[0]
	}
	out := start{form: dateForms[0], rolled: true, asked: true}
	for _, s := range found {
		out.days = append(out.days, s.daysIn()...)
	}
	return out
}

// datesIn are the dates that stand in a line of words; runs of digits alone count only where they may.
func datesIn(line string, runs bool) (out []start) {
	for at := 0; at < len(line); at++ {
		if at > 0 && isWordByte(line[at-1]) {
			continue
		}
		if s, n := dateAt(line[at:], runs); n > 0 {
			out = append(out, s)
			at += n
		}
	}
	return out
}

func isWordByte(c byte) bool { return isDigit(c) || c|0x20 >= 'a' && c|0x20 <= 'z' || c >= 0x80 }

// dateAt is the longest date at the start of a text and how many bytes it takes; 0 where there is none.
func dateAt(s string, runs bool) (out start, size int) {
	for _, form := range dateForms {
		if !form.marked() && !(runs && form.pattern == "Y22") {
			continue
		}
		date, n, ok := form.parseDate([]byte(s))
		if ok && n > size && (n == len(s) || !isWordByte(s[n]) && !(s[n] == '.' && beginsWithDigit(s[n+1:]))) {
			if found := (start{form: form, date: date, rolled: true}); len(found.daysIn()) > 0 {
				out, size = found, n
			}
		}
	}
	return out, size
}

// marked says whether a date of the form is known as one among words: its parts are parted by more than blanks.
func (f dateForm) marked() bool {
	return strings.ContainsAny(f.pattern, "b./-_年년") && !strings.ContainsAny(f.pattern, "Jh~")
}

// daysIn are the days that a start's date may be.
func (s start) daysIn() (out []string) {
	for _, o := range s.form.orders {
		if at, ok := dateMS(s.date, o); ok {
			out = append(out, time.UnixMilli(at).UTC().Format(dayPrint))
		}
	}
	return out
}

// mostDays is how many days are for the first row.
const mostDays = 4

// proposedDays are the days that the first row may lie on: those named above the table and in the file's name.
func (s start) proposedDays(name string) []string {
	all := slices.Clone(s.days)
	for _, in := range datesIn(strings.ReplaceAll(fileTitle(name), "_", " "), true) {
		all = append(all, in.daysIn()...)
	}
	out := []string{}
	for _, day := range all {
		if !slices.Contains(out, day) && len(out) < mostDays {
			out = append(out, day)
		}
	}
	return out
}

// settleFirstDay puts times of day on the day the keeper says, or asks for it.
func (s *scan) settleFirstDay(name string, answers Answers) (open []Question) {
	from := s.clock.start
	if day, err := time.Parse(dayPrint, answers[firstDay]); err == nil {
		s.rollDays(day.UnixMilli())
		return nil
	}
	s.rollDays(Undated)
	return []Question{{ID: firstDay, Options: from.proposedDays(name)}}
}

// rollDays puts times of day on their days, from the first row's midnight on: a fall by more than the hour by which
// clocks are put back begins the next day, and where the newest row stands on top a rise begins the day before.
func (s *scan) rollDays(midnight int64) {
	step, before := int64(dayMS), int64(noTime)
	if s.mostlyFalls() {
		step = -dayMS
	}
	for row, at := range s.at {
		if before != noTime && (step > 0 && at < before-hourMS || step < 0 && at > before+hourMS) {
			midnight += step
		}
		before = at
		s.at[row] = midnight + at
	}
}

// mostlyFalls says whether times of day go back from row to row, midnights aside.
func (s *scan) mostlyFalls() bool {
	rises, falls := 0, 0
	for row := 1; row < len(s.at); row++ {
		by := s.at[row] - s.at[row-1]
		rises += one(by > 0 && by <= noonMS)
		falls += one(by < 0 && by >= -noonMS)
	}
	return falls > rises
}

// noteDayAbove remarks which line above the table the day of the first row was taken from.
func (s *scan) noteDayAbove(midnight int64) {
	if line := s.clock.start.line; line > 0 {
		s.notes.add(series.Remark{Code: RemarkDayAbove, Line: line, Args: []string{time.UnixMilli(midnight).UTC().Format(dayPrint)}})
	}
}
