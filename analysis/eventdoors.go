package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// Open doors let the room's air go towards the air outdoors within minutes. A sharp step is a change within 20 minutes
// (or two sampling intervals, half an hour at most) of 1 K and more in temperature, 1.5 K in dew point, and of three
// times what all but a hundredth of the winter's such changes come to, twice in dew point, which fans move further, so that
// fans switching are not taken for doors.
// It must go towards the air outdoors, which has not itself changed as much, or down where that is not known. Two loggers must show it within the same half
// hour; where only one samples often enough, both its temperature and its dew point must, and then it may be something
// else. In mild weather open doors change little, and don't show. Fans that start together after a power cut do the same
// as doors: the hour from its end on is left out, and so is a step from as much as half its size above the mean of the day
// before, which only brings the room back. (Common practice, no source.)
const (
	doorWindowMS, doorWindowMostMS = 20 * minuteMS, 30 * minuteMS
	doorTempK, doorDewK            = 1, 1.5
	doorUnusual, doorDewUnusual    = 3, 2
	doorPauseMS                    = 30 * minuteMS
)

// A contact tells whether a door is open; whichever way it is wired, a barn's door stands closed for most of the winter.
// Openings shorter than five minutes are passed over, as the room's air hardly shows them. (Common practice, no source.)
const (
	doorPlace     = "door"
	doorLeastMS   = 5 * minuteMS
	doorRecordsMS = series.HourMS // an opening seen in the air so near a recorded one is the same
)

// recordedDoors are the openings that contacts on doors recorded.
func recordedDoors(j judgement) []series.Span {
	var open []series.Span
	for _, l := range j.Loggers {
		if l.Place != doorPlace {
			continue
		}
		segs := clip(held(l.State), stretches{j.beesTime})
		one := spansOf(segs)
		if other := series.Subtract(known(segs), one); series.LengthMS(other) < series.LengthMS(one) {
			one = other
		}
		open = append(open, one...)
	}
	joined := joinedSpans(series.Union(open), doorPauseMS)
	return slices.DeleteFunc(joined, func(s series.Span) bool { return s.To-s.From < doorLeastMS })
}

// doorsOpened are the door openings recorded, seen in the air, or noted.
func doorsOpened(j judgement, cuts []Event) []Event {
	recorded := recordedDoors(j)
	var seen []Event
	for _, s := range recorded {
		e := openedOver(j, s)
		e.Kind, e.Evidence = doorsOpen, Recorded
		seen = append(seen, e)
	}
	temps, dews := [][]sharpStep{}, [][]sharpStep{}
	outdoor, outdoorDew := j.weather(temperatureOf), j.weather(func(l Logger) series.Curve { return l.dewC })
	steps := make([][2][]sharpStep, len(j.room.loggers))
	j.spread(len(steps), func(i int) {
		l := j.room.loggers[i]
		if window := doorWindow(l.TempC); window > 0 {
			steps[i][0] = sharpSteps(l.TempC, j.beesTime, window, doorTempK, doorUnusual, outdoor)
			steps[i][1] = sharpSteps(l.dewC, j.beesTime, window, doorDewK, doorDewUnusual, outdoorDew)
		}
	})
	for i, l := range j.room.loggers {
		if doorWindow(l.TempC) > 0 {
			temps, dews = append(temps, steps[i][0]), append(dews, steps[i][1])
		}
	}
	need := [][][]sharpStep{temps}
	if len(temps) == 1 {
		need = [][][]sharpStep{temps, dews}
	}
	for _, s := range joinedSpans(series.Union(spansOfSteps(temps)), doorPauseMS) {
		if len(series.Intersect(recorded, []series.Span{{From: s.From - doorRecordsMS, To: s.To + doorRecordsMS}})) > 0 {
			continue
		}
		if _, step := largest(temps, s); followsACut(s, cuts) || bringsBack(j.room.mean.TempC, s, step) {
			continue
		}
		if e, ok := opening(s, temps, dews, need); ok {
			seen = append(seen, e)
		}
	}
	return withNotes(seen, j, doorsOpen, func(s series.Span) Event { return openedOver(j, s) })
}

// openedOver is an opening over a stretch that is known by other things than the air: what the air was before, and how far it
// fell.
func openedOver(j judgement, s series.Span) Event {
	e := Event{Span: s}
	e.air(j, "before", dayBefore(s.From))
	e.add("lowest_c", lowest(j.room.mean.TempC, s))
	return e
}

// followsACut says whether a stretch begins about when a power cut ends.
func followsACut(s series.Span, cuts []Event) bool {
	return slices.ContainsFunc(cuts, func(c Event) bool {
		return s.From >= c.Span.To-doorWindowMostMS && s.From <= c.Span.To+series.HourMS
	})
}

