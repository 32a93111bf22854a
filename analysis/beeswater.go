package analysis

import (
	"math"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// Bees give off water from the hour they are carried in, and fans that blow a cold room's warmth off leave most of it; an empty
// barn that is aired holds no more water than the air outdoors. Air balances say nothing below 0.5 g/m³ (Pedersen et al. 1998),
// which is 64 Pa at 4 °C (0.5 g/m³ · 461.5 J/(kg·K) · 277 K). So where the air held as much more than that outdoors in a logger's
// first half day, the bees were in with it. Where it held less than half as much for a day and longer, and then doors were opened
// (the room fell within an hour or two by half a degree more than half of what it fell outdoors) and over the day after them it held
// that much more than over the day before, they came through those doors. (The hours and the fall are common practice, no source.)
const (
	waterTellsPa  = 64
	waterHours    = 12
	waterDayHours = 24
	airedHours    = 4 // after the doors were shut: the room's air has changed places with the weather's
	doorsFallK    = 0.5
	doorsOutShare = 0.5
	grewMoist     = "grew_moist" // the reason of an edge
)

// vapPaOf are the hours of the vapour pressure of a logger's air.
func vapPaOf(l Logger) hourly { return hourlyOf(series.Zip(l.TempC, l.RelHum, moistair.VapPresPa)) }

// moreWater are the hours of how much more water the air held than that outdoors, Pa.
func moreWater(own, outdoor hourly) hourly {
	out := hourly{from: own.from}
	for i, pa := range outdoor.alongside(own).val {
		out.val = append(out.val, own.val[i]-pa)
	}
	return out
}

// medianOf is the median of the hours from one to before another; NaN where less than half of them is known.
func (h hourly) medianOf(from, to int) float64 {
	v := h.between(from, to)
	if 2*len(v) < to-from {
		return math.NaN()
	}
	return series.Median(v)
}

// came is the edge of the bees that came after a logger did, or with it: by the water they give off, else by their warmth. Where
// neither tells that they were in from its first hour on, Until says when they surely were: at the end of the first day on which
// the air held their water, or when the room grew warm, which a thaw might have done where the weather is not known.
func (s stay) came(e Edge, more hourly) Edge {
	if !e.OK() {
		return e
	}
	first := int((e.At-more.from)/series.HourMS) + 1
	begin := more.medianOf(first, first+waterHours)
	if e.wet = begin >= waterTellsPa; e.wet {
		return e
	}
	if doors := s.doorsBefore(more, first); doors > 0 {
		return Edge{At: s.h.at(doors), Sure: EdgeLikely, Reason: grewMoist, Logger: e.Logger}
	}
	warm, climbK := s.warmed(e)
	dry := !(more.medianOf(first, int((warm.At-more.from)/series.HourMS)) > waterTellsPa/2)
	if known := len(s.outdoor.val) > 0; warm.At > e.At && dry && (known || climbK >= warmedAloneK) {
		return warm
	}
	if e.Until = s.wetBy(more, first); math.IsNaN(begin) && warm.At > e.At {
		e.Until = warm.At
	}
	return e
}

// doorsBefore is the hour in which doors were opened before the air held the bees' water, a day and more after a first hour; 0
// where that is not seen.
func (s stay) doorsBefore(more hourly, first int) int {
	for k := first + waterDayHours; k < first+heldFromDays*dayHours; k++ {
		before := more.medianOf(k-waterDayHours, k)
		if s.doorsAt(k) && before <= waterTellsPa/2 && more.medianOf(first, k) <= waterTellsPa/2 &&
			more.medianOf(k+airedHours, k+airedHours+waterDayHours)-before >= waterTellsPa {
			return k
		}
	}
	return 0
}

// doorsAt says whether the room fell in an hour as it does through open doors.
func (s stay) doorsAt(k int) bool {
	own, out := swingDown(s.h, k-1, k), swingDown(s.outdoor, k-2, k)
	return own-doorsOutShare*math.Max(0, out) >= doorsFallK
}

// swingDown is how far the hours fell from one to the lower of another and the next; NaN where that is not known.
func swingDown(h hourly, from, to int) float64 {
	a, b := h.between(from, from+1), h.between(to, to+2)
	if len(a) == 0 || len(b) == 0 {
		return math.NaN()
	}
	return a[0] - min(b[0], b[len(b)-1])
}

// wetBy is the end of the first day over which the air held the bees' water; 0 for none.
func (s stay) wetBy(more hourly, first int) int64 {
	for k := first; k < first+heldFromDays*dayHours; k++ {
		if more.medianOf(k, k+waterDayHours) >= waterTellsPa {
			return more.at(k + waterDayHours)
		}
	}
	return 0
}
