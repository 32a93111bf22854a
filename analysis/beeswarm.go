package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// A logger that came into the barn before its bees shows them by the warmth they bring: the room stood for six hours and
// more, and then, within a day, climbed by 2.5 K, to 1.25 K above all but a tenth of the hours before, and by more than the
// air outdoors did where that is known; and a twentieth of it was no nearer than 1.5 K to the level it is held at later. That
// level is that of the second ten days; the climb is looked for in the first ten, and begins where the room last turned by
// 0.75 K. A room that climbs from the logger's coming in on is one that bees cold from the road warm up. Where the air outdoors is not
// known it takes 4 K: a thaw, or the next load of hives, warms a room too. (Common practice, no source.)
const (
	heldFromDays, heldToDays = 10, 20
	emptyLeastHours          = 6
	coldShare, warmShare     = 0.05, 0.1
	warmedLeastK             = 1.5
	warmedDayK, warmedOverK  = 2.5, 1.25
	warmedTurnK              = 0.75
	warmedAloneK             = 4
)

// warmed is a later edge for one at which a logger came into a barn that stood empty: likely, as weather may do the same. Else
// it is the edge as it was. climbK is by how much the room climbed from it within a day.
func (s stay) warmed(e Edge) (later Edge, climbK float64) {
	first := int((e.At - s.h.from) / series.HourMS)
	held := series.Median(s.h.between(first+heldFromDays*dayHours, first+heldToDays*dayHours))
	coldK := held - series.Quantile(coldShare, s.h.between(first, first+heldFromDays*dayHours))
	if !(coldK >= warmedLeastK) {
		return e, 0
	}
	climbed := s.parted(first+heldFromDays*dayHours, first, func(v float64) float64 { return held - v }, coldK/2)
	if start := s.turnedBefore(climbed, first); start >= first+emptyLeastHours && s.climbedFrom(start, first) {
		return Edge{At: s.h.at(start), Sure: EdgeLikely, Reason: "grew_warm", Logger: e.Logger}, s.dayClimbK(start)
	}
	return e, 0
}

// dayClimbK is how far above an hour the day after it came.
func (s stay) dayClimbK(start int) float64 {
	return slices.Max(s.h.between(start, start+dayHours)) - s.h.val[start]
}

// climbedFrom says whether the day after an hour brought warmth that the hours from a first one on did not have, and that
// the air outdoors does not explain.
func (s stay) climbedFrom(start, first int) bool {
	climbK := s.dayClimbK(start)
	warm := s.h.val[start] + climbK
	outBefore, outAfter := s.outdoor.between(start-dayHours, start), s.outdoor.between(start, start+dayHours)
	weather := len(outBefore) > 0 && len(outAfter) > 0 && series.Median(outAfter)-series.Median(outBefore) >= climbK
	return climbK >= warmedDayK && warm-series.Quantile(1-warmShare, s.h.between(first, start)) >= warmedOverK && !weather
}

// turnedBefore is the last hour from which the room climbed to an hour, back to a first one, but for falls of less than
// warmedTurnK: the last within that of the lowest.
func (s stay) turnedBefore(hour, first int) int {
	low := hour
	for k := hour; k >= first; k-- {
		switch v := s.h.val[k]; {
		case math.IsNaN(v):
		case v >= s.h.val[low]+warmedTurnK && low < hour:
			return s.lastNear(low, hour)
		case v < s.h.val[low]:
			low = k
		}
	}
	return s.lastNear(low, hour)
}

// lastNear is the last hour up to another that lies within warmedTurnK of that at low.
func (s stay) lastNear(low, hour int) int {
	at := low
	for k := low; k <= hour; k++ {
		if s.h.val[k] <= s.h.val[low]+warmedTurnK {
			at = k
		}
	}
	return at
}
