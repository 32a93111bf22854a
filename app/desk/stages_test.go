package desk

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Stage 4 comes on at 8 °C, 0.8 h after 20 December 23:00, and goes off at 7 °C, 0.4 h after 23 December 12:00
// (straight lines between hourly readings), so it is called for 0.2 h, 24 h, 24 h and 12.4 h on four days.
func TestHoursPerDay(t *testing.T) {
	in := rich(t)
	in.Loggers[0].TempErrK = 0 // no offset to allow for
	in.Loggers[0].TempStepK = 0
	v := StagesOf(in, analysis.Judge(in), Units{})
	if len(v.Days) != 4 {
		t.Fatalf("%d stages", len(v.Days))
	}
	last := v.Days[3]
	for day, want := range map[int]float64{48: 0, 49: 0.2, 50: 24, 51: 24, 52: 12.4, 53: 0} {
		if got := last.Hours[day]; math.Abs(got-want) > 1e-6 {
			t.Errorf("day %d: %v h, want %v", day, got, want)
		}
	}
	for day, h := range v.Days[0].Hours {
		if h != 24 {
			t.Errorf("the always-on stage had %v h on day %d", h, day)
		}
	}
	if got := plain(ReadDay(v.Days, 52)); !strings.HasPrefix(got, "23 December 2024: Stage 1 called for 24 h,") || !strings.HasSuffix(got, "Stage 4 called for 12 h") {
		t.Errorf("%q", got)
	}
	if ReadDay(v.Days, -1) != "" || ReadDay(v.Days, testDays) != "" {
		t.Error("a day that is none was read")
	}
}

func TestMonthsOfTheDays(t *testing.T) {
	in := rich(t)
	months := StagesOf(in, analysis.Judge(in), Units{}).Days[0].Months()
	want := []Tick{{"November", 0}, {"December", 30}, {"January", 61}, {"February", 92}} // calendar: 30, 31, 31 days
	if len(months) != len(want) {
		t.Fatalf("%v", months)
	}
	for i := range want {
		if months[i] != want[i] {
			t.Errorf("%v, want %v", months[i], want[i])
		}
	}
}

func TestUnknownDaysAreNotOff(t *testing.T) {
	in := gappy(t)
	days := StagesOf(in, analysis.Judge(in), Units{}).Days
	if !math.IsNaN(days[3].Hours[60]) {
		t.Errorf("a day without readings has %v h", days[3].Hours[60])
	}
	if got := ReadDay(days, 60); !strings.Contains(got, "Stage 4 called for unknown") {
		t.Errorf("%q", got)
	}
}

func TestStageTable(t *testing.T) {
	in := recorded(t)
	v := StagesOf(in, analysis.Judge(in), Units{})
	if len(v.Table.Rows) != 4 {
		t.Fatalf("%d rows", len(v.Table.Rows))
	}
	for _, row := range v.Table.Rows {
		if len(row) != len(v.Table.Columns) {
			t.Errorf("%q does not fit %d columns", row, len(v.Table.Columns))
		}
	}
	if row := v.Table.Rows[0]; row[2] != "always on" || row[5] != "no record" {
		t.Errorf("always on: %q", row)
	}
	if row := v.Table.Rows[2]; row[2] != "6.5 / 5.5" || row[5] != "0" {
		t.Errorf("recorded: %q", row)
	}
	f := StagesOf(in, analysis.Judge(in), Units{Temperature: Fahrenheit})
	if row := f.Table.Rows[2]; row[2] != "43.7 / 41.9" { // × 9/5 + 32
		t.Errorf("in °F: %q", row)
	}
}

