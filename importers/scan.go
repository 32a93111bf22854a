package importers

import (
	"bytes"
	"math"

	"thawbook/analysis/series"
)

// Cells without a value are kept as not-a-numbers that say why.
var (
	missing    = math.Float64frombits(0x7FF8_0000_0000_0A01)
	unreadable = math.Float64frombits(0x7FF8_0000_0000_0A02)
)

func isUnreadable(v float64) bool { return math.Float64bits(v) == math.Float64bits(unreadable) }

// scan reads data lines of one layout into columns.
type scan struct {
	*layout
	notes    *notes
	columns  []values
	keyed    *keyed // nil when no column says what a row is about
	need     int    // cells of a line that are looked at
	line     int    // physical number of the line being read
	cells    [][]byte
	times    store[int64]
	at       []int64  // times in one piece, once all are read
	lent     bool     // the times are a series' too
	offsets  []Offset // by row
	lines    []rowLine
	lastLine rowLine // of lines, the last
	rows     int
	readRows int     // rows with times of their own, where the ends of runs follow them
	sideAt   []int64 // the row's times of the tables beside the first
	sideOnly []int   // rows that only tables beside the first have
	wide     int     // times of a row, where its columns are hours
	badTime  int
	pending  []badLine   // lines without a time since the last good row
	steps    []step      // the quick path's; nil when rows are not for it
	lanes    [][]float64 // the quick path's room, by column
	digits   []int       // the quick path's row: digits behind the mark, by column
	ragged   bool        // a line before this one was short too
	oddRows  []oddRow    // of another width than the table

	base      string // what a logger without a name is called
	title     string // of the table
	blocks    []block
	nextTitle string // of the table below
	ended     bool   // the header of the table below was met
	alone     bool   // what looks like the header of a table below is none
	denied    int    // the last line that looked like one and was none
	denials   int    // how many such lines there were
}

// values is a column while it is read.
type values struct {
	column
	cells     store[float64]
	rows      []int32             // the rows its values are from; nil: all
	logger    string              // named by the rows themselves
	variable  string              // named by the rows themselves
	lead      bool                // the first column of its rows
	val       []float64           // cells in one piece, once all are read
	lie       *spread             // how they lie; nil until it is asked, and where they have changed
	bracketed []int               // rows whose numbers stood in brackets
	decimals  [fastDigits + 2]int // how often so many digits followed the mark
}

// rowLine says that the rows from row on stand at line and the lines after it.
type rowLine struct{ row, line int }

func newScan(l *layout, n *notes) *scan {
	l.clock.forget()
	s := &scan{layout: l, notes: n, need: l.clock.last() + 1, line: l.line}
	for _, c := range l.columns {
		s.need = max(s.need, c.index+1)
		if c.kind == device || c.kind == variable || c.kind == unitCell {
			s.keyBy(c)
			continue
		}
		if c.kind == event {
			s.keyBy(c)
		}
		s.columns = append(s.columns, values{column: c, lead: len(s.columns) == 0, logger: l.placeOf(c)})
	}
	if s.ends != nil {
		s.need = max(s.need, s.ends.last()+1)
	}
	for _, t := range s.sides {
		s.need = max(s.need, t.last()+1)
		s.sideAt = append(s.sideAt, noTime)
	}
	s.planQuick()
	return s
}

// mostExpected is how many cells room is made for before they are read.
const mostExpected = 1 << 21

// expect makes the lists of times and values as long as so many rows need.
func (s *scan) expect(rows int) {
	if rows > mostExpected/(len(s.columns)+1) {
		return
	}
	s.times.room = rows
	for i := range s.columns {
		s.columns[i].cells.room = rows
	}
}

// keyBy adds a column to those that say what a row is about.
func (s *scan) keyBy(c column) {
	if s.keyed == nil {
		s.keyed = &keyed{long: s.long, known: map[string]int32{}, stated: map[int32]bool{}}
	}
	s.keyed.columns = append(s.keyed.columns, c)
}

