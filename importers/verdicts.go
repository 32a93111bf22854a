package importers

import (
	"slices"

	"thawbook/analysis/series"
)

// A column of grades may say in words that a reading is none. Numbers and letters for grades are not heeded: what they
// mean is not in the file.

// goodWords and badWords say so of a reading, lower case and without accents; openWords leave it as it is.
var (
	goodWords = wordSet("valid", "ok", "good", "pass", "passed", "gultig", "gueltig", "gut", "valide", "bon", "bonne", "valido", "valida", "bueno", "buono", "giltig", "gyldig", "god", "kelvollinen", "hyva", "kehtiv", "hea", "geldig", "goed", "wazny", "dobry", "platny", "верно", "хорошо", "норма")
	badWords  = wordSet("invalid", "bad", "error", "fail", "failed", "fault", "faulty", "reject", "rejected", "not valid", "ungultig", "ungueltig", "fehler", "fehlerhaft", "defekt", "invalide", "erreur", "invalido", "invalida", "no valido", "non valido", "errore", "ogiltig", "fel", "ugyldig", "feil", "fejl", "virheellinen", "virhe", "kehtetu", "vigane", "ongeldig", "fout", "niewazny", "bledny", "blad", "neplatny", "chyba", "неверно", "ошибка", "недостоверно")
	openWords = wordSet("suspect", "questionable", "doubtful", "estimated", "interpolated", "unknown", "missing", "unchecked", "raw")
)

// validNames are the stems of columns in which yes and no say whether a reading is one.
var validNames = []string{"valid", "isvalid", "gultig", "gyldig", "giltig", "geldig", "valide", "valido"}

// verdict says whether a cell of grades says that its reading is none, and whether it is such a cell at all. yes is
// whether yes and no are.
func verdict(cell []byte, yes bool) (bad, ok bool) {
	const longest = 24
	if len(cell) == 0 || len(cell) > longest {
		return false, len(cell) == 0
	}
	if v, state := parseState(cell); yes && state {
		return v == 0, true
	}
	low := plainLower(nil, cell)
	bad = badWords[string(low)]
	return bad, bad || goodWords[string(low)] || openWords[string(low)]
}

// givesVerdicts says whether a column holds verdicts alone, and one of them at least that is plain.
func (l *layout) givesVerdicts(rows []record, c *column) bool {
	yes := anyPhrase(validNames, words(c.header))
	plain := false
	for _, r := range rows {
		cell := trim(r.cells[c.index])
		bad, ok := verdict(cell, yes)
		if !ok {
			return false
		}
		plain = plain || bad || yes && len(cell) > 0 || goodWords[string(plainLower(nil, cell))]
	}
	return plain
}

// verdictCell keeps a verdict: 1 for a reading that is none.
func (c *values) verdictCell(cell []byte) float64 {
	bad, _ := verdict(cell, anyPhrase(validNames, words(c.header)))
	return float64(one(bad))
}

// heedVerdicts takes as missing what a column of grades says is no reading, unless it says so of most: then it says
// something else. The columns of grades are understood then.
func (s *scan) heedVerdicts() {
	grades := 0
	for i := range s.columns {
		grades += one(s.columns[i].kind == grading)
	}
	if grades == 0 {
		return
	}
	for i := range s.columns {
		g := &s.columns[i]
		if g.kind != grading {
			continue
		}
		var rows []int
		for row, bad := range g.val {
			if bad == 1 {
				rows = append(rows, row)
			}
		}
		for _, k := range s.gradedBy(i, grades == 1) {
			s.dropRows(&s.columns[k], rows)
		}
	}
	s.columns = slices.DeleteFunc(s.columns, func(c values) bool { return c.kind == grading })
	for i := range s.columns {
		s.columns[i].lead = i == 0
	}
}

// gradedBy are the columns a column of grades is about: the one whose name it bears, else all where it is the only one
// and stands behind or before them all, else the one it stands behind.
func (s *scan) gradedBy(grade int, only bool) (out []int) {
	name := sameName(withoutWords(s.columns[grade].header, flagNames))
	before, behind := -1, 0
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind == grading {
			continue
		}
		if name != "" && sameName(c.header) == name || name != "" && c.name != "" && sameName(c.name) == name {
			return []int{i}
		}
		if out = append(out, i); c.index < s.columns[grade].index {
			before = i
		} else {
			behind++
		}
	}
	if before >= 0 && (!only || behind > 0) {
		return []int{before}
	}
	return out
}

// withoutWords is a name without the words that some stems stand for.
func withoutWords(name string, stems []string) string {
	return joinedWords(slices.DeleteFunc(words(name), func(w nameWord) bool { return anyPhrase(stems, []nameWord{w}) }))
}

// dropRows takes as missing what a column has in some rows, unless they are most of them.
func (s *scan) dropRows(c *values, rows []int) {
	if 2*len(rows) > len(c.val) {
		return
	}
	for _, row := range rows {
		if v := c.val[row]; v == v {
			c.val[row] = missing
			c.changed()
			s.notes.add(series.Remark{Code: RemarkGraded, Line: s.lineOf(row), Column: c.index + 1, Args: []string{c.header}})
		}
	}
}
