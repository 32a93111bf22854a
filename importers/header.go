package importers

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
)

// findHeader looks upwards from the first data line for a units row and the header. Rows of numbers between
// header and data whose time can't be read are data, and so are rows of another width that have a time.
func (l *layout) findHeader(above, rows []record) (names, units []string, at int) {
	first, lower := -1, headLines{}
	for i, lines := len(above)-1, 0; i >= 0 && lines < maxHeaderLines; i-- {
		r := above[i]
		r.cells = l.wideCells(r)
		switch {
		case isVacant(r.cells) || isRule(r.text):
			continue
		case l.reads(r):
			l.start, l.line = r.pos, r.line
		case units == nil && isUnitsRow(r.cells) && (isVacant(r.cells[:1]) || maybeNamed(above[:i])):
			units = texts(l.unitsOver(r, rows))
		case units == nil && isStatisticsRow(r.cells):
			l.statistics = texts(r.cells)
		case lower.take(l, r.cells, above[:i]):
		case len(r.cells) == l.width && hasNumber(r.cells) && units == nil && !l.namesHours(r.cells) && !l.namesClock(r.cells):
			first = i
			continue // however many there are
		case l.delimiter == "blanks" && len(r.cells) > l.width+1, len(r.cells) != l.width && countNumbers(r.cells) > 1:
			return nil, units, len(above)
		case filledCells(r.cells) >= max(2, l.filled/2):
			if first >= 0 {
				l.start, l.line = above[first].pos, above[first].line
			}
			return l.takeHeader(r, above[:i], lower), units, i
		default:
			return nil, units, len(above)
		}
		lines++
	}
	return nil, units, len(above)
}

// maybeNamed says whether any of the lines above some row may hold the columns' names.
func maybeNamed(above []record) bool {
	return slices.ContainsFunc(above, func(r record) bool { return filledCells(r.cells) > 1 })
}

// wideCells are a line's cells, parted by two blanks or more where that gives as many as the rows have: the names of a
// printed table hold single ones.
func (l *layout) wideCells(r record) [][]byte {
	if l.delimiter != "blanks" || len(r.cells) == l.width {
		return r.cells
	}
	if named := withoutLead(r.cells); len(named) == l.width {
		return named
	}
	var out [][]byte
	for part := range bytes.SplitSeq(r.text, []byte("  ")) {
		if part = trim(part); len(part) > 0 {
			out = append(out, part)
		}
	}
	if over := l.spread(out); isUnitsRow(over) {
		out = over
	}
	if len(out) != l.width {
		return r.cells
	}
	return out
}

// withoutLead are the cells of a comment without its mark and the word with a colon that leads to the names.
func withoutLead(cells [][]byte) [][]byte {
	for i := range min(len(cells), 2) {
		if bytes.HasSuffix(cells[i], []byte(":")) && len(trimComment(string(cells[0]))) < len(cells[0]) {
			return cells[i+1:]
		}
	}
	return cells
}

// unitsOver are the cells of a row of units over their columns: where blanks part them and they are fewer than those of
// the rows, by their places in the line, and none where these don't tell.
func (l *layout) unitsOver(r record, rows []record) [][]byte {
	if l.delimiter != "blanks" || len(r.cells) >= l.width {
		return r.cells
	}
	return l.standingOver(r, rows)
}

// maxHeaderLines is how many lines may stand between a header and its data, rows without a readable time left out.
const maxHeaderLines = 20

// namesHours says whether a row of numbers names the hours of a day.
func (l *layout) namesHours(cells [][]byte) bool {
	_, ok := l.clock.hoursOf(texts(cells))
	return ok
}

// namesClock says whether in a row of numbers, the names of loggers perhaps, a word for a time stands over the clock.
func (l *layout) namesClock(cells [][]byte) bool {
	name := words(text(l.clock.cell(cells, 0)))
	return anyPhrase(clockNames, name) && len(name) <= 3
}

