package desk

import (
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// eventsTitle is over the Timeline's lane of what happened.
const eventsTitle = "What happened"

// eventKinds are the events that have a row on the Timeline, in this order.
var eventKinds = []string{"power cut", "doors open", "light", "batch out"}

// eventLane shows when something happened: above what a record or the keeper says, below what the readings show; what
// may be something else is hatched. Each kind has a row, or all have one where the fans and the heat take the room.
func (b barn) eventLane() (Lane, bool) {
	l := Lane{Title: eventsTitle, Help: HelpLine("timeline_events"), Rare: true}
	for _, kind := range eventKinds {
		if row := b.eventRow(kind, kind); row.Ran != nil || row.Called != nil {
			l.Rows = append(l.Rows, row)
		}
	}
	if crowded := len(b.in.Stages)+len(b.r.Heats) > 0; crowded && len(l.Rows) > 1 {
		l.Rows = []StageBar{b.eventRow(strings.ToLower(eventsTitle), eventKinds...)}
	}
	return l, len(l.Rows) > 0
}

// eventRow shows when events of some kinds were.
func (b barn) eventRow(name string, kinds ...string) StageBar {
	row := StageBar{Name: name}
	for _, e := range b.r.Events {
		if !slices.Contains(kinds, e.Kind) {
			continue
		}
		track := &row.Called
		if e.Evidence == analysis.Recorded || e.Noted {
			track = &row.Ran
		}
		*track = (*track).withEvent(e)
	}
	return row
}

// withEvent adds when an event was.
func (s *Stretches) withEvent(e analysis.Event) *Stretches {
	if s == nil {
		s = &Stretches{}
	}
	when := series.Span{From: e.Span.From, To: max(e.Span.To, e.Span.From+1)}
	if e.MayBe {
		return &Stretches{On: s.On, Unsure: series.Union(append(s.Unsure, when))}
	}
	return &Stretches{On: series.Union(append(s.On, when)), Unsure: s.Unsure}
}

// timelineEvents are the events that have a row, in words.
func (b barn) timelineEvents() (out []EventView) {
	for _, e := range b.r.Events {
		if slices.Contains(eventKinds, e.Kind) {
			out = append(out, b.eventView(e))
		}
	}
	return out
}

// HappenedNear is what happened at an instant and so many ms around it, in words; empty for nothing.
func (t Timeline) HappenedNear(at, around int64) string {
	var parts []string
	for _, e := range t.Events {
		if e.Look.From-around <= at && at <= e.Look.To+around {
			parts = append(parts, e.Text)
		}
	}
	return strings.Join(parts, " ")
}
