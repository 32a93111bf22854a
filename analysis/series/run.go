package series

import "math"

// Run is an unbroken stretch strictly beyond a limit: From and To in milliseconds UTC, fractional where
// the line crosses the limit between readings; Peak is the value furthest beyond it. CutFrom and CutTo
// say that the edge is no crossing but a gap, a break, or the end of the span or of the data: the
// quantity may have been beyond the limit on the other side of it.
type Run struct {
	From, To       float64
	CutFrom, CutTo bool
	Peak           float64
}

// Above lists the maximal runs of the line strictly above the limit inside s, rising and with exact
// edges, never across a gap or a break. Touching the limit ends a run, as a value equal to a limit is
// inside. A reading that nothing joins makes no run, nor does a NaN limit.
func (c Curve) Above(s Span, limit float64) []Run { return c.beyond(s, limit, 1) }

// Below is Above for runs strictly below the limit; Peak is the lowest value.
func (c Curve) Below(s Span, limit float64) []Run { return c.beyond(s, limit, -1) }

// beyond finds the runs where sign × line > sign × limit.
func (c Curve) beyond(s Span, limit, sign float64) []Run {
	f := runFinder{limit: sign * limit}
	at, seam := c.Readings.At, c.seamsFrom(s.From)
	for k := max(c.firstFrom(s.From), 1); k < len(at) && at[k-1] < s.To; k++ {
		switch {
		case at[k]-at[k-1] > c.MaxStepMS, seam.at(at[k]):
			f.close(float64(f.end), true)
		case !f.open && sign*c.Val[k-1] <= f.limit && sign*c.Val[k] <= f.limit: // as nearly everywhere
		default:
			p := c.cutStep(k, s)
			p.v0, p.v1 = sign*p.v0, sign*p.v1
			f.add(p)
		}
	}
	f.close(float64(f.end), true)
	for i := range f.runs {
		f.runs[i].Peak *= sign
	}
	return f.runs
}

// runFinder collects the runs above limit of pieces given in rising order.
type runFinder struct {
	limit float64
	runs  []Run
	run   Run // the one under way, if open
	open  bool
	end   int64 // where the last piece ended
}

// add follows the next piece; none outside the span.
func (f *runFinder) add(p piece) {
	if p.t0 >= p.t1 {
		return
	}
	f.end = p.t1
	if !f.open && p.v0 > f.limit {
		f.open, f.run = true, Run{From: float64(p.t0), CutFrom: true, Peak: p.v0}
	}
	if !f.open && p.v1 > f.limit {
		f.open, f.run = true, Run{From: p.crossing(f.limit), Peak: p.v1}
	}
	if f.open {
		f.run.Peak = max(f.run.Peak, p.v1)
	}
	if f.open && !(p.v1 > f.limit) {
		f.close(p.crossing(f.limit), false)
	}
}

// close ends the run under way; one too short for its edges to differ is dropped.
func (f *runFinder) close(to float64, cut bool) {
	if f.open && f.run.From < to {
		f.run.To, f.run.CutTo = to, cut
		f.runs = append(f.runs, f.run)
	}
	f.open = false
}

// crossing is the instant where the piece meets the limit that lies between its ends.
func (p piece) crossing(limit float64) float64 {
	if math.IsInf(limit, 0) {
		return float64(p.t0)
	}
	return float64(p.t0) + float64(p.t1-p.t0)*((limit-p.v0)/(p.v1-p.v0))
}
