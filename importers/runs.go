package importers

import (
	"bytes"
	"slices"
)

// A list of runs has a row for each: when it began and when it ended, perhaps on the same date, perhaps with how
// long it took. It is read as the state of what ran: 1 from each beginning, 0 from each end.

// endNames are the stems of columns that say when a run ended.
var endNames = []string{"end*", "ended", "to", "until", "bis", "stop*", "off*", "finish*", "close*", "ausschalt*", "aus", "fin", "jusqu*", "arret*", "hasta", "fine", "til", "slut*", "loppu*", "lopp*", "kuni", "koniec", "einde", "tot"}

// durationNames are the stems of columns that say how long a run took, and what it used.
var durationNames = []string{"dur*", "dauer*", "laufzeit*", "run* time", "runtime*", "minutes", "min", "minuten", "seconds", "sec", "sekunden", "hours", "stunden", "length", "varaktighet*", "kesto*", "elapsed*", "energy", "energie", "kwh"}

// ends reads when the run of a row ended.
type ends struct {
	*clock
	sameDate bool    // of the clock's own date: an end before its beginning is of the next day
	lasts    float64 // milliseconds that one of the numbers stands for; 0 when they are no durations
}

// startNames are the stems of clocks that say when a run began.
var startNames = []string{"start*", "begin*", "began", "anfang*", "from", "von", "on", "einschalt*", "debut*", "inicio*", "inizio*", "algus*", "alku*", "sedan"}

// durationUnits are the words for what a duration is counted in, and how long that is.
var durationUnits = map[string]float64{"s": secondMS, "sec": secondMS, "seconds": secondMS, "sek": secondMS, "sekunden": secondMS, "secondes": secondMS, "segundos": secondMS,
	"min": minuteMS, "mins": minuteMS, "minutes": minuteMS, "minuten": minuteMS, "minutos": minuteMS, "minuter": minuteMS,
	"h": hourMS, "hr": hourMS, "hours": hourMS, "std": hourMS, "stunden": hourMS, "heures": hourMS, "horas": hourMS, "timmar": hourMS}

// learnRuns looks for a column of ends where no column holds values but of how long runs took.
func (l *layout) learnRuns(rows []record, names []string) {
	l.takeRunners(rows, names)
	if l.clock.yearless || l.hasReadings() {
		return
	}
	for col := range l.width {
		name := ""
		if col < len(names) {
			name = names[col]
		}
		if l.isTaken(col) {
			continue
		}
		for _, e := range l.endsAt(col) {
			if e.follow(rows, l.clock, names == nil || anyPhrase(endNames, words(name))) {
				l.ends = &e
				l.insert(column{index: col, kind: runEnd, header: name, quantity: State, told: true})
				return
			}
		}
	}
	l.learnDurations(rows, names)
}

// takeRunners takes few whole numbers under a word for what runs, in a list from a start to an end, for what ran: fan 2.
func (l *layout) takeRunners(rows []record, names []string) {
	start := l.clock.columns[0]
	named := func(name string) bool { return anyPhrase(endNames, words(name)) }
	if start >= len(names) || !anyPhrase(startNames, words(names[start])) || !slices.ContainsFunc(names, named) {
		return
	}
	for i := range l.columns {
		c := &l.columns[i]
		if t := l.tally(rows, c.index); c.kind == number && c.unit == "" && t.fractions == 0 && t.isDevice(rows) && anyPhrase(stateNames, words(c.header)) {
			c.kind = device
		}
	}
}

// learnDurations takes a column that says how long runs took for their ends where the clock says when they began.
func (l *layout) learnDurations(rows []record, names []string) {
	start := l.clock.columns[0]
	if start >= len(names) || !anyPhrase(startNames, words(names[start])) {
		return
	}
	for col, name := range names {
		if l.clock.uses(col) || col >= l.width || !anyPhrase(durationNames, words(name)) {
			continue
		}
		lasts := 0.0
		for _, w := range words(name) {
			lasts = max(lasts, durationUnits[w.low])
		}
		if share(rows, col, hasColon) {
			lasts = secondMS // as good as any: they are printed as times
		} else if !share(rows, col, isPlainNumber) {
			continue
		}
		if lasts > 0 {
			c := *l.clock
			c.columns = []int{col}
			l.ends = &ends{clock: &c, lasts: lasts}
			l.columns = append([]column{{index: start, kind: runEnd, header: names[start], quantity: State, told: true}}, l.columns...)
			return
		}
	}
}

func isPlainNumber(cell []byte) bool {
	_, _, ok := anyNumber(cell)
	return ok
}

func hasColon(cell []byte) bool {
	_, ok := parseTime(cell)
	return ok && bytes.IndexByte(cell, ':') > 0
}

