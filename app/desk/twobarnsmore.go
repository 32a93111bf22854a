package desk

import (
	"slices"
	"strings"

	"thawbook/analysis/compare"
)

// weather is both barns' air by the outdoor air.
func (s twoBarns) weather() Table {
	symbol := s.a.u.TempSymbol()
	t := Table{Columns: []Column{{Title: "Outdoors", Unit: symbol}, barnColumn(s.p.A, symbol), barnColumn(s.p.B, symbol),
		{Title: "Difference", Number: true}, {Title: "Hours", Unit: "h", Number: true}}}
	shown := func(hours, meanC float64) string {
		if hours == 0 {
			return enDash
		}
		return number(s.a.u.TempValue(meanC), 1)
	}
	for _, b := range s.p.Weather.Bins {
		difference := enDash
		if b.HoursA > 0 && b.HoursB > 0 {
			difference = withSign(number(s.a.u.DiffValue(b.A-b.B), 1))
		}
		hours := hoursNumber(b.HoursA)
		if other := hoursNumber(b.HoursB); other != hours {
			hours += " and " + other
		}
		t.Rows = append(t.Rows, []string{rangeOf(s.a.u.Limit(b.FromC), s.a.u.Limit(b.ToC)), shown(b.HoursA, b.A), shown(b.HoursB, b.B), difference, hours})
	}
	return t
}

// apart are the hours in which the barns differed most, in order of time, and what was going on in each.
func (s twoBarns) apart() Table {
	symbol := s.a.u.TempSymbol()
	t := Table{Columns: []Column{{Title: "Hour"}, barnColumn(s.p.A, symbol), barnColumn(s.p.B, symbol),
		{Title: "Outdoors", Unit: symbol, Number: true}, {Title: "In " + s.p.A, About: "going on"}, {Title: "In " + s.p.B, About: "going on"}}}
	hours := slices.Clone(s.p.Apart)
	slices.SortFunc(hours, func(x, y compare.Hour) int { return int((x.Span.From - y.Span.From) / 1000) })
	for _, h := range hours {
		outdoors := enDash
		if h.OnA.OutdoorKnown {
			outdoors = number(s.a.u.TempValue(h.OnA.OutdoorC), 1)
		}
		t.Rows = append(t.Rows, []string{s.a.u.Clock(h.Span.From), number(s.a.u.TempValue(h.A), 1), number(s.a.u.TempValue(h.B), 1), outdoors, goingOnWords(h.OnA), goingOnWords(h.OnB)})
		t.lookAt(0, h.Span)
	}
	return t
}

// goingOnWords say what was going on in a barn: what happened or was noted, what spell it was in, which stages were on.
func goingOnWords(g compare.GoingOn) string {
	var said []string
	for _, kind := range append(slices.Clone(g.Events), g.Notes...) {
		if word := strings.ReplaceAll(kind, "_", " "); word != "other" && !slices.Contains(said, word) {
			said = append(said, word)
		}
	}
	for _, kind := range g.Spells {
		said = append(said, spellWord(kind))
	}
	var called, ran []string
	for _, on := range g.Stages {
		switch {
		case on.Share < 0.5:
		case on.Ran:
			ran = append(ran, on.Name)
		default:
			called = append(called, on.Name)
		}
	}
	if len(ran) > 0 {
		said = append(said, listed(ran)+" ran")
	}
	if len(called) > 0 {
		said = append(said, listed(called)+" called for")
	}
	if len(said) == 0 {
		return enDash
	}
	return strings.Join(said, "; ")
}
