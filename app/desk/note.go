package desk

import (
	"fmt"
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
	note, problem := b.noteOf(n, nil)
	if problem != "" {
		return nil, problem
	}
	return winter.AddNote{Barn: barn, Note: note}, ""
}

// noteOf is the note that was typed; was is when it stood there before, nil for a new one.
func (b Book) noteOf(n NoteText, was *int64) (note winter.Note, problem string) {
	at, err := keptMoment(n.Day, was, b.location())
	if err != nil {
		return note, capital(err.Error()) + "."
	}
	if at == nil {
		return note, "Say when it was: a day like 2024-11-12, or with its time, 2024-11-12 14:30."
	}
	note = winter.Note{At: *at, Kind: n.Kind, Text: strings.TrimSpace(n.Text)}
	if n.Value != "" {
		v, ok := amount(n.Value)
		if !ok {
			return note, "“" + n.Value + "” is no number of things; write one such as 3 or 2.5."
		}
		note.Value, note.Unit = &v, n.Unit
	}
	if problem = lookedAt(&note, n); problem != "" {
		return note, problem
	}
	if note.Value == nil && note.Text == "" && (n.Kind == "other" || len(NoteUnits(n.Kind)) > 0) {
		return note, "Say how many, or say it in words."
	}
	return note, ""
}

// NoteMoment is an instant as the day of a note is typed.
func (b Book) NoteMoment(at int64) string { return momentText(&at, b.location()) }

// NoteSheet is the list of what the keeper noted of a barn.
func (b Book) NoteSheet(barn int) Sheet {
	was, kinds := b.doc.Barns[barn].Notes, NoteKinds()
	for _, n := range was {
		if !slices.Contains(kinds, n.Kind) {
			kinds = append(kinds, n.Kind)
		}
	}
	s := Sheet{Title: "Notes on " + b.doc.Barns[barn].Name, Help: HelpLine("note_sheet"), Add: "Add a note", Columns: []SheetColumn{
		{Title: "When", Hint: "2025-01-19 14:30", Wide: true}, {Title: "What", Choices: kinds}, {Title: "How many"}, {Title: "of what"}, {Title: "In words", Long: true},
	}}
	for i, n := range was {
		row := []string{b.NoteMoment(n.At), n.Kind, "", n.Unit, n.Text}
		if n.Value != nil {
			row[2] = shortest(*n.Value)
		}
		s.Rows = append(s.Rows, SheetRow{row, i + 1})
	}
	s.read = func(rows []SheetRow) (winter.Edit, error) {
		notes := []winter.Note{}
		for i, r := range rows {
			note, problem := b.noteInRow(r, was)
			if problem != "" {
				return nil, fmt.Errorf("row %d: %s", i+1, strings.TrimSuffix(problem, "."))
			}
			notes = append(notes, note)
		}
		return winter.SetSettings{Barn: barn, Of: "notes", Notes: notes}, nil
	}
	return s
}

// noteInRow is a note as its row stands now; what the row does not show stays.
func (b Book) noteInRow(r SheetRow, was []winter.Note) (note winter.Note, problem string) {
	typed := NoteText{Day: r.cell(0), Kind: r.Cells[1], Value: r.cell(2), Unit: r.cell(3), Text: r.cell(4)}
	if units := NoteUnits(typed.Kind); typed.Unit == "" && len(units) > 0 {
		typed.Unit = units[0]
	} else if typed.Value != "" && len(units) > 0 && !slices.Contains(units, typed.Unit) {
		return note, "what was counted is one of " + listed(units)
	}
	if r.Was == 0 {
		return b.noteOf(typed, nil)
	}
	stood := was[r.Was-1]
	if note, problem = b.noteOf(typed, &stood.At); problem == "" && note.Value != nil && stood.Of != nil && *note.Value <= *stood.Of {
		note.Of = stood.Of
	}
	note.Until = stood.Until
	return note, problem
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
