package analysis

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

// hourly are mean values of whole hours UTC, NaN where less than half of the hour is known.
type hourly struct {
	from int64 // start of the first hour, ms UTC
	val  []float64
}

// hourlyOf are a curve's hours over the whole hours that cover a span.
func hourlyOf(c series.Curve, s series.Span) hourly {
	h := hourly{from: s.From - mod(s.From, series.HourMS)}
	if c.Len() == 0 {
		return h
	}
	for _, b := range c.Bins(series.Steps(series.Span{From: h.from, To: s.To + mod(-s.To, series.HourMS)}, series.HourMS, 0)) {
		v := math.NaN()
		if 2*b.KnownMS >= series.HourMS {
			v = b.Weighted()
		}
		h.val = append(h.val, v)
	}
	return h
}

// mod is the remainder of a/b that is not negative.
func mod(a, b int64) int64 { return (a%b + b) % b }

// at is the start of hour i.
func (h hourly) at(i int) int64 { return h.from + int64(i)*series.HourMS }

// between are the known values of hours i to before j; either may lie outside.
func (h hourly) between(i, j int) (out []float64) {
	i, j = max(i, 0), min(j, len(h.val))
	for ; i < j; i++ {
		if !math.IsNaN(h.val[i]) {
			out = append(out, h.val[i])
		}
	}
	return out
}

// whole is the time from a curve's first reading to its last.
func whole(c series.Curve) series.Span {
	if c.Len() == 0 {
		return series.Span{}
	}
	return series.Span{From: c.Readings.At[0], To: c.Readings.At[c.Len()-1]}
}

// quantileOf is the p-quantile of some values by straight lines between them, NaN when there are none.
func quantileOf(p float64, values []float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	return stat.Quantile(p, stat.LinInterp, sorted, nil)
}

// middleOf is the median of some values, NaN when there are none.
func middleOf(values []float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	return median(slices.Clone(values))
}
