package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

const (
	tooWide        = 0.5 // (high − low) / middle above which no hours are given
	shortRunsSpoil = 0.1 // share of seen runs under two intervals above which starts are not given
)

// worked sums what segments say over a span: hours and share of time on, starts and run lengths as far as
// they can be seen at a sampling interval.
func worked(segs []segment, s stretches, intervalMS int64, e Evidence) *Work {
	segs = clip(segs, s)
	onMS, knownMS := times(segs)
	w := &Work{
		Hours:        exactly(onMS/series.HourMS, e),
		KnownMS:      int64(math.Round(knownMS)),
		Duty:         unknown("nothing_known"),
		Starts:       unknown("nothing_known"),
		MedianRunMin: unknown("nothing_known"),
		On:           spansOf(segs),
		Unsure:       series.Subtract(s, known(segs)),
	}
	if knownMS == 0 {
		w.Hours = unknown("nothing_known")
		return w
	}
	w.Duty = exactly(onMS/knownMS, e)
	w.Starts, w.MedianRunMin = runFigures(segs, intervalMS, e)
	return w
}

// worked sums a view up; its range comes from the guesses at both ends. An end at which the rule settles nothing at
// all is no other guess and widens nothing (see undecided).
func (v view) worked(s stretches, intervalMS int64) *Work {
	w := worked(v.tries[0], s, intervalMS, v.evidence)
	on, either := [][]series.Span{w.On}, w.On
	for _, end := range v.tries[1:] {
		o := worked(end, s, intervalMS, v.evidence)
		if o.KnownMS > 0 || w.KnownMS == 0 {
			w.spread(o)
			on, either = append(on, o.On), series.Union(slices.Concat(either, o.On))
		}
	}
	w.withholdWide()
	both := w.On
	for _, o := range on[1:] {
		both = series.Intersect(both, o)
	}
	w.Doubtful = series.Subtract(either, both)
	return w
}

// undecided says whether the rule settles something at the best guess and nothing at one of the ends: the temperature
// stood between that end's limits all the time.
func (v view) undecided() bool {
	return len(v.tries[0]) > 0 && (len(v.tries[1]) == 0 || len(v.tries[2]) == 0)
}

// times are how long the segments are on, and how long they are known, in milliseconds.
func times(segs []segment) (onMS, knownMS float64) {
	for _, g := range segs {
		knownMS += g.To - g.From
		if g.On {
			onMS += g.To - g.From
		}
	}
	return onMS, knownMS
}

// spansOf are the segments that are on, rounded to the millisecond.
func spansOf(segs []segment) []series.Span {
	out := []series.Span{}
	for _, g := range segs {
		if g.On {
			out = append(out, rounded(g))
		}
	}
	return out
}

// known are the stretches the segments cover; touching ones are one.
func known(segs []segment) []series.Span {
	out := []series.Span{}
	for _, g := range segs {
		r := rounded(g)
		if n := len(out); n > 0 && out[n-1].To >= r.From {
			out[n-1].To = r.To
			continue
		}
		out = append(out, r)
	}
	return out
}

func rounded(g segment) series.Span {
	return series.Span{From: int64(math.Round(g.From)), To: int64(math.Round(g.To))}
}

// runFigures are the number of starts seen and the median length, in minutes, of the runs whose both ends
// are seen. Neither is given where more than a tenth of these runs are shorter than two sampling intervals:
// others must have been missed altogether.
func runFigures(segs []segment, intervalMS int64, e Evidence) (starts, medianMin Figure) {
	n, lengths := 0, []float64{}
	short := 0
	for i, g := range segs {
		if !g.On || i == 0 || segs[i-1].To != g.From {
			continue
		}
		n++
		if i+1 == len(segs) || segs[i+1].From != g.To {
			continue
		}
		lengths = append(lengths, g.To-g.From)
		if g.To-g.From < 2*float64(intervalMS) {
			short++
		}
	}
	switch {
	case float64(short) > shortRunsSpoil*float64(len(lengths)):
		return unknown("runs_too_short_to_see"), unknown("runs_too_short_to_see")
	case len(lengths) == 0:
		return exactly(float64(n), e), unknown("no_whole_run")
	}
	return exactly(float64(n), e), exactly(series.Median(lengths)/minuteMS, e)
}

// spread widens a work's figures to enclose the same figures worked out at an end of an uncertain offset.
func (w *Work) spread(o *Work) {
	w.Hours.enclose(o.Hours)
	w.Duty.enclose(o.Duty)
	w.Starts.enclose(o.Starts)
	w.MedianRunMin.enclose(o.MedianRunMin)
}

// withholdWide withholds hours, and what follows from them, where the range is too wide to mean anything.
func (w *Work) withholdWide() {
	for _, f := range []*Figure{&w.Hours, &w.Duty, &w.Starts, &w.MedianRunMin} {
		f.withholdWide()
	}
}

// withholdWide withholds a figure whose range is too wide to mean anything; Low and High stay.
func (f *Figure) withholdWide() {
	if f.OK && f.High-f.Low > tooWide*f.Mid {
		f.OK, f.Unknown = false, "range_too_wide"
	}
}

// enclose widens a figure to hold another estimate of it.
func (f *Figure) enclose(o Figure) {
	if !f.OK {
		return
	}
	if !o.OK {
		f.OK, f.Unknown = false, o.Unknown
		return
	}
	f.Low, f.High = math.Min(f.Low, o.Low), math.Max(f.High, o.High)
}
