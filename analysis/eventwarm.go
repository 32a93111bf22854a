package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// Air outdoors less than 3 K below the good band's upper limit can't hold the room in it (the free-cooling limit of a
// full barn at 1 L/s a colony lies 3.4–6.8 K below the set point: computed from the air balance for 5–10 W): from then on
// the room coasts on what it was cooled to before. A warm day is two hours and more of that, pauses of an hour bridged;
// the night before it is looked for in the 15 hours before. A night cooled the room where it fell half a degree and
// more over two hours and more, while the air outdoors was colder than the room. (The rest is common practice, no source.)
const (
	coolingGapK              = 3
	warmLeastMS, warmPauseMS = 2 * series.HourMS, series.HourMS
	nightMS                  = 15 * series.HourMS
	nightLeastK              = 0.5
	nightLeastMS             = 2 * series.HourMS
)

// warmDays are the stretches the room coasted through, with the night that cooled it before.
func warmDays(j judgement) (out []Event) {
	outdoor, room := j.weather(temperatureOf), j.room.mean.TempC
	for _, l := range j.under(func(b Bands) *float64 { return b.TempC.GoodHigh }) {
		var spans []series.Span
		for _, r := range l.time.above(outdoor, l.limit-coolingGapK) {
			spans = append(spans, spanOf(r))
		}
		for _, s := range joinedSpans(spans, warmPauseMS) {
			if s.To-s.From < warmLeastMS {
				continue
			}
			if night, ok := nightBefore(room, outdoor, s.From); ok {
				out = append(out, night)
			}
			out = append(out, coasted(room, outdoor, s, l.limit))
		}
	}
	return out
}

// coasted is a warm day: how long the room stayed at or below the limit from its start on; where it was already above
// that is 0, and where it never passed, the whole stretch, which is only the least it could have.
func coasted(room, outdoor series.Curve, s series.Span, limitC float64) Event {
	e := Event{Kind: warmDay, Span: s, Evidence: WorkedOut}
	e.add("outdoors_peak_c", exactly(outdoor.Bin(s).Max, Recorded))
	b := room.Bin(s)
	if float64(b.KnownMS) < enoughOfStretch*float64(s.To-s.From) {
		e.add("coasted_h", unknown("too_little_known"))
		return e
	}
	above := room.Above(s, limitC)
	first, hours := float64(s.To), 0.0
	for i, r := range above {
		if i == 0 {
			first = r.From
		}
		hours += (r.To - r.From) / series.HourMS
	}
	e.add("room_peak_c", exactly(b.Max, Recorded))
	e.add("coasted_h", exactly((first-float64(s.From))/series.HourMS, WorkedOut))
	e.add("above_band_h", exactly(hours, Recorded))
	return e
}

// nightBefore is the cooling of the room before an instant: from its highest to the lowest after that.
func nightBefore(room, outdoor series.Curve, at int64) (Event, bool) {
	night := room.Slice(series.Span{From: at - nightMS, To: at})
	var best, from, to = 0.0, 0, 0
	high := 0
	for i, v := range night.Val {
		if v > night.Val[high] {
			high = i
		}
		if night.Val[high]-v > best {
			best, from, to = night.Val[high]-v, high, i
		}
	}
	if best < nightLeastK {
		return Event{}, false
	}
	s := series.Span{From: night.Readings.At[from], To: night.Readings.At[to]}
	out := meanOver(outdoor, s)
	if s.To-s.From < nightLeastMS || !out.OK || out.Mid >= math.Min(night.Val[from], night.Val[to]) {
		return Event{}, false
	}
	e := Event{Kind: nightCooling, Span: s, Evidence: WorkedOut}
	e.add("cooled_k", exactly(best, Recorded))
	e.add("outdoors_c", out)
	return e, true
}
