package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// windowLags is over how many lags a slope is read to undo the lag: fewer, and noise drowns it; more, and corners go.
const windowLags = 1.1

// blunting is by how much a logger of first order falls short of a corner, in K per ms of lag, where the air comes to
// it at one slope and leaves it at another: y' = (T − y)/τ past a corner of T has its extreme τ ln(1 + before/after)
// later, after·τ·ln(1 + before/after) short of it.
func blunting(before, after float64) float64 { return after * math.Log1p(before/after) }

// lagOf is the lag, ms, that explains best, in the median, why swings are narrower than their differentials; below 0
// where they are wider. The slopes are those of air that swings a differential in the time the logger shows.
// Sampling blunts corners too and counts as lag.
func lagOf(swings []swing) float64 {
	var lags []float64
	for _, s := range swings {
		d := s.set.OnC - s.set.OffC
		up, down, next := d/(s.top.at-s.before.at), d/(s.bottom.at-s.top.at), d/(s.after.at-s.bottom.at)
		lags = append(lags, (d-s.top.val+s.bottom.val)/(blunting(up, down)+blunting(down, next)))
	}
	return series.Median(lags)
}

// withoutLag is what a curve would show without a lag of first order: T = y + τ·y' at the middle of every window of
// about a lag's length, two readings at least, by the least-squares line through them. Over two readings this is the
// air's mean between them (the lag's equation, integrated). Each piece of the line keeps its first and last reading as
// they are.
func withoutLag(c series.Curve, lagMS float64) series.Curve {
	n := max(2, 1+int(math.Round(windowLags*lagMS/float64(c.Interval()))))
	out := series.Curve{MaxStepMS: c.MaxStepMS}
	add := func(at int64, v float64) {
		if k := out.Len(); k == 0 || at > out.Readings.At[k-1] {
			out.Readings.At, out.Val = append(out.Readings.At, at), append(out.Val, v)
		}
	}
	for from, to := 0, 0; from < c.Len(); from = to {
		for to = from + 1; to < c.Len() && c.Joined(to); {
			to++
		}
		if k := out.Len(); k > 0 && c.Readings.At[from]-out.Readings.At[k-1] <= c.MaxStepMS {
			out.Breaks = append(out.Breaks, c.Readings.At[from])
		}
		add(c.Readings.At[from], c.Val[from])
		for i := from; i+n <= to; i++ {
			at, v, slope := leastSquares(c.Readings.At[i:i+n], c.Val[i:i+n])
			add(int64(at), v+lagMS*slope)
		}
		add(c.Readings.At[to-1], c.Val[to-1])
	}
	return out
}

// leastSquares is the middle of the line through readings: its instant, value and slope per ms.
func leastSquares(at []int64, val []float64) (t, v, slope float64) {
	n := float64(len(at))
	for i := range at {
		t, v = t+float64(at[i]-at[0]), v+val[i]
	}
	t, v = t/n, v/n
	var xy, xx float64
	for i := range at {
		x := float64(at[i]-at[0]) - t
		xy, xx = xy+x*(val[i]-v), xx+x*x
	}
	return t + float64(at[0]), v, xy / xx
}
