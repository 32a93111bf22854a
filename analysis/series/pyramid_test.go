package series_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"thawbook/analysis/series"
)

// bruteColumn is a column by its definition, looking at every reading and every step in rising order.
func bruteColumn(c series.Curve, left, right float64) series.Column {
	col := series.Column{Lo: math.NaN(), Hi: math.NaN(), First: math.NaN(), Last: math.NaN(), Gap: true}
	put := func(v float64) {
		if math.IsNaN(col.First) {
			col.First, col.Lo, col.Hi = v, v, v
		}
		col.Last, col.Lo, col.Hi = v, min(col.Lo, v), max(col.Hi, v)
	}
	at := c.Readings.At
	for i := range at {
		if c.Joined(i) {
			from, to := float64(at[i-1]), float64(at[i])
			value := func(x float64) float64 { return c.Val[i-1] + (c.Val[i]-c.Val[i-1])*(x-from)/(to-from) }
			if from < left && left <= to {
				put(value(left))
				col.Gap = false
			}
			if from < right && right <= to {
				put(value(right))
			}
		}
		if t := float64(at[i]); left <= t && t < right {
			put(c.Val[i])
		}
	}
	return col
}

// bruteColumns is bruteColumn of n equal columns.
func bruteColumns(c series.Curve, n int, s series.Span) []series.Column {
	cols := make([]series.Column, n)
	for k := range cols {
		edge := func(k int) float64 { return float64(s.From) + float64(s.To-s.From)*float64(k)/float64(n) }
		cols[k] = bruteColumn(c, edge(k), edge(k+1))
	}
	return cols
}

func sameColumns(t *testing.T, got, want []series.Column) {
	t.Helper()
	for k := range want {
		g, w := got[k], want[k]
		what := fmt.Sprintf("column %d of %d: ", k, len(want))
		near(t, what+"Lo", g.Lo, w.Lo, 1e-9)
		near(t, what+"Hi", g.Hi, w.Hi, 1e-9)
		near(t, what+"First", g.First, w.First, 1e-9)
		near(t, what+"Last", g.Last, w.Last, 1e-9)
		if g.Gap != w.Gap {
			t.Errorf("%sGap %v", what, g.Gap)
		}
	}
}

func TestColumnsByBruteForce(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for i := range 1500 {
		c, s := random(r, 40), randomSpan(r)
		if i%5 == 0 {
			c = random(r, 900) // several levels
			s = series.Span{From: -600 + r.Int64N(300), To: 500 + r.Int64N(9000)}
		}
		if s.To == s.From {
			continue
		}
		got := make([]series.Column, 1+r.IntN(60))
		series.NewPyramid(c).Columns(got, s)
		sameColumns(t, got, bruteColumns(c, len(got), s))
		if t.Failed() {
			t.Fatalf("curve %d of %d readings over %v", i, c.Len(), s)
		}
	}
}

func TestColumnsOfAWinter(t *testing.T) {
	// A minute's readings over five months with gaps and breaks, several views: twenty days, a day, an hour
	// and less than one reading a column.
	c := winter(150 * 1440)
	p := series.NewPyramid(c)
	from := c.Readings.At[0]
	for _, v := range []struct {
		columns int
		series.Span
	}{
		{300, series.Span{From: from + 3*day, To: from + 23*day}}, {24, series.Span{From: from + 3*day, To: from + 4*day}},
		{24, series.Span{From: from + 77*hour, To: from + 78*hour}}, {24, series.Span{From: from + 77*hour + 17, To: from + 77*hour + 3*minute}},
	} {
		got := make([]series.Column, v.columns)
		p.Columns(got, v.Span)
		sameColumns(t, got, bruteColumns(c, len(got), v.Span))
	}
}

// Of a winter in 24 columns, 9,900 readings each, an edge may lie up to one block of eight readings late: a column holds
// every reading in it but the eight after its left edge, and none past the eight after its right one.
func TestDenseColumnsEndAtWholeBlocks(t *testing.T) {
	c := winter(150 * 1440)
	from := c.Readings.At[0]
	s := series.Span{From: from - 5*day, To: from + 160*day}
	got := make([]series.Column, 24)
	series.NewPyramid(c).Columns(got, s)
	edge := func(k int) float64 { return float64(s.From) + float64(s.To-s.From)*float64(k)/float64(len(got)) }
	for k, g := range got {
		least := bruteColumn(c, edge(k)+8*minute, edge(k+1))
		most := bruteColumn(c, edge(k), edge(k+1)+8*minute)
		if math.IsNaN(most.Lo) && math.IsNaN(g.Lo) {
			continue
		}
		if !(most.Lo <= g.Lo && g.Lo <= least.Lo && least.Hi <= g.Hi && g.Hi <= most.Hi) {
			t.Errorf("column %d: %v to %v, want %v to %v, or at most %v to %v", k, g.Lo, g.Hi, least.Lo, least.Hi, most.Lo, most.Hi)
		}
		if k > 0 && g.Gap != bruteColumn(c, edge(k), edge(k+1)).Gap {
			t.Errorf("column %d: Gap %v", k, g.Gap)
		}
		if k > 0 && !g.Gap && g.First != got[k-1].Last {
			t.Errorf("column %d begins at %v, the one before ends at %v", k, g.First, got[k-1].Last)
		}
	}
}

