package importers

import "bytes"

// parseTime reads the time behind a date of the form.
func (f dateForm) parseTime(s []byte) (t timeOfDay, ok bool) {
	if f.isNumber() && countDigits(s)+len(".0") == len(s) {
		s = bytes.TrimSuffix(s, []byte(".0"))
	}
	switch {
	case f.spans():
		t.ms, _, ok = timeSpan(s)
		return t, ok
	case !f.hour():
		if t, ok = parseTime(s); !ok {
			t, ok = dashedTime(s)
		}
		if ok {
			return t, true
		}
		if from := f.cutSpan(s); len(from) < len(s) {
			return parseTime(from)
		}
		return t, false
	}
	n := countDigits(s)
	if n != 2 && (n != 1 || f.runsOn()) {
		return t, false
	}
	hours, _ := digits(s, n)
	t.ms = int64(hours * hourMS)
	if s = cutTimeWord(trim(s[n:])); len(s) > 0 {
		t.offsetMS, t.zoned = parseZone(s)
	}
	return t, hours <= 24 && (len(s) == 0 || t.zoned)
}

// spanMarks may stand between two times each with its date.
var spanMarks = [][]byte{[]byte(" - "), []byte(" \u2013 "), []byte(" to "), []byte(" bis "), []byte("/"), []byte("--")}

// cutSpan cuts the second date, and its time, off what stands behind the first date.
func (f dateForm) cutSpan(s []byte) []byte {
	for _, mark := range spanMarks {
		if at := bytes.Index(s, mark); at > 0 {
			if _, _, ok := f.parseDate(trim(s[at+len(mark):])); ok {
				return trim(s[:at])
			}
		}
	}
	return s
}

// dashedTime reads hh-mm or hh-mm-ss, as in the names of files.
func dashedTime(s []byte) (t timeOfDay, ok bool) {
	if len(s) != 5 && len(s) != 8 {
		return t, false
	}
	var v [3]int
	for i := 0; i < len(s); i += 3 {
		if v[i/3], ok = digits(s[i:], 2); !ok || i > 0 && s[i-1] != '-' {
			return t, false
		}
	}
	t.ms = clockMS(v[0], v[1], v[2])
	return t, v[1] < 60 && v[2] < 60 && t.ms <= dayMS
}

// daysZero are the ways to print the day from which spreadsheets count: it stands before a time that has none.
var daysZero = [][]byte{[]byte("1899-12-30"), []byte("30.12.1899"), []byte("12/30/1899"), []byte("30/12/1899"), []byte("30-12-1899"), []byte("30-Dec-1899"), []byte("1899/12/30"), []byte("1900-01-00"), []byte("00.01.1900")}

// cutDayZero takes such a day, or a word that leads to a time, off the start of one.
func cutDayZero(cell []byte) []byte {
	if n := letters(cell); n > 0 {
		if rest := trim(bytes.TrimPrefix(cell[n:], []byte("."))); beginsWithDigit(string(rest)) && leadsToTime[string(lowerASCII(nil, cell[:n]))] {
			return rest
		}
	}
	for _, day := range daysZero {
		if bytes.HasPrefix(cell, day) && len(cell) > len(day) {
			return afterDate(cell[len(day):])
		}
	}
	return cell
}

// timeOfDay is what stands behind a date.
type timeOfDay struct {
	ms       int64 // since midnight; 24:00 is a whole day
	offsetMS int64
	zoned    bool // an offset or Z stood there
	meridiem bool // AM or PM stood there
}

// parseTime reads a time of day: h:mm, h:mm:ss or h:mm:ss.fff with colons or dots, hhmm or hhmmss, with AM
// or PM and an offset or zone behind it.
func parseTime(s []byte) (t timeOfDay, ok bool) {
	if len(s) == 8 && s[2] == ':' && s[5] == ':' {
		h, ok1 := digits(s, 2)
		m, ok2 := digits(s[3:], 2)
		sec, ok3 := digits(s[6:], 2)
		if ok1 && ok2 && ok3 && h < 24 && m < 60 && sec < 60 {
			return timeOfDay{ms: int64(h*hourMS + m*minuteMS + sec*secondMS)}, true
		}
	}
	ms, n, ok := clockDigits(s)
	if !ok {
		return oddTime(s)
	}
	if t.ms = ms; n < len(s) {
		if s = cutTimeWord(trim(s[n:])); len(s) > 0 && !t.parseMeridiem(&s) {
			return t, false
		}
		if len(s) > 0 {
			t.offsetMS, t.zoned = parseZone(s)
			ok = t.zoned || isIanaName(s) || len(s) == 1 && (s[0] == ':' || s[0] == ',') // which parts it from what follows
		}
	}
	return t, ok && t.ms <= dayMS
}

// oddTime reads what is no row of digits and marks: an hour alone with its half of the day, and times with words or signs.
func oddTime(s []byte) (t timeOfDay, ok bool) {
	if n := countDigits(s); n == 1 || n == 2 {
		if half, found := halfOf(trim(s[n:])); found {
			hour, _ := digits(s, n)
			t = timeOfDay{ms: int64(hour) * hourMS, meridiem: true}
			return t, t.addHalf(half) && t.ms <= dayMS
		}
	}
	if t.ms, ok = spelledTime(s); ok {
		return t, t.ms <= dayMS
	}
	return timeBehindHalf(s)
}

