package desk

import (
	"slices"
	"strconv"
	"strings"

	"thawbook/app/winter"
)

// NoteText is a note as it was typed.
type NoteText struct{ Day, Kind, Value, Unit, Text string }

// NoteKinds are the kinds of notes offered, in order.
func NoteKinds() (out []string) {
	for _, k := range winter.NoteKinds {
		out = append(out, k.Name)
	}
	return out
}

// NoteUnits are the units a kind's number may be in; none where it has no number of its own.
func NoteUnits(kind string) []string {
	for _, k := range winter.NoteKinds {
		if k.Name == kind {
			return k.Units
		}
	}
	return nil
}

// AddNote is the edit that sets down a note of a barn; problem is a sentence where it can't be taken so.
func (b Book) AddNote(barn int, n NoteText) (edit winter.Edit, problem string) {
	at, err := b.moment(n.Day)
	if err != nil {
		return nil, capital(err.Error()) + "."
	}
	if at == nil {
		return nil, "Say when it was: a day like 2024-11-12, or with its time, 2024-11-12 14:30."
	}
	note := winter.Note{At: *at, Kind: n.Kind, Text: strings.TrimSpace(n.Text)}
	if n.Value != "" {
		v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(n.Value), ",", ".", 1), 64)
		if err != nil || v < 0 || v > 1e6 {
			return nil, "“" + n.Value + "” is no number of things; write one such as 3 or 2.5."
		}
		note.Value, note.Unit = &v, n.Unit
	}
	if note.Value == nil && note.Text == "" && (n.Kind == "other" || len(NoteUnits(n.Kind)) > 0) {
		return nil, "Say how many, or say it in words."
	}
	return winter.AddNote{Barn: barn, Note: note}, ""
}

// Rename is the edit that gives the winter and its barns names; ok is false where all stay.
func (b Book) Rename(name string, barns []string) (edit winter.Edit, ok bool) {
	e := winter.Rename{Winter: strings.TrimSpace(name)}
	for _, barn := range barns {
		e.Barns = append(e.Barns, strings.TrimSpace(barn))
	}
	return e, e.Winter != b.Name() || !slices.Equal(e.Barns, b.BarnNames())
}

// FileName is the name a winter's file is offered under.
func FileName(b Book, ending string) string {
	name := strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`<>:"/\|?*`, r) {
			return '-'
		}
		return r
	}, strings.TrimSpace(b.Name()))
	if strings.Trim(name, ". -") == "" {
		name = "winter"
	}
	return name + ending
}
