package desk

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// FileRecord is what a logger's record can be of: the stages, the heat sources and the door of its barn, or, while it hangs
// nowhere, of every barn, and none of them.
type FileRecord struct {
	Choices []RecordChoice
	Chosen  string // a choice's label; "" while nothing is said
	Lacks   string // what is to be set down first; "" where that is done, or another record says it
	Barn    int    // where it is
}

// RecordChoice is one of them, and the edit that says so.
type RecordChoice struct {
	Label string
	Edit  winter.Edit
}

// ofDoor is the choice of a record of the barn's door, ofNone that of one of nothing in the barn.
const ofDoor, ofNone = "the door", "none of these"

// recordedIn are the channels of a file's records of what ran, in lower case.
func recordedIn(f engine.File) map[string]bool {
	out := map[string]bool{}
	for _, r := range recordsIn(f) {
		out[strings.ToLower(r.Channel)] = true
	}
	return out
}

// recordOf is what a logger's record can be of.
func (b Book) recordOf(l winter.Logger, at Slot) *FileRecord {
	out := &FileRecord{Barn: max(0, at.List)}
	named := false
	for i, barn := range b.doc.Barns {
		if at.List != i && at.List >= 0 {
			continue
		}
		in := ""
		if at.List < 0 && len(b.doc.Barns) > 1 {
			in = " in " + barn.Name
		}
		for _, name := range barn.Recordable() {
			named = true
			out.Choices = append(out.Choices, RecordChoice{name + in, winter.SetRecord{At: at, Barn: i, Of: name}})
		}
		out.Choices = append(out.Choices, RecordChoice{ofDoor + in, winter.SetRecord{At: at, Barn: i, Place: winter.DoorPlace}})
	}
	if !named && len(b.doc.Barns) > 0 {
		out.Lacks = fmt.Sprintf("Set down the fan stages and the heat of %s first; a record that is called like one of them is then taken to be of it.", b.doc.Barns[out.Barn].Name)
	}
	out.Choices = append(out.Choices, RecordChoice{ofNone, winter.SetRecord{At: at, Barn: out.Barn, Place: dontKnow}})
	switch out.Chosen = l.RecordsStage; l.Place {
	case winter.DoorPlace:
		out.Chosen = ofDoor
	case dontKnow:
		out.Chosen = ofNone
	}
	return out
}

// hangRecord says of a logger that keeps a record of what it is and why, and suggests what it may be. What is to be set
// down first is said once, where nothing is chosen.
func (b Book) hangRecord(out *FileLogger, l winter.Logger, at Slot, said bool) {
	out.Record, out.Why = b.recordOf(l, at), ""
	if said || out.Record.Chosen != "" {
		out.Record.Lacks = ""
	}
	switch {
	case l.RecordsStage != "" && l.Assumed:
		out.Why = "Assumed: it is called like " + l.RecordsStage + "."
	case l.Place == winter.DoorPlace && l.Assumed:
		out.Why = "Assumed: its name says so."
	case l.OfNothing():
		out.Hangs = "a record of what ran; what that was is not set down, so it counts for nothing yet"
		if barn, name := b.calledLike(l, at); name != "" {
			out.Suggested, out.Suggestion = winter.SetRecord{At: at, Barn: barn, Of: name}, "It is of "+name+" in "+b.doc.Barns[barn].Name
		}
	}
}

// calledLike is the stage or heat source that is called like a logger, where one barn alone has such a one, or only one
// of those that have bears a word of the logger's or its file's name.
func (b Book) calledLike(l winter.Logger, at Slot) (barn int, name string) {
	own, files := namesOf(l)
	fits, named := []int{}, []int{}
	for i, o := range b.doc.Barns {
		if o.CalledLike(l) == "" || at.List >= 0 && at.List != i {
			continue
		}
		fits = append(fits, i)
		if b.tellingWord(i, slices.Concat(own, files)) != "" {
			named = append(named, i)
		}
	}
	if len(fits) > 1 {
		fits = named
	}
	if len(fits) != 1 {
		return 0, ""
	}
	return fits[0], b.doc.Barns[fits[0]].CalledLike(l)
}

// isDoor says whether a record's name is a door's.
func isDoor(name string) bool {
	return slices.ContainsFunc(wordsOf(name), func(w string) bool { return w == "door" || w == "doors" || w == "gate" })
}

// recordWords are what heat sources, and things that are neither these nor fans, are called in records, the telling words
// first; with the kind of heat source.
var recordWords = []struct{ word, kind string }{
	{"solar", "solar"}, {"recovery", "recovery"}, {"exchanger", "recovery"}, {"floor", "floor"}, {"slab", "floor"}, {"heater", "heater"}, {"heating", "heater"},
	{"heat", "heater"}, {"boiler", "heater"}, {"loop", "floor"}, {"pump", "floor"}, {"light", ""}, {"lamp", ""}, {"alarm", ""},
}

// waitingRecord is a record of a barn that nobody said of what it is: by its name it may be a fan's, or a heat source's of
// some kind, or neither.
type waitingRecord struct {
	name, kind string
	fan        bool
}

// waitingRecords are those of a barn.
func waitingRecords(barn winter.Barn) (out []waitingRecord) {
	for _, l := range barn.Loggers {
		if l.Place != winter.RecordPlace || !l.Assumed || l.RecordsStage != "" {
			continue
		}
		r := waitingRecord{name: cmp.Or(columnName(l.Channel), l.Name), fan: true}
		words := wordsOf(r.name)
		for _, w := range recordWords {
			if r.fan && slices.Contains(words, w.word) {
				r.kind, r.fan = w.kind, false
			}
		}
		out = append(out, r)
	}
	return out
}
