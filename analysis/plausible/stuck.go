package plausible

import (
	"cmp"
	"math"
	"slices"

	"thawbook/analysis/series"
)

// A value is stuck when it stands still for a day or more, on at least a dozen readings, and eight times
// as long as this logger usually stays on one value: half of its time is spent in runs no longer than the
// usual one. A calm room and a coarse resolution do that too. So its neighbours must have moved meanwhile by more
// than three of its steps; alone, it must itself move by more than three steps on nine of ten other days, of which
// there must be three. (Common practice, no source.)
const (
	stuckHours    = 24
	stuckReadings = 12
	stuckUsual    = 8
	calmSteps     = 3
	calmShare     = 0.1
	calmDays      = 3
)

// full is where a humidity sensor reads 100 % in print. From nearFull on many a sensor levels out in fog and
// stands still for good reason (common practice, no source).
const full, nearFull = 0.995, 0.97

// A sensor stands at 100 % wrongly when its neighbours are drier by a tenth all the while; alone, when for
// two days it does not leave 100 % although the temperature moves by 4 K, which would take saturated air
// out of saturation or rain it out (common practice, no source).
const (
	saturatedHours, saturatedHoursAlone = 12, 48
	drierBy                             = 0.10
	saturatedMovesK                     = 4
)

// still is a run of readings [i, j) of one value, joined.
type still struct {
	i, j  int
	hours float64
}

// stills lists the runs of readings for which same holds from one to the next.
func stills(c series.Curve, same func(a, b float64) bool) (out []still) {
	for i := 0; i < c.Len(); {
		j := i + 1
		for j < c.Len() && c.Joined(j) && same(c.Val[i], c.Val[j]) {
			j++
		}
		out = append(out, still{i, j, float64(c.Readings.At[j-1]-c.Readings.At[i]) / series.HourMS})
		i = j
	}
	return out
}

// equal says whether two values are the same.
func equal(a, b float64) bool { return a == b }

// stepOr is a printed resolution, or for 0 the smallest change a curve ever showed.
func stepOr(step float64, c series.Curve) float64 {
	if step > 0 {
		return step
	}
	return c.SmallestStep()
}

// spanOf is the stretch of a run of readings.
func spanOf(c series.Curve, i, j int) series.Span {
	return series.Span{From: c.Readings.At[i], To: c.Readings.At[j-1] + 1}
}

// usual is the length of run up to which the others take up half of their time.
func usual(sorted []still, but still) float64 {
	total := 0.0
	for _, s := range sorted {
		total += s.hours
	}
	total -= but.hours
	sum := 0.0
	for _, s := range sorted {
		if s == but {
			continue
		}
		if sum += s.hours; 2*sum >= total {
			return s.hours
		}
	}
	return 0
}

// stuck finds where logger i stood still.
func (r *Room) stuck(i int) []Finding {
	t := r.traces[i]
	temp := stuckIn(t.TempC, Temperature, r.temp, i, t.TempStepK)
	humid := stuckIn(t.RelHum, Humidity, r.relHum, i, t.RelHumStep)
	return append(temp, slices.DeleteFunc(humid, func(f Finding) bool { return f.Figures[0] >= nearFull })...)
}

// stuckIn finds where one quantity of logger i stood still.
func stuckIn(c series.Curve, q Quantity, all *crowd, i int, step float64) (out []Finding) {
	runs := stills(c, equal)
	long := func(s still) bool { return s.hours >= stuckHours && s.j-s.i >= stuckReadings }
	if !slices.ContainsFunc(runs, long) {
		return nil
	}
	sorted := slices.SortedFunc(slices.Values(runs), func(a, b still) int { return cmp.Or(cmp.Compare(a.hours, b.hours), cmp.Compare(a.i, b.i)) })
	near, _ := all.others(i)
	for _, s := range runs {
		if !long(s) {
			continue
		}
		usually, span := usual(sorted, s), spanOf(c, s.i, s.j)
		meanwhile := known(near.in(span))
		sure, moved := Likely, spread(meanwhile)
		if len(meanwhile) == 0 {
			sure, moved = Perhaps, calmDay(c, s)
		}
		if s.hours > stuckUsual*usually && moved > calmSteps*step*(1+1e-9) {
			out = append(out, Finding{Stuck, q, span, sure, []float64{c.Val[s.i], s.hours, usually}, ""})
		}
	}
	return out
}

// calmDay is how far the curve moves on a calm day, of days without the run: one calmer comes once in ten. It is
// 0 when there are too few.
func calmDay(c series.Curve, but still) float64 {
	var ranges []float64
	for i := 0; i < c.Len(); {
		day := c.Readings.At[i] / (dayHours * series.HourMS)
		j := i + 1
		for j < c.Len() && c.Readings.At[j]/(dayHours*series.HourMS) == day {
			j++
		}
		if j <= but.i || i >= but.j {
			ranges = append(ranges, spread(c.Val[i:j]))
		}
		i = j
	}
	if len(ranges) < calmDays {
		return 0
	}
	return quantile(calmShare, ranges)
}

// saturated finds where logger i stood at 100 % and the air can't have.
func (r *Room) saturated(i int) (out []Finding) {
	c := r.traces[i].RelHum
	if !slices.ContainsFunc(c.Val, func(v float64) bool { return v >= full }) {
		return nil
	}
	near, n := r.relHum.others(i)
	for _, s := range stills(c, func(a, b float64) bool { return a >= full && b >= full }) {
		if c.Val[s.i] < full || s.hours < saturatedHours {
			continue
		}
		span := spanOf(c, s.i, s.j)
		beside := quantile(0.9, near.in(span))
		drier := n > 0 && beside <= full-drierBy
		moved := n == 0 && s.hours >= saturatedHoursAlone && spread(r.temp.all[i].in(span)) > saturatedMovesK && atStop(c, s)
		switch {
		case drier:
			out = append(out, Finding{Saturated, Humidity, span, Likely, []float64{s.hours, median(near.in(span))}, ""})
		case moved:
			out = append(out, Finding{Saturated, Humidity, span, Perhaps, []float64{s.hours, math.NaN()}, ""})
		}
	}
	return out
}

// atStop says whether the whole run is one value: a sensor at its stop.
func atStop(c series.Curve, s still) bool {
	return !slices.ContainsFunc(c.Val[s.i:s.j], func(v float64) bool { return v != c.Val[s.i] })
}
