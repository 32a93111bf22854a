package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// shares has the on-time in hours by cell, of a known time each.
func shares(first int, knownH float64, onH ...float64) (out []analysis.Share) {
	for i, h := range onH {
		out = append(out, analysis.Share{At: first + i, OnMS: int64(h * series.HourMS), KnownMS: int64(knownH * series.HourMS)})
	}
	return out
}

// By hand: three of the afternoon's hours hold 15 of the 26 h on, two no more than 10. Across midnight 27 of 37.
func TestTheHoursAStageKeepsTo(t *testing.T) {
	afternoon := shares(0, 10, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 5, 5, 5, 5, 1, 1, 0, 0, 0, 0, 0)
	night := shares(0, 10, 9, 9, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 9)
	even := shares(0, 10, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5)
	for want, s := range map[string][]analysis.Share{
		"mostly from 13:00 to 16:00":                         afternoon,
		"mostly from 23:00 to 02:00":                         night,
		"about as much at one hour of the day as at another": even,
		"for less than an hour in all":                       shares(0, 10, 0.5),
	} {
		if got := hoursMostly(s); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// By hand: on in 24 of 30 h from 3 °C on and in 3 of 30 below; no other degree parts them as far.
func TestTheDegreeFromWhichAStageIsOn(t *testing.T) {
	b := barn{}
	if got, want := b.outdoorMostly(shares(0, 10, 0, 1, 2, 7, 8, 9)), "in 80 of 100 hours with 3 °C and more outside, in 10 of 100 below that"; plain(got) != want {
		t.Errorf("%q, want %q", plain(got), want)
	}
	if got, want := b.outdoorMostly(shares(-3, 10, 4, 5, 4, 5)), "about as much in warm weather as in cold"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	b.u.Temperature = Fahrenheit
	if got := plain(b.outdoorMostly(shares(0, 10, 0, 1, 2, 7, 8, 9))); !strings.Contains(got, "with 37 °F and more") { // 37.4
		t.Errorf("%q", got)
	}
}

// A stage that was set anew has a strip and a sentence for each setting; what is not known has no share.
func TestPatternsOfAStageSetAnew(t *testing.T) {
	row := func(from int64, by []analysis.Share) analysis.StageRow {
		return analysis.StageRow{Name: "two", Setting: analysis.Setting{Span: series.Span{From: from}, OnC: 5, OffC: 4}, ByHour: by, Ran: &analysis.Work{}}
	}
	in := analysis.Input{Stages: []analysis.Stage{{Name: "two", Settings: []analysis.Setting{{OnC: 5, OffC: 4}}}}}
	r := analysis.Review{Stages: []analysis.StageRow{row(0, shares(13, 10, 5)), row(40*24*series.HourMS, shares(2, 10, 5))}}
	ps := newBarn(in, r, Units{}).patterns()
	if len(ps) != 2 || len(ps[0].Strips) != 2 {
		t.Fatalf("%+v", ps)
	}
	if want := "Two from 1 January ran mostly from 13:00 to 14:00. Two from 10 February ran mostly from 02:00 to 03:00."; ps[0].Text != want {
		t.Errorf("%q, want %q", ps[0].Text, want)
	}
	if got, want := plain(ps[0].Read(13)), "13:00 to 14:00: two from 1 January ran in 50 of 100 hours, two from 10 February ran unknown"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if ps[0].Read(-1) != "" || ps[0].Read(24) != "" {
		t.Error("a cell that is none was read")
	}
	if want := "How the stages go by the air outside can't be told: there is no outdoor temperature."; ps[1].Text != want {
		t.Errorf("%q, want %q", ps[1].Text, want)
	}
	if newBarn(analysis.Input{}, r, Units{}).patterns() != nil {
		t.Error("stages without a thermostat have a pattern")
	}
}
