package importers

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
)

// zoneWords are abbreviations with one meaning wide enough to be taken at their word, and their offset from
// UTC in minutes. Source: the abbreviations of the IANA time zone database for Europe, North America, Australia, New
// Zealand, Japan, Korea and southern Africa; the German and Russian ones from memory.
var zoneWords = []struct {
	word    string
	minutes int64
}{
	{"z", 0}, {"utc", 0}, {"gmt", 0}, {"ut", 0}, {"wet", 0}, {"west", 60}, {"bst", 60}, {"cet", 60}, {"mez", 60}, {"cest", 120}, {"mesz", 120},
	{"eet", 120}, {"eest", 180}, {"msk", 180}, {"nst", -210}, {"ndt", -150}, {"ast", -240}, {"adt", -180}, {"est", -300}, {"edt", -240}, {"cst", -360},
	{"cdt", -300}, {"mst", -420}, {"mdt", -360}, {"pst", -480}, {"pdt", -420}, {"akst", -540}, {"akdt", -480},
	{"hst", -600}, {"wez", 0}, {"wesz", 60}, {"oez", 120}, {"oesz", 180}, {"мск", 180}, {"sast", 120}, {"awst", 480}, {"jst", 540}, {"kst", 540},
	{"acst", 570}, {"acdt", 630}, {"aest", 600}, {"aedt", 660}, {"nzst", 720}, {"nzdt", 780},
}

// parseZone reads an offset that fills s: Z, UTC, GMT-5, +02:00, +0200, +2 or an abbreviation; an abbreviation in
// brackets behind it only says the same again.
func parseZone(s []byte) (offsetMS int64, ok bool) {
	if offsetMS, ok = parseOffset(s); ok {
		return offsetMS, true
	}
	if at := bytes.IndexAny(s, "(["); at >= 0 && (s[len(s)-1] == ')' || s[len(s)-1] == ']') {
		if at == 0 {
			return parseZone(trim(s[1 : len(s)-1]))
		}
		return parseZone(trim(s[:at]))
	}
	n := letters(s)
	if n > 0 {
		var room [8]byte
		if n > len(room) {
			return 0, false
		}
		minutes, found := zoneWord(lowerASCII(room[:0], s[:n]))
		if !found {
			return 0, false
		}
		if s = trim(s[n:]); len(s) == 0 {
			return minutes * minuteMS, true
		}
		if minutes != 0 {
			return 0, false
		}
	}
	return parseOffset(s)
}

func zoneWord(low []byte) (minutes int64, found bool) {
	for _, z := range zoneWords {
		if string(low) == z.word {
			return z.minutes, true
		}
	}
	return 0, false
}

// parseOffset reads ±h, ±hh, ±hhmm or ±hh:mm that fills s, no farther from UTC than 14 hours.
func parseOffset(s []byte) (offsetMS int64, ok bool) {
	for _, minus := range minusSigns {
		if bytes.HasPrefix(s, minus) {
			s = append([]byte{'-'}, s[len(minus):]...)
		}
	}
	if len(s) < 2 || s[0] != '+' && s[0] != '-' {
		return 0, false
	}
	negative, s := s[0] == '-', s[1:]
	n := countDigits(s)
	var h, m int
	switch {
	case n == len(s) && n <= 2:
		h, ok = digits(s, n)
	case n == len(s) && n == 4:
		h, ok = digits(s, 4)
		h, m = h/100, h%100
	case n <= 2 && n+3 == len(s) && s[n] == ':':
		h, _ = digits(s, n)
		m, ok = digits(s[n+1:], 2)
	}
	if !ok || 60*h+m > 14*60 || m > 59 {
		return 0, false
	}
	offsetMS = int64(h*hourMS + m*minuteMS)
	if negative {
		offsetMS = -offsetMS
	}
	return offsetMS, true
}

// zoneName prints an offset as ±hh:mm.
func zoneName(offsetMS int64) string {
	sign := '+'
	if offsetMS < 0 {
		sign, offsetMS = '-', -offsetMS
	}
	return fmt.Sprintf("%c%02d:%02d", sign, offsetMS/hourMS, offsetMS%hourMS/minuteMS)
}

