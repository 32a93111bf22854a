package desk

import (
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// mostOpenings are as many openings by a door's contact as are told one by one; of more their number and the longest are.
const mostOpenings = 8

// happened are the events a keeper would ask about, with one sentence over them.
func (b barn) happened() (string, []EventView) {
	out := []EventView{}
	opened, n := []analysis.Event{}, 0
	for _, e := range b.r.Events {
		if eventWords[e.Kind] == nil {
			continue
		}
		n++
		if recordedOpening(e) {
			opened = append(opened, e)
		}
	}
	if len(opened) > mostOpenings {
		out = append(out, b.openings(opened))
	}
	for _, e := range b.r.Events {
		if eventWords[e.Kind] != nil && (!recordedOpening(e) || len(opened) <= mostOpenings) {
			out = append(out, b.eventView(e))
		}
	}
	switch {
	case n == 0 && b.unread():
		return "Power cuts, open doors and light can't be told: there is no reading from the room, and nothing was noted.", out
	case n == 0:
		return b.nothingSeen(), out
	}
	return plural(number(float64(n), 0), "event was seen or noted.", "events were seen or noted."), out
}

// nothingSeen says what did not happen, as far as it would show.
func (b barn) nothingSeen() string {
	if slices.ContainsFunc(b.in.Loggers, func(l analysis.Logger) bool { return l.Light.Len() > 0 }) {
		return "No power cut, no open door and no light was seen or noted."
	}
	return "No power cut and no open door was seen or noted. To see light takes a logger that records it."
}

// eventView is an event that is told, in words.
func (b barn) eventView(e analysis.Event) EventView {
	v := EventView{Text: eventWords[e.Kind](b, e), Sure: restsOn(e.Evidence), Look: e.Span, Mark: MarkNone}
	if e.MayBe {
		v.Sure = "May be; the loggers fit something else too."
	}
	if e.Kind == "power cut" {
		v.Mark = MarkWatch
	}
	return v
}

// recordedOpening says whether an event is an opening that a door's contact recorded.
func recordedOpening(e analysis.Event) bool {
	return e.Kind == "doors open" && e.Evidence == analysis.Recorded && !e.Noted
}

// openings are many recorded openings in one: how many, how long in all, and the longest.
func (b barn) openings(opened []analysis.Event) EventView {
	var allMS int64
	longest := opened[0]
	for _, e := range opened {
		allMS += e.Span.To - e.Span.From
		if e.Span.To-e.Span.From > longest.Span.To-longest.Span.From {
			longest = e
		}
	}
	return EventView{
		Text: "Doors stood open " + number(float64(len(opened)), 0) + " times, " + minutesWords(float64(allMS)/60_000) + " in all; longest on " + b.u.Clock(longest.Span.From) +
			", for " + forLong(longest.Span) + b.figureWords(longest, "lowest_c", ", when the room fell to ", b.u.Temp) + ".",
		Sure: restsOn(analysis.Recorded), Look: longest.Span, Mark: MarkNone,
	}
}

// forLong is how long a stretch was, in hours and minutes.
func forLong(s series.Span) string { return minutesWords(float64(s.To-s.From) / 60_000) }

// eventWords are the events that are told, in words; warm days and the moves of hives have their places elsewhere.
var eventWords = map[string]func(barn, analysis.Event) string{
	"power cut": barn.cutWords,
	"doors open": func(b barn, e analysis.Event) string {
		about := "about " + b.u.Clock(e.Span.From)
		if recordedOpening(e) {
			about = "on " + b.u.Clock(e.Span.From) + " for " + forLong(e.Span)
		}
		return "Doors stood open " + about + b.figureWords(e, "lowest_c", "; the room fell to ", b.u.Temp) + "."
	},
	"light": func(b barn, e analysis.Event) string {
		return "Light in the room on " + b.u.Clock(e.Span.From) + b.figureWords(e, "minutes", " for ", func(v float64) string { return withUnit(number(v, 0), "min") }) + "."
	},
	"light leak": func(b barn, e analysis.Event) string {
		return "Light came in at the same time of day again and again" + b.figureWords(e, "days", ", on ", func(v float64) string { return Days(v * 24 * series.HourMS) }) + ": look at the light traps."
	},
	"batch out": func(b barn, e analysis.Event) string {
		return "A batch of hives was out from " + b.u.Clock(e.Span.From) + " to " + b.u.Clock(e.Span.To) + "."
	},
}

// figureWords is a figure of an event behind its words; nothing where it is not known.
func (b barn) figureWords(e analysis.Event, name, before string, show func(float64) string) string {
	if f := eventFigure(e, name); f.OK {
		return before + show(f.Mid)
	}
	return ""
}

func eventFigure(e analysis.Event, name string) analysis.Figure {
	for _, f := range e.Figures {
		if f.Name == name {
			return f.Figure
		}
	}
	return analysis.Figure{}
}

// cutWords lead with the climb as it was measured: the first hour and the later hours apart, then the time to the
// alarm line.
func (b barn) cutWords(e analysis.Event) string {
	text := "The fans stood still from " + b.u.Clock(e.Span.From) + " for " + Hours(float64(e.Span.To-e.Span.From)/series.HourMS) +
		b.figureWords(e, "climb_k", "; the room climbed ", b.u.Diff)
	if first := eventFigure(e, "first_hour_k_per_h"); first.OK {
		text += ", " + b.diffRange(first) + " in the first hour"
	}
	text += b.figureWords(e, "later_k_per_h", " and ", b.smallDiff)
	if eventFigure(e, "later_k_per_h").OK {
		text += " an hour after that"
	}
	if f := eventFigure(e, "hours_to_alarm_h"); f.OK {
		text += "; " + HoursRange(f.Low, f.High) + " to " + b.u.LimitWithUnit(b.alarmC())
	}
	return text + "."
}
