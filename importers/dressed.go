package importers

import (
	"bytes"
	"slices"
	"strings"
)

// Rows may come as they lie in a program or a database: in brackets, each cell in single quotes or behind an
// equals sign, or with its name before it; or as a spreadsheet wrote them that took each for one cell: the whole in quotes. Such rows are read when no plain way to cut them makes sense.

// dressedDelimiters are the ways to cut such rows, by the name of what keeps the cells apart.
var dressedDelimiters = []struct {
	name  string
	split func(lines []record) splitters
}{
	{",", wholly(',')}, {";", wholly(';')}, {"\t", wholly('\t')},
	{",", inParts(',')}, {";", inParts(';')}, {"\t", inParts('\t')},
	{",", folded(',')}, {";", folded(';')}, {"\t", folded('\t')}, {"|", folded('|')},
	{",", pastDates},
	{",", halved(',')}, {";", halved(';')}, {"\t", halved('\t')},
	{"blanks", inWords}, {"blanks", folded(' ')},
}

// wholly is splitWhole for any lines.
func wholly(delimiter byte) func([]record) splitters {
	return func([]record) splitters { return splitWhole(delimiter) }
}

// inParts cuts at a character outside quotes.
func inParts(delimiter byte) func([]record) splitters {
	return func(lines []record) splitters { return splitParts(partsAt(delimiter), lines) }
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
	return splitters{plain: split, quoted: split, dressed: true}
}

// inWords cuts at blanks outside quotes.
func inWords(lines []record) splitters { return splitParts(partsOfWords, lines) }

// parts hands out what a record is made of, one after the other, until take wants no more.
type parts func(record []byte, take func(part []byte) (more bool))

// partsAt parts at one character outside quotes; at blanks it is any number of them.
func partsAt(delimiter byte) parts {
	return func(record []byte, take func([]byte) bool) {
		for more := true; more; {
			if delimiter == ' ' {
				record = bytes.TrimLeft(record, " \t")
			}
			end := unquotedIndex(record, delimiter)
			if end < 0 {
				take(record)
				return
			}
			more = take(record[:end])
			if record = record[end+1:]; len(trim(record)) == 0 {
				return
			}
		}
	}
}

// partsOfWords parts at blanks outside quotes, but for those within a date whose month is a word, and its time, and those
// behind a name with its colon or equals sign.
var partsOfWords = partsHeld(' ',
	func(part []byte) bool { return isMonthWord(part) || isNameAlone(part) },
	func(held, part []byte) bool { return continuesDate(held, part) || isNameAlone(held) && hasNoName(part) })

// partsHeld parts at a character outside quotes, but holds a part that begins something back as long as others go on with
// it: they are one.
func partsHeld(delimiter byte, begins func(part []byte) bool, goesOn func(held, part []byte) bool) parts {
	return func(record []byte, take func([]byte) bool) {
		from, to := 0, 0 // what is held back
		more := true
		partsAt(delimiter)(record, func(part []byte) bool {
			at := cap(record) - cap(part)
			on := to > from && goesOn(record[from:to], part)
			if !on && to > from {
				more = take(record[from:to])
				to = from
			}
			switch {
			case on:
				to = at + len(part)
			case begins(part):
				from, to = at, at+len(part)
			case more:
				more = take(part)
			}
			return more
		})
		if more && to > from {
			take(record[from:to])
		}
	}
}

// pastDates cuts at commas outside quotes that are no date's: Saturday, November 8, 2025 06:00.
func pastDates(lines []record) splitters {
	s := splitParts(partsPastDates, lines)
	s.regrouped = true
	return s
}

// partsPastDates parts at commas outside quotes, but for those of a date whose month is a word.
var partsPastDates = partsHeld(',', isDateHead, goesOnPastComma)

// weekdays are how those begin that stand before a comma and the rest of a date; only English puts one before the year too.
var weekdays = wordSet("mon", "tue", "wed", "thu", "fri", "sat", "sun")

