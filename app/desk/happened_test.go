package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Openings by a door's contact are told one by one, with how long each was, as long as they are few; of many it is told how
// many, how long in all and which was the longest, before all else. A power cut, and an opening seen in the air alone, are
// told beside them.
func TestManyOpeningsAreToldInOne(t *testing.T) {
	barn := func(openings int) analysis.Review {
		var r analysis.Review
		at := func(h, minutes float64) series.Span {
			from := int64(h * series.HourMS)
			return series.Span{From: from, To: from + int64(minutes*60_000)}
		}
		add := func(kind string, s series.Span, by analysis.Evidence) {
			r.Events = append(r.Events, analysis.Event{Kind: kind, Span: s, Evidence: by})
		}
		add("power cut", at(1, 90), analysis.WorkedOut)
		add("doors open", at(5, 20), analysis.WorkedOut)
		for i := range openings {
			minutes := 10.0
			if i == 2 {
				minutes = 95
			}
			add("doors open", at(float64(24*(i+1)), minutes), analysis.Recorded)
		}
		return r
	}
	for _, row := range []struct {
		openings, lines, at int
		sentence, want      string
	}{
		{8, 10, 4, "10 events were seen or noted.", "Doors stood open on 4 January 00:00 for 1 h 35 min."},
		{9, 3, 0, "11 events were seen or noted.", "Doors stood open 9 times, 2 h 55 min in all; longest on 4 January 00:00, for 1 h 35 min."},
	} {
		v := BeforeNextOf(analysis.Input{}, barn(row.openings), Units{})
		if len(v.Events) != row.lines || plain(v.Happened) != row.sentence {
			t.Fatalf("%d openings: %q, %d lines: %+v", row.openings, v.Happened, len(v.Events), v.Events)
		}
		if got := plain(v.Events[row.at].Text); got != row.want || v.Events[row.at].Sure != restsOn(analysis.Recorded) {
			t.Errorf("%d openings: %q, want %q", row.openings, got, row.want)
		}
		if v.Events[row.at].Look.From != 72*series.HourMS {
			t.Errorf("%d openings: leads to %+v", row.openings, v.Events[row.at].Look)
		}
		var seen []string
		for _, e := range v.Events {
			seen = append(seen, plain(e.Text))
		}
		if all := strings.Join(seen, "\n"); !strings.Contains(all, "Doors stood open about 1 January 05:00") || !strings.Contains(all, "The fans stood still from 1 January 01:00") {
			t.Errorf("%d openings: %s", row.openings, all)
		}
	}
}
