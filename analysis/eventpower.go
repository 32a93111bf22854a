package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// A power cut shows in records where every recorded stage stands still for 20 minutes and more although one of them had to
// run: as it is always on, or as the thermostat's temperature lay above its on-temperature by more than the logger's error;
// and the room climbs by 0.3 K and more meanwhile. One that is always on must stop and start with the others, within ten
// minutes or two intervals of its record: else it stood by itself, while the others had their pauses. Where one alone had
// to run it may have stopped for another reason. (House rule; its numbers are common practice, no source.)
const (
	cutLeastMS = 20 * minuteMS
	cutLeastK  = 0.3
	cutSlackMS = 10 * minuteMS
)

// powerCuts are the cuts that records show, those that a climb no weather explains may be, and those noted. A climb ends where
// the room has warmed, not where the power comes back: where the keeper noted a later end his word goes before it.
func powerCuts(j judgement) []Event {
	records, recorded := recordedStages(j)
	var seen []Event
	for _, s := range stoodStill(records, recorded) {
		if e, ok := recordedCut(j, s, records); ok {
			seen = append(seen, e)
		}
	}
	for _, s := range unexplainedClimbs(j) {
		if len(series.Intersect([]series.Span{s}, recorded)) == 0 {
			s.To = notedEnd(j, s)
			e := Event{Kind: powerCut, Span: s, Evidence: WorkedOut, MayBe: true}
			e.climb(j, s)
			seen = append(seen, e)
		}
	}
	return withNotes(seen, j, powerCut, func(s series.Span) Event {
		if s.To == s.From {
			s.To = climbsFrom(j, s.From)
		}
		e := Event{Span: s}
		e.climb(j, s)
		return e
	})
}

// notedEnd is the end the keeper noted of a cut about when a stretch was, where it is later than the stretch's own.
func notedEnd(j judgement, s series.Span) int64 {
	end := s.To
	for _, n := range notesOf(j.Notes, powerCut) {
		if n.Until != nil && n.At-noteSlackMS <= s.To && s.From <= *n.Until+noteSlackMS {
			end = max(end, *n.Until)
		}
	}
	return end
}

// cutSpans are when the power was out: the cuts that are more than a may be.
func cutSpans(all []Event) (out []series.Span) {
	for _, e := range all {
		if e.Kind == powerCut && !e.MayBe {
			out = append(out, e.Span)
		}
	}
	return series.Union(out)
}

// recordedStage is what a stage's record says, and how often it says it.
type recordedStage struct {
	stage Stage
	segs  []segment
	every int64
}

// recordedStages are the stages with a record, and the time for which all of the records are known.
func recordedStages(j judgement) (out []recordedStage, all []series.Span) {
	for _, st := range j.Stages {
		record, ok := recordOf(j.Loggers, st.Name)
		if !ok {
			continue
		}
		segs := clip(held(record), stretches{j.beesTime})
		if len(out) == 0 {
			all = []series.Span{j.beesTime}
		}
		all = series.Intersect(all, known(segs))
		out = append(out, recordedStage{st, segs, sampledEvery(record)})
	}
	return out, all
}

// stoodStill are the stretches in which no recorded stage ran.
func stoodStill(records []recordedStage, recorded []series.Span) (out []series.Span) {
	var on []series.Span
	for _, r := range records {
		on = append(on, spansOf(r.segs)...)
	}
	for _, s := range series.Subtract(recorded, series.Union(on)) {
		if s.To-s.From >= cutLeastMS {
			out = append(out, s)
		}
	}
	return out
}

// recordedCut is the power cut of a stretch in which every recorded stage stood still, if it was one.
func recordedCut(j judgement, s series.Span, records []recordedStage) (Event, bool) {
	room := j.room.mean.TempC
	from, known := room.At(s.From)
	b := room.Bin(s)
	hadTo := 0
	for _, r := range records {
		if r.stoodLonger(s) {
			return Event{}, false
		}
		if r.hadToRun(j, s) {
			hadTo++
		}
	}
	if !known || b.KnownMS == 0 || b.Max-from < cutLeastK || hadTo == 0 {
		return Event{}, false
	}
	e := Event{Kind: powerCut, Span: s, Evidence: Recorded, MayBe: hadTo < 2}
	e.add("stages_stopped", count(len(records), Recorded))
	e.climb(j, s)
	return e, true
}

// stoodLonger says whether a stage that is always on had stopped well before a stretch, or stood on well after it.
func (r recordedStage) stoodLonger(s series.Span) bool {
	slack := max(cutSlackMS, 2*r.every)
	for _, set := range r.stage.Settings {
		if !set.AlwaysOn || len(series.Intersect([]series.Span{set.Span}, []series.Span{s})) == 0 {
			continue
		}
		for _, g := range r.segs {
			if !g.On && int64(g.From) <= s.From && int64(g.To) >= s.To && (s.From-int64(g.From) > slack || int64(g.To)-s.To > slack) {
				return true
			}
		}
	}
	return false
}

// hadToRun says whether a stage had to run at some time of a stretch.
func (r recordedStage) hadToRun(j judgement, s series.Span) bool {
	hottest := j.control.TempC.Bin(s).Max
	for _, set := range r.stage.Settings {
		inForce := len(series.Intersect([]series.Span{set.Span}, []series.Span{s})) > 0
		if inForce && (set.AlwaysOn || set.Thermostat() && hottest >= set.OnC+j.control.TempErrK) {
			return true
		}
	}
	return false
}

