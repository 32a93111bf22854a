package importers

import (
	"bytes"
	"math"
)

// How numbers are dressed: signs, comparison marks, thousands marks and units that stand in a number's cell.
// Each is a row of a table.

// minusSigns are other ways to print a minus before a number: U+2212, the en dash, and the en dash of
// Windows-1252.
var minusSigns = [][]byte{[]byte("\u2212"), []byte("\u2013"), {0x96}}

// ledgerSigns are what stands before and behind a number below nought as ledgers print it: brackets, or the minus
// behind it.
var ledgerSigns = []struct{ before, behind string }{{"(", ")"}, {"", "-"}, {"", "\u2212"}, {"", "\u2013"}, {"", "\x96"}}

// comparisons are the marks before a number that is the end of what the instrument can tell, longest first.
var comparisons = [][]byte{[]byte("<="), []byte(">="), []byte("\u2264"), []byte("\u2265"), []byte("<"), []byte(">")}

// thousandsMarks may stand between groups of three digits: the mark of the other kind, apostrophes, and blanks
// of every width, as UTF-8 and as Windows-1252.
var thousandsMarks = [][]byte{[]byte("."), []byte(","), []byte("'"), []byte("\u2019"), {0x92}, []byte(" "), []byte("\u00a0"), []byte("\u2009"), []byte("\u202f"), {0xA0}}

// spaces are the blanks of thousandsMarks.
var spaces = thousandsMarks[5:]

// gluedUnits are what may stand behind a number in its cell, lower case and without blanks, and the unit it
// says; a mark that grades the number says none.
var gluedUnits = map[string]string{
	"%rh": "%RH", "%": "percent", "\uff05": "percent", "%rf": "%RH", "%hr": "%RH", "%r.h": "%RH", "%r.h.": "%RH", "%rel": "%RH",
	"*c": "degC", "*f": "degF", "\u00b0c": "degC", "\u00b0f": "degF", "\xb0c": "degC", "\xb0f": "degF", "\u00bac": "degC", "\u00baf": "degF", "\xbac": "degC", "\xbaf": "degF",
	"\u02dac": "degC", "\u02daf": "degF", "\u2103": "degC", "\u2109": "degF", "c": "degC", "f": "degF", "degc": "degC", "degf": "degF",
	"*": "", "#": "", ")": "", "]": "", "!": "", "s": "", "e": "", "r": "", "q": "", "i": "", "p": "", "pct": "percent",
	"\u00b0": "", "\xb0": "", "\u00ba": "", "\xba": "", "\u02da": "", "deg": "",
	"ppm": "ppm", "lux": "lux", "lx": "lux", "w": "W", "kw": "kW", "kwh": "kWh", "ma": "mA", "v": "V", "mv": "mV", "hpa": "hPa", "kpa": "kPa",
}

// numberInText reads a number that is padded, carries another minus sign or a ledger's, a comparison or thousands
// marks, or has its unit glued on.
func numberInText(cell []byte, mark byte) (v float64, decimals int, unit string, ok bool) {
	cell = trim(cell)
	if v, decimals, ok = parseNumber(cell, mark); ok {
		return v, decimals, "", true
	}
	if v, ok = gradedTenths(cell); ok {
		return v, 1, "", true
	}
	cell = cutComparison(cutWrap(cutSpread(firstOfUnits(cell, mark))))
	digits, negative := cutLedgerSign(cell)
	if !negative {
		cell, unit = cutGluedUnit(cell, mark)
		if v, decimals, ok = parseNumber(cell, mark); ok {
			return v, decimals, unit, true
		}
		digits, negative = cutSign(cell)
	}
	if len(digits) == 0 || !isDigit(digits[0]) && digits[0] != mark {
		return 0, 0, unit, false
	}
	if v, decimals, ok = parseNumber(digits, mark); !ok {
		v, decimals, ok = groupedNumber(digits, mark)
	}
	if negative {
		v = -v
	}
	return v, decimals, unit, ok
}

// gradedTenths reads a temperature as the world's weather stations are archived: a sign, four digits that are tenths of a
// degree, the first of them 0, a comma and one character that grades it; +9999 is none. (National Centers for Environmental
// Information, Federal Climate Complex Data Documentation for Integrated Surface Data: AIR-TEMPERATURE-OBSERVATION; from
// memory.)
func gradedTenths(cell []byte) (v float64, ok bool) {
	const digits, size = 4, 7
	cell = trim(cell)
	if len(cell) != size || cell[0] != '+' && cell[0] != '-' || countDigits(cell[1:]) != digits || cell[1+digits] != ',' || !isDigit(cell[size-1]) && !isLetter(cell[size-1]) {
		return 0, false
	}
	if cell[1] != '0' && string(cell[1:1+digits]) != "9999" {
		return 0, false
	}
	v, _, ok = parseNumber(cell[:1+digits], '.')
	return v / 10, ok
}

// wraps are what stands before a number that a spreadsheet was to keep as it is, and before one that is rounded; quotes
// stand behind it as well then.
var wraps = [][]byte{[]byte("'"), []byte("=\""), []byte("="), []byte("~"), []byte("\u2248")}

// cutWrap takes one of wraps off a cell.
func cutWrap(cell []byte) []byte {
	for _, w := range wraps {
		if bytes.HasPrefix(cell, w) {
			return trim(bytes.TrimSuffix(cell[len(w):], []byte("\"")))
		}
	}
	return cell
}

