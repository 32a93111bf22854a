package engine

import (
	"math"
	"slices"

	"thawbook/analysis/series"
	"thawbook/app/winter"
)

const minuteMS = 60 * 1000

// gapRule says how wide a step between two readings of a read-out may be and still be a straight line.
type gapRule func(readout) int64

// gapOfMeasured is max(2 × interval, 30 min), or the keeper's own minutes.
func gapOfMeasured(minutes *float64) gapRule {
	return func(r readout) int64 {
		if minutes != nil {
			return int64(math.Round(*minutes * minuteMS))
		}
		return max(2*r.interval, 30*minuteMS)
	}
}

// gapOfStates is 2 × interval where the record is sampled; in a list of events a state holds until the
// next entry however late.
func gapOfStates(r readout) int64 {
	if isEventList(r) {
		return math.MaxInt64
	}
	return 2 * r.interval
}

// StatesHold is how long, in milliseconds, a state of a record holds for want of another.
func StatesHold(r series.Readings) int64 {
	return gapOfStates(readout{readings: r, interval: r.Interval()})
}

// isEventList says whether a record has no rhythm: fewer than half of its steps are the commonest one, give or take
// a tenth, as clocks jitter; or a state changes at every entry, however long the steps, as few runs of like length make it.
func isEventList(r readout) bool {
	regular, longest, changes := 0, int64(0), true
	for i := 1; i < r.readings.Len(); i++ {
		step := r.readings.At[i] - r.readings.At[i-1]
		if 10*abs(step-r.interval) <= r.interval {
			regular++
		}
		longest = max(longest, step)
		changes = changes && r.readings.Val[i]+r.readings.Val[i-1] == 1 && r.readings.Val[i]*r.readings.Val[i-1] == 0
	}
	return 2*regular < r.readings.Len()-1 || changes && longest > 2*r.interval
}

// curveOf draws the line through merged readings. Each read-out has its own limit; the curve carries the
// widest, and a break where a step is too wide for the read-outs on both its sides.
func curveOf(m merged, rule gapRule) series.Curve {
	c := series.Curve{Readings: m.readings}
	limits := make([]int64, len(m.readouts))
	for k, r := range m.readouts {
		limits[k] = rule(r)
		c.MaxStepMS = max(c.MaxStepMS, limits[k])
	}
	for i := 1; i < m.readings.Len(); i++ {
		step := m.readings.At[i] - m.readings.At[i-1]
		if step > max(limits[m.from[i-1]], limits[m.from[i]]) && step <= c.MaxStepMS {
			c.Breaks = append(c.Breaks, m.readings.At[i])
		}
	}
	return c
}

// slice is the part of a curve from an instant on and before another; nil is no limit.
func slice(c series.Curve, from, to *int64) series.Curve {
	span := allTime
	if from != nil {
		span.From = *from
	}
	if to != nil {
		span.To = *to
	}
	if span == allTime {
		return c
	}
	return c.Slice(span)
}

// without is a curve of a quantity without the readings of the stretches that leave it out, broken where they were,
// and what is to remark on that, a remark for each reason.
func without(c series.Curve, out []winter.Exclusion, quantity string) (series.Curve, []series.Remark) {
	var left []series.Remark
	for _, e := range out {
		if !e.Takes(quantity) {
			continue
		}
		gone := c.Slice(series.Span{From: e.From, To: e.To})
		left = leftOut(left, e.Reason, gone.Readings)
		before, after := c.Slice(series.Span{From: allTime.From, To: e.From}), c.Slice(series.Span{From: e.To, To: allTime.To})
		c.Breaks = slices.Concat(before.Breaks, after.Breaks)
		c.Readings.At = slices.Concat(before.Readings.At, after.Readings.At)
		c.Readings.Val = slices.Concat(before.Readings.Val, after.Readings.Val)
		if before.Len() > 0 && after.Len() > 0 && !slices.Contains(c.Breaks, after.Readings.At[0]) {
			c.Breaks = append(c.Breaks, after.Readings.At[0])
			slices.Sort(c.Breaks)
		}
	}
	return c, left
}

// leftOut counts readings that were left out to the remark of their reason. Those of a logger that was hung
// elsewhere count there.
func leftOut(remarks []series.Remark, reason string, gone series.Readings) []series.Remark {
	n := gone.Len()
	if n == 0 || reason == winter.HungElsewhere {
		return remarks
	}
	span := series.Span{From: gone.At[0], To: gone.At[n-1] + 1}
	i := slices.IndexFunc(remarks, func(r series.Remark) bool { return r.Args[0] == reason })
	if i < 0 {
		return append(remarks, series.Remark{Code: LeftOut, Args: []string{reason}, Count: n, Span: span})
	}
	r := &remarks[i]
	r.Count += n
	r.Span = series.Span{From: min(r.Span.From, span.From), To: max(r.Span.To, span.To)}
	return remarks
}

// allTime is longer than any winter; its length fits a whole number.
var allTime = series.Span{From: -1 << 60, To: 1 << 60}
