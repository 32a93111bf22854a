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
	b, _, _ := c.binFrom(s, c.firstFrom(s.From), nil)
	return b
}

// BinOutside is Bin and OutsideEach in one walk.
func (c Curve) BinOutside(s Span, limits []Limits) (Bin, []Outside) {
	b, outside, _ := c.binFrom(s, c.firstFrom(s.From), limits)
	return b, outside
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
		bins[i], _, k = c.binFrom(s, k, nil)
	}
	return bins
}

// binFrom is BinOutside for a caller who knows that k is the first reading at or after s.From. It also
// returns the first reading at or after s.To.
func (c Curve) binFrom(s Span, k int, limits []Limits) (Bin, []Outside, int) {
	b := Bin{Span: s, Min: math.Inf(1), Max: math.Inf(-1)}
	outside := make([]Outside, len(limits))
	inside := narrowest(limits)
	for p := range c.piecesFrom(s, k) {
		dt := p.t1 - p.t0
		b.KnownMS += dt
		b.Area += (p.v0 + p.v1) / 2 * float64(dt)
		low, high := p.v0, p.v1
		if low > high {
			low, high = high, low
		}
		b.reach(low, high)
		if high <= inside.High && low >= inside.Low {
			continue // as nearly everywhere
		}
		for i, l := range limits {
			if !(high <= l.High && low >= l.Low) {
				outside[i].add(p, l)
			}
		}
	}
	for i, l := range limits {
		outside[i].finish(b.KnownMS, l)
	}
	for ; k < c.Len() && c.Readings.At[k] < s.To; k++ {
		v := c.Val[k]
		b.N++
		b.Sum += v
		b.reach(v, v)
	}
	if b.Min > b.Max {
		b.Min, b.Max = math.NaN(), math.NaN()
	}
	return b, outside, k
}

// reach widens Min and Max.
func (b *Bin) reach(low, high float64) {
	if low < b.Min {
		b.Min = low
	}
	if high > b.Max {
		b.Max = high
	}
}

// narrowest are limits within which a line lies within all; a limit that is not a number lets nothing through.
func narrowest(limits []Limits) Limits {
	out := Limits{math.Inf(-1), math.Inf(1)}
	for _, l := range limits {
		out.Low, out.High = max(out.Low, l.Low), min(out.High, l.High)
	}
	return out
}
