package desk

import (
	"fmt"
	"slices"
	"strings"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// FileColumns are the columns of a file that measure something, and which logger each is taken for.
type FileColumns struct {
	Columns []FileColumn
	Loggers []string // in a line each, which columns are whose
	Holds   string   // for which files a change holds
}

// FileColumn is one of them: its number counted from 1, its name, what it measures, its first reading, and the
// logger it is taken for, or LeftOutColumn.
type FileColumn struct {
	Number              int
	Header, What, First string
	Logger              string
	quantity            string
}

// LeftOutColumn stands in a logger's place where a column is not used.
const LeftOutColumn = "left out"

// columns are a file's columns where they can be grouped anew: more than one pair of them, or fewer since some
// were left out, and each of one logger only.
func (b Book) columns(f engine.File, u Units) FileColumns {
	if f.Export == nil || byRows(f) {
		return FileColumns{}
	}
	out := FileColumns{Columns: b.fileColumns(f, u)}
	air, regrouped := 0, false
	for _, c := range out.Columns {
		if usable(c.quantity) && (isHeat(c.quantity) || c.quantity == "relative_humidity") {
			air++
		}
		regrouped = regrouped || c.Logger == LeftOutColumn
	}
	if air < 3 && !regrouped {
		return FileColumns{}
	}
	out.takeOrder(b.looked.previews[f.Name])
	out.Loggers = out.grouped()
	out.Holds = "Holds for this file alone, since a logger is still called after the file."
	if b.wholeLayout(f, out.Columns) {
		out.Holds = "Holds for every file written like this one, now and later."
	}
	return out
}

// byRows says whether the rows name their loggers, so that a column is several loggers'.
func byRows(f engine.File) bool {
	logger := map[int]string{}
	for _, s := range f.Export.Series {
		if before, seen := logger[s.ColumnIndex]; seen && before != s.Logger {
			return true
		}
		logger[s.ColumnIndex] = s.Logger
	}
	return false
}

// fileColumns are the columns that measure something and those the keeper left out, in the file's order.
func (b Book) fileColumns(f engine.File, u Units) (out []FileColumn) {
	left, further := b.columnsOut(f), furtherTemps(f)
	for _, s := range f.Export.Series {
		word := quantityWords[string(s.Quantity)]
		if word == "" && !left[s.ColumnIndex] {
			continue
		}
		c := FileColumn{Number: s.ColumnIndex, Header: s.Column, What: word, Logger: s.Logger, quantity: string(s.Quantity)}
		if slices.Contains(further, s.Column) {
			c.Logger = columnName(s.Column)
		}
		if left[s.ColumnIndex] {
			c.Logger = LeftOutColumn
		}
		if len(s.Val) > 0 {
			c.First = preview{quantity: c.quantity, unit: s.Unit}.value(s.Val[0], u.writtenIn(s.Unit))
		}
		out = append(out, c)
	}
	slices.SortStableFunc(out, func(a, b FileColumn) int { return a.Number - b.Number })
	return out
}

// writtenIn are the units of a column, so that what is shown of it is what stands in the file.
func (u Units) writtenIn(unit string) Units {
	u.Temperature = Celsius
	if unit == "degF" {
		u.Temperature = Fahrenheit
	}
	return u
}

// columnsOut are a file's columns that the keeper left out.
func (b Book) columnsOut(f engine.File) map[int]bool {
	out := map[int]bool{}
	for _, a := range b.answersOf(f) {
		groups, _ := engine.ParseGroups(a.Option)
		for _, g := range groups {
			for _, c := range g.Columns {
				out[c] = g.Out && a.ID == engine.Pairing
			}
		}
	}
	return out
}

// takeOrder takes the loggers from what the file would say with the first answer, while it asks.
func (c *FileColumns) takeOrder(all []preview) {
	i := slices.IndexFunc(all, func(p preview) bool { return p.id == engine.Pairing })
	for j := range c.Columns {
		if i >= 0 && all[i].loggers[c.Columns[j].Number] != "" {
			c.Columns[j].Logger = all[i].loggers[c.Columns[j].Number]
		}
	}
}

// Names are the loggers the columns are taken for, each once, in order.
func (c FileColumns) Names() (out []string) {
	for _, col := range c.Columns {
		if col.Logger != LeftOutColumn && !slices.Contains(out, col.Logger) {
			out = append(out, col.Logger)
		}
	}
	return out
}

// grouped are lines such as "north: Temp A (column 2), 4.0 °C, with RH Y (column 5), 60 %".
func (c FileColumns) grouped() (out []string) {
	line := func(logger string) string {
		var parts []string
		for _, col := range c.Columns {
			if col.Logger == logger {
				parts = append(parts, fmt.Sprintf("%s (column %d) %s", col.named(), col.Number, col.First))
			}
		}
		return strings.Join(parts, ", ")
	}
	for _, name := range c.Names() {
		out = append(out, name+": "+line(name))
	}
	if left := line(LeftOutColumn); left != "" {
		out = append(out, "Left out: "+left)
	}
	return out
}

// named is a column's name in the file, else what it measures.
func (c FileColumn) named() string {
	if name := strings.TrimSpace(c.Header); name != "" {
		return clipped(name, cellRunes)
	}
	return capital(c.What)
}

// alike are the files written like one, itself first.
func (b Book) alike(f engine.File) []engine.File {
	out := []engine.File{f}
	for _, o := range b.files() {
		if o.Name != f.Name && o.Export != nil && engine.LayoutOf(o.Export) == engine.LayoutOf(f.Export) {
			out = append(out, o)
		}
	}
	return out
}

// wholeLayout says whether the loggers' names hold for every file of the kind: none is called after the file.
func (b Book) wholeLayout(f engine.File, columns []FileColumn) bool {
	return !slices.ContainsFunc(columns, func(c FileColumn) bool { return strings.HasPrefix(c.Logger, titleOf(f.Name)) })
}

// Regroup is the edit that takes each column of a file for the logger named in its place, or leaves it out;
// problem is a sentence where it can't be taken so, and there is no edit where nothing changes.
func (b Book) Regroup(name string, c FileColumns, loggers []string) (edit winter.Edit, problem string) {
	i := fileNamed(b.files(), name)
	if i < 0 || len(loggers) != len(c.Columns) {
		return nil, ""
	}
	f, columns, changed := b.files()[i], slices.Clone(c.Columns), slices.Contains(questionIDs(b.files()[i]), engine.Pairing)
	for j := range columns {
		logger := strings.Join(strings.Fields(strings.ReplaceAll(loggers[j], ",", " ")), " ")
		if logger == "" {
			return nil, fmt.Sprintf("Say which logger column %d is of, or that it is left out.", columns[j].Number)
		}
		changed = changed || logger != columns[j].Logger
		columns[j].Logger = logger
	}
	if problem = twiceTheSame(columns); problem != "" || !changed {
		return nil, problem
	}
	files, layout := []engine.File{f}, ""
	if b.wholeLayout(f, columns) {
		files, layout = b.alike(f), engine.LayoutOf(f.Export)
	}
	after := map[int]string{}
	for _, col := range columns {
		if col.Logger != LeftOutColumn {
			after[col.Number] = col.Logger
		}
	}
	e := winter.Regroup{Answer: winter.SetAnswer{ID: engine.Pairing, Option: groupsOf(columns), Layout: layout}}
	for _, o := range files {
		e.Answer.Files = append(e.Answer.Files, o.Name)
		e.Loggers = append(e.Loggers, moved(o, after)...)
	}
	return e, ""
}

// twiceTheSame says which logger would measure the same twice.
func twiceTheSame(columns []FileColumn) string {
	for i, c := range columns {
		for _, o := range columns[:i] {
			if c.Logger != LeftOutColumn && c.Logger == o.Logger && c.quantity == o.quantity {
				return fmt.Sprintf("%s would have the %s of two columns, %d and %d. Give one of them to another logger, or leave it out.", c.Logger, c.What, o.Number, c.Number)
			}
		}
	}
	return ""
}

// groupsOf is the answer that says which columns are whose.
func groupsOf(columns []FileColumn) string {
	var groups []engine.ColumnGroup
	for _, c := range columns {
		i := slices.IndexFunc(groups, func(g engine.ColumnGroup) bool { return g.Name == c.Logger })
		if i < 0 {
			i = len(groups)
			groups = append(groups, engine.ColumnGroup{Name: c.Logger, Out: c.Logger == LeftOutColumn})
		}
		groups[i].Columns = append(groups[i].Columns, c.Number)
	}
	return engine.WriteGroups(groups)
}

// moved is what becomes of a file's loggers when its columns are of others: each of those is the one that had its
// first column of temperature, else its first.
func moved(f engine.File, after map[int]string) (out []winter.Regrouped) {
	further := furtherTemps(f)
	names, lead := leadsOf(f, after, further)
	var gone []string
	for _, name := range names {
		was := lead[name]
		if slices.Contains(gone, was) {
			was = ""
		} else {
			gone = append(gone, was)
		}
		out = append(out, winter.Regrouped{File: f.Name, Was: was, Is: name})
	}
	for _, was := range append(loggerNames(f), further...) {
		if !slices.Contains(gone, was) {
			out = append(out, winter.Regrouped{File: f.Name, Was: was})
		}
	}
	return out
}

// leadsOf are the loggers that the columns are of now, in the order of their first columns, temperature before the
// rest, and the logger each of those columns was of.
func leadsOf(f engine.File, after map[int]string, further []string) (names []string, was map[string]string) {
	was = map[string]string{}
	for _, heat := range []bool{true, false} {
		for _, s := range f.Export.Series {
			name := after[s.ColumnIndex]
			if _, named := was[name]; named || name == "" || !usable(string(s.Quantity)) || s.IsRecord() || isHeat(string(s.Quantity)) != heat {
				continue
			}
			names = append(names, name)
			was[name] = s.Logger
			if slices.Contains(further, s.Column) {
				was[name] = s.Column
			}
		}
	}
	return names, was
}
