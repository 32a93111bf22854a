package importers

import "slices"

// A file may hold dates printed in two ways: read-outs of two programs put one below the other. Both are read where
// each can be told by itself.

// takeOtherForm lets a clock read dates of a second form where rows that it can't read have some; those may stand above
// the first row that it reads. Where one of the two forms leaves open which number is the day nothing is taken, and such
// rows are lost with a remark. Under a header of its own each form is a table of its own.
func (fit *clockFit) takeOtherForm(rows []record) {
	c := fit.clock
	if !c.stamps && !c.paired || c.zoned {
		return
	}
	col := c.columns[0]
	var left []record
	for _, r := range rows {
		if _, _, ok := c.read(c, r.cells); !ok && hasNumber(r.cells) && hasMarks(trim(r.cells[col])) {
			left = append(left, r)
		}
	}
	c.forget()
	if len(left) < 2 {
		return
	}
	other, ok := bestStamp(left, col, dateForms)
	if !ok || other.zoned > 0 || c.stamps && 2*other.timed <= other.hits {
		return
	}
	first := slices.IndexFunc(rows, func(r record) bool { return r.line == left[other.first].line })
	if slices.ContainsFunc(rows[min(first, fit.first):], func(r record) bool { return isHeaderLine(r.cells) }) {
		return
	}
	fit.first = min(first, fit.first) // to be remarked on, where it can't be read
	own, sure := c.form.soleOrder(rows, col)
	its, sureToo := other.form.soleOrder(left, col)
	if !sure || !sureToo {
		return
	}
	c.form.orders, other.form.orders = []order{own}, []order{its}
	c.also = &other.form
}

// soleOrder is the only order under which all dates of a form in a column are dates; where nothing but dots part the
// numbers the day comes first.
func (f dateForm) soleOrder(rows []record, col int) (only order, sure bool) {
	var valid []order
	for _, o := range f.orders {
		fits := func(r record) bool {
			v, _, ok := f.parseDate(cutApostrophe(trim(r.cells[col])))
			_, good := dateMS(v, o)
			return !ok || good
		}
		if !slices.ContainsFunc(rows, func(r record) bool { return !fits(r) }) {
			valid = append(valid, o)
		}
	}
	switch {
	case len(valid) == 1:
		return valid[0], true
	case f.dotted() && slices.Contains(valid, dmy):
		return dmy, true
	}
	return "", false
}
