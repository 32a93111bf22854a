package importers

import (
	"bytes"
	"strings"
)

// columnTally counts what a column's cells are.
type columnTally struct {
	filled, numbers, states, glued int
	values                         int // numbers and states
	fractions                      int // numbers with digits behind the mark
	digits                         int // cells that have digits, numbers or not
	digitFirst                     int // and that begin with one
	graded                         int // cells of a sign and four digits or more, with their grade behind a comma
	tenths                         int // and of those, tenths of a degree as archives print them
	gluedUnit                      string
	isIndex                        bool // whole numbers, each one more than the one above
	distinct                       map[string]bool
}

// maxDevices is how many different loggers one file may interleave.
const maxDevices = 256

// tally counts what the cells of a column are; once, for the rows of a trial stay the same.
func (l *layout) tally(rows []record, col int) columnTally {
	t, counted := l.tallies[col]
	if !counted {
		t = l.count(rows, col)
		if l.tallies == nil {
			l.tallies = map[int]columnTally{}
		}
		l.tallies[col] = t
	}
	return t
}

func (l *layout) count(rows []record, col int) columnTally {
	t := columnTally{isIndex: len(rows) > 1, distinct: map[string]bool{}}
	var above float64
	steps, unit := 0, 0
	for i, r := range rows {
		cell := trim(r.cells[col])
		if isMissing(cell) {
			continue
		}
		t.filled++
		if len(t.distinct) <= maxDevices {
			t.distinct[string(cell)] = true
		}
		t.digitFirst += one(isDigit(cell[0]))
		t.digits += one(bytes.ContainsAny(cell, "0123456789"))
		_, isState := parseState(cell)
		v, d, glued, ok := numberInText(cell, l.mark)
		t.states += one(isState)
		t.values += one(isState || ok)
		t.graded += one(isGraded(cell))
		_, isTenths := gradedTenths(cell)
		t.tenths += one(isTenths)
		if !ok {
			continue
		}
		t.numbers++
		t.fractions += one(d > 0)
		if glued != "" {
			t.glued++
			t.gluedUnit = glued
		}
		if i > 0 && i < trialRows {
			steps++
			if d == 0 && v == above+1 {
				unit++
			}
		}
		above = v
	}
	t.isIndex = t.isIndex && t.numbers == t.filled && 10*unit >= 9*steps && unit > 0
	return t
}

// areLetters says whether a column holds single letters, which may say many things.
func (t columnTally) areLetters() bool {
	for cell := range t.distinct {
		if len(cell) > 1 || isDigit(cell[0]) {
			return false
		}
	}
	return len(t.distinct) > 0
}

// isWell says whether a column says that all is well, and nothing else.
func (t columnTally) isWell() bool {
	for cell := range t.distinct {
		if !strings.EqualFold(cell, "ok") {
			return false
		}
	}
	return true
}

// isGraded says whether a cell holds a number of a sign and four digits or more and, behind a comma, one digit that
// grades it: what its digits count is not in the file.
func isGraded(cell []byte) bool {
	n := len(cell)
	return n > 6 && (cell[0] == '+' || cell[0] == '-') && cell[n-2] == ',' && isDigit(cell[n-1]) && countDigits(cell[1:]) == n-3
}

// isDevice says whether a column's values can be the names of loggers: few of them.
func (t columnTally) isDevice(rows []record) bool {
	n := len(t.distinct)
	return n > 0 && n <= maxDevices && (n == 1 || 3*n <= 2*len(rows)) && t.states < t.filled && !t.saysWhen()
}

// whenWords say when something was or how it came about, and name no logger: weekdays, parts of a day, and who switched.
// Lower case, without accents.
var whenWords = wordSet("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday", "mon", "tue", "tues", "wed", "thu", "thur", "thurs", "fri", "sat", "sun",
	"montag", "dienstag", "mittwoch", "donnerstag", "freitag", "samstag", "sonnabend", "sonntag", "mo", "di", "mi", "do", "fr", "sa", "so",
	"lundi", "mardi", "mercredi", "jeudi", "vendredi", "samedi", "dimanche", "lun", "mar", "mer", "jeu", "ven", "sam", "dim", "lunes", "martes", "miercoles", "jueves", "viernes", "sabado", "domingo", "mie", "jue", "vie", "sab", "dom",
	"lunedi", "martedi", "mercoledi", "giovedi", "venerdi", "sabato", "domenica", "gio", "segunda", "terca", "quarta", "quinta", "sexta", "maandag", "dinsdag", "woensdag", "donderdag", "vrijdag", "zaterdag", "zondag",
	"mandag", "tirsdag", "onsdag", "torsdag", "fredag", "lordag", "sondag", "mandagen", "tisdag", "man", "tir", "ons", "tor", "fre", "lor", "son", "tis", "maanantai", "tiistai", "keskiviikko", "torstai", "perjantai", "lauantai", "sunnuntai", "ma", "ti", "ke", "to", "pe", "la", "su",
	"poniedzialek", "wtorek", "sroda", "czwartek", "piatek", "sobota", "niedziela", "pn", "wt", "sr", "cz", "pt", "nd", "pondeli", "utery", "streda", "ctvrtek", "patek", "nedele", "понедельник", "вторник", "среда", "четверг", "пятница", "суббота", "воскресенье", "пн", "вт", "ср", "чт", "пт", "сб", "вс",
	"morning", "noon", "midday", "afternoon", "evening", "night", "midnight", "dawn", "dusk", "day", "am", "pm", "morgen", "morgens", "fruh", "mittag", "mittags", "vormittag", "vormittags", "nachmittag", "nachmittags", "abend", "abends", "nacht", "nachts", "matin", "midi", "apres-midi", "soir", "nuit", "manana", "mediodia", "tarde", "noche", "mattina", "pomeriggio", "sera", "notte",
	"morgon", "middag", "eftermiddag", "kvall", "natt", "aften", "nat", "kveld", "aamu", "paiva", "ilta", "yo", "hommik", "louna", "ohtu", "oo", "rano", "poludnie", "wieczor", "noc", "vecer", "утро", "день", "вечер", "ночь",
	"auto", "automatic", "automatically", "automatik", "automatisch", "manual", "manually", "manuell", "hand", "handbetrieb", "timer", "schedule", "scheduled", "remote", "local", "user", "system", "thermostat", "manuel", "automatique", "automatico")

// saysWhen says whether a column holds nothing but such words.
func (t columnTally) saysWhen() bool {
	for cell := range t.distinct {
		if len(cell) > longestName || !whenWords[string(plainLower(nil, []byte(cell)))] {
			return false
		}
	}
	return len(t.distinct) > 0
}
