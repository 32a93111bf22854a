package importers

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// letterFolds are letters that don't come apart into a base letter and an accent.
var letterFolds = strings.NewReplacer("ø", "o", "Ø", "O", "æ", "ae", "Æ", "Ae", "ß", "ss", "ł", "l", "Ł", "L", "đ", "d", "Đ", "D", "ı", "i", "₂", "2", "ª", "a")

// fold strips accents, so that one stem stands for a word however it is typed.
func fold(s string) string {
	if isASCII(s) {
		return s
	}
	var b strings.Builder
	for _, r := range norm.NFD.String(letterFolds.Replace(s)) {
		if !unicode.Is(unicode.Mn, r) {
			b.WriteRune(r)
		}
	}
	return norm.NFC.String(b.String())
}

func isASCII(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// nameWord is one word of a header: as typed, folded to lower case, and whether it follows the word before it
// without anything between.
type nameWord struct {
	typed, low string
	joined     bool
}

// words cuts a name at everything that is neither letter nor digit, between letters and digits, and where a
// capital follows a small letter. The 2 of CO2 stays with its word.
func words(name string) []nameWord {
	var out []nameWord
	var typed []rune
	follows := false
	flush := func() {
		if len(typed) > 0 {
			out = append(out, unfused(string(typed), follows)...)
			typed, follows = typed[:0], true
		}
	}
	for _, r := range name {
		switch {
		case !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '₂' && !(unicode.IsMark(r) && len(typed) > 0):
			flush()
			follows = false
			continue
		case len(typed) > 0 && wordEnds(typed, r):
			flush()
		}
		typed = append(typed, r)
	}
	flush()
	return out
}

// fusedSigns are the signs of quantities, lower case, behind which one of fusedPlaces or fusedStatistics may stand in one
// word: Tin, RHout, RHMean. Behind the fusedInitials of humidity only a place may.
var (
	fusedSigns    = []string{"t", "ta", "td", "temp", "rh", "hr", "ur", "rf", "hum", "co2"}
	fusedInitials = []string{"h", "f"}
	fusedPlaces   = wordSet("in", "out", "int", "ext", "inside", "outside", "indoor", "outdoor", "indoors", "outdoors", "room", "raum", "huone", "innen", "aussen", "inne", "ute", "ambient",
		"intern", "extern", "interior", "exterior", "interieur", "exterieur", "interno", "esterno", "interna", "externa", "esterna", "dentro", "fuera", "fora", "binnen", "buiten", "inde", "ude", "sisa", "ulko", "wewn", "zewn")
	fusedStatistics = wordSet("mean", "avg", "average", "minimum", "maximum", "variance", "std", "stdev", "stddev", "num", "exp", "final")
)

// unfused is a word, or the two that it is made of.
func unfused(typed string, joined bool) []nameWord {
	low := strings.ToLower(fold(typed))
	for _, sign := range fusedSigns {
		if n := len(sign); len(low) == len(typed) && strings.HasPrefix(low, sign) && (fusedPlaces[low[n:]] || fusedStatistics[low[n:]]) {
			return []nameWord{{typed[:n], sign, joined}, {typed[n:], low[n:], true}}
		}
	}
	for _, initial := range fusedInitials {
		if n := len(initial); len(low) == len(typed) && strings.HasPrefix(low, initial) && fusedPlaces[low[n:]] {
			return []nameWord{{typed[:n], initial, joined}, {typed[n:], low[n:], true}}
		}
	}
	return []nameWord{{typed, low, joined}}
}

// wordEnds says whether a word ends before r.
func wordEnds(typed []rune, r rune) bool {
	before := typed[len(typed)-1]
	if strings.EqualFold(string(typed), "co") && r == '2' {
		return false
	}
	if unicode.IsDigit(before) != unicode.IsDigit(r) {
		return true
	}
	return unicode.IsLower(before) && unicode.IsUpper(r)
}

// stemMatches says whether a word is a stem: exactly, from its beginning on (stem*), or with the stem
// anywhere in it (*stem*).
func stemMatches(stem, word string) bool {
	if inner, open := strings.CutPrefix(stem, "*"); open {
		return strings.Contains(word, strings.TrimSuffix(inner, "*"))
	}
	if start, open := strings.CutSuffix(stem, "*"); open {
		return strings.HasPrefix(word, start)
	}
	return word == stem
}

// phraseMatches says whether every stem of a phrase is one of the words; used marks the words that were.
func phraseMatches(phrase string, name []nameWord, used []bool) bool {
	found := make([]int, 0, 4)
	for stem := range strings.FieldsSeq(phrase) {
		at := -1
		for i, w := range name {
			if stemMatches(stem, w.low) {
				at = i
				break
			}
		}
		if at < 0 {
			return false
		}
		found = append(found, at)
	}
	for _, i := range found {
		used[i] = true
	}
	return len(found) > 0
}

// anyPhrase says whether a name holds one of the phrases.
func anyPhrase(phrases []string, name []nameWord) bool {
	used := make([]bool, len(name))
	for _, p := range phrases {
		if phraseMatches(p, name, used) {
			return true
		}
	}
	return false
}
