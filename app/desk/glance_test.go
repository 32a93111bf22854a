package desk

import (
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Two days of hourly readings in a zone half an hour off, with a warm spell from 02:40 to 05:20 and a damp one from 05:00: an hour
// belongs to a spell that takes half of it and more, so warm are 03 and 04, damp 05. What is unknown for more than half of
// an hour is so, and what lies before the bees came is not judged.
func TestGlance(t *testing.T) {
	zone, err := time.LoadLocation("America/St_Johns")
	if err != nil {
		t.Fatal(err)
	}
	midnight := time.Date(2024, time.December, 1, 0, 0, 0, 0, zone).UnixMilli()
	at := func(hour float64) int64 { return midnight + int64(hour*series.HourMS) }
	var r series.Readings
	for h := range 49 {
		if h < 30 || h > 33 {
			r.At, r.Val = append(r.At, at(float64(h))), append(r.Val, 4.5)
		}
	}
	room := series.Curve{Readings: r, MaxStepMS: 2 * series.HourMS}
	review := analysis.Review{BeesIn: at(1), BeesOut: at(47), Traces: analysis.Traces{Room: room}, Spells: []analysis.Spell{
		{Kind: "warm", Place: "control", Span: series.Span{From: at(2 + 2.0/3), To: at(5 + 1.0/3)}},
		{Kind: "damp", Place: "control", Span: series.Span{From: at(5), To: at(6)}},
		{Kind: "cold", Place: "loft", Span: series.Span{From: at(10), To: at(20)}},
	}}
	g := newBarn(analysis.Input{Zone: zone}, review, Units{}).glance()
	if g.Days() != 2 || len(g.Months) != 1 || g.Months[0].Name != "December" {
		t.Fatalf("%d days, %v", g.Days(), g.Months)
	}
	for i, h := range g.Hours {
		temp, air := "", ""
		if i == 3 || i == 4 {
			temp = "warm"
		}
		if i == 5 {
			air = "damp"
		}
		known := i < 29 || i > 33
		if h.From != at(float64(i)) || h.Temp != temp || h.Air != air || h.Judged != (i >= 1 && i < 47) || h.Known != known {
			t.Errorf("hour %d: %+v", i, h)
		}
	}
	for i, want := range map[int]string{3: "1 December 03:00, warm 4.5 °C", 0: "1 December 00:00, outside the bees' time, 4.5 °C", 31: "2 December 07:00, not known", 99: ""} {
		if got := plain(g.Read(i)); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if none := newBarn(analysis.Input{}, analysis.Review{}, Units{}).glance(); none.Days() != 0 || strings.TrimSpace(none.Read(0)) != "" {
		t.Error("a winter without readings has a glance")
	}
}
