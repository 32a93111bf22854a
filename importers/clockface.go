package importers

import (
	"bytes"
	"strings"
)

// Milliseconds of the clock.
const (
	secondMS = 1000
	minuteMS = 60 * secondMS
	hourMS   = 60 * minuteMS
	dayMS    = 24 * hourMS
)

// order says which of a date's three numbers is which.
type order string

// The orders a date can have; a day of the year has two numbers.
const (
	ymd order = "ymd"
	dmy order = "dmy"
	mdy order = "mdy"
	doy order = "doy"

	isoWeek order = "week" // ISO 8601: year, week and day of the week
)

// dateForm is one way to print a date. In a pattern Y is a year of four digits, y one of two, # a number of
// one or two digits, letters that make it an ordinal allowed, 2 one of exactly two, J a day of the year, b the name of a month, W the name of a
// weekday with what follows it, V a W and the number of a week, k a day of the week from 1; anything else stands for itself. A shortened month may end in a dot. An h at
// the end says that an hour alone stands behind the date, a ~ that two times of day do, from and to. The numbers appear in the order given; where a form
// allows several, the content of the whole file decides.
type dateForm struct {
	pattern string
	orders  []order
}

// dateForms are tried from the top; of forms that read equally much the first one is taken.
var dateForms = []dateForm{
	{"Y-#-#", []order{ymd}}, {"Y/#/#", []order{ymd}}, {"Y.#.#", []order{ymd}}, {"Y # #", []order{ymd}}, {"Y_#_#", []order{ymd}},
	{"#.#.Y", []order{dmy, mdy}}, {"#/#/Y", []order{dmy, mdy}}, {"#-#-Y", []order{dmy, mdy}}, {"# # Y", []order{dmy, mdy}},
	{"#. #. Y", []order{dmy, mdy}},
	{"#.#.y", []order{dmy, mdy, ymd}}, {"#/#/y", []order{dmy, mdy, ymd}}, {"#-#-y", []order{dmy, mdy, ymd}},
	{"#-b-Y", []order{dmy}}, {"# b Y", []order{dmy}}, {"#.b.Y", []order{dmy}}, {"#/b/Y", []order{dmy}}, {"#bY", []order{dmy}},
	{"#. b Y", []order{dmy}}, {"# b, Y", []order{dmy}}, {"#-b-y", []order{dmy}}, {"# b y", []order{dmy}}, {"#/b/y", []order{dmy}},
	{"#.b.y", []order{dmy}}, {"#by", []order{dmy}},
	{"b # Y", []order{mdy}}, {"b #, Y", []order{mdy}}, {"b-#-Y", []order{mdy}}, {"b/#/Y", []order{mdy}}, {"b. #, Y", []order{mdy}},
	{"Y-b-#", []order{ymd}}, {"Y b #", []order{ymd}}, {"Y/b/#", []order{ymd}},
	{"W# b Y", []order{dmy}}, {"Wb # Y", []order{mdy}}, {"Wb #, Y", []order{mdy}}, {"W#/#/Y", []order{dmy, mdy}}, {"W#.#.Y", []order{dmy, mdy}},
	{"Y22", []order{ymd}}, {"22Y", []order{dmy, mdy}}, {"Y-J", []order{doy}}, {"Y/J", []order{doy}}, {"YJ", []order{doy}},
	{"Y-V-k", []order{isoWeek}}, {"YVk", []order{isoWeek}},
	{"b # y", []order{mdy}}, {"b #, y", []order{mdy}}, {"b-#-y", []order{mdy}}, {"# de b de Y", []order{dmy}},
	{"# de b de y", []order{dmy}}, {"W# de b de Y", []order{dmy}}, {"W#. b Y", []order{dmy}}, {"W#-b-Y", []order{dmy}},
	{"Y.#.#.", []order{ymd}}, {"#.#.Y.", []order{dmy}}, {"Y. #. #.", []order{ymd}}, {"Y. b #.", []order{ymd}}, {"Y年#月#日", []order{ymd}}, {"Y년 #월 #일", []order{ymd}}, {"Y年#月#日h", []order{ymd}},
	{"W#-#-Y", []order{dmy, mdy}}, {"W#.#.y", []order{dmy, mdy}}, {"W#/#/y", []order{dmy, mdy}}, {"WY-#-#", []order{ymd}},
	{"WY/#/#", []order{ymd}}, {"Y:#:#", []order{ymd}}, {"#:#:Y", []order{dmy, mdy}},
	{"Y22h", []order{ymd}}, {"22Yh", []order{dmy, mdy}}, {"Y-#-#h", []order{ymd}}, {"Y/#/#h", []order{ymd}}, {"#.#.Yh", []order{dmy, mdy}},
	{"#/#/Yh", []order{dmy, mdy}}, {"#.#.yh", []order{dmy, mdy, ymd}}, {"#/#/yh", []order{dmy, mdy, ymd}}, {"#-b-Yh", []order{dmy}},
}

