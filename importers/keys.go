package importers

import (
	"bytes"
	"cmp"
	"math"
	"slices"
)

// A row may say itself what it is about: which logger it is from, which variable its value is, and in which
// unit. The cells that say so are the row's keys. A file with a column of variables or of units is in long
// form: one value in a row.

// variableNames are the stems of columns that say which variable a row's value is.
var variableNames = []string{"variable*", "property", "param*", "measure*", "quantity", "metric*", "observed*", "field", "type", "kind", "what", "var", "signal*", "messgrosse*", "grosse", "storhet*", "suure*",
	"element*", "mesure", "grandeur*", "magnitud*", "descri*", "beschreib*"}

// unitNames are the stems of columns that hold a row's unit.
var unitNames = []string{"unit*", "uom", "einheit*", "enhet*", "unite*", "unidad*", "yksik*", "uhik*"}

// learnKeys finds the columns that hold the keys of rows; a variable or a unit beside a value makes the long
// form.
func (l *layout) learnKeys(rows []record, names []string) {
	var found []column
	for i := range l.width {
		if l.clock.uses(i) {
			continue
		}
		c := column{index: i}
		if i < len(names) {
			c.header = names[i]
		}
		if c.kind = l.keyKind(l.tally(rows, i), c.header); c.kind != skipped {
			found = append(found, c)
		}
	}
	plain, named := l.valueColumns(rows, names)
	if plain == 1 && named == 0 && !slices.ContainsFunc(found, func(c column) bool { return c.kind == variable }) {
		found = append(l.variableInDevice(rows, names), found...)
	}
	l.keys = found
	for _, c := range found {
		l.long = l.long || c.kind == variable && plain > 0 || c.kind == unitCell && plain == 1 && named == 0
	}
	if !l.long {
		l.keys = nil
		l.keepUnits(rows, found)
	}
}

// variableInDevice is the first column of loggers' names each of which says what is measured, as the name of a channel does.
func (l *layout) variableInDevice(rows []record, names []string) []column {
	for i := range min(l.width, len(names)) {
		t := l.tally(rows, i)
		if l.clock.uses(i) || t.numbers > 0 || t.filled == 0 || !t.isDevice(rows) || !anyPhrase(deviceNames, words(names[i])) {
			continue
		}
		telling := 0
		for cell := range t.distinct {
			c := column{header: text([]byte(cell))}
			c.describe(nil)
			telling += one(c.quantity != Other && len(cell) <= longestName)
		}
		if telling == len(t.distinct) {
			return []column{{index: i, header: names[i], kind: variable}}
		}
	}
	return nil
}

// dropDevicesOfVariables drops a column of loggers' names where each of them has a variable of its own that names its
// logger too, as the numbers of channels stand beside their names.
func (l *layout) dropDevicesOfVariables(rows []record) {
	spare := map[int]bool{}
	for _, v := range l.keys {
		if v.kind != variable || !l.namesLoggers(rows, v.index) {
			continue
		}
		n := distinctCells(rows, v.index)
		for _, c := range l.columns {
			if c.kind == device && n > 1 && distinctCells(rows, c.index) == n && distinctCells(rows, c.index, v.index) == n {
				spare[c.index] = true
			}
		}
	}
	l.drop(spare)
}

// namesLoggers says whether most cells of a column of variables that are of air name a logger too.
func (l *layout) namesLoggers(rows []record, index int) bool {
	named, of := 0, 0
	for cell := range l.tally(rows, index).distinct {
		c := column{header: text([]byte(cell))}
		c.describe(nil)
		if c.quantity == AirTemperature || c.quantity == RelativeHumidity {
			named, of = named+one(c.likeness != ""), of+1
		}
	}
	return of > 0 && 2*named > of
}

// valueNames are the stems of columns that hold the values of the long form.
var valueNames = []string{"value*", "val", "state", "wert*", "messwert*", "valeur*", "valor*", "varde*", "verdi*", "vaerdi*", "arvo*", "vaartus*", "waarde*", "wartosc*", "hodnota*",
	"measurement*", "reading*", "medicion*", "medida*", "lectura*", "resultado*", "result"}

// keepValues takes, of several columns of numbers without a telling name, those named as values for the rows'
// values: a count beside them is of no variable.
func (l *layout) keepValues() {
	named := func(c column) bool { return c.kind == number && !c.told && anyPhrase(valueNames, words(c.header)) }
	if !l.long || !slices.ContainsFunc(l.columns, named) {
		return
	}
	for i := range l.columns {
		if c := &l.columns[i]; c.kind == number && !named(*c) {
			c.told = true
		}
	}
}

