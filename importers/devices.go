package importers

import (
	"bytes"
	"slices"
)

// Which columns say what logger a row is from.

// namesDevice says whether a column's name is one for what tells loggers apart, by numbers or in words.
func namesDevice(name []nameWord, byNumbers bool) bool {
	if !anyPhrase(deviceNames, name) || anyPhrase(conditionNames, name) {
		return false
	}
	return !byNumbers || !slices.ContainsFunc(name, func(w nameWord) bool {
		alone := []nameWord{w}
		return !isDigit(w.low[0]) && !anyPhrase(deviceNames, alone) && !anyPhrase(numberedNames, alone)
	})
}

// comesAgain says whether some name in a column stands at two times: what is new with every time counts readings.
func (l *layout) comesAgain(rows []record, col int) bool {
	first := map[string]int64{}
	for _, r := range rows {
		at, _, _ := l.clock.read(l.clock, r.cells)
		name := string(trim(r.cells[col]))
		if before, found := first[name]; !found {
			first[name] = at
		} else if before != at {
			return true
		}
	}
	return false
}

// pruneDevices drops what tells no loggers apart: of several columns that name one, those that hold one name
// throughout, and then all but one that tells as many apart as all together.
func (l *layout) pruneDevices(rows []record) {
	var at []int
	for _, c := range l.columns {
		if c.kind == device {
			at = append(at, c.index)
		}
	}
	if len(at) < 2 {
		return
	}
	at = l.withoutCodes(rows, at)
	all := distinctCells(rows, at...)
	kept := map[int]bool{}
	for _, i := range at {
		n := distinctCells(rows, i)
		if n == all {
			kept = map[int]bool{i: true}
			break
		}
		kept[i] = n > 1
	}
	spare := map[int]bool{}
	for _, c := range l.columns {
		spare[c.index] = c.kind == device && !kept[c.index]
	}
	l.drop(spare)
}

// sourceNames are the stems of columns that may say how a row came about, not which logger it is from.
var sourceNames = []string{"source*"}

// namesCode says whether a column is named as such a one or, where a row says of which variable it is, as one of units.
func (l *layout) namesCode(index int) bool {
	name := words(l.columnOf(index).header)
	return anyPhrase(sourceNames, name) || l.long && anyPhrase(unitNames, name)
}

// withoutCodes are columns that name a logger without those codes, where no time of the same logger and
// variable comes more often then.
func (l *layout) withoutCodes(rows []record, devices []int) []int {
	keys := slices.Clone(l.clock.columns)
	for _, c := range l.columns {
		if c.kind == variable || c.kind == unitCell {
			keys = append(keys, c.index)
		}
	}
	all := distinctCells(rows, slices.Concat(keys, devices)...)
	for _, i := range devices {
		rest := slices.DeleteFunc(slices.Clone(devices), func(k int) bool { return k == i })
		if l.namesCode(i) && len(rest) > 0 && distinctCells(rows, slices.Concat(keys, rest)...) == all {
			return l.withoutCodes(rows, rest)
		}
	}
	return devices
}

// columnOf is the column that is read at a place; nil where none is.
func (l *layout) columnOf(index int) *column {
	for i := range l.columns {
		if l.columns[i].index == index {
			return &l.columns[i]
		}
	}
	return nil
}

// distinctCells counts the different cells, or rows of cells, that some columns hold.
func distinctCells(rows []record, columns ...int) int { return len(timesOfCells(rows, columns...)) }

// timesOfCells is how often each of the different cells, or rows of cells, of some columns comes.
func timesOfCells(rows []record, columns ...int) (times []int) {
	at := make(map[string]int, len(rows))
	var key []byte
	for _, r := range rows {
		key = key[:0]
		for _, i := range columns {
			key = append(append(key, trim(r.cells[i])...), 0)
		}
		nth, found := at[string(key)]
		if !found {
			nth = len(times)
			at[string(key)], times = nth, append(times, 0)
		}
		times[nth]++
	}
	return times
}

// findDevice takes a column of words for the loggers' names, whatever it is called, when rows of the same time, and
// of the same logger as far as it is named, come again and again and the words tell them apart; else one of whole
// numbers that come with every time, as the depths of probes do; and in a list of events, which has one state a row.
func (l *layout) findDevice(rows []record) {
	keys := append([]int{}, l.clock.columns...)
	kinds := map[columnKind]int{}
	for _, c := range l.columns {
		kinds[c.kind]++
		if c.kind == variable || c.kind == unitCell || c.kind == device {
			keys = append(keys, c.index)
		}
	}
	events := kinds[device] == 0 && (kinds[state]+kinds[runEnd]+l.binaries(rows) == 1 && kinds[number] == l.binaries(rows) || kinds[runEnd] == 1)
	if kinds[device] == 0 && l.findTurns(rows) {
		return
	}
	if !events && 4*distinctCells(rows, keys...) > 3*len(rows) {
		return
	}
	for i := range l.width {
		if l.isTaken(i) {
			continue
		}
		t := l.tally(rows, i)
		if t.numbers > 0 || !t.isDevice(rows) || len(t.distinct) < 2 {
			continue
		}
		if events || 20*distinctCells(rows, append(keys, i)...) >= 19*len(rows) {
			l.columns = append(l.columns, column{index: i, kind: device})
			return
		}
	}
	if !events && !l.long && !l.findNumbered(rows, keys) {
		l.findCrossed(rows, keys)
	}
}

