package desk

import (
	"maps"
	"strings"
	"testing"

	"thawbook/analysis"
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
		_, do := wentWith(analysis.Finding{}, "dry", cause)
		if !strings.Contains(do, "Never cut the always-on air or add water") {
			t.Errorf("dry with %s: %q", cause, do)
		}
	}
}
