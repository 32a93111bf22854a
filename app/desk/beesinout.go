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

// momentLayouts are the ways a day, or a day with its time, may be written. Day before month is never told
// from month before day by guessing: numbers alone go year first.
var momentLayouts = []string{"2006-01-02 15:04", "2006-01-02 15:04:05", "2006-01-02T15:04", "2006-01-02", "2 January 2006 15:04", "2 January 2006", "2 Jan 2006"}

// BeesTime is when a barn's bees went in and came out and how many hives that were, as text to edit; empty where the keeper
// set none.
type BeesTime struct {
	In, Out, Hives string
	Ledger         bool // hives went in or out at other times too: one number does not tell it, and Hives is not looked at
}

// BeesInOut is what the keeper set down for a barn.
func (b Book) BeesInOut(barn int) (t BeesTime) {
	if barn < 0 || barn >= len(b.doc.Barns) {
		return t
	}
	was, loc := b.doc.Barns[barn], b.location()
	t.In, t.Out = momentText(was.BeesIn, loc), momentText(was.BeesOut, loc)
	switch {
	case len(was.Heads) == 0:
	case slices.Equal(was.Heads, allTogether(was.BeesIn, was.BeesOut, was.Heads[0].Change)):
		t.Hives = strconv.Itoa(was.Heads[0].Change)
	default:
		t.Ledger = true
	}
	return t
}

// allTogether is the ledger of hives that all went in and came out at once.
func allTogether(in, out *int64, hives int) (ledger []winter.HeadCount) {
	if in != nil {
		ledger = append(ledger, winter.HeadCount{At: *in, Change: hives})
	}
	if out != nil {
		ledger = append(ledger, winter.HeadCount{At: *out, Change: -hives})
	}
	return ledger
}

// CheckBeesInOut says in one sentence what is wrong with the texts; empty when they will do. Empty texts leave open
// what they stand for.
func (b Book) CheckBeesInOut(t BeesTime) string {
	_, wrong := b.beesEdit(0, t)
	return wrong
}

// SetBeesInOut is the edit that sets down when a barn's bees went in and came out, and how many hives; ok is false when
// CheckBeesInOut has something to say of the texts.
func (b Book) SetBeesInOut(barn int, t BeesTime) (edit winter.Edit, ok bool) {
	e, wrong := b.beesEdit(barn, t)
	return e, wrong == ""
}

func (b Book) beesEdit(barn int, t BeesTime) (e winter.SetBeesTime, wrong string) {
	from, err := b.moment(t.In)
	if err != nil {
		return e, "Bees in: " + err.Error()
	}
	to, err := b.moment(t.Out)
	if err != nil {
		return e, "Bees out: " + err.Error()
	}
	if from != nil && to != nil && *to <= *from {
		return e, "The bees can't come out before they went in."
	}
	e = winter.SetBeesTime{Barn: barn, In: from, Out: to}
	if t.Ledger {
		return e, ""
	}
	e.Heads, wrong = hivesTogether(from, to, t.Hives)
	return e, wrong
}

// hivesTogether is the ledger of as many hives as were typed; an empty one for an empty text.
func hivesTogether(from, to *int64, text string) (ledger []winter.HeadCount, wrong string) {
	hives, err := numberIn(text, "Hives", "", 1, 1e5)
	switch {
	case err != nil:
		return nil, err.Error() + "."
	case hives == nil:
		return []winter.HeadCount{}, ""
	case *hives != math.Trunc(*hives):
		return nil, "Hives: “" + text + "” is no whole number."
	case from == nil:
		return nil, "Hives: set down the day they went in as well."
	}
	return allTogether(from, to, int(*hives)), ""
}

// location is the winter's zone, UTC where it is none.
func (b Book) location() *time.Location {
	if loc, err := winter.Location(b.doc.Zone); err == nil {
		return loc
	}
	return time.UTC
}

// moment reads a day or an instant in the winter's zone, ms UTC; nil for an empty text.
func (b Book) moment(text string) (*int64, error) {
	loc, err := winter.Location(b.doc.Zone)
	if err != nil {
		return nil, err
	}
	return momentIn(text, loc)
}

// momentText is an instant as momentIn reads it; empty for none.
func momentText(ms *int64, loc *time.Location) string {
	if ms == nil {
		return ""
	}
	return time.UnixMilli(*ms).In(loc).Format(momentLayouts[0])
}

// momentIn is a day or moment as typed, by the clocks of a zone; nil where nothing is.
func momentIn(text string, loc *time.Location) (*int64, error) {
	text = strings.Join(strings.Fields(text), " ")
	if text == "" {
		return nil, nil
	}
	for _, layout := range momentLayouts {
		if t, err := time.ParseInLocation(layout, text, loc); err == nil {
			ms := t.UnixMilli()
			return &ms, nil
		}
	}
	return nil, fmt.Errorf("%q is no day; write it like 2024-11-12, or 2024-11-12 14:30 with the time", text)
}