// binaries counts the columns of numbers that hold nothing but 0 and 1.
func (l *layout) binaries(rows []record) (n int) {
	for _, c := range l.columns {
		t := l.tally(rows, c.index)
		n += one(c.kind == number && c.unit == "" && c.quantity == Other && t.filled > 0 && t.states == t.filled)
	}
	return n
}

// findTurns takes a column of words, or in a table without names one of whole numbers, for the loggers' names where the
// same few come in the same order again and again.
func (l *layout) findTurns(rows []record) bool {
	const rounds = 3
	for i := range l.width {
		c := l.columnOf(i)
		coded := l.nameless && c != nil && l.isCode(rows, c)
		if l.isTaken(i) && !coded {
			continue
		}
		t := l.tally(rows, i)
		n := len(t.distinct)
		if n < 2 || len(rows) < rounds*n || !coded && (t.numbers > 0 || !t.isDevice(rows) || 2*t.digitFirst > t.filled) {
			continue
		}
		again, changes := 0, 0
		for k := n; k < len(rows); k++ {
			again += one(bytes.Equal(trim(rows[k].cells[i]), trim(rows[k-n].cells[i])))
			changes += one(!bytes.Equal(trim(rows[k].cells[i]), trim(rows[k-1].cells[i])))
		}
		if all := len(rows) - n; 10*again >= 9*all && 10*changes >= 9*all {
			l.takeDevices([]int{i})
			return true
		}
	}
	return false
}

// findNumbered takes a column of a few whole numbers for what tells loggers apart where each of them comes with each
// time, and says whether there is one.
func (l *layout) findNumbered(rows []record, keys []int) bool {
	times := distinctCells(rows, keys...)
	for i := range l.columns {
		c := &l.columns[i]
		if !l.isCode(rows, c) || 10*len(l.tally(rows, c.index).distinct)*times > 11*len(rows) {
			continue
		}
		if 20*distinctCells(rows, append(keys, c.index)...) >= 19*len(rows) {
			c.kind = device
			return true
		}
	}
	return false
}

// isCode says whether a column holds a few whole numbers and nothing says what they measure.
func (l *layout) isCode(rows []record, c *column) bool {
	t := l.tally(rows, c.index)
	n := len(t.distinct)
	return c.kind == number && !c.told && c.unit == "" && t.fractions == 0 && t.numbers == t.filled && n > 1 && n <= maxDevices
}

// findCrossed takes two columns of words or codes, else three, for what tells loggers apart together, as the treatments
// of a trial and their repetitions do: where no time comes again for the same ones, and all come as often.
func (l *layout) findCrossed(rows []record, keys []int) {
	all := l.crossable(rows)
	var pairs, triples [][]int
	for i, a := range all {
		for k, b := range all[i+1:] {
			pairs = append(pairs, []int{a, b})
			for _, c := range all[i+k+2:] {
				triples = append(triples, []int{a, b, c})
			}
		}
	}
	for _, chosen := range append(pairs, triples...) {
		if 20*distinctCells(rows, slices.Concat(keys, chosen)...) >= 19*len(rows) && comeAsOften(rows, chosen) {
			l.takeDevices(chosen)
			return
		}
	}
}

// crossable are the columns of words and of codes that may tell loggers apart together with others: the first few.
func (l *layout) crossable(rows []record) (out []int) {
	const most = 6
	for i := range l.width {
		t := l.tally(rows, i)
		c := l.columnOf(i)
		words := !l.isTaken(i) && t.numbers == 0 && t.filled == len(rows) && t.isDevice(rows) && len(t.distinct) > 1
		if len(out) < most && (words || c != nil && l.isCode(rows, c)) {
			out = append(out, i)
		}
	}
	return out
}

// comeAsOften says whether the different rows of cells of some columns come about as often as one another, and again.
func comeAsOften(rows []record, columns []int) bool {
	times := timesOfCells(rows, columns...)
	least, most := slices.Min(times), slices.Max(times)
	return least > 1 && 3*least >= 2*most
}

// takeDevices makes columns tell loggers apart, in their order.
func (l *layout) takeDevices(at []int) {
	for _, i := range at {
		if c := l.columnOf(i); c != nil {
			c.kind = device
			continue
		}
		k := slices.IndexFunc(l.columns, func(c column) bool { return c.index > i })
		if k < 0 {
			k = len(l.columns)
		}
		l.columns = slices.Insert(l.columns, k, column{index: i, kind: device})
	}
}

// isTaken says whether a column is the clock's or read already.
func (l *layout) isTaken(index int) bool {
	return l.clock.uses(index) || l.columnOf(index) != nil
}
