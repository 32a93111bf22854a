package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/winter"
)

func TestHeaderLine(t *testing.T) {
	for _, c := range []struct{ winter, want string }{
		{"rich", "338 hives, in 1 November 2024, out 9 February 2025: 100 days, all known."},
		{"thin", "Record from 1 November 2024 to 9 February 2025: 100 days, all known. When the bees went in and came out is not set down: the whole record is taken (assumed)."},
		{"mostly unknown", "338 hives, in 1 November 2024, out 9 February 2025: 100 days, 80 unknown."},
		{"carried in", "1 hive, in 1 November 2024, record to 9 February 2025: 100 days, all known. When the bees came out is not set down: the record is taken to its end (assumed)."},
		{"humidity alone", "Record from 1 November 2024 to 9 February 2025: 100 days, 100 unknown. When the bees went in and came out is not set down: the whole record is taken (assumed)."},
		{"one reading", "There is a single reading from the room and no dates are set down, so there is no time to judge yet."},
		{"bare", "There is no reading from the room and no dates are set down, so there is no time to judge yet."},
	} {
		in := winters[c.winter](t)
		if got := plain(HeaderOf(in, analysis.Judge(in), Units{}).Line); got != c.want {
			t.Errorf("%s: %q, want %q", c.winter, got, c.want)
		}
	}
}

// Shares and hours by hand: see TestFirstLookSays; the humidity is 60 % throughout.
func TestFourAnswers(t *testing.T) {
	for _, c := range []struct {
		winter string
		want   [4]string // question, word, figure, sentence
		mark   Mark
	}{
		{"rich", [4]string{"Held?", "Mostly", "97 %", "97 of 100 hours between 2 and 6 °C."}, MarkWatch},
		{"rich", [4]string{"Damp?", "No", "0 h", "Air above 85 % for 6 h or longer, or a wet wall or ceiling: never."}, MarkGood},
		{"rich", [4]string{"Dry?", "No", "0 h", "Below 40 % for a day or longer: never."}, MarkGood},
		{"rich", [4]string{"Fans?", "Small ones did", "97 %", "Stage 1 and Stage 2 carried 97 of 100 hours alone."}, MarkGood},
		{"even", [4]string{"Held?", "Yes", "100 %", "100 of 100 hours between 2 and 6 °C."}, MarkGood},
		{"limits by phase", [4]string{"Held?", "Yes", "100 %", "100 of 100 hours inside the limits of the phase."}, MarkGood},
		{"thin", [4]string{"Fans?", "Can't tell", "", "No fan stages are set down."}, MarkUnknown},
		{"mostly unknown", [4]string{"Held?", "Can't tell", "", "Too few hours were recorded."}, MarkUnknown},
		{"no humidity", [4]string{"Damp?", "Can't tell", "", "No logger in the room recorded humidity."}, MarkUnknown},
	} {
		in := winters[c.winter](t)
		found := false
		for _, a := range HeaderOf(in, analysis.Judge(in), Units{}).Answers {
			if a.Question != c.want[0] {
				continue
			}
			found = true
			if got := [4]string{a.Question, a.Word, plain(a.Figure), plain(a.Sentence)}; got != c.want || a.Mark != c.mark {
				t.Errorf("%s: %q %s, want %q %s", c.winter, got, a.Mark, c.want, c.mark)
			}
		}
		if !found {
			t.Errorf("%s has no answer to %s", c.winter, c.want[0])
		}
	}
}

