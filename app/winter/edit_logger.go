package winter

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
)

var errNoLogger = errors.New("the logger that was to be changed is no longer there")

// withLogger is a winter with the logger in a slot changed.
func (w Winter) withLogger(s Slot, change func(*Logger)) Winter {
	l, _ := w.Logger(s)
	change(&l)
	return w.with(s, l)
}

// is says whether a stretch was set down for a reason and a quantity.
func (x Exclusion) is(reason, quantity string) bool {
	return x.Reason == reason && x.Quantity == quantity
}

// Exclude leaves stretches of a logger's readings out, and says why.
type Exclude struct {
	At        Slot
	Stretches []Exclusion
}

// Apply is Edit's.
func (e Exclude) Apply(w Winter) (Winter, error) {
	if _, ok := w.Logger(e.At); !ok {
		return w, errNoLogger
	}
	if slices.ContainsFunc(e.Stretches, func(x Exclusion) bool { return x.To <= x.From }) {
		return w, fmt.Errorf("a stretch that is left out can't end before it begins")
	}
	return w.withLogger(e.At, func(l *Logger) { l.Exclusions = slices.Concat(l.Exclusions, e.Stretches) }), nil
}

// What is Edit's.
func (Exclude) What() string { return "exclude" }

// Field is Edit's.
func (Exclude) Field() string { return "" }

// Include counts the stretches of a logger's readings again that were left out for a reason, of one quantity or of
// all it recorded.
type Include struct {
	At               Slot
	Reason, Quantity string
}

// Apply is Edit's.
func (e Include) Apply(w Winter) (Winter, error) {
	l, ok := w.Logger(e.At)
	kept := slices.DeleteFunc(slices.Clone(l.Exclusions), func(x Exclusion) bool { return x.is(e.Reason, e.Quantity) })
	if !ok || len(kept) == len(l.Exclusions) {
		return w, fmt.Errorf("the stretch that was to count again is no longer there")
	}
	return w.withLogger(e.At, func(l *Logger) { l.Exclusions = kept }), nil
}

// What is Edit's.
func (Include) What() string { return "include" }

// Field is Edit's.
func (Include) Field() string { return "" }

// Keep sets down that stretches of a logger's readings look odd for a reason and are right all the same.
type Keep struct {
	At        Slot
	Stretches []Exclusion
}

// Apply is Edit's.
func (e Keep) Apply(w Winter) (Winter, error) {
	if _, ok := w.Logger(e.At); !ok {
		return w, errNoLogger
	}
	return w.withLogger(e.At, func(l *Logger) { l.Kept = slices.Concat(l.Kept, e.Stretches) }), nil
}

// What is Edit's.
func (Keep) What() string { return "keep" }

// Field is Edit's.
func (Keep) Field() string { return "" }

// AskAgain takes a Keep back.
type AskAgain struct {
	At               Slot
	Reason, Quantity string
}

// Apply is Edit's.
func (e AskAgain) Apply(w Winter) (Winter, error) {
	l, ok := w.Logger(e.At)
	left := slices.DeleteFunc(slices.Clone(l.Kept), func(x Exclusion) bool { return x.is(e.Reason, e.Quantity) })
	if !ok || len(left) == len(l.Kept) {
		return w, fmt.Errorf("what was kept is no longer set down")
	}
	return w.withLogger(e.At, func(l *Logger) { l.Kept = left }), nil
}

// What is Edit's.
func (AskAgain) What() string { return "ask_again" }

// Field is Edit's.
func (AskAgain) Field() string { return "" }

// SetClock sets down how a logger's clock went: its zone, whether it followed summer time, and what it said when a
// watch said what. What it was found to be ahead under another setting holds no longer.
type SetClock struct {
	At         Slot
	Zone       string // "" leaves it to the file
	FollowsDST *bool  // nil leaves it to the file
	Anchors    []Anchor
}

// Apply is Edit's.
func (e SetClock) Apply(w Winter) (Winter, error) {
	l, ok := w.Logger(e.At)
	if !ok {
		return w, errNoLogger
	}
	if e.Zone != "" {
		if _, err := Location(e.Zone); err != nil {
			return w, err
		}
	}
	for i := 1; i < len(e.Anchors); i++ {
		if e.Anchors[i].FaceMS <= e.Anchors[i-1].FaceMS || e.Anchors[i].At <= e.Anchors[i-1].At {
			return w, fmt.Errorf("a later time of the logger's must go with a later time of the watch")
		}
	}
	if l.Zone == e.Zone && reflect.DeepEqual(l.FollowsDST, e.FollowsDST) && slices.Equal(l.Anchors, e.Anchors) {
		return w, nil
	}
	return w.withLogger(e.At, func(l *Logger) {
		l.Zone, l.FollowsDST, l.Anchors, l.AheadMS = e.Zone, e.FollowsDST, e.Anchors, 0
	}), nil
}

// What is Edit's.
func (SetClock) What() string { return "clock" }

// Field is Edit's.
func (SetClock) Field() string { return "" }

// MoveClock sets down by how much a logger's clock was found to be ahead, ms, besides its zone and anchors; 0 takes it
// back.
type MoveClock struct {
	At      Slot
	AheadMS int64
}

// Apply is Edit's.
func (e MoveClock) Apply(w Winter) (Winter, error) {
	if _, ok := w.Logger(e.At); !ok {
		return w, errNoLogger
	}
	return w.withLogger(e.At, func(l *Logger) { l.AheadMS = e.AheadMS }), nil
}

// What is Edit's.
func (MoveClock) What() string { return "move_clock" }

// Field is Edit's.
func (MoveClock) Field() string { return "" }

// CheckOf is one check of the logger in a slot.
type CheckOf struct {
	At    Slot
	Check Calibration
}

// AddChecks sets checks of loggers down, all at once.
type AddChecks struct{ Checks []CheckOf }

// Apply is Edit's.
func (e AddChecks) Apply(w Winter) (Winter, error) {
	for _, c := range e.Checks {
		if _, ok := w.Logger(c.At); !ok {
			return w, errNoLogger
		}
		w = w.withLogger(c.At, func(l *Logger) { l.Checks = append(slices.Clip(l.Checks), c.Check) })
	}
	return w, nil
}

// What is Edit's.
func (AddChecks) What() string { return "check" }

// Field is Edit's.
func (AddChecks) Field() string { return "" }

// RemoveChecks takes checks of loggers back, all at once.
type RemoveChecks struct{ Checks []CheckOf }

// Apply is Edit's.
func (e RemoveChecks) Apply(w Winter) (Winter, error) {
	for _, c := range e.Checks {
		l, ok := w.Logger(c.At)
		i := slices.IndexFunc(l.Checks, func(own Calibration) bool { return reflect.DeepEqual(own, c.Check) })
		if !ok || i < 0 {
			return w, fmt.Errorf("the check that was to be taken back is no longer there")
		}
		w = w.withLogger(c.At, func(l *Logger) { l.Checks = slices.Delete(slices.Clone(l.Checks), i, i+1) })
	}
	return w, nil
}

// What is Edit's.
func (RemoveChecks) What() string { return "uncheck" }

// Field is Edit's.
func (RemoveChecks) Field() string { return "" }
