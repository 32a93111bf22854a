package moistair_test

import (
	"fmt"
	"math"
	"testing"

	"thawbook/analysis/moistair"
)

// sweep calls f for -40 to 50 °C and 1 to 100 %.
func sweep(f func(tempC, relHum float64)) {
	for tempC := -40.0; tempC <= 50; tempC += 0.5 {
		for percent := 1.0; percent <= 100; percent++ {
			f(tempC, percent/100)
		}
	}
}

func TestRoundTrips(t *testing.T) {
	sweep(func(tempC, relHum float64) {
		at := func(what string) string { return fmt.Sprintf("%s of %g °C %g", what, tempC, relHum) }
		vapPresPa := moistair.VapPresPa(tempC, relHum)
		near(t, at("RelHum"), moistair.RelHum(tempC, vapPresPa), relHum, 1e-12)
		near(t, at("SatPresWaterPa(DewPointC)"), moistair.SatPresWaterPa(moistair.DewPointC(vapPresPa)), vapPresPa, 1e-9*vapPresPa)
		if vapPresPa < 611 {
			near(t, at("SatPresIcePa(FrostPointC)"), moistair.SatPresIcePa(moistair.FrostPointC(vapPresPa)), vapPresPa, 1e-9*vapPresPa)
		}
		if tempC <= 0 {
			near(t, at("RelHumOverWater"), moistair.RelHumOverWater(tempC, moistair.RelHumOverIce(tempC, relHum)), relHum, 1e-12)
			near(t, at("FrostPointC(SatPresIcePa)"), moistair.FrostPointC(moistair.SatPresIcePa(tempC)), tempC, 1e-9)
		}
		near(t, at("DewPointC(SatPresWaterPa)"), moistair.DewPointC(moistair.SatPresWaterPa(tempC)), tempC, 1e-9)
		humRatio := moistair.HumRatio(vapPresPa, 95000)
		near(t, at("VapPresOfHumRatioPa"), moistair.VapPresOfHumRatioPa(humRatio, 95000), vapPresPa, 1e-12*vapPresPa)
	})
}

func TestRangeEndsRoundTrip(t *testing.T) {
	for _, tempC := range []float64{-100, 0, 0.01, 200} {
		near(t, "dew point at the end of the range", moistair.DewPointC(moistair.SatPresWaterPa(tempC)), tempC, 1e-6)
	}
	for _, tempC := range []float64{-100, 0, 0.01} {
		near(t, "frost point at the end of the range", moistair.FrostPointC(moistair.SatPresIcePa(tempC)), tempC, 1e-6)
	}
}

func TestWholeRangeIsKnownAndOrdered(t *testing.T) {
	// Dew point ≤ dry bulb; frost point ≥ dew point below zero; the wet bulb lies between the saturation
	// temperature and the dry bulb; all of them rise with humidity. slack: the solver's rounding in K.
	const slack, p = 1e-9, 101325
	last := map[string]float64{}
	rises := func(what string, relHum, v float64) bool {
		ok := relHum == 0.01 || v > last[what]
		last[what] = v
		return ok
	}
	sweep(func(tempC, relHum float64) {
		vapPresPa := moistair.VapPresPa(tempC, relHum)
		humRatio := moistair.HumRatio(vapPresPa, p)
		dewC, wetC := moistair.DewPointC(vapPresPa), moistair.WetBulbC(tempC, humRatio, p)
		saturatedC := dewC
		if frostC := moistair.FrostPointC(vapPresPa); wetC < 0 {
			saturatedC = frostC
			if !(frostC >= dewC) || !rises("frost", relHum, frostC) {
				t.Errorf("%g °C %g: frost point %g, dew point %g", tempC, relHum, frostC, dewC)
			}
		}
		if !(dewC <= tempC+slack) || !rises("dew", relHum, dewC) {
			t.Errorf("%g °C %g: dew point %g", tempC, relHum, dewC)
		}
		if !(wetC >= min(saturatedC, tempC)-slack && wetC <= max(saturatedC, tempC)+slack) || !rises("wet", relHum, wetC) {
			t.Errorf("%g °C %g: wet bulb %g, saturated at %g", tempC, relHum, wetC, saturatedC)
		}
		if v := moistair.SpecificVolumeM3Kg(tempC, humRatio, p); !(v > 0) || !rises("volume", relHum, v) {
			t.Errorf("%g °C %g: volume %g", tempC, relHum, v)
		}
		if h := moistair.EnthalpyJKg(tempC, humRatio); !rises("enthalpy", relHum, h) || math.IsNaN(h) {
			t.Errorf("%g °C %g: enthalpy %g", tempC, relHum, h)
		}
		if a := moistair.AbsHumidityKgM3(tempC, vapPresPa); !(a > 0) || !rises("absolute", relHum, a) {
			t.Errorf("%g °C %g: absolute humidity %g", tempC, relHum, a)
		}
	})
}

