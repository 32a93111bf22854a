package importers

import (
	"slices"
	"strings"
	"time"
)

// A file may count time from a start that it names once: seconds since the first reading, times of day under one
// date. The rows then hold how far from midnight of the start's day they are, until the order of its date is settled.

// start is where such a count begins.
type start struct {
	form   dateForm
	date   [3]int   // the date's numbers as printed
	ms     int64    // the time of day
	zone   string   // "" where the start has none
	timed  bool     // a time of day was named
	rolled bool     // the rows are times of day, which begin anew with every day
	line   int      // where it stands in words above the table; 0: it has a key, or is asked
	asked  bool     // no day is named
	days   []string // those it may be then
}

// startFit looks for a column that counts time, and for its start: in the column's own name, "hours since 2025-11-15",
// or above the table.
func startFit(records, rows []record) (clockFit, bool) {
	tries := 20 // names, each of which has the lines above looked through
	for i := 0; i < min(len(rows)-1, trialRows); i++ {
		if !hasLetter(rows[i].cells) || hasNumber(rows[i].cells) {
			continue
		}
		above := records[:indexOfLine(records, rows[i].line)]
		for col, cell := range rows[i].cells {
			name := text(cell)
			if countUnit(name) == 0 && !isTimeName(name) && !anyPhrase(elapsedNames, words(name)) && !anyPhrase(indexNames, words(name)) || tries == 0 {
				continue
			}
			tries--
			c, ok := startedClock(above, rows[i+1:], col, name)
			if !ok {
				continue
			}
			if fit, ok := firstRead(rows, i+1, c); ok {
				return fit, true
			}
		}
	}
	return clockFit{}, false
}

// startedClock is the clock of a column that counts time, where its start is named.
func startedClock(above, rows []record, col int, name string) (*clock, bool) {
	c := &clock{columns: []int{col}, read: readCount, scale: countUnit(name)}
	var from start
	var found bool
	if _, since, ok := strings.Cut(name, " since "); ok {
		from, found = startOf(strings.Trim(since, "()[] "))
	} else {
		from, found = startAbove(above)
	}
	switch {
	case !found:
		return nil, false
	case c.scale > 0:
		found = mostlyRises(rows, c)
	case anyPhrase(indexNames, words(name)):
		found = c.countSteps(above, rows)
	case anyPhrase(elapsedNames, words(name)) && share(rows, col, isDuration):
		c.read = readDuration
	case isTimeName(name) && share(rows, col, isPlainTime):
		c.read, from.ms, from.rolled = readTimeAlone, 0, true
	default:
		return nil, false
	}
	c.start, c.form, c.zone = &from, from.form, from.zone
	return c, found
}

// intervalKeys are the words before the time from one reading to the next.
var intervalKeys = []string{"interval*", "*intervall*", "rate", "every", "period*", "step*", "takt", "messtakt*", "intervalo*", "intervallo*"}

// countSteps makes a clock of rows that are but numbered, one by one, where the interval is named above the table.
func (c *clock) countSteps(above, rows []record) bool {
	first, _, ok := anyNumber(c.cell(rows[0].cells, 0))
	if c.scale = intervalAbove(above); !ok || c.scale == 0 {
		return false
	}
	c.origin = first
	for i, r := range rows {
		v, _, ok := anyNumber(c.cell(r.cells, 0))
		if ok && i < trialRows && v != first+float64(i) {
			return false
		}
	}
	return true
}

// intervalAbove is the interval, in milliseconds, that the lines above a table name: in hours, minutes and seconds or
// as a count whose unit stands behind it or in the key; 0 where none does.
func intervalAbove(above []record) float64 {
	for _, r := range above {
		key, value := keyValue(text(r.text))
		if w := words(key); len(w) == 0 || len(w) > 4 || !anyPhrase(intervalKeys, w) {
			continue
		}
		if ms, _, ok := readDuration(&clock{columns: []int{0}}, [][]byte{[]byte(value)}); ok && ms > 0 {
			return float64(ms)
		}
		if n, unit := cutCount(value, key); n > 0 && unit > 0 {
			return n * unit
		}
	}
	return 0
}

