package desk

import (
	"slices"
	"strings"
	"testing"

	"thawbook/analysis"
)

// What can hurt a keeper or his bees where he acts on these pages, in the trade's words (safety practice around barns,
// fans, generators and hives), stands on the page that sends him there and among all cautions in the help.
func TestCautionsStandWhereTheyAreNeeded(t *testing.T) {
	in := rich(t)
	r := analysis.Judge(in)
	pages := map[string][]string{
		"First look": FirstLookOf(in, r, Units{}).Cautions, "Stages": StagesOf(in, r, Units{}).Cautions,
		"Air and water": AirWaterOf(in, r, Units{}).Cautions, "Before next winter": BeforeNextOf(in, r, Units{}).Cautions, "help": Cautions(),
	}
	for _, c := range []struct {
		words []string
		on    []string
	}{
		{[]string{"no alarm", "thermostat and a call-out"}, []string{"First look", "Before next winter"}},
		{[]string{"fans stop", "carbon dioxide", "within an hour or two", "air first, measure", "someone stay outside"}, []string{"Air and water", "Before next winter"}},
		{[]string{"Never cut the always-on air", "nor add water", "dry air"}, []string{"Air and water", "Before next winter"}},
		{[]string{"generator stands outside", "exhaust", "transfer switch by an electrician"}, []string{"Air and water", "Before next winter"}},
		{[]string{"No burner without a flue", "carbon monoxide"}, []string{"Air and water", "Before next winter"}},
		{[]string{"Solar loops scald"}, []string{"Air and water", "Before next winter"}},
		{[]string{"Lock a fan out", "belt"}, []string{"Stages", "Before next winter"}},
		{[]string{"mask", "mould", "dust", "mites were treated", "vapours"}, []string{"Air and water"}},
		{[]string{"Change one setting at a time", "practice, not law"}, []string{"Before next winter"}},
		{[]string{"harmful to people", "carry a meter"}, []string{"First look"}},
		{[]string{"electrician's work"}, []string{"Stages", "Before next winter"}},
	} {
		for _, page := range append(c.on, "help") {
			if !slices.ContainsFunc(pages[page], func(text string) bool { return holdsAll(text, c.words) }) {
				t.Errorf("%s has no caution with %q: %q", page, c.words, pages[page])
			}
		}
	}
}

func holdsAll(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}
