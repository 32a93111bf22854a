package importers

// missingWords are the words that say there is no value, or that the instrument had none to give, in lower
// case.
var missingWords = wordSet("na", "n/a", "#n/a", "n.a.", "n.a", "nan", "-nan", "null", "nul", "(null)", "none", "nil", "nodata", "no data", "no_data", "missing", "void",
	"x", "m", "m1", "nd", "n.b.", "b.d.", "b/d", "н/д", "н.д.", "brak", "n.d.", "n/d", "k.a.", "k. a.", "n.v.", "fehlt", "puuttuu", "saknas", "#nv", "<na>", "<null>", "\\n", "unknown", "unavailable", "undefined",
	"err", "err.", "error", "fault", "fail", "failed", "failure", "invalid", "bad", "fehler", "fel", "virhe", "viga", "fejl", "feil", "erreur", "errore",
	"lo", "low", "hi", "high", "ol", "o.l", "o.l.", "-ol", "over", "under", "overload", "overrange", "over range", "underrange", "under range", "out of range",
	"no sensor", "nosensor", "no probe", "offline", "disconnected", "not connected", "#value!", "#ref!", "#div/0!", "#num!", "#name?", "#null!",
	"inf", "-inf", "+inf", "infinity", "-infinity", "1.#inf", "-1.#inf", "1.#qnan", "-1.#ind", "\u2013", "\u2014", "\x96", "\x97")

// longestMissing is the length of the longest of missingWords, and of what isMissing looks at.
const longestMissing = 16

func wordSet(words ...string) map[string]bool {
	set := make(map[string]bool, len(words))
	for _, w := range words {
		set[w] = true
	}
	return set
}

// isMissing says whether a trimmed cell is empty, holds one of missingWords in any case, or nothing but
// strokes, dots, stars and question marks.
func isMissing(cell []byte) bool {
	if len(cell) == 0 || isStrokes(cell) {
		return true
	}
	if len(cell) > longestMissing {
		return false
	}
	var room [longestMissing]byte
	return missingWords[string(lowerASCII(room[:0], cell))]
}

func isStrokes(cell []byte) bool {
	for _, c := range cell {
		if c != '-' && c != '.' && c != '*' && c != '?' && c != '_' {
			return false
		}
	}
	return true
}
