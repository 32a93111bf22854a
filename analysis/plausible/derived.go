package plausible

import (
	"math"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// Kind is what a file's own derived column holds.
type Kind int

// The derived columns that can be checked: dew point in °C, absolute humidity in g/m³.
const (
	DewPoint Kind = iota
	AbsHumidity
)

// A derived column disagrees when more than one reading in twenty lies further from ours than the printed
// resolutions of all three columns explain, and the 0.06 K or 0.4 % by which good formulas differ (WMO-No. 8's
// Magnus formulas beside Hyland and Wexler's from −30 to 40 °C: 0.051 K, 0.29 %, worked out); a cause is named
// when with it no more than one in twenty does, and half as many as before. Another formula shows on more than half of
// the readings.
// Rules of thumb such as T − (100 − RH)/5 stay within about 1 K of the dew point in damp air (at 4 °C and 75 %
// −1.0 for −0.02 °C, worked out), and 5 % of the vapour is about as much: what is further off, and no swap and
// no ice, does not follow from the columns beside it. (Limits: common practice, no source.)
const (
	derivedShare    = 0.05
	derivedReadings = 12
	alikeK          = 0.06
	alikeShare      = 0.004
	formulaK        = 1
	formulaShare    = 0.05
	derivedMost     = 20_000 // of more readings so many are looked at, evenly spread
)

// formula is how a derived value may have been worked out of temperature (°C) and humidity (0–1).
type formula struct {
	code string
	of   func(tempC, relHum float64) float64
}

// overIce is the vapour pressure in Pa of humidity that is over ice below 0 °C.
func overIce(tempC, relHum float64) float64 {
	if tempC >= 0 {
		return moistair.VapPresPa(tempC, relHum)
	}
	return relHum * moistair.SatPresIcePa(tempC)
}

// frostPoint is the frost point where there is one, else the dew point.
func frostPoint(vapPresPa float64) float64 {
	if f := moistair.FrostPointC(vapPresPa); isKnown(f) {
		return f
	}
	return moistair.DewPointC(vapPresPa)
}

// gramsM3 is absolute humidity in g/m³.
func gramsM3(tempC, vapPresPa float64) float64 {
	return 1000 * moistair.AbsHumidityKgM3(tempC, vapPresPa)
}

// formulas are ours first, then the ones a file may have used.
var formulas = map[Kind][]formula{
	DewPoint: {
		{"", func(t, h float64) float64 { return moistair.DewPointC(moistair.VapPresPa(t, h)) }},
		{FormulaIce, func(t, h float64) float64 { return frostPoint(moistair.VapPresPa(t, h)) }},
		{FormulaIce, func(t, h float64) float64 { return frostPoint(overIce(t, h)) }},
		{FormulaSwp, func(t, h float64) float64 { return moistair.DewPointC(moistair.VapPresPa(100*h, t/100)) }},
	},
	AbsHumidity: {
		{"", func(t, h float64) float64 { return gramsM3(t, moistair.VapPresPa(t, h)) }},
		{FormulaIce, func(t, h float64) float64 { return gramsM3(t, overIce(t, h)) }},
		{FormulaSwp, func(t, h float64) float64 { return gramsM3(100*h, moistair.VapPresPa(100*h, t/100)) }},
	},
}

// disagreement is how a column lies from what a formula makes of the readings beside it.
type disagreement struct {
	n      int
	beyond float64 // share of readings beyond resolution
	worst  float64 // of the worst reading but one in twenty
	excess float64 // distance beyond resolution of that one, against what formulas differ by
}

// Derived holds a file's own dew point (°C) or absolute humidity (g/m³) against ours from its temperature
// and humidity. step is the printed resolution of the column. ok is false when they agree, or when there are
// fewer than twelve instants with all three.
func Derived(t Trace, own series.Curve, kind Kind, step float64) (f Finding, ok bool) {
	if own.Len() == 0 {
		return Finding{}, false
	}
	all, whole := formulas[kind], spanOf(own, 0, own.Len())
	own = thinned(own)
	t.TempC, t.RelHum = alongside(own, t.TempC), alongside(own, t.RelHum)
	ours := compare(t, own, all[0].of, kind, step)
	if ours.n < derivedReadings || ours.beyond <= derivedShare {
		return Finding{}, false
	}
	f = Finding{Code: FormulaOff, Quantity: Both, Span: whole, Sure: Perhaps, Figures: []float64{ours.worst, ours.beyond}}
	for _, other := range all[1:] {
		if d := compare(t, own, other.of, kind, step); d.n >= derivedReadings && d.n >= ours.n/2 && d.beyond <= math.Min(derivedShare, ours.beyond/2) {
			f.Code, f.Sure = other.code, Likely
			return f, true
		}
	}
	if ours.excess <= 1 && ours.beyond > 0.5 {
		f.Code, f.Sure = Formula, Likely
	}
	return f, true
}

// thinned is a curve's readings, every so manieth of them where they are too many.
func thinned(c series.Curve) series.Curve {
	every := (c.Len() + derivedMost - 1) / derivedMost
	if every <= 1 {
		return series.Curve{Readings: c.Readings}
	}
	var r series.Readings
	for i := 0; i < c.Len(); i += every {
		r.At, r.Val = append(r.At, c.Readings.At[i]), append(r.Val, c.Val[i])
	}
	return series.Curve{Readings: r}
}

// alongside are a curve's readings at the instants of another's.
func alongside(of, c series.Curve) series.Curve {
	return series.Zip(of, series.Curve{Readings: c.Readings}, func(_, v float64) float64 { return v })
}

// compare holds a column against a formula at every instant where all three have a reading.
func compare(t Trace, own series.Curve, of func(tempC, relHum float64) float64, kind Kind, step float64) (d disagreement) {
	want := series.Zip(t.TempC, t.RelHum, of)
	slack := series.Zip(t.TempC, t.RelHum, func(tempC, relHum float64) float64 {
		return math.Abs(of(tempC+t.TempStepK/2, relHum+t.RelHumStep/2)-of(tempC, relHum)) + step/2
	})
	apart := series.Zip(want, own, func(a, b float64) float64 { return math.Abs(b - a) })
	var sizes, excess []float64
	beyond := 0
	for i, v := range apart.Val {
		allowed, _ := slack.At(apart.Readings.At[i])
		value, _ := want.At(apart.Readings.At[i])
		alike, between := tolerances(kind, value)
		allowed += alike
		sizes, excess = append(sizes, v), append(excess, (v-allowed)/between)
		if v > allowed {
			beyond++
		}
	}
	if d.n = len(sizes); d.n > 0 {
		d.beyond, d.worst, d.excess = float64(beyond)/float64(d.n), quantile(1-derivedShare, sizes), quantile(1-derivedShare, excess)
	}
	return d
}

// tolerances are how far good formulas, and any published ones, may lie apart at a value.
func tolerances(kind Kind, value float64) (alike, between float64) {
	if kind == DewPoint {
		return alikeK, formulaK
	}
	return alikeShare * math.Abs(value), formulaShare * math.Abs(value)
}
