package series_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// eachRandom calls f with many random curves and spans, always the same ones.
func eachRandom(t *testing.T, f func(t *testing.T, c series.Curve, s series.Span, r *rand.Rand)) {
	r := rand.New(rand.NewPCG(1, 2))
	for i := range 2000 {
		c, s := random(r, 40), randomSpan(r)
		f(t, c, s, r)
		if t.Failed() {
			t.Fatalf("curve %d: %+v over %v", i, c, s)
		}
	}
}

func TestBinsBySlowSummation(t *testing.T) {
	// Millisecond by millisecond, from At alone: the line is known over a millisecond when it is known at
	// both ends and no new piece starts at the later one.
	eachRandom(t, func(t *testing.T, c series.Curve, s series.Span, _ *rand.Rand) {
		want := series.Bin{Min: math.NaN(), Max: math.NaN()}
		widen := func(v float64) {
			if !(v >= want.Min) {
				want.Min = v
			}
			if !(v <= want.Max) {
				want.Max = v
			}
		}
		for at := s.From; at < s.To; at++ {
			v0, ok0 := c.At(at)
			if slices.Contains(c.Readings.At, at) {
				want.N++
				want.Sum += v0
				widen(v0)
			}
			v1, ok1 := c.At(at + 1)
			k, _ := slices.BinarySearch(c.Readings.At, at+1)
			if ok0 && ok1 && c.Joined(k) {
				want.KnownMS++
				want.Area += (v0 + v1) / 2
				widen(v0)
				widen(v1)
			}
		}
		got := c.Bin(s)
		if got.N != want.N || got.KnownMS != want.KnownMS || c.KnownMS(s) != want.KnownMS {
			t.Errorf("N %d known %d, want %d %d", got.N, got.KnownMS, want.N, want.KnownMS)
		}
		near(t, "Sum", got.Sum, want.Sum, 1e-9)
		near(t, "Area", got.Area, want.Area, 1e-8)
		near(t, "Min", got.Min, want.Min, 1e-12)
		near(t, "Max", got.Max, want.Max, 1e-12)
		if got := series.LengthMS(c.Known(s)); got != want.KnownMS {
			t.Errorf("Known is %d ms long, want %d", got, want.KnownMS)
		}
	})
}

func TestSplittingASpanAddsUp(t *testing.T) {
	eachRandom(t, func(t *testing.T, c series.Curve, s series.Span, r *rand.Rand) {
		cells := series.Steps(s, 1+r.Int64N(50), r.Int64N(50))
		all, parts := c.Bin(s), series.Bin{Min: math.Inf(1), Max: math.Inf(-1)}
		out, outs := c.Outside(s, -1, 2), series.Outside{}
		for i, b := range c.Bins(cells) {
			if !reflect.DeepEqual(fmt.Sprint(b), fmt.Sprint(c.Bin(cells[i]))) {
				t.Errorf("Bins and Bin differ over %v", cells[i])
			}
			parts.N, parts.KnownMS = parts.N+b.N, parts.KnownMS+b.KnownMS
			parts.Sum, parts.Area = parts.Sum+b.Sum, parts.Area+b.Area
			if !math.IsNaN(b.Min) {
				parts.Min, parts.Max = min(parts.Min, b.Min), max(parts.Max, b.Max)
			}
			o := c.Outside(cells[i], -1, 2)
			outs.KnownMS += o.KnownMS
			outs.BelowMS, outs.AboveMS = outs.BelowMS+o.BelowMS, outs.AboveMS+o.AboveMS
			outs.BelowArea, outs.AboveArea = outs.BelowArea+o.BelowArea, outs.AboveArea+o.AboveArea
		}
		if parts.N != all.N || parts.KnownMS != all.KnownMS || outs.KnownMS != out.KnownMS || out.KnownMS != all.KnownMS {
			t.Errorf("N %d of %d, known %d of %d", parts.N, all.N, parts.KnownMS, all.KnownMS)
		}
		near(t, "Sum", parts.Sum, all.Sum, 1e-9)
		near(t, "Area", parts.Area, all.Area, 1e-8)
		if !math.IsNaN(all.Min) {
			near(t, "Min", parts.Min, all.Min, 1e-12)
			near(t, "Max", parts.Max, all.Max, 1e-12)
		}
		near(t, "BelowMS", outs.BelowMS, out.BelowMS, 1e-8)
		near(t, "AboveMS", outs.AboveMS, out.AboveMS, 1e-8)
		near(t, "BelowArea", outs.BelowArea, out.BelowArea, 1e-8)
		near(t, "AboveArea", outs.AboveArea, out.AboveArea, 1e-8)
	})
}

