package analysis

import (
	"thawbook/analysis/series"
)

// BeesBy says what each end of the bees' time rests on.
type BeesBy struct{ In, Out Evidence }

// Weaker is what the whole of it rests on.
func (b BeesBy) Weaker() Evidence { return weaker(b.In, b.Out) }

// beesTime is the judged stretch: what the keeper said; else the head-count ledger, from the first hives
// in to the last out; else what the traces show (beesseen.go), worked out; else, assumed, the whole room record.
func beesTime(in Input, room series.Curve, seen BeesSeen) (series.Span, BeesBy) {
	s, by := whole(room), BeesBy{Assumed, Assumed}
	first, last := ledgerSpan(in.Heads)
	switch {
	case in.BeesIn != nil:
		s.From, by.In = *in.BeesIn, YourSetting
	case len(in.Heads) > 0:
		s.From, by.In = first, YourSetting
	case seen.In.OK():
		s.From, by.In = seen.In.At, WorkedOut
	}
	switch {
	case in.BeesOut != nil:
		s.To, by.Out = *in.BeesOut, YourSetting
	case len(in.Heads) > 0 && last > s.From:
		s.To, by.Out = last, YourSetting
	case seen.Out.OK() && seen.Out.At > s.From:
		s.To, by.Out = seen.Out.At, WorkedOut
	}
	switch {
	case room.Len() == 0 && by.In == Assumed:
		s.From = s.To // no record stands for the end that is not known
	case s.To < s.From, room.Len() == 0 && by.Out == Assumed:
		s.To = s.From
	}
	return s, by
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

// leftShare is the most that a barn that was emptied may hold by its ledger, of the most it held: those that died and that
// nobody wrote down (common practice, no source).
const leftShare = 0.25

// ledgerSpan runs from the first entry to the entry that empties the barn for good; last is 0 when none does.
func ledgerSpan(heads []HeadChange) (first, last int64) {
	if len(heads) == 0 {
		return 0, 0
	}
	if h := heads[len(heads)-1]; emptied(heads) {
		last = h.At
	}
	return heads[0].At, last
}

// emptied says whether a ledger's last entry emptied the barn.
func emptied(heads []HeadChange) bool {
	count, most := 0, 0
	for _, h := range heads {
		count += h.Change
		most = max(most, count)
	}
	return len(heads) > 0 && heads[len(heads)-1].Change < 0 && float64(count) <= leftShare*float64(most)
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
