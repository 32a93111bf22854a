package desk

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode/utf8"

	"thawbook/app/engine"
)

// FileHead is the beginning of a file's table as it stands there, cut into its columns.
type FileHead struct {
	Columns []HeadColumn
	Rows    []HeadRow
	More    string // columns that are not shown, in words
}

// HeadColumn is a column with what it was recognised as; What is "" where it is not used.
type HeadColumn struct {
	Number int // counted from 1
	What   string
}

// HeadRow is a line of the file; Data says that it is a row of readings.
type HeadRow struct {
	Line  int
	Cells []string
	Data  bool
}

// Of a head so many columns are shown at most, as many as have room in a line of so many letters with so many between two, and
// of a cell so many letters; a column that is not used makes do with few.
const headColumns, lineRunes, betweenRunes, cellRunes, fewRunes = 10, 96, 3, 28, 8

// headOf cuts the first lines of a file into the columns that were recognised.
func headOf(f engine.File, lines []TextLine) FileHead {
	if f.Export == nil {
		return plainHead(lines)
	}
	what := columnWords(f)
	if f.Export.Layout.Objects {
		h := plainHead(lines)
		h.name(what)
		return h
	}
	width := 0
	cut, data := make([][]string, len(lines)), [][]string{}
	for i, l := range lines {
		cut[i] = cellsOf(l.Text, f.Export.Layout.Delimiter)
		width = max(width, len(cut[i]))
		if l.Number >= f.Export.Layout.FirstDataLine {
			data = append(data, cut[i])
		}
	}
	shown := shownColumns(what, width, func(c int) int { return lettersOf(what[c], data, c) })
	h := FileHead{}
	for _, c := range shown {
		h.Columns = append(h.Columns, HeadColumn{c, what[c]})
	}
	for i, l := range lines {
		if strings.TrimSpace(l.Text) == "" {
			continue
		}
		row := HeadRow{Line: l.Number, Data: l.Number >= f.Export.Layout.FirstDataLine}
		for _, c := range shown {
			row.Cells = append(row.Cells, cellAt(cut[i], c))
		}
		h.Rows = append(h.Rows, row)
	}
	if n := width - len(shown); n > 0 {
		h.More = fmt.Sprintf("%d more %s not shown.", n, oneOrMany(n, "column is", "columns are"))
	}
	return h
}

// plainHead shows the lines of a file that could not be read, uncut.
func plainHead(lines []TextLine) (h FileHead) {
	if len(lines) == 0 {
		return h
	}
	h.Columns = []HeadColumn{{Number: 1}}
	for _, l := range lines {
		h.Rows = append(h.Rows, HeadRow{Line: l.Number, Cells: []string{clipped(l.Text, 120)}})
	}
	return h
}

// name says over lines that are not cut what was recognised in them.
func (h FileHead) name(what map[int]string) {
	var words []string
	for _, c := range slices.Sorted(maps.Keys(what)) {
		if !slices.Contains(words, what[c]) {
			words = append(words, what[c])
		}
	}
	if len(h.Columns) > 0 {
		h.Columns[0].What = listed(words)
	}
}

// columnWords say what a file's columns were recognised as, by their numbers.
func columnWords(f engine.File) map[int]string {
	out := map[int]string{}
	loggers := map[int]map[string]bool{}
	for _, s := range f.Export.Series {
		if loggers[s.ColumnIndex] == nil {
			loggers[s.ColumnIndex] = map[string]bool{}
		}
		loggers[s.ColumnIndex][s.Logger] = true
	}
	several := len(loggerNames(f)) > 1
	for _, s := range f.Export.Series {
		word := quantityWords[string(s.Quantity)]
		if word != "" && several && len(loggers[s.ColumnIndex]) == 1 {
			word += ", " + s.Logger
		}
		if before := out[s.ColumnIndex]; word != "" && before != "" && !strings.Contains(before, word) {
			word = before + " or " + word
		}
		out[s.ColumnIndex] = cmp.Or(word, out[s.ColumnIndex])
	}
	if hours := f.Export.Layout.Hours; len(hours) > 0 {
		for _, c := range hours[1:] {
			out[c] = out[hours[0]]
		}
	}
	for _, c := range f.Export.Layout.Clock.Columns {
		out[c] = "time"
	}
	for c, word := range out {
		if word == "" {
			delete(out, c)
		}
	}
	return out
}

// shownColumns are the recognised columns and, as far as there is room, the others, in the file's order; letters is how many a
// column takes.
func shownColumns(what map[int]string, width int, letters func(c int) int) (out []int) {
	room := lineRunes
	for _, recognised := range []bool{true, false} {
		for c := 1; c <= width && len(out) < headColumns; c++ {
			if (what[c] != "") != recognised {
				continue
			}
			if room -= letters(c) + betweenRunes; room < 0 && len(out) > 1 {
				break
			}
			out = append(out, c)
		}
	}
	slices.Sort(out)
	return out
}

// lettersOf is how many letters a column takes that was recognised as something, or as nothing: the words above it and its cells
// in some rows.
func lettersOf(what string, rows [][]string, column int) int {
	most := 0
	for _, cells := range rows {
		most = max(most, utf8.RuneCountInString(cellAt(cells, column)))
	}
	if what == "" {
		return min(most, fewRunes)
	}
	return max(most, utf8.RuneCountInString(what))
}

// cellsOf cuts a line as the layout has it.
func cellsOf(text, delimiter string) (out []string) {
	if len(delimiter) != 1 {
		return strings.Fields(text)
	}
	start, quoted := 0, false
	for i := 0; i <= len(text); i++ {
		switch {
		case i == len(text), text[i] == delimiter[0] && !quoted:
			out = append(out, strings.Trim(strings.TrimSpace(text[start:i]), `"`))
			start = i + 1
		case text[i] == '"':
			quoted = !quoted
		}
	}
	return out
}

func cellAt(cells []string, column int) string {
	if column > len(cells) {
		return ""
	}
	return clipped(cells[column-1], cellRunes)
}

// clipped is a text cut to so many letters.
func clipped(text string, most int) string {
	letters := []rune(text)
	if len(letters) <= most {
		return text
	}
	return string(letters[:most-1]) + "…"
}
