package analysis

import (
	"math"
	"slices"
	"sort"

	"thawbook/analysis/series"
)

// The kinds of events.
const (
	carryIn      = "carry in"
	takeout      = "takeout"
	batchOut     = "batch out"
	doorsOpen    = "doors open"
	powerCut     = "power cut"
	lightSeen    = "light"
	lightLeak    = "light leak"
	nightCooling = "night cooling"
	warmDay      = "warm day"
)

// Event is something that happened in or to the barn. Evidence is recorded where a record shows it, worked_out where it
// is read off the traces, your_setting where the keeper alone says so; MayBe says that the traces fit something else
// too; Noted that the keeper noted it.
type Event struct {
	Kind         string
	Span         series.Span // ms UTC; an event of an instant ends where it begins
	Place        string      // where it was seen; empty for the barn
	Evidence     Evidence
	MayBe, Noted bool
	Figures      []NamedFigure
}

// events lists what happened during the bees' time, and its beginning and end, by start and kind.
func events(j judgement) []Event {
	out := []Event{}
	if j.beesTime.To <= j.beesTime.From {
		return out
	}
	cuts := powerCuts(j)
	for _, found := range [][]Event{carries(j), batches(j), cuts, doorsOpened(j, cuts), lights(j), warmDays(j)} {
		out = append(out, found...)
	}
	sort.SliceStable(out, func(a, b int) bool {
		if out[a].Span.From != out[b].Span.From {
			return out[a].Span.From < out[b].Span.From
		}
		return out[a].Kind < out[b].Kind
	})
	return out
}

// add gives an event one more figure.
func (e *Event) add(name string, f Figure) { e.Figures = append(e.Figures, NamedFigure{name, f}) }

// enoughOfStretch is the known share of a stretch below which no mean of it is given (house rule for a day or hour).
const enoughOfStretch = 0.75

// meanOver is a curve's time-weighted mean over a stretch, known where three quarters of it are.
func meanOver(c series.Curve, s series.Span) Figure {
	b := c.Bin(s)
	if s.To <= s.From || float64(b.KnownMS) < enoughOfStretch*float64(s.To-s.From) {
		return unknown("too_little_known")
	}
	return exactly(b.Weighted(), Recorded)
}

// dayBefore and dayAfter are the 24 hours on either side of an instant.
func dayBefore(at int64) series.Span { return series.Span{From: at - dayHours*series.HourMS, To: at} }
func dayAfter(at int64) series.Span  { return series.Span{From: at, To: at + dayHours*series.HourMS} }

// air adds what the room's air was like over a stretch; what names the stretch.
func (e *Event) air(j judgement, what string, s series.Span) {
	e.add("temperature_"+what+"_c", meanOver(j.room.mean.TempC, s))
	hum := meanOver(j.room.mean.RelHum, s)
	hum.Mid, hum.Low, hum.High = 100*hum.Mid, 100*hum.Low, 100*hum.High
	e.add("humidity_"+what+"_percent", hum)
}

// noteSlackMS is how far from what the traces show a note may lie and still mean the same (common practice, no source).
const noteSlackMS = series.HourMS

// withNotes joins events with the keeper's notes of their kind: one that he noted is no "may be", and one that only he
// saw is made by alone.
func withNotes(seen []Event, j judgement, kind string, alone func(series.Span) Event) []Event {
	for _, n := range notesOf(j.Notes, kind) {
		s := series.Span{From: n.At, To: n.At}
		if n.Until != nil {
			s.To = *n.Until
		}
		if s.From > j.beesTime.To || s.To < j.beesTime.From {
			continue
		}
		i := slices.IndexFunc(seen, func(e Event) bool {
			return e.Span.From <= s.To+noteSlackMS && s.From-noteSlackMS <= e.Span.To
		})
		if i >= 0 {
			seen[i].Noted, seen[i].MayBe = true, false
			continue
		}
		e := alone(s)
		e.Kind, e.Evidence, e.Noted = kind, YourSetting, true
		seen = append(seen, e)
	}
	return seen
}

// joinedSpans joins spans that rise and lie no further apart than a pause.
func joinedSpans(spans []series.Span, pauseMS int64) (out []series.Span) {
	for _, s := range spans {
		if n := len(out); n > 0 && s.From-out[n-1].To <= pauseMS {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}

// count is a whole number as a figure.
func count[T int | float64](n T, e Evidence) Figure { return exactly(math.Round(float64(n)), e) }