// run reads the whole records of a chunk and says how many bytes they take.
func (s *scan) run(chunk []byte, last bool) (consumed int) {
	quoted := bytes.IndexByte(chunk, '"') >= 0
	split := s.split.plain
	if quoted {
		split = s.split.quoted
	}
	for pos := 0; pos < len(chunk); {
		if s.steps != nil && !quoted && len(s.pending) == 0 {
			if pos = s.quickRows(chunk, pos); pos == len(chunk) {
				break
			}
		}
		record, end, lines := nextRecord(chunk, pos, last, quoted)
		if end == pos {
			return pos
		}
		var more bool
		s.cells, more = split(s.cells[:0], record, s.need)
		broken := last && end == len(chunk) && chunk[end-1] != '\n'
		s.row(record, more, broken)
		if broken {
			s.distrustLast()
		}
		if s.ended {
			return pos
		}
		s.line += lines
		pos = end
	}
	return len(chunk)
}

// row reads one record's cells; broken says that the text ends within its line.
func (s *scan) row(record []byte, more, broken bool) {
	at, offset, ok := s.clock.read(s.clock, s.cells)
	if broken && len(s.cells) < s.need && s.clock.uses(len(s.cells)-1) {
		ok = false // the end of the text cut through the time
	}
	if len(s.sides) > 0 {
		if beside, read := s.readSides(); read && !ok {
			at, ok = beside, true
			s.sideOnly = append(s.sideOnly, s.times.n)
		}
	}
	if !ok {
		s.badRow(record)
		return
	}
	s.keepSides()
	if len(s.pending) > 0 && !s.startsBlock(at) {
		s.settle(false)
	}
	if len(s.cells) < s.need || more && s.isLong(record) {
		s.oddWidth(record, more, broken)
	}
	s.time(at, offset)
	for i := range s.columns {
		c := &s.columns[i]
		if c.index >= len(s.cells) {
			c.cells.add(missing)
			continue
		}
		cell := s.cells[c.index]
		v, d, ok := parseNumber(cell, s.mark)
		if !ok || c.kind != number && c.kind != vacant {
			c.cells.add(s.oddCell(c, cell))
			continue
		}
		c.decimals[min(d, len(c.decimals)-1)]++
		c.cells.add(v)
	}
	s.rows++
}

// gather puts what was read in one piece each.
func (s *scan) gather() {
	s.settle(true)
	s.at = s.times.whole()
	for i := range s.columns {
		c := &s.columns[i]
		c.val = c.cells.whole()
	}
	s.leaveMoved()
	s.settleBrackets()
	s.heedVerdicts()
	s.settleRowUnits()
	s.keyByBlock()
	s.splitByKey()
	s.fillStates()
	s.dropSentinels()
	s.dropFailures()
}

// time keeps the row's time and what else is known by row.
func (s *scan) time(at, offset int64) {
	row := s.times.n
	s.times.add(at)
	if len(s.lines) == 0 || s.line-s.lastLine.line != row-s.lastLine.row {
		s.beginLines(row)
	}
	if n := len(s.offsets); s.clock.zoned && (n == 0 || s.offsets[n-1].MS != offset) {
		s.offsets = append(s.offsets, Offset{row, offset})
	}
	if s.keyed != nil {
		s.keyed.add(s.cells)
	}
}

// beginLines notes the line of a row that does not follow on the row before it.
func (s *scan) beginLines(row int) {
	s.lastLine = rowLine{row, s.line}
	s.lines = append(s.lines, s.lastLine)
}

// lineOf is the physical line of a row.
func (s *scan) lineOf(row int) int {
	if s.readRows > 0 {
		row %= s.readRows
	}
	row /= max(s.wide, 1)
	low, high := 0, len(s.lines)
	for high-low > 1 {
		if mid := (low + high) / 2; s.lines[mid].row <= row {
			low = mid
		} else {
			high = mid
		}
	}
	return s.lines[low].line + row - s.lines[low].row
}

// oddWidth keeps or remarks a line with fewer or more cells than the layout has.
func (s *scan) oddWidth(record []byte, more, broken bool) {
	if broken && !more && !s.ragged {
		s.notes.add(series.Remark{Code: RemarkCutLine, Line: s.line, Column: len(s.cells)})
		if last := &s.cells[len(s.cells)-1]; len(trim(*last)) > 0 {
			*last = brokenOff
		}
		return
	}
	s.ragged = s.ragged || !more
	if s.keepOdd(record, more) || more && s.need < s.width {
		return
	}
	code := RemarkShortLine
	if more {
		code = RemarkLongLine
	}
	s.notes.add(series.Remark{Code: code, Line: s.line})
}

// brokenOff stands for a cell that the end of the file cut through.
var brokenOff = []byte("… (cut off)")