// Where every larger stage has a record the first line goes by what ran: here Stage 3 all the hot time (61 hourly
// states, each held for an hour) and Stage 4 never.
func TestTheFirstLineSaysRanOnlyOfRecords(t *testing.T) {
	in := rich(t)
	for name, whileHot := range map[string]float64{"Stage 3": 1, "Stage 4": 0} {
		in.Loggers = append(in.Loggers, analysis.Logger{Name: name + " fan", RecordsStage: name, State: hourly(t, stepped(0, whileHot))})
	}
	v := StagesOf(in, analysis.Judge(in), Units{})
	if !strings.Contains(plain(v.Sentence), "the larger ones were running for 61 h, mostly in December") || !strings.Contains(v.Sure, "recorded") {
		t.Errorf("%q, %q", v.Sentence, v.Sure)
	}
	half := recorded(t)
	if v := StagesOf(half, analysis.Judge(half), Units{}); strings.Contains(v.Sentence, "running") {
		t.Errorf("Stage 4 has no record, yet: %q", v.Sentence)
	}
}

func TestStagesSayWhatTheyLack(t *testing.T) {
	in := thin(t)
	v := StagesOf(in, analysis.Judge(in), Units{})
	if v.Lacks == "" || len(v.Table.Rows) > 0 || !strings.Contains(v.Sentence, "can't be told") {
		t.Errorf("%+v", v)
	}
}

func TestATooWideRangeIsNoNumber(t *testing.T) {
	wide := &analysis.Work{Hours: analysis.Figure{Mid: 100, Low: 10, High: 300, Unknown: "range_too_wide"}}
	if mid, could := calledCells(wide); mid != "too uncertain" || could != "10–300" {
		t.Errorf("%q, %q", mid, could)
	}
	for _, w := range []*analysis.Work{nil, {Hours: analysis.Figure{Mid: 5, Unknown: "nothing_known"}}} {
		if mid, could := calledCells(w); mid != noValue || could != noValue {
			t.Errorf("%v: %q, %q", w, mid, could)
		}
	}
}

// The notes follow from the review alone: 140 h of sun, 71 of them against a stage; a top stage that stopped
// answering on 14 January; a ladder whose top step takes 5 to 8 min; 812 kWh at 0.15 are 121.80.
func TestStageNotes(t *testing.T) {
	b := newBarn(rich(t), analysis.Review{}, Units{})
	at := time.Date(2025, 1, 14, 6, 0, 0, 0, b.in.Zone).UnixMilli()
	sure := func(v float64) analysis.Figure { return analysis.Figure{Mid: v, Low: v, High: v, OK: true} }
	recorded := func(v float64) analysis.Figure {
		return analysis.Figure{Mid: v, Low: v, High: v, OK: true, Evidence: analysis.Recorded}
	}
	b.r.Heats = []analysis.HeatRow{{Source: analysis.HeatSource{Name: "sun"}, Ran: &analysis.Work{Hours: sure(140)}, Overlap: analysis.Figure{Mid: 71, Low: 68, High: 75, OK: true}}}
	b.r.Stages = []analysis.StageRow{{
		Name: "top", Called: &analysis.Work{KnownMS: 160 * 3600 * 1000, Hours: sure(160)}, Agreement: &analysis.Agreement{Parted: &at, Powered: &at, UnansweredMS: 148 * 3600 * 1000},
		ChangeMinutes: analysis.Figure{Mid: 6, Low: 5, High: 8, OK: true},
	}}
	b.r.Power = analysis.Power{KWh: recorded(812), Cost: sure(121.8), Currency: "CAD"}
	want := []string{
		"Sun gave heat for 140 h; for 71 h of it (68–75 h) a bigger fan blew the warmth out again.",
		"Top was called for and did not run, first on 14 January 2025, 148 h in all.",
		"With every stage on, one change takes 5–8 min; about five minutes is usual in the trade.",
		"The fans took about 812 kWh, 122 CAD.",
	}
	got := b.stageNotes()
	if len(got) != len(want) {
		t.Fatalf("%q", got)
	}
	outage := analysis.StageRow{Name: "two", Agreement: &analysis.Agreement{Parted: &at, UnansweredMS: 6.5 * 3600 * 1000, CutMS: 6.5 * 3600 * 1000}}
	if got := strings.Join(b.partingNote(outage), " "); plain(got) != "Two was called for and stood for 6.5 h while the power was out." {
		t.Errorf("%q", got)
	}
	for i := range want {
		if plain(got[i]) != want[i] {
			t.Errorf("%q, want %q", plain(got[i]), want[i])
		}
	}
}

