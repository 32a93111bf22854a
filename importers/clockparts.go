package importers

import "math"

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
	partYearDay // the day of the year, a fraction of it the time
	partHHMM    // hours and minutes in one number, 930 or 0930
	partTime    // a time of day as it is printed
	partHalf    // AM or PM
)

// yearDayNames are the names of columns that count the days of a year.
var yearDayNames = []string{"doy", "yday", "jday", "jul", "julian*", "dayofyear*", "yearday", "day year", "tag jahres", "jour annee", "dia ano"}

// timeNames are the names of columns that hold a time of day beside a date, however it is printed.
var timeNames = []string{"time", "*zeit", "uhr*", "hhmm*", "hrmn*", "hr mn", "hh mm", "hour", "hr", "std", "stunde", "klo", "kl", "kell*", "aika", "aikaleima", "klockslag*", "heure*", "hora*", "ora", "tid", "tijd*", "czas", "cas", "aeg"}

// compactNames are those of timeNames that say hours and minutes stand in one number.
var compactNames = []string{"hhmm*", "hrmn*", "hr mn", "hh mm"}

// isTimeName says whether a column beside a date is named as its time of day.
func isTimeName(name string) bool {
	w := words(name)
	return len(w) > 0 && len(w) <= 4 && anyPhrase(timeNames, w[:min(2, len(w))])
}

// unitless are the words behind the name of a clock's part that add nothing.
var unitless = wordSet("utc", "gmt", "local", "lst", "lt", "h", "hr", "ending", "end", "beginning", "begin", "start", "standard")

func isPart(name string, p int) bool {
	w := words(name)
	if len(w) == 0 || !anyPhrase(partNames[p], w[:1]) {
		return false
	}
	for _, more := range w[1:] {
		if !unitless[more.low] {
			return false
		}
	}
	return true
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
		return d.add(cell, hourMS, 24)
	case partMinute:
		return d.add(cell, minuteMS, 59.9999)
	case partSecond:
		return d.add(cell, secondMS, 59.9999)
	case partHHMM:
		n := countDigits(cell)
		v, whole := wholeNumber(cell)
		d.ms += clockMS(v/100, v%100, 0)
		ok = whole && n == len(cell) && v%100 < 60
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
	base, rest, ok := c.date(c.cell(cells, 0))
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
		if !c.takeTime(rows[i+1:], names) && c.yearless {
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
	year, month, day := indexOfPart(names, 0), indexOfPart(names, 1), indexOfPart(names, 2)
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
	kinds, most := []part{partTime, partHour, partHHMM}, 0
	if anyPhrase(compactNames, words(name)) {
		kinds = []part{partHHMM, partTime}
	}
	for _, p := range kinds {
		if n := count(rows, col, reads(p)); n > most && share(rows, col, reads(p)) {
			best, most = p, n
		}
	}
	return best, most > 0
}

// reads is the test whether a cell can be a part. Four digits are left to partHHMM.
func reads(p part) func(cell []byte) bool {
	return func(cell []byte) bool {
		var d dayParts
		return d.set(p, cell) && d.ms <= dayMS && !(p == partTime && countDigits(cell) == 4)
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

func indexOfPhrase(names, phrases []string) int {
	for i, n := range names {
		if w := words(n); len(w) > 0 && len(w) <= 4 && anyPhrase(phrases, w) {
			return i
		}
	}
	return -1
}

// namelessFit looks for year, month and day side by side in columns without names, and behind them for hour,
// minute and second. Each of these is taken only where the parts before it leave rows with the same time.
func namelessFit(rows []record) (clockFit, bool) {
	for col := 0; col+3 <= len(rows[0].cells); col++ {
		c := &clock{read: readParts, name: ymd}
		for p := partYear; p <= partDay; p++ {
			c.take(p, col+int(p))
		}
		fit, ok := firstRead(rows, 0, c)
		if !ok || !isYear(trim(rows[fit.first].cells[col])) {
			continue
		}
		for p := partHour; p <= partSecond && col+int(p) < len(rows[0].cells) && repeats(rows[fit.first:], c); p++ {
			c.take(p, col+int(p))
			if further, ok := firstRead(rows, fit.first, c); !ok || further.first != fit.first {
				return clockFit{}, false
			}
		}
		if mostlyRises(rows[fit.first:], c) {
			return fit, true
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
