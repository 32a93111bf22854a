package importers

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"thawbook/analysis/series"
)

// export turns what was scanned into what the file says.
func (s *scan) export(name, encoding string, answers Answers) *Export {
	o, certain, questions := s.settleDates(name, answers)
	s.spreadRuns(o)
	s.spreadHours()
	s.spreadSides(o)
	s.leaveOut(answers)
	s.noteStatistics()
	s.findHumidity()
	s.settleStates()
	questions = append(questions, s.findNameless(answers)...)
	questions = append(questions, s.settleDoubtfulAir(answers)...)
	questions = append(questions, s.settleF(answers)...)
	questions = append(questions, s.settleMark(answers)...)
	questions = append(questions, s.findLone(answers, questions)...)
	s.swapSaid(answers)
	questions = append(questions, unitsToAsk(s.settleUnits(o, answers), questions)...)
	s.tellKeysApart()
	questions = append(questions, s.pair(fileTitle(name), answers)...)
	if len(questions) == 0 {
		s.tellApart(cmp.Or(s.title, fileTitle(name)))
	}
	least, most := s.perRow()
	e := &Export{least: least, most: most, Name: name, Rows: s.rows, BadTime: s.badTime, Questions: questions}
	e.Layout = Layout{Encoding: encoding, Delimiter: s.delimiter, FirstDataLine: s.layout.line, Header: text(s.header), Hours: s.hourColumns, Objects: len(s.split.names) > 0 || s.split.regrouped, Clock: Clock{Order: string(o), OrderCertain: certain}}
	if s.anyFraction() {
		e.Layout.DecimalMark = string(s.mark)
	}
	for _, c := range s.clock.columns {
		e.Layout.Clock.Columns = append(e.Layout.Clock.Columns, c+1)
	}
	e.Layout.Clock.Zone, e.Layout.Clock.ZoneSource = s.zoneOf(answers)
	e.Series = s.series(name)
	return e
}

// unitsToAsk are the questions about units, but none while it is open what is measured.
func unitsToAsk(units, open []Question) []Question {
	if slices.ContainsFunc(open, func(q Question) bool { return q.ID == loneQuantity }) {
		return nil
	}
	return units
}

// perRow is how many values, at least and at most, a row gives to a column.
func (s *scan) perRow() (least, most int) {
	switch {
	case s.ends != nil:
		return 1, 2
	case len(s.hours) > 0:
		return 1, len(s.hours)
	case len(s.sides) > 0:
		return 0, 1
	}
	return 1, 1
}

// zoneOf is the zone the file or the keeper names: one offset in all rows, the header's, or the answer. An offset said
// beside a zone's name holds where the zone's clocks stand at another at the time of some row.
func (s *scan) zoneOf(answers Answers) (zone, from string) {
	switch {
	case s.clock.instants() && !s.clock.zoned:
		return zoneName(0), "file"
	case s.clock.zoned && len(s.offsets) == 1:
		return zoneName(s.offsets[0].MS), "file"
	case s.clock.zoned:
		return "", "file"
	case s.offset != "" && !s.keepsTo(s.zone, s.offset):
		return s.offset, "file"
	case s.zone != "":
		return s.zone, "file"
	case answers["zone"] != "":
		return answers["zone"], "answer"
	}
	return "", "none"
}

// series are the file's variables: by logger in order of appearance, then by column.
func (s *scan) series(name string) []Series {
	var out []Series
	left := len(s.columns)
	for _, g := range s.groups(name) {
		for _, c := range g.columns {
			left--
			if one, listed := s.one(c, g.logger, left == 0); listed {
				out = append(out, one)
			}
		}
	}
	return out
}

// group is one logger's columns.
type group struct {
	logger  string
	columns []*values
}

// groups tells loggers apart: by the cell that names one, else by the name that columns of different
// quantities share, else the file is one logger.
func (s *scan) groups(name string) []group {
	shared := s.sharedNames()
	var out []group
	at := map[string]int{}
	for i := range s.columns {
		c := &s.columns[i]
		logger := c.logger
		switch {
		case logger != "":
		case s.title != "":
			logger = s.title
		default:
			logger = fileTitle(name)
		}
		own, found := shared[c.same]
		if !found && len(shared) > 0 && fusedPlaces[c.same] {
			own, found = c.likeness, true // T_out beside T_in and RH_in
		}
		if found && c.quantity != Other && c.logger == "" {
			logger = own
			if s.title != "" && len(shared) == 1 {
				logger = s.title
			} else if s.title != "" {
				logger = joined(s.title, own)
			}
		}
		if _, found := at[logger]; !found {
			at[logger] = len(out)
			out = append(out, group{logger: logger})
		}
		g := &out[at[logger]]
		g.columns = append(g.columns, c)
	}
	return out
}

