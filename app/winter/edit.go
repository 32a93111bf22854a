package winter

import (
	"fmt"
	"reflect"
	"slices"
)

// Edit is one change the keeper makes, as a value: what it is and what to. The winters themselves are never
// changed; Apply makes the next of one and shares with it what stays.
type Edit interface {
	// Apply makes the next winter of one. The error is one sentence: the edit does not fit this winter.
	Apply(Winter) (Winter, error)
	// What is the kind of the edit, a word that never changes its meaning.
	What() string
	// Field names what is typed into; edits of one field in quick succession count as one. "" is no typing.
	Field() string
}

// Slot names a logger's place in a winter: a barn's list (its number), the outdoor list or the tray.
type Slot struct{ List, Index int }

// The lists that are no barn's.
const (
	OutdoorList = -1
	TrayList    = -2
)

// List is the list of loggers a number stands for; ok is false where there is none.
func (w Winter) List(list int) (loggers []Logger, ok bool) {
	switch {
	case list == OutdoorList:
		return w.Outdoor, true
	case list == TrayList:
		return w.Tray, true
	case list >= 0 && list < len(w.Barns):
		return w.Barns[list].Loggers, true
	}
	return nil, false
}

// Logger is the one in a slot; ok is false when the slot is empty.
func (w Winter) Logger(s Slot) (l Logger, ok bool) {
	list, ok := w.List(s.List)
	if !ok || s.Index < 0 || s.Index >= len(list) {
		return Logger{}, false
	}
	return list[s.Index], true
}

// withList is a winter with another list of loggers.
func (w Winter) withList(list int, loggers []Logger) Winter {
	switch list {
	case OutdoorList:
		w.Outdoor = loggers
	case TrayList:
		w.Tray = loggers
	default:
		w = w.withBarn(list, func(b *Barn) { b.Loggers = loggers })
	}
	return w
}

// withBarn is a winter with one barn changed.
func (w Winter) withBarn(barn int, change func(*Barn)) Winter {
	w.Barns = slices.Clone(w.Barns)
	change(&w.Barns[barn])
	return w
}

// hung is a winter with a logger put into a list. One that hangs there already under the same name takes its
// files in as another read-out, unless it brings settings of its own; then, and in the tray, it stays apart.
func (w Winter) hung(list int, l Logger) Winter {
	all, _ := w.List(list)
	all = slices.Clone(all)
	if list != OutdoorList {
		l.StationKM = nil // the distance of a weather station
	}
	i := slices.IndexFunc(all, func(o Logger) bool {
		return list != TrayList && o.Name == l.Name && o.Place == l.Place && o.Channel == l.Channel && l.bare()
	})
	if i < 0 {
		return w.withList(list, append(all, l))
	}
	all[i].Files = slices.Concat(all[i].Files, l.Files)
	return w.withList(list, all)
}

// bare says whether a logger has nothing set down but its files and where it hangs.
func (l Logger) bare() bool {
	return reflect.DeepEqual(l, Logger{Name: l.Name, Files: l.Files, Place: l.Place, Channel: l.Channel, Assumed: l.Assumed})
}

func noList(list int) error { return fmt.Errorf("this winter has no barn number %d", list+1) }

// AddLoggers puts new loggers into the tray, and sets down which files could not be taken; of one that was
// refused before and is taken now nothing is said any more.
type AddLoggers struct {
	Loggers []Logger
	Refused []Refused
}

// Apply is Edit's.
func (e AddLoggers) Apply(w Winter) (Winter, error) {
	w.Tray = slices.Concat(w.Tray, e.Loggers)
	w.Refused = slices.DeleteFunc(slices.Clone(w.Refused), func(r Refused) bool {
		again := slices.ContainsFunc(e.Refused, func(n Refused) bool { return n.Name == r.Name })
		return again || slices.ContainsFunc(e.Loggers, func(l Logger) bool { return l.HasFile(r.Name) })
	})
	w.Refused = append(w.Refused, e.Refused...)
	return w, nil
}

// What is Edit's.
func (AddLoggers) What() string { return "add" }

// Field is Edit's.
func (AddLoggers) Field() string { return "" }

// Dismiss takes files that could not be taken off the list.
type Dismiss struct{ Names []string }

// Apply is Edit's.
func (e Dismiss) Apply(w Winter) (Winter, error) {
	w.Refused = slices.DeleteFunc(slices.Clone(w.Refused), func(r Refused) bool { return slices.Contains(e.Names, r.Name) })
	return w, nil
}

