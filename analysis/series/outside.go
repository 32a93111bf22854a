package series

import (
	"cmp"
	"math"
	"slices"
)

// Outside is how long and how far a curve lay strictly outside limits: times in milliseconds, areas in
// value × milliseconds between the line and the limit it passed, KnownMS the known time they are
// counted over. Inside (limits included) is KnownMS - BelowMS - AboveMS.
type Outside struct {
	KnownMS                                int64
	BelowMS, AboveMS, BelowArea, AboveArea float64
}

// Plus is what both stretches come to.
func (o Outside) Plus(next Outside) Outside {
	return Outside{
		KnownMS: o.KnownMS + next.KnownMS,
		BelowMS: o.BelowMS + next.BelowMS, AboveMS: o.AboveMS + next.AboveMS,
		BelowArea: o.BelowArea + next.BelowArea, AboveArea: o.AboveArea + next.AboveArea,
	}
}

// Outside measures the curve against limits over s, exactly for its line. A value equal to a limit is
// inside; ±Inf is no limit. A NaN limit is an unknown one: its figures are NaN.
//
// For hourly values 7, 9, 11, 8 against an upper limit of 8: 3.75 value·h in 2.5 h.
func (c Curve) Outside(s Span, low, high float64) Outside {
	return c.OutsideEach(s, []Limits{{low, high}})[0]
}

// Limits are a lower and an upper one.
type Limits struct{ Low, High float64 }

// OutsideEach is Outside for each of several pairs of limits, in one walk along the curve.
func (c Curve) OutsideEach(s Span, limits []Limits) []Outside {
	_, outside := c.BinOutside(s, limits)
	return outside
}

// outsideOf puts together what lay below and above; an unknown limit's figures are NaN.
func outsideOf(knownMS int64, below, above edge) Outside {
	for _, e := range []*edge{&below, &above} {
		if math.IsNaN(e.limit) {
			e.ms, e.area = e.limit, e.limit
		}
	}
	return Outside{KnownMS: knownMS, BelowMS: below.ms, BelowArea: below.area, AboveMS: above.ms, AboveArea: above.area}
}

// edge is for how long, and by what area, a line lay above a limit.
type edge struct{ limit, ms, area float64 }

// distinct are edges in rising order of their limits, each once; those that are not numbers come first.
func distinct(edges []edge) []edge {
	slices.SortFunc(edges, func(a, b edge) int { return cmp.Compare(a.limit, b.limit) })
	return slices.Compact(edges)
}

// edgeAt is the edge of a limit.
func edgeAt(edges []edge, limit float64) edge {
	i, _ := slices.BinarySearchFunc(edges, limit, func(e edge, limit float64) int { return cmp.Compare(e.limit, limit) })
	return edges[i]
}

// lowest is the limit at or below which a line passes none; NaN where one is unknown.
func lowest(edges []edge) float64 {
	if len(edges) == 0 {
		return math.Inf(1)
	}
	return edges[0].limit
}

// count adds a line between lo and hi that takes dt milliseconds to each edge it passes.
func count(edges []edge, lo, hi, dt float64) {
	for i := range edges {
		e := &edges[i]
		switch {
		case hi <= e.limit:
			return
		case lo >= e.limit: // all of it above
			e.ms += dt
			e.area += ((lo-e.limit)/2 + (hi-e.limit)/2) * dt
		default:
			share := (hi - e.limit) / (hi - lo)
			e.ms += share * dt
			e.area += share * (hi - e.limit) / 2 * dt
		}
	}
}