// duration reads how long a run took, in milliseconds.
func (e *ends) duration(cell []byte) (ms float64, ok bool) {
	if t, ok := parseTime(cell); ok && hasColon(cell) {
		return float64(t.ms), true
	}
	v, _, ok := anyNumber(cell)
	return v * e.lasts, ok && v >= 0
}

// hasReadings says whether a column holds values other than how long something took.
func (l *layout) hasReadings() bool {
	return slices.ContainsFunc(l.columns, func(c column) bool {
		return c.kind == state || c.kind == number && !c.garbled && !anyPhrase(durationNames, words(c.header))
	})
}

// insert puts a column in its place among the others.
func (l *layout) insert(c column) {
	at := slices.IndexFunc(l.columns, func(k column) bool { return k.index > c.index })
	if at < 0 {
		at = len(l.columns)
	}
	l.columns = slices.Insert(l.columns, at, c)
}

// endsAt are the ways in which ends may stand in a column, written as the clock's times are: as a whole, as a
// time on the clock's date, as a date with its time behind it.
func (l *layout) endsAt(col int) (out []ends) {
	with := func(sameDate bool, columns ...int) {
		c := *l.clock
		c.columns, c.memoLen = columns, 0
		out = append(out, ends{clock: &c, sameDate: sameDate})
	}
	switch at := l.clock.columns; {
	case len(at) == 1:
		with(false, col)
	case len(at) == 2 && l.clock.parts == nil:
		if col+1 < l.width && !l.isTaken(col+1) {
			with(false, col, col+1)
		}
		with(true, at[0], col)
	}
	return out
}

// follow says whether the cells read as ends that come after their beginnings. Without a name that says so they
// must come before the next one's beginning too.
func (e *ends) follow(rows []record, c *clock, named bool) bool {
	filled, read, late, over := 0, 0, 0, 0
	for i, r := range rows {
		if len(trim(r.cells[e.columns[len(e.columns)-1]])) == 0 {
			continue
		}
		filled++
		start, _, _ := c.read(c, r.cells)
		end, _, ok := e.read(e.clock, r.cells)
		if !ok {
			continue
		}
		read++
		late += one(end < start)
		if i+1 < len(rows) {
			next, _, _ := c.read(c, rows[i+1].cells)
			over += one(next < end)
		}
	}
	ordered := c.unsure() || 10*late <= read || e.sameDate
	return read > 0 && 10*read >= 9*filled && 2*filled >= len(rows) && ordered && (named || !c.unsure() && late == 0 && 10*over <= read)
}

// runEnd reads when the run of the row ended, packed where the order of dates is open, or how long it took.
func (s *scan) runEnd(c *values) float64 {
	cell := s.ends.cell(s.cells, len(s.ends.columns)-1)
	if isMissing(cell) {
		return missing
	}
	at, _, ok := s.ends.read(s.ends.clock, s.cells)
	end := float64(at)
	if s.ends.lasts > 0 {
		end, ok = s.ends.duration(cell)
	}
	if !ok {
		return s.unreadableCell(c, cell)
	}
	return end
}

// spreadRuns gives every run two readings: the ends follow the rows' own times.
func (s *scan) spreadRuns(o order) {
	if s.ends == nil {
		return
	}
	n := len(s.at)
	s.readRows = n
	for range n {
		s.at = append(s.at, noTime)
	}
	for _, before := range slices.Clone(s.offsets) {
		if before.MS != s.offsets[len(s.offsets)-1].MS {
			s.offsets = append(s.offsets, Offset{n + before.From, before.MS})
		}
	}
	for i := range s.columns {
		c := &s.columns[i]
		if c.rows == nil {
			for row := range n {
				c.rows = append(c.rows, int32(row))
			}
		}
		if c.kind == runEnd {
			s.spread(c, o)
		}
	}
}

// endOf is when a run ended, by when it began and what its end was read as.
func (s *scan) endOf(start, end int64, o order) (at int64, ok bool) {
	ok = start != noTime
	switch {
	case s.ends.lasts > 0:
		return start + end, ok
	case s.clock.unsure():
		end, ok = unpack(end, o)
	}
	if s.ends.sameDate && end < start {
		end += dayMS
	}
	return end, ok
}

// spread is spreadRuns for a column.
func (s *scan) spread(c *values, o order) {
	rows, val := c.rows, c.val
	c.rows, c.val, c.decimals, c.kind = nil, nil, [fastDigits + 2]int{1}, state
	c.changed()
	for i, row := range rows {
		c.rows, c.val = append(c.rows, row), append(c.val, 1)
		if isUnreadable(val[i]) {
			c.rows, c.val = append(c.rows, row), append(c.val, val[i])
		}
		if val[i] != val[i] {
			continue
		}
		end, ok := s.endOf(s.at[row], int64(val[i]), o)
		if ok {
			s.at[s.readRows+int(row)] = end
			c.rows, c.val = append(c.rows, row+int32(s.readRows)), append(c.val, 0)
		}
	}
}
