package compare

import (
	"cmp"
	"math"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Hour is one of those in which two barns' air differed most, by A's clock, and what was going on.
type Hour struct {
	Span             series.Span
	A, B, Difference float64 // mean °C
	OnA, OnB         GoingOn
}

// GoingOn is what was known of one barn in an hour.
type GoingOn struct {
	OutdoorC       float64
	OutdoorKnown   bool
	Events, Spells []string // their kinds
	Notes          []string // kinds of what the keeper set down
	Stages         []StageOn
}

// StageOn is for what share of an hour a stage was on, 0–1.
type StageOn struct {
	Name  string
	Share float64
	Ran   bool // as recorded; else as called for
}

// Of so many hours, each known for half of it at least, it is told what was going on.
const mostApart, enoughOfHour = 10, 0.5

// apart are the ten hours in which the air differed most, the farthest apart first.
func (c common) apart(temperature *draft, a, b Side) []Hour {
	type cell struct {
		at   int
		size float64
	}
	var cells []cell
	for i, w := range temperature.cells.Weight {
		if w >= enoughOfHour {
			cells = append(cells, cell{i, math.Abs(temperature.cells.Sum[i] / w)})
		}
	}
	slices.SortStableFunc(cells, func(x, y cell) int { return cmp.Compare(y.size, x.size) })
	out := []Hour{}
	for _, x := range cells[:min(mostApart, len(cells))] {
		from := c.from + int64(x.at)*series.HourMS
		span := series.Span{From: from, To: from + series.HourMS}
		h := Hour{Span: span, OnA: goingOn(a, span), OnB: goingOn(b, later(span, c.laterMS))}
		for _, p := range c.partsOf(span, a.Review.Traces.Room, b.Review.Traces.Room) {
			share := float64(p.To-p.From) / series.HourMS / temperature.cells.Weight[x.at]
			h.A += share * a.Review.Traces.Room.Bin(p).Weighted()
			h.B += share * b.Review.Traces.Room.Bin(later(p, c.laterMS)).Weighted()
		}
		h.Difference = h.A - h.B
		out = append(out, h)
	}
	return out
}

// partsOf are the parts of a span that are common time and known in both.
func (c common) partsOf(s series.Span, a, b series.Curve) []series.Span {
	return series.Intersect(series.Intersect(c.spans(), a.Known(s)), moved(b.Known(later(s, c.laterMS)), -c.laterMS))
}

// goingOn is what was known of a barn in a span.
func goingOn(side Side, s series.Span) GoingOn {
	g := GoingOn{Events: []string{}, Spells: []string{}, Notes: []string{}, Stages: []StageOn{}}
	if b := side.Review.Traces.Outdoor.Bin(s); b.KnownMS > 0 {
		g.OutdoorC, g.OutdoorKnown = b.Weighted(), true
	}
	for _, e := range side.Review.Events {
		g.Events = noted(g.Events, e.Kind, e.Span, s)
	}
	for _, x := range side.Review.Spells {
		g.Spells = noted(g.Spells, x.Kind, x.Span, s)
	}
	for _, n := range side.Input.Notes {
		span := series.Span{From: n.At, To: n.At}
		if n.Until != nil {
			span.To = *n.Until
		}
		g.Notes = noted(g.Notes, n.Kind, span, s)
	}
	for _, r := range side.Review.Stages {
		if on, ok := stageOn(r, s); ok {
			g.Stages = append(g.Stages, on)
		}
	}
	return g
}

// noted adds a word, once, where what it is about touches a span; what is of an instant ends where it begins.
func noted(words []string, word string, about, s series.Span) []string {
	touches := about.From < s.To && (about.To > s.From || about.From == about.To && about.From >= s.From)
	if !touches || slices.Contains(words, word) {
		return words
	}
	return append(words, word)
}

// stageOn is for what share of a span a stage was on; ok is false where that is not known.
func stageOn(r analysis.StageRow, s series.Span) (on StageOn, ok bool) {
	w := cmp.Or(r.Ran, r.Called)
	if w == nil || r.Setting.Timer && r.Ran == nil || s.From < r.Setting.Span.From || s.To > r.Setting.Span.To ||
		len(series.Intersect(w.Unsure, []series.Span{s})) > 0 {
		return on, false
	}
	share := float64(lengthIn(w.On, s)) / float64(s.To-s.From)
	return StageOn{r.Name, share, r.Ran != nil}, true
}