// bringsBack says whether the room stood by half a step and more above, or below, its mean of the day before as the step began.
func bringsBack(room series.Curve, s series.Span, step float64) bool {
	usual := meanOver(room, dayBefore(s.From))
	before := room.Bin(series.Span{From: s.From, To: s.From + doorWindowMS})
	if !usual.OK || before.KnownMS == 0 {
		return false
	}
	if step < 0 {
		return before.Max-usual.Mid >= -step/2
	}
	return usual.Mid-before.Min >= step/2
}

// doorWindow is the window in which a logger would show an open door; 0 where it samples too seldom.
func doorWindow(c series.Curve) int64 {
	every := c.Interval()
	if every == 0 || 2*every > doorWindowMostMS {
		return 0
	}
	return max(doorWindowMS, 2*every)
}

// sharpStep is a change within a window that ends at an instant.
type sharpStep struct {
	series.Span
	change float64
}

// sharpSteps are the unusual changes of a curve within a window, towards another curve.
func sharpSteps(c series.Curve, s series.Span, windowMS int64, leastK, unusual float64, towards series.Curve) []sharpStep {
	in := c.Slice(s)
	change, sharp := in.Lagged(windowMS), false
	for i, before := range change {
		change[i] = in.Val[i] - before
		sharp = sharp || math.Abs(change[i]) >= leastK
	}
	if !sharp {
		return nil // as in nearly every room: what is usual need not be known
	}
	limit := max(leastK, unusual*series.Quantile(0.99, sizesOf(change)))
	var out []sharpStep
	for i, at := range in.Readings.At {
		p := sharpStep{series.Span{From: at - windowMS, To: at}, change[i]}
		if math.Abs(p.change) >= limit && goesTowards(p, in, towards) {
			out = append(out, p)
		}
	}
	return out
}

// sizesOf are the sizes of changes, without those that are not known.
func sizesOf(changes []float64) []float64 {
	sizes := make([]float64, 0, len(changes))
	for _, change := range changes {
		if !math.IsNaN(change) {
			sizes = append(sizes, math.Abs(change))
		}
	}
	return sizes
}

// goesTowards says whether a step goes towards another curve's value, which has not itself gone as far that way since a
// window before it: the fans bring in a front as well as an open door does. Where the other is unknown it must go down.
func goesTowards(p sharpStep, c, other series.Curve) bool {
	out, known := other.At(p.From)
	from, _ := c.At(p.From)
	if !known {
		return p.change < 0
	}
	before, knownBefore := other.At(2*p.From - p.To)
	after, knownAfter := other.At(p.To)
	if moved := after - before; knownBefore && knownAfter && moved*p.change > 0 && math.Abs(moved) >= math.Abs(p.change) {
		return false
	}
	return p.change*(out-from) > 0
}

func spansOfSteps(loggers [][]sharpStep) (out []series.Span) {
	for _, steps := range loggers {
		for _, p := range steps {
			out = append(out, p.Span)
		}
	}
	return out
}

// opening is a door opening over a stretch of sharp steps, where two of the needed traces show it.
func opening(s series.Span, temps, dews [][]sharpStep, need [][][]sharpStep) (Event, bool) {
	shown := 0
	for _, traces := range need {
		n, _ := largest(traces, s)
		shown += n
	}
	if shown < 2 {
		return Event{}, false
	}
	e := Event{Kind: doorsOpen, Span: s, Evidence: WorkedOut, MayBe: len(temps) == 1}
	n, changeK := largest(temps, s)
	e.add("loggers", count(n, Recorded))
	e.add("step_k", exactly(changeK, Recorded))
	if n, dewK := largest(dews, s); n > 0 {
		e.add("dew_point_step_k", exactly(dewK, Recorded))
	}
	return e, true
}

// largest is how many traces show a step within a stretch, and the largest of their steps.
func largest(traces [][]sharpStep, s series.Span) (n int, change float64) {
	for _, steps := range traces {
		shows := false
		for _, p := range steps {
			if p.From < s.To && s.From < p.To {
				shows = true
				if math.Abs(p.change) > math.Abs(change) {
					change = p.change
				}
			}
		}
		if shows {
			n++
		}
	}
	return n, change
}

// lowest is the lowest value of a curve over a stretch, or at its instant.
func lowest(c series.Curve, s series.Span) Figure {
	if v, known := c.At(s.From); known && s.To <= s.From {
		return exactly(v, Recorded)
	}
	if b := c.Bin(s); b.KnownMS > 0 {
		return exactly(b.Min, Recorded)
	}
	return unknown("too_little_known")
}
