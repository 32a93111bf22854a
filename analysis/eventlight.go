package analysis

import (
	"time"

	"thawbook/analysis/series"
)

// A dark room is lit where a light logger reads more than 1 lux above the darkest tenth of its own record, or says so
// (1, not 0). Pauses of half an hour are bridged. Light on five days and more at the same half hours of the day is a
// leak, such as at a light trap, or a visit kept every day: it may be either. (Common practice, no source.)
const (
	litLux       = 1
	litPauseMS   = 30 * minuteMS
	leakDays     = 5
	slotMS       = 30 * minuteMS
	slotsOfADay  = int(dayHours * series.HourMS / slotMS)
	leakSlotPart = 2 // slots lit on half as many days as the most lit one belong to the leak
)

// lights are the times at which the loggers in the room's air saw light, and the leaks they add up to.
func lights(j judgement) (out []Event) {
	for _, l := range j.Loggers {
		if l.Light.Len() == 0 || !isJudged(l.Place) {
			continue
		}
		lit := joinedSpans(litSpans(l.Light, j.beesTime), litPauseMS)
		for _, s := range lit {
			e := Event{Kind: lightSeen, Span: s, Place: l.Place, Evidence: Recorded}
			e.add("minutes", exactly(float64(s.To-s.From)/minuteMS, Recorded))
			if !isBinary(l.Light) {
				e.add("peak_lux", exactly(l.Light.Bin(s).Max, Recorded))
			}
			out = append(out, e)
		}
		if e, ok := leak(lit, j.Zone); ok {
			e.Place = l.Place
			out = append(out, e)
		}
	}
	return out
}

// isBinary says whether a record of light says only dark or light.
func isBinary(c series.Curve) bool {
	for _, v := range c.Val {
		if v != 0 && v != 1 {
			return false
		}
	}
	return true
}

// litSpans are when a light logger saw light.
func litSpans(light series.Curve, s series.Span) []series.Span {
	if isBinary(light) {
		return spansOf(clip(held(light), stretches{s}))
	}
	var out []series.Span
	for _, r := range light.Above(s, series.Quantile(0.1, light.Val)+litLux) {
		out = append(out, spanOf(r))
	}
	return out
}

// leak is the light that comes at the same time on many days: from the first of them to the last, with the hours of
// the local day; ok is false where there is none.
func leak(lit []series.Span, zone *time.Location) (Event, bool) {
	slots := litDays(lit, zone)
	most := 0
	for i := range slots {
		if len(slots[i].days) > len(slots[most].days) {
			most = i
		}
	}
	days := len(slots[most].days)
	if days < leakDays {
		return Event{}, false
	}
	from, to := most, most
	for from > 0 && leakSlotPart*len(slots[from-1].days) >= days {
		from--
	}
	for to+1 < slotsOfADay && leakSlotPart*len(slots[to+1].days) >= days {
		to++
	}
	e := Event{Kind: lightLeak, Span: slots[most].Span, Evidence: WorkedOut, MayBe: true}
	e.add("days", count(days, WorkedOut))
	e.add("from_hour", exactly(float64(from)/2, WorkedOut))
	e.add("to_hour", exactly(float64(to+1)/2, WorkedOut))
	return e, true
}

// slot is a half hour of the local day: the days on which it was lit, and from when to when they reach.
type slot struct {
	series.Span
	days map[string]bool
}

// litDays are the half hours of the local day with the days on which each was lit.
func litDays(lit []series.Span, zone *time.Location) []slot {
	slots := make([]slot, slotsOfADay)
	for _, s := range lit {
		for at := s.From; at < s.To; at += slotMS {
			local := time.UnixMilli(at).In(zone)
			sl := &slots[(local.Hour()*60+local.Minute())/30]
			if sl.days == nil {
				sl.days, sl.From = map[string]bool{}, at
			}
			sl.days[local.Format(time.DateOnly)], sl.To = true, min(at+slotMS, s.To)
		}
	}
	return slots
}
