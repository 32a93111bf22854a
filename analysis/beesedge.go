package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// stay is one end of a logger's stay in the barn: hour edge is the first of it (step 1: inwards is later), or the
// hour after its last (step −1).
type stay struct {
	c       series.Curve
	h       hourly
	outdoor hourly // of the same hours; empty where it is not known
	edge    int
	step    int
}

// Beyond its stay a logger stood elsewhere where it is known for two hours of the week next to it, and
//   - the middle of them lies 6 K from the room's level, all but a twentieth of them more than half as far, and it went
//     from three quarters of the way to a quarter within three hours: a logger that is carried does that, a barn that
//     grows warm in spring does not; or
//   - it swung with the days: within the two days next to the stay by more than 6 K and at least 0.8 of what the
//     outdoors did, or, where that is not known, by more than 10 K.
//
// It has settled where it stays within 1.5 K of the room's level of the four days next to the edge, or within half as
// far again as those days go on 19 of 20 hours where that is more, 3 K at most. The edge is looked for within two days,
// and of one that swung only where it went 3 K within six hours: a barn's first hours may be warm, but are no sun on
// glass. (Common practice, no source.)
const (
	beyondDays           = 7
	beyondHours          = 2
	beyondClearK         = 6
	beyondClearShare     = 0.95
	abruptMS             = 3 * series.HourMS
	swungShare           = 0.8
	swungAloneK          = 10
	levelDays            = 4
	settledK, settledMax = 1.5, 3
	settledCalm          = 1.5
	settleHours          = 48
	settleLongest        = 6 * series.HourMS
)

// hours are the known hours from one to another number of hours inwards of the edge; negative is beyond it.
func (s stay) hours(a, b int) []float64 {
	a, b = s.edge+s.step*a, s.edge+s.step*b
	return s.h.between(min(a, b), max(a, b))
}

// seenBy is the reading with which a logger settled at the beginning of its stay, or the last before it left. It can be
// told only where the record goes on beyond and stood elsewhere there.
func (s stay) seenBy(logger string) Edge {
	none := Edge{Sure: EdgeCantTell, Reason: "record_begins_inside", Logger: logger}
	if s.step < 0 {
		none.Reason = "record_ends_inside"
	}
	level, tolK := levelOf(s.hours(dayHours/2, levelDays*dayHours))
	beyond := s.hours(-beyondDays*dayHours, -dayHours)
	if len(beyond) < beyondHours {
		beyond = s.hours(-beyondDays*dayHours, 0)
	}
	if len(beyond) < beyondHours {
		return none
	}
	e := none
	elsewhere := series.Median(beyond)
	halfK := math.Abs(elsewhere-level) / 2
	at := -1
	if 2*halfK >= beyondClearK && shareFurther(beyond, level, halfK) >= beyondClearShare {
		if left := s.last(level, halfK, 0); s.abrupt(left, level, halfK) {
			at = s.settled(left, level, tolK)
		}
		e.Sure, e.Reason = EdgeSure, "stood_warmer"
		if elsewhere < level {
			e.Reason = "stood_colder"
		}
	} else if s.swung() {
		at = s.settled(s.last(level, tolK, settledMax), level, tolK)
		e.Sure, e.Reason = EdgeLikely, "swung_with_days"
	}
	if at < 0 {
		return none
	}
	e.At = s.c.Readings.At[at]
	return e
}

// swung says whether a logger swung with the days beyond its stay.
func (s stay) swung() bool {
	own, out := swingOf(s.hours(-2*dayHours, 0)), 0.0
	if a, b := s.edge-2*dayHours*s.step, s.edge; len(s.outdoor.val) > 0 {
		out = swingOf(s.outdoor.between(min(a, b), max(a, b)))
	}
	return own > swungAloneK || own > staySwingK && out > 0 && own >= swungShare*out
}

// abrupt says whether a logger went from one and a half times to half of some distance from the room's level within three
// hours round a reading.
func (s stay) abrupt(at int, level, halfK float64) bool {
	far, near := false, false
	for i, t := range s.c.Readings.At {
		if at < 0 || 2*apart(t, s.c.Readings.At[at]) > abruptMS {
			continue
		}
		off := math.Abs(s.c.Val[i] - level)
		far, near = far || off >= 1.5*halfK, near || off <= 0.5*halfK
	}
	return far && near
}

// shareFurther is the share of values further than some K from a level.
func shareFurther(v []float64, level, tolK float64) float64 {
	n := 0
	for _, x := range v {
		if math.Abs(x-level) > tolK {
			n++
		}
	}
	return float64(n) / float64(len(v))
}

// levelOf is the middle of some hours, °C, and within how many K of it a logger has settled.
func levelOf(inside []float64) (level, tolK float64) {
	level = series.Median(inside)
	away := make([]float64, len(inside))
	for i, v := range inside {
		away[i] = math.Abs(v - level)
	}
	return level, math.Min(math.Max(settledK, settledCalm*series.Quantile(0.95, away)), settledMax)
}

// last is the innermost reading near the edge that lies further than tolK from the room's level, at hours that go more
// than swingK within six; −1 for none.
func (s stay) last(level, tolK, swingK float64) int {
	from, to := s.h.at(s.edge-settleHours), s.h.at(s.edge+settleHours)
	found := -1
	for i, t := range s.c.Readings.At {
		if t < from || t > to || math.Abs(s.c.Val[i]-level) <= tolK {
			continue
		}
		k := int((t - s.h.from) / series.HourMS)
		if (found < 0 || s.step > 0) && swingOf(s.h.between(k-3, k+4)) > swingK {
			found = i
		}
	}
	return found
}

// settled is the first reading inwards of one beyond, six hours further at most, that has come within tolK of the
// level or no nearer to it than the one before; −1 where there is none.
func (s stay) settled(beyond int, level, tolK float64) int {
	if beyond < 0 {
		return -1
	}
	before := math.Inf(1)
	for i := beyond + s.step; i >= 0 && i < s.c.Len(); i += s.step {
		off := math.Abs(s.c.Val[i] - level)
		if off <= tolK || off >= before || apart(s.c.Readings.At[i], s.c.Readings.At[beyond]) > settleLongest {
			return i
		}
		before = off
	}
	return -1
}
