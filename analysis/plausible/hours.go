package plausible

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

// hours are mean values of whole hours UTC, NaN where less than half of the hour is known.
type hours struct {
	from int64 // start of the first hour
	val  []float64
}

// span is the stretch of the hours [i, j).
func (h hours) span(i, j int) series.Span {
	return series.Span{From: h.from + int64(i)*series.HourMS, To: h.from + int64(j)*series.HourMS}
}

// any says whether any hour is known.
func (h hours) any() bool { return slices.ContainsFunc(h.val, isKnown) }

// isKnown says whether a value is one.
func isKnown(v float64) bool { return !math.IsNaN(v) }

// gridOf is the whole hours that cover all readings of some loggers.
func gridOf(traces []Trace) (grid series.Span) {
	first := true
	for _, t := range traces {
		for _, c := range []series.Curve{t.TempC, t.RelHum} {
			if c.Len() == 0 {
				continue
			}
			from, to := c.Readings.At[0], c.Readings.At[c.Len()-1]+1
			if first {
				grid, first = series.Span{From: from, To: to}, false
			}
			grid.From, grid.To = min(grid.From, from), max(grid.To, to)
		}
	}
	grid.From = floorHour(grid.From)
	grid.To = floorHour(grid.To + series.HourMS - 1)
	return grid
}

// floorHour is the start of the hour an instant lies in.
func floorHour(at int64) int64 {
	h := at / series.HourMS
	if at < 0 && at%series.HourMS != 0 {
		h--
	}
	return h * series.HourMS
}

// hoursOf are a curve's hours on a grid; none where the curve is empty.
func hoursOf(grid series.Span, c series.Curve) hours {
	h := hours{from: grid.From}
	if c.Len() == 0 {
		return h
	}
	for _, b := range c.Bins(series.Steps(grid, series.HourMS, 0)) {
		v := math.NaN()
		if 2*b.KnownMS >= series.HourMS {
			v = b.Weighted()
		}
		h.val = append(h.val, v)
	}
	return h
}

// others are the medians of the hours of all loggers but one, and of how many at most they are.
func others(all []hours, but int) (out hours, n int) {
	var rest []hours
	for i, h := range all {
		if i != but && h.any() {
			rest = append(rest, h)
		}
	}
	if len(rest) == 0 {
		return hours{from: all[but].from}, 0
	}
	out = hours{from: rest[0].from, val: make([]float64, len(rest[0].val))}
	row := make([]float64, 0, len(rest))
	for k := range out.val {
		row = row[:0]
		for _, h := range rest {
			if isKnown(h.val[k]) {
				row = append(row, h.val[k])
			}
		}
		out.val[k] = median(row)
	}
	return out, len(rest)
}

// minus is the difference of hours; NaN where either is unknown.
func (h hours) minus(o hours) hours {
	out := hours{from: h.from, val: make([]float64, min(len(h.val), len(o.val)))}
	for i := range out.val {
		out.val[i] = h.val[i] - o.val[i]
	}
	return out
}

// in are the hours that lie wholly in a span.
func (h hours) in(s series.Span) []float64 {
	i := (s.From - h.from + series.HourMS - 1) / series.HourMS
	j := (s.To - h.from) / series.HourMS
	i, j = max(i, 0), min(j, int64(len(h.val)))
	if i >= j {
		return nil
	}
	return h.val[i:j]
}

// known are the values that are.
func known(val []float64) (out []float64) {
	for _, v := range val {
		if isKnown(v) {
			out = append(out, v)
		}
	}
	return out
}

// quantile is the p-quantile of the known values, NaN when there are none.
func quantile(p float64, val []float64) float64 {
	sorted := known(val)
	if len(sorted) == 0 {
		return math.NaN()
	}
	slices.Sort(sorted)
	return stat.Quantile(p, stat.LinInterp, sorted, nil)
}

// median is the middle of the known values, the mean of the two middle ones when they are even in number.
func median(val []float64) float64 {
	sorted := known(val)
	if len(sorted) == 0 {
		return math.NaN()
	}
	slices.Sort(sorted)
	return (sorted[(len(sorted)-1)/2] + sorted[len(sorted)/2]) / 2
}

// spread is how far the known values lie apart; 0 when there are none.
func spread(val []float64) float64 {
	all := known(val)
	if len(all) == 0 {
		return 0
	}
	return slices.Max(all) - slices.Min(all)
}

// runsOf lists the runs [i, j) of hours for which yes holds, at least long hours each. Runs no more than
// apart hours from each other are one.
func runsOf(n, long, apart int, yes func(i int) bool) (out [][2]int) {
	for i := 0; i < n; i++ {
		if !yes(i) {
			continue
		}
		if k := len(out) - 1; k >= 0 && i-out[k][1] <= apart {
			out[k][1] = i + 1
			continue
		}
		out = append(out, [2]int{i, i + 1})
	}
	return slices.DeleteFunc(out, func(r [2]int) bool { return r[1]-r[0] < long })
}