// monthNames are the beginnings that tell months apart, in the languages of Europe, lower case without accents; a
// longer name must begin with the beginning, and the longest beginning wins. Source: the locale data of the GNU C
// library; the Ukrainian ones from memory.
var monthNames = [12][]string{
	{"jan", "jaan", "ene", "tammi", "gen", "sty", "sau", "led", "ian", "oca", "янв", "яну", "січ", "ιαν"},
	{"feb", "fev", "helmi", "veeb", "lut", "vas", "uno", "sub", "фев", "лют", "φεβ"},
	{"mar", "maalis", "mrt", "maa", "mrz", "kov", "bre", "мар", "бер", "μαρ"},
	{"apr", "avr", "abr", "huhti", "kwi", "bal", "dub", "nis", "апр", "кві", "απρ"},
	{"may", "mai", "maj", "mag", "touko", "mei", "geg", "kve", "маи", "мая", "тра", "μαι"},
	{"jun", "juun", "juin", "giu", "kesa", "cze", "bir", "cerven", "cervna", "cen", "cvn", "iun", "haz", "июн", "юни", "чер", "ιουν"},
	{"jul", "juul", "juil", "lug", "heina", "lip", "lie", "cervenc", "cervenec", "cec", "cvc", "iul", "tem", "июл", "юли", "лип", "ιουλ"},
	{"aug", "aou", "ago", "elo", "sie", "rugp", "srp", "avg", "agu", "авг", "сер", "αυγ"},
	{"sep", "set", "szept", "syys", "wrz", "rugs", "zar", "eyl", "сен", "сеп", "вер", "σεπ"},
	{"oct", "okt", "ott", "out", "loka", "paz", "spa", "rij", "eki", "окт", "жов", "οκτ"},
	{"nov", "marras", "lis", "lap", "noi", "kas", "ноя", "ное", "лис", "νοε"},
	{"dec", "dez", "dic", "joulu", "dets", "des", "gru", "pro", "ara", "дек", "гру", "δεκ"},
}

// monthOf finds the month whose name a word is.
func monthOf(word []byte) (month int, found bool) {
	var room [48]byte
	if len(word) > len(room) {
		return 0, false
	}
	low, best := plainLower(room[:0], word), 0
	for m, names := range monthNames {
		for _, n := range names {
			if len(n) > best && len(low) >= len(n) && string(low[:len(n)]) == n {
				month, best = m+1, len(n)
			}
		}
	}
	return month, best > 0
}

// plainLower appends a word to dst in lower case and without accents.
func plainLower(dst, word []byte) []byte {
	for _, c := range word {
		if c >= 0x80 {
			return append(dst, strings.ToLower(fold(text(word)))...)
		}
	}
	return lowerASCII(dst, word)
}

// parseDate reads a date at the start of s: its three numbers in the order printed, and how many bytes it
// takes. For a day of the year the third number is 0.
func (f dateForm) parseDate(s []byte) (v [3]int, n int, ok bool) {
	slot := 0
	for i := 0; i < len(f.pattern) && f.pattern[i] != 'h' && f.pattern[i] != '~'; i++ {
		value, size, ok := dateMark(f.pattern[i], s[n:])
		if !ok {
			return v, 0, false
		}
		n += size
		if f.pattern[i] == 'b' && n < len(s) && s[n] == '.' && (i+1 == len(f.pattern) || f.pattern[i+1] != '.') {
			n++
		}
		if value >= 0 {
			v[slot] = value
			slot++
		}
	}
	if f.isNumber() && string(s[n:]) == ".0" {
		n += len(".0")
	}
	if n < len(s) && (isDigit(s[n]) && !f.runsOn() || s[n] == ':' && f.endsInShortYear()) {
		return v, 0, false
	}
	return v, n, true
}

// isAmerican says whether dates of the form, the month first, are written in America and hardly elsewhere: not as
// programs write them everywhere, the month a word and no comma behind the day.
func (f dateForm) isAmerican() bool {
	return !strings.Contains(f.pattern, "b") || strings.Contains(f.pattern, ",")
}

// endsInShortYear says whether the date ends, behind a blank, in a year that may as well be an hour.
func (f dateForm) endsInShortYear() bool { return strings.HasSuffix(f.pattern, " y") }

// runsOn says whether digits of a time may follow the date's own without anything between.
func (f dateForm) runsOn() bool {
	return strings.HasPrefix(f.pattern, "Y22") || f.pattern == "222" || strings.HasPrefix(f.pattern, "22Y") || f.pattern == "YJ" || strings.HasSuffix(strings.TrimSuffix(f.pattern, "h"), "日") || strings.HasSuffix(f.pattern, "일")
}

// isNumber says whether the date's digits, the year first, and those of the time behind it make one number, which may be
// printed with a nought behind its mark.
func (f dateForm) isNumber() bool { return strings.HasPrefix(f.pattern, "Y22") || f.pattern == "YJ" }

// hour says whether an hour alone stands behind the date.
func (f dateForm) hour() bool { return f.pattern[len(f.pattern)-1] == 'h' }