// zoneInName finds the zone a header or a value of a key–value line names: UTC or GMT with or without an
// offset, an offset or an abbreviation alone in brackets, or an IANA name. An empty string means none.
func zoneInName(name string) string {
	if zone := ianaName(name); zone != "" {
		return zone
	}
	if zone := normalTime(name); zone != "" {
		return zone
	}
	if zone := seasonsInWords(name); zone != "" {
		return zone
	}
	low := strings.ToLower(name)
	for _, word := range []string{"utc", "gmt"} {
		if at := strings.Index(low, word); at >= 0 && (at == 0 || !isLetter(low[at-1])) {
			rest := low[at+len(word):] // not of name: lower case may be longer
			if len(rest) > 0 && isLetter(rest[0]) || saysNot(words(low[:at])) {
				continue
			}
			offset, printed := leadingOffset(cutOffsetWord(rest))
			if !printed && cutOffsetWord(rest) != strings.TrimLeft(rest, " ") {
				continue // the offset from UTC, which stands elsewhere
			}
			return zoneName(offset)
		}
	}
	if at := strings.IndexAny(name, "([,"); at >= 0 {
		inner := strings.Trim(name[at:], "()[], ")
		if offset, ok := parseOffset([]byte(inner)); ok && strings.Contains(inner, ":") {
			return zoneName(offset)
		}
		if minutes, ok := zoneWord([]byte(strings.ToLower(inner))); ok && len(inner) > 2 && inner == strings.ToUpper(inner) {
			return zoneName(minutes * minuteMS)
		}
	}
	return zoneInWords(name)
}

// normalTimes are the words for a country's time without daylight saving, and how far it is from UTC. Source: the laws
// on each country's time, from memory.
var normalTimes = []struct{ phrase, zone string }{
	{"norsk normaltid*", "+01:00"}, {"svensk normaltid*", "+01:00"}, {"dansk normaltid*", "+01:00"}, {"suomen normaaliaika*", "+02:00"}, {"mitteleuropaische* zeit", "+01:00"},
}

// normalTime finds such words in a name.
func normalTime(name string) string {
	w := words(name)
	for _, n := range normalTimes {
		if anyPhrase([]string{n.phrase}, w) {
			return n.zone
		}
	}
	return ""
}

// seasons are the zones in which two abbreviations take turns, winter's and summer's, by a name of the time zone
// database.
var seasons = []struct{ winter, summer, zone string }{
	{"cet", "cest", "CET"}, {"mez", "mesz", "CET"}, {"eet", "eest", "EET"}, {"wet", "west", "WET"}, {"gmt", "bst", "Europe/London"},
	{"est", "edt", "EST5EDT"}, {"cst", "cdt", "CST6CDT"}, {"mst", "mdt", "MST7MDT"}, {"pst", "pdt", "PST8PDT"},
	{"wez", "wesz", "WET"}, {"oez", "oesz", "EET"}, {"nzst", "nzdt", "Pacific/Auckland"},
}

// seasonsInWords finds a zone whose winter's and summer's abbreviations are both among a name's words.
func seasonsInWords(name string) string {
	w := words(name)
	for _, s := range seasons {
		if anyPhrase([]string{s.winter + " " + s.summer}, w) {
			return s.zone
		}
	}
	return ""
}

// zonesThatAreWords are abbreviations that are also words for east, west, wet and is.
var zonesThatAreWords = wordSet("est", "west", "wet", "ist")

// zoneInWords finds an abbreviation among a name's words: in capitals, or in small letters the last of several unless
// it is a word as well. Those of two letters say nothing.
func zoneInWords(name string) string {
	list := words(name)
	for i, w := range list {
		minutes, found := zoneWord([]byte(w.low))
		small := i > 0 && i == len(list)-1 && w.typed == w.low && !zonesThatAreWords[w.low]
		if said := !saysNot(list[:i]) && (i+1 == len(list) || list[i+1].low != "offset"); found && said && len(w.low) > 2 && (w.typed == strings.ToUpper(w.typed) || small) {
			return zoneName(minutes * minuteMS)
		}
	}
	return ""
}

