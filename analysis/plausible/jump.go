package plausible

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// A jump is one reading, or two, that lie beyond any step this logger otherwise makes, and from which it
// comes back by at least seven tenths of the way at once. Air in a room does not do that: a door that opens
// leaves a tail of many readings. Its usual step is the 99th percentile of its steps; a jump is six times
// that and at least 5 K, or 25 points of humidity, and twice as much where readings are more than five minutes
// apart: a door may be open and shut between them. (Common practice, no source.)
const (
	jumpK, jumpRelHum = 5, 0.25
	jumpUsual         = 6
	jumpQuickMS       = 5 * 60 * 1000
	jumpBack          = 0.7
)

// jumps finds where logger i jumped and came back.
func (r *Room) jumps(i int) []Finding {
	t := r.traces[i]
	return append(jumpsIn(t.TempC, Temperature, jumpK), jumpsIn(t.RelHum, Humidity, jumpRelHum)...)
}

// jumpsIn finds the jumps of one quantity.
func jumpsIn(c series.Curve, q Quantity, least float64) (out []Finding) {
	if c.Interval() > jumpQuickMS {
		least *= 2
	}
	steps := stepsOf(c)
	if !slices.ContainsFunc(steps, func(s float64) bool { return s > least }) {
		return nil
	}
	usually := quantile(0.99, steps)
	limit := math.Max(least, jumpUsual*usually)
	for i := 1; i+1 < c.Len(); i++ {
		away := c.Val[i] - c.Val[i-1]
		if !c.Joined(i) || math.Abs(away) <= limit {
			continue
		}
		if n := back(c, i, away); n > 0 {
			out = append(out, Finding{Jumping, q, spanOf(c, i, i+n), Likely, []float64{away, usually}, ""})
			i += n
		}
	}
	return out
}

// back is after how many readings, one or two, the curve comes back from its step to reading i; else 0.
func back(c series.Curve, i int, away float64) int {
	for n := 1; n <= 2 && i+n < c.Len() && c.Joined(i+n); n++ {
		if left := (c.Val[i+n] - c.Val[i-1]) / away; math.Abs(left) <= 1-jumpBack {
			return n
		}
	}
	return 0
}

// stepsOf are the sizes of the joined steps.
func stepsOf(c series.Curve) (out []float64) {
	for i := 1; i < c.Len(); i++ {
		if c.Joined(i) {
			out = append(out, math.Abs(c.Val[i]-c.Val[i-1]))
		}
	}
	return out
}