// timeMarks are what may stand behind hours, minutes and seconds, blanks aside: French and English, Chinese and Japanese,
// Korean. From memory.
var timeMarks = [][3]string{{"h", "min", "s"}, {"h", "m", "s"}, {"h", "", ""}, {"時", "分", "秒"}, {"时", "分", "秒"}, {"點", "分", "秒"}, {"点", "分", "秒"}, {"시", "분", "초"}}

// spelledTime reads hours, minutes and perhaps seconds, each with its mark behind it.
func spelledTime(s []byte) (ms int64, ok bool) {
	for _, marks := range timeMarks {
		var v [3]int
		rest, n := s, 0
		for n < 3 && len(rest) > 0 {
			size := countDigits(rest)
			if size < 1 || size > 2 {
				break
			}
			v[n], _ = digits(rest, size)
			behind := trim(rest[size:])
			if !bytes.HasPrefix(behind, []byte(marks[n])) {
				break
			}
			rest = trim(behind[len(marks[n]):])
			n++
		}
		if n > 1 && len(rest) == 0 && v[1] < 60 && v[2] < 60 {
			return clockMS(v[0], v[1], v[2]), true
		}
	}
	return 0, false
}

// timeBehindHalf reads a time with AM or PM before it.
func timeBehindHalf(s []byte) (t timeOfDay, ok bool) {
	at := bytes.IndexAny(s, "0123456789")
	if at < 1 {
		return t, false
	}
	half, ok := halfOf(trim(s[:at]))
	if !ok {
		return t, false
	}
	ms, n, ok := clockDigits(s[at:])
	t = timeOfDay{ms: ms, meridiem: true}
	return t, ok && n == len(s)-at && t.addHalf(half) && t.ms <= dayMS
}

// clockDigits reads hours, minutes and seconds and how many bytes they take. A second of 60 is a leap second, or one
// that was rounded up, and the same as the next minute's first.
func clockDigits(s []byte) (ms int64, n int, ok bool) {
	n = countDigits(s)
	if n == 4 || n == 6 {
		hm, _ := digits(s, 4)
		sec, _ := digits(s[4:], n-4)
		return clockMS(hm/100, hm%100, sec), n, hm%100 < 60 && sec <= 60
	}
	if n != 1 && n != 2 || n >= len(s) || s[n] != ':' && s[n] != '.' && s[n]|0x20 != 'h' {
		return 0, 0, false
	}
	h, _ := digits(s, n)
	mark := s[n]
	m, size, ok := sixtieth(s[n+1:], mark)
	if n += 1 + size; !ok || m > 59 {
		return 0, 0, false
	}
	if n >= len(s) || s[n] != mark {
		return clockMS(h, m, 0), n, size == 2
	}
	sec, size, ok := sixtieth(s[n+1:], mark)
	if n += 1 + size; !ok || sec > 60 {
		return 0, 0, false
	}
	fraction, size := fractionMS(s[n:])
	return clockMS(h, m, sec) + fraction, n + size, true
}

// sixtieth reads minutes or seconds and how many digits they take: two, or behind a colon one whose nought was not
// printed. A time without seconds that ends in one digit may be cut off.
func sixtieth(s []byte, mark byte) (v, size int, ok bool) {
	if size = countDigits(s); size == 1 && mark == ':' {
		v, ok = digits(s, 1)
		return v, 1, ok
	}
	v, ok = digits(s, 2)
	return v, 2, ok
}

// timeWords may stand behind a time of a 24-hour clock and add nothing.
var timeWords = [][]byte{[]byte("uhr"), []byte("hrs"), []byte("h"), []byte("时"), []byte("時"), []byte("点"), []byte("시")}

// cutTimeWord takes one of timeWords off the start of s, where it is all of s or a blank follows.
func cutTimeWord(s []byte) []byte {
	var room [4]byte
	low := lowerASCII(room[:0], s[:min(len(s), len(room))])
	for _, w := range timeWords {
		if bytes.HasPrefix(low, w) && (len(s) == len(w) || isBlank(s[len(w)])) {
			return trim(s[len(w):])
		}
	}
	return s
}

func clockMS(h, m, s int) int64 { return int64(h*hourMS + m*minuteMS + s*secondMS) }

// fractionMS reads a fraction of a second, cut to milliseconds; behind a colon it has three digits.
func fractionMS(s []byte) (ms int64, size int) {
	if len(s) < 2 || s[0] != '.' && s[0] != ',' && s[0] != ':' {
		return 0, 0
	}
	n := countDigits(s[1:])
	if s[0] == ':' && n != 3 {
		return 0, 0
	}
	for i := range 3 {
		ms *= 10
		if i < n {
			ms += int64(s[1+i] - '0')
		}
	}
	if n == 0 {
		return 0, 0
	}
	return ms, n + 1
}

