package analysis

import "thawbook/analysis/series"

// A batch went out and came back where the ledger has hives going out of a barn that is not emptied by it, and within
// 60 days at least half and no more than all of them coming in again (common practice, no source).
const batchMostMS = 60 * dayHours * series.HourMS

// batches are the batches out and back, with what the room did the day before, meanwhile and the day after.
func batches(j judgement) (out []Event) {
	open := -1 // the entry with which a batch is out
	hives := 0
	for i, h := range j.Heads {
		hives += h.Change
		switch {
		case h.Change < 0 && hives > 0:
			open = i
		case h.Change < 0 || open < 0:
			open = -1
		case h.At-j.Heads[open].At <= batchMostMS && h.Change <= -j.Heads[open].Change && -j.Heads[open].Change <= 2*h.Change:
			out = append(out, batch(j, j.Heads[open], h))
			open = -1
		}
	}
	return out
}

// batch is one batch out and back.
func batch(j judgement, left, back HeadChange) Event {
	away := series.Span{From: left.At, To: back.At}
	e := Event{Kind: batchOut, Span: away, Evidence: YourSetting}
	e.add("hives_out", count(-left.Change, YourSetting))
	e.add("hives_back", count(back.Change, YourSetting))
	e.add("days", exactly(float64(away.To-away.From)/(dayHours*series.HourMS), YourSetting))
	e.air(j, "before", dayBefore(away.From))
	e.air(j, "meanwhile", away)
	e.air(j, "after", dayAfter(away.To))
	outdoor := j.weather(temperatureOf)
	e.add("outdoors_before_c", meanOver(outdoor, dayBefore(away.From)))
	e.add("outdoors_meanwhile_c", meanOver(outdoor, away))
	return e
}
