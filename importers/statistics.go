package importers

import (
	"slices"
	"strings"

	"thawbook/analysis/series"
)

// A column may hold what was made of several readings: their average, an extreme, a measure of their spread or
// their number. The average is the reading; the others are kept beside it and are no loggers of their own.

type statistic int

const (
	reading statistic = iota
	average
	lowest
	highest
	scatter // spread or number
)

// statisticNames are the words for statistics in a column's name or in a row of their own below the units. Of
// perhaps, the words that may as well say where a logger hung, the values decide.
var statisticNames = []struct {
	is      statistic
	perhaps bool
	phrases []string
}{
	{scatter, false, []string{"std", "stdev*", "stddev*", "standardabw*", "sd", "stderr*", "varianc*", "uncert*", "unc", "sigma", "num pts", "numpts", "skew*", "avvik*", "err", "error*", "count", "counts", "anzahl*", "antal*"}},
	{lowest, false, []string{"min", "mini", "minim*", "lowest", "tiefst*", "alin", "lagst*", "lavest*", "laagst*", "tmin", "rhmin", "mintemp*", "lagmark*", "maziaus*", "zemiaus*", "мин*", "мін*", "найниж*", "najniz*", "nejniz*", "legalacs*", "madalaim*", "ελαχ*", "*מינימ*", "*الصغرى*", "*کمینه*", "*حداقل*", "*最低*", "*최저*", "*ตำสด*", "thap nhat", "*नयनतम*", "en dusuk"}},
	{highest, false, []string{"max", "maxi", "maxim*", "maks*", "ylin", "highest", "hochst*", "hogst*", "hoyest*", "hojest*", "hoogst*", "tmax", "rhmax", "massim*", "maxtemp*", "hamark*", "didziaus*", "auksciaus*", "макс*", "найвищ*", "najvis*", "najwyz*", "nejvys*", "legmagas*", "korgeim*", "μεγιστ*", "*מקסימ*", "*العظمى*", "*بیشینه*", "*حداکثر*", "*最高*", "*최고*", "*สงสด*", "cao nhat", "*अधिकतम*", "en yuksek"}},
	{average, false, []string{"avg", "average*", "mean", "mittel*", "medel*", "middel*", "moy*", "prom*", "media", "median*", "sredn*", "gemiddeld*", "keskiarv*", "keskm*", "smp", "sample", "inst", "tavg", "tmean"}},
	{lowest, true, []string{"lo", "low"}},
	{scatter, true, []string{"n"}},
	{highest, true, []string{"hi", "high"}},
}

// statisticOf says which statistic a name's words are, whether the values must bear it out, and marks the words.
// A number before min makes minutes of it.
func statisticOf(name []nameWord, used []bool) (is statistic, perhaps bool) {
	for _, row := range statisticNames {
		mine := make([]bool, len(name))
		if !slices.ContainsFunc(row.phrases, func(p string) bool { return phraseMatches(p, name, mine) }) {
			continue
		}
		if at := slices.Index(mine, true); at > 0 && name[at].low == "min" && isDigit(name[at-1].low[0]) {
			continue
		}
		for i := range mine {
			used[i] = used[i] || mine[i]
		}
		return row.is, row.perhaps
	}
	return reading, false
}

// isStatisticsRow says whether a row holds nothing but words for statistics, and at least two.
func isStatisticsRow(cells [][]byte) bool {
	for _, cell := range cells {
		w := words(text(cell))
		if len(w) == 0 {
			continue
		}
		if is, _ := statisticOf(w, make([]bool, len(w))); is == reading || len(w) > 2 {
			return false
		}
	}
	return filledCells(cells) > 1
}