// Of a stage whose call is known for a fifth of the winter no hours are named, and it is said why: the last reading is that of hour 479 of 2400.
func TestAStageHardlyKnownHasNoHours(t *testing.T) {
	in := gappy(t)
	v := StagesOf(in, analysis.Judge(in), Units{})
	for _, row := range v.Table.Rows {
		if row[0] == "Stage 3" && (row[3] != noValue || row[6] != noValue) {
			t.Errorf("%q", row)
		}
	}
	notes := plain(strings.Join(v.Notes, "\n"))
	if want := "When Stage 3 was called for is known for 479 h of 2400 h, too little for a number."; !strings.Contains(notes, want) {
		t.Errorf("%q lacks %q", notes, want)
	}
}

// Stage 4 is on from 8 °C, 0.8 h up a line from 4 to 9 °C in an hour, to 7 °C, 0.4 h down: 0.2 + 60 + 0.4 h, all of it in deep
// winter. It is the top stage wherever it stands in the list.
func TestTheTopStagesHoursByPhase(t *testing.T) {
	in := rich(t)
	in.Stages[1], in.Stages[3] = in.Stages[3], in.Stages[1]
	r := analysis.Judge(in)
	if notes := plain(strings.Join(StagesOf(in, r, Units{}).Notes, "\n")); !strings.Contains(notes, "Stage 4, the top stage, was called for 61 h in deep winter.") {
		t.Error(notes)
	}
	if got := newBarn(in, r, Units{}).thermostatStages(); !slices.Equal(got, []string{"Stage 2", "Stage 3", "Stage 4"}) {
		t.Errorf("%q, want the smallest first", got)
	}
	in = even(t)
	if notes := plain(strings.Join(StagesOf(in, analysis.Judge(in), Units{}).Notes, "\n")); !strings.Contains(notes, "Stage 4, the top stage, was never called for as much as an hour.") {
		t.Error(notes)
	}
}

// Every stage whose hours are not named says why and, where something would, what would settle it: stage 2 was nearly always
// within the logger's error of its setting, of stage 3's setting since 14 January no reading is known, stage 1 is always on.
func TestAStageWithoutHoursSaysWhy(t *testing.T) {
	b := newBarn(rich(t), analysis.Review{}, Units{})
	from := time.Date(2025, 1, 14, 6, 0, 0, 0, b.in.Zone).UnixMilli()
	day := int64(24 * 3600 * 1000)
	wide := analysis.Work{KnownMS: 9 * day, Hours: analysis.Figure{Mid: 100, Low: 10, High: 300, Unknown: "range_too_wide"}}
	under := func(alwaysOn bool) analysis.Setting {
		return analysis.Setting{Span: series.Span{From: from, To: from + 10*day}, AlwaysOn: alwaysOn, OnC: 5, OffC: 4.5}
	}
	b.r.Stages = []analysis.StageRow{{Name: "Stage 1", Setting: under(true)}, {Name: "Stage 2", Setting: under(false), Called: &wide}, {Name: "Stage 3", Setting: under(false)}}
	notes := plain(strings.Join(b.stageNotes(), "\n"))
	for _, want := range []string{
		"How long Stage 2 would have been called for can't be named: too often the room lay closer to the setting than the logger tells apart. A logger hung beside the thermostat's own sensor, or a record of when the fan ran, would settle it.",
		"When Stage 3 was called for from 14 January 2025 can't be told: no logger read the room under that setting.",
	} {
		if !strings.Contains(notes, want) {
			t.Errorf("%q lacks %q", notes, want)
		}
	}
	if strings.Contains(notes, "Stage 1") {
		t.Errorf("of the always-on stage: %q", notes)
	}
	b.r.Stages[1].Ran = &analysis.Work{KnownMS: 9 * day, Hours: figureOf(50, 50, 50)}
	if notes := plain(strings.Join(b.stageNotes(), "\n")); !strings.Contains(notes, "A logger hung beside the thermostat's own sensor would settle it.") {
		t.Errorf("with a record: %q", notes)
	}
}
