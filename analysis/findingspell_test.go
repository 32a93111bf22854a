package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// A cause of two warm spells of the room shows the longer one, counts the hours of both in which it held, nine of ten, and
// where it is about nothing of its own is about the room. One that went with less than half of the hours is no finding,
// unless it is a failure; those of another place count for nothing.
func TestSpellsOfOneCauseAreOneFinding(t *testing.T) {
	spell := func(from, hours float64, place, cause, about string) Spell {
		return Spell{Kind: "warm", Place: place, Span: span(from, from+hours), Hours: hours, WentWith: []Cause{{Code: cause, About: about, Hours: 0.9 * hours}}}
	}
	var j judgement
	j.room.place = "room"
	r := Review{Spells: []Spell{
		spell(0, 30, "room", OutdoorWarm, ""), spell(40, 50, "room", OutdoorWarm, ""), spell(100, 14, "room", HeatOn, "floor"),
		spell(200, 15, "room", NotRun, "Stage 3"), spell(300, 400, "loft", HeatOn, "floor"),
	}}
	all := spellFindings(j, &r)
	warm := findingOf(t, all, "warm_with_"+OutdoorWarm)
	if warm.About != "room" || warm.Look != span(40, 90) || warm.Figure("hours").Mid != 109 || warm.Figure("hours_with").Mid != 72 || warm.Figure("longest_hours").Mid != 50 {
		t.Errorf("%+v", warm)
	}
	if f := findingOf(t, all, "warm_with_"+NotRun); f.About != "Stage 3" || len(all) != 2 {
		t.Errorf("%+v", all)
	}
}

// What a wall's wet hours went with is told with the wall's name; a door's are not, nor is what a stage did, which shows in the
// room's air.
func TestWhatAWetWallWentWith(t *testing.T) {
	wet := func(from float64, kind, place, cause, about string) Spell {
		return Spell{Kind: kind, Place: place, Span: span(from, from+20), Hours: 20, WentWith: []Cause{{Code: cause, About: about, Hours: 20}}}
	}
	r := Review{Surfaces: []SurfaceRow{{Name: "north wall", Kind: "wall"}, {Name: "door", Kind: "metal"}}, Spells: []Spell{
		wet(0, "dew", "north wall", RoomDamp, ""), wet(50, "frost", "north wall", OutdoorCold, ""),
		wet(100, "dew", "door", RoomDamp, ""), wet(150, "dew", "north wall", AlwaysOnOff, "Stage 1"),
	}}
	all := spellFindings(judgement{}, &r)
	damp, cold := findingOf(t, all, "dew_with_"+RoomDamp), findingOf(t, all, "frost_with_"+OutdoorCold)
	if len(all) != 2 || damp.About != "north wall" || damp.Figure("hours").Mid != 40 || damp.Figure("hours_with").Mid != 20 || cold.About != "north wall" {
		t.Errorf("%+v", all)
	}
}

// Of power cuts the one that is sure comes before one that may be, whatever the climb; of two alike the greater climb. Those
// that may be are not counted among those that were.
func TestTheWorstPowerCut(t *testing.T) {
	cut := func(from, climbK float64, mayBe bool) Event {
		return Event{Kind: powerCut, Span: span(from, from+1), MayBe: mayBe, Figures: []NamedFigure{{"climb_k", exactly(climbK, WorkedOut)}}}
	}
	for _, c := range []struct {
		events []Event
		look   series.Span
		code   string
		cuts   float64
	}{
		{[]Event{cut(0, 5, true), cut(10, 1, false)}, span(10, 11), "power_cut", 1},
		{[]Event{cut(0, 1, false), cut(10, 5, true)}, span(0, 1), "power_cut", 1},
		{[]Event{cut(0, 1, false), cut(10, 5, false), cut(20, 3, false)}, span(10, 11), "power_cut", 3},
		{[]Event{cut(0, 1, true), cut(10, 5, true)}, span(10, 11), "power_cut_may_be", 2},
	} {
		f := findingOf(t, eventFindings(judgement{}, &Review{Events: c.events}), c.code)
		if f.Look != c.look || f.Figure("cuts").Mid != c.cuts {
			t.Errorf("%+v, want the one of %v", f, c.look)
		}
	}
}

