package engine

import (
	"math"
	"slices"
	"time"

	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// The rule of this file: a clock face becomes an instant by the logger's zone (the plan's, else the
// file's, else the winter's) and by whether its clock was put forward and back with summer time. Unless
// the plan says so, that is read off the face: where the zone changed inside the log, a clock that
// followed shows one step that differs from the interval by just that change. A clock that did not, or
// where the face can't tell, keeps the distance from UTC it had at its first reading: an instrument that
// was set once. Anchors then move the instants: one by a constant, several by straight lines between them
// and beyond; what the keeper took over of how far the clock is ahead of its neighbours' is taken off at the end.
// Everything is arithmetic on distances from UTC; the standard library would map an hour the
// clock skipped, or showed twice, without a word. (Common practice, no source.)

// The remarks a clock leaves; Args are those of the logger.
const (
	ClockSkippedHour    = "clock_skipped_hour"    // the face skipped the hour: it followed summer time
	ClockRepeatedHour   = "clock_repeated_hour"   // the face showed an hour twice: it followed summer time
	ClockAssumedFixed   = "clock_assumed_fixed"   // the zone changed within the log and the face can't tell
	ClockContradicts    = "clock_contradicts"     // the face followed one change and not another
	ClockImpossibleHour = "clock_impossible_hour" // readings in an hour the zone skipped, in a clock said to follow
	ClockLost           = "clock_lost"            // readings left out: the clock had lost its time and began anew years ago
	ClockZoneUnknown    = "clock_zone_unknown"    // the zone the file names is none. Args: the zone
)

// change is a moment at which a zone's distance from UTC changes, all in milliseconds.
type change struct{ at, before, after int64 }

// clock turns one file's clock faces into instants.
type clock struct {
	loc      *time.Location
	instant  bool // the file gives instants already
	follows  bool
	offsetMS int64 // what a clock that does not follow keeps
	interval int64
	changes  []change
	anchors  []shift
	ahead    int64 // what the keeper said it is ahead besides
}

// shift is by how much the true time is ahead of what the clock made of it, at an instant of the latter.
type shift struct{ at, by int64 }

// facesOf is what a clock is read off: one series' faces in file order, earliest first.
func facesOf(face []int64) []int64 {
	if descending(face) {
		face = slices.Clone(face)
		slices.Reverse(face)
	}
	return face
}

// descending says whether more rows go back in time than forward: a file with the newest row on top.
func descending(face []int64) bool {
	back := 0
	for i := 1; i < len(face); i++ {
		switch {
		case face[i] < face[i-1]:
			back++
		case face[i] > face[i-1]:
			back--
		}
	}
	return back > 0
}

// clockOf reads a logger's clock off the faces of one of its files. zone is the name the file gives.
func clockOf(l winter.Logger, zone string, winterZone *time.Location, face []int64, instant bool) (clock, []series.Remark) {
	c := clock{loc: winterZone, instant: instant}
	var remarks []series.Remark
	named := false
	for _, name := range []string{zone, l.Zone} {
		switch loc, err := winter.Location(name); {
		case err == nil:
			c.loc, named = loc, true
		case name != "":
			remarks = append(remarks, series.Remark{Code: ClockZoneUnknown, Args: []string{name}, Count: 1})
		}
	}
	log := longest(runsOf(face))
	face = facesOf(face[log.from:log.to])
	if !instant && len(face) > 0 {
		if !named && !clockSaid(l) {
			remarks = append(remarks, series.Remark{Code: ClockZoneAssumed, Count: 1})
		}
		remarks = append(remarks, c.read(face, l.FollowsDST)...)
	}
	c.anchors, c.ahead = c.shifts(l.Anchors), l.AheadMS
	return c, remarks
}

// clockSaid says whether the keeper spoke of a logger's clock: who says that it follows summer time or not, or what his
// watch said beside it, speaks of the winter's zone.
func clockSaid(l winter.Logger) bool { return l.FollowsDST != nil || len(l.Anchors) > 0 }

// read settles whether the clock followed summer time, and from which distance from UTC it started.
func (c *clock) read(face []int64, told *bool) (remarks []series.Remark) {
	ordered := face
	if !rising(face) {
		ordered = slices.Clone(face)
		slices.Sort(ordered)
		ordered = slices.Compact(ordered)
	}
	c.interval = series.Readings{At: ordered}.Interval()
	c.offsetMS = face[0] - firstInstant(face[0], c.loc)
	c.changes = changesBetween(ordered[0], ordered[len(ordered)-1], c.loc)
	followed, held, inside := 0, 0, 0
	var seen []series.Remark
	for _, ch := range c.changes {
		if ordered[0] >= ch.at+ch.before || ordered[len(ordered)-1] < ch.at+ch.after {
			continue // beside the log, of no matter but to the faces next to it
		}
		inside++
		switch {
		case c.shows(face, ch):
			followed++
			seen = append(seen, ch.remark())
		case c.denies(face, ch):
			held++
		}
	}
	switch {
	case told != nil:
		c.follows = *told
	case followed > 0 && held > 0:
		return []series.Remark{{Code: ClockContradicts, Count: 1}}
	case followed > 0:
		c.follows = true
	case held == 0 && inside > 0:
		return []series.Remark{{Code: ClockAssumedFixed, Count: inside}}
	}
	if c.follows {
		remarks = seen
	}
	return remarks
}

// remark says that the face shows a change.
func (ch change) remark() series.Remark {
	code := ClockSkippedHour
	if ch.after < ch.before {
		code = ClockRepeatedHour
	}
	return series.Remark{Code: code, Count: 1, Span: series.Span{From: ch.at, To: ch.at + abs(ch.after-ch.before)}}
}

// shows says whether the face makes the step of a change: from a reading within an interval before it to
// one within an interval after it, wider than the interval by the change (narrower, or even backwards,
// when the clock goes back). Such steps are no evidence where they are common in the log.
func (c *clock) shows(face []int64, ch change) bool {
	jump := c.interval + ch.after - ch.before
	found, common := false, 0
	for i := 1; i < len(face); i++ {
		if abs(face[i]-face[i-1]-jump) > c.tolerance(ch) {
			continue
		}
		wallEnd, wallStart := ch.at+ch.before, ch.at+ch.after
		if wallEnd-c.interval <= face[i-1] && face[i-1] < wallEnd && wallStart <= face[i] && face[i] < wallStart+c.interval {
			found = true
			continue
		}
		common++
	}
	return found && common <= 2*len(c.changes)
}

// denies says whether the face goes past a change in one ordinary step.
func (c *clock) denies(face []int64, ch change) bool {
	wallEnd := ch.at + ch.before
	for i := 1; i < len(face); i++ {
		if face[i-1] < wallEnd && wallEnd <= face[i] && abs(face[i]-face[i-1]-c.interval) <= c.tolerance(ch) {
			return true
		}
	}
	return false
}

// tolerance is how far a step may be off and still count: a quarter of the interval or of the change.
func (c *clock) tolerance(ch change) int64 { return min(c.interval, abs(ch.after-ch.before)) / 4 }

// instants turns faces in file order into instants, and counts those in an hour the zone skipped. Where the faces are
// the instants already it hands them back.
func (c *clock) instants(face []int64) (at []int64, impossible int) {
	if len(c.anchors) == 0 && c.ahead == 0 && (c.instant || !c.follows && c.offsetMS == 0) {
		return face, 0
	}
	at = make([]int64, len(face))
	if descending(face) {
		backwards := slices.Clone(face)
		slices.Reverse(backwards)
		impossible = c.fill(at, backwards)
		slices.Reverse(at)
		return at, impossible
	}
	return at, c.fill(at, face)
}

// fill turns faces, earliest first, into instants.
func (c *clock) fill(at, face []int64) (impossible int) {
	for i, f := range face {
		switch {
		case c.instant:
			at[i] = f
		case !c.follows:
			at[i] = f - c.offsetMS
		case i == 0:
			at[i] = firstInstant(f, c.loc)
		default:
			at[i], impossible = c.next(f, at[i-1], impossible)
		}
	}
	for i := range at {
		at[i] = c.corrected(at[i]) - c.ahead
	}
	return impossible
}

// next is the instant of a face in a clock that follows: of two the one that lies nearest to an interval
// after the reading before it; in a skipped hour as if the clock had not yet been put forward.
func (c *clock) next(face, before int64, impossible int) (int64, int) {
	if !c.unclear(face) {
		return face - c.offsetAt(face), impossible
	}
	instants := winter.Instants(face, c.loc)
	switch len(instants) {
	case 0:
		return winter.InstantBefore(face, c.loc), impossible + 1
	case 1:
		return instants[0], impossible
	}
	if abs(instants[1]-before-c.interval) < abs(instants[0]-before-c.interval) {
		return instants[1], impossible
	}
	return instants[0], impossible
}

// unclear says whether a face lies in or beside an hour that is skipped or shown twice.
func (c *clock) unclear(face int64) bool {
	for _, ch := range c.changes {
		low, high := ch.at+min(ch.before, ch.after), ch.at+max(ch.before, ch.after)
		if low <= face && face < high {
			return true
		}
	}
	return false
}

// offsetAt is the zone's distance from UTC at a face that is not unclear.
func (c *clock) offsetAt(face int64) int64 {
	offset := int64(math.MinInt64)
	for _, ch := range c.changes {
		if offset == math.MinInt64 {
			offset = ch.before
		}
		if face >= ch.at+ch.after {
			offset = ch.after
		}
	}
	if offset == math.MinInt64 {
		return c.offsetMS
	}
	return offset
}

// shifts are the anchors as the clock itself makes instants of them; one that falls on its forerunner, by
// a skipped hour, is left out.
func (c *clock) shifts(anchors []winter.Anchor) (out []shift) {
	for _, a := range anchors {
		at := a.FaceMS - c.offsetMS
		if c.instant || c.follows {
			at = firstInstant(a.FaceMS, c.loc)
		}
		if len(out) == 0 || at > out[len(out)-1].at {
			out = append(out, shift{at: at, by: a.At - at})
		}
	}
	return out
}

// corrected moves an instant by the anchors.
func (c *clock) corrected(at int64) int64 {
	switch len(c.anchors) {
	case 0:
		return at
	case 1:
		return at + c.anchors[0].by
	}
	i := 1
	for i < len(c.anchors)-1 && at > c.anchors[i].at {
		i++
	}
	a, b := c.anchors[i-1], c.anchors[i]
	slope := float64(b.by-a.by) / float64(b.at-a.at)
	return at + a.by + int64(math.Round(slope*float64(at-a.at)))
}

// firstInstant is the earliest instant at which a zone's clock shows a face; in a skipped hour as if it
// had not yet been put forward.
func firstInstant(face int64, loc *time.Location) int64 {
	if instants := winter.Instants(face, loc); len(instants) > 0 {
		return instants[0]
	}
	return winter.InstantBefore(face, loc)
}

// changesBetween lists the changes of a zone's distance from UTC between two faces, a day added at each end.
func changesBetween(first, last int64, loc *time.Location) (out []change) {
	const dayMS = 24 * series.HourMS
	at := time.UnixMilli(first - dayMS).In(loc)
	for {
		_, end := at.ZoneBounds()
		if end.IsZero() || end.UnixMilli() > last+dayMS {
			return out
		}
		_, before := at.Zone()
		at = end.In(loc)
		if _, after := at.Zone(); after != before {
			out = append(out, change{end.UnixMilli(), int64(before) * 1000, int64(after) * 1000})
		}
	}
}

// abs is the size of a whole number.
func abs(n int64) int64 { return max(n, -n) }
