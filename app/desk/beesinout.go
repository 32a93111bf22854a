package desk

import (
	"fmt"
	"strings"
	"time"

	"thawbook/app/winter"
)

// momentLayouts are the ways a day, or a day with its time, may be written. Day before month is never told
// from month before day by guessing: numbers alone go year first.
var momentLayouts = []string{"2006-01-02 15:04", "2006-01-02 15:04:05", "2006-01-02T15:04", "2006-01-02", "2 January 2006 15:04", "2 January 2006", "2 Jan 2006"}

// BeesInOut are the instants the keeper set down for a barn, as text to edit; empty where he set none.
func (b Book) BeesInOut(barn int) (in, out string) {
	if barn < 0 || barn >= len(b.doc.Barns) {
		return "", ""
	}
	loc, err := winter.Location(b.doc.Zone)
	if err != nil {
		return "", ""
	}
	return momentText(b.doc.Barns[barn].BeesIn, loc), momentText(b.doc.Barns[barn].BeesOut, loc)
}

// CheckBeesInOut says in one sentence what is wrong with the two texts; empty when they will do. Empty texts
// leave the time open.
func (b Book) CheckBeesInOut(in, out string) string {
	from, err := b.moment(in)
	if err != nil {
		return "Bees in: " + err.Error()
	}
	to, err := b.moment(out)
	if err != nil {
		return "Bees out: " + err.Error()
	}
	if from != nil && to != nil && *to <= *from {
		return "The bees can't come out before they went in."
	}
	return ""
}

// SetBeesInOut is the edit that sets down when a barn's bees went in and came out; ok is false when
// CheckBeesInOut has something to say of the texts.
func (b Book) SetBeesInOut(barn int, in, out string) (edit winter.Edit, ok bool) {
	if b.CheckBeesInOut(in, out) != "" {
		return nil, false
	}
	from, _ := b.moment(in)
	to, _ := b.moment(out)
	return winter.SetBeesTime{Barn: barn, In: from, Out: to}, true
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
