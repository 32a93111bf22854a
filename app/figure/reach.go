package figure

import (
	"slices"
	"sort"

	"thawbook/analysis/series"
)

// reach is what the traces on a lane's shared scale reach, with the lane's limits, inside the focus.
//
// The scale covers all of it, unless a few readings lie so far out that they would flatten the rest. The rest is what is left
// of the traces' columns when the highest and the lowest fortieth of them are laid aside, with the limits. Where something lies
// beyond it by more than twice its height, so that two thirds of the lane would be left to a few readings, the scale ends with
// what lies beyond it by no more than its height. In a view of which half or more holds something beyond that end, the scale
// covers all again. Lanes without limits are never cut. The shares are common practice, no source.
type reach struct {
	of            []*series.Pyramid
	focus, sample Span // sample: what the columns span
	limits        Range
	whole, most   Range
	away          []bool // of each column: whether something in it lies beyond most
}

const (
	farOut     = 40 // one part in so many may lie far out
	flattening = 2  // by so many heights of the rest
)

// reachColumns is how many columns the reach of so many traces is read in: fewer of a crowd, for it is read in one frame.
func reachColumns(traces int) int { return max(32, min(256, 1<<14/traces)) }

// reachOf is the reach of a lane, worked out again where its traces, its limits or the focus are other than the last time.
func (f *Figure) reachOf(lane *Lane) *reach {
	now := reach{focus: f.Focus, limits: lane.limits()}
	for i := range lane.Traces {
		if t := &lane.Traces[i]; !t.OwnScale && t.Pyramid != nil {
			now.of = append(now.of, t.Pyramid)
			now.sample = around(now.sample, t.Curve.Readings.At[0], t.Curve.Readings.At[t.Curve.Len()-1]+1)
		}
	}
	last := lane.reach
	if last != nil && last.focus == now.focus && last.limits == now.limits && slices.Equal(last.of, now.of) {
		return last
	}
	if f.Focus.To > f.Focus.From {
		now.sample = f.Focus
	}
	now.whole = f.valueRange(lane, false).with(now.limits.Low).with(now.limits.High)
	now.most = now.whole
	if now.mayBeCut() {
		now.cut()
	}
	lane.reach = &now
	return lane.reach
}

// limits are the lowest and the highest limit of all bands.
func (l *Lane) limits() Range {
	r := noRange
	for _, b := range l.Bands {
		r = r.with(b.Low).with(b.High)
	}
	return r
}

// mayBeCut tells whether something would flatten the limits, so that the rest is worth finding: it is no lower than they are.
func (r *reach) mayBeCut() bool {
	far := flattening * (r.limits.High - r.limits.Low)
	return len(r.of) > 0 && r.limits.known() && (r.whole.High > r.limits.High+far || r.whole.Low < r.limits.Low-far)
}

// cut finds most and away.
func (r *reach) cut() {
	n := reachColumns(len(r.of))
	cols := make([]series.Column, n*len(r.of))
	inParallel(len(r.of), func(i int) { r.of[i].Columns(cols[i*n:][:n], r.sample) })
	if lows, highs := extremes(cols); len(lows) > 0 {
		r.cutAt(lows, highs)
	}
	r.away = make([]bool, n)
	for k, c := range cols {
		if c.Hi > r.most.High || c.Lo < r.most.Low {
			r.away[k%n] = true
		}
	}
}

// extremes are the lowest and the highest values of the known columns, each sorted.
func extremes(cols []series.Column) (lows, highs []float64) {
	for _, c := range cols {
		if c.Lo == c.Lo {
			lows, highs = append(lows, c.Lo), append(highs, c.Hi)
		}
	}
	slices.Sort(lows)
	slices.Sort(highs)
	return lows, highs
}

// cutAt finds most from the columns' extremes.
func (r *reach) cutAt(lows, highs []float64) {
	few := len(lows) / farOut
	rest := r.limits.with(lows[few]).with(highs[len(highs)-1-few])
	height := rest.High - rest.Low
	if r.whole.High > rest.High+flattening*height {
		r.most.High = rest.High
		r.most = r.most.with(highs[max(0, above(highs, rest.High+height)-1)])
	}
	if r.whole.Low < rest.Low-flattening*height {
		r.most.Low = rest.Low
		r.most = r.most.with(lows[min(len(lows)-1, above(lows, rest.Low-height))])
	}
}

// above is the index of the first of sorted values that is greater than v.
func above(sorted []float64, v float64) int {
	return sort.Search(len(sorted), func(i int) bool { return sorted[i] > v })
}

// in is what the scale covers in a view.
func (r *reach) in(view Span) Range {
	if len(r.away) == 0 {
		return r.whole
	}
	width := float64(r.sample.To-r.sample.From) / float64(len(r.away))
	from := int(float64(view.From-r.sample.From) / width)
	to := int(float64(view.To-r.sample.From)/width) + 1
	far, n := 0, to-from
	for k := max(from, 0); k < min(to, len(r.away)); k++ {
		if r.away[k] {
			far++
		}
	}
	if 2*far >= n {
		return r.whole
	}
	return r.most
}
