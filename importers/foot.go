package importers

import (
	"bytes"
	"strings"

	"thawbook/analysis/series"
)

// Lines without a readable time: rows that are lost, the header again, or the foot of the table.

// badLine is a line without a readable time; whether it is a row or the table's foot shows only later.
type badLine struct {
	line, column int
	text         string
	record       string // the line from its start
	foot         bool
	above        bool // it can stand above the next table
	titled       bool // it stands above the header that came again
	header       bool // it is the header that came again
}

// maxPending is how many lines without a time may turn out to be the foot of the table.
const maxPending = 200

// endOfText are the blanks and the mark that old programs end a text with.
const endOfText = " \t\x1A"

// longestTitle is how many bytes of a line are kept in case it is a title.
const longestTitle = 100

// badRow deals with a line whose time can't be read: blank, the header again, the table's foot, or a row
// that is lost.
func (s *scan) badRow(record []byte) {
	if isVacant(s.cells) || len(bytes.Trim(record, endOfText)) == 0 {
		return
	}
	same := len(s.header) > 0 && bytes.Equal(record, s.header)
	if s.endsAt(record, same) {
		return
	}
	if same {
		s.leaveTitles()
		s.pending = append(s.pending, badLine{header: true})
		return
	}
	column := s.clock.columns[0]
	if column > 0 && isComment(record) {
		return
	}
	bad := badLine{line: s.line, column: column + 1, foot: true, record: string(record[:min(len(record), longestTitle)])}
	if column < len(s.cells) {
		bad.text = clip(text(s.cells[column]))
		bad.foot = s.isFoot(trim(s.cells[column]))
	}
	if start := trim(s.cells[0]); len(start) > 0 && !isDigit(start[0]) {
		bad.above = !beginsFoot(start)
	}
	if s.pending = append(s.pending, bad); len(s.pending) > maxPending {
		s.settle(false)
	}
}

// footWords begin the lines of statistics and the closing words below a table, lower case.
var footWords = []string{"min", "max", "mean", "av", "mittel", "durchschn", "medel", "keski", "kesk", "moy", "prom", "med", "std", "sum", "statist", "total", "count", "anzahl", "antal", "end", "ende", "slut", "fin", "eof", "#", "---", "==="}

// beginsFoot says whether a cell begins with a word that closes tables.
func beginsFoot(cell []byte) bool {
	cell = trim(cell)
	return len(cell) > 0 && !isDigit(cell[0]) && hasAnyPrefix(strings.ToLower(text(cell)), footWords)
}

// isComment says whether a line is none of the table's wherever the time stands in its rows.
func isComment(line []byte) bool { return len(line) > 1 && line[0] == '#' && !isDigit(line[1]) }

// isFoot says whether a line without a time can belong to the foot of the table: a word that closes tables
// where the time should be, or any word there or at the start of a line without values.
func (s *scan) isFoot(cell []byte) bool {
	if len(cell) == 0 {
		cell = trim(s.cells[0])
	}
	if len(cell) == 0 || isDigit(cell[0]) {
		return false
	}
	if beginsFoot(cell) {
		return true
	}
	for _, c := range s.columns {
		if c.index < len(s.cells) && !isVacant(s.cells[c.index:c.index+1]) {
			return false
		}
	}
	return true
}

// settle counts the pending lines as rows without a time; at the end of the text those that look like the
// foot of a table are not rows.
func (s *scan) settle(atEnd bool) {
	for _, bad := range s.pending {
		if bad.header {
			continue
		}
		if bad.foot && (atEnd || bad.titled || beginsFoot([]byte(bad.text))) {
			s.notes.add(series.Remark{Code: RemarkFoot, Line: bad.line, Args: []string{bad.text}})
			continue
		}
		s.rows++
		s.badTime++
		s.notes.add(series.Remark{Code: RemarkBadTime, Line: bad.line, Column: bad.column, Args: []string{bad.text}})
	}
	s.pending = s.pending[:0]
}
