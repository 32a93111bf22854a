package plausible

import (
	"math"
	"math/bits"

	"gonum.org/v1/gonum/dsp/fourier"

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

// shiftSteps is from how many half-widths on a shift is one that is no whole hours: fans that cycle faster than loggers read
// them seem to shift by as much as a step and a half between loggers that read at other minutes (common practice, no source).
const shiftSteps = 3

// Apart says whether the clocks are apart by more than the half-width, by whole hours or by more than sampling may feign.
func (s Shift) Apart() bool {
	apart := max(s.AheadMS, -s.AheadMS)
	return apart > s.HalfMS && (s.WholeHours != 0 || apart > shiftSteps*s.HalfMS)
}

// ClockShift suggests by how much the clock behind a is ahead of the one behind b. ok is false when the changes
// don't say.
func ClockShift(a, b series.Curve) (s Shift, ok bool) {
	step := max(shiftGridMS, a.Interval(), b.Interval())
	from, to := common(a, b)
	n := int((to - from) / step)
	if n < shiftReadings {
		return Shift{}, false
	}
	most := min(int(shiftMostMS/step), n/3)
	x, y := changes(a, from, step, n), changes(b, from, step, n)
	at := correlations(x, y, most)
	best := highest(at, func(int) bool { return true })
	s = Shift{Peak: at[best], HalfMS: step / 2, Noise: 1 / math.Sqrt(float64(pairs(x, y)))}
	s.Second = second(at, best)
	s.AheadMS = int64(math.Round((float64(best-most) + vertex(at, best)) * float64(step)))
	s.WholeHours = WholeHours(s.AheadMS, s.HalfMS)
	sure := s.Peak >= shiftLeast && s.Peak >= shiftNoise*s.Noise && s.Peak >= shiftSecond*s.Second
	return s, sure
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
	for i, now := range c.Means(cells, leastOfCell) {
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

// correlations are those of x with y, of one length, when x's clock is −most to most steps ahead.
func correlations(x, y []float64, most int) []float64 {
	out := crossSums(x, y, most)
	xx, yy := sumsOfSquares(x), sumsOfSquares(y)
	for k := range out {
		lag := k - most
		from, to := max(0, -lag), min(len(y), len(x)-lag)
		size := (xx[to+lag] - xx[from+lag]) * (yy[to] - yy[from])
		if size <= 0 {
			out[k] = 0
			continue
		}
		out[k] /= math.Sqrt(size)
	}
	return out
}

// sumsOfSquares are the sums of the squares before each value and after the last.
func sumsOfSquares(x []float64) []float64 {
	out := make([]float64, len(x)+1)
	for i, v := range x {
		out[i+1] = out[i] + v*v
	}
	return out
}

// crossSums are the sums of x[i+lag]·y[i] for lags from −most to most: y is cut into blocks, each with the part of x
// it can meet, and their spectra's products are added up (the correlation theorem).
func crossSums(x, y []float64, most int) []float64 {
	size := max(64, 1<<bits.Len(uint(4*most)))
	block := size - 2*most
	fft := fourier.NewFFT(size)
	a, b := make([]float64, size), make([]float64, size)
	sum := make([]complex128, size/2+1)
	var fa, fb []complex128
	for start := 0; start < len(y); start += block {
		clear(a)
		clear(b)
		copy(b[:block], y[start:])
		from := start - most
		copy(a[max(0, -from):], x[min(max(0, from), len(x)):])
		fa, fb = fft.Coefficients(fa, a), fft.Coefficients(fb, b)
		for k := range sum {
			sum[k] += fa[k] * complex(real(fb[k]), -imag(fb[k]))
		}
	}
	out := fft.Sequence(nil, sum)[:2*most+1]
	for k := range out {
		out[k] /= float64(size)
	}
	return out
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

// WholeHours is the number of whole hours a shift amounts to within its half-width and two minutes, all in ms; 0 when
// to none.
func WholeHours(shift, half int64) int {
	whole := math.Round(float64(shift) / series.HourMS)
	if math.Abs(float64(shift)-whole*series.HourMS) > float64(half+2*60*1000) {
		return 0
	}
	return int(whole)
}
