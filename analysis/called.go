package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// segment is a stretch over which something is known to be on, or known to be off; what is unknown has no
// segment. Two segments that touch with opposite states share a seen switching. Instants are fractional
// milliseconds UTC.
type segment struct {
	From, To float64
	On       bool
}

// called says when a thermostat's rule asks for its stage along a temperature line: on when T ≥ on, off when
// T ≤ off, off < on. The state is unknown at the start and after every gap until one of the two holds. At a
// mere break of a mean the state is kept unless the temperature beyond it settles the other one.
func called(c series.Curve, s series.Span, onC, offC float64, corners ...corner) []segment {
	w := walk{onC: onC, offC: offC, corners: corners}
	cut := lineInside(c, s)
	for i := range cut.Readings.At {
		t, v := float64(cut.Readings.At[i]), cut.Val[i]
		switch {
		case i == 0 || cut.gapBefore(i):
			w.close(w.last)
			w.state = undecided
			w.settle(t, v)
		case !cut.Joined(i):
			w.settle(t, v)
		default:
			w.along(float64(cut.Readings.At[i-1]), cut.Val[i-1], t, v)
			w.turn(cut.Readings.At[i], v)
		}
		w.last = t
	}
	w.close(w.last)
	return w.out
}

// called is what the rule asks for within the time. A thermostat goes on working while nothing is scored.
func (s stretches) called(c series.Curve, onC, offC float64, corners []corner) []segment {
	return clip(called(c, s.hull(), onC, offC, corners...), s)
}

// lineCut is a curve whose first and last reading lie on the edges of a span where the line is known there.
type lineCut struct{ series.Curve }

// gapBefore says whether the step to reading i is a gap, over which time is lost, rather than a line or a mere break of a
// mean (see breakMS).
func (c lineCut) gapBefore(i int) bool {
	return !c.Joined(i) && c.Readings.At[i]-c.Readings.At[i-1] > breakMS
}

// forStages is a line by which the states of stages may be told: it breaks, too, where a step is more than twice as wide as
// those on both its sides. A room's air may be a straight line over half an hour; a stage can come and go meanwhile
// (house rule: for stages the gap limit is twice the interval).
func forStages(c series.Curve) series.Curve {
	at := c.Readings.At
	var wide []int64
	for i := 2; i+1 < len(at); i++ {
		around := max(at[i-1]-at[i-2], at[i+1]-at[i])
		if around > breakMS && at[i]-at[i-1] > 2*around && c.Joined(i) {
			wide = append(wide, at[i])
		}
	}
	if len(wide) > 0 {
		c.Breaks = slices.Concat(c.Breaks, wide)
		slices.Sort(c.Breaks)
	}
	return c
}

// lineInside is the part of a curve's line inside a span.
func lineInside(c series.Curve, s series.Span) lineCut {
	in := c.Slice(series.Span{From: s.From, To: s.To})
	at, val := make([]int64, 0, in.Len()+2), make([]float64, 0, in.Len()+2)
	add := func(t int64) {
		if v, known := c.At(t); known && (len(at) == 0 || t > at[len(at)-1]) {
			at, val = append(at, t), append(val, v)
		}
	}
	add(s.From)
	for i, t := range in.Readings.At {
		if len(at) == 0 || t > at[len(at)-1] {
			at, val = append(at, t), append(val, in.Val[i])
		}
	}
	add(s.To)
	return lineCut{series.Curve{Readings: series.Readings{At: at, Val: val}, MaxStepMS: c.MaxStepMS, Breaks: in.Breaks}}
}

type onOff int8

const (
	undecided onOff = iota
	isOn
	isOff
)

// walk follows a thermostat's state along a line.
type walk struct {
	onC, offC   float64
	state       onOff
	since, last float64
	out         []segment
	corners     []corner // to come
}

// settle takes the state that a temperature alone decides at t.
func (w *walk) settle(t, tempC float64) {
	switch {
	case tempC >= w.onC:
		w.become(isOn, t)
	case tempC <= w.offC:
		w.become(isOff, t)
	}
}

// turn takes the state that a corner decides, which may have gone by as much as slackK farther than the reading.
func (w *walk) turn(at int64, tempC float64) {
	for len(w.corners) > 0 && w.corners[0].at < at {
		w.corners = w.corners[1:]
	}
	if len(w.corners) == 0 || w.corners[0].at != at {
		return
	}
	switch c := w.corners[0]; {
	case c.top && tempC+c.slackK >= w.onC:
		w.become(isOn, float64(at))
	case !c.top && tempC-c.slackK <= w.offC:
		w.become(isOff, float64(at))
	}
}

// along follows the straight line from (t0, v0) to (t1, v1): it meets at most one of the two limits first.
func (w *walk) along(t0, v0, t1, v1 float64) {
	crossing := func(limit float64) float64 { return t0 + (limit-v0)/(v1-v0)*(t1-t0) }
	switch {
	case v1 > v0 && v1 >= w.onC && w.state != isOn:
		w.become(isOn, math.Max(t0, crossing(w.onC)))
	case v1 < v0 && v1 <= w.offC && w.state != isOff:
		w.become(isOff, math.Max(t0, crossing(w.offC)))
	case v1 == v0:
		w.settle(t1, v1)
	}
}

// become switches the state at t.
func (w *walk) become(next onOff, t float64) {
	if next == w.state {
		return
	}
	w.close(t)
	w.state, w.since = next, t
}

// close ends the running segment at t.
func (w *walk) close(t float64) {
	if w.state != undecided && t > w.since {
		w.out = append(w.out, segment{w.since, t, w.state == isOn})
	}
	w.since = t
}
