package importers

import (
	"slices"
	"strconv"
	"strings"
)

// A table may have a row for each day and a column for each hour. Such columns are one series.

// leastHours is how many columns named as times of day make a pivot of hours; of columns that are but numbered it
// takes all 24, for loggers are numbered too.
const leastHours, allHours = 4, 24

// hoursOf reads names as the hours of a day, all but those over the clock: times of day that rise from left to
// right, or the hours' numbers from 0 or 1. A name beside them that is no time may stand behind, and before all 24.
func (c *clock) hoursOf(names []string) (hours map[int]int64, ok bool) {
	if c.dates != nil {
		return c.dates, true
	}
	if c.timed() {
		return nil, false
	}
	hours = map[int]int64{}
	last, numbered, before := int64(-1), false, false
	for i, name := range names {
		ms, isHour := hourName(name)
		switch {
		case c.uses(i):
		case !isHour:
			before = before || len(hours) == 0
		case ms <= last:
			return nil, false
		default:
			hours[i], last, numbered = ms, ms, numbered || ms%hourMS == 0 && !strings.ContainsAny(name, ":.")
		}
	}
	return hours, len(hours) >= leastHours && (!numbered && !before || len(hours) == allHours)
}

// timed says whether the clock reads more than dates.
func (c *clock) timed() bool {
	if c.parts != nil {
		return slices.ContainsFunc(c.parts, func(p part) bool { return p > partDay && p != partYearDay })
	}
	return c.stamps || len(c.columns) > 1 || c.name != ""
}

// hourWords may stand before an hour's number, lower case; he is the hour that ends then.
var hourWords = wordSet("h", "he", "hr", "hour", "std", "stunde", "hora", "heure", "timme", "tunti")

// hourName reads a name as a time of day: printed, or an hour's number.
func hourName(name string) (ms int64, ok bool) {
	if w := words(name); len(w) == 2 && hourWords[w[0].low] {
		name = w[1].typed
	}
	whole := name
	if len(name) == 4 {
		whole = strings.TrimSuffix(name, "00") // 0100
	}
	if hour, err := strconv.Atoi(whole); err == nil && len(whole) <= 2 && hour >= 0 && hour <= 24 {
		return int64(hour) * hourMS, true
	}
	t, ok := parseTime([]byte(name))
	return t.ms, ok && isTimeOfDay([]byte(name), false) && !t.zoned
}

// learnHours takes columns of numbers named after the hours of a day for one series. What they hold is said over
// the dates, or else above the table.
func (l *layout) learnHours(names []string) {
	hours, ok := l.clock.hoursOf(names)
	if !ok {
		return
	}
	for i := range l.columns {
		c := &l.columns[i]
		ms, named := hours[c.index]
		if !named || c.kind != number && c.kind != vacant {
			continue
		}
		if len(l.hours) == 0 {
			*c = l.describeHours(*c, names[l.clock.columns[0]])
		}
		c.hourly = true
		l.hourColumns = append(l.hourColumns, c.index+1)
		l.hours = append(l.hours, ms)
	}
	l.dropUndated()
}

// takeTitle says of columns of numbers, none of which has a unit or a name that says what it holds, what a line above
// them says that names a quantity and its unit and nothing else.
func (l *layout) takeTitle() {
	says := func(c column) bool { return c.kind == number && (c.told || c.unit != "") }
	if l.long || l.nameless || slices.ContainsFunc(l.columns, says) {
		return
	}
	for _, line := range l.preambleLines() {
		said := column{header: line}
		if said.describe(nil); !said.told || said.unit == "" || said.likeness != "" {
			continue
		}
		for i := range l.columns {
			if c := &l.columns[i]; c.kind == number {
				c.quantity, c.told, c.unit, c.unitFrom = said.quantity, true, said.unit, said.unitFrom
			}
		}
		return
	}
}

// describeHours is the first of the columns of hours with what a title says of them all. Where none says what they
// hold they bear the title nearest to them, or no name: neither the hour's nor the date's is theirs.
func (l *layout) describeHours(first column, corner string) column {
	titles := l.preambleLines()
	slices.Reverse(titles)
	titles = append([]string{corner}, titles...)
	for _, said := range titles {
		c := column{index: first.index, kind: number, header: said}
		if c.describe(nil); c.told {
			c.liken("")
			return c
		}
	}
	title := ""
	if i := slices.IndexFunc(titles, isTitle); i >= 0 {
		title = titles[i]
	}
	first.kind, first.header, first.name = number, title, title
	return first
}

// isTitle says whether a line or a cell over the dates can be the name of what the hours hold.
func isTitle(said string) bool {
	name := words(said)
	return len(name) > 0 && len(said) <= longestName && !anyPhrase(clockNames, name) && !isClockPart(said)
}

// spreadHours makes one series of the columns of hours: each row has as many times as there are.
func (s *scan) spreadHours() {
	if s.clock.dates != nil {
		s.spreadDates()
		return
	}
	s.wide = len(s.hours)
	if s.wide == 0 {
		return
	}
	at := make([]int64, 0, len(s.at)*s.wide)
	for _, day := range s.at {
		for _, ms := range s.hours {
			if day != noTime {
				at = append(at, day+ms)
			} else {
				at = append(at, noTime)
			}
		}
	}
	s.at = at
	var out []values
	var parts []values
	for i := range s.columns {
		c := &s.columns[i]
		if !c.hourly {
			out = append(out, c.atHour(s.wide))
			continue
		}
		if parts = append(parts, *c); len(parts) == s.wide {
			out = append(out, ofHours(parts))
			parts = nil
		}
	}
	s.columns = out
}

// atHour is a column that is no hour's, its values at the first hour of their rows.
func (c *values) atHour(wide int) values {
	out := *c
	out.rows = make([]int32, len(c.val))
	for i := range c.val {
		out.rows[i] = int32(c.row(i) * wide)
	}
	return out
}

// ofHours is the first of some columns with the values of all, row by row.
func ofHours(parts []values) values {
	out := parts[0]
	out.rows, out.val, out.decimals = nil, nil, [fastDigits + 2]int{}
	out.changed()
	for i := range parts[0].val {
		for k := range parts {
			out.rows = append(out.rows, int32(parts[k].row(i)*len(parts)+k))
			out.val = append(out.val, parts[k].val[i])
		}
	}
	for _, p := range parts {
		for d, n := range p.decimals {
			out.decimals[d] += n
		}
	}
	return out
}
