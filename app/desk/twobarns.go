package desk

import (
	"slices"
	"strings"

	"thawbook/analysis/compare"
	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// TwoBarns is a barn beside another of the winter: one sentence, one table, the curves of both on one time axis.
type TwoBarns struct {
	Sentence string
	Sure     string
	Settle   string   // what would settle the sentence, where it can't tell
	Lacks    string   // what it needs; then there is nothing else
	Others   []string // the barns it can be set beside, in the winter's order
	Other    int      // of Others: the one it is set beside
	Table    Table    // over the whole time both have in common
	Phases   []PhaseTable
	Weather  Table   // both by the outdoor air; without rows where that is not known
	Stages   Pattern // both by the outdoor air; without strips where there are none
	Warmth   Pattern // for what share of the hours the air was at a temperature or warmer
	Levels   Table   // the hours of it
	Apart    Table   // the ten hours in which they differed most, and what was going on
	Losses   string  // the hives found dead; empty where neither barn has a count
	Totals   Table   // of each barn's own winter
	Behind   Table   // what each range is made of: only behind a press
	Both     Timeline
	Paired   []string // how the hours of both were put together
	Notes    []string
	Cautions []string
}

// PhaseTable is what differed in a phase that both barns were in.
type PhaseTable struct {
	Title string
	Table Table
}

// TwoBarnsOf sets a barn of a review beside another of its Others: barns of its winter, then its like in the other winter.
// InOtherWinter picks that, where there is one; an index that is none of theirs is the first.
func TwoBarnsOf(r *engine.Result, with OtherWinter, barn, other int, u Units) TwoBarns {
	v := TwoBarns{Both: Timeline{Sentence: "There is nothing to draw.", Lacks: "It takes two barns."}}
	all := mates(r, with, barn)
	for _, m := range all {
		v.Others = append(v.Others, m.name)
	}
	if len(all) == 0 {
		v.Sentence = "There is no other barn to set this one beside."
		v.Lacks = "It takes a second barn with a logger in its room: drop its files on this window and say that they hung in that barn. Or set another winter of this barn beside it."
		return v
	}
	switch {
	case other == InOtherWinter && all[len(all)-1].pair != nil:
		v.Other = len(all) - 1
	case other >= 0 && other < len(all):
		v.Other = other
	}
	m := all[v.Other]
	p, err := m.beside(r, barn)
	if err != nil {
		v.Sentence, v.Lacks = r.Barns[barn].Barn+" and "+m.name+" could not be set side by side.", "An internal fault of the program kept them from being compared. Each barn's own figures hold."
		return v
	}
	s := twoBarns{p, newBarn(r.Inputs[barn], r.Barns[barn], u), newBarn(m.of.Inputs[m.barn], m.of.Barns[m.barn], u)}
	s.fill(&v)
	return v
}

// TwoBarnsSaid is what is said of a pair in words: sentence, how sure, what would settle it, losses.
func TwoBarnsSaid(p compare.Pair, u Units) (v TwoBarns) {
	s := twoBarns{p, barn{u: u}, barn{u: u}}
	if v.Losses = s.losses(); v.Losses != "" {
		v.Notes = append(v.Notes, "Differences are worked out before they are rounded.")
		v.Cautions = []string{cautionComparison}
	}
	if v.say(s) {
		v.Sentence, v.Sure, v.Settle = s.sentence()
	}
	return v
}

// say says why there is nothing to compare, or that there is something.
func (v *TwoBarns) say(s twoBarns) bool {
	if len(s.p.Rows) > 0 {
		return true
	}
	v.Sentence = s.p.A + " and " + s.p.B + " have no time in common in which both were known."
	v.Lacks = "It takes loggers that recorded in both barns on the same days, while bees were in both."
	if s.p.ByWinterDay {
		v.Lacks = "It takes loggers that recorded in both winters on the same days of the year, while bees were in."
	}
	return false
}

// twoBarns is a pair with both its barns, as the sentences ask for it.
type twoBarns struct {
	p    compare.Pair
	a, b barn
}

func (s twoBarns) fill(v *TwoBarns) {
	if !v.say(s) {
		return
	}
	v.Sentence, v.Sure, v.Settle = s.sentence()
	v.Table = s.table("", shortRow)
	for _, phase := range []string{"filling", "deep winter", "late winter", "emptying"} {
		if t := s.table(phase, fullRow); len(t.Rows) > 0 {
			v.Phases = append(v.Phases, PhaseTable{capital(phase), t})
		}
	}
	v.Weather, v.Stages = s.weather(), s.stagesInWeather()
	v.Warmth, v.Levels, v.Apart = s.warmth(), s.levels(), s.apart()
	v.Losses, v.Totals, v.Behind = s.losses(), s.totals(), s.behind()
	v.Both, v.Paired = s.timeline(), s.paired()
	if slices.ContainsFunc(s.p.Remarks, func(m series.Remark) bool { return m.Code == "limits_differ" }) {
		v.Notes = append(v.Notes, "The two barns were given limits of their own; hours outside are counted by the laxer of the two.")
	}
	v.Cautions = []string{cautionComparison}
}

// timeline has both barns' curves on one axis.
func (s twoBarns) timeline() Timeline {
	laterMS := s.p.LaterMS
	t := Timeline{Units: s.a.u, Beside: true, Bees: series.Span{From: max(s.a.r.BeesIn, s.b.r.BeesIn-laterMS), To: min(s.a.r.BeesOut, s.b.r.BeesOut-laterMS)}}
	if s.p.ByWinterDay {
		t.Sentence = s.drawn()
	}
	one, other := s.lineNames()
	for _, lane := range []func(barn) (Lane, bool){barn.temperatureLane, barn.humidityLane, barn.marginLane} {
		of, ok := lane(s.a)
		with, has := lane(s.b)
		if ok && has {
			of.Veil = false
			of.Traces = append(judgedOf(of, one, Firm), judgedOf(earlier(with, laterMS), other, Thin)...)
			t.Lanes = append(t.Lanes, of)
		}
	}
	t.Whole = extent(t.Lanes)
	for _, apart := range series.Subtract([]series.Span{t.Whole}, []series.Span{t.Bees}) {
		t.Shades = append(t.Shades, Shade{apart, "bees not in both", true})
	}
	t.View = s.a.firstView(t.Whole)
	return t
}

// lineNames are the names beside both lines: of one barn in two winters the winters' alone, for there is little room.
func (s twoBarns) lineNames() (one, other string) {
	one, other = s.p.A, s.p.B
	if barn := s.a.r.Barn; s.p.ByWinterDay && barn == s.b.r.Barn {
		return strings.TrimPrefix(one, barn+", "), strings.TrimPrefix(other, barn+", ")
	}
	return one, other
}

// judgedOf is a lane's judged curve under a barn's name.
func judgedOf(l Lane, name string, role Role) (out []Trace) {
	for _, t := range l.Traces {
		if t.Role == Firm {
			out = append(out, Trace{Name: name, Curve: t.Curve, Role: role})
		}
	}
	return out
}
