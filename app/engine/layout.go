package engine

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"thawbook/app/winter"
	"thawbook/importers"
)

// ColumnGroup is which columns of a file are one logger's, as the importers have it.
type ColumnGroup = importers.ColumnGroup

// Series is one variable of one logger in a file, as importers understands it.
type Series = importers.Series

// Columns of a file as the keeper groups them, from and to the text of an answer.
var (
	ParseGroups = importers.ParseGroups
	WriteGroups = importers.WriteGroups
)

// Decoded is a file's text as UTF-8, by the name of its encoding that a file's layout has.
var Decoded = importers.Decoded

// Undated is where a file's first row is put whose day is asked, as the importers have it.
const Undated = importers.Undated

// Pairing is the question which columns belong together.
const Pairing = "pairing"

// perLayout are the questions whose answer holds for every file written the same way: a file's year is its own.
var perLayout = []string{"day_month", "day_zero", "temperature_unit", "humidity_unit", "decimal_mark", "quantity", Pairing, Zone}

// PerLayout says whether the answer to a question holds for all files written the same way.
func PerLayout(question string) bool { return slices.Contains(perLayout, question) }

// longNumber is a number in a header that is an instrument's own rather than a column's.
var longNumber = regexp.MustCompile(`\d{4,}`)

// LayoutOf is a mark of how a file is written, the same whatever its readings, its loggers' serial numbers and
// the answers to its questions: of its header, or where it has none of the columns with values, with what parts
// the cells and where the times stand. "" for a file that was not read.
func LayoutOf(e *importers.Export) string {
	if e == nil {
		return ""
	}
	parts := []string{e.Layout.Delimiter, fmt.Sprint(e.Layout.Clock.Columns), longNumber.ReplaceAllString(e.Layout.Header, "#")}
	if e.Layout.Header == "" {
		var columns []int
		for _, s := range e.Series {
			columns = append(columns, s.ColumnIndex)
		}
		slices.Sort(columns)
		parts = append(parts, fmt.Sprint(slices.Compact(columns)))
	}
	sum := sha256.Sum256([]byte(strings.Join(parts, "\n")))
	return hex.EncodeToString(sum[:8])
}

// remembered are the answers given for other files written like one that was read with some answers: those to
// what it still asks, how columns are grouped, which no file needs to ask, and the zone of one that names none. The
// last one given counts.
func remembered(e *importers.Export, said importers.Answers, all []winter.Answer) (out []winter.Answer) {
	if !slices.ContainsFunc(all, func(a winter.Answer) bool { return a.Layout != "" }) {
		return nil
	}
	layout := LayoutOf(e)
	asked := func(id string) bool {
		return id == Pairing || id == Zone && e.Layout.Clock.ZoneSource == "none" || slices.ContainsFunc(e.Questions, func(q importers.Question) bool { return q.ID == id })
	}
	for _, a := range all {
		_, own := said[a.ID]
		if own || a.Layout == "" || a.Layout != layout || !asked(a.ID) {
			continue
		}
		out = append(slices.DeleteFunc(out, func(o winter.Answer) bool { return o.ID == a.ID }), a)
	}
	return out
}

// with are answers and some remembered ones.
func with(said importers.Answers, more []winter.Answer) importers.Answers {
	out := maps.Clone(said)
	for _, a := range more {
		out[a.ID] = a.Option
	}
	return out
}