// denials are the words before a zone which say that it is another, the last or the last but one.
var denials = wordSet("not", "nicht", "non", "pas", "no", "niet", "ikke", "inte", "ei", "nie", "instead")

// saysNot says whether words end in such a one, or have it before their last.
func saysNot(before []nameWord) bool {
	return slices.ContainsFunc(before[max(0, len(before)-2):], func(w nameWord) bool { return denials[w.low] })
}

// cutOffsetWord cuts the word for an offset, and what parts it from one, off the start of what stands behind UTC.
func cutOffsetWord(s string) string {
	s = strings.TrimLeft(s, " ")
	if rest, found := strings.CutPrefix(strings.TrimLeft(s, "_-"), "offset"); found {
		return strings.TrimLeft(rest, " :=_")
	}
	return s
}

// leadingOffset is the offset at the start of s, where there is one.
func leadingOffset(s string) (offsetMS int64, found bool) {
	for n := min(len(s), 8); n > 1; n-- {
		if offset, ok := parseOffset([]byte(s[:n])); ok {
			return offset, true
		}
	}
	return 0, false
}

// ianaAreas are the first parts of the names in the IANA time zone database.
var ianaAreas = []string{"Africa", "America", "Antarctica", "Arctic", "Asia", "Atlantic", "Australia", "Europe", "Indian", "Pacific", "Etc"}

// ianaName finds a name of the time zone database in a text: an area that no letter stands before, a stroke,
// and a place.
func ianaName(s string) string {
	for _, area := range ianaAreas {
		at := strings.Index(s, area+"/")
		if at < 0 || at > 0 && isLetter(s[at-1]) {
			continue
		}
		end := at + len(area) + 1
		for end < len(s) && (isLetter(s[end]) || isDigit(s[end]) || strings.IndexByte("_/+-", s[end]) >= 0) {
			end++
		}
		if place := s[at+len(area)+1 : end]; len(place) > 1 && isLetter(place[0]) {
			return strings.TrimRight(s[at:end], "_/+-")
		}
	}
	return ""
}

