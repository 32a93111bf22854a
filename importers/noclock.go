package importers

// Why a file without a usable clock has none.

// monthForms are the ways to print a month of a year.
var monthForms = []dateForm{
	{"Y-#", nil}, {"Y/#", nil}, {"Y.#", nil}, {"#/Y", nil}, {"#.Y", nil}, {"#-Y", nil}, {"b Y", nil}, {"b-Y", nil}, {"b-y", nil}, {"b. Y", nil}, {"Y b", nil}, {"Y-b", nil},
}

// clockless is the code of the refusal of lines in which no clock was found: times of day without a date, months
// without days, a count from a start that is not named, or nothing of the kind.
func clockless(lines []record) string {
	for _, d := range delimiters {
		records := cut(lines, d.split)
		for _, width := range widths(records) {
			if width > maxColumns {
				continue
			}
			if code := clocklessRows(ofWidth(records, width)); code != "" {
				return code
			}
		}
	}
	return RefusedNoClock
}

func clocklessRows(rows []record) string {
	if len(rows) < 2 {
		return ""
	}
	names := texts(rows[0].cells)
	if hasNumber(rows[0].cells) {
		names = nil
	}
	if indexOfPart(names, 0) >= 0 && indexOfPart(names, 1) >= 0 {
		return RefusedNoDays
	}
	for col := range rows[0].cells {
		switch {
		case col < len(names) && anyPhrase(elapsedNames, words(names[col])) && share(rows[1:], col, isDuration):
			return RefusedNoStart
		case share(rows[1:], col, isPlainTime):
			return RefusedNoDate
		case share(rows[1:], col, isMonth):
			return RefusedNoDays
		case col < len(names) && countUnit(names[col]) > 0 && mostlyRises(rows[1:], &clock{read: readCount, columns: []int{col}, scale: 1}):
			return RefusedNoStart
		}
	}
	return ""
}

// isMonth says whether a cell is a month of a year and nothing else.
func isMonth(cell []byte) bool {
	for _, form := range monthForms {
		if v, n, ok := form.parseDate(cell); ok && n == len(cell) && (v[0] >= 1 && v[0] <= 12 || v[1] >= 1 && v[1] <= 12) {
			return true
		}
	}
	return false
}
