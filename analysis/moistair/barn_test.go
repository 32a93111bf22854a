package moistair_test

import (
	"fmt"
	"math"
	"testing"

	"thawbook/analysis/moistair"
)

func TestBarnAir(t *testing.T) {
	// Air of a wintering barn at 101325 Pa, worked from Hyland and Wexler's equations, W = 0.621945 e/(p-e)
	// and h = 1.006 t + W (2501 + 1.86 t) in a separate computation; half the last printed digit each
	// (one whole for the absolute humidity, whose vapour constant was rounded to 461.5 J/(kg·K)).
	rows := []struct{ tempC, relHum, vapPresPa, gKg, kJkg, vpdPa, gM3, dewC, frostC float64 }{
		{4, 0.50, 406.74, 2.5067, 10.312, 406.74, 3.180, -5.48, -4.86},
		{4, 0.60, 488.09, 3.0104, 11.576, 325.39, 3.816, -3.06, -2.70},
		{4, 0.75, 610.11, 3.7676, 13.475, 203.37, 4.770, -0.03, -0.02},
		{4, 0.85, 691.46, 4.2734, 14.744, 122.02, 5.406, 1.71, math.NaN()},
		{4, 0.95, 772.81, 4.7800, 16.014, 40.67, 6.042, 3.27, math.NaN()},
		{2, 0.60, 423.57, 2.6109, 8.551, 282.38, 3.336, -4.95, -4.38},
		{8, 0.60, 643.70, 3.9764, 18.052, 429.14, 4.961, 0.72, math.NaN()},
		{10, 0.60, 736.80, 4.5557, 21.538, 491.20, 5.638, 2.60, math.NaN()},
		{-20, 0.80, 100.50, 0.6175, -18.60, 25.13, 0.860, -22.56, -20.28},
		{20, 0.50, 1169.40, 7.2617, 38.552, 1169.40, 8.644, 9.27, math.NaN()},
	}
	for _, r := range rows {
		at := func(what string) string { return fmt.Sprintf("%s of %g °C %g", what, r.tempC, r.relHum) }
		vapPresPa := moistair.VapPresPa(r.tempC, r.relHum)
		humRatio := moistair.HumRatio(vapPresPa, 101325)
		near(t, at("vapour pressure"), vapPresPa, r.vapPresPa, 0.006)
		near(t, at("humidity ratio"), humRatio*1000, r.gKg, 6e-5)
		near(t, at("enthalpy"), moistair.EnthalpyJKg(r.tempC, humRatio)/1000, r.kJkg, 6e-3)
		near(t, at("deficit"), moistair.VPDPa(r.tempC, r.relHum), r.vpdPa, 0.006)
		near(t, at("absolute humidity"), moistair.AbsHumidityKgM3(r.tempC, vapPresPa)*1000, r.gM3, 1e-3)
		near(t, at("dew point"), moistair.DewPointC(vapPresPa), r.dewC, 0.006)
		near(t, at("frost point"), moistair.FrostPointC(vapPresPa), r.frostC, 0.006)
	}
}

func TestIceAndWater(t *testing.T) {
	// What a reading over water is over ice, worked in a separate computation with Murphy and Koop (2005):
	// within 0.06 K and 0.3 points of Hyland and Wexler down to -30 °C.
	rows := []struct{ tempC, relHum, dewC, frostC, overIce float64 }{
		{-5, 0.50, -13.81, -12.33, 0.525},
		{-5, 0.80, -7.91, -7.03, 0.840},
		{-10, 0.80, -12.79, -11.41, 0.882},
		{-20, 0.50, -27.77, -25.08, 0.608},
		{-20, 0.80, -22.56, -20.29, 0.972},
		{-30, 0.80, -32.34, -29.33, 1.072}, // supersaturated over ice: legal, not clamped
	}
	for _, r := range rows {
		at := func(what string) string { return fmt.Sprintf("%s of %g °C %g", what, r.tempC, r.relHum) }
		vapPresPa := moistair.VapPresPa(r.tempC, r.relHum)
		near(t, at("dew point"), moistair.DewPointC(vapPresPa), r.dewC, 0.06)
		near(t, at("frost point"), moistair.FrostPointC(vapPresPa), r.frostC, 0.06)
		near(t, at("humidity over ice"), moistair.RelHumOverIce(r.tempC, r.relHum), r.overIce, 0.0035)
	}
	// Ratio of ice to water saturation, Murphy and Koop (2005); theirs and ours part below -30 °C.
	ratios := map[float64]float64{-1: 0.9903, -2: 0.9807, -5: 0.9526, -10: 0.9073, -15: 0.8640,
		-20: 0.8227, -25: 0.7834, -30: 0.7463, -40: 0.6792}
	for tempC, ratio := range ratios {
		got := moistair.SatPresIcePa(tempC) / moistair.SatPresWaterPa(tempC)
		near(t, fmt.Sprintf("ice/water at %g °C", tempC), got, ratio, 8e-3*ratio)
	}
}
