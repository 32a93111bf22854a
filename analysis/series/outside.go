package series

import "math"

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

// add counts a line between two values that takes dt milliseconds.
func (o *Outside) add(low, high, dt float64, l *Limits) {
	if high > l.High {
		above, area := excess(low, high, l.High)
		o.AboveMS += above * dt
		o.AboveArea += area * dt
	}
	if low < l.Low {
		below, area := excess(-high, -low, -l.Low)
		o.BelowMS += below * dt
		o.BelowArea += area * dt
	}
}

// finish sets what is known of the whole.
func (o *Outside) finish(knownMS int64, l Limits) {
	o.KnownMS = knownMS
	if math.IsNaN(l.Low) {
		o.BelowMS, o.BelowArea = l.Low, l.Low
	}
	if math.IsNaN(l.High) {
		o.AboveMS, o.AboveArea = l.High, l.High
	}
}

// excess is the share of a line between lo and hi that lies above a limit below hi, and the area of that part above
// the limit for a line of unit length.
func excess(lo, hi, limit float64) (share, area float64) {
	if lo >= limit {
		return 1, (lo-limit)/2 + (hi-limit)/2
	}
	share = (hi - limit) / (hi - lo)
	return share, share * (hi - limit) / 2
}
