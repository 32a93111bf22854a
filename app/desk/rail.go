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
func (b Book) Shell() Shell {
	s := Shell{Title: "Thawbook", Winter: b.Name()}
	if !b.loaded {
		return s
	}
	s.Title += " – " + b.Name()
	for i, barn := range b.doc.Barns {
		e := BarnEntry{Name: barn.Name, Mark: MarkUnknown}
		if i < b.Barns() {
			e.Mark = BarnMark(b.Result.Barns[i].Verdict)
		}
		e.Note = e.Mark.Word()
		for j, l := range barn.Loggers {
			e.Loggers = append(e.Loggers, b.entry(l, Slot{i, j}, b.read(i, j)))
		}
		s.Barns = append(s.Barns, e)
	}
	for j, l := range b.doc.Outdoor {
		s.Outdoor = append(s.Outdoor, b.entry(l, Slot{OutdoorList, j}, b.readOutdoor(j)))
	}
	for j, l := range b.Tray {
		e := b.entry(l, Slot{TrayList, j}, nil)
		e.Place, e.Note, e.Mark = "hangs nowhere yet", "", MarkNone
		s.Tray = append(s.Tray, e)
	}
	return s
}

// read is what was read of a barn's logger, nil before a review.
func (b Book) read(barn, i int) *analysis.Logger {
	if barn >= len(b.Result.Inputs) || i >= len(b.Result.Inputs[barn].Loggers) {
		return nil
	}
	return &b.Result.Inputs[barn].Loggers[i]
}

// readOutdoor is what was read of an outdoor logger: they follow each barn's own.
func (b Book) readOutdoor(i int) *analysis.Logger {
	if len(b.doc.Barns) == 0 {
		return nil
	}
	return b.read(0, len(b.doc.Barns[0].Loggers)+i)
}

// entry is a logger in the rail; a place that was taken and not said is called assumed.
func (b Book) entry(l winter.Logger, at Slot, read *analysis.Logger) LoggerEntry {
	e := LoggerEntry{Name: l.Name, Place: l.Place, At: at}
	if l.RecordsStage != "" {
		e.Place = "records " + l.RecordsStage
	}
	if slices.Contains(b.guessed, l.Name) {
		e.Note = "assumed"
	}
	if read != nil && read.TempC.Len()+read.RelHum.Len()+read.State.Len() == 0 {
		e.Note, e.Mark = "nothing read", MarkAct
	}
	return e
}
