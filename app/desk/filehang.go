package desk

import (
	"path"
	"slices"
	"strings"
	"unicode"

	"thawbook/app/engine"
	"thawbook/app/winter"
)

// placeWords are trade words for where a logger hangs, as they turn up in names of columns, loggers and files: as
// words of their own, stems at the beginning of one.
var placeWords = []struct {
	word, place string
	stem        bool
}{
	{"outdoor", "outdoor", true}, {"outside", "outdoor", true}, {"weather", "outdoor", false}, {"außen", "outdoor", true}, {"aussen", "outdoor", true}, {"draußen", "outdoor", false},
	{"exterior", "outdoor", false}, {"extérieur", "outdoor", true}, {"ulko", "outdoor", true}, {"venku", "outdoor", false}, {"zewn", "outdoor", true}, {"intake", "intake", false}, {"inlet", "intake", false},
	{"exhaust", "exhaust", false}, {"outlet", "exhaust", false}, {"ceiling", "ceiling", false}, {"wall", "wall", false}, {"floor", "floor", false}, {"slab", "floor", false},
	{"control", "control", false}, {"thermostat", "control", false}, {"alarm", "alarm", false}, {"hive", "hive", false}, {"mid", "room", false}, {"centre", "room", false}, {"center", "room", false}, {"room", "room", false},
	{"indoor", "room", true}, {"inside", "room", false},
}

// placeByName is where a logger hangs by its name, else by its file's, and which word says so; else the room. A
// file of several loggers may be called after one that hangs outdoors, so outdoors counts only where the logger's
// own name says it.
func placeByName(l winter.Logger) (place, why string) {
	own, files := namesOf(l)
	if place, word := placeIn(own); place != "" {
		return place, "its name says “" + word + "”"
	}
	if place, word := placeIn(files); place != "" && (place != "outdoor" || l.Channel == "") {
		return place, "its file's name says “" + word + "”"
	}
	return "room", "nothing in its name says where it hung, so the room is taken"
}

// placeOf is where a logger hangs by what its file holds, else by its name, and why.
func (b Book) placeOf(l winter.Logger) (place, why string) {
	if f, ok := b.stationOf(l); ok {
		return "outdoor", "its file holds " + listed(stationKinds(f)) + " too, as a weather station's does"
	}
	return placeByName(l)
}

// placeIn is the place that one of some words means, the first of the table; "" where none does.
func placeIn(words []string) (place, word string) {
	for _, w := range placeWords {
		if slices.ContainsFunc(words, func(own string) bool { return own == w.word || w.stem && strings.HasPrefix(own, w.word) }) {
			return w.place, w.word
		}
	}
	return "", ""
}

// namesOf are the words of what a logger is called, and those of its files' names. One of several that is called
// after its file has no name of its own.
func namesOf(l winter.Logger) (own, files []string) {
	called := []string{l.Name}
	if l.Channel != "" {
		called = []string{l.Channel}
	}
	for _, f := range l.Files {
		title := titleOf(f)
		files = append(files, wordsOf(title)...)
		if l.Channel != "" {
			called = slices.DeleteFunc(called, func(name string) bool { return strings.HasPrefix(name, title) })
		}
	}
	return wordsOf(strings.Join(called, " ")), files
}

// titleOf is a file's name without its folder, its archive and its ending.
func titleOf(file string) string {
	name := path.Base(file[strings.LastIndex(file, "!")+1:])
	return strings.TrimSuffix(name, path.Ext(name))
}

// wordsOf are the words and numbers of a name in lower case; a capital after a small letter begins one too.
func wordsOf(name string) (out []string) {
	before, now := ' ', []rune{}
	end := func() {
		if len(now) > 0 {
			out = append(out, strings.ToLower(string(now)))
		}
		now = nil
	}
	for _, c := range name {
		letter, digit := unicode.IsLetter(c), unicode.IsDigit(c)
		if !letter && !digit || digit != unicode.IsDigit(before) || unicode.IsUpper(c) && unicode.IsLower(before) {
			end()
		}
		if letter || digit {
			now = append(now, c)
		}
		before = c
	}
	end()
	return out
}

// belongs is where a logger seems to belong, and why: the tray when nothing speaks for a barn. What a name
// says of outdoors counts first, then a logger of its name, a barn's name, and that there is one barn only.
func (b Book) belongs(l winter.Logger) (list int, place, why string) {
	place, said := b.placeOf(l)
	if place == "outdoor" {
		return OutdoorList, place, capital(said) + "."
	}
	for i, barn := range b.doc.Barns {
		for _, o := range barn.Loggers {
			if strings.EqualFold(o.Name, l.Name) {
				return i, o.Place, "A logger of that name hangs there already."
			}
		}
	}
	own, files := namesOf(l)
	for _, names := range [][]string{own, files} {
		for i := range b.doc.Barns {
			if word := b.tellingWord(i, names); word != "" {
				return i, place, "“" + word + "” is in its name and in no other barn's; " + said + "."
			}
		}
	}
	if like, ok := b.likeOf(l); ok {
		if like.List == OutdoorList {
			place = "outdoor"
		}
		return like.List, place, "Hour by hour its temperature goes up and down with that of " + like.Logger + " there, and far less with any elsewhere."
	}
	if len(b.doc.Barns) == 1 {
		return 0, place, "There is one barn only; " + said + "."
	}
	return TrayList, "", "Nothing in its name or its readings says which barn it hung in."
}

// tellingWord is a word among some that is in one barn's name and in no other's.
func (b Book) tellingWord(barn int, words []string) string {
	for _, w := range wordsOf(b.doc.Barns[barn].Name) {
		elsewhere := false
		for i, o := range b.doc.Barns {
			elsewhere = elsewhere || i != barn && slices.Contains(wordsOf(o.Name), w)
		}
		if len(b.doc.Barns) > 1 && w != "the" && !elsewhere && slices.Contains(words, w) {
			return w
		}
	}
	return ""
}

// likeOf is with which hanging logger one goes up and down, where that still hangs there.
func (b Book) likeOf(l winter.Logger) (like engine.Likeness, ok bool) {
	if like, ok = b.looked.likeness[waitingKey(l)]; !ok {
		return like, false
	}
	all, _ := b.doc.List(like.List)
	return like, slices.ContainsFunc(all, func(o winter.Logger) bool { return o.Name == like.Logger })
}
