package desk

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Said is what one trace or one bar of the Timeline says at an instant; Value is in the printed unit.
type Said struct {
	Lane         string // its title
	Name, Unit   string
	Value        float64
	Known        bool
	Bar, On, Ran bool
	Thin         bool // one of several loggers
}

// fewLoggers is how many of a lane are read one by one under the pointer.
const fewLoggers = 4

// readTogether is what several traces of a lane say at an instant: each by itself, or of more than a few the lowest and the
// highest.
func readTogether(all []Said, few int) string {
	if len(all) > few {
		byValue := func(a, b Said) int { return cmp.Compare(a.Value, b.Value) }
		low, high := slices.MinFunc(all, byValue), slices.MaxFunc(all, byValue)
		return fmt.Sprintf("%d loggers from %s (%s) to %s (%s)", len(all), number(low.Value, 1), low.Name, withUnit(number(high.Value, 1), high.Unit), high.Name)
	}
	var each []string
	for _, s := range all {
		value := noNumber
		if s.Known {
			value = number(s.Value, 1)
		}
		each = append(each, s.Name+" "+value)
	}
	return withUnit(strings.Join(each, ", "), all[0].Unit)
}

// Read is the line for the pointer: the local time, what each trace says there and which stages were on, and then the loggers
// of which the traces are made.
func (t Timeline) Read(at int64, all []Said) string { return t.read(at, all, fewLoggers) }

// ReadEach is Read with every logger by itself, however many there are.
func (t Timeline) ReadEach(at int64, all []Said) string { return t.read(at, all, len(all)) }

func (t Timeline) read(at int64, all []Said, few int) string {
	parts := []string{t.Units.Clock(at)}
	var ran, called, unsure []string
	together := map[string][]Said{} // by lane
	for _, s := range all {
		switch {
		case s.Bar && s.Lane == eventsTitle: // HappenedNear tells them
		case !s.Bar && t.Beside, s.Thin && s.Known:
			together[s.Lane] = append(together[s.Lane], s)
		case s.Thin:
		case !s.Bar && s.Known:
			parts = append(parts, t.nameOf(s)+" "+withUnit(number(s.Value, 1), s.Unit))
		case !s.Bar:
			parts = append(parts, t.nameOf(s)+" "+noNumber)
		case !s.Known:
			unsure = append(unsure, s.Name)
		case s.On && s.Ran:
			ran = append(ran, s.Name)
		case s.On:
			called = append(called, s.Name)
		}
	}
	for _, g := range []struct {
		head  string
		names []string
	}{{"ran: ", ran}, {"called for: ", called}, {"can't tell: ", unsure}} {
		if len(g.names) > 0 {
			parts = append(parts, g.head+strings.Join(g.names, ", "))
		}
	}
	for _, l := range t.Lanes {
		switch some := together[l.Title]; {
		case len(some) == 0:
		case t.Beside:
			parts = append(parts, lowerFirst(l.Title)+" "+readTogether(some, few))
		default:
			parts = append(parts, readTogether(some, few))
		}
	}
	return strings.Join(parts, "   ")
}

// nameOf names a reading by its trace, and by its lane where the trace's name alone would not tell.
func (t Timeline) nameOf(s Said) string {
	switch {
	case t.ByLane:
		return s.Lane
	case len(t.Lanes) > 0 && s.Lane != t.Lanes[0].Title:
		return strings.ToLower(s.Lane)
	}
	return s.Name
}

// Measured says what a stretch amounts to: its length, and least, mean and greatest value of each judged
// line; for an empty stretch, how to measure one.
func (t Timeline) Measured(s Span) string {
	if s.To <= s.From {
		return HelpLine("timeline")
	}
	parts := []string{t.Units.Clock(s.From) + " to " + t.Units.Clock(s.To) + ", " + Hours(float64(s.To-s.From)/3600/1000)}
	for _, l := range t.Lanes {
		for _, tr := range l.Traces {
			if tr.Role == Firm {
				parts = append(parts, l.measured(tr, s))
			}
		}
	}
	return strings.Join(parts, "; ") + "."
}

func (l Lane) measured(tr Trace, s Span) string {
	bin := tr.Curve.Bin(s)
	name := strings.ToLower(l.Title) + " "
	if bin.KnownMS == 0 || math.IsNaN(bin.Weighted()) {
		return name + noNumber
	}
	shown := func(v float64) string { return number(l.Shown(v), 1) }
	return name + withUnit(rangeOf(shown(bin.Min), shown(bin.Max)), l.Unit) + ", " + withUnit(shown(bin.Weighted()), l.Unit) + " on average"
}
