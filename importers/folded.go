package importers

import (
	"bytes"
	"slices"
)

// A cell may hold several values with their names, as a program writes an object or its settings, and rows may have
// some names that others lack: then the names say where a value stands.

// folded cuts at a character outside quotes and braces, and takes apart the cells that hold several values.
func folded(delimiter byte) func([]record) splitters {
	outer := partsOutside(delimiter)
	return func(lines []record) splitters {
		return splitParts(func(record []byte, take func([]byte) bool) {
			outer(unescaped(record), func(part []byte) (more bool) {
				more = true
				inner := innerParts(part)
				if inner != nil {
					inner(withoutBraces(part), func(value []byte) bool { more = take(value); return more })
					part = nil // its place stays, under the header's name
				}
				return more && take(part)
			})
		}, lines)
	}
}

// escapes are how quotes and braces of an object are written within a cell in quotes.
var escapes = [][2]string{{`\"`, `"`}, {`""`, `"`}, {`"{`, "{"}, {`}"`, "}"}, {`"'{`, "{"}, {`}'"`, "}"}}

// unescaped is a record whose objects stand as they would outside of a cell.
func unescaped(record []byte) []byte {
	if bytes.IndexByte(record, '{') < 0 {
		return record
	}
	for _, e := range escapes {
		record = bytes.ReplaceAll(record, []byte(e[0]), []byte(e[1]))
	}
	return record
}

// partsOutside parts at one character outside quotes and braces.
func partsOutside(delimiter byte) parts {
	return func(record []byte, take func([]byte) bool) {
		depth, from := 0, 0
		for at := 0; at < len(record); at++ {
			switch c := record[at]; {
			case c == '{':
				depth++
			case c == '}':
				depth--
			case c == '"' && depth == 0:
				if n := bytes.IndexByte(record[at+1:], '"'); n >= 0 {
					at += n + 1
				}
			case c == delimiter && depth <= 0:
				if !take(record[from:at]) {
					return
				}
				from = at + 1
			}
		}
		take(record[from:])
	}
}

// innerDelimiters are what keeps the values of one cell apart.
var innerDelimiters = []byte{',', ';', '&', '|', ' '}

// innerParts is how a cell that holds named values is taken apart; nil when it holds none, or one that is no object.
func innerParts(cell []byte) parts {
	inner := withoutBraces(cell)
	if len(inner) < len(trim(cell)) && trim(cell)[0] == '{' {
		return partsAt(',')
	}
	for _, d := range innerDelimiters {
		values, named := 0, 0
		partsAt(d)(inner, func(part []byte) bool {
			values++
			named += one(hasNamedNumber(part))
			return true
		})
		if values > 1 && 2*named > values {
			return partsAt(d)
		}
	}
	return nil
}

// hasNamedNumber says whether a part is a number behind its name.
func hasNamedNumber(part []byte) bool {
	name, value := named(part)
	return len(name) > 0 && len(name) <= longestName && isAnyNumber(value)
}

// withoutBraces takes quotes and braces off the ends of a cell.
func withoutBraces(cell []byte) []byte {
	cell = unquoted(cell)
	if n := len(cell); n > 1 && cell[0] == '{' && cell[n-1] == '}' {
		return cell[1 : n-1]
	}
	return cell
}

// holdsNamed says whether a cell holds values with their names.
func holdsNamed(cell []byte) bool { return hasNamedNumber(cell) || innerParts(unescaped(cell)) != nil }

// leavesFolded says whether most rows have cells with named values or two in them that a layout does not read.
func (l *layout) leavesFolded(lines []record) bool {
	rows := ofWidth(cut(lines, l.split), l.width)
	for col := range l.width {
		read := l.clock.uses(col) || slices.ContainsFunc(l.columns, func(c column) bool { return c.index == col && c.kind == number && !c.garbled })
		if !read && max(count(rows, col, holdsNamed), count(rows, col, holdsTwo)) > len(rows)/2 {
			return true
		}
	}
	return false
}

// splitParts puts the parts of a record without their brackets and quotes side by side. Where most lines have names in
// them, a value stands where its name does, and what has no name where the others that have none do.
func splitParts(cut parts, lines []record) splitters {
	names := namesOfParts(cut, lines)
	split := func(dst [][]byte, record []byte, limit int) (cells [][]byte, more bool) {
		from, next := len(dst), 0
		dst = slices.Grow(dst, len(names))[:from+len(names)]
		clear(dst[from:])
		cut(record, func(part []byte) bool {
			name, value := named(part)
			if at := placeOf(names, dst[from:], name, next); at >= 0 {
				dst[from+at], next = there(value), at+1
			} else if len(name) == 0 || len(names) == 0 {
				dst = append(dst, value)
			}
			return len(names) > 0 || len(dst)-from <= limit
		})
		kept := min(limit, len(dst)-from)
		return dst[:from+kept], kept < len(dst)-from
	}
	return splitters{plain: split, quoted: split, dressed: true, names: names}
}

// there is a cell that is told from one that is not there.
func there(cell []byte) []byte {
	if cell == nil {
		return []byte{}
	}
	return cell
}

// placeOf is the next place without a value of a name, −1 when there is none.
func placeOf(names []string, cells [][]byte, name []byte, next int) int {
	for i := range names {
		at := (next + i) % len(names)
		if cells[at] == nil && names[at] == string(name) {
			return at
		}
	}
	return -1
}

// opensMore says whether what a line opens begins behind it: what it names is said of all that follows and of no row.
func opensMore(line []byte) bool {
	line = trim(line)
	return bytes.HasSuffix(line, []byte("[")) || bytes.HasSuffix(line, []byte("{"))
}

// isOfWrapper says whether a line of a text that is wrapped opens what follows or is one plain value beside it.
func isOfWrapper(line []byte) bool {
	return opensMore(line) || bytes.HasPrefix(trim(line), []byte(`"`)) && !bytes.ContainsAny(line, "{[")
}

// fewNames is how many names may all stand for values; of more, those that hardly ever come are numbers and the like.
const fewNames = 200

// namesOfParts are the names that parts of the lines have, empty ones with them, in the order in which they come, each
// as often as a line has it but for what few lines have; nil unless half of the lines have names.
func namesOfParts(cut parts, lines []record) (names []string) {
	type nth struct {
		name string
		n    int
	}
	counts := map[nth]int{}
	var order []nth
	filled, with := 0, 0
	wrapped := slices.ContainsFunc(lines, func(r record) bool { return opensMore(r.text) })
	for _, r := range lines {
		if wrapped && isOfWrapper(r.text) {
			continue
		}
		mine := map[string]int{}
		var found []nth
		cut(r.text, func(part []byte) bool {
			name, _ := named(part)
			mine[string(name)]++
			found = append(found, nth{string(name), mine[string(name)]})
			return len(found) <= maxColumns
		})
		filled += one(len(trim(r.text)) > 0)
		if len(mine) == one(mine[""] > 0) {
			continue
		}
		with++
		for _, k := range found {
			if counts[k]++; counts[k] == 1 {
				order = append(order, k)
			}
		}
	}
	if 2*with < filled {
		return nil
	}
	for _, k := range order {
		if len(k.name) <= longestName && (counts[k] > 2 || len(order) <= fewNames) && len(names) <= maxColumns {
			names = append(names, k.name)
		}
	}
	return names
}
