package figure

import (
	"math"
	"runtime"

	"thawbook/analysis/series"
)

// addVeil tints, column by column, from the lowest to the highest of the traces on the shared scale.
func (f *Figure) addVeil(l *Layout, i int) {
	f.readCrowds(l, i)
	f.veil = nothingCovered(f.veil, l.Plot.Dx())
	for _, c := range f.crowds {
		cover(f.veil, c.all)
	}
	for j := range f.Lanes[i].Traces {
		if t := &f.Lanes[i].Traces[j]; !t.Veiled && t.spreads() {
			cover(f.veil, f.px[j])
		}
	}
	v := f.addLayer(alpha(f.Theme.Muted, 0.2), 0)
	v.cols = append(v.cols, f.veil...)
}

// crowd is what the traces that have no line of their own cover together of each column, and the memory to find it in:
// there may be a thousand of them.
type crowd struct {
	all, px []pixelColumn
	cols    []series.Column
}

// readCrowds finds what the veiled traces of lane i cover, shared out among the processors.
func (f *Figure) readCrowds(l *Layout, i int) {
	traces, n := f.Lanes[i].Traces, runtime.GOMAXPROCS(0)
	f.crowds = append(f.crowds, make([]crowd, max(0, n-len(f.crowds)))...)
	inParallel(n, func(w int) {
		c := &f.crowds[w]
		c.all = nothingCovered(c.all, l.Plot.Dx())
		for j := w; j < len(traces); j += n {
			if t := &traces[j]; t.Veiled && t.spreads() {
				c.px, c.cols = f.columns(c.px, c.cols, l, i, t)
				cover(c.all, c.px)
			}
		}
	})
}

// spreads says whether a trace widens its lane's veil: the weather is no part of what spreads.
func (t *Trace) spreads() bool { return !t.OwnScale && !t.Outside && t.Pyramid != nil }

// nothingCovered are so many columns of which nothing is covered.
func nothingCovered(dst []pixelColumn, columns int) []pixelColumn {
	dst = dst[:0]
	for range columns {
		dst = append(dst, pixelColumn{top: math.Inf(1), bottom: math.Inf(-1)})
	}
	return dst
}

// cover has columns cover what others cover too.
func cover(dst, by []pixelColumn) {
	for k, p := range by {
		if c := &dst[k]; p.known {
			c.top, c.bottom, c.known = min(c.top, p.top), max(c.bottom, p.bottom), true
		}
	}
}