// What is Edit's.
func (Dismiss) What() string { return "dismiss" }

// Field is Edit's.
func (Dismiss) Field() string { return "" }

// Hang moves a logger to a place in a barn, or to the outdoor list or the tray.
type Hang struct {
	From  Slot
	Name  string // the logger's, to make sure that the slot still holds it
	List  int
	Place string
}

// Apply is Edit's.
func (e Hang) Apply(w Winter) (Winter, error) {
	l, ok := w.Logger(e.From)
	if !ok || l.Name != e.Name {
		return w, fmt.Errorf("the logger that was to be hung is no longer there")
	}
	if _, ok := w.List(e.List); !ok {
		return w, noList(e.List)
	}
	from, _ := w.List(e.From.List)
	w = w.withList(e.From.List, slices.Delete(slices.Clone(from), e.From.Index, e.From.Index+1))
	l.Place, l.Assumed = e.Place, false
	return w.hung(e.List, l), nil
}

// What is Edit's.
func (Hang) What() string { return "hang" }

// Field is Edit's.
func (Hang) Field() string { return "" }

// SetBeesTime sets down when a barn's bees went in and came out (ms UTC); nil leaves it open. Heads that are nil stay.
type SetBeesTime struct {
	Barn    int
	In, Out *int64
	Heads   []HeadCount
}

// Apply is Edit's.
func (e SetBeesTime) Apply(w Winter) (Winter, error) {
	if e.Barn < 0 || e.Barn >= len(w.Barns) {
		return w, noList(e.Barn)
	}
	if e.In != nil && e.Out != nil && *e.Out <= *e.In {
		return w, fmt.Errorf("the bees can't come out before they went in")
	}
	return w.withBarn(e.Barn, func(b *Barn) {
		b.BeesIn, b.BeesOut = e.In, e.Out
		replace(&b.Heads, e.Heads)
	}), nil
}

// What is Edit's.
func (SetBeesTime) What() string { return "bees_time" }

// Field is Edit's.
func (e SetBeesTime) Field() string { return fmt.Sprintf("bees_time %d", e.Barn) }

// Rename gives the winter and its barns other names, all at once.
type Rename struct {
	Winter string
	Barns  []string // as many as there are barns
}

// Apply is Edit's.
func (e Rename) Apply(w Winter) (Winter, error) {
	if len(e.Barns) != len(w.Barns) {
		return w, fmt.Errorf("this winter has %d barns, not %d", len(w.Barns), len(e.Barns))
	}
	for i, name := range e.Barns {
		if name == "" || e.Winter == "" {
			return w, fmt.Errorf("a name can't be empty")
		}
		if slices.Contains(e.Barns[:i], name) {
			return w, fmt.Errorf("two barns can't both be called %q", name)
		}
	}
	w.Name, w.Barns = e.Winter, slices.Clone(w.Barns)
	for i, name := range e.Barns {
		w.Barns[i].Name = name
	}
	return w, nil
}

// What is Edit's.
func (Rename) What() string { return "rename" }

// Field is Edit's.
func (Rename) Field() string { return "names" }

// AddNote sets down something the keeper saw in a barn.
type AddNote struct {
	Barn int
	Note Note
}

// Apply is Edit's.
func (e AddNote) Apply(w Winter) (Winter, error) {
	if e.Barn < 0 || e.Barn >= len(w.Barns) {
		return w, noList(e.Barn)
	}
	return w.withBarn(e.Barn, func(b *Barn) { b.Notes = append(slices.Clip(b.Notes), e.Note) }), nil
}

// What is Edit's.
func (AddNote) What() string { return "note" }

// Field is Edit's.
func (AddNote) Field() string { return "" }

// TakeOver adds another winter's barns with their settings, without its logs; a name that is taken gets a number.
type TakeOver struct{ From Winter }

// Apply is Edit's.
func (e TakeOver) Apply(w Winter) (Winter, error) {
	if len(e.From.Barns) == 0 {
		return w, fmt.Errorf("%q has no barn to take over", e.From.Name)
	}
	for _, b := range Next(e.From, "").Barns {
		name := b.Name
		for n := 2; slices.ContainsFunc(w.Barns, func(o Barn) bool { return o.Name == b.Name }); n++ {
			b.Name = fmt.Sprintf("%s (%d)", name, n)
		}
		w.Barns = append(slices.Clip(w.Barns), b)
	}
	return w, nil
}

