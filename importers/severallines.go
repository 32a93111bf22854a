package importers

import "bytes"

// What programs hand to one another holds a reading over several lines: objects and lists, or a time on a line of its own.
// Such text is no table, and refused for that.

// Of the lines, so many of ten are values with their names, brackets or dashes; each name comes so often at least; and
// a line of its own has at least so many digits of a time.
const namedOfTen, timesNamed, stampDigits = 8, 3, 8

// overSeveralLines says whether a file's lines hold each reading over several.
func overSeveralLines(lines []record) bool {
	filled, pairs, marks, stamps := 0, 0, 0, 0
	names := map[string]bool{}
	for _, r := range lines {
		text := bytes.Trim(r.text, " \t,-")
		if len(text) == 0 {
			continue
		}
		filled++
		if name, value := named(text); len(name) > 0 && len(name) <= longestName && len(value) > 0 && !bytes.ContainsAny(value, ";\t|") {
			pairs++
			names[string(name)] = true
		}
		marks += one(len(bytes.Trim(text, "[]{}")) == 0)
		stamps += one(isStampAlone(text))
	}
	objects := 10*(pairs+marks+stamps) >= namedOfTen*filled && pairs >= timesNamed*len(names) && pairs > 0
	return objects || stamps > 1 && 2*stamps <= filled+1 && 10*stamps >= filled
}

// isStampAlone says whether a line is a date with its time, perhaps in brackets, and nothing else.
func isStampAlone(text []byte) bool {
	text = bytes.Trim(text, "[]")
	digits := 0
	for _, c := range text {
		digits += one(isDigit(c))
	}
	return digits >= stampDigits && bytes.IndexByte(text, ':') > 0 && len(bytes.Trim(text, "0123456789:-/. TZ")) == 0 && len(bytes.Fields(text)) <= 2
}