// cutCount takes a count of time apart: the number, and its unit in milliseconds as it stands behind or in the key.
func cutCount(value, key string) (n, unit float64) {
	number := strings.TrimRight(value, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ. ")
	n, _, ok := anyNumber([]byte(number))
	if !ok {
		return 0, 0
	}
	for _, w := range append(words(value[len(number):]), words(key)...) {
		for _, u := range countUnits {
			if anyPhrase(u.stems, []nameWord{w}) {
				return n, u.ms
			}
		}
	}
	return 0, 0
}

// elapsedNames are the names of columns that hold how long a log has run, in hours and minutes.
var elapsedNames = []string{"elapsed*", "laufzeit*", "run time", "runtime*", "duration*", "dauer*", "since"}

// readDuration reads how long a log has run: hours of any number, minutes, seconds.
func readDuration(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	cell := c.cell(cells, 0)
	n := countDigits(cell)
	hours, ok := digits(cell, min(n, 5))
	if !ok || n < 1 || n > 5 {
		return 0, 0, false
	}
	var within dayParts
	ok = within.set(partTime, append([]byte("0"), cell[n:]...))
	return int64(hours)*hourMS + within.ms, 0, ok
}

func isDuration(cell []byte) bool {
	_, _, ok := readDuration(&clock{columns: []int{0}}, [][]byte{cell})
	return ok
}

// countUnits are the words for the units in which time is counted.
var countUnits = []struct {
	stems []string
	ms    float64
}{
	{[]string{"ms", "milli*"}, 1}, {[]string{"s", "sec*", "sek*"}, secondMS}, {[]string{"min", "mins", "minut*"}, minuteMS},
	{[]string{"h", "hr*", "hour*", "std*", "stund*", "heure*", "tim*r"}, hourMS}, {[]string{"d", "day*", "tag*", "jour*"}, dayMS},
}

// countStems are what else is in the name of a column that counts time.
var countStems = []string{"elapsed*", "time*", "t", "*zeit*", "run*", "since", "duration*", "temps*", "tid*", "aika*"}

// countUnit is the unit, in milliseconds, of a column that counts time by its name; 0 where the name says no such
// thing. A unit of one letter needs another word beside it.
func countUnit(name string) float64 {
	w := words(name)
	for _, u := range countUnits {
		for i, k := range w {
			if anyPhrase(u.stems, w[i:i+1]) && (anyPhrase(countStems, w) || len(w) == 1 && len(k.low) > 2) {
				return u.ms
			}
		}
	}
	return 0
}

// startKeys are the words before the time at which a log was begun, and dateKeys those before a date that is the
// whole log's.
var startKeys, dateKeys = []string{"start*", "begin*", "first*", "anfang*", "debut*", "inicio*", "inizio*", "alku*", "algus*"}, []string{"date", "datum", "fecha", "data", "pvm", "kuupaev"}

// startAbove finds the start in the lines above a table; its time of day may stand on a line of its own.
func startAbove(above []record) (out start, found bool) {
	for _, keys := range [][]string{startKeys, dateKeys} {
		for _, r := range above {
			value, ok := valueBehind(text(r.text), keys)
			if !ok {
				continue
			}
			if s, ok := startOf(value); ok && !found {
				out, found = s, true
			} else if t, ok := parseTime([]byte(value)); ok && !out.timed {
				out.ms, out.timed = t.ms, true
			}
		}
	}
	return out, found
}

// valueBehind is what stands behind one of some keys in a line: behind its mark, or behind its first word.
func valueBehind(line string, keys []string) (value string, ok bool) {
	key, value := keyValue(line)
	if w := words(key); len(w) > 0 && len(w) <= 3 && anyPhrase(keys, w) {
		return value, true
	}
	first, rest, _ := strings.Cut(strings.TrimLeft(line, "#;!% "), " ")
	w := words(first)
	return strings.TrimSpace(rest), len(w) == 1 && anyPhrase(keys, w) && beginsWithDigit(rest)
}

// startOf reads a date, or a date and a time.
func startOf(value string) (start, bool) {
	for _, form := range dateForms {
		date, n, ok := form.parseDate([]byte(value))
		if !ok {
			continue
		}
		if t, timed, ok := form.fits([]byte(value)); ok && n > 0 {
			s := start{form: form, date: date, ms: t.ms, timed: timed}
			if t.zoned {
				s.zone = zoneName(t.offsetMS)
			}
			return s, true
		}
	}
	return start{}, false
}

// year is the year of the start; 0 where the orders that its date may have give different ones.
func (s start) year() (year int) {
	for _, o := range s.form.orders {
		at, ok := dateMS(s.date, o)
		if y := time.UnixMilli(at).UTC().Year(); ok && year != 0 && y != year {
			return 0
		} else if ok {
			year = y
		}
	}
	return year
}

// settleStart puts the rows of such a file on their dates.
func (s *scan) settleStart(answers Answers) (o order, certain bool, open []Question) {
	from := s.clock.start
	var valid []order
	for _, k := range from.form.orders {
		if _, ok := dateMS(from.date, k); ok {
			valid = append(valid, k)
		}
	}
	o, certain = valid[0], len(valid) == 1
	if answer := order(answers[dayMonth]); slices.Contains(valid, answer) {
		o, certain = answer, true
	} else if !certain && !from.form.dotted() {
		open = append(open, Question{ID: dayMonth, Options: orderNames(valid)})
	}
	midnight, _ := dateMS(from.date, o)
	if from.rolled {
		if len(open) == 0 {
			s.noteDayAbove(midnight)
		}
		s.rollDays(midnight)
		return o, certain, open
	}
	for row, at := range s.at {
		s.at[row] = midnight + from.ms + at
	}
	return o, certain, open
}