// sharedNames are the names that columns of at least two quantities have in common, by their lower case.
func (s *scan) sharedNames() map[string]string {
	quantities := map[string]Quantity{}
	typed, shared := map[string]string{}, map[string]string{}
	for i := range s.columns {
		c := &s.columns[i]
		key := c.same
		if key == "" || c.quantity == Other {
			continue
		}
		if before, found := quantities[key]; !found {
			quantities[key], typed[key] = c.quantity, c.likeness
		} else if before != c.quantity {
			shared[key] = typed[key]
		}
	}
	for key := range shared {
		if len(shared) == 1 && isHeight(words(key)) && !s.hasOtherHeight(key) {
			return nil
		}
	}
	return shared
}

// hasOtherHeight says whether a temperature bears another height or depth than one.
func (s *scan) hasOtherHeight(than string) bool {
	return slices.ContainsFunc(s.columns, func(c values) bool {
		return c.quantity == AirTemperature && c.same != than && isHeight(words(c.same))
	})
}

// isHeight says whether a name is a height or a depth, which alone names no logger.
func isHeight(name []nameWord) bool {
	n := len(name) - 1
	return n > 0 && heightUnits[name[n].low] && !slices.ContainsFunc(name[:n], func(w nameWord) bool { return !isDigit(w.low[0]) })
}

// heightUnits are the units of heights and depths.
var heightUnits = wordSet("m", "cm", "mm", "ft", "in")

// fileTitle is the last part of a path or archive member without its extension.
func fileTitle(name string) string {
	name = name[strings.LastIndexAny(name, `/\!`)+1:]
	if dot := strings.LastIndexByte(name, '.'); dot > 0 {
		name = name[:dot]
	}
	return name
}

// one builds a series of one logger's column. A column without a single value is listed only when its name
// says what it should have held. After the last one the scan's times are not needed again.
func (s *scan) one(c *values, logger string, last bool) (Series, bool) {
	out := Series{Logger: logger, Column: c.header, Variable: c.variable, ColumnIndex: c.index + 1, Quantity: c.quantity, Unit: c.unit, UnitSource: c.unitFrom,
		Instant: s.clock.instants(), Decimals: c.usualDecimals()}
	if c.rows == nil && s.complete(c) {
		out.FaceMS, out.Val, out.Offsets, s.lent = s.at, c.val, s.offsets, true
	} else {
		s.pick(&out, c, last && !s.lent && !c.lead)
	}
	s.remarkOrder(&out, c)
	return out, c.kind != vacant || c.quantity != Other || len(out.Val) > out.Unreadable
}

// complete says whether every row has a time and a value in the column.
func (s *scan) complete(c *values) bool {
	for i, v := range c.val {
		if v != v || s.at[i] == noTime {
			return false
		}
	}
	return true
}

// pick takes the rows that have a time and a value and counts the others. The values move up in their own place, as the
// column's are not needed again; so do the times where those of the scan are not either.
func (s *scan) pick(out *Series, c *values, last bool) {
	out.Val = c.val[:0]
	if last && c.rows == nil {
		out.FaceMS = s.at[:0]
	} else {
		out.FaceMS = roomFor[int64](len(c.val))
	}
	if c.rows == nil && len(s.offsets) == 0 {
		s.pickRuns(out, c)
		return
	}
	run := 0
	for i, v := range c.val {
		row := c.row(i)
		if s.at[row] == noTime || !out.holds(v) {
			continue
		}
		if run = s.runOf(run, row); run >= 0 && (len(out.Offsets) == 0 || out.Offsets[len(out.Offsets)-1].MS != s.offsets[run].MS) {
			out.Offsets = append(out.Offsets, Offset{len(out.Val), s.offsets[run].MS})
		}
		out.FaceMS, out.Val = append(out.FaceMS, s.at[row]), append(out.Val, v)
	}
}

// pickRuns is pick for a value in every row and rows without offsets: most rows are fine, and are taken together.
func (s *scan) pickRuns(out *Series, c *values) {
	from := 0
	take := func(to int) {
		out.FaceMS, out.Val = append(out.FaceMS, s.at[from:to]...), append(out.Val, c.val[from:to]...)
		from = to + 1
	}
	for i, v := range c.val {
		if noTime := s.at[i] == noTime; noTime || v != v {
			take(i)
			if !noTime {
				out.holds(v)
			}
		}
	}
	take(len(c.val))
}

// holds says whether a cell holds a value, and counts it if not.
func (s *Series) holds(v float64) bool {
	switch {
	case v == v:
		return true
	case isUnreadable(v):
		s.Unreadable++
	default:
		s.Missing++
	}
	return false
}

// row is the row of a column's i-th value.
func (c *values) row(i int) int {
	if c.rows == nil {
		return i
	}
	return int(c.rows[i])
}

