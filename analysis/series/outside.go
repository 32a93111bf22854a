package series

import "math"

// Outside is how long and how far a curve lay strictly outside limits: times in milliseconds, areas in
// value × milliseconds between the line and the limit it passed, KnownMS the known time they are
// counted over. Inside (limits included) is KnownMS - BelowMS - AboveMS.
type Outside struct {
	KnownMS                                int64
	BelowMS, AboveMS, BelowArea, AboveArea float64
}

// Outside measures the curve against limits over s, exactly for its line. A value equal to a limit is
// inside; ±Inf is no limit. A NaN limit is an unknown one: its figures are NaN.
//
// For hourly values 7, 9, 11, 8 against an upper limit of 8: 3.75 value·h in 2.5 h.
func (c Curve) Outside(s Span, low, high float64) Outside {
	var o Outside
	for p := range c.pieces(s) {
		dt := p.t1 - p.t0
		o.KnownMS += dt
		above, area := excess(p.v0, p.v1, high)
		o.AboveMS += above * float64(dt)
		o.AboveArea += area * float64(dt)
		below, area := excess(-p.v0, -p.v1, -low)
		o.BelowMS += below * float64(dt)
		o.BelowArea += area * float64(dt)
	}
	if math.IsNaN(low) {
		o.BelowMS, o.BelowArea = low, low
	}
	if math.IsNaN(high) {
		o.AboveMS, o.AboveArea = high, high
	}
	return o
}

// excess is the share of a line from v0 to v1 that lies above the limit, and the area of that part
// above the limit for a line of unit length.
func excess(v0, v1, limit float64) (share, area float64) {
	lo, hi := min(v0, v1), max(v0, v1)
	switch {
	case hi <= limit:
		return 0, 0
	case lo >= limit:
		return 1, (lo-limit)/2 + (hi-limit)/2
	}
	share = (hi - limit) / (hi - lo)
	return share, share * (hi - limit) / 2
}
