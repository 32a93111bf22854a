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
	level   int // from how many hours inwards its level is told, but for the eighth next to the edge
}

// Beyond its stay a logger stood elsewhere where it is known for two hours of the week next to it, and
//   - the middle of them lies 6 K from the room's level, all but a twentieth of them more than half as far, and it went
//     from three quarters of the way to a quarter within four hours, half of it within one: a logger that is carried does that,
//     a barn that grows warm in spring does not. Where the record begins or ends in a heated room, its hours there stand for all; or
//   - it swung with the days: within the two days next to the stay by more than 6 K and at least 0.8 of what the
//     outdoors did, or, where that is not known, by more than 10 K, and did not stand at the room's level again for a day and a half.
//
// It has settled where it stays within 1.5 K of the room's level of the four days next to the edge, or within half as
// far again as those days go on 19 of 20 hours where that is more, 3 K at most. Away is towards where the logger stood: a
// room that is cold while hives are carried in is no nearer to the table. Of one that swung the edge is where the hours
// inside, of two days, and those outside, of a week, are parted best by how far they are away, and only where it went 3 K
// within six hours: an open door is no edge, and a barn's first hours may be warm, but are no sun on glass. (Common
// practice, no source.)
const (
	beyondDays           = 7
	beyondHours          = 2
	beyondClearK         = 6
	beyondClearShare     = 0.95
	heatedC              = 15
	abruptMS             = 4 * series.HourMS
	swungShare           = 0.8
	swungAloneK          = 10
	calmHours            = 36
	levelDays            = 4
	settledK, settledMax = 1.5, 3
	settledCalm          = 1.5
	settleHours          = 48
	carriedHours         = 3
	swungHours           = 24
	settleLongest        = 6 * series.HourMS
	againK               = 2
	carriedLevelHours    = 16
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
	level, tolK := levelOf(s.hours(s.level/8, s.level))
	edge, within, beyond := s.elsewhere()
	if len(beyond) < beyondHours {
		return none
	}
	e, at := none, -1
	offC := series.Median(beyond) - level
	away := func(v float64) float64 { return (v - level) * math.Copysign(1, offC) }
	if halfK := math.Abs(offC) / 2; 2*halfK >= beyondClearK && shareFurther(beyond, away, halfK) >= beyondClearShare {
		if left := s.last(edge, within, away, halfK, 0); s.abrupt(left, away, halfK) {
			at = s.pastTruck(s.settled(left, away, tolK), away, tolK)
		}
		e.Sure, e.Reason = EdgeSure, "stood_warmer"
		if offC < 0 {
			e.Reason = "stood_colder"
		}
	} else if s.swung() && !s.calmAgain(level, tolK) {
		away = func(v float64) float64 { return math.Abs(v - level) }
		edge = s.parted(s.edge+s.step*settleHours, s.edge-s.step*beyondDays*dayHours, away, tolK)
		at = s.settled(s.last(edge, swungHours, away, tolK, settledMax), away, tolK)
		e.Sure, e.Reason = EdgeLikely, "swung_with_days"
	}
	if at < 0 {
		return none
	}
	e.At = s.c.Readings.At[at]
	return e
}

// elsewhere are the hours that may show where a logger stood beyond its stay, and round which hour, within how many, it
// left there: those in a heated room, where its record begins or ends in one within a week; else those of that week,
// without the day next to the stay where it is longer.
func (s stay) elsewhere() (edge, within int, beyond []float64) {
	outer := min(max(s.edge-s.step*beyondDays*dayHours, 0), len(s.h.val)-1)
	if _, beyond = s.warmerThan(stayHighC, outer); len(beyond) >= beyondHours && series.Median(beyond) >= heatedC {
		edge, beyond = s.warmerThan(heatedC, outer)
		return edge, carriedHours, beyond
	}
	if beyond = s.hours(-beyondDays*dayHours, -dayHours); len(beyond) < beyondHours {
		beyond = s.hours(-beyondDays*dayHours, 0)
	}
	return s.edge, settleHours, beyond
}

// fromHeated is the stay from where its record left the heated room it begins or ends in, for good: it did not stand within 2 K of
// that room's level again for half a day. A barn may be so cold before its bees, or go with the weather of autumn and spring so
// far, that its days count as those of no stay. Its level is then that of the hours next to the heated room.
func (s stay) fromHeated() (stay, bool) {
	outer := 0
	if s.step < 0 {
		outer = len(s.h.val) - 1
	}
	edge, heated := s.warmerThan(stayHighC, outer)
	if len(heated) < beyondHours || series.Median(heated) < heatedC {
		return s, false
	}
	between := s.h.between(min(edge, s.edge), max(edge, s.edge))
	if len(between) == 0 || longestWithin(between, series.Median(heated), againK) >= dayHours/2 {
		return s, false
	}
	if s.edge = edge; s.step < 0 {
		s.edge++
	}
	s.level = carriedLevelHours
	return s, true
}

