package winter

import (
	"fmt"
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

// hung is a winter with a logger put into a list. One that hangs there already under the same name takes
// its files in as another read-out; the tray keeps every one apart.
func (w Winter) hung(list int, l Logger) Winter {
	all, _ := w.List(list)
	all = slices.Clone(all)
	if list != OutdoorList {
		l.StationKM = nil // the distance of a weather station
	}
	i := slices.IndexFunc(all, func(o Logger) bool {
		return list != TrayList && o.Name == l.Name && o.Place == l.Place && o.Channel == l.Channel
	})
	if i < 0 {
		return w.withList(list, append(all, l))
	}
	all[i].Files = slices.Concat(all[i].Files, l.Files)
	return w.withList(list, all)
}

func noList(list int) error { return fmt.Errorf("this winter has no barn number %d", list+1) }

// AddLoggers puts new loggers into the tray.
type AddLoggers struct{ Loggers []Logger }

// Apply is Edit's.
func (e AddLoggers) Apply(w Winter) (Winter, error) {
	w.Tray = slices.Concat(w.Tray, e.Loggers)
	return w, nil
}

// What is Edit's.
func (AddLoggers) What() string { return "add" }

// Field is Edit's.
func (AddLoggers) Field() string { return "" }

// Hang moves a logger to a place in a barn, or to the outdoor list or the tray.
type Hang struct {
	From  Slot
	List  int
	Place string
}

// Apply is Edit's.
func (e Hang) Apply(w Winter) (Winter, error) {
	l, ok := w.Logger(e.From)
	if !ok {
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

// SetBeesTime sets down when a barn's bees went in and came out (ms UTC); nil leaves it open.
type SetBeesTime struct {
	Barn    int
	In, Out *int64
}

// Apply is Edit's.
func (e SetBeesTime) Apply(w Winter) (Winter, error) {
	if e.Barn < 0 || e.Barn >= len(w.Barns) {
		return w, noList(e.Barn)
	}
	if e.In != nil && e.Out != nil && *e.Out <= *e.In {
		return w, fmt.Errorf("the bees can't come out before they went in")
	}
	return w.withBarn(e.Barn, func(b *Barn) { b.BeesIn, b.BeesOut = e.In, e.Out }), nil
}

// What is Edit's.
func (SetBeesTime) What() string { return "bees_time" }

// Field is Edit's.
func (e SetBeesTime) Field() string { return fmt.Sprintf("bees_time %d", e.Barn) }

// Rename gives the winter, or a barn of it, another name.
type Rename struct {
	Barn int // -1 is the winter itself
	Name string
}

// Apply is Edit's.
func (e Rename) Apply(w Winter) (Winter, error) {
	switch {
	case e.Name == "":
		return w, fmt.Errorf("a name can't be empty")
	case e.Barn == -1:
		w.Name = e.Name
		return w, nil
	case e.Barn < -1 || e.Barn >= len(w.Barns):
		return w, noList(e.Barn)
	case slices.ContainsFunc(w.Barns, func(b Barn) bool { return b.Name == e.Name && w.Barns[e.Barn].Name != e.Name }):
		return w, fmt.Errorf("another barn is called %q already", e.Name)
	}
	return w.withBarn(e.Barn, func(b *Barn) { b.Name = e.Name }), nil
}

// What is Edit's.
func (Rename) What() string { return "rename" }

// Field is Edit's.
func (e Rename) Field() string { return fmt.Sprintf("name %d", e.Barn) }

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
