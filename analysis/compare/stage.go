package compare

import (
	"cmp"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// works is what is known of one stage over the winter: its settings follow on one another.
type works struct {
	on, known []series.Span
	errShare  float64 // of the known time, by which its hours may be off
}

// stages are the drafts of how long the stages of one name in both barns were called for, and ran.
func (c common) stages(a, b Side) (out []*draft) {
	for _, what := range []struct {
		quantity string
		of       func(analysis.StageRow) *analysis.Work
	}{
		{StageCalled, func(r analysis.StageRow) *analysis.Work { return r.Called }},
		{StageRan, func(r analysis.StageRow) *analysis.Work { return r.Ran }},
	} {
		for _, name := range stageNames(a.Review.Stages) {
			wa, wb := worksOf(a.Review.Stages, name, what.of), worksOf(b.Review.Stages, name, what.of)
			if wa != nil && wb != nil {
				out = append(out, c.spent(Row{Quantity: what.quantity, Measure: Hours, Of: name, Unit: "h"}, *wa, *wb))
			}
		}
	}
	return out
}

func stageNames(rows []analysis.StageRow) (out []string) {
	for _, r := range rows {
		if !slices.Contains(out, r.Name) {
			out = append(out, r.Name)
		}
	}
	return out
}

// worksOf is what is known of a stage; nil where a setting lacks its evidence, and for a timer, which has no instants.
func worksOf(rows []analysis.StageRow, name string, of func(analysis.StageRow) *analysis.Work) *works {
	var out *works
	unsure, knownMS, mayBe := []series.Span{}, 0.0, 0.0
	for _, r := range rows {
		if r.Name != name {
			continue
		}
		w := of(r)
		if w == nil || r.Setting.Timer || w.KnownMS == 0 {
			return nil
		}
		if out == nil {
			out = &works{}
		}
		out.on, out.known = append(out.on, w.On...), append(out.known, r.Setting.Span)
		unsure = append(unsure, w.Unsure...)
		knownMS, mayBe = knownMS+float64(w.KnownMS), mayBe+(w.Hours.High-w.Hours.Low)/2*series.HourMS
	}
	if out != nil {
		out.on, out.known = series.Union(out.on), series.Subtract(series.Union(out.known), series.Union(unsure))
		out.errShare = mayBe / knownMS
	}
	return out
}

// spent is the draft of the hours something was on in each barn.
func (c common) spent(r Row, a, b works) *draft {
	d := c.draft(r)
	d.total = true
	within := func(all []series.Span) func(series.Span) []series.Span {
		return func(s series.Span) []series.Span { return series.Intersect(all, []series.Span{s}) }
	}
	hours := func(w works, s series.Span) [3]float64 {
		on := float64(lengthIn(w.on, s)) / series.HourMS
		off := w.errShare * float64(s.To-s.From) / series.HourMS
		return [3]float64{on, on + off, on - off}
	}
	for _, p := range c.parts(within(a.known), within(b.known)) {
		d.add(p, hours(a, p.Span), hours(b, later(p.Span, c.laterMS)))
	}
	return d
}

// lengthIn is how much of a span lies in some that are sorted and disjoint, ms.
func lengthIn(all []series.Span, s series.Span) (ms int64) {
	i, _ := slices.BinarySearchFunc(all, s.From, func(x series.Span, at int64) int { return cmp.Compare(x.To, at) })
	for ; i < len(all) && all[i].From < s.To; i++ {
		ms += max(0, min(all[i].To, s.To)-max(all[i].From, s.From))
	}
	return ms
}