// warmerThan are the hours from an outer one inwards that are warmer than a temperature, and the first that is not.
func (s stay) warmerThan(tempC float64, outer int) (edge int, hours []float64) {
	for edge = outer; edge != s.edge && (math.IsNaN(s.h.val[edge]) || s.h.val[edge] > tempC); {
		edge += s.step
	}
	last := edge - s.step
	return edge, s.h.between(min(last, outer), max(last, outer)+1)
}

// parted is the innermost hour of those beyond: the hours from an inner to an outer one are parted there so that most of
// those outside lie more than tolK away, and most of those inside do not.
func (s stay) parted(inner, outer int, away func(float64) float64, tolK float64) int {
	score, best, edge := 0, 0, inner
	for k := inner; k != outer; k -= s.step {
		if k < 0 || k >= len(s.h.val) || math.IsNaN(s.h.val[k]) {
			continue
		}
		if away(s.h.val[k]) > tolK {
			score--
		} else {
			score++
		}
		if score >= best {
			best, edge = score, k-s.step
		}
	}
	return edge
}

// swung says whether a logger swung with the days beyond its stay.
func (s stay) swung() bool {
	own, out := swingOf(s.hours(-2*dayHours, 0)), 0.0
	if a, b := s.edge-2*dayHours*s.step, s.edge; len(s.outdoor.val) > 0 {
		out = swingOf(s.outdoor.between(min(a, b), max(a, b)))
	}
	return own > swungAloneK || own > staySwingK && out > 0 && own >= swungShare*out
}

// calmAgain says whether a logger stood at the room's level again, for a day and a half of the fortnight beyond its stay: then it
// was the room that went with the weather.
func (s stay) calmAgain(level, tolK float64) bool {
	return longestWithin(s.hours(-2*beyondDays*dayHours, 0), level, tolK) >= calmHours
}

// longestWithin is the most values in a row that lie within some K of a level.
func longestWithin(v []float64, level, tolK float64) (longest int) {
	run := 0
	for _, x := range v {
		if run++; math.Abs(x-level) > tolK {
			run = 0
		}
		longest = max(longest, run)
	}
	return longest
}

// abrupt says whether a logger went from one and a half times to half of some distance from the room's level within four
// hours round a reading, and that distance within one or from one reading to the next.
func (s stay) abrupt(at int, away func(float64) float64, halfK float64) bool {
	far, near, quick, since := false, false, false, 0
	for i, t := range s.c.Readings.At {
		if at < 0 || 2*apart(t, s.c.Readings.At[at]) > abruptMS {
			continue
		}
		for since < i-1 && t-s.c.Readings.At[since] > series.HourMS {
			since++
		}
		off := away(s.c.Val[i])
		far, near = far || off >= 1.5*halfK, near || off <= 0.5*halfK
		quick = quick || i > 0 && math.Abs(off-away(s.c.Val[since])) >= halfK
	}
	return far && near && quick
}

// shareFurther is the share of values further away than some K.
func shareFurther(v []float64, away func(float64) float64, tolK float64) float64 {
	n := 0
	for _, x := range v {
		if away(x) > tolK {
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

// last is the innermost reading within some hours of an hour that lies more than tolK away, at hours that go more than
// swingK within six; −1 for none.
func (s stay) last(edge, within int, away func(float64) float64, tolK, swingK float64) int {
	from, to := s.h.at(edge-within), s.h.at(edge+within+1)
	found := -1
	for i, t := range s.c.Readings.At {
		if t < from || t >= to || away(s.c.Val[i]) <= tolK {
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
func (s stay) settled(beyond int, away func(float64) float64, tolK float64) int {
	if beyond < 0 {
		return -1
	}
	before := math.Inf(1)
	for i := beyond + s.step; i >= 0 && i < s.c.Len(); i += s.step {
		off := away(s.c.Val[i])
		if off <= tolK || off >= before || apart(s.c.Readings.At[i], s.c.Readings.At[beyond]) > settleLongest {
			return i
		}
		before = off
	}
	return -1
}

// pastTruck is the reading from which a logger stayed within tolK of the level, where it passed the level first on its way
// between a heated room and a truck: within three hours it lay farther on the other side, and then within tolK for good.
func (s stay) pastTruck(at int, away func(float64) float64, tolK float64) int {
	if at < 0 {
		return at
	}
	back, last := -1, 0.0
	for i := at; i >= 0 && i < s.c.Len() && apart(s.c.Readings.At[i], s.c.Readings.At[at]) <= carriedHours*series.HourMS; i += s.step {
		off := away(s.c.Val[i])
		switch {
		case off < -tolK:
			back = -1
		case last < -tolK:
			back = i
		}
		last = off
	}
	if back < 0 {
		return at
	}
	return back
}