// spans says whether two times of day stand behind the date.
func (f dateForm) spans() bool { return f.pattern[len(f.pattern)-1] == '~' }

// dateMark reads what one mark of a pattern stands for; value is −1 for marks that are no number.
func dateMark(mark byte, s []byte) (value, size int, ok bool) {
	switch mark {
	case 'Y':
		value, ok = digits(s, 4)
		return value, 4, ok && value >= 1900 && value < 2200
	case 'y', '2':
		value, ok = digits(s, 2)
		return value, 2, ok
	case 'J':
		value, ok = digits(s, 3)
		return value, 3, ok
	case '#':
		for size = 2; size > 0; size-- {
			if value, ok = digits(s, size); ok {
				return value, size + ordinalSuffix(s[size:]), true
			}
		}
		return 0, 0, false
	case 'V', 'k':
		return weekMark(mark, s)
	case 'b':
		if size = letters(s); size == 0 {
			return 0, 0, false
		}
		value, ok = monthOf(s[:size])
		return value, size, ok
	case 'W':
		for size = letters(s); size < len(s) && (s[size] == ' ' || s[size] == ',' || s[size] == '.'); size++ {
		}
		return -1, size, size > 2
	}
	if mark == ' ' && len(s) > 0 {
		size = len(s) - len(bytes.TrimLeft(s, " "))
		return -1, size, size > 0
	}
	return -1, 1, len(s) > 0 && s[0] == mark
}

// weekMark reads the number of a week behind its W, or the day of a week.
func weekMark(mark byte, s []byte) (value, size int, ok bool) {
	if mark == 'k' {
		value, ok = digits(s, 1)
		return value, 1, ok
	}
	if len(s) == 0 || s[0]|0x20 != 'w' {
		return 0, 0, false
	}
	value, ok = digits(s[1:], 2)
	return value, 3, ok
}

// ordinalSuffix is how many bytes the letters behind a counted day take: 1st, 2nd, 3rd, 4th.
func ordinalSuffix(s []byte) int {
	if letters(s) == 2 {
		switch string(s[:2]) {
		case "st", "nd", "rd", "th":
			return 2
		}
	}
	return 0
}

// letters is how many bytes at the start of s are letters, any byte above ASCII counted as one.
func letters(s []byte) int {
	n := 0
	for n < len(s) && (s[n]|0x20 >= 'a' && s[n]|0x20 <= 'z' || s[n] >= 0x80) {
		n++
	}
	return n
}

// digits reads a number of exactly n digits at the start of s.
func digits(s []byte, n int) (v int, ok bool) {
	if len(s) < n {
		return 0, false
	}
	for _, c := range s[:n] {
		if !isDigit(c) {
			return 0, false
		}
		v = v*10 + int(c-'0')
	}
	return v, true
}

// dateMS is midnight of a date, its face read as if it were UTC.
func dateMS(v [3]int, o order) (ms int64, ok bool) {
	y, m, d := v[0], v[1], v[2]
	switch o {
	case dmy:
		y, d = v[2], v[0]
	case mdy:
		y, m, d = v[2], v[0], v[1]
	case doy:
		if y = fullYear(y); m < 1 || m > 365+leap(y) {
			return 0, false
		}
		return (civilDay(y, 1, 1) + int64(m) - 1) * dayMS, true
	case isoWeek:
		return weekDay(y, m, d) * dayMS, m >= 1 && m <= 53 && d >= 1 && d <= 7
	}
	y = fullYear(y)
	if m < 1 || m > 12 || d < 1 || d > monthLength(y, m) {
		return 0, false
	}
	return civilDay(y, m, d) * dayMS, true
}

// weekDay counts the days from 1970-01-01, a Thursday, to a day of a week: week 1 is the one with 4 January in it, and
// begins on Monday (ISO 8601, 3.1.1.23).
func weekDay(year, week, day int) int64 {
	fourth := civilDay(year, 1, 4)
	return fourth - (fourth+3)%7 + int64(7*(week-1)+day-1)
}

var monthDays = [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

func monthLength(y, m int) int {
	if m == 2 {
		return 28 + leap(y)
	}
	return monthDays[m-1]
}

// leap is 1 in a leap year.
func leap(y int) int {
	if y%4 == 0 && (y%100 != 0 || y%400 == 0) {
		return 1
	}
	return 0
}

// fullYear puts a year of two digits between 1969 and 2068, as POSIX strptime does.
func fullYear(y int) int {
	switch {
	case y >= 100:
		return y
	case y >= 69:
		return 1900 + y
	}
	return 2000 + y
}

// civilDay counts the days from 1970-01-01 to a date of the Gregorian calendar, by the days before a
// March-based year (the calendar's own rule: 97 leap days in 400 years).
func civilDay(y, m, d int) int64 {
	if m <= 2 {
		y--
		m += 12
	}
	return int64(365*y + y/4 - y/100 + y/400 + (153*(m-3)+2)/5 + d - 1 - 719468)
}