// isDateHead says whether a cell is what stands before a comma of a date: a weekday, or a month's name and the day.
func isDateHead(cell []byte) bool {
	switch w := bytes.Fields(cell); len(w) {
	case 1:
		return len(w[0]) >= 3 && len(w[0]) <= len("wednesday") && weekdays[string(lowerASCII(nil, w[0][:3]))]
	case 2:
		return isMonthWord(w[0]) && isDayNumber(w[1]) || isDayNumber(w[0]) && isMonthWord(w[1])
	}
	return false
}

func isDayNumber(word []byte) bool { return len(word) <= 2 && countDigits(word) == len(word) }

// goesOnPastComma says whether a cell goes on with a date: a month's name and the day behind a weekday, the year behind these.
func goesOnPastComma(date, cell []byte) bool {
	w := bytes.Fields(cell)
	if len(bytes.Fields(date)) == 1 {
		return len(w) == 2 && isDateHead(cell)
	}
	return len(w) > 0 && len(w[0]) == 4 && countDigits(w[0]) == 4
}

// halved cuts at a character, and at the stroke in the cells of columns most of which hold two values: 4.5 °C / 82 %.
func halved(delimiter byte) func([]record) splitters {
	plain := splitAt(delimiter)
	return func(lines []record) splitters {
		two := columnsOfTwo(cut(lines, plain))
		split := func(dst [][]byte, record []byte, limit int) ([][]byte, bool) {
			whole, more := plain.quoted(nil, record, limit)
			for col, cell := range whole {
				if slices.Contains(two, col) {
					first, second, cuts := bytes.Cut(cell, []byte("/"))
					if dst = append(dst, trim(first)); cuts || isAnyNumber(cell) {
						cell = trim(second)
					}
				}
				dst = append(dst, cell)
			}
			return dst, more
		}
		return splitters{plain: split, quoted: split, dressed: true, regrouped: true}
	}
}

// columnsOfTwo are the columns most of whose filled cells are two values with a stroke between them.
func columnsOfTwo(rows []record) (two []int) {
	filled, halves := map[int]int{}, map[int]int{}
	for _, r := range rows {
		for col, cell := range r.cells {
			filled[col] += one(len(trim(cell)) > 0)
			halves[col] += one(holdsTwo(cell))
		}
	}
	for col, n := range halves {
		if 2*n > filled[col] {
			two = append(two, col)
		}
	}
	return two
}

// holdsTwo says whether a cell is two values with a stroke between them.
func holdsTwo(cell []byte) bool {
	first, second, _ := bytes.Cut(cell, []byte("/"))
	return isMeasured(first) && isMeasured(second)
}

// isMeasured says whether a text is a number, with a unit behind it or without one.
func isMeasured(text []byte) bool {
	number := bytes.TrimRightFunc(trim(text), func(r rune) bool { return r != '.' && r != ',' && (r < '0' || r > '9') })
	return isAnyNumber(number)
}

// isNameAlone says whether a word is a name whose value stands behind the next blank.
func isNameAlone(word []byte) bool {
	return len(word) > 1 && isLetter(word[0]) && hasAnySuffix(string(word), []string{":", "="})
}

// hasNoName says whether a word is a value without its name.
func hasNoName(word []byte) bool {
	name, _ := named(word)
	return name == nil
}

// isMonthWord says whether a word can be nothing but a month's short or full name.
func isMonthWord(word []byte) bool {
	word = bytes.TrimLeft(word, "[(")
	_, ok := monthOf(word)
	return ok && len(word) >= 3 && len(word) <= 9 && letters(word) == len(word)
}

