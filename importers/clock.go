package importers

// clock reads the time of a row. The zero base of an unsure date is its three numbers packed (see pack);
// everything else is milliseconds of the clock face, or of the instant where the row carries its offset.
type clock struct {
	read     func(c *clock, cells [][]byte) (at, offsetMS int64, ok bool)
	form     dateForm
	columns  []int  // in the order the reader takes them
	parts    []part // what the columns hold, for the readers of parts: all of them, or those after the date
	scale    float64
	origin   float64
	name     order  // for the readers without a date form
	zoned    bool   // rows carry their offset
	stamps   bool   // date and time stand in one cell
	yearless bool   // the dates have no year
	zone     string // named by a column of its own, the same in every row

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
	cell := trim(cells[i])
	base, rest, ok := c.date(cell)
	if !ok {
		return 0, 0, false
	}
	t, ok := c.form.parseTime(rest)
	return base + t.ms - t.offsetMS, t.offsetMS, ok && t.zoned == c.zoned
}

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
	base, rest, ok := c.date(c.cell(cells, 0))
	if midnight, timed := parseTime(rest); !ok || len(rest) > 0 && (!timed || midnight.ms != 0) {
		return 0, 0, false
	}
	t, ok := parseTime(c.cell(cells, 1))
	if ok && len(c.columns) > 2 {
		var half int64
		if half, ok = halfOf(c.cell(cells, 2)); ok {
			ok = t.addHalf(half)
		}
	}
	return base + t.ms - t.offsetMS, t.offsetMS, ok && t.zoned == c.zoned
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
	v, n, ok := c.form.parseDate(cell)
	if !ok {
		return 0, nil, false
	}
	if c.unsure() {
		base = pack(v)
	} else if base, ok = dateMS(v, c.form.orders[0]); !ok {
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
		c.memoOpen = !isDigit(printed[len(printed)-1]) || c.form.runsOn()
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
	numbers, ms := packed>>packBits, packed&(1<<packBits-1)-dayMS
	midnight, ok := dateMS([3]int{int(numbers >> 19), int(numbers >> 12 & 127), int(numbers & 4095)}, o)
	return midnight + ms, ok
}
