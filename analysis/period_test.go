package analysis

import (
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// Two stages changed at different hours cut the time into three periods, in order of time.
func TestSettingPeriodsFollowEachOther(t *testing.T) {
	stage := func(name string, changed, before, after float64) Stage {
		return Stage{Name: name, Settings: []Setting{{Span: span(0, changed), OnC: before, OffC: before - 1}, {Span: span(changed, 100), OnC: after, OffC: after - 1}}}
	}
	var got []series.Span
	for _, p := range settingPeriods([]Stage{stage("second", 50, 4, 5), stage("third", 30, 6, 7)}, stretches{span(0, 100)}) {
		got = append(got, p.span)
	}
	if want := []series.Span{span(0, 30), span(30, 50), span(50, 100)}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// What is put together of recorded hours alone stays recorded; with any that were worked out it is worked out.
func TestWhatIsPutTogetherIsAsSureAsItsParts(t *testing.T) {
	for _, c := range []struct{ one, other, want Evidence }{
		{Recorded, Recorded, Recorded}, {Recorded, WorkedOut, WorkedOut}, {YourSetting, YourSetting, YourSetting}, {WorkedOut, Recorded, WorkedOut},
	} {
		if got := (&view{evidence: c.one}).then(&view{evidence: c.other}).evidence; got != c.want {
			t.Errorf("%v and %v: %v, want %v", c.one, c.other, got, c.want)
		}
	}
}