// isIanaName says whether a text is a name of the time zone database and nothing else. Behind every row's time it
// says no more than once.
func isIanaName(s []byte) bool {
	return bytes.IndexByte(s, '/') > 0 && ianaName(string(s)) == string(s)
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// zoneKeys are the beginnings of the keys, in key–value lines, whose value is a time zone.
var zoneKeys = []string{"time zone", "timezone", "zone", "utc offset", "utc", "tz", "gmt", "zeitzone", "fuseau", "tidszon", "tidssone", "aikavyohyke", "ajavoond", "zona horaria", "fuso", "strefa"}

// zoneAbove finds the zone that the lines above a table name, one line with key and value, or two with keys above
// their values; and the offset that stands beside a zone's name.
func zoneAbove(above []record) (zone, offset string) {
	for i, r := range above {
		line := text(r.text)
		if zone := zoneInSentence(line); zone != "" {
			return zone, ""
		}
		if key, value := keyValue(line); isZoneKey(key) {
			if zone := zoneOfValue(key, value); zone != "" {
				return zone, ""
			}
		}
		if zone, offset = zoneUnderKeys(r, above[i+1:]); zone != "" {
			return zone, offset
		}
	}
	return "", ""
}

// zoneUnderKeys is the zone that stands under the keys of a line, and the offset beside its name. Where several lines
// with values follow, as of several places, each must say the same as the first, or nothing.
func zoneUnderKeys(keys record, below []record) (zone, offset string) {
	for i, r := range below {
		if len(r.cells) != len(keys.cells) || len(r.cells) < 2 {
			break
		}
		switch named, far := zoneOfValues(keys, r); {
		case i == 0:
			zone, offset = named, far
		case named != "" && (named != zone || far != offset):
			return "", ""
		}
	}
	return zone, offset
}

// zoneOfValues is the zone that a line of values names, and the offset beside the name; an offset alone is the zone.
func zoneOfValues(keys, values record) (zone, offset string) {
	for k, key := range keys.cells {
		if !isZoneKey(text(key)) {
			continue
		}
		switch said := zoneOfValue(text(key), text(values.cells[k])); {
		case isIanaName([]byte(said)):
			zone = cmp.Or(zone, said)
		default:
			offset = cmp.Or(offset, said)
		}
	}
	if zone == "" {
		return offset, ""
	}
	return zone, offset
}

// keepsTo says whether the clocks of a zone of the database stand at an offset at all of the rows' times.
func (s *scan) keepsTo(zone, offset string) bool {
	loc, err := time.LoadLocation(zone)
	offsetMS, ok := parseOffset([]byte(offset))
	if err != nil || !ok {
		return false
	}
	day := int64(noTime)
	for _, at := range s.at {
		if at == noTime || at/dayMS == day {
			continue
		}
		day = at / dayMS
		if _, seconds := time.UnixMilli(at - offsetMS).In(loc).Zone(); int64(seconds)*secondMS != offsetMS {
			return false
		}
	}
	return true
}

// zoneInSentence finds the zone in a line that speaks of times, "all times are UTC". A line with the time at which
// something was done says nothing of the readings.
func zoneInSentence(line string) string {
	digits := 0
	for i := range len(line) {
		if digits++; !isDigit(line[i]) {
			digits = 0
		}
		if digits > 2 {
			return ""
		}
	}
	if w := words(line); len(w) < 3 || !anyPhrase(timeStems, w) {
		return ""
	}
	if anyPhrase([]string{"est"}, words(line)) && !anyPhrase([]string{"time*"}, words(line)) {
		return "" // in other languages than English a word for the east, or for is
	}
	return zoneInName(line)
}

// timeStems are the words for times in a sentence.
var timeStems = []string{"time*", "hour*", "*stunde*", "*zeit*", "heure*", "hora*", "tid*", "aika*", "ajad*", "ora*", "tijd*", "czas*"}

func isZoneKey(key string) bool { return hasAnyPrefix(strings.ToLower(fold(key)), zoneKeys) }

// zoneOfValue reads the zone that stands under a key: by name, as an offset, or as a number of hours where the
// key leaves no doubt that it is a zone of time.
func zoneOfValue(key, value string) string {
	if zone := zoneInName(value); zone != "" {
		return zone
	}
	if offset, ok := parseOffset([]byte(value)); ok {
		return zoneName(offset)
	}
	hours, _, ok := parseNumber([]byte(value), '.')
	if !ok || strings.HasPrefix(strings.ToLower(key), "zon") {
		return ""
	}
	for _, unitMS := range []float64{hourMS, minuteMS, secondMS} { // 14 hours are the most; fewer minutes than 15, or seconds than 900, are none
		if ms := hours * unitMS; math.Abs(ms) <= 14*hourMS && math.Mod(ms, 15*minuteMS) == 0 {
			return zoneName(int64(ms))
		}
	}
	return ""
}

// learnZone looks for a column named as the zone: it holds the same in every row, or a zone in each.
func (c *clock) learnZone(rows []record, names []string) {
	for col, name := range names {
		if col >= len(rows[0].cells) || c.uses(col) || !isZoneKey(name) || c.instants() {
			continue
		}
		first := trim(rows[0].cells[col])
		others := count(rows, col, func(cell []byte) bool { return !bytes.Equal(cell, first) })
		offset, ok := parseZone(first)
		switch {
		case ok && others == 0:
			c.zone, c.zoneAt = zoneName(offset), col+1
		case others == 0 && zoneOfValue(name, text(first)) != "":
			c.zone, c.zoneAt = zoneOfValue(name, text(first)), col+1
		case ok && share(rows, col, func(cell []byte) bool { _, ok := parseZone(cell); return ok }):
			c.face, c.read, c.zoned = c.read, readBesideZone, true
			c.columns = append(c.columns, col)
		default:
			continue
		}
		return
	}
	if c.stamps && c.zone == "" {
		c.zone = ianaName(text(rows[0].cells[c.columns[0]]))
	}
}