// A climb that no weather explains: the air outdoors stays 3 K colder than the room was, so that any fan could have held it,
// and the room rises from no lower than a degree under its usual temperature of the day before by 2 K and more, at least
// twice as far as in nineteen of twenty such climbs of that winter, and by half a degree and more in its steepest hour; both
// by a step of the logger's resolution more. Where the air outdoors was that cold on average alone, or nobody measured it, the
// steepest hour takes 1.5 K: a room with walls and hives that warm along rises by that when its fans stop, and follows no weather so
// fast. It comes to where a thermostat calls for a fan, by more than the logger's error, or to 4 °C, which rooms are held at, where
// no thermostat is set down: below that none was missing. It began no later than with its steepest hour. The first five days of the
// bees, who are carried in load by load and warm the room, and the last six hours before they are out are left out. (Common
// practice, no source.)
const (
	climbLeastK      = 2
	climbUnusual     = 2
	climbSteepK      = 0.5
	climbAloneK      = 1.5
	climbBelowUsualK = 1
	climbColderK     = 3
	fanLeastC        = 4
	leavingMS        = 6 * series.HourMS
	climbTurnK       = 0.3 // a climb ends where the room has fallen by this much
)

// unexplainedClimbs are the room's climbs that may be a power cut.
func unexplainedClimbs(j judgement) (out []series.Span) {
	room := j.room.mean.TempC
	var all []rise
	var heights []float64
	for _, c := range climbs(room, j.beesTime) {
		usual := meanOver(room, dayBefore(c.From))
		if c.steepK, c.cold = j.steepFor(c); c.steepK > 0 && !(usual.OK && c.fromC < usual.Mid-climbBelowUsualK) {
			all = append(all, c)
			if c.cold {
				heights = append(heights, c.toC-c.fromC)
			}
		}
	}
	stepK := j.room.mean.TempStepK
	settling, leaving := j.beesTime.From+carriedInMS, j.beesTime.To-leavingMS
	least := max(climbLeastK, climbUnusual*series.Quantile(0.95, heights)) + stepK
	for _, c := range all {
		if c.toC-c.fromC < least || c.From < settling || c.To > leaving || !j.callsForAFan(c) {
			continue
		}
		if k, at := steepestHour(room, c.Span, c.To-c.From); k >= c.steepK+stepK {
			out = append(out, series.Span{From: at, To: c.To})
		}
	}
	return out
}

// steepFor is how far a climb must rise in its steepest hour to be none of the weather's; 0 where it may be. cold says that the air
// outdoors stayed cold, as far as it is known: by those climbs an unusual one is told.
func (j judgement) steepFor(c rise) (steepK float64, cold bool) {
	outdoor := j.weather(temperatureOf)
	weather := outdoor.Bin(c.Span)
	switch known := 2*weather.KnownMS >= c.To-c.From; {
	case outdoor.Len() == 0:
		return climbAloneK, true
	case known && weather.Max <= c.fromC-climbColderK:
		return climbSteepK, true
	case known && weather.Weighted() <= c.fromC-climbColderK:
		return climbAloneK, false
	}
	return 0, false
}

// callsForAFan says whether a climb comes to where the thermostat of some stage calls for it; of a barn that has none set
// down it may.
func (j judgement) callsForAFan(c rise) bool {
	set := false
	for _, st := range j.Stages {
		for _, s := range st.Settings {
			if !s.Thermostat() || c.To < s.Span.From || c.To > s.Span.To {
				continue
			}
			if set = true; c.toC >= s.OnC+j.room.mean.TempErrK {
				return true
			}
		}
	}
	return !set && c.toC >= fanLeastC
}

// rise is a climb of the room between two turning points.
type rise struct {
	series.Span
	fromC, toC float64
	steepK     float64 // how far it must rise within an hour to be none of the weather's
	cold       bool    // the air outdoors stayed cold
}

// climbs are the rises of a curve between turning points: each from the last lowest to the last highest reading before
// it turns by climbTurnK. A gap ends one.
func climbs(c series.Curve, s series.Span) (out []rise) {
	in := c.Slice(s)
	low, high := 0, 0
	end := func() {
		if high > low && in.Val[high]-in.Val[low] >= climbTurnK {
			out = append(out, rise{series.Span{From: in.Readings.At[low], To: in.Readings.At[high]}, in.Val[low], in.Val[high], 0, false})
		}
	}
	for i, v := range in.Val {
		gap := i > 0 && in.Readings.At[i]-in.Readings.At[i-1] > in.MaxStepMS
		switch {
		case i == 0:
		case gap, high > low && in.Val[high]-v >= climbTurnK && in.Val[high]-in.Val[low] >= climbTurnK:
			end()
			low, high = i, i
		case v <= in.Val[low]:
			low, high = i, i
		case v >= in.Val[high]:
			high = i
		}
	}
	if in.Len() > 0 {
		end()
	}
	return out
}

// climbsFrom is when a climb ends that is under way or begins within an hour of an instant; the instant itself where
// there is none.
func climbsFrom(j judgement, at int64) int64 {
	for _, c := range climbs(j.room.mean.TempC, j.beesTime) {
		if c.From <= at+noteSlackMS && at < c.To {
			return c.To
		}
	}
	return at
}

// steepestHour is the greatest rise within an hour that begins within some time of a stretch's start, and when it began;
// NaN where no hour is known.
func steepestHour(c series.Curve, s series.Span, withinMS int64) (k float64, began int64) {
	k = math.NaN()
	step := max(c.Interval(), minuteMS)
	for at := s.From; at <= s.From+withinMS && at+series.HourMS <= s.To; at += step {
		from, known := c.At(at)
		to, knownTo := c.At(at + series.HourMS)
		if known && knownTo && !(k >= to-from) {
			k, began = to-from, at
		}
	}
	return k, began
}
