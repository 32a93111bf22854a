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
	for _, i := range at {
		spare[i] = !kept[i]
	}
	l.drop(spare)
}

// distinctCells counts the different cells, or rows of cells, that some columns hold.
func distinctCells(rows []record, columns ...int) int {
	seen := make(map[string]bool, len(rows))
	var key []byte
	for _, r := range rows {
		key = key[:0]
		for _, i := range columns {
			key = append(append(key, trim(r.cells[i])...), 0)
		}
		if !seen[string(key)] {
			seen[string(key)] = true
		}
	}
	return len(seen)
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
	events := kinds[device] == 0 && (kinds[state]+kinds[runEnd] == 1 && kinds[number] == 0 || kinds[runEnd] == 1)
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
	if !events && !l.long {
		l.findNumbered(rows, keys)
	}
}

// findTurns takes a column of words for the loggers' names where the same few come in the same order again and again.
func (l *layout) findTurns(rows []record) bool {
	const rounds = 3
	for i := range l.width {
		if l.isTaken(i) {
			continue
		}
		t := l.tally(rows, i)
		n := len(t.distinct)
		if t.numbers > 0 || !t.isDevice(rows) || n < 2 || len(rows) < rounds*n || 2*t.digitFirst > t.filled {
			continue
		}
		again, changes := 0, 0
		for k := n; k < len(rows); k++ {
			again += one(bytes.Equal(trim(rows[k].cells[i]), trim(rows[k-n].cells[i])))
			changes += one(!bytes.Equal(trim(rows[k].cells[i]), trim(rows[k-1].cells[i])))
		}
		if all := len(rows) - n; 10*again >= 9*all && 10*changes >= 9*all {
			l.columns = append(l.columns, column{index: i, kind: device})
			return true
		}
	}
	return false
}

// findNumbered takes a column of a few whole numbers for what tells loggers apart where each of them comes with each
// time.
func (l *layout) findNumbered(rows []record, keys []int) {
	times := distinctCells(rows, keys...)
	for i := range l.columns {
		c := &l.columns[i]
		t := l.tally(rows, c.index)
		n := len(t.distinct)
		if c.kind != number || c.told || c.unit != "" || t.fractions > 0 || t.numbers < t.filled || n < 2 || 10*n*times > 11*len(rows) {
			continue
		}
		if 20*distinctCells(rows, append(keys, c.index)...) >= 19*len(rows) {
			c.kind = device
			return
		}
	}
}

// isTaken says whether a column is the clock's or read already.
func (l *layout) isTaken(index int) bool {
	return l.clock.uses(index) || slices.ContainsFunc(l.columns, func(c column) bool { return c.index == index })
}
