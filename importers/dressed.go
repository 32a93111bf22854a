package importers

import "bytes"

// Rows may come as they lie in a program or a database: in brackets, each cell in single quotes or behind an
// equals sign, or with its name before it; or as a spreadsheet wrote them that took each for one cell: the whole in quotes. Such rows are read when no plain way to cut them makes sense.

// dressedDelimiters are the ways to cut such rows, by the name of what keeps the cells apart.
var dressedDelimiters = []struct {
	name  string
	split splitters
}{
	{",", splitWhole(',')}, {";", splitWhole(';')}, {"\t", splitWhole('\t')},
	{",", splitDressed(',')},
	{";", splitDressed(';')},
	{"\t", splitDressed('\t')},
}

// splitWhole takes the quotes off records that are one cell in quotes, and splits what was in them.
func splitWhole(delimiter byte) splitters {
	plain := splitAt(delimiter)
	split := func(dst [][]byte, record []byte, limit int) ([][]byte, bool) {
		if cell, rest := cutQuoted(record); cell != nil && len(trim(rest)) == 0 {
			record = bytes.ReplaceAll(cell, []byte(`""`), []byte(`"`))
		}
		return plain.quoted(dst, record, limit)
	}
	return splitters{split, split, true}
}

// splitDressed splits at one character outside quotes and undresses the cells.
func splitDressed(delimiter byte) splitters {
	split := func(dst [][]byte, record []byte, limit int) ([][]byte, bool) {
		for {
			end := unquotedIndex(record, delimiter)
			if end < 0 {
				return append(dst, undressed(record)), false
			}
			dst = append(dst, undressed(record[:end]))
			if record = record[end+1:]; len(trim(record)) == 0 || len(dst) == limit {
				return dst, len(trim(record)) > 0
			}
		}
	}
	return splitters{split, split, true}
}

// unquotedIndex is where a character first stands outside quotes, −1 when it does nowhere.
func unquotedIndex(s []byte, c byte) int {
	var open byte
	for i, b := range s {
		switch {
		case open != 0:
			if b == open {
				open = 0
			}
		case b == c:
			return i
		case (b == '"' || b == '\'' || b == '`') && (i == 0 || !isLetter(s[i-1])):
			open = b
		}
	}
	return -1
}

// undressed is a cell without its brackets, its name and its quotes.
func undressed(cell []byte) []byte {
	_, value := named(cell)
	return value
}

// named takes a cell apart into its name, empty when it has none, and its value. What stands before an opening
// bracket that is not closed, and behind a closing one that was not opened, is no part of it.
func named(cell []byte) (name, value []byte) {
	cell = cutOpen(trim(cell))
	for i, c := range cell {
		if c == ' ' {
			continue
		}
		if at := unquotedIndex(cell[i:], ':'); isName(cell[i:], at) {
			return unquoted(cell[i : i+at]), unquoted(cutOpen(trim(cell[i+at+1:])))
		}
		if at := unquotedIndex(cell[i:], '='); isName(cell[i:], at) {
			return unquoted(cell[i : i+at]), unquoted(cell[i+at+1:])
		}
		break
	}
	return nil, unquoted(bytes.TrimPrefix(cell, []byte("=")))
}

// isName says whether what stands before a mark can be a cell's name: it begins with a letter or in quotes, and
// is no date.
func isName(cell []byte, mark int) bool {
	if mark < 1 {
		return false
	}
	first := bytes.Trim(cell[:mark], "\"'` ")
	return len(first) > 0 && (isLetter(first[0]) || first[0] >= 0x80)
}

// cutOpen takes off a cell what ends with an opening bracket that is not closed in it, and what a closing bracket
// begins that was not opened.
func cutOpen(cell []byte) []byte {
	depth, from, to := 0, 0, len(cell)
	for i := len(cell) - 1; i >= 0; i-- {
		switch cell[i] {
		case ')', ']', '}':
			depth++
			if !bytes.ContainsAny(cell[:i], "([{") {
				to, depth = i, 0
			}
		case '(', '[', '{':
			if depth--; depth < 0 {
				from = i + 1
				return trim(cell[from:max(from, to)])
			}
		}
	}
	return trim(cell[from:to])
}

// unquoted takes quotes of any kind off both ends of a cell.
func unquoted(cell []byte) []byte {
	cell = trim(cell)
	if n := len(cell); n > 1 && cell[0] == cell[n-1] && (cell[0] == '"' || cell[0] == '\'' || cell[0] == '`') {
		return trim(cell[1 : n-1])
	}
	return cell
}

// namesInCells are the names that the cells of all rows carry; nil when none does.
func (l *layout) namesInCells(rows []record) []string {
	if len(rows) == 0 {
		return nil
	}
	var out []string
	if l.split.dressed {
		out = l.namesBefore(rows[0].text)
	} else if l.delimiter == "blanks" {
		out = namesBeside(rows, l.clock)
	}
	for _, name := range out {
		if name != "" {
			return out
		}
	}
	return nil
}

// namesBefore are the names before a row's values.
func (l *layout) namesBefore(row []byte) (out []string) {
	for rest := row; ; {
		end := unquotedIndex(rest, l.delimiter[0])
		cell := rest
		if end >= 0 {
			cell = rest[:end]
		}
		name, _ := named(cell)
		out = append(out, text(name))
		if end < 0 {
			return out
		}
		rest = rest[end+1:]
	}
}

// namesBeside are the cells that say the same in all rows and end in a colon or an equals sign, each as the name
// of the cell behind it, with the words before it and the unit that follows.
func namesBeside(rows []record, c *clock) []string {
	out := make([]string, len(rows[0].cells))
	name := ""
	for i, cell := range rows[0].cells {
		same := !c.uses(i) && distinctCells(rows, i) == 1
		switch s := text(cell); {
		case same && hasAnySuffix(s, []string{":", "="}):
			if i+1 < len(out) {
				out[i+1] = joined(name, s[:len(s)-1])
			}
			name = ""
		case same && unitInCell(s) != "" && i > 0 && out[i-1] != "":
			out[i-1] += " (" + s + ")"
		case same && hasLetter(rows[0].cells[i:i+1]):
			name = joined(name, s)
		default:
			name = ""
		}
	}
	return out
}