// groupNames reads a line above the header that names groups of columns: words over some columns, each good up
// to the next, and none over the clock unless the header has none there
// or names the row itself, or has it again in tables beside the first. It is nil when the line is none.
func (l *layout) groupNames(cells, header [][]byte) []string {
	corner := l.clock.cell(header, 0)
	bare, beside := len(corner) == 0 || anyPhrase(variableNames, words(text(corner))), len(l.clock.shifts(texts(header))) > 0
	if len(cells) != len(header) || filledCells(cells) < 1+one(len(l.clock.cell(cells, 0)) > 0) || filledCells(cells) == len(cells) && !bare || hasNumber(cells) && !(len(l.clock.cell(cells, 0)) == 0 && areNumbered(cells)) {
		return nil
	}
	out := texts(cells)
	for i := range out {
		switch {
		case l.clock.uses(i) && bare:
			out[i] = ""
		case l.clock.uses(i) && out[i] != "" && !beside:
			return nil
		case i > 0 && out[i] == "" && (beside || !l.clock.uses(i)):
			out[i] = out[i-1]
		}
	}
	return out
}

// areNumbered says whether the numbers in a row are whole ones of few digits, as numbers of loggers are, and an empty
// cell stands behind each but the last: they stand over several columns.
func areNumbered(cells [][]byte) bool {
	for i, c := range cells {
		c = trim(c)
		if isNumber(c, '.') && (countDigits(c) < len(c) || len(c) > 4) || len(c) > 0 && i+1 < len(cells) && len(trim(cells[i+1])) > 0 {
			return false
		}
	}
	return true
}

// spread puts empty cells over the clock's columns where blanks part the cells of a line above the header, and
// those over the clock were none.
func (l *layout) spread(cells [][]byte) [][]byte {
	n := len(l.clock.columns)
	if l.delimiter != "blanks" || len(cells)+n != l.width || l.clock.last() != n-1 {
		return cells
	}
	return append(make([][]byte, n), cells...)
}

// isRule says whether a line only parts others: strokes, and what may stand in a comment without words.
func isRule(line []byte) bool { return len(bytes.Trim(line, "-=+|_*~#%/;: \t")) == 0 }

// reads says whether a row of another width has a time all the same.
func (l *layout) reads(r record) bool {
	_, _, ok := l.clock.read(l.clock, r.cells)
	return ok
}

// alignNames spreads a header over the columns: one name may stand for date and time in two columns, and
// a comment mark may stand before the first.
func (l *layout) alignNames(names []string) []string {
	if len(names) > 0 {
		if n := trimComment(names[0]); n == "" && len(names) == l.width+1 {
			names = names[1:]
		} else {
			names[0] = n
		}
	}
	names = joinUnits(withoutNumbers(names), l.width)
	c := l.clock.columns
	if at := c[0]; len(c) == 1 && len(names) == l.width+1 && anyPhrase(dateKeys, words(names[at])) && isTimeName(names[at+1]) {
		names = slices.Delete(slices.Clone(names), at+1, at+2) // date and time stand in one cell
	}
	if len(names) == l.width-1 && l.namesLackFirst(names) {
		names = append([]string{""}, names...)
	}
	if len(names) == l.width-len(c) && !slices.ContainsFunc(names, func(n string) bool { return anyPhrase(clockNames, words(n)) }) && c[len(c)-1] == len(c)-1 {
		names = append(make([]string, len(c)), names...) // the rows begin with their times, under no name
	}
	lacks := l.width - len(names)
	if lacks == len(c) && lacks > 1 && c[0] == 1 && anyPhrase(clockNames, words(names[0])) {
		names = append([]string{""}, names...) // and with their numbers
		lacks--
	}
	if lacks > 0 && lacks < len(c) && c[len(c)-1] == c[0]+len(c)-1 && !l.namesClockWhole(names) { // the clock's columns stand side by side
		at := c[len(c)-lacks]
		names = slices.Insert(slices.Clone(names), at, slices.Repeat([]string{names[c[0]]}, lacks)...)
	}
	return names
}

// namesClockWhole says whether each of the clock's columns has a name of a time already.
func (l *layout) namesClockWhole(names []string) bool {
	for _, i := range l.clock.columns {
		if i >= len(names) || !anyPhrase(clockNames, words(names[i])) {
			return false
		}
	}
	return true
}

