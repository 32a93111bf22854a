package desk

import (
	"math"
	"slices"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/compare"
)

// Two barns' stages stand beside one another by the degree outside, what ran and what was called for by their own names. In
// the same weather: at 4 °C North has 2 of 10 h and South 6 of 10, at 5 °C 5 of 10 and 5 of 5; weighted 5 and 10/3 that is
// (1 + 5/3) ÷ 25/3 = 0.32 and (3 + 10/3) ÷ 25/3 = 0.76. What North did at 7 °C, South never had.
func TestStagesOfTwoBarnsInTheSameWeather(t *testing.T) {
	share := func(at int, on, known int64) analysis.Share {
		return analysis.Share{At: at, OnMS: on * 3600000, KnownMS: known * 3600000}
	}
	r := besideOf(mean(4, 5, 0.7, compare.CantTell))
	north, south := []analysis.Share{share(4, 2, 10), share(5, 5, 10), share(7, 9, 9)}, []analysis.Share{share(4, 6, 10), share(5, 5, 5)}
	r.Pairs[0].Weather.Stages = []compare.StageWeather{{Name: "Stage 2", A: north, B: south}}
	r.Barns[1].Stages = []analysis.StageRow{{Name: "Stage 2", Ran: &analysis.Work{}}}
	p := TwoBarnsOf(r, OtherWinter{}, 0, 0, Units{}).Stages
	if got := plain(p.Text); got != "In the same weather Stage 2 was called for in 32 of 100 hours in North, ran in 76 of 100 in South." {
		t.Errorf("%q", got)
	}
	if got := plain(p.Read(0)); got != "4 °C outside: Stage 2 of North called for in 20 of 100 hours, Stage 2 of South ran in 60 of 100 hours" {
		t.Errorf("%q", got)
	}
	if len(p.Strips) != 2 || len(p.Strips[0].Shares) != 4 || !math.IsNaN(p.Strips[1].Shares[3]) || p.Strips[0].Ran || !p.Strips[1].Ran {
		t.Errorf("%+v", p.Strips)
	}
	turned := TwoBarnsOf(r, OtherWinter{}, 1, 0, Units{}).Stages
	if got := plain(turned.Read(0)); got != "4 °C outside: Stage 2 of South ran in 60 of 100 hours, Stage 2 of North called for in 20 of 100 hours" {
		t.Errorf("%q", got)
	}
}

// The curve of time at a temperature or warmer begins where it is no longer all of it and ends where it is none, in both.
func TestTimeAtEachTemperatureOfTwoBarns(t *testing.T) {
	r := besideOf(mean(4, 5, 0.7, compare.CantTell))
	r.Pairs[0].Exposures = []compare.Exposure{{Quantity: compare.AirTemperature, KnownHours: 10,
		Levels: []float64{2.5, 3, 3.5, 4, 4.5}, A: []float64{10, 8, 3, 0, 0}, B: []float64{10, 10, 5, 1, 0}}}
	v := TwoBarnsOf(r, OtherWinter{}, 0, 0, Units{})
	if s := v.Warmth.Strips; len(s) != 2 || !slices.Equal(s[0].Shares, []float64{0.8, 0.3, 0}) || !slices.Equal(s[1].Shares, []float64{1, 0.5, 0.1}) {
		t.Errorf("%+v", s)
	}
	if got := plain(v.Warmth.Read(1)); got != "3.5 °C or warmer: North in 30 of 100 hours, South in 50 of 100 hours" {
		t.Errorf("%q", got)
	}
	if len(v.Levels.Rows) != 2 || !slices.Equal(v.Levels.Rows[0], []string{"3", "8", "10", "−2"}) {
		t.Errorf("%q", v.Levels.Rows)
	}
}

// What belongs to a winter as a whole stands in a table of its own, a range where it has one, a dash where it is not known.
func TestTotalsOfTwoBarns(t *testing.T) {
	r := besideOf(mean(4, 5, 0.7, compare.CantTell))
	figure := func(mid, half float64) analysis.Figure {
		return analysis.Figure{Mid: mid, Low: mid - half, High: mid + half, OK: true}
	}
	r.Pairs[0].Totals = []compare.Total{
		{Quantity: "energy_per_hive", Unit: "kWh", A: figure(6.2, 0), B: figure(4.1, 0.5), Difference: figure(2.1, 0.5)},
		{Quantity: "small_stages_alone", Unit: "percent", A: figure(69, 0), B: analysis.Figure{Unknown: "no_stages"}, Difference: analysis.Figure{Unknown: "no_stages"}},
	}
	rows := TwoBarnsOf(r, OtherWinter{}, 0, 0, Units{}).Totals.Rows
	if len(rows) != 2 || !slices.Equal(rows[0], []string{"Energy of the fans, kWh a hive", "6.2", "3.6–4.6", "1.6–2.6"}) || !slices.Equal(rows[1], []string{"Small fans alone, %", "69", "–", "–"}) {
		t.Errorf("%q", rows)
	}
}
