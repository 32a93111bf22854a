package importers

// A grade that stands behind each value need not be named: what follows every column of values under no name,
// or under one and the same word, and holds few marks of one character, or of some letters under one, is no series.

// fewMarks is how many different marks a grade has at most, and longMark how long one is under a letter.
const fewMarks, longMark = 8, 5

// dropFlags drops the columns of grades, where one follows each column of values.
func (l *layout) dropFlags(rows []record, names []string) {
	flags, label := map[int]bool{}, ""
	for _, c := range l.columns {
		next := c.index + 1
		if c.kind != number || flags[c.index] {
			continue
		}
		header, longest := "", 1
		if next < len(names) {
			header = names[next]
		}
		if len(header) == 1 {
			longest = longMark
		}
		if names == nil || next >= l.width || l.clock.uses(next) || l.keyKindOf(next) != skipped || !l.isGrade(rows, next, longest) {
			return
		}
		if len(flags) == 0 {
			label = header
		}
		if header != label || header != "" && timesIn(names, header) < 2 {
			return
		}
		flags[next] = true
	}
	l.drop(flags)
}

// drop forgets columns that are understood and not listed.
func (l *layout) drop(columns map[int]bool) {
	kept := l.columns[:0]
	for _, c := range l.columns {
		if columns[c.index] {
			l.ordinals++
		} else {
			kept = append(kept, c)
		}
	}
	l.columns = kept
}

// timesIn is how often a name occurs.
func timesIn(names []string, name string) (n int) {
	for _, k := range names {
		if k == name {
			n++
		}
	}
	return n
}

// isGrade says whether a column that says nothing of what it measures holds few marks no longer than so, and no numbers of
// several digits.
func (l *layout) isGrade(rows []record, col, longest int) bool {
	seen := map[string]bool{}
	for _, r := range rows {
		cell := trim(r.cells[col])
		if len(cell) > longest || len(cell) > 1 && isAnyNumber(cell) || len(seen) > fewMarks {
			return false
		}
		if len(cell) > 0 {
			seen[string(cell)] = true
		}
	}
	for _, c := range l.columns {
		if c.index == col && (c.told || c.unit != "") {
			return false
		}
	}
	return len(seen) > 0 && len(seen) <= fewMarks
}
