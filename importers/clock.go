package importers

import (
	"bytes"
	"slices"
)

// timeReader reads the time of a row with a clock.
type timeReader func(c *clock, cells [][]byte) (at, offsetMS int64, ok bool)

// clock reads the time of a row. The zero base of an unsure date is its three numbers packed (see pack);
// everything else is milliseconds of the clock face, or of the instant where the row carries its offset.
type clock struct {
	read     timeReader
	face     timeReader // reads what the zone's column belongs to
	form     dateForm
	columns  []int  // in the order the reader takes them
	parts    []part // what the columns hold, for the readers of parts: all of them, or those after the date
	scale    float64
	origin   float64
	sureZero bool          // the file says from where its days are counted
	name     order         // for the readers without a date form
	zoned    bool          // rows carry their offset
	stamps   bool          // date and time stand in one cell
	paired   bool          // they stand in two
	also     *dateForm     // another way in which some rows print the date; nil: none
	yearless bool          // the dates have no year
	start    *start        // where the rows count from; nil: they don't
	dates    map[int]int64 // midnights of the columns, where the rows are times of day
	untimed  bool          // dates alone
	bare     bool          // midnight is printed as a date alone
	fills    bool          // a date stands in the first of a day's rows alone
	above    int64         // the date of the row above, where it may stand for this row's; noTime: none
	turned   []byte        // a cell with its time put behind its date
	zone     string        // the same in every row, named by a column of its own perhaps
	zoneAt   int           // that column, 1-based; 0: none

	memo     [48]byte // the last date as printed, with what stands between it and the time
	memoOpen bool     // a time of day may follow it
	memoLen  int
	memoBase int64
}

// unsure says whether the order of a date's numbers is still open.
func (c *clock) unsure() bool { return len(c.form.orders) > 1 }

// instants says whether the times are instants rather than faces.
func (c *clock) instants() bool { return c.zoned || c.name == "epoch_s" || c.name == "epoch_ms" }

// order is the order so far.
func (c *clock) order() order {
	if c.name != "" {
		return c.name
	}
	return c.form.orders[0]
}

// cell is the i-th of the clock's cells, trimmed; nil when the row is too short.
func (c *clock) cell(cells [][]byte, i int) []byte {
	if at := c.columns[i]; at < len(cells) {
		return trim(cells[at])
	}
	return nil
}

// last is the highest column the clock needs.
func (c *clock) last() int {
	last := 0
	for _, i := range c.columns {
		last = max(last, i)
	}
	return last
}

// uses says whether a column belongs to the clock.
func (c *clock) uses(column int) bool {
	for _, i := range c.columns {
		if i == column {
			return true
		}
	}
	return false
}

// readStamp reads date and time, or a date alone, from one cell.
func readStamp(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	i := c.columns[0]
	if i >= len(cells) {
		return 0, 0, false
	}
	return c.stamp(trim(cells[i]))
}

// stamp reads a date and the time behind it.
func (c *clock) stamp(cell []byte) (at, offsetMS int64, ok bool) {
	base, rest, ok := c.date(cutApostrophe(cell))
	if !ok {
		return 0, 0, false
	}
	if c.bare && len(rest) == 0 {
		return base, 0, true
	}
	t, ok := c.form.parseTime(rest)
	return base + t.ms - t.offsetMS, t.offsetMS, ok && t.zoned == (c.zoned && c.face == nil)
}

// cutApostrophe takes the mark off with which spreadsheets keep a cell a text.
func cutApostrophe(cell []byte) []byte { return bytes.TrimPrefix(cell, []byte("'")) }

// readTurned reads a cell in which the time stands before the date, or before its year.
func readTurned(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	c.turned = turned(c.turned[:0], c.cell(cells, 0))
	return c.stamp(c.turned)
}

// turned appends to dst a cell's words with the time, and what belongs to it, put behind the others.
func turned(dst, cell []byte) []byte {
	words := bytes.Fields(cell)
	from := slices.IndexFunc(words, func(w []byte) bool { return isDigit(w[0]) && bytes.IndexByte(w, ':') > 0 })
	if from < 0 {
		return append(dst, cell...)
	}
	to := from + 1
	for to < len(words) && belongsToTime(words[to]) {
		to++
	}
	for _, w := range slices.Concat(words[:from], words[to:], words[from:to]) {
		if len(dst) > 0 {
			dst = append(dst, ' ')
		}
		dst = append(dst, bytes.TrimSuffix(w, []byte(","))...)
	}
	return dst
}

// belongsToTime says whether a word behind a time is a half of the day, a zone or a word for the time.
func belongsToTime(word []byte) bool {
	_, zone := parseZone(word)
	return zone || isHalf(word) || len(cutTimeWord(word)) == 0
}

// day reads the date of a row. Where one stands in the first of a day's rows alone, an empty cell has the date of
// the row above; below a date that can't be read there is none.
func (c *clock) day(cells [][]byte) (base int64, rest []byte, ok bool) {
	cell := cutApostrophe(c.cell(cells, 0))
	if !c.fills {
		return c.date(cell)
	}
	if len(cell) == 0 {
		return c.above, nil, c.above != noTime
	}
	if base, rest, ok = c.date(cell); ok {
		c.above = base
	} else if bytes.ContainsAny(cell, "0123456789") {
		c.above = noTime
	}
	return base, rest, ok
}

// forget makes a clock that has read some rows read as if it had read none.
func (c *clock) forget() { c.memoLen, c.above = 0, noTime }

