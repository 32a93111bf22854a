package desk

import (
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
)

// What happened has a row for each kind: by a record or a note above, as the readings show it below, and what may be
// something else apart; an instant has some length, else it could not be drawn. Days that are warm have no row.
func TestWhatHappenedHasALane(t *testing.T) {
	at := func(from, to int64) Span { return Span{From: from * hourMS, To: to * hourMS} }
	b := newBarn(analysis.Input{}, analysis.Review{Events: []analysis.Event{
		{Kind: "warm day", Span: at(0, 9), Evidence: analysis.WorkedOut},
		{Kind: "doors open", Span: at(10, 11), Evidence: analysis.Recorded},
		{Kind: "power cut", Span: at(20, 26), Evidence: analysis.WorkedOut},
		{Kind: "power cut", Span: at(30, 30), Evidence: analysis.Assumed, Noted: true},
		{Kind: "power cut", Span: at(40, 44), Evidence: analysis.WorkedOut, MayBe: true},
	}}, Units{Zone: time.UTC})
	l, ok := b.eventLane()
	if !ok || !l.Rare || len(l.Rows) != 2 || l.Rows[0].Name != "power cut" || l.Rows[1].Name != "doors open" {
		t.Fatalf("%+v", l)
	}
	cuts, doors := l.Rows[0], l.Rows[1]
	if len(cuts.Ran.On) != 1 || cuts.Ran.On[0].From != 30*hourMS || cuts.Ran.On[0].To <= cuts.Ran.On[0].From {
		t.Errorf("noted: %+v", cuts.Ran)
	}
	if len(cuts.Called.On) != 1 || cuts.Called.On[0] != at(20, 26) || len(cuts.Called.Unsure) != 1 || cuts.Called.Unsure[0] != at(40, 44) {
		t.Errorf("as the readings show it: %+v", cuts.Called)
	}
	if doors.Called != nil || len(doors.Ran.On) != 1 || doors.Ran.On[0] != at(10, 11) {
		t.Errorf("by a record: %+v", doors)
	}
	b.in.Stages = []analysis.Stage{{Name: "Stage 1"}}
	if l, _ := b.eventLane(); len(l.Rows) != 1 || l.Rows[0].Name != "what happened" || len(l.Rows[0].Ran.On) != 2 || len(l.Rows[0].Called.On) != 1 {
		t.Errorf("where the stages take the room all have one row: %+v", l.Rows)
	}
	tl := Timeline{Events: b.timelineEvents(), Units: b.u}
	for hour, want := range map[int64]string{10: "Doors stood open", 12: "", 25: "The fans stood", 5: ""} {
		if got := tl.HappenedNear(hour*hourMS, hourMS/2); (want == "") != (got == "") || !strings.HasPrefix(got, want) {
			t.Errorf("at %d h: %q", hour, got)
		}
	}
	if got := tl.Read(10*hourMS, []Said{{Lane: l.Title, Name: "doors open", Bar: true, Known: true, On: true, Ran: true}}); strings.Contains(got, "ran") {
		t.Errorf("a door does not run: %q", got)
	}
}
