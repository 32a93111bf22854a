package desk

import (
	"slices"
	"strings"

	"thawbook/app/winter"
)

// NoteText is a note as it was typed; Of is of how many that were looked at, empty for all.
type NoteText struct{ Day, Kind, Value, Of, Unit, Text string }

// CountsSample says whether the number of a kind of note may be of so many that were looked at.
func CountsSample(kind string) bool { return kind == "dead count" }

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
		v, ok := amount(n.Value)
		if !ok {
			return nil, "“" + n.Value + "” is no number of things; write one such as 3 or 2.5."
		}
		note.Value, note.Unit = &v, n.Unit
	}
	if problem = lookedAt(&note, n); problem != "" {
		return nil, problem
	}
	if note.Value == nil && note.Text == "" && (n.Kind == "other" || len(NoteUnits(n.Kind)) > 0) {
		return nil, "Say how many, or say it in words."
	}
	return winter.AddNote{Barn: barn, Note: note}, ""
}

// amount is a number of things as it was typed; ok is false where it is none.
func amount(text string) (v float64, ok bool) {
	v, ok = typedNumber(text)
	return v, ok && v >= 0 && v <= 1e6
}

// lookedAt sets down of how many a note's number was counted, where that was typed; problem is a sentence where it can't be.
func lookedAt(note *winter.Note, n NoteText) (problem string) {
	if strings.TrimSpace(n.Of) == "" || !CountsSample(n.Kind) {
		return ""
	}
	of, ok := amount(n.Of)
	switch {
	case !ok || of < 1:
		return "“" + n.Of + "” is no number of hives that were looked at; leave it empty where all were."
	case note.Value == nil:
		return "Say how many of the " + number(of, 0) + " were dead."
	case *note.Value > of:
		return "More are dead than were looked at; put right one of the two numbers."
	}
	note.Of = &of
	return ""
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