func TestWetBulbSolvesThePsychrometricEquation(t *testing.T) {
	// ASHRAE Fundamentals (2017) ch. 1, eqs. 33 and 35, written out once more: W from the bulb found.
	const p = 101325
	sweep(func(tempC, relHum float64) {
		humRatio := moistair.HumRatio(moistair.VapPresPa(tempC, relHum), p)
		bulbC := moistair.WetBulbC(tempC, humRatio, p)
		ws := moistair.HumRatio(moistair.SatPresPa(bulbC), p)
		back := ((2501-2.326*bulbC)*ws - 1.006*(tempC-bulbC)) / (2501 + 1.86*tempC - 4.186*bulbC)
		if bulbC < 0 {
			back = ((2830-0.24*bulbC)*ws - 1.006*(tempC-bulbC)) / (2830 + 1.86*tempC - 2.1*bulbC)
		}
		// 1e-6: between 0 and 0.01 °C the bulb counts as water while SatPresPa is still over ice.
		near(t, fmt.Sprintf("humidity ratio of %g °C %g", tempC, relHum), back, humRatio, 1e-6)
	})
}

func TestSaturationSlopesUp(t *testing.T) {
	for tempC := -100.0; tempC < 200; tempC += 0.1 {
		if !(moistair.SatPresWaterPa(tempC+0.1) > moistair.SatPresWaterPa(tempC)) && tempC+0.1 <= 200 {
			t.Errorf("water saturation falls at %g °C", tempC)
		}
		if tempC < -0.1 && !(moistair.SatPresIcePa(tempC+0.1) > moistair.SatPresIcePa(tempC)) {
			t.Errorf("ice saturation falls at %g °C", tempC)
		}
	}
}

func TestOutsideTheRangeIsNaN(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for what, got := range map[string]float64{
		"water -101 °C":            moistair.SatPresWaterPa(-101),
		"water 201 °C":             moistair.SatPresWaterPa(201),
		"ice 1 °C":                 moistair.SatPresIcePa(1),
		"ice -101 °C":              moistair.SatPresIcePa(-101),
		"saturation NaN":           moistair.SatPresPa(nan),
		"vapour pressure of -1 %":  moistair.VapPresPa(4, -0.01),
		"vapour pressure of NaN":   moistair.VapPresPa(4, nan),
		"vapour pressure of Inf":   moistair.VapPresPa(4, inf),
		"dew point of dry air":     moistair.DewPointC(0),
		"dew point of -1 Pa":       moistair.DewPointC(-1),
		"dew point of NaN":         moistair.DewPointC(nan),
		"dew point of Inf":         moistair.DewPointC(inf),
		"dew point of 2 MPa":       moistair.DewPointC(2e6),
		"dew point of 1e300 Pa":    moistair.DewPointC(1e300),
		"dew point of 1e-300 Pa":   moistair.DewPointC(1e-300),
		"frost point of 612 Pa":    moistair.FrostPointC(612),
		"frost point of 1 MPa":     moistair.FrostPointC(1e6),
		"humidity ratio of steam":  moistair.HumRatio(101325, 101325),
		"humidity ratio of -1 Pa":  moistair.HumRatio(-1, 101325),
		"pressure of -1 kg/kg":     moistair.VapPresOfHumRatioPa(-1, 101325),
		"pressure without air":     moistair.VapPresOfHumRatioPa(0.01, 0),
		"relative humidity of -1":  moistair.RelHum(4, -1),
		"over ice at 4 °C":         moistair.RelHumOverIce(4, 0.5),
		"over water at 4 °C":       moistair.RelHumOverWater(4, 0.5),
		"absolute humidity of NaN": moistair.AbsHumidityKgM3(4, nan),
		"enthalpy of Inf":          moistair.EnthalpyJKg(4, inf),
		"volume at no pressure":    moistair.SpecificVolumeM3Kg(4, 0.004, 0),
		"wet bulb of dry air":      moistair.WetBulbC(4, 0, 101325),
		"wet bulb of NaN":          moistair.WetBulbC(nan, 0.004, 101325),
		"deficit at NaN":           moistair.VPDPa(nan, 0.5),
		"altitude 12 km":           moistair.PressurePa(12000),
		"altitude -6 km":           moistair.PressurePa(-6000),
	} {
		if !math.IsNaN(got) {
			t.Errorf("%s = %g, want NaN", what, got)
		}
	}
}

func TestNothingIsClamped(t *testing.T) {
	if got := moistair.RelHumOverIce(-30, 0.9); !(got > 1.1) {
		t.Errorf("supersaturation over ice came out as %g", got)
	}
	if got := moistair.VPDPa(10, 1.05); !(got < 0) {
		t.Errorf("deficit of air at 105 %% came out as %g", got)
	}
	if got := moistair.WetBulbC(-20, moistair.HumRatio(moistair.SatPresWaterPa(-20), 101325), 101325); !(got > -20) {
		t.Errorf("ice bulb of air supersaturated over ice came out as %g", got)
	}
}

func TestWetBulbJump(t *testing.T) {
	// Around 0 °C the bulb freezes: the value jumps down, by no more than the doc comment says.
	const p = 101325
	seen := 0.0
	for tempC := 0.5; tempC < 10; tempC += 0.5 {
		last := math.NaN()
		for e := 1.0; e < 900; e += 0.25 {
			bulbC := moistair.WetBulbC(tempC, moistair.HumRatio(e, p), p)
			if last < 0 && bulbC >= 0 {
				seen = max(seen, bulbC-last)
			}
			last = bulbC
		}
	}
	if !(seen > 0.1 && seen <= 0.71) {
		t.Errorf("largest jump %g K", seen)
	}
}

var sink float64

func BenchmarkDewPoint(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		sink = moistair.DewPointC(400 + float64(i%400))
	}
}

func BenchmarkWetBulb(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		sink = moistair.WetBulbC(4, 0.002+float64(i%400)*5e-6, 101325)
	}
}
