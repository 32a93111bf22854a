package plausible

import (
	"math"
	"slices"

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

// gridReachMS is how far the hours reach from the middle of the record: a year and a day each way. One logger whose
// clock was reset to another century costs no memory that way (common practice, no source).
const gridReachMS = 366 * dayHours * series.HourMS

// gridOf is the whole hours that cover all readings of some loggers, as far as they reach.
func gridOf(traces []Trace) (grid series.Span) {
	var middles []int64
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
			middles = append(middles, c.Readings.At[c.Len()/2])
		}
	}
	if first {
		return grid
	}
	slices.Sort(middles)
	middle := middles[len(middles)/2]
	grid.From, grid.To = max(grid.From, middle-gridReachMS), min(grid.To, middle+gridReachMS)
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

// leastOfCell is the known share of an hour, or of another cell of time, from which its mean counts (common practice, no
// source).
const leastOfCell = 0.5

// hoursOf are a curve's hours on a grid; none where the curve is empty.
func hoursOf(grid series.Span, c series.Curve) hours {
	h := hours{from: grid.From}
	if c.Len() > 0 {
		h.val = c.Means(series.Steps(grid, series.HourMS, 0), leastOfCell)
	}
	return h
}

// crowd is one quantity of all loggers of a place, hour by hour. Each hour's known values are kept in order, so that
// the middle of all but one costs a look-up and not another sorting.
type crowd struct {
	all    []hours // per logger
	has    []bool  // per logger, whether any hour is known
	n      int     // how many have
	sorted [][]float64
	near   []hours // per logger, the medians of all others
	trends []trend // per logger
}

// newCrowd gathers the loggers' hours on a grid; spread shares out the work.
func newCrowd(grid series.Span, curves []series.Curve, spread Spread) *crowd {
	c := &crowd{all: make([]hours, len(curves)), has: make([]bool, len(curves))}
	spread(len(curves), func(i int) {
		c.all[i] = hoursOf(grid, curves[i])
		c.has[i] = c.all[i].any()
	})
	for _, has := range c.has {
		if has {
			c.n++
		}
	}
	c.sorted = make([][]float64, (grid.To-grid.From)/series.HourMS)
	days := (len(c.sorted) + dayHours - 1) / dayHours
	spread(days, func(d int) {
		for k := d * dayHours; k < min((d+1)*dayHours, len(c.sorted)); k++ {
			c.sorted[k] = c.sortedAt(k)
		}
	})
	c.near = make([]hours, len(curves))
	spread(len(curves), func(i int) { c.near[i] = c.middles(i) })
	return c
}

// sortedAt are the known values of an hour in order.
func (c *crowd) sortedAt(k int) []float64 {
	row := make([]float64, 0, c.n)
	for i, h := range c.all {
		if c.has[i] && isKnown(h.val[k]) {
			row = append(row, h.val[k])
		}
	}
	slices.Sort(row)
	return row
}

// others are the medians of the hours of all loggers but one, and of how many at most they are.
func (c *crowd) others(but int) (out hours, n int) {
	if c.has[but] {
		return c.near[but], c.n - 1
	}
	return c.near[but], c.n
}

// middles are the medians of the hours of all loggers but one; none where there is no other.
func (c *crowd) middles(but int) hours {
	out := hours{from: c.all[but].from}
	if c.n == 0 || c.n == 1 && c.has[but] {
		return out
	}
	out.val = make([]float64, len(c.sorted))
	for k, row := range c.sorted {
		own := math.NaN()
		if c.has[but] {
			own = c.all[but].val[k]
		}
		out.val[k] = middleBut(row, own)
	}
	return out
}

// middleBut is the median of sorted values without one of them, which may be unknown; NaN of nothing.
func middleBut(sorted []float64, own float64) float64 {
	n, skip := len(sorted), len(sorted)
	if isKnown(own) {
		skip, _ = slices.BinarySearch(sorted, own)
		n--
	}
	if n <= 0 {
		return math.NaN()
	}
	at := func(i int) float64 {
		if i >= skip {
			i++
		}
		return sorted[i]
	}
	return (at((n-1)/2) + at(n/2)) / 2
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
func quantile(p float64, val []float64) float64 { return series.Quantile(p, known(val)) }

// median is the median of the known values, NaN when there are none.
func median(val []float64) float64 { return series.Median(known(val)) }

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
