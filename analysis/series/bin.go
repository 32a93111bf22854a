package series

import "math"

// Plain is the mean of the readings, Sum/N, each counting once; NaN without a reading.
func (b Bin) Plain() float64 {
	if b.N == 0 {
		return math.NaN()
	}
	return b.Sum / float64(b.N)
}

// Weighted is the mean over the known time, Area/KnownMS; NaN when nothing is known.
func (b Bin) Weighted() float64 {
	if b.KnownMS == 0 {
		return math.NaN()
	}
	return b.Area / float64(b.KnownMS)
}

// Share is the known part of the span, 0–1; 0 of an empty one.
func (b Bin) Share() float64 {
	if b.To <= b.From {
		return 0
	}
	return float64(b.KnownMS) / float64(b.To-b.From)
}

// Plus is the bin of both spans where next follows on b.
func (b Bin) Plus(next Bin) Bin {
	out := Bin{Span: Span{b.Span.From, next.Span.To}, N: b.N + next.N, Sum: b.Sum + next.Sum, Area: b.Area + next.Area, KnownMS: b.KnownMS + next.KnownMS, Min: b.Min, Max: b.Max}
	if !(b.Min <= next.Min) && !math.IsNaN(next.Min) {
		out.Min = next.Min
	}
	if !(b.Max >= next.Max) && !math.IsNaN(next.Max) {
		out.Max = next.Max
	}
	return out
}

// Bin sums up the curve over s, exactly for its line. Readings count in [From, To); the line counts up
// to To, so its value there takes part in Min and Max. A curve with gap limit 0 has no line: its bins
// are those of the bare readings.
func (c Curve) Bin(s Span) Bin {
	w := newWalk(s)
	w.along(c, c.firstFrom(s.From))
	return w.Bin
}

// BinOutside is Bin and OutsideEach in one walk.
func (c Curve) BinOutside(s Span, limits []Limits) (Bin, []Outside) {
	w := newWalk(s)
	for _, l := range limits {
		w.above, w.below = append(w.above, edge{limit: l.High}), append(w.below, edge{limit: -l.Low})
	}
	w.above, w.below = distinct(w.above), distinct(w.below)
	w.along(c, c.firstFrom(s.From))
	outside := make([]Outside, len(limits))
	for i, l := range limits {
		outside[i] = outsideOf(w.KnownMS, edgeAt(w.below, -l.Low), edgeAt(w.above, l.High))
	}
	return w.Bin, outside
}

// Bins is Bin of every span, in one pass over the readings. The spans must rise and not overlap.
func (c Curve) Bins(spans []Span) []Bin {
	bins := make([]Bin, len(spans))
	k := 0
	if len(spans) > 0 {
		k = c.firstFrom(spans[0].From)
	}
	for i, s := range spans {
		for k < c.Len() && c.Readings.At[k] < s.From {
			k++
		}
		w := newWalk(s)
		k = w.along(c, k)
		bins[i] = w.Bin
	}
	return bins
}

// Means are the means over the known time of every span, NaN where less than a share of it (0–1) is known, or nothing.
// The spans must rise and not overlap.
func (c Curve) Means(spans []Span, leastShare float64) []float64 {
	out := make([]float64, len(spans))
	for i, b := range c.Bins(spans) {
		out[i] = math.NaN()
		if b.Share() >= leastShare {
			out[i] = b.Weighted()
		}
	}
	return out
}

// walk adds up a bin along a curve, and what lies above limits and, both turned upside down, below limits; the
// limits rise.
type walk struct {
	Bin
	above, below []edge
}

func newWalk(s Span) walk { return walk{Bin: Bin{Span: s, Min: math.Inf(1), Max: math.Inf(-1)}} }

// along walks the whole span from k on, the first reading at or after its start, and returns the first reading at or
// after its end.
func (w *walk) along(c Curve, k int) int {
	w.cut(c, k)
	if end := w.whole(c, k); end > k {
		w.cut(c, end)
		k = end
	}
	if w.Min > w.Max {
		w.Min, w.Max = math.NaN(), math.NaN()
	}
	return k
}

// cut adds the part within the span of the step that leads to reading k from outside it, or out of it.
func (w *walk) cut(c Curve, k int) {
	if !c.Joined(k) || c.Readings.At[k-1] >= w.To {
		return
	}
	p := c.cutStep(k, w.Span)
	if p.t0 >= p.t1 {
		return
	}
	dt := p.t1 - p.t0
	w.KnownMS += dt
	w.Area += (p.v0 + p.v1) / 2 * float64(dt)
	w.Min, w.Max = min(w.Min, p.v0, p.v1), max(w.Max, p.v0, p.v1)
	w.pass(p.v0, p.v1, dt)
}

// whole adds the readings from k to before the end of the span and the steps between them, and returns the first
// reading that is not among them. It is where reviews spend their time.
func (w *walk) whole(c Curve, k int) int {
	at, val, seam := c.Readings.At, c.Val, c.seamsFrom(w.From)
	first, sum, area, known, low, high := k, w.Sum, w.Area, w.KnownMS, w.Min, w.Max
	least, most := -lowest(w.below), lowest(w.above)
	for ; k < len(at) && at[k] < w.To; k++ {
		v := val[k]
		sum += v
		if v < low {
			low = v
		}
		if v > high {
			high = v
		}
		if k == first || at[k]-at[k-1] > c.MaxStepMS || seam.at(at[k]) {
			continue
		}
		dt, before := at[k]-at[k-1], val[k-1]
		known += dt
		area += (before + v) / 2 * float64(dt)
		if !(v <= most && v >= least && before <= most && before >= least) {
			w.pass(before, v, dt)
		}
	}
	w.N, w.Sum, w.Area, w.KnownMS, w.Min, w.Max = k-first, sum, area, known, low, high
	return k
}

// pass counts the line from v0 to v1 against the limits.
func (w *walk) pass(v0, v1 float64, dt int64) {
	low, high := v0, v1
	if low > high {
		low, high = high, low
	}
	count(w.above, low, high, float64(dt))
	count(w.below, -high, -low, float64(dt))
}