// firstOfUnits is the first number of a cell that prints a temperature in °C and again in °F, or the other way round.
func firstOfUnits(cell []byte, mark byte) []byte {
	const offK = 0.3
	for i, c := range cell {
		if c != ' ' && c != '/' && c != '(' && c != ',' && c != '|' {
			continue
		}
		first, second := cell[:i], trim(bytes.Trim(cell[i:], " /()|,"))
		v, unit := temperatureOf(first, mark)
		w, other := temperatureOf(second, mark)
		if air := []float64{v, w}; unit != "" && other != "" && unit != other {
			toCelsius(air[:1], unit)
			if toCelsius(air[1:], other); math.Abs(air[0]-air[1]) <= offK {
				return first
			}
		}
	}
	return cell
}

// temperatureOf is a number with its unit, one of temperature; "" where there is no such.
func temperatureOf(cell []byte, mark byte) (v float64, unit string) {
	number, unit := cutGluedUnit(trim(cell), mark)
	v, _, ok := parseNumber(trim(number), mark)
	if !ok || unit == "" || !unitFits(AirTemperature, unit) {
		return 0, ""
	}
	return v, unit
}

// spreadMarks stand between a number and how far it may be off.
var spreadMarks = [][]byte{[]byte("\u00b1"), []byte("+/-"), []byte("\xb1")}

// cutSpread takes off a cell how far its number may be off.
func cutSpread(cell []byte) []byte {
	for _, mark := range spreadMarks {
		if at := bytes.Index(cell, mark); at > 0 {
			return trim(cell[:at])
		}
	}
	return cell
}

// cutComparison takes a comparison mark off the start of a cell.
func cutComparison(cell []byte) []byte {
	for _, c := range comparisons {
		if bytes.HasPrefix(cell, c) {
			return trim(cell[len(c):])
		}
	}
	return cell
}

// cutGluedUnit takes a unit off the end of a cell and says which it was.
func cutGluedUnit(cell []byte, mark byte) (number []byte, unit string) {
	end := numberEnd(cell, mark)
	if end == len(cell) {
		return cell, ""
	}
	if unit, known := gluedUnit(cell[end:]); known {
		return cell[:end], unit
	}
	return cell, ""
}

// numberEnd is where a cell's last digit, or the mark behind it, ends.
func numberEnd(cell []byte, mark byte) int {
	end := len(cell)
	for end > 0 && !isDigit(cell[end-1]) && cell[end-1] != mark {
		end--
	}
	return end
}

// gluedUnit is the unit that a text behind a number says.
func gluedUnit(s []byte) (unit string, known bool) {
	var room [8]byte
	low := room[:0]
	for len(s) > 0 {
		if n := spaceAt(s); n > 0 {
			s = s[n:]
			continue
		}
		if len(low) == len(room) {
			return "", false
		}
		low, s = lowerASCII(low, s[:1]), s[1:]
	}
	unit, known = gluedUnits[string(low)]
	return unit, known
}

// spaceAt is how many bytes a blank at the start of s takes; 0 when there is none. A byte of Windows-1252 is
// one only where it is no part of a UTF-8 letter, as behind a digit.
func spaceAt(s []byte) int {
	for _, space := range spaces {
		if bytes.HasPrefix(s, space) {
			return len(space)
		}
	}
	return 0
}

// cutSign takes a sign, and blanks behind it, off the start of a number.
func cutSign(cell []byte) (rest []byte, negative bool) {
	for _, minus := range minusSigns {
		if bytes.HasPrefix(cell, minus) {
			return trim(cell[len(minus):]), true
		}
	}
	if len(cell) > 0 && (cell[0] == '-' || cell[0] == '+') {
		return trim(cell[1:]), cell[0] == '-'
	}
	return cell, false
}

// cutLedgerSign takes one of ledgerSigns off a cell.
func cutLedgerSign(cell []byte) (rest []byte, negative bool) {
	for _, l := range ledgerSigns {
		if len(cell) > len(l.before)+len(l.behind) && bytes.HasPrefix(cell, []byte(l.before)) && bytes.HasSuffix(cell, []byte(l.behind)) {
			return trim(cell[len(l.before) : len(cell)-len(l.behind)]), true
		}
	}
	return cell, false
}

// groupedNumber reads a number without sign whose thousands are parted by one of thousandsMarks: one to three
// digits, the first no zero, then groups of three.
func groupedNumber(s []byte, mark byte) (v float64, decimals int, ok bool) {
	lead := countDigits(s)
	if lead < 1 || lead > 3 || s[0] == '0' {
		return 0, 0, false
	}
	var room [40]byte
	plain := append(room[:0], s[:lead]...)
	s = s[lead:]
	group := thousandsMark(s, mark)
	for size := len(group); size > 0 && bytes.HasPrefix(s, group) && countDigits(s[size:]) == 3; {
		plain = append(plain, s[size:size+3]...)
		s = s[size+3:]
	}
	if len(plain) == lead || len(s) > 0 && (s[0] != mark || countDigits(s[1:]) != len(s)-1) {
		return 0, 0, false
	}
	return parseNumber(append(plain, s...), mark)
}

// thousandsMark is the thousands mark at the start of s, nil when there is none.
func thousandsMark(s []byte, mark byte) []byte {
	for _, m := range thousandsMarks {
		if bytes.HasPrefix(s, m) && m[0] != mark {
			return m
		}
	}
	return nil
}

// isGrouped says whether a number's cell, read with one mark for its fraction, holds the other mark: that one
// parts its thousands.
func isGrouped(cell []byte, mark byte) bool {
	return bytes.IndexByte(cell, '.'+','-mark) >= 0
}
