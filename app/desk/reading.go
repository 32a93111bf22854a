package desk

import (
	"fmt"
	"math"
	"strings"
)

// Said is what one trace or one bar of the Timeline says at an instant; Value is in the printed unit.
type Said struct {
	Lane         string // its title
	Name, Unit   string
	Value        float64
	Known        bool
	Bar, On, Ran bool
	Crowd        bool // one of so many that none has a line of its own
}

// crowd is what many traces of a lane say at an instant.
type crowd struct {
	n         int
	low, high float64
	unit      string
}

func (c *crowd) add(s Said) {
	if c.n == 0 {
		c.low, c.high, c.unit = s.Value, s.Value, s.Unit
	}
	c.n, c.low, c.high = c.n+1, min(c.low, s.Value), max(c.high, s.Value)
}

// Read is the line for the pointer: the local time, what each trace says there, and which stages were on.
func (t Timeline) Read(at int64, all []Said) string {
	parts := []string{t.Units.Clock(at)}
	var ran, called, unsure []string
	crowds := map[string]*crowd{}
	for _, l := range t.Lanes {
		crowds[l.Title] = &crowd{}
	}
	for _, s := range all {
		switch {
		case s.Bar && s.Lane == eventsTitle: // HappenedNear tells them
		case s.Crowd && s.Known && crowds[s.Lane] != nil:
			crowds[s.Lane].add(s)
		case s.Crowd:
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
	for _, l := range t.Lanes {
		if c := crowds[l.Title]; c.n > 0 {
			parts = append(parts, fmt.Sprintf("%d loggers from %s to %s", c.n, number(c.low, 1), withUnit(number(c.high, 1), c.unit)))
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
