package desk

import (
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/compare"
	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// threeBarns have a mean of 4, 6 and 5 °C. The first has no humidity, and alone a count of its dead: 3 of 60, which is 5 of
// a hundred. North and South are told apart.
func threeBarns() *engine.Result {
	out := &engine.Result{Pairs: []compare.Pair{{A: "North", B: "South", Rows: []compare.Row{mean(4, 6, 0.7, compare.Less)}}}}
	three, sixty := 3.0, 60.0
	for i, name := range []string{"North", "South", "East"} {
		tempC := []float64{4, 6, 5}[i]
		room := series.Curve{Readings: series.Readings{At: []int64{0, 10 * series.HourMS}, Val: []float64{tempC - 1.5, tempC + 1.5}}, MaxStepMS: 10 * series.HourMS}
		sure := func(v float64) analysis.Figure { return analysis.Figure{Mid: v, Low: v, High: v, OK: true} }
		r := analysis.Review{Barn: name, BeesOut: 10 * series.HourMS, Quantities: []analysis.QuantityRow{
			{Quantity: "air_temperature", Place: "room", KnownMS: 10 * series.HourMS, Mean: sure(tempC), Bands: []analysis.BandRow{{Name: "good", HoursBelow: 2, HoursAbove: float64(i)}}}}}
		in := analysis.Input{Loggers: []analysis.Logger{{Name: name, Place: "room", TempC: room}}}
		r.Traces.Room = room
		if i == 0 {
			in.Notes = []analysis.Note{{Kind: "dead count", Value: &three, Of: &sixty}}
		} else {
			r.Quantities = append(r.Quantities, analysis.QuantityRow{Quantity: "relative_humidity", Place: "room", Mean: sure(60 + float64(i))})
		}
		out.Barns, out.Inputs = append(out.Barns, r), append(out.Inputs, in)
	}
	return out
}

// Of three barns each has a row, a column of which puts them in order; what is not known comes last either way.
func TestBarnsArePutInOrder(t *testing.T) {
	v := AllBarnsOf(threeBarns(), Units{})
	if got := plain(strings.Join(v.Rows[0].Cells, "|")); got != "North|4.0|10|2|–|–|–|–|5.0" {
		t.Errorf("%q", got)
	}
	for _, c := range []struct {
		column  int
		falling bool
		want    string
	}{{0, false, "East North South"}, {1, true, "South East North"}, {3, false, "North South East"}, {4, true, "East South North"}, {4, false, "South East North"}} {
		var got []string
		for _, r := range v.Sorted(c.column, c.falling) {
			got = append(got, r.Cells[0])
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("by column %d, falling %v: %v, want %s", c.column, c.falling, got, c.want)
		}
	}
}

// The first line names the warmest and the coldest, and says so where their loggers can't tell which was.
func TestTheWarmestAndTheColdestAreNamed(t *testing.T) {
	told, untold := threeBarns(), threeBarns()
	untold.Pairs[0].Rows[0].Verdict = compare.CantTell
	for _, c := range []struct {
		r    *engine.Result
		unit TemperatureUnit
		want string
	}{
		{told, Celsius, "Of 3 barns South read warmest in the mean, 6.0 °C, and North coldest, 4.0 °C."},
		{told, Fahrenheit, "Of 3 barns South read warmest in the mean, 42.8 °F, and North coldest, 39.2 °F."},
		{untold, Celsius, "Of 3 barns South read warmest in the mean, 6.0 °C, and North coldest, 4.0 °C; which was the warmer is more than their loggers can tell."},
	} {
		if got := plain(AllBarnsOf(c.r, Units{Temperature: c.unit}).Sentence); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// The coldest room read 2.5 °C at the least and the warmest 7.5 at the most: every small plot goes from 2 to 8.
func TestSmallPlotsShareTheirScales(t *testing.T) {
	v := AllBarnsOf(threeBarns(), Units{}).Plots
	if len(v.Lanes) != 3 || v.Bees != (series.Span{To: 10 * series.HourMS}) {
		t.Fatalf("%d lanes over %v", len(v.Lanes), v.Bees)
	}
	for _, l := range v.Lanes {
		if *l.Range != [2]float64{2, 8} {
			t.Errorf("%s: %v", l.Title, *l.Range)
		}
	}
	if got := v.Read(0, []Said{{Lane: "East", Name: "room", Value: 3.5, Unit: "°C", Known: true}}); !strings.Contains(plain(got), "East 3.5 °C") {
		t.Errorf("%q", got)
	}
}

// Two barns stand beside one another, not in a table of all.
func TestTwoBarnsHaveNoTableOfAll(t *testing.T) {
	r := threeBarns()
	r.Barns, r.Inputs = r.Barns[:2], r.Inputs[:2]
	if v := AllBarnsOf(r, Units{}); len(v.Rows) > 0 || len(v.Plots.Lanes) > 0 {
		t.Errorf("%d rows", len(v.Rows))
	}
}

// A barn is set beside another when that one is asked for, from whichever side: a review of files has no pairs of its own.
func TestABarnIsSetBesideTheOneAskedFor(t *testing.T) {
	r := judgedFiles(t, ashAndBirch, twoLogs(t))
	if len(r.Pairs) != 0 {
		t.Fatalf("%d pairs", len(r.Pairs))
	}
	for barn, want := range []string{"Ash read 0.3 °C colder than Birch", "Birch read 0.3 °C warmer than Ash"} {
		if v := TwoBarnsOf(&r, OtherWinter{}, barn, 0, Units{}); !strings.HasPrefix(plain(v.Sentence), want) {
			t.Errorf("%q, want %q", v.Sentence, want)
		}
	}
}
