package winter

import (
	"fmt"
	"slices"
	"strings"
)

// Regroup answers which columns of files are one logger's, and lets the winter's loggers follow.
type Regroup struct {
	Answer  SetAnswer
	Loggers []Regrouped
}

// Regrouped is what becomes of one logger of a file.
type Regrouped struct {
	File string // as it is kept
	Was  string // its name in the file before; "" for one that comes to light now
	Is   string // its name from now on; "" when nothing of it is left
}

// Apply is Edit's.
func (e Regroup) Apply(w Winter) (Winter, error) {
	w, err := e.Answer.Apply(w)
	if err != nil {
		return w, err
	}
	taken := make([]bool, len(e.Loggers))
	for list := TrayList; list < len(w.Barns); list++ {
		all, _ := w.List(list)
		w = w.withList(list, e.followed(all, taken))
		if list >= 0 {
			w = w.withBarn(list, e.rename)
		}
	}
	for i, x := range e.Loggers {
		if !taken[i] && x.Is != "" {
			w.Tray = append(slices.Clip(w.Tray), Logger{Name: x.Is, Files: []string{x.File}, Channel: x.Is})
		}
	}
	return w, nil
}

// rename gives a barn's surfaces the names their loggers have now.
func (e Regroup) rename(b *Barn) {
	b.Surfaces = slices.Clone(b.Surfaces)
	for i, s := range b.Surfaces {
		for _, x := range e.Loggers {
			if s.Logger != "" && s.Logger == x.Was && x.Is != "" {
				b.Surfaces[i].Logger = x.Is
			}
		}
	}
}

// followed are loggers under the names they have now, without those of which nothing is left; it notes which of
// the changes were met.
func (e Regroup) followed(all []Logger, taken []bool) (out []Logger) {
	for _, l := range all {
		i := e.of(l)
		if i < 0 {
			out = append(out, l)
			continue
		}
		x := e.Loggers[i]
		for j, o := range e.Loggers {
			taken[j] = taken[j] || o.Was != "" && o.Is == x.Is && l.HasFile(o.File)
		}
		if x.Is == "" {
			continue
		}
		if strings.EqualFold(l.Name, x.Was) || strings.HasPrefix(x.Was, l.Name) { // called after it, perhaps less a unit
			l.Name = x.Is
		}
		l.Channel = x.Is
		out = append(out, l)
	}
	return out
}

// of is the change that means a logger of the winter, or −1. One that takes a file whole is its first logger.
func (e Regroup) of(l Logger) int {
	named := l.Channel
	if named == "" {
		named = l.Name
	}
	of := func(fits func(x Regrouped) bool) int {
		return slices.IndexFunc(e.Loggers, func(x Regrouped) bool { return x.Was != "" && l.HasFile(x.File) && fits(x) })
	}
	if i := of(func(x Regrouped) bool { return strings.EqualFold(x.Was, named) }); i >= 0 || l.Channel != "" {
		return i
	}
	return of(func(Regrouped) bool { return true })
}

// HasFile says whether a file is the logger's: one of its files, or of the archives among them.
func (l Logger) HasFile(name string) bool {
	return slices.ContainsFunc(l.Files, func(own string) bool { return own == name || strings.HasPrefix(name, own+"!") })
}

// What is Edit's.
func (Regroup) What() string { return "regroup" }

// Field is Edit's.
func (Regroup) Field() string { return "" }

// Swap lets two loggers change places, for the whole record or, with Since (ms UTC), from then on.
type Swap struct {
	A, B  Slot
	Since *int64
}

// Apply is Edit's.
func (e Swap) Apply(w Winter) (Winter, error) {
	a, ok := w.Logger(e.A)
	b, too := w.Logger(e.B)
	switch {
	case !ok || !too:
		return w, fmt.Errorf("a logger that was to be swapped is no longer there")
	case a.RecordsStage != "" || b.RecordsStage != "":
		return w, fmt.Errorf("a logger that records a fan can't be swapped with another")
	case e.A.List == e.B.List && a.Place == b.Place:
		return w, fmt.Errorf("%s and %s hang at the same place already, so swapping them changes nothing", a.Name, b.Name)
	}
	if e.Since != nil {
		return e.from(w, a, b)
	}
	w = w.with(e.A, b.hungLike(a))
	return w.with(e.B, a.hungLike(b)), nil
}

// from swaps two loggers from an instant on: each hangs where it did until then.
func (e Swap) from(w Winter, a, b Logger) (Winter, error) {
	for _, move := range []struct {
		like     Logger
		from, to Slot
	}{{b, e.A, e.B}, {a, e.B, e.A}} {
		next, err := SetLogger{At: move.from, List: move.to.List, Place: move.like.Place, Since: e.Since, StationKM: move.like.StationKM}.Apply(w)
		if err != nil {
			return w, err
		}
		w = next
	}
	return w, nil
}

// hungLike is a logger at the place of another.
func (l Logger) hungLike(other Logger) Logger {
	l.Place, l.StationKM, l.Assumed = other.Place, other.StationKM, false
	return l
}

// with is a winter with another logger in a slot.
func (w Winter) with(s Slot, l Logger) Winter {
	list, _ := w.List(s.List)
	list = slices.Clone(list)
	list[s.Index] = l
	return w.withList(s.List, list)
}

// What is Edit's.
func (Swap) What() string { return "swap" }

// Field is Edit's.
func (Swap) Field() string { return "" }
