package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

func TestSpellsSayWhatWentWithThem(t *testing.T) {
	h := func(hour float64) int64 { return int64(hour * series.HourMS) }
	r := analysis.Review{Stages: []analysis.StageRow{{Name: "Stage 3"}}, Spells: []analysis.Spell{
		{Kind: "warm", Place: "room", Quantity: "air_temperature", Span: series.Span{From: h(0), To: h(75)}, Hours: 75, Peak: 9.04,
			WentWith: []analysis.Cause{{Code: analysis.NotRun, About: "Stage 3", Share: 0.97, Usual: 0.01}}},
		{Kind: "damp", Place: "room", Quantity: "relative_humidity", Span: series.Span{From: h(100), To: h(112)}, Hours: 12, Peak: 88, Cut: true},
		{Kind: "frost", Place: "north wall", Quantity: "surface_margin", Span: series.Span{From: h(200), To: h(237)}, Hours: 37, Peak: -1.5},
	}}
	v := SpellsOf(analysis.Input{Loggers: []analysis.Logger{{Name: "mid", Place: "room", TempC: series.Curve{Readings: series.Readings{At: []int64{0}, Val: []float64{4}}}}}}, r, Units{})
	if want := "Outside the safe bands in the room: 1 warm (75 h), 1 damp (12 h); walls and ceilings: 1 frosted (37 h)."; plain(v.Sentence) != want {
		t.Errorf("%q, want %q", v.Sentence, want)
	}
	for i, want := range []string{"1 January 00:00|Warm|room|75|9.0 °C|Stage 3 stood though called for", "5 January 04:00|Damp|room|12|88 %|none found", "9 January 08:00|Frosted|north wall|37|−1.5 °C|none found"} {
		if got := plain(strings.Join(v.Rows[i].Cells, "|")); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	for i, want := range []string{
		"Warm in the room from 1 January 00:00 to 4 January 03:00, for 75 h. Of it and the three hours before, 97 of 100 hours fell while Stage 3 stood, though it was called for (1 of 100 in the days around).",
		"cut by a gap or by the end of the time that is judged. Nothing recorded was clearly different while it lasted.",
	} {
		if got := plain(v.Rows[i].Says); !strings.Contains(got, want) {
			t.Errorf("%q lacks %q", got, want)
		}
	}
	r.Stages = nil
	row := SpellsOf(analysis.Input{}, r, Units{}).Rows[1]
	if !strings.HasSuffix(strings.Join(row.Cells, "|"), "|can't tell") || !strings.Contains(row.Says, "nothing is known of the air outside, of fans or of heat") {
		t.Errorf("where nothing but the room is known: %+v", row)
	}
	if got := v.Sorted(3, true); got[0].Cells[3] != "75" || got[2].Cells[3] != "12" {
		t.Error("the longest must come first")
	}
	for code := range causeWords {
		if shortCauses[code] == "" {
			t.Errorf("%s has no short words", code)
		}
	}
}

// That nothing was outside the bands is an answer only where something was read.
func TestNoSpellsIsAnAnswer(t *testing.T) {
	read := analysis.Review{Coverage: 1, Traces: analysis.Traces{Room: series.Curve{Readings: series.Readings{At: []int64{0}, Val: []float64{4}}}}}
	for want, r := range map[string]analysis.Review{
		"No spell outside the safe bands was long enough to tell of.":                                       read,
		"Whether it was warm, cold, damp or dry for long can't be told: there is no reading from the room.": {},
	} {
		if v := SpellsOf(analysis.Input{}, r, Units{}); v.Sentence != want || len(v.Rows) != 0 {
			t.Errorf("%+v", v)
		}
	}
	for want, r := range map[string]analysis.Review{"No power cut and no open door was seen or noted. To see light takes a logger that records it.": read,
		"Power cuts, open doors and light can't be told: there is no reading from the room, and nothing was noted.": {}} {
		if got := BeforeNextOf(analysis.Input{}, r, Units{}).Happened; got != want {
			t.Error(got)
		}
	}
}

// Of a winter known for a fifth it is not said that nothing happened without saying so.
func TestSpellsSayHowMuchIsKnown(t *testing.T) {
	in := gappy(t)
	got := plain(SpellsOf(in, analysis.Judge(in), Units{}).Sentence)
	if want := "No spell outside the safe bands was long enough to tell of. Known for 20 of 100 hours."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
