package importers

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
)

// Weather services and the like hand out a winter as an object with an array for each column: all times, then all
// temperatures. Turned by a quarter it is a table.

// mostObjectBytes is how much text is taken for such an object.
const mostObjectBytes = 64 << 20

// columnTable is the table whose columns are the arrays of an object within a text; nil when there is none.
func columnTable(r io.Reader) (table []byte, err error) {
	text, err := io.ReadAll(io.LimitReader(r, mostObjectBytes))
	if err != nil {
		return nil, err
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var top any
	if d.Decode(&top) != nil {
		return nil, nil
	}
	var longest columnArrays
	longest.find(top, nil)
	return longest.table(), nil
}

// columnArrays are arrays of an object, all as long, one for each column; units are what is said of their names beside it.
type columnArrays struct {
	of    map[string]any
	names []string
	rows  int
	units map[string]any
}

// find takes the longest arrays of an object and of those within it.
func (c *columnArrays) find(v any, units map[string]any) {
	object, ok := v.(map[string]any)
	if !ok {
		return
	}
	byLength := map[int][]string{}
	for _, key := range slices.Sorted(maps.Keys(object)) {
		if array, ok := object[key].([]any); ok {
			byLength[len(array)] = append(byLength[len(array)], key)
		}
		beside, _ := object[key+"_units"].(map[string]any)
		c.find(object[key], beside)
	}
	for rows, names := range byLength {
		if len(names) > 1 && rows > max(1, c.rows) {
			*c = columnArrays{object, names, rows, units}
		}
	}
}

// table has the arrays for columns; nil where there are none.
func (c *columnArrays) table() []byte {
	if c.rows == 0 {
		return nil
	}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	cells := make([]string, len(c.names))
	for i, name := range c.names {
		if cells[i] = name; c.units[name] != nil {
			cells[i] += fmt.Sprintf(" (%v)", c.units[name])
		}
	}
	_ = w.Write(cells) // a buffer takes everything
	for row := range c.rows {
		for i, name := range c.names {
			if cells[i] = ""; c.of[name].([]any)[row] != nil {
				cells[i] = fmt.Sprint(c.of[name].([]any)[row])
			}
		}
		_ = w.Write(cells)
	}
	w.Flush()
	return out.Bytes()
}
