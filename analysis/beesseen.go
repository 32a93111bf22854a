package analysis

import (
	"math"
	"slices"
	"strconv"

	"thawbook/analysis/series"
)

// Edge is when the bees went in, or came out, as the traces show it.
type Edge struct {
	At     int64  // ms UTC; 0 when it can't be told
	Sure   string // one of the three below
	Reason string // code of what was seen, or of why it can't be told
	Logger string // the logger that showed it
	wet    bool   // of bees in: the air held their water from then on
	Until  int64  // of bees in: by when they were in, where they may have come well after At; else 0
}

// How sure an edge is.
const (
	EdgeSure     = "sure"      // the logger came from, or left for, a place clearly warmer or colder
	EdgeLikely   = "likely"    // it came from, or left for, a place that swung with the days
	EdgeCantTell = "cant_tell" // the record does not show it
)

// OK says whether the traces show the edge at all.
func (e Edge) OK() bool { return e.Sure == EdgeSure || e.Sure == EdgeLikely }

// BeesSeen are both edges of the bees' time as the traces propose them.
type BeesSeen struct{ In, Out Edge }

// A day counts as one in a wintering room where its middle lies between −5 and 12 °C and it swings by no more than
// 6 K, nor by more than 0.6 of what the outdoors does where that is known to swing by 5 K. A kitchen table is warmer,
// a truck's seat swings with sun and night. Five such days in a row and more, over pauses of four days at most, and a
// fortnight in all, are a stay in the barn. (Common practice, no source; the trade's rooms stand at 1–9 °C.)
const (
	stayLowC, stayHighC = -5, 12
	staySwingK          = 6
	stayOutdoorSwingK   = 5
	stayOutdoorShare    = 0.6
	stayRunDays         = 5
	stayPauseDays       = 4
	stayLeastDays       = 14
	dayHours            = 24
)

// staysOf are the edges of every logger's own stay.
func staysOf(loggers []Logger, outdoor Logger, spread Spread) []BeesSeen {
	thermometers := having(loggers, temperatureOf)
	stays := make([]BeesSeen, len(thermometers))
	outC, outPa := hourlyOf(outdoor.TempC), vapPaOf(outdoor)
	spread(len(stays), func(i int) { stays[i] = stayEdges(thermometers[i], outC, outPa) })
	return stays
}

// beesSeen proposes when the bees went in and came out: when the first of the room's loggers, of which these are the stays, came from elsewhere and
// settled at the room's level, and when the last of them left it. That is when a logger was hung and taken down, which
// most keepers do with the bees; one that hung in the barn before them can't show when they came: an empty barn is
// cool and calm too, and in mild weather the fans blow off both the heat and the water of the bees. So that they went in
// is likely at best, however surely a logger came; they do not come out before a logger that hung among them. Where the air about
// one tells by the bees' water that they came after it, and about none that they came with it, that goes before.
func beesSeen(stays []BeesSeen) BeesSeen {
	none := Edge{Sure: EdgeCantTell, Reason: "no_stay"}
	seen := BeesSeen{none, none}
	told := toldByWater(stays)
	for _, s := range stays {
		if in := s.In; !told || !in.OK() || in.Reason == grewMoist {
			seen.In = seen.In.orBetter(in, -1)
		}
		seen.Out = seen.Out.orBetter(s.Out, 1)
	}
	if seen.In.OK() && seen.Out.OK() && seen.Out.At <= seen.In.At {
		return BeesSeen{none, none}
	}
	if seen.In.Sure == EdgeSure {
		seen.In.Sure = EdgeLikely
	}
	seen.In = seen.In.by(stays)
	return seen
}

// by is the edge of the bees going in with when they surely were in, as the loggers tell it together: not where that is within
// the half day over which one is told.
func (e Edge) by(stays []BeesSeen) Edge {
	for _, s := range stays {
		until := s.In.Until
		if s.In.wet {
			until = s.In.At
		}
		if until > 0 && (e.Until == 0 || until < e.Until) {
			e.Until = until
		}
	}
	if e.Until-e.At < waterHours*series.HourMS {
		e.Until = 0
	}
	return e
}

// toldByWater says whether the air about some loggers told that the bees came after them, and about none that they came with it.
func toldByWater(stays []BeesSeen) bool {
	with := slices.ContainsFunc(stays, func(s BeesSeen) bool { return s.In.wet })
	return !with && slices.ContainsFunc(stays, func(s BeesSeen) bool { return s.In.Reason == grewMoist })
}

// orBetter is the other edge where this one can't be told or the other is farther out: earlier for sign −1.
func (e Edge) orBetter(o Edge, sign int64) Edge {
	if o.OK() && (!e.OK() || sign*(o.At-e.At) > 0) || !e.OK() && e.Reason == "no_stay" {
		return o
	}
	return e
}