// What is Edit's.
func (TakeOver) What() string { return "take_over" }

// Field is Edit's.
func (TakeOver) Field() string { return "" }

// SetAnswer answers a question of files, each by the name it is kept under, or with a Layout of all files written
// that way, the first of Files being the one it was said of; an earlier answer to it is replaced. Without an
// option the question is open again.
type SetAnswer struct {
	Files              []string
	ID, Option, Layout string
}

// Apply is Edit's.
func (e SetAnswer) Apply(w Winter) (Winter, error) {
	if len(e.Files) == 0 || e.ID == "" {
		return w, fmt.Errorf("an answer needs a file and its question")
	}
	w.Answers = slices.DeleteFunc(slices.Clone(w.Answers), func(a Answer) bool {
		own := a.Layout == "" && slices.Contains(e.Files, a.File)
		return a.ID == e.ID && (own || e.Layout != "" && a.Layout == e.Layout)
	})
	files := e.Files
	if e.Layout != "" {
		files = files[:1]
	}
	for _, f := range files {
		if e.Option != "" {
			w.Answers = append(w.Answers, Answer{File: f, ID: e.ID, Option: e.Option, Layout: e.Layout})
		}
	}
	return w, nil
}

// What is Edit's.
func (SetAnswer) What() string { return "answer" }

// Field is Edit's.
func (SetAnswer) Field() string { return "" }

// SetAnswers answers a question of files that are written in several ways.
type SetAnswers []SetAnswer

// Apply is Edit's.
func (e SetAnswers) Apply(w Winter) (Winter, error) {
	var err error
	for _, one := range e {
		if w, err = one.Apply(w); err != nil {
			return w, err
		}
	}
	return w, nil
}

// What is Edit's.
func (SetAnswers) What() string { return "answer" }

// Field is Edit's.
func (SetAnswers) Field() string { return "" }

// SetLogger sets down where a logger hangs. With Since (ms UTC) it hung where it did
// until then, and at the new place from then on.
type SetLogger struct {
	At        Slot
	List      int
	Place     string
	Since     *int64
	StationKM *float64
}

// Apply is Edit's.
func (e SetLogger) Apply(w Winter) (Winter, error) {
	l, ok := w.Logger(e.At)
	if !ok {
		return w, errNoLogger
	}
	if _, ok := w.List(e.List); !ok {
		return w, noList(e.List)
	}
	if e.StationKM != nil && !(*e.StationKM >= 0 && *e.StationKM <= 1000) {
		return w, fmt.Errorf("a weather station's distance lies between 0 and 1000 km")
	}
	if e.Since != nil && l.From != nil && *e.Since <= *l.From {
		return w, fmt.Errorf("it can't hang elsewhere before it was hung where it is")
	}
	l.StationKM = e.StationKM
	stays := e.List == e.At.List && e.Place == l.Place
	list, _ := w.List(e.At.List)
	list = slices.Clone(list)
	switch {
	case stays:
		l.Assumed = false
		list[e.At.Index] = l
		return w.withList(e.At.List, list), nil
	case e.Since == nil:
		w = w.withList(e.At.List, slices.Delete(list, e.At.Index, e.At.Index+1))
	default:
		if e.List != e.At.List { // in one list the later entry ends the earlier by itself
			list[e.At.Index] = l.until(*e.Since)
		}
		w = w.withList(e.At.List, list)
		l.From = e.Since
	}
	l.Place, l.Assumed = e.Place, false
	if e.Since != nil { // it is no other read-out of one that hangs there, but another stretch of it
		there, _ := w.List(e.List)
		return w.withList(e.List, append(slices.Clone(there), l)), nil
	}
	return w.hung(e.List, l), nil
}

// farMS is 31 December 9999, later than any reading and still a date that can be written.
const farMS = 253402214400000

// until is a logger whose readings count up to an instant only.
func (l Logger) until(ms int64) Logger {
	l.Exclusions = append(slices.Clip(l.Exclusions), Exclusion{From: ms, To: farMS, Reason: HungElsewhere})
	return l
}

// HungElsewhere is why a logger's readings don't count from the day on at which it was hung at another place.
const HungElsewhere = "hung elsewhere"

// What is Edit's.
func (SetLogger) What() string { return "logger" }

// Field is Edit's.
func (SetLogger) Field() string { return "" }
