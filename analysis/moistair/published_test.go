package moistair_test

import (
	"math"
	"testing"

	"thawbook/analysis/moistair"
)

// a check is one published number: what we make of its inputs, and how far off it may be.
type check struct {
	source string
	got    float64
	want   float64
	relTol float64
}

func run(t *testing.T, checks []check) {
	t.Helper()
	for _, c := range checks {
		near(t, c.source, c.got, c.want, c.relTol*math.Abs(c.want))
	}
}

func TestSaturationOfHandbookTable3(t *testing.T) {
	// ASHRAE Fundamentals (2017) ch. 1, table 3. The printed table follows IAPWS, the printed equations
	// Hyland and Wexler: 3e-4 between them. At -60 °C the table shows three digits only.
	const src = "ASHRAE 2017 ch. 1 table 3, "
	run(t, []check{
		{src + "ice -60 °C", moistair.SatPresIcePa(-60), 1.08, 0.005},
		{src + "ice -20 °C", moistair.SatPresIcePa(-20), 103.24, 3e-4},
		{src + "ice -5 °C", moistair.SatPresIcePa(-5), 401.74, 3e-4},
		{src + "water 5 °C", moistair.SatPresWaterPa(5), 872.6, 3e-4},
		{src + "water 25 °C", moistair.SatPresWaterPa(25), 3169.7, 3e-4},
		{src + "water 50 °C", moistair.SatPresWaterPa(50), 12351.3, 3e-4},
		{src + "water 100 °C", moistair.SatPresWaterPa(100), 101418.0, 3e-4},
	})
}

func TestSaturationOfIAPWS(t *testing.T) {
	const ice, if97, sc = "IAPWS R14-08, ice ", "IAPWS-IF97, water ", "IAPWS G12-15, supercooled "
	run(t, []check{
		// Ice: 0.028 % at most between -30 and 0 °C; at 230 K (-43.15 °C) the formulas part further.
		{ice + "230 K", moistair.SatPresIcePa(230 - 273.15), 8.94735, 5e-4},
		{ice + "-30 °C", moistair.SatPresIcePa(-30), 38.0051, 3e-4},
		{ice + "-20 °C", moistair.SatPresIcePa(-20), 103.239, 3e-4},
		{ice + "-10 °C", moistair.SatPresIcePa(-10), 259.874, 3e-4},
		{ice + "-5 °C", moistair.SatPresIcePa(-5), 401.741, 3e-4},
		// Water above 0 °C: 0.018 % at most up to 40 °C, table 36 (0.1 MPa) at its own digits.
		{if97 + "0 °C", moistair.SatPresWaterPa(0), 611.213, 2e-4},
		{if97 + "10 °C", moistair.SatPresWaterPa(10), 1228.18, 2e-4},
		{if97 + "20 °C", moistair.SatPresWaterPa(20), 2339.21, 2e-4},
		{if97 + "300 K, table 35", moistair.SatPresWaterPa(300 - 273.15), 3536.58941, 2e-4},
		{if97 + "30 °C", moistair.SatPresWaterPa(30), 4246.69, 2e-4},
		{if97 + "40 °C", moistair.SatPresWaterPa(40), 7384.43, 2e-4},
		{if97 + "0.1 MPa, table 36", moistair.SatPresWaterPa(372.755919 - 273.15), 1e5, 3e-4},
		{if97 + "1 MPa, table 36", moistair.SatPresWaterPa(453.035632 - 273.15), 1e6, 1e-3},
		// Supercooled water: an extrapolation, 0.363 % at most between -30 and 0 °C.
		{sc + "-30 °C", moistair.SatPresWaterPa(-30), 50.8765, 4e-3},
		{sc + "-20 °C", moistair.SatPresWaterPa(-20), 125.449, 4e-3},
		{sc + "-10 °C", moistair.SatPresWaterPa(-10), 286.433, 4e-3},
		// Murphy and Koop (2005), appendix, from memory: another fit, which over supercooled water lies
		// 0.5 % from Hyland and Wexler's at 240 K.
		{"Murphy and Koop, ice 240 K", moistair.SatPresIcePa(240 - 273.15), 27.272, 5e-4},
		{"Murphy and Koop, water 240 K", moistair.SatPresWaterPa(240 - 273.15), 37.667, 1e-2},
		{"Murphy and Koop, water 300 K", moistair.SatPresWaterPa(300 - 273.15), 3536.8, 3e-4},
		// The triple point, Wexler (1976) and IAPWS: both curves meet there.
		{"triple point, water", moistair.SatPresWaterPa(0.01), 611.657, 1e-6},
		{"triple point, ice", moistair.SatPresIcePa(0.01), 611.657, 1e-6},
	})
}

