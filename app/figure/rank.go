package figure

import (
	"cmp"
	"slices"
)

// weather tells whether a trace is drawn behind the others: it is not of the room.
func (t *Trace) weather() bool { return t.Outside || t.OwnScale }

// thin tells whether a trace is one of several loggers.
func (t *Trace) thin() bool { return t.Muted && !t.weather() }

// frontToBack returns the traces' indices as they lie over each other: what is judged, the loggers, the weather.
func (l *Lane) frontToBack(odd []float64) []int { return l.inOrder(1, 2, odd) }

// byImportance returns the traces' indices as names are given room: what is judged, the weather, the loggers.
func (l *Lane) byImportance(odd []float64) []int { return l.inOrder(2, 1, odd) }

// inOrder returns the traces' indices: what is judged, then loggers and weather by their ranks; each in the lane's order, but
// the loggers by how odd each is, where that is known.
func (l *Lane) inOrder(loggers, weather int, odd []float64) []int {
	rank := func(t *Trace) int {
		switch {
		case t.weather():
			return weather
		case t.Muted:
			return loggers
		}
		return 0
	}
	out := make([]int, len(l.Traces))
	for j := range out {
		out[j] = j
	}
	slices.SortStableFunc(out, func(a, b int) int {
		s, t := &l.Traces[a], &l.Traces[b]
		if c := cmp.Compare(rank(s), rank(t)); c != 0 || !s.thin() || odd == nil {
			return c
		}
		return cmp.Compare(odd[b], odd[a])
	})
	return out
}

// oddness is how far each logger of a lane under a veil lies from what is judged: the mean square of their distance, in pixels,
// over every fourth column, which is enough, where both are known. So a stretch far away counts as much as a long one near by.
// Squares are common practice, no source. It is nil where there is nothing to compare with. The lane's columns must have been
// read.
func (f *Figure) oddness(lane *Lane) []float64 {
	judged := slices.IndexFunc(lane.Traces, func(t Trace) bool { return !t.Muted && !t.weather() })
	if !lane.Veil || judged < 0 || lane.Traces[judged].Pyramid == nil {
		return nil
	}
	odd := make([]float64, len(lane.Traces))
	for j := range lane.Traces {
		if t := &lane.Traces[j]; t.thin() && !t.Veiled && t.Pyramid != nil {
			odd[j] = meanSquare(f.px[j], f.px[judged])
		}
	}
	return odd
}

// meanSquare is the mean square of the distance between the middles of every fourth of the columns, where both are known; 0
// without any.
func meanSquare(a, b []pixelColumn) float64 {
	sum, n := 0.0, 0.0
	for k := 0; k < len(a); k += 4 {
		if a[k].known && b[k].known {
			d := (a[k].top + a[k].bottom - b[k].top - b[k].bottom) / 2
			sum, n = sum+d*d, n+1
		}
	}
	return sum / max(n, 1)
}

// chooseInks gives every trace of a lane its ink. Of more loggers than there are inks to tell them apart by only those that are
// named have one of these, each its own colour unless one before it in the lane has that; the rest share one faint ink. So the
// inks stay as long as the same ones are named.
func (f *Figure) chooseInks(lane *Lane, names []label) {
	f.inks = f.inks[:0]
	crowded := lane.loggers() > len(f.Theme.Traces)
	for j := range lane.Traces {
		ink := f.traceColor(&lane.Traces[j])
		if crowded && lane.Traces[j].thin() {
			ink = alpha(f.Theme.Muted, 0.5)
		}
		f.inks = append(f.inks, ink)
	}
	left := slices.Clone(f.Theme.Traces)
	names = slices.SortedFunc(slices.Values(names), func(a, b label) int { return cmp.Compare(a.trace, b.trace) })
	for _, n := range names {
		if t := &lane.Traces[n.trace]; crowded && n.width > 0 && t.thin() {
			k := max(0, slices.Index(left, t.Color))
			f.inks[n.trace] = left[k]
			left = slices.Delete(left, k, k+1)
		}
	}
}
