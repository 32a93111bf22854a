package analysis

import (
	"thawbook/analysis/series"
)

// beesTime is the judged stretch: what the keeper said; else the head-count ledger, from the first hives
// in to the last out; else what the traces show (beesseen.go), worked out; else, assumed, the whole room record.
func beesTime(in Input, room series.Curve, seen BeesSeen) (series.Span, Evidence) {
	s, evidence := series.Span{}, YourSetting
	first, last := ledgerSpan(in.Heads)
	switch {
	case in.BeesIn != nil:
		s.From = *in.BeesIn
	case len(in.Heads) > 0:
		s.From = first
	case seen.In.OK():
		s.From, evidence = seen.In.At, WorkedOut
	case room.Len() > 0:
		s.From, evidence = room.Readings.At[0], Assumed
	}
	switch {
	case in.BeesOut != nil:
		s.To = *in.BeesOut
	case len(in.Heads) > 0 && last > s.From:
		s.To = last
	case seen.Out.OK() && seen.Out.At > s.From:
		s.To, evidence = seen.Out.At, weaker(evidence, WorkedOut)
	case room.Len() > 0:
		s.To, evidence = room.Readings.At[room.Len()-1], Assumed
	}
	if s.To < s.From {
		s.To = s.From
	}
	return s, evidence
}

// halfSeen says whether the traces stand for an end of the bees' time that nobody set down.
func halfSeen(in Input, seen BeesSeen) bool {
	_, last := ledgerSpan(in.Heads)
	return in.BeesIn == nil && len(in.Heads) == 0 && seen.In.OK() || in.BeesOut == nil && last == 0 && seen.Out.OK()
}

// weaker is the evidence of something that rests on both.
func weaker(a, b Evidence) Evidence {
	for _, e := range []Evidence{Assumed, WorkedOut, YourSetting} {
		if a == e || b == e {
			return e
		}
	}
	return Recorded
}

// ledgerSpan runs from the first entry to the entry that empties the barn; last is 0 when it never does.
func ledgerSpan(heads []HeadChange) (first, last int64) {
	count := 0
	for i, h := range heads {
		if i == 0 {
			first = h.At
		}
		count += h.Change
		if count <= 0 {
			last = h.At
		}
	}
	return first, last
}

// HiveDays is the head count integrated over a span, in hives × days of 24 h. Entries rise in time; those
// before the span set the count it starts with. It is unknown without a ledger.
func HiveDays(heads []HeadChange, s series.Span) Figure {
	if len(heads) == 0 {
		return unknown("no_head_count")
	}
	const dayMS = 24 * series.HourMS
	count, since, total := 0, s.From, 0.0
	for _, h := range heads {
		at := min(max(h.At, s.From), s.To)
		total += float64(count) * float64(at-since) / dayMS
		count, since = count+h.Change, at
	}
	total += float64(count) * float64(s.To-since) / dayMS
	return exactly(total, YourSetting)
}

// exactly is a figure without a range.
func exactly(v float64, e Evidence) Figure {
	return Figure{Mid: v, Low: v, High: v, OK: true, Evidence: e}
}

// unknown is a figure the data do not support, with the code of the reason.
func unknown(reason string) Figure { return Figure{Unknown: reason} }
