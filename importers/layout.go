package importers

import (
	"bytes"
	"strconv"
)

// columnKind says how the cells of a column are read.
type columnKind int

const (
	skipped columnKind = iota
	number
	state
	device
	variable // says which variable the row's value is
	unitCell // says in which unit the row's value is
	ordinal  // counts the rows: understood, and not listed
	runEnd   // says when the run that began at the row's time ended
	event    // says in words what is on or off
	message  // says in words what happened
	grading  // says in words whether a reading is one
	vacant   // nothing but missing words so far: read as numbers, listed only if something shows up
)

// column is a column that is read.
type column struct {
	index     int // 0-based
	kind      columnKind
	header    string // as it stands, with its unit
	name      string // without its unit
	unit      string
	unitFrom  string // header, units_row or values
	quantity  Quantity
	told      bool    // its name says what it measures
	likeness  string  // what is left of the name when the quantity's words are taken out
	same      string  // the same, as it is compared
	divisor   float64 // of the unit the values are printed in; 0 when they are printed in whole ones
	statistic statistic
	perhaps   bool   // the values must bear the statistic out
	whole     string // likeness with the statistic's words in it
	extreme   bool   // no reading: an extreme, or a measure of spread
	hourly    bool   // one of the hours of a day, its name the hour
	graded    bool   // its cells are tenths of a degree with their grades
	garbled   bool   // its name says that it is measured, and its cells are no numbers: listed, and explains nothing
}

// layout is everything learned from the head.
type layout struct {
	delimiter   string
	split       splitters
	width       int // cells of a data line
	filled      int // columns that hold something in some row
	mark        byte
	marked      bool // a number with a fraction was seen
	clock       *clock
	ends        *ends // of the runs that the rows list; nil when they list none
	resort      resort
	nameless    bool    // no header, and no names in the cells
	unnamed     bool    // a header, whose names but number the columns
	sides       []side  // tables beside the first, with clocks of their own
	hours       []int64 // the times of day of the columns that are hours of a day
	hourColumns []int   // and where those stand, from 1
	columns     []column
	ordinals    int            // columns that only count the rows
	keys        []column       // variable and unit columns of the long form
	long        bool           // a row holds one value, and says of what
	names       int            // columns the header has a place for
	beside      map[int]string // units that a column of their own gives to the one before it
	tallies     map[int]columnTally
	groups      []string // names above the header's, each over several columns
	places      []string // names of loggers in a line below the header
	statistics  []string // words for statistics below the units
	preamble    []record
	below       int    // the line of the next table's header
	header      []byte // the header's line
	headerAt    int    // which of the head's lines it is
	start       int    // where the first data line starts in the head
	line        int    // and its physical number
	zone        string
	offset      string // from UTC, said beside the name of the zone
	pageUnit    string // °C or °F named above the table
	score       float64
	timedRows   int // of those it was learned from, how many have a time
}

// resort is what else is taken where lines can't be read as they should be.
type resort int

const (
	noResort     resort = iota
	wordEvents          // words for events, where there are no values
	datelessRows        // times of day for a clock, where there is no date
)

// learn finds the delimiter, width and clock that explain most of the head, and what the columns hold.
func learn(head []byte, last bool, name string) (*layout, error) {
	lines := headRecords(head, last)
	if err := enough(lines, name); err != nil {
		return nil, err
	}
	best, err := learnLines(lines, name)
	if err != nil {
		return nil, err
	}
	if opensObject(lines[0].text) && 2*best.timedRows < filledLines(lines) {
		return nil, &Refusal{Name: name, Code: RefusedManyLines} // of its objects few are readings
	}
	best = firstTable(best, lines, name)
	why := best.misplaced(cut(lines, best.split), name)
	best.placeCells(lines)
	return best, why
}

// firstTable is the layout of the first table, where the one that explains most of the head stands below
// others with headers of their own.
func firstTable(best *layout, lines []record, name string) *layout {
	if best.header == nil {
		return best
	}
	if upper := best.cutOtherwise(lines[:best.headerAt+1], name); upper != nil {
		return upper
	}
	const tries = 4 // what looks like a header above the table may be none
	headers := headerLines(best, lines[:best.headerAt+1], best.leavesRows(lines[:best.headerAt]))
	for i := 1; i < min(len(headers), tries+1); i++ {
		below := lines[headers[i]]
		upper, err := learnLines(lines[:headers[i]], name)
		if err == nil && upper.header != nil && isHeaderLine(cells(upper, upper.header)) && isHeaderLine(cells(upper, below.text)) {
			upper.below = below.line
			return upper
		}
	}
	return best
}

