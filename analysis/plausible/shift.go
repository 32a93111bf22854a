package plausible

import (
	"math"

	"thawbook/analysis/series"
)

// Two loggers of one place see the same doors, fans and weather, so their changes run alike. They are held
// together on a common grid of the wider interval, at least five minutes: steps from one grid instant to the
// next, both loggers' correlated at every shift up to 26 hours, a wrong zone and summer time together. A
// clipped step (at the 98th percentile) keeps one door from deciding. The best shift is believed when its
// correlation is at least 0.3, stands six times out of the noise (1/√n) and is at least 1.2 times the next
// best peak: in a room that breathes with the day a whole day fits nearly as well, and then nothing is
// said. (Store one clock and check it by the first differences: common practice, no source.)
const (
	shiftMostMS   = 26 * series.HourMS
	shiftGridMS   = 5 * 60 * 1000
	shiftLeast    = 0.3
	shiftNoise    = 6
	shiftSecond   = 1.2
	shiftReadings = 200
	shiftClip     = 0.98
)

// Shift is by how much one clock seems to be ahead of another's.
type Shift struct {
	AheadMS    int64   // to be taken from the first logger's times; positive when its clock is ahead
	HalfMS     int64   // half-width: half a step of the grid it was looked for on
	Peak       float64 // correlation of the changes at that shift
	Second     float64 // the next best, elsewhere
	Noise      float64 // what chance alone gives: 1/√n
	WholeHours int     // the whole hours it amounts to within the half-width and two minutes; else 0
}

// ClockShift suggests by how much the clock behind a is ahead of the one behind b. ok is false when the
// changes don't say, or say there is no shift beyond the half-width.
func ClockShift(a, b series.Curve) (s Shift, ok bool) {
	step := max(shiftGridMS, a.Interval(), b.Interval())
	from, to := common(a, b)
	n := int((to - from) / step)
	if n < shiftReadings {
		return Shift{}, false
	}
	most := min(int(shiftMostMS/step), n/3)
	x, y := changes(a, from, step, n), changes(b, from, step, n)
	at := make([]float64, 2*most+1)
	for k := range at {
		at[k] = correlation(x, y, k-most)
	}
	best := highest(at, func(int) bool { return true })
	s = Shift{Peak: at[best], HalfMS: step / 2, Noise: 1 / math.Sqrt(float64(pairs(x, y)))}
	s.Second = second(at, best)
	s.AheadMS = int64(math.Round((float64(best-most) + vertex(at, best)) * float64(step)))
	s.WholeHours = wholeHours(s.AheadMS, s.HalfMS)
	sure := s.Peak >= shiftLeast && s.Peak >= shiftNoise*s.Noise && s.Peak >= shiftSecond*s.Second
	return s, sure && max(s.AheadMS, -s.AheadMS) > s.HalfMS
}

// common is the stretch both curves reach over.
func common(a, b series.Curve) (from, to int64) {
	if a.Len() == 0 || b.Len() == 0 {
		return 0, 0
	}
	return max(a.Readings.At[0], b.Readings.At[0]), min(a.Readings.At[a.Len()-1], b.Readings.At[b.Len()-1])
}

// changes are a curve's steps on a grid, less their mean, clipped; 0 where it is not known.
func changes(c series.Curve, from, step int64, n int) []float64 {
	out := make([]float64, n)
	cells := series.Steps(series.Span{From: from, To: from + int64(n+1)*step}, step, from)
	var sizes []float64
	before := math.NaN()
	for i, b := range c.Bins(cells) {
		now := math.NaN()
		if 2*b.KnownMS >= step {
			now = b.Weighted()
		}
		if i > 0 {
			if out[i-1] = now - before; isKnown(out[i-1]) {
				sizes = append(sizes, math.Abs(out[i-1]))
			}
		}
		before = now
	}
	limit := quantile(shiftClip, sizes)
	for i, v := range out {
		if !isKnown(v) {
			out[i] = 0
			continue
		}
		out[i] = math.Max(-limit, math.Min(limit, v))
	}
	return out
}

// correlation is that of x with y when x's clock is lag steps ahead.
func correlation(x, y []float64, lag int) float64 {
	xy, xx, yy := 0.0, 0.0, 0.0
	for i := max(0, -lag); i < len(y) && i+lag < len(x); i++ {
		xy, xx, yy = xy+x[i+lag]*y[i], xx+x[i+lag]*x[i+lag], yy+y[i]*y[i]
	}
	if xx == 0 || yy == 0 {
		return 0
	}
	return xy / math.Sqrt(xx*yy)
}

// pairs is how many steps both have, at least 1.
func pairs(x, y []float64) (n int) {
	for i := range x {
		if x[i] != 0 && y[i] != 0 {
			n++
		}
	}
	return max(n, 1)
}

// highest is the index of the highest value among those allowed.
func highest(at []float64, allowed func(k int) bool) int {
	best := -1
	for k, v := range at {
		if allowed(k) && (best < 0 || v > at[best]) {
			best = k
		}
	}
	return max(best, 0)
}

// second is the highest value off the slopes of the best peak: beyond where it has fallen to half.
func second(at []float64, best int) float64 {
	left, right := best, best
	for left > 0 && at[left] > at[best]/2 {
		left--
	}
	for right < len(at)-1 && at[right] > at[best]/2 {
		right++
	}
	return math.Max(0, at[highest(at, func(k int) bool { return k <= left || k >= right })])
}

// vertex is how far, in steps, the top of the parabola through the best value and its neighbours lies off it.
func vertex(at []float64, best int) float64 {
	if best == 0 || best == len(at)-1 {
		return 0
	}
	bend := at[best-1] - 2*at[best] + at[best+1]
	if bend >= 0 {
		return 0
	}
	return (at[best-1] - at[best+1]) / (2 * bend)
}

// wholeHours is the number of whole hours a shift amounts to, 0 when to none.
func wholeHours(shift, half int64) int {
	whole := math.Round(float64(shift) / series.HourMS)
	if math.Abs(float64(shift)-whole*series.HourMS) > float64(half+2*60*1000) {
		return 0
	}
	return int(whole)
}
