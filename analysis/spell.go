package analysis

import (
	"math"
	"slices"
	"sort"

	"thawbook/analysis/series"
)

// spellRule says how long a run must last to be a spell, and how short a pause inside is bridged
// (common practice, no source).
type spellRule struct{ leastMS, pauseMS float64 }

var (
	tempRule = spellRule{1 * series.HourMS, 1 * series.HourMS}
	humRule  = spellRule{6 * series.HourMS, 3 * series.HourMS}
	wetRule  = spellRule{1 * series.HourMS, 1 * series.HourMS}
)

// spells lists every run outside the good band at each judged place, and every wet run of each surface,
// by start, kind and place. Air is moist while its dew point lies above that of any air within both safe bands, damp
// while its relative humidity is too high: warm air is the one without being the other.
func spells(j judgement, surfaces []SurfaceRow) []Spell {
	var searches []func() []Spell
	for _, s := range j.spots {
		if isJudged(s.place) {
			searches = append(searches, spellSearches(j, s)...)
		}
	}
	for _, s := range surfaces {
		searches = append(searches, func() []Spell { return wetSpells(s, j.scored) })
	}
	found := make([][]Spell, len(searches))
	j.spread(len(found), func(i int) { found[i] = searches[i]() })
	out := append([]Spell{}, slices.Concat(found...)...)
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if a.Span.From != b.Span.From {
			return a.Span.From < b.Span.From
		}
		if a.Kind != b.Kind {
			return a.Kind < b.Kind
		}
		return a.Place < b.Place
	})
	return out
}

// spellSearches look for each kind of spell of a place's air.
func spellSearches(j judgement, s spot) []func() []Spell {
	search := func(kind, quantity string, of func() series.Curve, limit func(Bands) *float64, sign int, rule spellRule) func() []Spell {
		like := Spell{Kind: kind, Place: s.place, Quantity: quantity}
		return func() []Spell { return beyond(of(), j.under(limit), sign, rule, like) }
	}
	temp := func() series.Curve { return s.mean.TempC }
	hum := func() series.Curve { return relHumPct(s.mean) }
	dew := func() series.Curve { return s.mean.dewC }
	return []func() []Spell{
		search("warm", "air_temperature", temp, goodHighC, 1, tempRule),
		search("cold", "air_temperature", temp, goodLowC, -1, tempRule),
		search("damp", "relative_humidity", hum, goodHighPct, 1, humRule),
		search("dry", "relative_humidity", hum, goodLowPct, -1, humRule),
		search("moist", "dew_point", dew, dewHighC, 1, humRule),
	}
}

// The limits of a phase by which spells are found.
func goodHighC(b Bands) *float64   { return b.TempC.GoodHigh }
func goodLowC(b Bands) *float64    { return b.TempC.GoodLow }
func goodHighPct(b Bands) *float64 { return b.RelHumPct.GoodHigh }
func goodLowPct(b Bands) *float64  { return b.RelHumPct.GoodLow }

// beyond finds the spells of a curve above (sign +1) or below (−1) each limit while it holds; like carries the
// labels.
func beyond(c series.Curve, limits []limited, sign int, rule spellRule, like Spell) (out []Spell) {
	for _, l := range limits {
		like.Limit = l.limit
		for _, part := range l.time {
			runs := stretches{part}.above(c, l.limit)
			if sign < 0 {
				runs = stretches{part}.below(c, l.limit)
			}
			out = append(out, like.each(c, merged(c, runs, rule.pauseMS), rule.leastMS, sign)...)
		}
	}
	return out
}

// merged joins runs whose pause is at most pauseMS and known throughout, so no spell crosses a gap.
func merged(c series.Curve, runs []series.Run, pauseMS float64) [][]series.Run {
	var out [][]series.Run
	for i, r := range runs {
		if i > 0 && r.From-runs[i-1].To <= pauseMS && unbroken(c, runs[i-1].To, r.From) {
			out[len(out)-1] = append(out[len(out)-1], r)
			continue
		}
		out = append(out, []series.Run{r})
	}
	return out
}

// unbroken says whether the curve is known between two instants but for mere breaks.
func unbroken(c series.Curve, from, to float64) bool {
	s := series.Span{From: int64(math.Floor(from)), To: int64(math.Ceil(to))}
	pieces := c.Known(s)
	for i := 1; i < len(pieces); i++ {
		if pieces[i].From-pieces[i-1].To > breakMS {
			return false
		}
	}
	return len(pieces) > 0 && pieces[0].From == s.From && pieces[len(pieces)-1].To == s.To
}

// each turns groups of runs into spells like the given one; those with less time outside are left out.
func (like Spell) each(c series.Curve, groups [][]series.Run, leastMS float64, sign int) []Spell {
	var out []Spell
	for _, g := range groups {
		first, last := g[0], g[len(g)-1]
		outside := 0.0
		for _, r := range g {
			outside += r.To - r.From
		}
		if outside < leastMS {
			continue
		}
		sp := like
		sp.Span = series.Span{From: int64(math.Floor(first.From)), To: int64(math.Ceil(last.To))}
		sp.Cut = first.CutFrom || last.CutTo
		sp.Hours = outside / series.HourMS
		sp.DegreeHours, sp.Peak = degreeHours(c, sp.Span, like.Limit, sign), peak(g, sign)
		out = append(out, sp)
	}
	return out
}

// degreeHours is the area beyond the limit inside a span, in the curve's unit × hours.
func degreeHours(c series.Curve, s series.Span, limit float64, sign int) float64 {
	if sign < 0 {
		return c.Outside(s, limit, math.Inf(1)).BelowArea / series.HourMS
	}
	return c.Outside(s, math.Inf(-1), limit).AboveArea / series.HourMS
}

// peak is the value farthest out of a group of runs.
func peak(g []series.Run, sign int) float64 {
	p := g[0].Peak
	for _, r := range g[1:] {
		if float64(sign)*(r.Peak-p) > 0 {
			p = r.Peak
		}
	}
	return p
}

// wetSpells are the runs in which a surface was at or past the point where it sweats or frosts, named after
// what the surface mostly carried.
func wetSpells(row SurfaceRow, scored stretches) []Spell {
	like := Spell{Kind: "dew", Place: row.Name, Quantity: "surface_margin"}
	out := beyond(row.Margin, []limited{{0, scored}}, -1, wetRule, like)
	for i := range out {
		if frostMS, dewMS := wetTime(row.Margin, row.SurfaceC, stretches{out[i].Span}); frostMS > dewMS {
			out[i].Kind = "frost"
		}
	}
	return out
}