// Hours beside others: from two hours later on, and unknown where the first has none.
func TestHoursAlongside(t *testing.T) {
	h := hourly{from: 0, val: []float64{1, 2, 3, 4}}
	got := h.alongside(hourly{from: 2 * series.HourMS, val: make([]float64, 3)})
	if len(got.val) != 3 || got.val[0] != 3 || got.val[1] != 4 || !math.IsNaN(got.val[2]) {
		t.Errorf("%v, want 3, 4 and nothing", got.val)
	}
	if none := (hourly{}).alongside(h); len(none.val) != 0 {
		t.Errorf("nothing beside four hours: %v", none.val)
	}
}

// What did more harm comes first: 500 h at 8 K too cold before 100 h at half a degree too warm; dry air that heat made before
// a drier stretch that was the weather's, at which there is nothing to turn; thirty hours of warmth that the fans could not
// carry off are told beside three hundred that the weather explains; a fan that stood
// comes before the warmest of weather, and forty hours a little too warm behind four hundred too cold. Heat that dried the air for half the winter comes before five hundred
// hours of weather 5 K too warm, and a thousand hours of frost before as many of dry air. (The order follows hours times how far, common
// practice, no source.)
func TestFindingsComeByTheirHarm(t *testing.T) {
	spell := func(kind string, from, hours, farK float64, cause, about string) Spell {
		return Spell{Kind: kind, Place: "room", Span: span(from, from+hours), Hours: hours, DegreeHours: farK * hours, WentWith: []Cause{{Code: cause, About: about, Hours: hours}}}
	}
	var j judgement
	j.room.place = "room"
	for _, row := range []struct{ first, second Spell }{
		{spell("cold", 0, 500, 8, BigStages, ""), spell("warm", 600, 100, 0.5, OutdoorWarm, "")},
		{spell("warm", 600, 100, 0.5, OutdoorWarm, ""), spell("cold", 0, 200, 0.5, BigStages, "")},
		{spell("dry", 0, 110, 5, HeatOn, "floor"), spell("dry", 300, 110, 5, OutdoorDry, "")},
		{spell("warm", 600, 300, 1, OutdoorWarm, ""), spell("warm", 0, 30, 1, FansAtLimit, "")},
		{spell("warm", 0, 130, 3, NotRun, "Stage 3"), spell("warm", 600, 1500, 5, OutdoorWarm, "")},
		{spell("dry", 0, 2000, 5, HeatOn, "heater"), spell("warm", 2100, 500, 5, OutdoorWarm, "")},
		{spell("cold", 0, 1000, 2.8, BigStages, ""), spell("dry", 1100, 1000, 5, BigStages, "")},
		{spell("cold", 0, 400, 2, OutdoorCold, ""), spell("warm", 600, 40, 0.5, OutdoorWarm, "")},
	} {
		a := findingOf(t, spellFindings(j, &Review{Spells: []Spell{row.first, row.second}}), row.first.Kind+"_with_"+row.first.WentWith[0].Code)
		b := findingOf(t, spellFindings(j, &Review{Spells: []Spell{row.first, row.second}}), row.second.Kind+"_with_"+row.second.WentWith[0].Code)
		if a.Weight <= b.Weight {
			t.Errorf("%s weighs %v and %s %v", a.Code, a.Weight, b.Code, b.Weight)
		}
	}
}

// A cut in which the room reached the alarm line weighs more than one with a greater climb that stayed below it, and one of
// which the climb is not known is taken for the worse; all that are sure are counted.
func TestAPowerCutWeighsByWhereItLed(t *testing.T) {
	cut := func(from, climbK, peakC float64, alarm Figure) Event {
		return Event{Kind: powerCut, Span: span(from, from+1), Figures: []NamedFigure{{"climb_k", exactly(climbK, Recorded)}, {"peak_c", exactly(peakC, Recorded)}, {"hours_to_alarm_h", alarm}}}
	}
	reached, stayed := cut(0, 3, 8.5, exactly(0.5, Recorded)), cut(10, 4, 7, exactly(6, WorkedOut))
	f := findingOf(t, eventFindings(judgement{}, &Review{Events: []Event{reached, stayed}}), "power_cut")
	if f.Look != reached.Span || f.Figure("cuts").Mid != 2 {
		t.Errorf("%+v, want the one that reached the line, of 2", f)
	}
	unknown := Event{Kind: powerCut, Span: span(20, 21), Figures: []NamedFigure{{"climb_k", unknown("too_little_known")}}}
	if a, b, c := cutFinding(reached).Weight, cutFinding(stayed).Weight, cutFinding(unknown).Weight; a <= b || c != a {
		t.Errorf("weights %v, %v and %v", a, b, c)
	}
}