// runOf moves on to the run of offsets a row lies in; −1 when rows carry none.
func (s *scan) runOf(run, row int) int {
	if len(s.offsets) == 0 {
		return -1
	}
	if s.offsets[run].From > row {
		run = 0
	}
	for run+1 < len(s.offsets) && s.offsets[run+1].From <= row {
		run++
	}
	return run
}

// remarkOrder counts the readings earlier than the one above.
func (s *scan) remarkOrder(out *Series, c *values) {
	leaps, still := 0, 0
	for i := 1; i < len(out.FaceMS); i++ {
		switch step := out.FaceMS[i] - out.FaceMS[i-1]; {
		case step == 0:
			still++
		case step < 0:
			out.OutOfOrder++
		case step > 366*dayMS:
			leaps++
		}
	}
	if out.OutOfOrder+leaps > 0 {
		s.noteOrder(c)
	}
	if s.clock.untimed && c.lead && still > 0 && 2*still >= len(out.FaceMS) {
		s.notes.add(series.Remark{Code: RemarkNoTimes, Line: s.layout.line, Column: s.clock.columns[0] + 1, Args: []string{c.header}})
	} else if c.lead && c.kind == number && out.repeats(still) {
		s.notes.add(series.Remark{Code: RemarkSameTimes, Line: s.layout.line, Column: s.clock.columns[0] + 1, Args: []string{c.header}})
	}
}

// repeats says whether most readings stand at the time of one before them and differ from it; still is how many stand
// right behind one.
func (s *Series) repeats(still int) bool {
	n := len(s.FaceMS)
	if turns := s.OutOfOrder > 0 && s.OutOfOrder+still < n-1; 2*still < n && !turns {
		return false
	}
	first, again := make(map[int64]float64, n), 0
	for i, at := range s.FaceMS {
		if v, found := first[at]; !found {
			first[at] = s.Val[i]
		} else if v != s.Val[i] {
			again++
		}
	}
	return again > 0 && 2*again >= n
}

// noteOrder remarks where a series runs backwards, once for all columns of the same rows.
func (s *scan) noteOrder(c *values) {
	if !c.lead {
		return
	}
	before := int64(noTime)
	typical, down := s.isTypicalYear(c), s.descends(c)
	for i := range c.val {
		row := c.row(i)
		at := s.at[row]
		if at == noTime {
			continue
		}
		if before != noTime && (at < before && !down || at > before && down) {
			r := series.Remark{Code: RemarkOutOfOrder, Line: s.lineOf(row), Column: s.clock.columns[0] + 1}
			switch {
			case typical && turnsMonth(before, at):
				r.Code = RemarkTypical
			case beginsAnew(before, at):
				r.Code, r.Args = RemarkClockAnew, []string{yearOf(at)}
			}
			s.notes.add(r)
		}
		if before != noTime && !down && beginsAnew(at, before) {
			s.notes.add(series.Remark{Code: RemarkClockUnset, Line: s.lineOf(row), Column: s.clock.columns[0] + 1, Args: []string{yearOf(before)}})
		}
		before = at
	}
}

// descends says whether a series goes back in time from row to row: the newest stands on top.
func (s *scan) descends(c *values) bool {
	back, forth := 0, 0
	before := int64(noTime)
	for i := range c.val {
		at := s.at[c.row(i)]
		if at == noTime {
			continue
		}
		if before != noTime {
			back += one(at < before)
			forth += one(at > before)
		}
		before = at
	}
	return back > 2 && 4*forth < back
}

// yearOf is the year of a face.
func yearOf(at int64) string { return strconv.Itoa(time.UnixMilli(at).UTC().Year()) }

// beginsAnew says whether a clock fell back by more than a year to a 1 January: where clocks that have lost their
// time begin.
func beginsAnew(before, at int64) bool {
	return before-at > 366*dayMS && time.UnixMilli(at).UTC().YearDay() == 1
}

// turnsMonth says whether behind the last day of a month the first of the month that follows comes, be it of another year.
func turnsMonth(before, at int64) bool {
	b, a := time.UnixMilli(before).UTC(), time.UnixMilli(at).UTC()
	return b.AddDate(0, 0, 1).Day() == 1 && a.Day() == 1 && a.Month() == b.Month()%12+1
}

// isTypicalYear says whether a series leaps between years, and nowhere but from a month's end to the next one's
// beginning: months of different years put one after the other.
func (s *scan) isTypicalYear(c *values) bool {
	leaps := 0
	before := int64(noTime)
	for i := range c.val {
		at := s.at[c.row(i)]
		if at == noTime {
			continue
		}
		if before != noTime && max(before-at, at-before) > 183*dayMS {
			if leaps++; !turnsMonth(before, at) {
				return false
			}
		}
		before = at
	}
	return leaps > 0
}

// usualDecimals is how many digits most often follow the mark, more of them on a tie.
func (c *values) usualDecimals() int {
	best := 0
	for d, n := range c.decimals {
		if n > 0 && n >= c.decimals[best] {
			best = d
		}
	}
	return best
}