func TestFormulaSpread(t *testing.T) {
	// Sonntag (1990, 1994) and WMO-No. 8 annex 4.B, written out here from their published coefficients:
	// independent formulas for the same quantity. Sonntag's lies within 0.1 % of ours, WMO's own
	// distance from the others is up to 0.3 %.
	sonntag := func(K float64) float64 {
		return math.Exp(-6096.9385/K + 21.2409642 - 2.711193e-2*K + 1.673952e-5*K*K + 2.433502*math.Log(K))
	}
	sonntagIce := func(K float64) float64 {
		return math.Exp(-6024.5282/K + 29.32707 + 1.0613868e-2*K - 1.3198825e-5*K*K - 0.49382577*math.Log(K))
	}
	for tempC := -40.0; tempC <= 50; tempC++ {
		K := tempC + 273.15
		run(t, []check{
			{"Sonntag, water", moistair.SatPresWaterPa(tempC), sonntag(K), 1e-3},
			{"WMO, water", moistair.SatPresWaterPa(tempC), 611.2 * math.Exp(17.62*tempC/(243.12+tempC)), 3e-3},
		})
		if tempC <= 0 {
			run(t, []check{{"Sonntag, ice", moistair.SatPresIcePa(tempC), sonntagIce(K), 1e-3}})
		}
	}
}

func TestMoistAirOfHandbookTable2(t *testing.T) {
	// ASHRAE Fundamentals (2017) ch. 1, table 2: real moist air at 101325 Pa. The ideal-gas relations
	// lack its enhancement factor: 0.5 % on the humidity ratio, 0.62 % at 50 °C (plus half a unit of the
	// last printed digit), and up to 1.5 % on enthalpy, where -5 °C is a small difference of large parts.
	const p, src = 101325, "ASHRAE 2017 ch. 1 table 2, "
	saturated := func(tempC float64) float64 { return moistair.HumRatio(moistair.SatPresPa(tempC), p) }
	enthalpy := func(tempC float64) float64 { return moistair.EnthalpyJKg(tempC, saturated(tempC)) }
	run(t, []check{
		{src + "W -50 °C", saturated(-50), 0.0000243, 7e-3},
		{src + "W -20 °C", saturated(-20), 0.0006373, 5e-3},
		{src + "W -5 °C", saturated(-5), 0.0024863, 5e-3},
		{src + "W 5 °C", saturated(5), 0.005425, 5e-3},
		{src + "W 25 °C", saturated(25), 0.020173, 5e-3},
		{src + "W 50 °C", saturated(50), 0.086863, 6.5e-3},
		{src + "h -20 °C", enthalpy(-20), -18542, 5e-3},
		{src + "h -5 °C", enthalpy(-5), 1164, 2.5e-2},
		{src + "h 5 °C", enthalpy(5), 18639, 5e-3},
		{src + "h 25 °C", enthalpy(25), 76504, 5e-3},
		{src + "dry h 25 °C", moistair.EnthalpyJKg(25, 0), 25148, 1e-4},
		{src + "dry v 25 °C", moistair.SpecificVolumeM3Kg(25, 0, p), 0.8443, 4e-4},
		{"ASHRAE table 1, -500 m", moistair.PressurePa(-500), 107478, 1e-5},
		{"ASHRAE table 1, 0 m", moistair.PressurePa(0), 101325, 0},
		{"ASHRAE table 1, 500 m", moistair.PressurePa(500), 95461, 1e-5},
		{"ASHRAE table 1, 1000 m", moistair.PressurePa(1000), 89875, 1e-5},
		{"ASHRAE table 1, 4000 m", moistair.PressurePa(4000), 61640, 2e-5},
		{"FAO-56 example 2, 1800 m", moistair.PressurePa(1800), 81800, 4e-3}, // another formula, 3 digits
		{"0.621945 e/(p-e)", moistair.HumRatio(3169.7, 95461), 0.0213603998047487, 1e-12},
	})
}

func TestHandbookExample1(t *testing.T) {
	// ASHRAE Fundamentals (2017) ch. 1, example 1: dry bulb 40 °C, wet bulb 20 °C, 101325 Pa. The example
	// reads a chart: W 0.0065, RH 14 %, dew point 7 °C, h 56.7 kJ/kg, v 0.896 m³/kg; half its last digit.
	const p, humRatio = 101325, 0.0065
	vapPresPa := moistair.VapPresOfHumRatioPa(humRatio, p)
	near(t, "wet bulb", moistair.WetBulbC(40, humRatio, p), 20, 0.1)
	near(t, "relative humidity", moistair.RelHum(40, vapPresPa), 0.14, 0.005)
	near(t, "dew point", moistair.DewPointC(vapPresPa), 7, 0.7) // W 0.0065 ± 0.00005 is itself ± 0.1 K
	near(t, "enthalpy", moistair.EnthalpyJKg(40, humRatio), 56700, 500)
	near(t, "volume", moistair.SpecificVolumeM3Kg(40, humRatio, p), 0.896, 0.001)
	// Below freezing, eq. 35 worked in a spreadsheet (test suite of psychrolib): -1 °C, ice bulb -5 °C.
	near(t, "ice bulb", moistair.WetBulbC(-1, 0.00120399819933844, 95461), -5, 1e-3)
}