func TestBarnMark(t *testing.T) {
	answer := func(s analysis.State) analysis.Answer { return analysis.Answer{State: s} }
	for _, c := range []struct {
		held, damp, dry analysis.State
		want            Mark
	}{
		{analysis.Yes, analysis.No, analysis.No, MarkGood},
		{analysis.Mostly, analysis.No, analysis.No, MarkWatch},
		{analysis.No, analysis.No, analysis.No, MarkAct},
		{analysis.Yes, analysis.Yes, analysis.No, MarkAct},
		{analysis.Yes, analysis.Unknown, analysis.Mostly, MarkWatch},
		{analysis.Yes, analysis.Unknown, analysis.Unknown, MarkGood},
		{analysis.Unknown, analysis.Unknown, analysis.Unknown, MarkUnknown},
	} {
		v := analysis.Verdict{Held: answer(c.held), Damp: answer(c.damp), Dry: answer(c.dry)}
		if got := BarnMark(v); got != c.want {
			t.Errorf("held %s, damp %s, dry %s: %s, want %s", c.held, c.damp, c.dry, got, c.want)
		}
	}
}

func TestEveryStateAndEvidenceHasAWord(t *testing.T) {
	for _, s := range []analysis.State{analysis.Yes, analysis.Mostly, analysis.No, analysis.Unknown} {
		if stateWord(s) == "" || fansWord(s) == "" || goodWhenYes(s) == MarkNone || goodWhenNo(s) == MarkNone {
			t.Errorf("%s has no word or mark", s)
		}
	}
	for _, m := range []Mark{MarkGood, MarkWatch, MarkAct, MarkUnknown} {
		if m.Word() == "" {
			t.Errorf("%s has no word", m)
		}
	}
	for _, e := range []analysis.Evidence{analysis.Recorded, analysis.WorkedOut, analysis.YourSetting, analysis.Assumed} {
		if w := evidenceWord(e); w == "not said" || strings.Contains(w, "_") {
			t.Errorf("%s: %q", e, w)
		}
	}
}

func TestNotesStandBesideTheAnswers(t *testing.T) {
	notes := []winter.Note{{At: day0, Text: "Boxes wet along the wall."}, {At: day0 + 24*hourMS, Text: "Quiet."}}
	dry := analysis.Review{Verdict: analysis.Verdict{Damp: analysis.Answer{State: analysis.No}}}
	got := noted(notes, nil, dry, Units{})
	if want := "You noted 2 November: Quiet; 1 November: Boxes wet along the wall. You saw damp on 1 November; the loggers, where they hung, did not."; got != want {
		t.Errorf("%q", got)
	}
	dry.Spells = []analysis.Spell{{Kind: "damp", Span: series.Span{From: day0 + 30*hourMS, To: day0 + 40*hourMS}}}
	if got := noted(notes, nil, dry, Units{}); !strings.Contains(got, "the loggers, where they hung, did not") {
		t.Errorf("a damp spell on another day bears nothing out: %q", got)
	}
	dry.Spells[0].Span.From = day0 + 20*hourMS
	if got := noted(notes, nil, dry, Units{}); !strings.Contains(got, "You saw damp on 1 November; so did the loggers") {
		t.Errorf("a damp spell on the day of the note: %q", got)
	}
	wet := analysis.Review{Verdict: analysis.Verdict{Damp: analysis.Answer{State: analysis.Yes}}}
	if got := noted(notes, nil, wet, Units{}); strings.Contains(got, "did not") {
		t.Errorf("eyes and loggers agree, yet: %q", got)
	}
	if got := noted(nil, nil, dry, Units{}); got != "" {
		t.Errorf("nothing noted: %q", got)
	}
}

// No with hours beside it would contradict itself.
func TestAFewHoursAreHardly(t *testing.T) {
	for want, a := range map[string]analysis.Answer{
		"No":       {State: analysis.No},
		"Hardly":   {State: analysis.No, Figure: analysis.Figure{Mid: 46, OK: true}},
		"At times": {State: analysis.Mostly, Figure: analysis.Figure{Mid: 79, OK: true}},
		"Yes":      {State: analysis.Yes, Figure: analysis.Figure{Mid: 686, OK: true}},
	} {
		if got := notAtAll(a); got != want {
			t.Errorf("%+v: %s, want %s", a, got, want)
		}
	}
}