// keepUnits takes the columns of units that stand behind columns of values, where they name one throughout. Those
// of temperatures are read row by row.
func (l *layout) keepUnits(rows []record, found []column) {
	l.beside = map[int]string{}
	for _, c := range found {
		if c.kind != unitCell {
			continue
		}
		of := l.numberBefore(rows, c.index)
		if of >= 0 && l.tally(rows, c.index).areTemperatures() {
			l.keys = append(l.keys, c)
			continue
		}
		l.keys = append(l.keys, column{index: c.index, kind: ordinal})
		for cell := range l.tally(rows, c.index).distinct {
			l.beside[of] = cmp.Or(unitInCell(text([]byte(cell))), text([]byte(cell)))
		}
		if len(l.tally(rows, c.index).distinct) > 1 {
			delete(l.beside, of)
		}
	}
}

// numberBefore is the column of numbers whose unit stands in a column: the one before it, or before a grade between;
// −1 where there is none.
func (l *layout) numberBefore(rows []record, unit int) int {
	for i := unit - 1; i >= max(0, unit-2); i-- {
		if t := l.tally(rows, i); t.numbers > 0 && !l.clock.uses(i) {
			return i
		}
	}
	return -1
}

// longestName is how many bytes the name of a variable or a unit may have. Cut by a delimiter that is not the file's, a
// row of a thousand columns is one cell.
const longestName = 200

// keyKind says whether cells are the names of variables or units, or else skipped.
func (l *layout) keyKind(t columnTally, header string) columnKind {
	name := words(header)
	if t.filled == 0 || t.numbers > 0 || len(t.distinct) > maxDevices {
		return skipped
	}
	measured, units, telling := map[Quantity]bool{}, 0, false
	named := 0
	for cell := range t.distinct {
		if len(cell) > longestName || hasNamedNumber([]byte(cell)) {
			return skipped
		}
		if unitInCell(text([]byte(cell))) != "" {
			units++
			telling = telling || len(cell) > 1 || cell == "%"
		}
		c := column{header: text([]byte(cell))}
		c.describe(nil)
		if c.quantity != Other {
			named++
			measured[c.quantity] = true
		}
	}
	switch {
	case units == len(t.distinct) && (anyPhrase(unitNames, name) || units > 1 && telling || header == "" && telling):
		return unitCell
	case anyPhrase(unitNames, name) && (units > 0 || t.looksLikeUnits()):
		return unitCell
	case anyPhrase(variableNames, name) && named > 0, 2*named >= len(t.distinct) && len(measured) > 1:
		return variable
	}
	return skipped
}

// looksLikeUnits says whether a column's cells have the marks of units.
func (t columnTally) looksLikeUnits() bool {
	for cell := range t.distinct {
		if looksLikeUnit(text([]byte(cell))) {
			return true
		}
	}
	return false
}

// valueColumns counts the columns of numbers or states: those named after no quantity, as one of several
// quantities is, and those named after one.
func (l *layout) valueColumns(rows []record, names []string) (plain, named int) {
	for i := range l.width {
		c := column{index: i}
		if i < len(names) {
			c.header = names[i]
		}
		c.describe(nil)
		if l.clock.uses(i) {
			continue
		}
		switch t := l.tally(rows, i); {
		case t.isIndex || 2*t.values <= t.filled:
		case c.quantity != Other:
			named++
		case c.unit == "" && !anyPhrase(deviceNames, words(c.header)) && !anyPhrase(flagNames, words(c.header)):
			plain++
		}
	}
	return plain, named
}

// keyKindOf is the kind of the key in a column, or skipped.
func (l *layout) keyKindOf(index int) columnKind {
	for _, k := range l.keys {
		if k.index == index {
			return k.kind
		}
	}
	return skipped
}

// keyed numbers the keys of a file's rows.
type keyed struct {
	columns []column // device, variable and unit columns
	long    bool
	known   map[string]int32
	names   [][]string // by id, a cell for each of the columns
	stated  map[int32]bool
	of      []int32 // by row
	key     []byte
	last    []byte
	lastID  int32
}

