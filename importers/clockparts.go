package importers

import (
	"bytes"
	"math"
	"strings"
	"unicode"
)

// A time may stand in columns of its parts. This file knows the parts, by their names and by their cells.

// part is what one column of the clock holds.
type part int

// The parts of a time; the first six are those of partNames.
const (
	partYear part = iota
	partMonth
	partDay
	partHour
	partMinute
	partSecond
	partYearDay   // the day of the year, a fraction of it the time
	partHHMM      // hours and minutes in one number, 930 or 0930
	partHHMMSS    // seconds with them, 93000 or 093000
	partSpan      // a time of day and the one up to which the row holds; the first counts
	partTime      // a time of day as it is printed
	partHalf      // AM or PM
	partDayMinute // minutes since midnight
	partDaySecond
)

// yearDayNames are the names of columns that count the days of a year.
var yearDayNames = []string{"doy", "yday", "jday", "jul", "julian*", "dayofyear*", "decimal day", "dec day", "fraction* day", "yearday", "day year", "tag jahres", "jour annee", "dia ano"}

// timeNames are the names of columns that hold a time of day beside a date, however it is printed.
var timeNames = []string{"time", "utc", "*zeit", "uhr*", "hhmm*", "hrmn*", "hr mn", "hh mm", "hour", "hr", "std", "stunde", "klo", "kl", "kell*", "godz*", "hodin*", "ido", "aika", "aikaleima", "klockslag*", "heure*", "hora*", "ora", "tid", "tijd*", "czas", "cas", "aeg", "uur", "saat", "ura", "timi", "stundas", "valanda", "hod", "hourly", "termin", "час", "時", "时", "시", "*時刻*", "*時間*", "*时间*", "*시간*"}

// compactNames are those of timeNames that say hours and minutes stand in one number.
var compactNames = []string{"hhmm*", "hrmn*", "hr mn", "hh mm", "hh mm ss"}

// dayCounts are the names of columns that count from midnight, by what they count.
var dayCounts = []struct {
	p       part
	phrases []string
}{
	{partDayMinute, []string{"min* day", "min* midnight", "min* mitternacht", "min* tag*", "min* minuit"}},
	{partDaySecond, []string{"sec* day", "sec* midnight", "sek* mitternacht", "sek* tag*", "sec* minuit", "sod"}},
}

// dayCount is the part of a time that a column named as a count from midnight holds.
func dayCount(name string) (p part, ok bool) {
	for _, k := range dayCounts {
		if anyPhrase(k.phrases, words(name)) {
			return k.p, true
		}
	}
	return 0, false
}

// isTimeName says whether a column beside a date is named as its time of day.
func isTimeName(name string) bool {
	w := words(name)
	return len(w) > 0 && len(w) <= 4 && anyPhrase(timeNames, w[:min(2, len(w))])
}

// unitless are the words behind the name of a clock's part that add nothing.
var unitless = wordSet("utc", "gmt", "local", "lst", "lt", "h", "hr", "ending", "end", "beginning", "begin", "start", "standard", "format", "in", "time", "24", "12", "of", "the")

func isPart(name string, p int) bool {
	if beginsWithDigit(name) { // as the cells of most rows
		return false
	}
	w := words(name)
	if len(w) == 0 || !anyPhrase(partNames[p], w[:1]) {
		return false
	}
	for _, more := range w[1:] {
		_, zone := zoneWord([]byte(more.low))
		if inCapitals := more.typed == strings.ToUpper(more.typed); !unitless[more.low] && !(zone && inCapitals && p == int(partHour)) {
			return false
		}
	}
	return true
}

// beginsWithDigit says whether the first word of a text is a number.
func beginsWithDigit(s string) bool {
	for _, r := range s {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.IsDigit(r)
		}
	}
	return false
}

// dayParts gathers the parts of one row's time.
type dayParts struct {
	year, month, day, yearDay int
	ms                        int64 // since midnight
	half                      int64
	halved                    bool
}

// set takes in a cell; false when it can't be that part.
func (d *dayParts) set(p part, cell []byte) (ok bool) {
	switch p {
	case partYear:
		d.year, ok = wholeNumber(cell)
	case partMonth:
		d.month, ok = monthCell(cell)
	case partDay:
		d.day, ok = wholeNumber(cell)
	case partYearDay:
		return d.setYearDay(cell)
	case partHour:
		return d.add(cutHourWord(cell), hourMS, 24)
	case partMinute:
		return d.add(cell, minuteMS, 59.9999)
	case partSecond:
		return d.add(cell, secondMS, 59.9999)
	case partDayMinute:
		return d.add(cell, minuteMS, dayMS/minuteMS)
	case partDaySecond:
		return d.add(cell, secondMS, dayMS/secondMS)
	case partHHMM:
		return d.addCompact(cell, 4)
	case partHHMMSS:
		return d.addCompact(cell, 6)
	case partSpan:
		ms, _, good := timeSpan(cell)
		d.ms, ok = d.ms+ms, good
	case partTime:
		t, good := parseTime(cell)
		d.ms, ok = d.ms+t.ms, good && !t.zoned
	case partHalf:
		d.half, ok = halfOf(cell)
		d.halved = true
	}
	return ok
}

