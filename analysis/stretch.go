package analysis

import "thawbook/analysis/series"

// stretches is time to be judged: spans sorted and disjoint. What runs along a curve ends where one of them
// ends, and is cut there.
type stretches []series.Span

// knownMS is how much of the time a curve is known for, in milliseconds.
func (s stretches) knownMS(c series.Curve) (sum int64) {
	for _, p := range s {
		sum += c.KnownMS(p)
	}
	return sum
}

// share is known time as a part of the whole, 0 where there is none.
func (s stretches) share(knownMS int64) float64 {
	whole := series.LengthMS(s)
	if whole == 0 {
		return 0
	}
	return float64(knownMS) / float64(whole)
}

// hull is the span from the first instant to the last.
func (s stretches) hull() series.Span {
	if len(s) == 0 {
		return series.Span{}
	}
	return series.Span{From: s[0].From, To: s[len(s)-1].To}
}

// hours are the whole hours from the start of each stretch on, the last of each cut where it ends.
func (s stretches) hours() (out []series.Span) {
	for _, p := range s {
		out = append(out, series.Steps(p, series.HourMS, p.From)...)
	}
	return out
}

// sum is what a curve comes to over the time: in all, and outside each of some limits.
func (s stretches) sum(c series.Curve, limits []series.Limits) tally {
	out := tally{bin: c.Bin(series.Span{}), outside: make([]series.Outside, len(limits))}
	for i, p := range s {
		bin, outside := c.BinOutside(p, limits)
		next := tally{bin, outside, p.To - p.From}
		if i == 0 {
			out = next
			continue
		}
		out = out.plus(next)
	}
	return out
}

// above are a curve's runs above a limit.
func (s stretches) above(c series.Curve, limit float64) (out []series.Run) {
	for _, p := range s {
		out = append(out, overBreaks(c.Above(p, limit), 1)...)
	}
	return out
}

// below are a curve's runs below a limit.
func (s stretches) below(c series.Curve, limit float64) (out []series.Run) {
	for _, p := range s {
		out = append(out, overBreaks(c.Below(p, limit), -1)...)
	}
	return out
}

// breakMS is how far apart the ends of a mean's line lie at a break (series.Mean).
const breakMS = 1

// overBreaks makes one run, above a limit (sign +1) or below it, of those that a mere break of the line cuts in two,
// where a logger came to a mean or left it and no time is lost.
func overBreaks(runs []series.Run, sign int) (out []series.Run) {
	for _, r := range runs {
		if n := len(out); n > 0 && out[n-1].CutTo && r.CutFrom && r.From-out[n-1].To <= breakMS {
			out[n-1].To, out[n-1].CutTo, out[n-1].Peak = r.To, r.CutTo, peak([]series.Run{out[n-1], r}, sign)
			continue
		}
		out = append(out, r)
	}
	return out
}

// limited is a limit with the time it holds for.
type limited struct {
	limit float64
	time  stretches
}

// under are the values a limit has over the phases, each with its time; phases that follow on one another with
// the same limit are one, and those without one are left out.
func (j judgement) under(of func(Bands) *float64) (out []limited) {
	last := (*float64)(nil)
	for _, p := range j.phases {
		limit := of(p.Bands)
		switch {
		case limit == nil:
		case last != nil && *last == *limit:
			same := &out[len(out)-1]
			same.time = series.Union(append(same.time, p.Parts...))
		default:
			out = append(out, limited{*limit, append(stretches{}, p.Parts...)})
		}
		last = limit
	}
	return out
}
