package analysis

import (
	"time"

	"thawbook/analysis/series"
)

// A dark room is lit where a light logger reads more than 1 lux above the darkest tenth of its own record, or says so
// (1, not 0). Pauses of half an hour are bridged. Light at the same half hours of the day on five days and more of a
// fortnight is a leak, such as at a light trap, or a visit kept every day: it may be either. Visits once or twice a week
// add up to five such days in a winter, but not in a fortnight; the sun shines in on most. (Common practice, no source.)
const (
	litLux       = 1
	litPauseMS   = 30 * minuteMS
	leakDays     = 5
	leakWithin   = 14 // days
	slotMS       = 30 * minuteMS
	slotsOfADay  = int(dayHours * series.HourMS / slotMS)
	leakSlotPart = 2 // slots lit on half as many days as the most lit one belong to the leak
)

// lights are the times at which the loggers in the room's air saw light, and the leaks they add up to.
func lights(j judgement) (out []Event) {
	for _, l := range j.Loggers {
		if l.Light.Len() == 0 || !isDark(l.Place) {
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
	most, lights := 0, []litDay{}
	for i := range slots {
		if steady := slots[i].steady(); len(steady) > len(lights) {
			most, lights = i, steady
		}
	}
	days := len(lights)
	if days == 0 {
		return Event{}, false
	}
	belongs := func(i int) bool {
		return leakSlotPart*slots[i].between(lights[0].number, lights[days-1].number) >= days
	}
	from, to := most, most
	for from > 0 && belongs(from-1) {
		from--
	}
	for to+1 < slotsOfADay && belongs(to+1) {
		to++
	}
	e := Event{Kind: lightLeak, Span: series.Span{From: lights[0].From, To: lights[days-1].To}, Evidence: WorkedOut, MayBe: true}
	e.add("days", count(days, WorkedOut))
	e.add("from_hour", exactly(float64(from)/2, WorkedOut))
	e.add("to_hour", exactly(float64(to+1)/2, WorkedOut))
	return e, true
}

// litDay is a day on which a half hour was lit, by its number, and from when to when.
type litDay struct {
	number int
	series.Span
}

// slot is a half hour of the local day with the days on which it was lit, in order.
type slot struct{ days []litDay }

// between is how many days were lit from one to another number.
func (s slot) between(from, to int) (n int) {
	for _, d := range s.days {
		if d.number >= from && d.number <= to {
			n++
		}
	}
	return n
}

// steady are the days that belong to leakDays lit ones within leakWithin days.
func (s slot) steady() (out []litDay) {
	keep := make([]bool, len(s.days))
	for i := 0; i+leakDays <= len(s.days); i++ {
		if s.days[i+leakDays-1].number-s.days[i].number < leakWithin {
			for k := i; k < i+leakDays; k++ {
				keep[k] = true
			}
		}
	}
	for i, d := range s.days {
		if keep[i] {
			out = append(out, d)
		}
	}
	return out
}

// litDays are the half hours of the local day with the days on which each was lit.
func litDays(lit []series.Span, zone *time.Location) []slot {
	slots := make([]slot, slotsOfADay)
	for _, s := range lit {
		for at, next := s.From, int64(0); at < s.To; at = next {
			local := time.UnixMilli(at).In(zone)
			next = at + slotMS - intoHourMS(local)%slotMS
			y, m, d := local.Date()
			number := int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (dayHours * 3600))
			sl := &slots[(local.Hour()*60+local.Minute())/30]
			if n := len(sl.days); n > 0 && sl.days[n-1].number == number {
				sl.days[n-1].To = min(next, s.To)
				continue
			}
			sl.days = append(sl.days, litDay{number, series.Span{From: at, To: min(next, s.To)}})
		}
	}
	return slots
}
