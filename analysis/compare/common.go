package compare

import (
	"cmp"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// stretch is time that is scored in both barns, each in one phase of its own.
type stretch struct {
	span  series.Span
	phase string         // of both; empty where they were in different ones
	bands analysis.Bands // the laxer limits of the two
}

// common is the time two barns have in common, on A's clock and cut into hours UTC.
type common struct {
	stretches    []stretch // rising
	from         int64     // start of the first hour
	cells        int
	laterMS      int64 // see Pair
	limitsDiffer bool  // somewhere the two barns have limits of their own
}

// commonTime is the time scored in both.
func commonTime(a, b []analysis.Phase, laterMS int64) common {
	c := common{laterMS: laterMS}
	for _, pa := range a {
		for _, pb := range b {
			s := stretch{bands: laxerOf(pa.Bands, pb.Bands)}
			if pa.Name == pb.Name {
				s.phase = pa.Name
			}
			for _, s.span = range series.Intersect(pa.Parts, moved(pb.Parts, -laterMS)) {
				c.stretches = append(c.stretches, s)
				c.limitsDiffer = c.limitsDiffer || differ(pa.Bands.TempC, pb.Bands.TempC) || differ(pa.Bands.RelHumPct, pb.Bands.RelHumPct)
			}
		}
	}
	slices.SortFunc(c.stretches, func(x, y stretch) int { return cmp.Compare(x.span.From, y.span.From) })
	if n := len(c.stretches); n > 0 {
		first := c.stretches[0].span.From
		c.from = first - (first%series.HourMS+series.HourMS)%series.HourMS
		c.cells = len(series.Steps(series.Span{From: c.from, To: c.stretches[n-1].span.To}, series.HourMS, c.from))
	}
	return c
}

// spans are the common time.
func (c common) spans() (out []series.Span) {
	for _, s := range c.stretches {
		out = append(out, s.span)
	}
	return out
}

// scopes are the whole and the phases both were in, in order.
func (c common) scopes() []string {
	out := []string{""}
	for _, s := range c.stretches {
		if !slices.Contains(out, s.phase) {
			out = append(out, s.phase)
		}
	}
	return out
}

// known is the part of a stretch that is known in both barns. What is known of each is told by a function of the span asked
// for, B's by B's clock.
func (c common) known(s stretch, knownA, knownB func(series.Span) []series.Span) []series.Span {
	return series.Intersect(knownA(s.span), moved(knownB(later(s.span, c.laterMS)), -c.laterMS))
}

// part is time known in both barns that lies in one hour and one stretch.
type part struct {
	series.Span
	cell    int
	stretch stretch
}

// parts cuts the time known in both barns into hours.
func (c common) parts(knownA, knownB func(series.Span) []series.Span) (out []part) {
	for _, s := range c.stretches {
		for _, k := range c.known(s, knownA, knownB) {
			for _, hour := range series.Steps(k, series.HourMS, 0) {
				out = append(out, part{hour, int((hour.From - c.from) / series.HourMS), s})
			}
		}
	}
	return out
}

// scopes are where a stretch counts: in the whole, and in the phase both are in.
func (s stretch) scopes() []string {
	if s.phase == "" {
		return []string{""}
	}
	return []string{"", s.phase}
}

// moved are spans so much later.
func moved(spans []series.Span, ms int64) (out []series.Span) {
	for _, s := range spans {
		out = append(out, later(s, ms))
	}
	return out
}

func later(s series.Span, ms int64) series.Span { return series.Span{From: s.From + ms, To: s.To + ms} }

// laxerOf are the limits outside which air is outside those of both.
func laxerOf(a, b analysis.Bands) analysis.Bands {
	return analysis.Bands{TempC: laxer(a.TempC, b.TempC), RelHumPct: laxer(a.RelHumPct, b.RelHumPct)}
}

func laxer(a, b analysis.Band) analysis.Band {
	low := func(x, y *float64) *float64 { return agreed(x, y, -1) }
	high := func(x, y *float64) *float64 { return agreed(x, y, 1) }
	return analysis.Band{
		GoodLow: low(a.GoodLow, b.GoodLow), GoodHigh: high(a.GoodHigh, b.GoodHigh),
		WatchLow: low(a.WatchLow, b.WatchLow), WatchHigh: high(a.WatchHigh, b.WatchHigh),
		ActLow: low(a.ActLow, b.ActLow), ActHigh: high(a.ActHigh, b.ActHigh),
	}
}

// agreed is the farther out of two limits, in a direction; none where either barn has none.
func agreed(x, y *float64, out float64) *float64 {
	if x == nil || y == nil {
		return nil
	}
	v := *x
	if (*y-*x)*out > 0 {
		v = *y
	}
	return &v
}

// differ says whether two bands are not the same.
func differ(a, b analysis.Band) bool {
	for i, x := range limitsOf(a) {
		y := limitsOf(b)[i]
		if (x == nil) != (y == nil) || x != nil && *x != *y {
			return true
		}
	}
	return false
}

// limitsOf are a band's limits: good, watch and act, the lower and the upper of each.
func limitsOf(b analysis.Band) [6]*float64 {
	return [6]*float64{b.GoodLow, b.GoodHigh, b.WatchLow, b.WatchHigh, b.ActLow, b.ActHigh}
}
