package desk

import (
	"maps"
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Every cause has words and something to look at, for every kind of spell it may go with.
func TestEveryFindingHasWords(t *testing.T) {
	b := barn{}
	exact := func(v float64) analysis.Figure { return analysis.Figure{Mid: v, Low: v, High: v, OK: true} }
	for _, kind := range []string{"warm", "cold", "damp", "dry", "dew", "frost"} {
		for cause := range causeWords {
			v := b.finding(analysis.Finding{Code: kind + "_with_" + cause, About: "wall", Evidence: analysis.WorkedOut,
				Figures: []analysis.NamedFigure{{Name: "hours", Figure: exact(110)}, {Name: "hours_with", Figure: exact(84)}}})
			if !strings.HasPrefix(v.Text, "84") || !strings.Contains(v.Text, "110") || v.Do == "" {
				t.Errorf("%s with %s: %q %q", kind, cause, v.Text, v.Do)
			}
		}
	}
	all := maps.Clone(findingWords)
	maps.Copy(all, eventFindingWords)
	for code, words := range all {
		v := b.finding(analysis.Finding{Code: code, About: "stage three", Evidence: analysis.Recorded})
		if v.Text == "" || words.do == "" {
			t.Errorf("%s: %q %q", code, v.Text, words.do)
		}
	}
}

// Dry air is never cured by less air or by water: what is said of dry spells must not advise it.
func TestDryFindingsDefendTheAlwaysOnAir(t *testing.T) {
	for _, cause := range []string{analysis.OutdoorDry, analysis.HeatOn} {
		_, _, do := wentWith(analysis.Finding{}, "dry", cause)
		if !strings.Contains(do, "Never cut the always-on air or add water") {
			t.Errorf("dry with %s: %q", cause, do)
		}
	}
}

// Warm and damp spells of one fan that stood are one finding; those of another fan, and another cause, stay apart.
func TestFindingsOfOneCauseAreOne(t *testing.T) {
	with := func(code, about string, part, all float64) analysis.Finding {
		return analysis.Finding{Code: code, About: about, Evidence: analysis.WorkedOut, Figures: []analysis.NamedFigure{
			{Name: "hours", Figure: figureOf(all, all, all)}, {Name: "hours_with", Figure: figureOf(part, part, part)}}}
	}
	r := analysis.Review{Findings: []analysis.Finding{
		with("warm_with_"+analysis.NotRun, "Stage 3", 77, 378), with("warm_with_"+analysis.OutdoorWarm, "", 266, 378),
		with("damp_with_"+analysis.NotRun, "Stage 3", 250, 250), with("damp_with_"+analysis.NotRun, "Stage 4", 55, 250)}}
	got := Findings(analysis.Input{}, r, Units{})
	want := []string{"77 h of the 378 h of warm spells and all 250 h of damp spells fell while Stage 3 stood, though it was called for.",
		"266 h of the 378 h of warm spells fell when", "55 h of the 250 h of damp spells fell while Stage 4"}
	if len(got) != len(want) {
		t.Fatalf("%d findings, want %d", len(got), len(want))
	}
	for i := range want {
		if !strings.HasPrefix(plain(got[i].Text), want[i]) {
			t.Errorf("%q, want %q", got[i].Text, want[i])
		}
	}
}

// A climb of a hundredth of a degree an hour is not "0.0 °C".
func TestASmallClimbIsNotNothing(t *testing.T) {
	for _, c := range []struct {
		u    Units
		k    float64
		want string
	}{{Units{}, 0.01, "less than 0.1 °C"}, {Units{}, 0.2, "0.2 °C"}, {Units{Temperature: Fahrenheit}, 0.01, "less than 0.1 °F"}} {
		if got := plain((barn{u: c.u}).smallDiff(c.k)); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Never stands where it is said.
func TestAnAlarmThatNeverCalledSaysSo(t *testing.T) {
	for calls, want := range map[float64]string{0: "never have called", 1: "have called once", 4: "have called 4 times"} {
		if got := plain(wouldHave("called", analysis.Figure{Mid: calls, OK: true})); got != want {
			t.Errorf("%v calls: %q, want %q", calls, got, want)
		}
	}
}

// Of spells that nothing explains it is said what would tell: only what is not there.
func TestUnexplainedSpellsAskForWhatIsLacking(t *testing.T) {
	f := analysis.Finding{Code: "warm_unexplained", Figures: []analysis.NamedFigure{{Name: "hours", Figure: analysis.Figure{OK: true, Mid: 150}}}}
	outdoor := series.Curve{Readings: series.Readings{At: []int64{0}, Val: []float64{4}}}
	ran := []analysis.StageRow{{Name: "one", Ran: &analysis.Work{}}}
	for _, c := range []struct {
		outdoor series.Curve
		stages  []analysis.StageRow
		want    string
	}{
		{series.Curve{}, nil, "Nothing in these files explains most of the 150 h of warm spells. The temperature outside and a record of the fans might."},
		{outdoor, nil, "Nothing in these files explains most of the 150 h of warm spells. A record of the fans might."},
		{outdoor, ran, "Nothing in these files explains most of the 150 h of warm spells."},
	} {
		b := barn{r: analysis.Review{Stages: c.stages}}
		b.r.Traces.Outdoor = c.outdoor
		if got := plain(b.finding(f).Text); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
