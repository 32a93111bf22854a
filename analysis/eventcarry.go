package analysis

import "thawbook/analysis/series"

// carries are the carry-in and the takeout: as the keeper said or his ledger has it, from the first load to the last;
// else as the traces propose them. Beside them stand the air of the day before and the day after, and how many hours
// later the traces show the same (common practice, no source). Without either there is no such event.
func carries(j judgement) []Event {
	in := Event{Kind: carryIn, Span: series.Span{From: j.beesTime.From, To: j.beesTime.From}, Evidence: YourSetting}
	out := Event{Kind: takeout, Span: series.Span{From: j.beesTime.To, To: j.beesTime.To}, Evidence: YourSetting}
	if at, ok := filledAt(j.Heads); ok && at > in.Span.From {
		in.Span.To = at
	}
	if at, ok := emptiedFrom(j.Heads); ok && at < out.Span.To {
		out.Span.From = at
	}
	var all []Event
	if in.edge(j, j.BeesIn != nil || len(j.Heads) > 0, j.seen.In, in.Span.From) {
		all = append(all, in)
	}
	_, emptied := ledgerSpan(j.Heads)
	if out.edge(j, j.BeesOut != nil || emptied > j.beesTime.From, j.seen.Out, out.Span.To) {
		all = append(all, out)
	}
	return all
}

// edge gives an end of the bees' time its figures; false where nobody said when it was and no trace shows it.
func (e *Event) edge(j judgement, said bool, seen Edge, at int64) bool {
	switch {
	case !said && !seen.OK():
		return false
	case !said:
		e.Evidence, e.MayBe = WorkedOut, seen.Sure != EdgeSure
	case seen.OK():
		e.add("seen_later_h", exactly(float64(seen.At-at)/series.HourMS, WorkedOut))
	}
	e.air(j, "before", dayBefore(e.Span.From))
	e.air(j, "after", dayAfter(e.Span.To))
	return true
}
