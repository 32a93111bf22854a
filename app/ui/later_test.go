package ui

import (
	"slices"
	"testing"
)

// Only the page in sight is made; another is once its tab is chosen, and the first stays.
func TestAPageIsMadeWhenItIsChosen(t *testing.T) {
	s := show(t)
	s.take(t, planFile(t))
	made := func() (out []string) {
		for i, page := range s.tabs.pages {
			if page.page != nil {
				out = append(out, pageNames[i])
			}
		}
		return out
	}
	if got := made(); !slices.Equal(got, []string{"First look"}) {
		t.Errorf("made at first: %v", got)
	}
	s.showPage(3)
	if got := made(); !slices.Equal(got, []string{"First look", "Stages"}) {
		t.Errorf("made once Stages was chosen: %v", got)
	}
}
