package desk

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"thawbook/app/winter"
)

// Sheet is a list the keeper fills in, such as a barn's fan stages: a row each, a text a cell.
type Sheet struct {
	Title, Help string
	Columns     []SheetColumn
	Rows        []SheetRow
	Fixed       bool   // rows are neither added nor taken away
	Add         string // what a new row is

	read func(rows []SheetRow) (winter.Edit, error)
}

// SheetColumn is what a cell holds; with Choices it is one of them.
type SheetColumn struct {
	Title, Hint string
	Choices     []string
	Wide, Long  bool // a moment or a name; a sentence
	Label       bool // only to be read
}

// SheetRow is a row as it stands. Was is its place among the rows the sheet was opened with, counted from 1; 0 is a
// new one.
type SheetRow struct {
	Cells []string
	Was   int
}

// Edit is what the rows come to; problem is a sentence where they can't be taken.
func (s Sheet) Edit(rows []SheetRow) (edit winter.Edit, problem string) {
	filled := slices.DeleteFunc(slices.Clone(rows), func(r SheetRow) bool { return !s.Fixed && s.empty(r) })
	edit, err := s.read(filled)
	if err != nil {
		return nil, capital(err.Error()) + "."
	}
	return edit, ""
}

// empty says whether nothing was written in a row; what is chosen does not count.
func (s Sheet) empty(r SheetRow) bool {
	for i, text := range r.Cells {
		if len(s.Columns[i].Choices) == 0 && strings.TrimSpace(text) != "" {
			return false
		}
	}
	return true
}

// NewRow is an empty row, with the first of what can be chosen.
func (s Sheet) NewRow() SheetRow {
	r := SheetRow{Cells: make([]string, len(s.Columns))}
	for i, c := range s.Columns {
		if len(c.Choices) > 0 {
			r.Cells[i] = c.Choices[0]
		}
	}
	return r
}

// cell is a cell's text without what stands around it.
func (r SheetRow) cell(i int) string { return strings.TrimSpace(r.Cells[i]) }

// numberIn reads a cell as a number of a unit, between two ends; nil for an empty one.
func numberIn(text, what, unit string, low, high float64) (*float64, error) {
	text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), unit))
	if text == "" {
		return nil, nil
	}
	v, ok := typedNumber(text)
	if !ok {
		return nil, fmt.Errorf("%s: “%s” is no number", what, text)
	}
	if v < low || v > high {
		return nil, fmt.Errorf("%s: %s is not between %s and %s%s", what, text, shortest(low), shortest(high), space(unit))
	}
	return &v, nil
}

// typedNumber is a number as it was typed, with a comma or a point and either minus; ok is false where it is none.
func typedNumber(text string) (v float64, ok bool) {
	v, err := strconv.ParseFloat(strings.ReplaceAll(strings.Replace(strings.TrimSpace(text), ",", ".", 1), minus, "-"), 64)
	return v, err == nil && !math.IsNaN(v)
}

func space(unit string) string {
	if unit == "" {
		return ""
	}
	return thinSpace + unit
}

// kept is a value as it stood where a cell still says the same, so that a value in a unit of its own is not rounded by
// being looked at; else the value the cell was read as.
func kept(cell string, was *float64, text func(float64) string, read *float64) *float64 {
	if was != nil && cell == text(*was) {
		return was
	}
	return read
}

// keptMoment reads a cell as a moment; one that stands as it was shown is kept to the millisecond.
func keptMoment(cell string, was *int64, zone *time.Location) (*int64, error) {
	if was != nil && cell == momentText(was, zone) {
		return was, nil
	}
	return momentIn(cell, zone)
}

// rangeIn reads a cell as a number or a range of them, of a unit and between two ends; nil for an empty one.
func rangeIn(text, what, unit string, least, most float64) (low, high *float64, err error) {
	from, to, ranged := strings.Cut(strings.ReplaceAll(text, enDash, "-"), "-")
	if !ranged {
		to = from
	}
	if low, err = numberIn(from, what, unit, least, most); err == nil {
		high, err = numberIn(to, what, unit, least, most)
	}
	switch {
	case err != nil || low == nil && high == nil:
		return nil, nil, err
	case low == nil || high == nil:
		return nil, nil, fmt.Errorf("%s: of %s one end is missing", what, text)
	case *low > *high:
		return nil, nil, fmt.Errorf("%s: of %s the first must be the lower", what, text)
	}
	return low, high, nil
}

// textIf is a value's text, or nothing.
func textIf(v *float64, text func(float64) string) string {
	if v == nil {
		return ""
	}
	return text(*v)
}

// namedApart says which name stands twice.
func namedApart(names []string, what string) error {
	for i, n := range names {
		if n == "" {
			return fmt.Errorf("%s %d has no name", what, i+1)
		}
		if slices.Contains(names[:i], n) {
			return fmt.Errorf("%s “%s” is there twice", what, n)
		}
	}
	return nil
}
