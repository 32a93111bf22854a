package importers

import (
	"bytes"

	"thawbook/analysis/series"
)

// In a sheet that is kept by hand a number may bear a word: that it is about right, or in brackets what was amiss. Such
// cells are told once the column is known to hold numbers.

// aboutWords stand before a number that is about right, lower case and without accents; a dot may end them.
var aboutWords = []string{"ca", "circa", "approx", "approximately", "about", "abt", "around", "etwa", "rund", "ungef", "ungefahr", "env", "environ", "aprox", "aproximadamente", "cerca", "okolo", "ok", "asi", "cca", "ок", "около", "прибл", "ung", "ungefar", "omkr", "omtrent", "noin"}

// remarkedNumber reads a number with such words and remarks that they are there. What has digits in brackets is two
// numbers, and a word for a statistic or a unit makes another thing of it.
func (s *scan) remarkedNumber(c *values, cell []byte) (v float64, decimals int, ok bool) {
	if len(cell) > longestName {
		return 0, 0, false
	}
	bare := withoutAbout(withoutBrackets(cell))
	if len(bare) == len(cell) {
		return 0, 0, false
	}
	if v, decimals, _, ok = numberInText(bare, s.mark); ok && isGrouped(bare, s.mark) {
		ok = false
	}
	if ok {
		s.notes.add(series.Remark{Code: RemarkRemarked, Line: s.line, Column: c.index + 1, Args: []string{clip(text(cell)), c.header}})
	}
	return v, decimals, ok
}

// withoutAbout takes one of aboutWords off the start of a cell.
func withoutAbout(cell []byte) []byte {
	size := letters(cell)
	low := string(plainLower(nil, cell[:size]))
	for _, word := range aboutWords {
		if size > 0 && low == word {
			return trim(bytes.TrimPrefix(cell[size:], []byte(".")))
		}
	}
	return cell
}

// withoutBrackets takes words in brackets off the end of a cell.
func withoutBrackets(cell []byte) []byte {
	name, inner, found := cutBrackets(string(cell))
	said := words(inner)
	if !found || len(said) == 0 || !bytes.HasPrefix(cell, []byte(name)) || bytes.ContainsAny([]byte(inner), "0123456789") || unitOf(inner) != "" {
		return cell
	}
	if is, perhaps := statisticOf(said, make([]bool, len(said))); is != reading || perhaps {
		return cell
	}
	return cell[:len(name)]
}