// stayEdges are the edges of one logger's stay in the barn.
func stayEdges(l Logger, outdoor, outdoorPa hourly) BeesSeen {
	none := Edge{Sure: EdgeCantTell, Reason: "no_stay", Logger: l.Name}
	h := hourlyOf(l.TempC)
	o := outdoor.alongside(h)
	first, last, ok := longestStay(h, o)
	if !ok {
		return BeesSeen{none, none}
	}
	last = lastStay(h, o, last)
	in, seenIn := stay{l.TempC, h, o, first, 1, levelDays * dayHours}.seenFarther(l.Name)
	_, seenOut := stay{l.TempC, h, o, last, -1, levelDays * dayHours}.seenFarther(l.Name)
	return BeesSeen{in.came(seenIn, moreWater(vapPaOf(l), outdoorPa)), seenOut}
}

// seenFarther is the edge of the stay, and the stay; where it shows none for sure, that of the stay from where the record left a
// heated room.
func (s stay) seenFarther(logger string) (stay, Edge) {
	e := s.seenBy(logger)
	if e.Sure == EdgeSure {
		return s, e
	}
	if longer, ok := s.fromHeated(); ok {
		if farther := longer.seenBy(logger); farther.Sure == EdgeSure || farther.OK() && !e.OK() {
			return longer, farther
		}
	}
	return s, e
}

// longestStay are the first hour and the hour after the last of the longest stay.
func longestStay(h, outdoor hourly) (first, last int, ok bool) {
	days := len(h.val) / dayHours
	var best, run [2]int
	for d := 0; d < days; {
		n := 0
		for d+n < days && isStayDay(h, outdoor, d+n) {
			n++
		}
		if n >= stayRunDays {
			if run[1] == 0 || d-run[1] > stayPauseDays {
				run[0] = d
			}
			run[1] = d + n
			if run[1]-run[0] > best[1]-best[0] {
				best = run
			}
		}
		d += n + 1
	}
	return best[0] * dayHours, best[1] * dayHours, best[1]-best[0] >= stayLeastDays
}

// lastStay is the hour after the last of a logger's stay, where it stood in the barn again for a fortnight in all after the longest: a
// logger that was taken down does not come back, but a room may leave the band for weeks.
func lastStay(h, outdoor hourly, last int) int {
	end, again, n := last, 0, 0
	for d := last / dayHours; d < len(h.val)/dayHours; d++ {
		if n++; !isStayDay(h, outdoor, d) {
			n = 0
			continue
		}
		if n == stayRunDays {
			again += stayRunDays - 1
		}
		if n >= stayRunDays {
			again, end = again+1, (d+1)*dayHours
		}
	}
	if again < stayLeastDays {
		return last
	}
	return end
}

// isStayDay says whether a day of hours is one in a wintering room.
func isStayDay(h, outdoor hourly, day int) bool {
	own := h.between(day*dayHours, (day+1)*dayHours)
	if len(own) < dayHours/2 {
		return false
	}
	level, swing := series.Median(own), swingOf(own)
	if level < stayLowC || level > stayHighC || swing > staySwingK {
		return false
	}
	out := swingOf(outdoor.between(day*dayHours, (day+1)*dayHours))
	return out < stayOutdoorSwingK || swing <= stayOutdoorShare*out
}

// swingOf is how far apart the lowest and the highest of some values lie; 0 for none.
func swingOf(v []float64) float64 {
	if len(v) == 0 {
		return 0
	}
	return slices.Max(v) - slices.Min(v)
}

// elsewhereLeastH is from how many hours of the bees' time on a logger that surely was not in the barn is remarked (common
// practice, no source).
const elsewhereLeastH = 1

// loggersElsewhere remarks the loggers that surely came into the barn after the bees, or left it before them, with the hours
// of their records in which they stood elsewhere meanwhile. Nothing is left out unasked.
func loggersElsewhere(loggers []Logger, stays []BeesSeen, bees series.Span) []series.Remark {
	out := []series.Remark{}
	for i, l := range having(loggers, temperatureOf) {
		record, ms := whole(l.TempC), int64(0)
		if e := stays[i].In; e.Sure == EdgeSure {
			ms += max(0, min(e.At, bees.To)-max(record.From, bees.From))
		}
		if e := stays[i].Out; e.Sure == EdgeSure {
			ms += max(0, min(record.To, bees.To)-max(e.At, bees.From))
		}
		if hours := float64(ms) / series.HourMS; hours >= elsewhereLeastH {
			out = append(out, series.Remark{Code: "logger_elsewhere", Args: []string{l.Name, strconv.Itoa(int(math.Round(hours)))}, Count: 1})
		}
	}
	return out
}
