package desk

import (
	"testing"

	"thawbook/analysis"
)

// fought is a review in which floor heat ran for 140 h, 71 of them with the third stage on.
func fought() analysis.Review {
	overlap := figureOf(71, 68, 75)
	return analysis.Review{
		Heats: []analysis.HeatRow{{Source: analysis.HeatSource{Name: "floor heat"}, Ran: &analysis.Work{Hours: figureOf(140, 140, 140)}, Overlap: overlap,
			Against: []analysis.Overlap{{Stage: "stage 3", Hours: overlap}, {Stage: "stage 4", Hours: figureOf(5, 5, 5)}}}},
		Findings: []analysis.Finding{{Code: heatAgainstFans, About: "floor heat", Weight: 43, Evidence: analysis.WorkedOut,
			Figures: []analysis.NamedFigure{{Name: "overlap_hours", Figure: overlap}, {Name: "heat_hours", Figure: figureOf(140, 140, 140)}}}},
	}
}

// What is found of heat against the fans stands once: not again in a stage's note, and with dry spells of the same
// source in one breath.
func TestHeatAgainstTheFansIsToldOnce(t *testing.T) {
	r := fought()
	const said = "Floor heat and stage 3 ran at the same time for 71 h (68–75 h) of the heat's 140 h: the fans blew out what the heat brought in."
	got := Findings(analysis.Input{}, r, Units{})
	if len(got) != 1 || plain(got[0].Text) != said || got[0].Do != foughtDo || got[0].Sure != "" {
		t.Fatalf("%+v", got)
	}
	if notes := newBarn(analysis.Input{}, r, Units{}).stageNotes(); len(notes) != 0 {
		t.Errorf("a stage's note repeats it: %q", notes)
	}
	dry := analysis.Finding{Code: "dry_with_" + analysis.HeatOn, About: "floor heat", Weight: 47, Evidence: analysis.WorkedOut,
		Figures: []analysis.NamedFigure{{Name: "hours", Figure: figureOf(40, 40, 40)}, {Name: "hours_with", Figure: figureOf(40, 40, 40)}}}
	r.Findings = append([]analysis.Finding{dry}, r.Findings...)
	got = Findings(analysis.Input{}, r, Units{})
	if len(got) != 1 || plain(got[0].Text) != "All 40 h of dry spells fell while heat was added (floor heat). "+said ||
		got[0].Do != "Look at the heat's setting: warmed air is dry air. Never cut the always-on air or add water for it. The heat should stop below where that stage starts." {
		t.Errorf("%+v", got)
	}
}

// Heat without a record of its own was only called for; two stages that share the hours are both named.
func TestHeatThatWasOnlyCalledFor(t *testing.T) {
	r := fought()
	r.Heats[0].Called, r.Heats[0].Ran = r.Heats[0].Ran, nil
	r.Heats[0].Against[0].Hours, r.Heats[0].Against[1].Hours = figureOf(40, 40, 40), figureOf(31, 31, 31)
	got := plain(newBarn(analysis.Input{}, r, Units{}).foughtWords(r.Findings[0]))
	if got != "floor heat and stage 3 or stage 4 were called for at the same time for 71 h (68–75 h) of the heat's 140 h" {
		t.Errorf("%q", got)
	}
}
