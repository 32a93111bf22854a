package desk

import (
	"strconv"
	"strings"
	"time"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// FileLogger is a logger a file belongs to: where it hangs, why it was taken to, and what is left out of it.
type FileLogger struct {
	Name, Hangs, Why string
	Entry            LoggerEntry
	Suggested        winter.Edit // hangs it where it seems to belong; nil when nothing speaks for a place
	Suggestion       string      // in words, as on a button
	Distance         string      // asks how far off a weather station stands; empty when nothing is asked
	Doubts           []FileDoubt
	Left             []LeftOut
	Record           *FileRecord // of a logger that keeps a record of what ran
}

// loggersOfFile are the loggers that have a file, in the winter's order.
func (b Book) loggersOfFile(f engine.File, u Units) (out []FileLogger) {
	recorded, lacks := recordedIn(f), false
	for list := TrayList; list < len(b.doc.Barns); list++ {
		all, _ := b.doc.List(list)
		for i, l := range all {
			if !l.HasFile(f.Name) {
				continue
			}
			x := b.fileLogger(l, Slot{List: list, Index: i}, u)
			if l.RecordsStage != "" || recorded[strings.ToLower(l.Channel)] {
				b.hangRecord(&x, l, Slot{List: list, Index: i}, lacks)
				lacks = lacks || x.Record.Lacks != ""
			}
			out = append(out, x)
		}
	}
	return out
}

func (b Book) fileLogger(l winter.Logger, at Slot, u Units) FileLogger {
	out := FileLogger{Name: l.Name, Entry: b.entry(l, at, nil), Hangs: b.hangsAt(l, at)}
	switch {
	case at.List == TrayList:
		list, place, why := b.belongs(l)
		out.Why = why
		if list != TrayList {
			out.Suggested, out.Suggestion = Hang(out.Entry, list, place), "Hang it "+b.placeWords(list, place)
		}
	case l.Assumed:
		_, why := b.placeOf(l)
		out.Why = "Assumed: " + why + "."
	}
	out.Distance = b.distanceAsked(l, at)
	out.Left, out.Doubts = b.settled(l, at, u), b.doubts(l, at, u)
	return out
}

// zone is the winter's; UTC where it names none.
func (b Book) zone() *time.Location {
	if loc, err := winter.Location(b.doc.Zone); err == nil {
		return loc
	}
	return time.UTC
}

// hangsAt is "in Alder, room, from 3 April 2025".
func (b Book) hangsAt(l winter.Logger, at Slot) string {
	place := l.Place
	if l.RecordsStage != "" {
		place = "records " + l.RecordsStage
	}
	text := b.placeWords(at.List, place)
	if at.List == TrayList {
		text = "hangs nowhere yet"
	}
	if l.From != nil {
		text += ", from " + Units{Zone: b.zone()}.DateYear(*l.From)
	}
	if l.StationKM != nil {
		text += ", a weather station " + shortest(*l.StationKM) + thinSpace + "km away"
	}
	if l.Place == dontKnow {
		text += " (kept out of the verdict)"
	}
	return text
}

func (b Book) placeWords(list int, place string) string {
	if list == OutdoorList {
		return "outdoors, for every barn"
	}
	if list < 0 || list >= len(b.doc.Barns) {
		return "nowhere"
	}
	return "in " + b.doc.Barns[list].Name + ", " + place
}

// LoggerText is where a logger hangs, as it is typed and chosen.
type LoggerText struct {
	List              int
	Place, Since, KMs string
}

// LoggerText is a logger as it can be edited.
func (b Book) LoggerText(at Slot) LoggerText {
	l, _ := b.doc.Logger(at)
	out := LoggerText{List: at.List, Place: l.Place}
	if l.StationKM != nil {
		out.KMs = strconv.FormatFloat(*l.StationKM, 'f', -1, 64)
	}
	return out
}

// SetLogger is the edit that sets a logger down as typed; problem is a sentence where it can't be taken so.
func (b Book) SetLogger(at Slot, t LoggerText) (edit winter.Edit, problem string) {
	since, err := b.moment(t.Since)
	if err != nil {
		return nil, Sentenced(err)
	}
	e := winter.SetLogger{At: at, List: t.List, Place: t.Place, Since: since}
	switch t.List {
	case OutdoorList:
		e.Place = "outdoor"
		if strings.TrimSpace(t.KMs) != "" {
			km, err := kilometres(t.KMs)
			if err != nil {
				return nil, "“" + t.KMs + "” is no distance; write the kilometres, such as 40, or nothing for a logger of your own."
			}
			e.StationKM = km
		}
	case TrayList:
		e.Place = ""
	}
	if _, err := e.Apply(b.doc); err != nil {
		return nil, Sentenced(err)
	}
	return e, ""
}