// add takes the key of the next row.
func (k *keyed) add(cells [][]byte) {
	if len(k.of) > 0 && k.saysNothing(cells) {
		k.of = append(k.of, k.lastID)
		return
	}
	k.key = k.key[:0]
	for _, c := range k.columns {
		if c.index < len(cells) {
			k.key = append(k.key, c.keyOf(cells[c.index])...)
		}
		k.key = append(k.key, 0)
	}
	if len(k.of) == 0 || !bytes.Equal(k.key, k.last) {
		id, found := k.known[string(k.key)]
		if !found {
			id = int32(len(k.names))
			k.known[string(k.key)] = id
			k.names = append(k.names, keyTexts(k.key))
		}
		k.lastID = id
		k.last = append(k.last[:0], k.key...)
	}
	k.of = append(k.of, k.lastID)
}

// saysNothing says whether the words of an event name no state, and so nothing that has one.
func (k *keyed) saysNothing(cells [][]byte) bool {
	return slices.ContainsFunc(k.columns, func(c column) bool {
		if c.kind != event || c.index >= len(cells) {
			return false
		}
		_, _, ok := eventState(trim(cells[c.index]))
		return !ok
	})
}

// keyOf is what a cell of a key's column tells rows apart by.
func (c column) keyOf(cell []byte) []byte {
	if c.kind == event {
		_, subject, _ := eventState(trim(cell))
		return subject
	}
	return trim(cell)
}

// keyTexts are a key's cells.
func keyTexts(key []byte) []string {
	var out []string
	for _, cell := range bytes.Split(key[:len(key)-1], []byte{0}) {
		out = append(out, text(cell))
	}
	return out
}

// rows are the rows of each key.
func (k *keyed) rows() [][]int32 {
	out := make([][]int32, len(k.names))
	for row, id := range k.of {
		out[id] = append(out[id], int32(row))
	}
	return out
}

// splitByKey gives each key columns of its own, with its rows alone.
func (s *scan) splitByKey() {
	if s.keyed == nil {
		return
	}
	var out []values
	ofQuantities := len(s.blocks) > 0 && s.keyed.nameQuantities()
	for id, rows := range s.keyed.rows() {
		for i := range s.columns {
			c := s.columns[i].ofRows(rows)
			c.lead = i == 0
			s.keyed.describe(&c, int32(id))
			if ofQuantities {
				c.takeQuantity(s.keyed.names[id][0])
			}
			out = append(out, c)
		}
	}
	s.columns = out
}

// ofRows is a column with some of its rows.
func (c *values) ofRows(rows []int32) values {
	out := values{column: c.column, decimals: c.decimals, rows: rows, val: make([]float64, len(rows))}
	for i, row := range rows {
		out.val[i] = c.val[row]
	}
	return out
}

// describe says by its key which logger a column is from and what it measures.
func (k *keyed) describe(c *values, id int32) {
	var name, unit string
	for i, key := range k.columns {
		cell := k.names[id][i]
		switch key.kind {
		case device, event:
			c.logger = joined(c.logger, cell)
		case variable:
			name = joined(name, cell)
		case unitCell:
			unit = cell
		}
	}
	if k.long && c.extreme {
		c.variable = name
	}
	if !k.long || c.kind == vacant || c.told || c.unit != "" || c.extreme {
		return
	}
	said := column{header: name}
	said.describe([]string{unit})
	if said.unit == "" {
		said.unit = unit
	}
	if said.statistic > average {
		said.quantity, c.extreme = Other, true
	}
	c.variable, c.quantity = name, said.quantity
	c.liken(said.likeness)
	if c.unit = said.unit; c.unit != "" {
		c.unitFrom = "column"
	}
	if c.quantity == Other && c.unit == "" && (k.stated[id] || anyPhrase(stateNames, words(name)) && c.isBinary()) {
		c.quantity = State
	}
	c.decimals = digitsOf(c.val)
}

func joined(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}

// isBinary says whether a column holds nothing but 0 and 1.
func (c *values) isBinary() bool {
	for _, v := range c.val {
		if v == v && v != 0 && v != 1 {
			return false
		}
	}
	return true
}

// digitsOf counts how many digits behind the mark the values need; every value counts as having as many as
// the one that needs most, for trailing zeros are lost.
func digitsOf(val []float64) (decimals [fastDigits + 2]int) {
	most := 0
	for _, v := range val {
		for v == v && most < 6 && math.Abs(v*pow10[most]-math.Round(v*pow10[most])) > 1e-6 {
			most++
		}
	}
	decimals[most] = 1
	return decimals
}