func TestAirAt25CAnd60Percent(t *testing.T) {
	// The worked point of a library of the ASHRAE (2017) formulas, psychrolib 1.1.1, at its printed digits.
	vapPresPa := moistair.VapPresPa(25, 0.60)
	humRatio := moistair.HumRatio(vapPresPa, 101325)
	near(t, "dew point", moistair.DewPointC(vapPresPa), 16.701, 6e-4)
	near(t, "humidity ratio", humRatio, 0.011895, 6e-7)
	near(t, "wet bulb", moistair.WetBulbC(25, humRatio, 101325), 19.471, 1e-3)
	near(t, "enthalpy", moistair.EnthalpyJKg(25, humRatio), 55453, 0.6)
	near(t, "volume", moistair.SpecificVolumeM3Kg(25, humRatio, 101325), 0.86078, 6e-6)
	near(t, "VPD", moistair.VPDPa(25, 0.60), 1267.7, 0.06)
}

func TestFAO56Examples(t *testing.T) {
	// FAO Irrigation and Drainage Paper 56 (1998), examples 3, 4, 5, 17 and 20. It uses the Tetens
	// formula, 0.1 % from ours in this range, and prints three or four digits.
	run(t, []check{
		{"example 3, 24.5 °C", moistair.SatPresWaterPa(24.5), 3075, 1.5e-3},
		{"example 3, 15 °C", moistair.SatPresWaterPa(15), 1705, 1.5e-3},
		{"example 5, 18 °C", moistair.SatPresWaterPa(18), 2064, 1.5e-3},
		{"example 5, 25 °C", moistair.SatPresWaterPa(25), 3168, 1.5e-3},
		{"example 5, actual", (moistair.VapPresPa(18, 0.82) + moistair.VapPresPa(25, 0.54)) / 2, 1700, 3e-3},
		{"example 5, from the maximum", moistair.VapPresPa(18, 0.82), 1690, 3e-3},
		{"example 20, dew point 14.8 °C", moistair.SatPresWaterPa(14.8), 1680, 3e-3},
		{"example 20, turned round", moistair.DewPointC(1680), 14.8, 4e-3},
	})
	// Example 4: psychrometer 19.5 / 25.6 °C at 87.9 kPa with FAO's ventilated coefficient 0.000662 gives
	// 1.91 kPa; the thermodynamic wet bulb of that air lies within 0.15 K of the psychrometer's.
	near(t, "example 4, wet bulb", moistair.WetBulbC(25.6, moistair.HumRatio(1910, 87900), 87900), 19.5, 0.15)
}

func TestStullsExample(t *testing.T) {
	// Stull (2011), J. Appl. Meteor. Climatol. 50, 2267: 20 °C and 50 % have a wet bulb of 13.7 °C; his
	// fit is good to -1.0 … +0.65 K and better than 0.3 K on average.
	humRatio := moistair.HumRatio(moistair.VapPresPa(20, 0.5), 101325)
	near(t, "wet bulb", moistair.WetBulbC(20, humRatio, 101325), 13.7, 0.3)
}

func TestConventionsBelowZero(t *testing.T) {
	// One reading, 10 % at 0 °F, under the two meanings of relative humidity, in °F: the differences of
	// 4 to 6 °F are no error. Over ice: psychrolib (ASHRAE equations) gives -40.10981. Over water: a
	// separate computation with Murphy and Koop (2005), which at -42 °C is 0.9 % from Hyland and Wexler
	// over water (0.15 °F of dew point) and 0.1 % over ice.
	tempC := (0.0 - 32) / 1.8
	toF := func(c float64) float64 { return c*1.8 + 32 }
	near(t, "dew point, RH over water", toF(moistair.DewPointC(moistair.VapPresPa(tempC, 0.1))), -43.77, 0.16)
	near(t, "frost point, RH over water", toF(moistair.FrostPointC(moistair.VapPresPa(tempC, 0.1))), -37.33, 0.02)
	overWater := moistair.RelHumOverWater(tempC, 0.1)
	near(t, "frost point, RH over ice", toF(moistair.FrostPointC(moistair.VapPresPa(tempC, overWater))), -40.10981, 0.001)
}