func TestTheLineIsVisibleBetweenReadings(t *testing.T) {
	// Two readings ten minutes apart, 60 columns: each carries its sixth of a minute of the line, unbroken.
	c := line(t, "0 60 _ 5")
	cols := make([]series.Column, 60)
	p := series.NewPyramid(c)
	p.Columns(cols, series.Span{From: 0, To: tenMin})
	for k, col := range cols {
		near(t, "First", col.First, float64(k), 1e-9)
		near(t, "Last", col.Last, float64(k+1), 1e-9)
		if col.Gap != (k == 0) {
			t.Errorf("column %d: Gap %v", k, col.Gap)
		}
	}
	p.Columns(cols[:3], series.Span{From: 8 * minute, To: 38 * minute}) // the gap, then the lone reading
	if !(cols[0].First == 48 && cols[0].Last == 60 && !cols[0].Gap) || !math.IsNaN(cols[1].Lo) {
		t.Errorf("into the gap: %+v", cols[:2])
	}
	if cols[2] != (series.Column{Lo: 5, Hi: 5, First: 5, Last: 5, Gap: true}) {
		t.Errorf("a reading that nothing joins: %+v", cols[2])
	}
}

func TestColumnsOfNothing(t *testing.T) {
	cols := make([]series.Column, 3)
	for what, c := range map[string]series.Curve{"no readings": {}, "some": line(t, "1 2 3")} {
		p := series.NewPyramid(c)
		p.Columns(nil, series.Span{From: 0, To: 10})
		for _, s := range []series.Span{{From: 7, To: 7}, {From: 9, To: 3}, {From: -90, To: -30}} {
			p.Columns(cols, s)
			for _, col := range cols {
				if !math.IsNaN(col.Lo) || !math.IsNaN(col.Hi) || !col.Gap {
					t.Errorf("%s over %v: %+v", what, s, col)
				}
			}
		}
	}
}

func TestColumnsDontAllocate(t *testing.T) {
	p, cols := series.NewPyramid(winter(20000)), make([]series.Column, 1200)
	s := series.Span{From: 0, To: 20 * day}
	if n := testing.AllocsPerRun(10, func() { p.Columns(cols, s) }); n != 0 {
		t.Errorf("%g allocations a frame", n)
	}
}

// winter is n readings a minute apart: a daily wave with noise, a gap of three hours every ten days and
// a break every seven.
func winter(n int) series.Curve {
	r := rand.New(rand.NewPCG(7, 8))
	c := series.Curve{MaxStepMS: 30 * minute, Readings: series.Readings{At: make([]int64, n), Val: make([]float64, n)}}
	at := int64(0)
	for i := range n {
		if at += minute; i%14400 == 14399 {
			at += 3 * hour
		}
		if i%10080 == 10079 {
			c.Breaks = append(c.Breaks, at)
		}
		c.Readings.At[i], c.Val[i] = at, 4+2*math.Sin(float64(i)*2*math.Pi/1440)+0.3*r.NormFloat64()
	}
	return c
}

func BenchmarkColumns(b *testing.B) {
	for _, n := range []int{200_000, 4_000_000} {
		c := winter(n)
		p, cols := series.NewPyramid(c), make([]series.Column, 1200)
		for _, share := range []int64{1, 50} {
			s := whole(c)
			s.To = s.From + (s.To-s.From)/share
			b.Run(fmt.Sprintf("%d/%d", n, share), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					p.Columns(cols, s)
				}
			})
		}
	}
}

func BenchmarkNewPyramid(b *testing.B) {
	c := winter(4_000_000)
	b.ReportAllocs()
	for b.Loop() {
		series.NewPyramid(c)
	}
}

func BenchmarkBins(b *testing.B) {
	c := winter(216_000)
	cells := series.Steps(whole(c), hour, 0)
	b.ReportAllocs()
	for b.Loop() {
		c.Bins(cells)
	}
}

func BenchmarkOutside(b *testing.B) {
	c := winter(216_000)
	b.ReportAllocs()
	for b.Loop() {
		c.Outside(whole(c), 2, 6)
	}
}

func BenchmarkMean(b *testing.B) {
	curves := make([]series.Curve, 6)
	for i := range curves {
		curves[i] = winter(216_000)
	}
	b.ReportAllocs()
	for b.Loop() {
		series.Mean(curves, minute)
	}
}
