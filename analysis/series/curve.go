package series

import (
	"math"
	"slices"
	"sort"
)

// Joined reports whether the step from reading i-1 to reading i is a straight line: both exist, lie no
// further apart than the gap limit (a step equal to it is bridged), and i starts no new piece.
func (c Curve) Joined(i int) bool {
	if i < 1 || i >= c.Len() || c.Readings.At[i]-c.Readings.At[i-1] > c.MaxStepMS {
		return false
	}
	_, broken := slices.BinarySearch(c.Breaks, c.Readings.At[i])
	return !broken
}

// At is the value of the line at instant t (milliseconds UTC) and whether it is known there. A reading
// is known at its own instant even when nothing joins it. Unknown is NaN, false.
func (c Curve) At(t int64) (v float64, known bool) {
	k := c.firstFrom(t)
	switch {
	case k < len(c.Readings.At) && c.Readings.At[k] == t:
		return c.Val[k], true
	case c.Joined(k):
		return c.between(k, float64(t-c.Readings.At[k-1])), true
	}
	return math.NaN(), false
}

// Lagged is the line as it was lagMS (0 or more) before each reading; NaN where it is not known.
func (c Curve) Lagged(lagMS int64) []float64 {
	before, k := make([]float64, c.Len()), 0
	for i, t := range c.Readings.At {
		t -= lagMS
		for c.Readings.At[k] < t {
			k++
		}
		switch {
		case c.Readings.At[k] == t:
			before[i] = c.Val[k]
		case c.Joined(k):
			before[i] = c.between(k, float64(t-c.Readings.At[k-1]))
		default:
			before[i] = math.NaN()
		}
	}
	return before
}

// Known lists the stretches inside s where the line is known, rising; the pieces on the two sides of a
// break are separate. A reading that nothing joins has no stretch.
func (c Curve) Known(s Span) []Span {
	var known []Span
	at, seam := c.Readings.At, c.seamsFrom(s.From)
	from := s.To // of the stretch under way; there is none at the end of s
	for k := max(c.firstFrom(s.From), 1); k <= len(at) && at[k-1] < s.To; k++ {
		if k < len(at) && at[k]-at[k-1] <= c.MaxStepMS && !seam.at(at[k]) {
			from = min(from, max(at[k-1], s.From))
			continue
		}
		if from < at[k-1] {
			known = append(known, Span{from, at[k-1]})
		}
		from = s.To
	}
	if from < s.To {
		known = append(known, Span{from, s.To})
	}
	return known
}

// KnownMS is how many milliseconds of s the line is known for.
func (c Curve) KnownMS(s Span) int64 { return LengthMS(c.Known(s)) }

// Slice is the curve of the readings at instants in s. It shares memory with c. The line from the
// first and last reading inside s to the edges of s is cut off.
func (c Curve) Slice(s Span) Curve {
	i, j := c.firstFrom(s.From), c.firstFrom(max(s.From, s.To))
	b := sort.Search(len(c.Breaks), func(k int) bool { return c.Breaks[k] >= s.From })
	e := b + sort.Search(len(c.Breaks)-b, func(k int) bool { return c.Breaks[b+k] >= max(s.From, s.To) })
	return Curve{
		Readings:  Readings{At: c.Readings.At[i:j:j], Val: c.Val[i:j:j]},
		MaxStepMS: c.MaxStepMS,
		Breaks:    c.Breaks[b:e:e],
	}
}

// Map is the curve through f of every reading, straight lines between. Where f gives no finite number
// the reading is left out and the curve breaks there: nothing is drawn across what has no value. Where no
// reading is left out the two share their instants.
func (c Curve) Map(f func(float64) float64) Curve {
	out := newBuilder(c.Readings.At, c.MaxStepMS)
	seam := seams{c.Breaks}
	for i, t := range c.Readings.At {
		if !c.joined(i, &seam) {
			out.cut = true
		}
		out.add(t, f(c.Val[i]))
	}
	return out.Curve
}

// firstFrom is the index of the first reading at or after t.
func (c Curve) firstFrom(t int64) int {
	k, _ := slices.BinarySearch(c.Readings.At, t)
	return k
}

// between is the value of the line step k-1 → k at afterMS past reading k-1.
func (c Curve) between(k int, afterMS float64) float64 {
	v0, v1 := c.Val[k-1], c.Val[k]
	return v0 + (v1-v0)*(afterMS/float64(c.Readings.At[k]-c.Readings.At[k-1]))
}

// seams walks along Breaks, so that asking for rising instants costs one pass over them.
type seams struct{ left []int64 }

// seamsFrom starts the walk at instant t.
func (c Curve) seamsFrom(t int64) seams {
	if len(c.Breaks) == 0 {
		return seams{}
	}
	k, _ := slices.BinarySearch(c.Breaks, t)
	return seams{c.Breaks[k:]}
}

// at reports whether a new piece starts at t; t must not fall from call to call.
func (s *seams) at(t int64) bool { return len(s.left) > 0 && s.reach(t) }

func (s *seams) reach(t int64) bool {
	for len(s.left) > 0 && s.left[0] < t {
		s.left = s.left[1:]
	}
	return len(s.left) > 0 && s.left[0] == t
}

// joined is Joined for rising i within the readings.
func (c Curve) joined(i int, seam *seams) bool {
	return i > 0 && c.Readings.At[i]-c.Readings.At[i-1] <= c.MaxStepMS && !seam.at(c.Readings.At[i])
}

// piece is one straight line of a curve, cut to a span: values v0 at t0 and v1 at t1 > t0, both in the
// span or at its end.
type piece struct {
	t0, t1 int64
	v0, v1 float64
}

// cutStep is the line step k-1 → k cut to s; of a step outside s it is no piece, as it does not end after it began.
func (c Curve) cutStep(k int, s Span) piece {
	p := piece{c.Readings.At[k-1], c.Readings.At[k], c.Val[k-1], c.Val[k]}
	from := p.t0
	if p.t1 > s.To {
		p.t1, p.v1 = s.To, c.between(k, float64(s.To-from))
	}
	if p.t0 < s.From {
		p.t0, p.v0 = s.From, c.between(k, float64(s.From-from))
	}
	return p
}

// SmallestStep is the smallest change from one reading to the next that the curve ever showed, beyond rounding: what
// stands for a printed resolution that is not known. 0 where it showed none.
func (c Curve) SmallestStep() float64 {
	smallest := math.Inf(1)
	for i := 1; i < c.Len(); i++ {
		if s := math.Abs(c.Val[i] - c.Val[i-1]); s > 1e-9 && c.Joined(i) {
			smallest = math.Min(smallest, s)
		}
	}
	if math.IsInf(smallest, 1) {
		return 0
	}
	return smallest
}