func countDigits(s []byte) int {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

// meridiems are the words for the halves of the day, lower case: English, with narrow blanks as well, Spanish the
// same, German, Dutch, Swedish, Finnish, Hungarian, Czech, Turkish, Icelandic, Greek, Bulgarian, Chinese, Korean. Source: the locale data of
// the GNU C library for some, the others from memory.
var meridiems = []struct {
	word string
	add  int64
}{
	{"am", 0}, {"pm", noonMS}, {"a.m.", 0}, {"p.m.", noonMS}, {"a. m.", 0}, {"p. m.", noonMS}, {"a.m", 0}, {"p.m", noonMS}, {"a", 0}, {"p", noonMS},
	{"a.\u00a0m.", 0}, {"p.\u00a0m.", noonMS}, {"a.\u202fm.", 0}, {"p.\u202fm.", noonMS}, {"vorm.", 0}, {"nachm.", noonMS}, {"vorm", 0}, {"nachm", noonMS},
	{"vm", 0}, {"nm", noonMS}, {"v.m.", 0}, {"n.m.", noonMS}, {"fm", 0}, {"em", noonMS}, {"f.m.", 0}, {"e.m.", noonMS}, {"ap", 0}, {"ip", noonMS}, {"ap.", 0}, {"ip.", noonMS},
	{"de.", 0}, {"du.", noonMS}, {"dop.", 0}, {"odp.", noonMS}, {"\u00f6\u00f6", 0}, {"\u00d6\u00d6", 0}, {"\u00f6s", noonMS}, {"\u00d6s", noonMS}, {"fh", 0}, {"eh", noonMS},
	{"\u03c0\u03bc", 0}, {"\u03bc\u03bc", noonMS}, {"\u03c0.\u03bc.", 0}, {"\u03bc.\u03bc.", noonMS}, {"\u03a0\u039c", 0}, {"\u039c\u039c", noonMS},
	{"\u4e0a\u5348", 0}, {"\u4e0b\u5348", noonMS}, {"\u5348\u524d", 0}, {"\u5348\u5f8c", noonMS}, {"\uc624\uc804", 0}, {"\uc624\ud6c4", noonMS},
}

// noonMS is by how much the afternoon is later.
const noonMS = 12 * hourMS

// parseMeridiem takes AM or PM off the start of s and moves the time by it. It says false when the hour
// can't be one of a half day.
func (t *timeOfDay) parseMeridiem(s *[]byte) bool {
	var room [8]byte
	low := lowerASCII(room[:0], (*s)[:min(len(*s), len(room))])
	for _, m := range meridiems {
		n := len(m.word)
		if len(low) < n || string(low[:n]) != m.word || len(*s) > n && !isBlank((*s)[n]) {
			continue
		}
		*s = trim((*s)[n:])
		t.meridiem = true
		return t.addHalf(m.add)
	}
	return true
}

// addHalf moves the time into its half of the day; 12 o'clock is the hour 0 of a half. Hours that can only
// be of a 24-hour clock stay in the afternoon and are refused in the morning.
func (t *timeOfDay) addHalf(half int64) bool {
	switch hour := t.ms / hourMS; {
	case hour == 12:
		t.ms += half - noonMS
	case hour < 12:
		t.ms += half
	case half == 0:
		return false
	}
	return true
}

// halfOf reads a cell that holds AM or PM alone.
func halfOf(cell []byte) (half int64, ok bool) {
	var room [8]byte
	if len(cell) > len(room) {
		return 0, false
	}
	low := lowerASCII(room[:0], cell)
	for _, m := range meridiems {
		if string(low) == m.word {
			return m.add, true
		}
	}
	return 0, false
}

// betweenDateAndTime are the characters that may stand between a date and a time, blanks aside.
var betweenDateAndTime = []byte("Tt_:-/,;@")

// leadsToTime are the words that may stand there, lower case.
var leadsToTime = wordSet("at", "um", "kl", "kl.", "klo", "\u00e0", "\u00e0s", "a las", "alle", "om", "ob", "o", "u")

// afterDate cuts what stands between a date and its time off the start of s: a mark, a weekday, a word that leads to
// the time.
func afterDate(s []byte) []byte {
	s = trim(s)
	if len(s) > 0 && bytes.IndexByte(betweenDateAndTime, s[0]) >= 0 {
		s = trim(s[1:])
	}
	if len(s) == 0 || isDigit(s[0]) {
		return s
	}
	end := bytes.IndexAny(s, "0123456789")
	if end < 0 {
		end = len(s)
	}
	word := trim(bytes.Trim(trim(s[:end]), "(),"))
	if leadsToTime[string(lowerASCII(nil, word))] || isWeekday(word) {
		return s[end:]
	}
	return s
}

// isWeekday says whether a word behind a date can be nothing but a weekday: letters alone, at least two, and
// neither half of the day nor zone.
func isWeekday(word []byte) bool {
	name := bytes.TrimSuffix(word, []byte("."))
	if len(name) < 2 || letters(name) != len(name) || isHalf(word) {
		return false
	}
	_, zone := parseZone(name)
	return !zone
}