func TestShiftingTheClockChangesNothingElse(t *testing.T) {
	const shift = 16000 * day // as far as the present is from 1970
	eachRandom(t, func(t *testing.T, c series.Curve, s series.Span, _ *rand.Rand) {
		later := series.Curve{MaxStepMS: c.MaxStepMS, Readings: series.Readings{Val: c.Val}}
		for _, at := range c.Readings.At {
			later.Readings.At = append(later.Readings.At, at+shift)
		}
		for _, at := range c.Breaks {
			later.Breaks = append(later.Breaks, at+shift)
		}
		moved := series.Span{From: s.From + shift, To: s.To + shift}
		a, b := c.Bin(s), later.Bin(moved)
		b.Span = a.Span
		if fmt.Sprint(a) != fmt.Sprint(b) || c.Outside(s, -1, 1) != later.Outside(moved, -1, 1) {
			t.Errorf("%+v became %+v", a, b)
		}
		runs, movedRuns := c.Above(s, 0.5), later.Above(moved, 0.5)
		if len(runs) != len(movedRuns) {
			t.Fatalf("%d runs became %d", len(runs), len(movedRuns))
		}
		for i, r := range runs {
			m := movedRuns[i]
			near(t, "From", m.From-shift, r.From, 1e-3) // an instant of today has a float64 every 0.2 µs
			near(t, "To", m.To-shift, r.To, 1e-3)
			if m.Peak != r.Peak || m.CutFrom != r.CutFrom || m.CutTo != r.CutTo {
				t.Errorf("%+v became %+v", r, m)
			}
		}
	})
}

func TestBelowInAndAboveAreTheKnownTime(t *testing.T) {
	eachRandom(t, func(t *testing.T, c series.Curve, s series.Span, r *rand.Rand) {
		low, high := -1.0, 2.0
		o := c.Outside(s, low, high)
		inside := float64(c.KnownMS(s)) - o.BelowMS - o.AboveMS
		if inside < -1e-9 || o.BelowMS < 0 || o.AboveMS < 0 || o.BelowArea < 0 || o.AboveArea < 0 {
			t.Errorf("%+v leaves %g inside", o, inside)
		}
		// The time inside, found another way: all that is known less what lies outside either limit.
		clipped := c.Map(func(v float64) float64 { return -v })
		mirror := clipped.Outside(s, -high, -low)
		near(t, "mirrored below", mirror.AboveMS, o.BelowMS, 1e-9)
		near(t, "mirrored above", mirror.BelowMS, o.AboveMS, 1e-9)
		// Runs are the same time, stretch by stretch, and in the known time.
		for sign, runs := range map[bool][]series.Run{true: c.Above(s, high), false: c.Below(s, low)} {
			sum, last := 0.0, math.Inf(-1)
			for _, run := range runs {
				if run.From < last || run.To <= run.From || run.From < float64(s.From) || run.To > float64(s.To) {
					t.Errorf("run %+v after %g", run, last)
				}
				sum, last = sum+run.To-run.From, run.To
			}
			want := o.BelowMS
			if sign {
				want = o.AboveMS
			}
			near(t, "length of the runs", sum, want, 1e-8)
		}
	})
}

func TestMeanOfManyLoggers(t *testing.T) {
	// The mean by its definition, from At and KnownMS of every logger: over each grid interval the loggers
	// known throughout it.
	const step = 7
	r := rand.New(rand.NewPCG(3, 4))
	for i := range 300 {
		var curves []series.Curve
		for range 1 + r.IntN(4) {
			curves = append(curves, random(r, 60))
		}
		got := series.Mean(curves, step)
		known := int64(0)
		var setBefore []int
		for g := int64(-700); g < 1400; g += step {
			cell := series.Span{From: g, To: g + step}
			var set []int
			for k, c := range curves {
				if c.KnownMS(cell) == step && len(c.Known(cell)) == 1 {
					set = append(set, k)
				}
			}
			b := got.Bin(cell)
			known += b.KnownMS
			starts := slices.Contains(got.Breaks, g)
			if changed := !slices.Equal(set, setBefore) && len(set) > 0 && len(setBefore) > 0; changed && !starts {
				t.Errorf("no break at %d where %v becomes %v", g, setBefore, set)
			}
			if setBefore = set; len(set) == 0 {
				near(t, "known with no logger", float64(b.KnownMS), 0, 0)
				continue
			}
			sum := 0.0
			for _, k := range set {
				v, _ := curves[k].At(g)
				sum += v
			}
			v, ok := got.At(g)
			if !ok || b.KnownMS < step-1 {
				t.Errorf("%d: known %v, %d ms", g, ok, b.KnownMS)
			}
			near(t, "mean", v, sum/float64(len(set)), 1e-12)
		}
		if _, err := series.NewReadings(got.Readings.At, got.Val); err != nil {
			t.Error(err)
		}
		if got.Len() > 0 && known != got.KnownMS(whole(got)) {
			t.Errorf("%d ms known, %d found", got.KnownMS(whole(got)), known)
		}
		if t.Failed() {
			t.Fatalf("round %d: %+v", i, curves)
		}
	}
}