// readDate reads a date alone; midnight is its time. A time of day behind it is read all the same.
func readDate(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	base, rest, ok := c.date(c.cell(cells, 0))
	if ok && len(rest) > 0 {
		return readStamp(c, cells)
	}
	return base, 0, ok
}

// readPair reads a date and a time from two cells, and AM or PM from a third where there is one. The date may
// be printed as midnight.
func readPair(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	base, rest, ok := c.day(cells)
	if midnight, timed := parseTime(rest); !ok || len(rest) > 0 && (!timed || midnight.ms != 0) {
		return 0, 0, false
	}
	t, ok := parseTime(cutDayZero(c.cell(cells, 1)))
	if ok && len(c.columns) > 2 {
		var half int64
		if half, ok = halfOf(c.cell(cells, 2)); ok {
			ok = t.addHalf(half)
		}
	}
	return base + t.ms - t.offsetMS, t.offsetMS, ok && t.zoned == (c.zoned && c.face == nil)
}

// readCount reads a number that counts seconds, milliseconds or days from an origin.
func readCount(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	v, decimals, ok := anyNumber(c.cell(cells, 0))
	ms := (v - c.origin) * c.scale
	if !ok || ms < -1e13 || ms > 1e13 {
		return 0, 0, false
	}
	return roundMS(ms, decimals, c.scale), 0, true
}

// readDayAndFraction reads a number of whole days from one cell and the fraction of the day from another.
func readDayAndFraction(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	at, _, ok = readCount(c, cells)
	v, decimals, good := anyNumber(c.cell(cells, 1))
	return at + roundMS(v*dayMS, decimals, dayMS), 0, ok && good && v >= 0 && v < 1
}

// readYears reads a year with its fraction.
func readYears(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	v, decimals, ok := anyNumber(c.cell(cells, 0))
	if !ok || v < 1900 || v >= 2200 {
		return 0, 0, false
	}
	year := int(v)
	length := float64(365+leap(year)) * dayMS
	return civilDay(year, 1, 1)*dayMS + roundMS((v-float64(year))*length, decimals, length), 0, true
}

// readBesideZone reads a time whose zone stands in the last of the clock's columns.
func readBesideZone(c *clock, cells [][]byte) (at, offsetMS int64, ok bool) {
	at, _, ok = c.face(c, cells)
	offsetMS, zoned := parseZone(c.cell(cells, len(c.columns)-1))
	return at - offsetMS, offsetMS, ok && zoned
}

// wholeNumber reads a cell of at most four digits, a fraction of zeros allowed.
func wholeNumber(cell []byte) (v int, ok bool) {
	n := countDigits(cell)
	if n == 0 || n > 4 {
		return 0, false
	}
	v, _ = digits(cell, n)
	for i, c := range cell[n:] {
		if i == 0 && c != '.' || i > 0 && c != '0' {
			return 0, false
		}
	}
	return v, true
}

// date reads the date at the start of a cell and what follows it, remembering the last one: a day's rows
// share their date.
func (c *clock) date(cell []byte) (base int64, rest []byte, ok bool) {
	if n := c.memoLen; n > 0 && len(cell) >= n && string(cell[:n]) == string(c.memo[:n]) && (len(cell) == n || c.memoOpen && isDigit(cell[n])) {
		return c.memoBase, cell[n:], true
	}
	form := &c.form
	v, n, ok := form.parseDate(cell)
	if !ok && c.also != nil {
		form = c.also
		v, n, ok = form.parseDate(cell)
	}
	if !ok {
		return 0, nil, false
	}
	if c.unsure() {
		base = pack(v)
	} else if base, ok = dateMS(v, form.orders[0]); !ok {
		return 0, nil, false
	}
	rest = afterDate(cell[n:])
	c.remember(cell[:len(cell)-len(rest)], base)
	return base, rest, true
}

// remember keeps a date. A time may follow the same bytes only where something parted them before, or where
// the form lets digits follow digits; else only the very same cell is known again.
func (c *clock) remember(printed []byte, base int64) {
	c.memoLen = 0
	if len(printed) <= len(c.memo) {
		c.memoLen, c.memoBase = copy(c.memo[:], printed), base
		last := printed[len(printed)-1]
		c.memoOpen = !isDigit(last) && last != '.' || c.form.runsOn() // a dot belongs to the date, and no digit follows it
	}
}

// Packed dates hold the three numbers of an unsure date above the time of day; the time is moved by a day
// so that an offset can't make it negative.
const packBits = 28

func pack(v [3]int) int64 {
	return int64(v[0]<<19|v[1]<<12|v[2])<<packBits + dayMS
}

// unpack turns a packed time into a face under an order; false when there is no such date.
func unpack(packed int64, o order) (at int64, ok bool) {
	u := unpacker{o: o}
	return u.at(packed)
}

// unpacker is unpack for many times of one order, most of them on the date of the one before.
type unpacker struct {
	o    order
	or   order // of the dates that there are none of under o; "" where all are of one order
	date int64 // the numbers of the last date: at first those of 0/0/0, which is none
	base int64 // its midnight, moved back as packed times are moved on
	ok   bool
}

func (u *unpacker) at(packed int64) (at int64, ok bool) {
	if packed>>packBits != u.date {
		u.turn(packed >> packBits)
	}
	return u.base + packed&(1<<packBits-1), u.ok
}

// turn goes on to another date.
func (u *unpacker) turn(date int64) {
	v := [3]int{int(date >> 19), int(date >> 12 & 127), int(date & 4095)}
	midnight, ok := dateMS(v, u.o)
	if !ok && u.or != "" {
		midnight, ok = dateMS(v, u.or)
	}
	u.date, u.base, u.ok = date, midnight-dayMS, ok
}
