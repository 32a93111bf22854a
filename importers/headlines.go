package importers

import (
	"bytes"
	"slices"
	"strings"
)

// The names of columns may stand in several lines: the clock's in one of its own below the others, words of which few
// columns have any below names that all of them have, and the places of columns whose names come again.

// headLines are what stands between the line of the names and the data.
type headLines struct {
	clock  []string // a line with the clock's name and nothing else
	under  []string // words under some of the names
	places []string // places of all columns of values
}

// take says whether a line with such ones above it is one of these, and keeps it.
func (h *headLines) take(l *layout, cells [][]byte, above []record) bool {
	switch {
	case len(cells) != l.width || !maybeNamed(above):
		return false
	case l.namesClockAlone(cells):
		h.clock = texts(cells)
	case l.standsUnder(cells, above):
		h.under = joinedCells(texts(cells), h.under)
	case l.namesPlaces(cells, above):
		h.places = placeNames(texts(cells), text(l.clock.cell(cells, 0)))
	default:
		return false
	}
	return true
}

// namesClockAlone says whether a line holds names of the clock's columns and nothing else.
func (l *layout) namesClockAlone(cells [][]byte) bool {
	for i, c := range cells {
		if len(trim(c)) > 0 && (!l.clock.uses(i) || isAnyNumber(c)) {
			return false
		}
	}
	return l.namesClock(cells)
}

// standsUnder says whether a line of words leaves the clock and columns of values out, and the next full line above it
// names them all.
func (l *layout) standsUnder(cells [][]byte, above []record) bool {
	filled := filledCells(cells)
	if filled == 0 || len(l.clock.cell(cells, 0)) > 0 || hasNumber(cells) || filled+len(l.clock.columns) >= l.width {
		return false
	}
	for i := len(above) - 1; i >= 0; i-- {
		if full := above[i].cells; len(full) == l.width && filledCells(full) == l.width {
			return l.namesClock(full) && !hasNumber(full)
		}
	}
	return false
}

// namesPlaces says whether a line holds a word for a place over the clock and, for every column of values, a word or
// a number, which tell apart columns whose names in the line above are the same.
func (l *layout) namesPlaces(cells [][]byte, above []record) bool {
	names := nearestFilled(above)
	corner := words(text(l.clock.cell(cells, 0)))
	if len(names) != l.width || filledCells(names) < l.width || hasNumber(names) || !l.namesClock(names) || !anyPhrase(placeNouns, corner) || len(corner) > 3 {
		return false
	}
	seen, both := map[string]bool{}, map[string]bool{}
	for i, c := range cells {
		if l.clock.uses(i) {
			continue
		}
		c = trim(c)
		if len(c) == 0 || isAnyNumber(c) && countDigits(c) < len(c) || both[string(names[i])+"\x00"+string(c)] {
			return false
		}
		seen[string(names[i])], both[string(names[i])+"\x00"+string(c)] = true, true
	}
	return len(seen) < len(both)
}

// placeNouns are the stems of words for a place, which may stand before the places of a line.
var placeNouns = append([]string{"plot*", "block*", "parcel*", "parzelle*", "parcela*", "field*", "hive*", "treatment*", "position*"}, deviceNames...)

// placeNames are the places of a line, those that are but numbers with the word before them.
func placeNames(row []string, noun string) []string {
	for i, name := range row {
		if isAnyNumber([]byte(name)) {
			row[i] = joined(strings.TrimRight(noun, ": "), name)
		}
	}
	return row
}

// joinedCells are the cells of two lines, the upper one's first.
func joinedCells(upper, lower []string) []string {
	if lower == nil {
		return upper
	}
	out := make([]string, len(upper))
	for i := range upper {
		out[i] = joined(upper[i], lower[i])
	}
	return out
}

// takeHeader are the names in a line and in those below it; what stands above it names groups of columns.
func (l *layout) takeHeader(r record, above []record, h headLines) []string {
	l.header = bytes.Clone(r.text)
	cells := r.cells
	if h.clock != nil && len(cells) == l.width {
		cells = slices.Clone(cells) // what stands over the clock's name names the row
		for _, i := range l.clock.columns {
			cells[i] = nil
		}
	}
	l.groups = l.groupNames(l.spread(nearestFilled(above)), cells)
	if h.clock != nil && l.groups != nil {
		l.addLevels(above, cells)
	}
	names := l.alignNames(texts(cells))
	for _, row := range [][]string{h.clock, h.under} {
		if len(names) == len(row) {
			names = joinedCells(names, row)
		}
	}
	l.places = h.places
	return names
}

// addLevels puts the words of further full lines above the groups before these, as a table has that was turned.
func (l *layout) addLevels(above []record, header [][]byte) {
	above = slices.DeleteFunc(slices.Clone(above), func(r record) bool { return isVacant(r.cells) })
	for i := len(above) - 2; i >= 0 && filledCells(above[i].cells)+len(l.clock.columns) >= l.width; i-- {
		level := l.groupNames(above[i].cells, header)
		if level == nil {
			return
		}
		l.groups = joinedCells(level, l.groups)
	}
}

// placeOf is the logger that a line below the header names over a column; "" where there is none.
func (l *layout) placeOf(c column) string {
	if c.index < len(l.places) {
		return l.places[c.index]
	}
	return ""
}
