package importers

import (
	"bytes"
	"slices"
)

// The lines a layout is learned from, and their cells under a delimiter on trial.

// record is a line of the head, cut by the delimiter under trial.
type record struct {
	pos   int // where it starts in the head
	line  int
	text  []byte
	cells [][]byte
}

// A layout is learned from the first trialRows lines, and from some runs of lines spread over the rest of the
// head: runs, so that what comes by turns in the file comes in the trial.
const trialRows, trialRuns, runRows = 400, 20, 12

// headRecords cuts the head into records and keeps the trial's share of them.
func headRecords(head []byte, last bool) []record {
	kept := make([]record, 0, trialRows+trialRuns*runRows)
	quoted := bytes.IndexByte(head, '"') >= 0
	stride, line := 0, 1
	for pos := 0; pos < len(head); {
		text, end, lines := nextRecord(head, pos, last, quoted)
		if end == pos {
			break
		}
		kept = append(kept, record{pos: pos, line: line, text: text})
		if len(kept) == trialRows {
			stride = (len(head) - end) / trialRuns
		}
		pos, line = end, line+lines
		if stride == 0 || (len(kept)-trialRows)%runRows > 0 {
			continue
		}
		if next, found := lineEnd(head, min(pos+stride, len(head))); found {
			line += bytes.Count(head[pos:next], newline)
			pos = next
		}
	}
	return kept
}

// occurs says whether a delimiter, where it is one character, stands in any of the lines.
func occurs(delimiter string, lines []record) bool {
	return len(delimiter) > 1 || slices.ContainsFunc(lines, func(r record) bool { return bytes.IndexByte(r.text, delimiter[0]) >= 0 })
}

// cut splits every line into its cells, which share one list.
func cut(lines []record, split splitters) []record {
	out := make([]record, len(lines))
	var room [][]byte // what is left of the list
	for i, r := range lines {
		row, _ := split.quoted(room, r.text, maxColumns+1)
		r.cells = row[:len(row):len(row)]
		if room = row[len(row):]; cap(room) < len(row) {
			room = make([][]byte, 0, len(row)*(len(lines)-i-1))
		}
		out[i] = r
	}
	return out
}

// widths are the numbers of cells worth trying: the four that hold most cells together, and at least two.
func widths(records []record) []int {
	counts := map[int]int{}
	for _, r := range records {
		counts[len(r.cells)]++
	}
	var out []int
	for len(out) < 4 {
		best := 0
		for w, n := range counts {
			if w >= 2 && n > 0 && (best == 0 || w*n > best*counts[best] || w*n == best*counts[best] && w > best) {
				best = w
			}
		}
		if best == 0 {
			return out
		}
		out = append(out, best)
		counts[best] = 0
	}
	return out
}

// ofWidth are the records that have so many cells.
func ofWidth(records []record, width int) (out []record) {
	for _, r := range records {
		if len(r.cells) == width {
			out = append(out, r)
		}
	}
	return out
}

func countOfWidth(records []record, width int) (n int) {
	for _, r := range records {
		n += one(len(r.cells) == width)
	}
	return n
}
