package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// hourly are mean values of whole hours UTC, NaN where less than half of the hour is known.
type hourly struct {
	from int64 // start of the first hour, ms UTC
	val  []float64
}

// hourlyOf are a curve's hours from its first reading to its last.
func hourlyOf(c series.Curve) hourly {
	s := whole(c)
	h := hourly{from: s.From - mod(s.From, series.HourMS)}
	if c.Len() > 0 {
		hours := series.Steps(series.Span{From: h.from, To: s.To + mod(-s.To, series.HourMS)}, series.HourMS, 0)
		h.val = c.Means(hours, leastOfHour)
	}
	return h
}

// leastOfHour is the known share of an hour from which its mean may tell where a logger was (common practice, no source).
const leastOfHour = 0.5

// alongside are these hours for each hour of others, NaN outside; none where there are none.
func (h hourly) alongside(o hourly) hourly {
	out := hourly{from: o.from}
	if len(h.val) == 0 {
		return out
	}
	shift := int((o.from - h.from) / series.HourMS)
	for i := range o.val {
		v := math.NaN()
		if k := i + shift; k >= 0 && k < len(h.val) {
			v = h.val[k]
		}
		out.val = append(out.val, v)
	}
	return out
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