// settleStatistics takes extremes and measures of spread for no readings. An extreme is one only beside another
// column of what it is the extreme of; a name alone may be a logger's.
func (l *layout) settleStatistics(rows []record) {
	l.findUncertainties(rows)
	for i := range l.columns {
		c := &l.columns[i]
		if c.statistic == lowest || c.statistic == highest {
			c.extreme = l.isExtreme(rows, c)
			if !c.extreme {
				c.liken(c.whole)
			}
		}
	}
	for i := range l.columns {
		if c := &l.columns[i]; c.statistic == scatter && c.perhaps && !l.hasAverage(c) {
			c.statistic = reading
			c.liken(c.whole)
		}
	}
	for i := range l.columns {
		if c := &l.columns[i]; c.extreme || c.statistic == scatter && c.kind == number {
			c.quantity, c.extreme = Other, true
		}
	}
}

// mostUncertain is more than the uncertainty of a reading is, in kelvin or percent. Common practice, no source.
const mostUncertain = 10

// findUncertainties takes columns for measures of spread whose names are those of others with a u before them, or se behind
// them, and whose values may be that: u_T, T_se.
func (l *layout) findUncertainties(rows []record) {
	named := map[string]bool{}
	for _, c := range l.columns {
		named[sameName(c.name)] = true
	}
	for i := range l.columns {
		c := &l.columns[i]
		name := sameName(c.name)
		of, before := strings.CutPrefix(name, "u ")
		if !before {
			of, before = strings.CutSuffix(name, " se")
		}
		if before && named[of] && l.within(rows, c, 0, mostUncertain) {
			c.statistic, c.perhaps = scatter, false
		}
	}
}

// within says whether all numbers of a column lie between two.
func (l *layout) within(rows []record, c *column, low, high float64) bool {
	return c.kind == number && !slices.ContainsFunc(rows, func(r record) bool {
		v, _, _, ok := numberInText(r.cells[c.index], l.mark)
		return ok && (v < low || v > high)
	})
}

// hasAverage says whether the average or the spread of what a column is named after stands beside it.
func (l *layout) hasAverage(c *column) bool {
	return slices.ContainsFunc(l.columns, func(k column) bool {
		return k.same == c.same && (k.statistic == average || k.statistic == scatter && !k.perhaps)
	})
}

// isExtreme says whether a column stands beside its average or the other extreme, under the same name, or under
// none the nearest before it.
func (l *layout) isExtreme(rows []record, c *column) bool {
	var nearest *column
	for i := range l.columns {
		k := &l.columns[i]
		if k.quantity != c.quantity || k.statistic == c.statistic || k.statistic == scatter || c.kind != number {
			continue
		}
		if !c.perhaps && k.same == c.same {
			return true
		}
		if k.statistic <= average && (k.same == c.same || (c.same == "" || !c.perhaps && k.unit == c.unit) && k.index < c.index) {
			nearest = k
		}
	}
	return nearest != nil && c.bounds(rows, nearest, l.mark)
}

// bounds says whether no value of a column lies on the wrong side of another's in its row, and some differ.
func (c *column) bounds(rows []record, k *column, mark byte) bool {
	differ := false
	for _, r := range rows {
		v, _, _, ok := numberInText(r.cells[c.index], mark)
		w, _, _, read := numberInText(r.cells[k.index], mark)
		if !ok || !read {
			continue
		}
		if c.statistic == lowest && v > w || c.statistic == highest && v < w {
			return false
		}
		differ = differ || v != w
	}
	return differ
}

// mostNamed is how many columns one remark names.
const mostNamed = 12

// noteStatistics remarks the columns that were taken for extremes or measures of spread, all in one.
func (s *scan) noteStatistics() {
	var names []string
	first, last := 0, 0
	for i := range s.columns {
		c := &s.columns[i]
		if !c.extreme || c.index < last {
			continue // again, of another logger
		}
		if last = c.index + 1; first == 0 {
			first = last
		}
		names = append(names, clip(c.header))
	}
	if len(names) > mostNamed {
		names = append(names[:mostNamed], "…")
	}
	if len(names) > 0 {
		s.notes.add(series.Remark{Code: RemarkStatistic, Line: s.layout.line, Column: first, Args: []string{strings.Join(names, ", ")}})
	}
}
