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
	return arraysAsTable(top, nil), nil
}

// arraysAsTable looks for the arrays in an object and those within it; units are what is said beside it of the same names.
func arraysAsTable(v any, units map[string]any) []byte {
	object, ok := v.(map[string]any)
	if !ok {
		return nil
	}
	names, rows := []string{}, 0
	keys := slices.Sorted(maps.Keys(object))
	for _, key := range keys {
		if array, ok := object[key].([]any); ok && len(array) > 1 && (rows == 0 || len(array) == rows) {
			names, rows = append(names, key), len(array)
		}
	}
	if len(names) > 1 {
		return tableOfArrays(object, names, rows, units)
	}
	for _, key := range keys {
		beside, _ := object[key+"_units"].(map[string]any)
		if table := arraysAsTable(object[key], beside); table != nil {
			return table
		}
	}
	return nil
}

// tableOfArrays is the table with the arrays of those names for columns.
func tableOfArrays(object map[string]any, names []string, rows int, units map[string]any) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	cells := make([]string, len(names))
	for i, name := range names {
		if cells[i] = name; units[name] != nil {
			cells[i] += fmt.Sprintf(" (%v)", units[name])
		}
	}
	for row := range rows {
		_ = w.Write(cells) // a buffer takes everything
		for i, name := range names {
			if cells[i] = ""; object[name].([]any)[row] != nil {
				cells[i] = fmt.Sprint(object[name].([]any)[row])
			}
		}
	}
	_ = w.Write(cells)
	w.Flush()
	return out.Bytes()
}
