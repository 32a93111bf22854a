package importers

import (
	"slices"
	"strconv"
	"strings"

	"thawbook/analysis/series"
)

// ColumnGroup is what the keeper says of some columns of a file, each counted from 1: that they are one
// logger's, and what it is called; or that they are left out.
type ColumnGroup struct {
	Columns []int
	Name    string // "": as the columns' own names have it
	Out     bool
}

// ParseGroups takes an answer such as "2+5:north, 3+6, -7" apart: columns 2 and 5 are one logger's, called
// north, columns 3 and 6 another's, and column 7 is left out. ok is false where the text is none, or names a
// column twice.
func ParseGroups(text string) (groups []ColumnGroup, ok bool) {
	seen := map[int]bool{}
	for part := range strings.SplitSeq(text, ",") {
		var g ColumnGroup
		part, g.Out = strings.CutPrefix(strings.TrimSpace(part), "-")
		columns, name, _ := strings.Cut(part, ":")
		g.Name = strings.TrimSpace(name)
		for number := range strings.SplitSeq(columns, "+") {
			c, err := strconv.Atoi(strings.TrimSpace(number))
			if err != nil || c < 1 || seen[c] {
				return nil, false
			}
			seen[c] = true
			g.Columns = append(g.Columns, c)
		}
		groups = append(groups, g)
	}
	return groups, true
}

// WriteGroups is the answer that ParseGroups takes apart. Commas in names become blanks.
func WriteGroups(groups []ColumnGroup) string {
	var parts []string
	for _, g := range groups {
		var numbers []string
		for _, c := range g.Columns {
			numbers = append(numbers, strconv.Itoa(c))
		}
		part := strings.Join(numbers, "+")
		if name := strings.Join(strings.Fields(strings.ReplaceAll(g.Name, ",", " ")), " "); name != "" && !g.Out {
			part += ":" + name
		}
		if g.Out {
			part = "-" + part
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, ", ")
}

// numbered is the column of a number counted from 1, or nil where none of the readings stands there.
func (s *scan) numbered(number int) *values {
	i := slices.IndexFunc(s.columns, func(c values) bool { return c.index == number-1 })
	if i < 0 {
		return nil
	}
	return &s.columns[i]
}

// leaveOut makes the columns the keeper leaves out ones that measure nothing of use, and remarks on those he
// speaks of that are not there.
func (s *scan) leaveOut(answers Answers) {
	groups, _ := ParseGroups(answers[pairing])
	for _, g := range groups {
		for _, number := range g.Columns {
			c := s.numbered(number)
			switch {
			case c == nil:
				s.notes.add(series.Remark{Code: RemarkNoAnswer, Args: []string{pairing, strconv.Itoa(number)}})
			case g.Out:
				c.quantity, c.told = Other, true
				c.liken("")
			}
		}
	}
}

// pairAsSaid gives the columns of each group a logger of their own: called as the keeper says, else as the first
// of them that has a name beside its quantity.
func (s *scan) pairAsSaid(base string, answers Answers) {
	groups, _ := ParseGroups(answers[pairing])
	for i, g := range groups {
		name := g.Name
		for _, number := range g.Columns {
			if c := s.numbered(number); c != nil && name == "" {
				name = c.likeness
			}
		}
		if name == "" {
			name = joined(base, strconv.Itoa(i+1))
		}
		if s.title != "" {
			name = joined(s.title, name)
		}
		for _, number := range g.Columns {
			if c := s.numbered(number); c != nil && !g.Out {
				c.logger = name
			}
		}
	}
}