// continuesDate says whether a word goes on with what began with a month's name: the day, the time and the year.
func continuesDate(date, word []byte) bool {
	word = bytes.TrimRight(word, ",])")
	n := countDigits(word)
	if n == len(word) {
		return n == 4 || n > 0 && n <= 2 && len(bytes.Fields(date)) == 1
	}
	return n > 0 && bytes.IndexByte(word, ':') == n && isTimeOfDay(word, false)
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

// named takes a cell apart into its name, empty when it has none, and its value. What stands before an opening
// bracket that is not closed, and behind a closing one that was not opened, is no part of it, but for the name of an object
// of which it is the value.
func named(cell []byte) (name, value []byte) {
	name, value = namedWithin(cutOpen(trim(cell)))
	if ownValues[strings.ToLower(string(name))] {
		if around := objectName(cell); around != nil {
			name = around
		}
	}
	return name, value
}

// ownValues are the names of what an object is the value of, lower case.
var ownValues = wordSet("value", "val", "v", "reading")

// objectName is the name before the last brace of a cell, in quotes with a colon; nil where there is none.
func objectName(cell []byte) []byte {
	before := trim(cell[:max(0, bytes.LastIndexByte(cell, '{'))])
	before, found := bytes.CutSuffix(before, []byte(":"))
	before, closed := bytes.CutSuffix(trim(before), []byte(`"`))
	if from := bytes.LastIndexByte(before, '"'); found && closed && from >= 0 {
		return before[from+1:]
	}
	return nil
}

// namedWithin is named for a cell without brackets around it.
func namedWithin(cell []byte) (name, value []byte) {
	for i, c := range cell {
		if c == ' ' {
			continue
		}
		if at := unquotedIndex(cell[i:], ':'); isName(cell[i:], at) {
			return unquoted(behindDash(cell[i : i+at])), unquoted(cutOpen(trim(cell[i+at+1:])))
		}
		if at := unquotedIndex(cell[i:], '='); isName(cell[i:], at) {
			return unquoted(behindDash(cell[i : i+at])), unquoted(bytes.TrimRight(cell[i+at+1:], "/>,;"))
		}
		break
	}
	return nil, unquoted(bytes.TrimPrefix(cell, []byte("=")))
}

// isName says whether what stands before a mark can be a cell's name: it begins with a letter or in quotes, and does
// not end with the hour of a time.
func isName(cell []byte, mark int) bool {
	if mark < 1 || isHour(cell[:mark], cell[mark:]) {
		return false
	}
	first := bytes.Trim(behindDash(cell[:mark]), "\"'` ")
	return len(first) > 0 && (isLetter(first[0]) || first[0] >= 0x80)
}

// behindDash is what stands behind a dash between blanks: a program's log has its own words before that.
func behindDash(name []byte) []byte {
	if at := bytes.LastIndex(name, []byte(" - ")); at >= 0 {
		return name[at+3:]
	}
	return name
}

// isHour says whether a colon stands between the hour, behind a blank, and the minute of a time.
func isHour(before, from []byte) bool {
	hour := before[bytes.LastIndexByte(before, ' ')+1:]
	minutes := countDigits(from[1:])
	return from[0] == ':' && len(hour) < len(before) && len(hour) > 0 && countDigits(hour) == len(hour) && minutes == 2 && (len(from) == 3 || from[3] != '.')
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

// namesInCells are the names that the cells of all rows carry, over those of the header; nil when there are none.
func (l *layout) namesInCells(rows []record, header []string) []string {
	out := l.split.names
	if header == nil && l.delimiter == "blanks" && !l.split.dressed && len(rows) > 0 {
		out = namesBeside(rows, l.clock)
	}
	if !slices.ContainsFunc(out, func(name string) bool { return name != "" }) {
		return header
	}
	return append(slices.Clone(out), header[min(len(out), len(header)):]...)
}

// namesAir says whether a word is one for a temperature or a humidity.
func namesAir(word string) bool {
	q, _ := quantityOf(words(word), "")
	return isTemperature(q) || q == RelativeHumidity
}

// namesBeside are the cells that say the same in all rows and end in a colon or an equals sign, or say what air is, each
// as the name of the cell behind it, with the words before it and the unit that follows.
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
		case same && i+1 < len(out) && isAnyNumber(rows[0].cells[i+1]) && namesAir(s):
			out[i+1], name = s, ""
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