// cutOtherwise is the layout of a table that fills most lines above the header, the last of them, and is cut otherwise;
// nil where there is none.
func (l *layout) cutOtherwise(lines []record, name string) *layout {
	const fewest = 4
	header := len(lines) - 1
	if header < fewest {
		return nil
	}
	upper, err := learnLines(lines[:header], name)
	if err != nil || upper.header == nil || upper.delimiter == l.delimiter || 2*upper.timedRows < header || !upper.isTable() {
		return nil
	}
	upper.below = lines[header].line
	return upper
}

// leavesRows says whether above its header most rows of a layout's width that have numbers have no time that it reads:
// the same table, its times written in another way.
func (l *layout) leavesRows(lines []record) bool {
	read, left := 0, 0
	for _, r := range cut(lines, l.split) {
		if len(r.cells) == l.width && hasNumber(r.cells) {
			read += one(l.reads(r))
			left += one(!l.reads(r))
		}
	}
	return left > read
}

// headerLines are the lines that look like headers, those left out that repeat the one before unless repeats count.
func headerLines(l *layout, lines []record, repeats bool) (at []int) {
	for i, r := range lines {
		if isHeaderLine(cells(l, r.text)) && (len(at) == 0 || repeats || !bytes.Equal(r.text, lines[at[len(at)-1]].text)) {
			at = append(at, i)
		}
	}
	return at
}

func cells(l *layout, line []byte) [][]byte {
	out, _ := l.split.quoted(nil, line, maxColumns+1)
	return out
}

// learnLines finds the layout that explains most of the lines, with a resort where nothing else does.
func learnLines(lines []record, name string) (*layout, error) {
	best, why := bestLayout(lines, name, noResort)
	if best == nil && clockless(lines) == RefusedNoDate {
		best, _ = bestLayout(lines, name, datelessRows)
	}
	if best == nil && why.Code == RefusedNoValues {
		best, _ = bestLayout(lines, name, wordEvents)
	}
	switch {
	case best != nil:
		return best, nil
	case overSeveralLines(lines):
		return nil, &Refusal{Name: name, Code: RefusedManyLines}
	}
	return nil, why
}

// bestLayout tries every way to keep cells apart and says why when none will do.
func bestLayout(lines []record, name string, last resort) (best *layout, why *Refusal) {
	clocked := false
	for _, d := range delimiters {
		if !occurs(d.name, lines) || d.name == "blanks" && (clocked && best == nil || best.isSure(lines)) {
			continue // the cells are known, and where they hold values, blanks are within cells
		}
		best, why = bestWidth(best, why, layout{delimiter: d.name, split: d.split, resort: last}, lines, name, &clocked)
	}
	if best == nil || best.delimiter == "blanks" {
		if split, ok := inPlaces(lines); ok {
			best, why = bestWidth(best, why, layout{delimiter: "blanks", split: split, resort: last}, lines, name, &clocked)
		}
	}
	if best == nil || best.leavesFolded(lines) {
		best, why = bestDressed(best, why, lines, name, last)
	}
	switch {
	case why != nil:
	case clocked:
		why = &Refusal{Name: name, Code: RefusedNoValues}
	default:
		why = &Refusal{Name: name, Code: clockless(lines)}
	}
	return best, why
}

// isSure says whether a layout cuts at a mark that hardly stands within cells, and reads most lines.
func (l *layout) isSure(lines []record) bool {
	return l != nil && l.delimiter != "," && 2*l.timedRows >= filledLines(lines)
}

// filledLines counts the lines that hold something.
func filledLines(lines []record) (n int) {
	for _, r := range lines {
		n += one(len(bytes.Trim(r.text, ",;\t\" ")) > 0)
	}
	return n
}

// bestDressed tries the ways to cut dressed rows, where the plain ones read none or leave some of what is in them.
func bestDressed(plain *layout, why *Refusal, lines []record, name string, last resort) (*layout, *Refusal) {
	var best *layout
	clocked := false
	for _, d := range dressedDelimiters {
		split := d.split(lines)
		if d.name == "blanks" && split.names == nil {
			continue // words
		}
		best, why = bestWidth(best, why, layout{delimiter: d.name, split: split, resort: last}, lines, name, &clocked)
	}
	if best == nil || best.delimiter == "blanks" && best.tells() == 0 || plain != nil && best.tells() <= plain.tells() {
		return plain, why
	}
	return best, why
}

// tells is how many columns say what they measure.
func (l *layout) tells() (n int) {
	for _, c := range l.columns {
		n += one(c.told || c.unit != "")
	}
	return n
}

