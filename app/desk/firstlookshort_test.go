package desk

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Twelve hours in the safe band are no winter that held: the same record is not judged by them, and is by two days.
func TestLessThanADayIsNotJudged(t *testing.T) {
	for hours, want := range map[int64]string{
		12: "Whether it held can't be told: the bees' time here is less than a day, which is too little to judge by.",
		48: "It held: 100 of 100 hours between 2 and 6 °C.",
	} {
		in := winters["even"](t)
		from := *in.BeesIn
		to := from + hours*series.HourMS
		in.BeesOut = &to
		r := analysis.Judge(in)
		f := FirstLookOf(in, r, Units{})
		if plain(f.Headline) != want {
			t.Errorf("%d h: %q, want %q", hours, f.Headline, want)
		}
		if v := r.Verdict; hours == 12 && (v.Damp.State != analysis.Unknown || v.Dry.State != analysis.Unknown || v.Fans.State != analysis.Unknown) {
			t.Errorf("judged by 12 h: %+v", v)
		}
		if got := plain(newBarn(in, r, Units{}).length()); hours == 12 && !strings.HasPrefix(got, "12 h") {
			t.Errorf("%q, want hours", got)
		}
	}
}

// The wall that a logger hangs on is the first to be listed.
func TestTheWallToNameIsTheOneWithALogger(t *testing.T) {
	for places, want := range map[string]string{
		"room":              "Wet hours need a listed wall or ceiling; name the coldest one.",
		"room wall":         "Wet hours need a listed wall or ceiling; name what L1 hangs on.",
		"ceiling room wall": "Wet hours need a listed wall or ceiling; name what L0 and L2 hang on.",
	} {
		var b barn
		b.r.Traces.Outdoor = series.Curve{Readings: series.Readings{At: []int64{0}, Val: []float64{-5}}}
		for i, place := range strings.Fields(places) {
			b.in.Loggers = append(b.in.Loggers, analysis.Logger{Name: fmt.Sprint("L", i), Place: place})
		}
		if got := b.waterLacks(); !slices.Contains(got, want) {
			t.Errorf("%s: %q, want %q", places, got, want)
		}
	}
}

// Only what is missing is asked for.
func TestWhatWallsTakeIsOnlyWhatIsMissing(t *testing.T) {
	outdoor := series.Curve{Readings: series.Readings{At: []int64{0}, Val: []float64{-5}}}
	wall, door := []analysis.SurfaceRow{{Kind: "wall"}}, []analysis.SurfaceRow{{Kind: "metal"}}
	for _, c := range []struct {
		outdoor series.Curve
		listed  []analysis.SurfaceRow
		want    string
	}{
		{series.Curve{}, nil, "The air outside and a listed wall would tell which were that cold."}, {outdoor, nil, "A listed wall would tell which were that cold."},
		{outdoor, door, "A listed wall would tell which were that cold."}, {series.Curve{}, wall, "The air outside would tell which walls were that cold."}, {outdoor, wall, "at the same time."},
	} {
		r := analysis.Review{Surfaces: c.listed}
		r.Traces.Outdoor = c.outdoor
		if got := (barn{r: r}).wallsTake(); !strings.HasSuffix(got, c.want) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// Limits that are not the same in all phases are named by their range; a wall's and one logger's are others.
func TestLimitsThatEachPhaseHasOfItsOwn(t *testing.T) {
	row := func(place, phase string, high float64) analysis.QuantityRow {
		return analysis.QuantityRow{Quantity: "air_temperature", Place: place, Phase: phase, Bands: []analysis.BandRow{{Name: "good", High: &high}, {Name: "act", High: &high}}}
	}
	b := barn{r: analysis.Review{Quantities: []analysis.QuantityRow{row("control", "filling", 10), row("control", "deep winter", 8), row("control", "", 20), row("wall", "filling", 30)}}}
	if got := plain(b.actLimits()); got != "the upper limit of its phase (8–10 °C)" {
		t.Error(got)
	}
}