// withoutNumbers are names without their numbers where each begins with its own and a mark: 1:Date, 2:Time.
func withoutNumbers(names []string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		rest, found := strings.CutPrefix(n, strconv.Itoa(i+1))
		if out[i] = strings.TrimLeft(rest, ":.)- "); !found || out[i] == rest || out[i] == "" {
			return names
		}
	}
	return out
}

// joinUnits puts units that stand in cells of their own, and what closes a bracket, behind the names before them where
// the header fits the rows then: what parts the cells stood within names as well.
func joinUnits(names []string, width int) []string {
	var out []string
	for i, n := range names {
		unit := unitInCell(n)
		switch last := len(out) - 1; {
		case i > 0 && unit != "" && (len(n) > 1 || n == "%"), i > 0 && strings.LastIndexAny(out[last], "([") > strings.LastIndexAny(out[last], ")]"):
			out[last] += ", " + n
		default:
			out = append(out, n)
		}
	}
	if len(names) <= width || len(out) != width {
		return names
	}
	return out
}

// nearestFilled are the cells of the last row that is not blank.
func nearestFilled(rows []record) [][]byte {
	for i := len(rows) - 1; i >= 0; i-- {
		if !isVacant(rows[i].cells) {
			return rows[i].cells
		}
	}
	return nil
}

// filledColumns counts the columns that hold something in some row.
func (l *layout) filledColumns(rows []record) (n int) {
	for i := range l.width {
		n += one(slices.ContainsFunc(rows, func(r record) bool { return len(trim(r.cells[i])) > 0 }))
	}
	return n
}

// overFilled puts names over the columns that hold something where there are as many of these: what parts the
// cells of the rows stands between them twice.
func (l *layout) overFilled(rows []record, names []string) []string {
	if len(names) == 0 || len(names) >= l.width {
		return names
	}
	out, filled := make([]string, l.width), 0
	for i := range l.width {
		if count(rows, i, func([]byte) bool { return true }) == 0 {
			continue
		}
		if filled < len(names) {
			out[i] = names[filled]
		}
		filled++
	}
	if filled != len(names) {
		return names
	}
	return out
}

// namesLackFirst says whether the names begin at the second column, the first holding the rows' own names: the
// clock's name stands one place too far left.
func (l *layout) namesLackFirst(names []string) bool {
	at := l.clock.columns[0]
	return at > 0 && anyPhrase(clockNames, words(names[at-1])) && (at == len(names) || !anyPhrase(clockNames, words(names[at])))
}

// isUnitsRow says whether more than half of a row's filled cells are units, bare or in brackets.
func isUnitsRow(cells [][]byte) bool {
	units, patterns := 0, 0
	for _, c := range cells {
		s := text(c)
		part := partUnits[strings.ToLower(trimComment(s))]
		if unitInCell(s) != "" && !part {
			units++
			continue
		}
		w := words(s)
		if zoneInName(s) != "" || part {
			patterns++
			continue
		}
		if q, _ := quantityOf(w, ""); len(s) >= shortestWord && (q != Other || anyPhrase(clockNames, w)) {
			return false
		}
		if isTimePattern(s) || s != "" && isMissing(trim(c)) {
			patterns++
		}
	}
	return units > 0 && 2*(units+patterns) >= filledCells(cells)-1 && !hasNumber(cells)
}

// partUnits are what stands for units in such a row besides those that are known: parts of times, lengths, angles.
var partUnits = wordSet("yr", "mo", "dy", "hr", "mn", "yyyy", "yy", "mm", "dd", "hh", "hhmm", "m", "s", "sec", "min", "ft", "mi", "nmi", "deg", "degt")

// shortestWord is from how many letters on a quantity's name is a word and no sign.
const shortestWord = 4

// isTimePattern says whether a cell shows how dates or times are written: letters for their parts, and marks
// between them.
func isTimePattern(s string) bool {
	return strings.ContainsAny(s, ":/.-") && len(strings.Trim(strings.ToLower(s), "yamdjthnis:/.- ")) == 0
}

// unitInCell is the unit a cell of a units row holds.
func unitInCell(cell string) string {
	if unit := unitOf(cell); unit != "" {
		return unit
	}
	if name, inner, found := cutBrackets(cell); found && name == "" {
		return unitOf(inner)
	}
	return ""
}
