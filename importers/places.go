package importers

import (
	"bytes"
	"unicode/utf8"
)

// Printed tables part their cells by blanks and print blanks where there is no value. A row with fewer cells than others
// then says by their places in the line which are not there.

// place is where the cells of a column lie in their lines.
type place struct{ from, to int }

// widestLine is how many bytes a printed line has at most.
const widestLine = 1024

// inPlaces cuts at blanks, and puts cells under those of other lines where lines of numbers differ in how many they have;
// no splitter is returned where they don't, or where nothing keeps their columns apart.
func inPlaces(lines []record) (split splitters, ok bool) {
	var taken [widestLine + 1]bool
	counts := map[int]bool{}
	for _, r := range cut(lines, splitters{plain: splitBlanks, quoted: splitBlanks}) {
		if countNumbers(r.cells) < 2 || !isDigit(trim(r.text)[0]) {
			continue
		}
		if !hasPlaces(r.text) || len(r.text) > widestLine {
			return split, false
		}
		counts[len(r.cells)] = true
		for i, c := range r.text {
			taken[i] = taken[i] || c != ' '
		}
	}
	var places []place
	for i := range widestLine {
		if taken[i] && (i == 0 || !taken[i-1]) {
			places = append(places, place{from: i})
		}
		if taken[i] && !taken[i+1] {
			places[len(places)-1].to = i + 1
		}
	}
	return placed(splitBlanks, places, nil), len(counts) > 1 && len(places) > 1
}

// placeCells puts the cells of rows with blanks for values under those of the others, where the columns of the others
// keep apart.
func (l *layout) placeCells(lines []record) {
	if l.delimiter != "blanks" || l.split.dressed || l.split.placed {
		return
	}
	if places := placesOf(l.timed(ofWidth(cut(lines, l.split), l.width)), l.width); places != nil {
		l.split = placed(splitBlanks, places, l.clock)
	}
}

// placed puts cells that are fewer than the places under these, where a clock reads them then.
func placed(plain splitter, places []place, c *clock) splitters {
	split := func(dst [][]byte, record []byte, limit int) ([][]byte, bool) {
		from := len(dst)
		cells, more := plain(dst, record, max(limit, len(places)))
		if !more && len(cells)-from < len(places) && hasPlaces(record) {
			if under := cellsUnder(places, record, cells[from:]); under != nil && (c == nil || c.canRead(under)) {
				cells = append(cells[:from], under...)
			}
		}
		kept := min(limit, len(cells)-from)
		return cells[:from+kept], more || kept < len(cells)-from
	}
	return splitters{plain: split, quoted: split, placed: true}
}

// canRead says whether cells have a time for a clock.
func (c *clock) canRead(cells [][]byte) bool {
	_, _, ok := c.read(c, cells)
	return ok
}

// hasPlaces says whether bytes stand where they are seen in a line, and cells are as they are printed.
func hasPlaces(line []byte) bool { return !bytes.ContainsAny(line, "\t\"") }

// placesOf are the places of the cells of rows that have one in every column; nil where those of two columns meet.
func placesOf(rows []record, width int) []place {
	out := widestPlaces(rows, width)
	for i := 1; i < len(out); i++ {
		if out[i-1].to >= out[i].from {
			return nil
		}
	}
	return out
}

// widestPlaces are where the cells of a column lie in any of the rows, which have one in every column.
func widestPlaces(rows []record, width int) []place {
	var out []place
	for _, r := range rows {
		if !hasPlaces(r.text) {
			return nil
		}
		for i, cell := range r.cells {
			p := placeOfCell(r.text, cell)
			if len(out) < width {
				out = append(out, p)
			} else {
				out[i] = place{min(out[i].from, p.from), max(out[i].to, p.to)}
			}
		}
	}
	return out
}

// standingOver puts fewer cells of a line than the rows have over the columns that most of each stands over; nil where
// one stands over none, or two over one. A sign may take several bytes.
func (l *layout) standingOver(r record, rows []record) [][]byte {
	places := widestPlaces(rows, l.width)
	if len(places) == 0 || len(r.cells) >= l.width || !hasPlaces(r.text) {
		return nil
	}
	out := make([][]byte, l.width)
	for _, cell := range r.cells {
		p := placeOfCell(r.text, cell)
		p = place{utf8.RuneCount(r.text[:p.from]), utf8.RuneCount(r.text[:p.to])}
		over, most := -1, 0
		for i, of := range places {
			if shared := min(p.to, of.to) - max(p.from, of.from); shared > most {
				over, most = i, shared
			}
		}
		if over < 0 || out[over] != nil {
			return nil
		}
		out[over] = cell
	}
	return out
}

// placeOfCell is where a cell that is a part of a line begins and ends in it.
func placeOfCell(line, cell []byte) place {
	at := cap(line) - cap(cell)
	return place{at, at + len(cell)}
}

// cellsUnder are the cells of a line under the columns they stand in, with empty ones between; nil when one stands in
// none, or in several.
func cellsUnder(places []place, line []byte, cells [][]byte) [][]byte {
	out := make([][]byte, len(places))
	at := 0
	for _, cell := range cells {
		p := placeOfCell(line, cell)
		for at < len(places) && places[at].to <= p.from {
			at++
		}
		if at == len(places) || p.to <= places[at].from || at+1 < len(places) && places[at+1].from < p.to {
			return nil
		}
		out[at] = cell
		at++
	}
	return out
}
