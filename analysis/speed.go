package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// The fan laws: one fan on one duct moves air in step with its speed and takes power with the cube of it (affinity laws,
// as in AMCA 201 and the ASHRAE handbook; from memory). Power falls less in a barn, for drive and motor lose more of
// little, and flaps and wind do not follow: between the power of 2.5 and the cube (common practice, no source).
const (
	flowPower  = 1
	leastPower = 3
	mostPower  = 2.5
)

// atFullSpeed is for how many hours at full speed a stage would have done as much within some time, where what it does
// goes with a power of its speed.
func (p period) atFullSpeed(time []series.Span, power float64) (hours float64) {
	v := p.ran
	if v == nil {
		return 0
	}
	on := series.Intersect(spansOf(v.tries[0]), time)
	k := 0
	for i := 1; i < p.speed.Len(); i++ {
		s := series.Span{From: p.speed.Readings.At[i-1], To: p.speed.Readings.At[i]}
		if s.To-s.From > p.speed.MaxStepMS {
			continue
		}
		for k < len(on) && on[k].To <= s.From {
			k++
		}
		for n := k; n < len(on) && on[n].From < s.To; n++ {
			ms := min(s.To, on[n].To) - max(s.From, on[n].From)
			hours += float64(ms) / series.HourMS * math.Pow(p.speed.Val[i-1], power)
		}
	}
	return hours
}

// fullHours is what known hours come to at full speed, between two powers of the speed; the hours themselves where
// nobody recorded the speed.
func (p period) fullHours(hours Figure, least, most float64) Figure {
	if p.speed.Len() == 0 || !hours.OK {
		return hours
	}
	low, high := p.atFullSpeed(p.time, least), p.atFullSpeed(p.time, most)
	return Figure{Mid: (low + high) / 2, Low: min(low, high), High: max(low, high), OK: true, Evidence: WorkedOut}
}

// meanSpeed is a stage's mean share of full speed while it ran.
func (p period) meanSpeed(ran *Work) Figure {
	switch {
	case p.speed.Len() == 0 || ran == nil:
		return unknown("no_speed_record")
	case !ran.Hours.OK || ran.Hours.Mid == 0:
		return unknown("hours_unknown")
	}
	return exactly(p.atFullSpeed(p.time, flowPower)/ran.Hours.Mid, Recorded)
}
