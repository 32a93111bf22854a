package plausible_test

import (
	"math"
	"testing"

	"thawbook/analysis/plausible"
	"thawbook/analysis/series"
)

// The Magnus formulas of WMO-No. 8 (Annex 4.B) over water and ice, hPa of °C: not the ones the program uses.
func magnusWater(t float64) float64 { return 6.112 * math.Exp(17.62*t/(243.12+t)) }
func magnusIce(t float64) float64   { return 6.112 * math.Exp(22.46*t/(272.62+t)) }

// dewOf and frostOf are their inverses.
func dewOf(e float64) float64 {
	l := math.Log(e / 6.112)
	return 243.12 * l / (17.62 - l)
}

func frostOf(e float64) float64 {
	l := math.Log(e / 6.112)
	return 272.62 * l / (22.46 - l)
}

// column is a derived column, printed with some step.
func column(t *testing.T, of plausible.Trace, step float64, f func(tempC, relHum float64) float64) series.Curve {
	t.Helper()
	c := series.Zip(of.TempC, of.RelHum, f)
	return changed(t, c, 0, c.Len(), func(_ int, v float64) float64 { return math.Round(v/step) * step })
}

func TestAFilesOwnDewPointIsHeldAgainstOurs(t *testing.T) {
	coldC, coldRelHum := measured(t, "d06_fi_attic_air.csv", "T", "RH")
	winter := series.Span{From: coldC.Readings.At[0], To: coldC.Readings.At[0] + 3*monthMS}
	attic := plausible.Trace{TempC: coldC.Slice(winter), RelHum: coldRelHum.Slice(winter), TempStepK: 0.01, RelHumStep: 0.0001}
	swapped := attic
	swapped.TempC = changed(t, attic.RelHum, 0, attic.RelHum.Len(), func(_ int, v float64) float64 { return 100 * v })
	swapped.RelHum = changed(t, attic.TempC, 0, attic.TempC.Len(), func(_ int, v float64) float64 { return (v + 30) / 100 })
	warm := attic
	warm.TempC = changed(t, attic.TempC, 0, attic.TempC.Len(), func(_ int, v float64) float64 { return v + 30 })
	water := func(c, h float64) float64 { return dewOf(h * magnusWater(c)) }
	grams := func(c, h float64) float64 { return 216.68 * h * magnusWater(c) / (273.15 + c) } // g/m³ of hPa, WMO-No. 8: 1000·100/461.5
	for _, c := range []struct {
		what  string
		trace plausible.Trace
		kind  plausible.Kind
		step  float64
		of    func(tempC, relHum float64) float64
		want  string
	}{
		{"over water", attic, plausible.DewPoint, 0.1, water, ""},
		{"over water, finer", attic, plausible.DewPoint, 0.05, water, ""},
		{"frost point", attic, plausible.DewPoint, 0.1, func(c, h float64) float64 {
			if e := h * magnusWater(c); e < 6.1 {
				return frostOf(e)
			}
			return water(c, h)
		}, plausible.FormulaIce},
		{"humidity taken as over ice", attic, plausible.AbsHumidity, 0.01, func(c, h float64) float64 {
			if c < 0 {
				return 216.68 * h * magnusIce(c) / (273.15 + c)
			}
			return grams(c, h)
		}, plausible.FormulaIce},
		{"rule of thumb", warm, plausible.DewPoint, 0.1, func(c, h float64) float64 { return c - 20*(1-h) }, plausible.Formula},
		{"something else", attic, plausible.DewPoint, 0.1, func(c, _ float64) float64 { return c }, plausible.FormulaOff},
		{"absolute humidity", attic, plausible.AbsHumidity, 0.01, grams, ""},
	} {
		f, off := plausible.Derived(c.trace, column(t, c.trace, c.step, c.of), c.kind, c.step)
		if off != (c.want != "") || f.Code != c.want {
			t.Errorf("%s: %v %q %v, want %q", c.what, off, f.Code, f.Figures, c.want)
		}
	}
	f, off := plausible.Derived(swapped, column(t, warm, 0.1, water), plausible.DewPoint, 0.1)
	if !off || f.Code != plausible.FormulaSwp {
		t.Errorf("swapped columns: %v %q %v", off, f.Code, f.Figures)
	}
}
