package desk

import (
	"slices"

	"thawbook/analysis"
	"thawbook/app/winter"
)

// Places are the words for where a logger can hang, as offered to the keeper.
func Places() []string {
	out := slices.Clone(winter.Places)
	return slices.DeleteFunc(out, func(p string) bool { return p == "outdoor" })
}

// Shell is the left rail of the book.
func (b Book) Shell() Shell { return b.made().shell }

func (b Book) listShell() Shell {
	s := Shell{Title: "Thawbook", Winter: b.Name()}
	if !b.loaded {
		return s
	}
	s.Title += " – " + b.Name()
	if b.Draft {
		s.Note = "not saved under a name yet"
	}
	s.Files = b.filesRow()
	for i, barn := range b.doc.Barns {
		e := BarnEntry{Name: barn.Name, Mark: MarkUnknown}
		if i < b.Barns() {
			e.Mark = BarnMark(b.Result.Barns[i].Verdict)
		}
		e.Note = e.Mark.Word()
		for j, l := range barn.Loggers {
			e.Loggers = append(e.Loggers, b.entry(l, Slot{List: i, Index: j}, b.read(i, j)))
		}
		s.Barns = append(s.Barns, e)
	}
	for j, l := range b.doc.Outdoor {
		s.Outdoor = append(s.Outdoor, b.entry(l, Slot{List: OutdoorList, Index: j}, b.readOutdoor(j)))
	}
	for j, l := range b.doc.Tray {
		e := b.entry(l, Slot{List: TrayList, Index: j}, nil)
		e.Place = "hangs nowhere yet"
		s.Tray = append(s.Tray, e)
	}
	return s
}

// read is what was read of a barn's logger, nil before a review of just that logger there.
func (b Book) read(barn, i int) *analysis.Logger {
	reviewed, ok := b.Result.Winter.List(barn)
	if !ok || i >= len(reviewed) || barn >= len(b.Result.Inputs) || reviewed[i].Name != b.doc.Barns[barn].Loggers[i].Name {
		return nil
	}
	return &b.Result.Inputs[barn].Loggers[i]
}

// readOutdoor is what was read of an outdoor logger: they follow each barn's own.
func (b Book) readOutdoor(i int) *analysis.Logger {
	reviewed := b.Result.Winter
	if len(b.Result.Inputs) == 0 || i >= len(reviewed.Outdoor) || reviewed.Outdoor[i].Name != b.doc.Outdoor[i].Name {
		return nil
	}
	return &b.Result.Inputs[0].Loggers[len(reviewed.Barns[0].Loggers)+i]
}

// entry is a logger in the rail; a place that was taken and not said is called assumed.
func (b Book) entry(l winter.Logger, at Slot, read *analysis.Logger) LoggerEntry {
	e := LoggerEntry{Name: l.Name, Place: l.Place, At: at}
	if l.RecordsStage != "" {
		e.Place = "records " + l.RecordsStage
	}
	if l.StationKM != nil {
		e.Place += ", station " + shortest(*l.StationKM) + thinSpace + "km"
	}
	if l.Assumed {
		e.Note = "assumed"
	}
	if e.Waits = b.waitsFor(l); e.Waits != "" {
		e.Note, e.Mark = "waits for an answer", MarkAct
	} else if b.distanceAsked(l, at) != "" {
		e.Note, e.Mark = "how far away?", MarkWatch
	} else if read != nil && read.State.Len() > 0 && l.OfNothing() {
		e.Place, e.Note, e.Mark = "a record", "of what?", MarkWatch
	} else if read != nil && read.TempC.Len()+read.RelHum.Len()+read.State.Len() == 0 {
		e.Note, e.Mark = "nothing read", MarkAct
	}
	return e
}

// Hang is the edit that hangs a logger at a place in a barn, or outdoors for every barn, or nowhere.
func Hang(l LoggerEntry, list int, place string) winter.Edit {
	if list == OutdoorList {
		place = "outdoor"
	}
	if list == TrayList {
		place = ""
	}
	return winter.Hang{From: l.At, Name: l.Name, List: list, Place: place}
}

// Edit is one change of the keeper's document.
type Edit = winter.Edit
