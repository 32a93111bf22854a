package winter

import (
	"fmt"
	"slices"
	"strings"
)

// A logger that keeps a record of what ran hangs at no place that is judged, a door's contact at the door; one whose record
// is of nothing of the barn's is kept out of the verdict.
const (
	RecordPlace = "other"
	DoorPlace   = "door"
	NoPlace     = "don't know"
)

// OfNothing says whether a logger's record, should it keep one, counts for nothing, and nobody said that it is not to.
func (l Logger) OfNothing() bool {
	return l.RecordsStage == "" && l.Place != DoorPlace && l.Place != NoPlace
}

// Recordable names what a logger can keep a record of, each once: the barn's stages, mixing fans and heat sources.
func (b Barn) Recordable() (names []string) {
	add := func(name string) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, s := range b.Stages {
		add(s.Name)
	}
	for _, c := range b.Mixing {
		add(c.Name)
	}
	for _, h := range b.Heats {
		add(h.Name)
	}
	return names
}

// SetRecord sets down what a logger keeps a record of: one of a barn's stages, mixing fans and heat sources, or with an
// empty name none of them, and at which place it is then.
type SetRecord struct {
	At        Slot
	Barn      int
	Of, Place string
}

// Apply is Edit's.
func (e SetRecord) Apply(w Winter) (Winter, error) {
	l, ok := w.Logger(e.At)
	if !ok {
		return w, errNoLogger
	}
	if e.Barn < 0 || e.Barn >= len(w.Barns) {
		return w, noList(e.Barn)
	}
	l.RecordsStage, l.Place, l.Assumed = e.Of, RecordPlace, false
	switch {
	case e.Of == "":
		l.Place = e.Place
	case !slices.Contains(w.Barns[e.Barn].Recordable(), e.Of):
		return w, fmt.Errorf("%s has no stage or heat source called %s", w.Barns[e.Barn].Name, e.Of)
	}
	list, _ := w.List(e.At.List)
	if list = slices.Clone(list); e.At.List == e.Barn {
		list[e.At.Index] = l
		return w.withList(e.Barn, list), nil
	}
	w = w.withList(e.At.List, slices.Delete(list, e.At.Index, e.At.Index+1))
	there, _ := w.List(e.Barn)
	return w.withList(e.Barn, append(slices.Clone(there), l)), nil
}

// What is Edit's.
func (SetRecord) What() string { return "record" }

// Field is Edit's.
func (SetRecord) Field() string { return "" }

// linked are the barn's loggers; those whose record nobody said anything of are taken to be of what is called like them.
func (b Barn) linked() []Logger {
	out := slices.Clone(b.Loggers)
	for i, l := range out {
		if !l.Assumed || l.Place != RecordPlace || l.RecordsStage != "" {
			continue
		}
		if name := b.CalledLike(l); name != "" {
			out[i].RecordsStage = name
		}
	}
	return out
}

// CalledLike is the stage, mixing fan or heat source of a barn that is called like a logger or its channel; "" for none.
func (b Barn) CalledLike(l Logger) string {
	name := strings.ToLower(l.Name)
	for _, n := range b.Recordable() {
		if low := strings.ToLower(n); low == name || strings.EqualFold(n, l.Channel) || strings.HasSuffix(name, ", "+low) {
			return n
		}
	}
	return ""
}