// add adds a number of hours, minutes or seconds, a fraction allowed.
func (d *dayParts) add(cell []byte, unitMS int64, most float64) bool {
	v, decimals, ok := anyNumber(cell)
	if !ok || v < 0 || v > most {
		return false
	}
	d.ms += roundMS(v*float64(unitMS), decimals, float64(unitMS))
	return true
}

// addCompact adds a time of day in one number of at most so many digits, noughts before it left out.
func (d *dayParts) addCompact(cell []byte, most int) bool {
	n := countDigits(cell)
	if fraction, size := fractionMS(cell[n:]); most == 6 && n == most && cell[n:] != nil && size == len(cell)-n {
		d.ms, cell = d.ms+fraction, cell[:n]
	}
	v, _ := digits(cell, min(n, most))
	if most == 4 {
		v *= 100
	}
	d.ms += clockMS(v/10000, v/100%100, v%100)
	return n > 0 && n == len(cell) && n <= most && v/100%100 < 60 && v%100 < 60
}

// cutHourWord takes the sign of an hour off a number: 22h is 22.
func cutHourWord(cell []byte) []byte {
	if n := countDigits(cell); n > 0 && n < len(cell) && len(cutTimeWord(trim(cell[n:]))) == 0 {
		return cell[:n]
	}
	return cell
}

// timeSpan reads a time of day, a dash or a word, and a second time of day, which it returns as it is printed.
func timeSpan(cell []byte) (ms int64, end []byte, ok bool) {
	ms, n, ok := clockDigits(cell)
	if !ok {
		return 0, nil, false
	}
	end = trim(cell[n:])
	for _, dash := range spanDashes {
		if bytes.HasPrefix(end, dash) {
			end = trim(end[len(dash):])
			endMS, size, ok := clockDigits(end)
			return ms, end, ok && size == len(end) && ms <= dayMS && endMS <= dayMS
		}
	}
	return 0, nil, false
}

// spanDashes may stand between the two times of a span.
var spanDashes = [][]byte{[]byte("-"), []byte("\u2013"), {0x96}, []byte("to"), []byte("bis"), []byte("till")}

func (d *dayParts) setYearDay(cell []byte) bool {
	v, decimals, ok := anyNumber(cell)
	if !ok || v < 1 || v >= 367 {
		return false
	}
	d.yearDay = int(v)
	d.ms += roundMS((v-math.Floor(v))*dayMS, decimals, dayMS)
	return true
}

// time is the time of day, in milliseconds; 24:00 is a whole day.
func (d *dayParts) time() (ms int64, ok bool) {
	t := timeOfDay{ms: d.ms}
	if d.halved && !t.addHalf(d.half) {
		return 0, false
	}
	return t.ms, t.ms <= dayMS
}

// date is midnight of the day.
func (d *dayParts) date() (ms int64, ok bool) {
	if d.yearDay > 0 {
		return dateMS([3]int{d.year, d.yearDay}, doy)
	}
	return dateMS([3]int{d.year, d.month, d.day}, ymd)
}

// monthCell reads a month's number or name.
func monthCell(cell []byte) (month int, ok bool) {
	if month, ok = wholeNumber(cell); ok {
		return month, true
	}
	n := letters(cell)
	if rest := cell[n:]; n < 3 || len(rest) > 0 && string(rest) != "." {
		return 0, false
	}
	return monthOf(cell[:n])
}

// anyNumber reads a number whose fraction follows a point or a comma.
func anyNumber(cell []byte) (v float64, decimals int, ok bool) {
	if v, decimals, ok = parseNumber(cell, '.'); !ok {
		v, decimals, ok = parseNumber(cell, ',')
	}
	return v, decimals, ok
}

// roundMS takes a count of time to milliseconds. What is printed with few decimals stands for the full minute
// or second within half a unit of its last digit, where there is one: 0.4167 days are 10:00.
func roundMS(ms float64, decimals int, unitMS float64) int64 {
	half := 0.5 * unitMS * math.Pow10(-decimals)
	if decimals > 0 {
		for _, round := range []float64{minuteMS, secondMS} {
			if near := math.Round(ms/round) * round; math.Abs(near-ms) <= half {
				return int64(near)
			}
		}
	}
	return int64(math.Round(ms))
}

// readParts reads a time from cells of its parts.
func readParts(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	var d dayParts
	for i, p := range c.parts {
		if !d.set(p, c.cell(cells, i)) {
			return 0, 0, false
		}
	}
	midnight, ok := d.date()
	ms, timed := d.time()
	return midnight + ms, 0, ok && timed
}

// readDateParts reads a date, and the parts of its time from the cells after it. The date may be printed as
// midnight.
func readDateParts(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	base, rest, ok := c.day(cells)
	if midnight, timed := parseTime(rest); !ok || len(rest) > 0 && (!timed || midnight.ms != 0) {
		return 0, 0, false
	}
	var d dayParts
	for i, p := range c.parts {
		if !d.set(p, c.cell(cells, i+1)) {
			return 0, 0, false
		}
	}
	ms, ok := d.time()
	return base + ms, 0, ok
}
