package importers

// A logger may be told to go on in another unit: a column behind its temperatures then says row by row which it is.

// areTemperatures says whether a column's cells are units of temperature, all of them.
func (t columnTally) areTemperatures() bool {
	for cell := range t.distinct {
		if unit := unitInCell(text([]byte(cell))); unit == "" || !unitFits(AirTemperature, unit) {
			return false
		}
	}
	return len(t.distinct) > 0
}

// settleRowUnits converts the temperatures in front of such columns to °C where their units change, and takes these
// out of the rows' keys. A value whose unit can't be told is unreadable.
func (s *scan) settleRowUnits() {
	if s.keyed == nil || s.keyed.long || len(s.keyed.of) == 0 {
		return
	}
	for at := len(s.keyed.columns) - 1; at >= 0; at-- {
		if key := s.keyed.columns[at]; key.kind == unitCell {
			if c := s.numberBefore(key.index); c != nil && c.unit == "" {
				c.takeRowUnits(s.keyed.unitsAt(at), s.keyed.of)
			}
			s.keyed.drop(at)
		}
	}
	if len(s.keyed.columns) == 0 {
		s.keyed = nil
	}
}

// numberBefore is the column of numbers in front of a column of units, or of a grade between; nil where there is none.
func (s *scan) numberBefore(unit int) (of *values) {
	for i := range s.columns {
		if c := &s.columns[i]; c.kind == number && c.index < unit && c.index >= unit-2 {
			of = c
		}
	}
	return of
}

// unitsAt are the units that a key's column names, by id. An empty cell names the only one there is.
func (k *keyed) unitsAt(at int) []string {
	out := make([]string, len(k.names))
	found := map[string]bool{}
	for id, names := range k.names {
		if out[id] = unitInCell(names[at]); out[id] != "" {
			found[out[id]] = true
		}
	}
	for only := range found {
		for id := range out {
			if out[id] == "" && k.names[id][at] == "" && len(found) == 1 {
				out[id] = only
			}
		}
	}
	return out
}

// takeRowUnits takes the unit of each row's value, where there are several by converting to °C.
func (c *values) takeRowUnits(units []string, of []int32) {
	for _, unit := range units {
		if unit != units[0] || unit == "" {
			c.takeUnit("degC", "column")
			for row, id := range of {
				c.convert(row, units[id])
			}
			return
		}
	}
	c.takeUnit(units[0], "column")
}

// convert takes one value to °C.
func (c *values) convert(row int, unit string) {
	c.changed()
	switch v := c.val[row]; {
	case v != v:
	case !unitFits(AirTemperature, unit) || unit == "":
		c.val[row] = unreadable
	default:
		toCelsius(c.val[row:row+1], unit)
	}
}

// drop takes a column out of the keys; rows that only it told apart are one key's.
func (k *keyed) drop(at int) {
	k.columns = append(k.columns[:at:at], k.columns[at+1:]...)
	ids, known, names := make([]int32, len(k.names)), map[string]int32{}, [][]string(nil)
	stated := map[int32]bool{}
	for id, cells := range k.names {
		cells = append(cells[:at:at], cells[at+1:]...)
		key := ""
		for _, cell := range cells {
			key += cell + "\x00"
		}
		merged, found := known[key]
		if !found {
			merged = int32(len(names))
			known[key] = merged
			names = append(names, cells)
		}
		ids[id] = merged
		stated[merged] = stated[merged] || k.stated[int32(id)]
	}
	for row, id := range k.of {
		k.of[row] = ids[id]
	}
	k.names, k.stated = names, stated
}