// Sixty hours of cold of which no cause is known are a finding, forty are none; nor are those of a kind of which a cause is
// told. Fans at their limit for 14 of a spell's 100 h, which went with the weather, are told with those hours.
func TestWhatNothingExplainsIsAFinding(t *testing.T) {
	var j judgement
	j.room.place = "room"
	warm := Spell{Kind: "warm", Place: "room", Span: span(500, 600), Hours: 100, DegreeHours: 100, WentWith: []Cause{{Code: OutdoorWarm, Hours: 80}}, beside: []Cause{{Code: FansAtLimit, Hours: 14}, {Code: HeatOn, About: "floor", Hours: 14}}}
	all := spellFindings(j, &Review{Spells: []Spell{
		{Kind: "cold", Place: "room", Span: span(0, 20), Hours: 20}, {Kind: "cold", Place: "room", Span: span(50, 90), Hours: 40},
		{Kind: "damp", Place: "room", Span: span(200, 240), Hours: 40}, warm,
	}})
	far := Spell{Kind: "warm", Place: "room", Span: span(0, 3000), Hours: 3000, DegreeHours: 30_000}
	if f := findingOf(t, spellFindings(j, &Review{Spells: []Spell{far}}), "warm_unexplained"); f.Weight >= foughtWeight+30 {
		t.Errorf("weighs %v, more than what is known to be broken", f.Weight)
	}
	held := &Review{Spells: []Spell{far}, Verdict: Verdict{Held: Answer{State: Yes}}}
	if all := spellFindings(j, held); len(all) > 0 {
		t.Errorf("in a room that held: %+v", all)
	}
	if f := findingOf(t, all, "cold_unexplained"); f.Figure("hours").Mid != 60 || f.Look != span(50, 90) {
		t.Errorf("%+v", f)
	}
	if f := findingOf(t, all, "warm_with_"+FansAtLimit); f.Figure("hours_with").Mid != 14 || f.Figure("hours").Mid != 100 {
		t.Errorf("%+v", f)
	}
	hot := warm
	hot.DegreeHours = 700 // how far it was in these 14 h is not told
	if a, b := findingOf(t, all, "warm_with_"+FansAtLimit), findingOf(t, spellFindings(j, &Review{Spells: []Spell{hot}}), "warm_with_"+FansAtLimit); a.Weight != b.Weight {
		t.Errorf("14 h at the limit weigh %v, and %v in a spell that was hotter for the weather", a.Weight, b.Weight)
	}
	if findingOf(t, all, "warm_with_"+OutdoorWarm); len(all) != 3 {
		t.Errorf("%+v", all)
	}
}

// A recorded stage that starts ten times an hour is a finding with its starts; one that is only worked out to is none.
func TestAStageThatStartsOftenIsAFinding(t *testing.T) {
	row := StageRow{Name: "two", Ran: &Work{Starts: exactly(2400, Recorded)}, Cycling: &Cycling{BusiestHour: 10, Short: true}}
	f := findingOf(t, startFindings(judgement{}, &Review{Stages: []StageRow{row}}), "stage_starts_often")
	if f.About != "two" || f.Figure("starts").Mid != 2400 || f.Figure("busiest_hour_starts").Mid != 10 {
		t.Errorf("%+v", f)
	}
	row.Ran = nil
	if all := startFindings(judgement{}, &Review{Stages: []StageRow{row}}); len(all) != 0 {
		t.Errorf("%+v", all)
	}
}