// bestWidth reads the lines as rows of every width worth trying, cut as a layout says.
func bestWidth(best *layout, why *Refusal, as layout, lines []record, name string, clocked *bool) (*layout, *Refusal) {
	records := cut(lines, as.split)
	for _, width := range widths(records) {
		if width > maxColumns {
			why = &Refusal{Name: name, Code: RefusedManyColumns, Line: ofWidth(records, width)[0].line, Args: []string{strconv.Itoa(maxColumns)}}
			continue
		}
		if best != nil && best.score >= float64(countOfWidth(records, width)) {
			continue // no layout explains more than its rows
		}
		l := as
		l.width = width
		found := l.try(records) && !l.isSpeck(lines)
		*clocked = *clocked || found
		if found && l.score > 0 && (best == nil || l.score > best.score) {
			best = &l
		}
	}
	return best, why
}

// isSpeck says whether a layout reads a line or two of many: what stands above a table has times as well.
func (l *layout) isSpeck(lines []record) bool {
	return l.timedRows <= 2 && 20*l.timedRows < filledLines(lines)
}

// enough refuses a head without at least two lines.
func enough(lines []record, name string) error {
	filled, last := 0, []byte(nil)
	for _, r := range lines {
		if text := trim(r.text); len(text) > 0 {
			filled++
			last = text
		}
	}
	switch filled {
	case 0:
		return &Refusal{Name: name, Code: RefusedEmpty}
	case 1:
		if opensObject(last) {
			return &Refusal{Name: name, Code: RefusedManyLines}
		}
		return &Refusal{Name: name, Code: RefusedOneLine, Line: 1}
	}
	return nil
}

// try reads the records of one width as data: clock, header, columns. It says whether a clock was found.
func (l *layout) try(records []record) bool {
	rows := make([]record, 0, len(records))
	for _, r := range records {
		if len(r.cells) == l.width && !isVacant(r.cells) && !(beginsFoot(r.cells[0]) && hasNumber(r.cells)) {
			rows = append(rows, r)
		}
	}
	fit := l.fitClock(records, rows)
	if fit.clock == nil {
		return false
	}
	l.clock = fit.clock
	rows = rows[fit.first:]
	l.start, l.line = rows[0].pos, rows[0].line
	top := indexOfLine(records, l.line)
	rows = l.timed(rows)
	l.timedRows = len(rows)
	l.filled = l.filledColumns(rows)
	names, units, headerAt := l.findHeader(records[:top], rows)
	names = l.namesInCells(rows, names)
	l.nameless = names == nil
	names = l.overFilled(rows, names)
	l.names, l.below = len(names), l.nextHeader(records[top:])
	rows = above(rows, l.below)
	if l.mark, l.marked = learnMark(rows, l.clock); l.delimiter == "," && hasGradedTenths(rows) {
		l.mark, l.marked = '.', true
	}
	l.preamble, l.headerAt = records[:headerAt], headerAt
	l.learnColumns(rows, names, units)
	l.unnamed = l.namesSayNothing()
	l.learnZone(names, units)
	l.learnOrder(rows, names)
	l.learnOrigin(rows)
	l.learnPageUnit()
	l.score = l.explained(rows)
	return true
}

// fitClock is the clock of the rows: dates, else a count from a start that stands above, else, as a resort, times of day.
func (l *layout) fitClock(records, rows []record) clockFit {
	fit := learnClock(rows)
	if fit.clock == nil {
		fit, _ = startFit(records, rows)
	}
	if fit.clock == nil {
		fit, _ = acrossFit(rows)
	}
	if fit.clock == nil && l.resort == datelessRows {
		fit, _ = datelessFit(records, rows)
	}
	return fit
}

// timed keeps the rows whose time can be read: headers that come again teach nothing about columns.
func (l *layout) timed(rows []record) []record {
	out := make([]record, 0, len(rows))
	for _, r := range rows {
		if l.reads(r) {
			out = append(out, r)
		}
	}
	return out
}

// nextHeader is the line of the next table's header, 0 when there is none.
func (l *layout) nextHeader(records []record) int {
	for _, r := range records {
		if isHeaderLine(r.cells) && !bytes.Equal(r.text, l.header) && !l.reads(r) {
			return r.line
		}
	}
	return 0
}

// above keeps the rows above a line, all of them when it is 0.
func above(rows []record, line int) []record {
	for i, r := range rows {
		if line > 0 && r.line > line {
			return rows[:i]
		}
	}
	return rows
}

func indexOfLine(records []record, line int) int {
	for i, r := range records {
		if r.line == line {
			return i
		}
	}
	return len(records)
}

// explained is how many rows have a time, times the share of cells that are understood; 0 when no
// column holds values.
func (l *layout) explained(rows []record) float64 {
	values := 0
	understood := len(l.clock.columns) + l.ordinals
	for _, c := range l.columns {
		values += one(c.holdsValues() && !c.garbled)
		understood += one(!c.garbled)
	}
	if values == 0 {
		return 0
	}
	return float64(len(rows)) * float64(understood) / float64(l.width)
}
