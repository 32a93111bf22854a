package calibration

import (
	"math"

	"thawbook/analysis/series"
)

// Together is the check of loggers against each other over a stretch in which they hung together: the truth is
// the mean of all at each of the first logger's instants at which every one is known. Only the stretch is
// counted in which all differences to that mean stay within 1 K or 10 points of their middle: band is the house
// value for the quantity, TogetherK or TogetherRelHum. steps are the printed resolutions, one per logger. The
// half-width is that of a logger among equals: nothing here says what all are off by together. ok is false for
// fewer than two loggers, or when they were not together for an hour and five readings.
func Together(loggers []series.Curve, span series.Span, band float64, steps []float64) (checks []Check, ok bool) {
	if len(loggers) < 2 || len(steps) != len(loggers) {
		return nil, false
	}
	at, val := aligned(loggers, span)
	keepBand(&at, val, band)
	if len(at) < leastReadings || at[len(at)-1]-at[0] < togetherMS {
		return nil, false
	}
	means := make([]float64, len(at))
	for k := range at {
		for _, v := range val {
			means[k] += v[k] / float64(len(val))
		}
	}
	for i, v := range val {
		c := series.Curve{Readings: series.Readings{At: at, Val: v}}
		checks = append(checks, checkOf(c, means, 0, len(at), steps[i], 0))
	}
	return checks, true
}

// The bands within which loggers that hang together keep their distance (common practice, no source).
const (
	TogetherK      = 1
	TogetherRelHum = 0.10
)

// aligned is every logger's value at the first's instants within a span, where all are known.
func aligned(loggers []series.Curve, span series.Span) (at []int64, val [][]float64) {
	val = make([][]float64, len(loggers))
	row := make([]float64, len(loggers))
	for _, t := range loggers[0].Slice(span).Readings.At {
		all := true
		for i, c := range loggers {
			v, known := c.At(t)
			row[i], all = v, all && known
		}
		if !all {
			continue
		}
		at = append(at, t)
		for i := range val {
			val[i] = append(val[i], row[i])
		}
	}
	return at, val
}

// keepBand keeps the instants at which every logger's distance to the first lies within the band of its middle.
func keepBand(at *[]int64, val [][]float64, band float64) {
	keep := make([]bool, len(*at))
	for k := range keep {
		keep[k] = true
	}
	for _, v := range val[1:] {
		apart := make([]float64, len(v))
		for k := range v {
			apart[k] = v[k] - val[0][k]
		}
		middle := series.Median(apart)
		for k := range apart {
			keep[k] = keep[k] && math.Abs(apart[k]-middle) <= band
		}
	}
	n := 0
	for k, yes := range keep {
		if !yes {
			continue
		}
		(*at)[n] = (*at)[k]
		for _, v := range val {
			v[n] = v[k]
		}
		n++
	}
	*at = (*at)[:n]
	for i := range val {
		val[i] = val[i][:n]
	}
}
