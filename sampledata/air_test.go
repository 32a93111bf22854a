package sampledata

import (
	"math"
	"testing"
)

// near fails the test when got is further from want than a relative tolerance.
func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if math.Abs(got-want) > relative*math.Abs(want) {
		t.Errorf("%s is %.9g, want %.9g within %.1g of it", what, got, want, relative)
	}
}

// Expected values: ASHRAE Fundamentals 2017 ch. 1 table 3. The table rests on IAPWS, the formulas on Hyland and
// Wexler, which differ by up to 2e-4.
func TestSaturationPressureMatchesPublishedTable(t *testing.T) {
	const formulasAgainstTable = 3e-4
	for tempC, wantPa := range map[float64]float64{-20: 103.24, -5: 401.74} {
		near(t, "ice", satPresIcePa(tempC), wantPa, formulasAgainstTable)
		near(t, "whichever", satPresPa(tempC), wantPa, formulasAgainstTable)
	}
	for tempC, wantPa := range map[float64]float64{5: 872.6, 25: 3169.7, 50: 12351.3} {
		near(t, "water", satPresWaterPa(tempC), wantPa, formulasAgainstTable)
		near(t, "whichever", satPresPa(tempC), wantPa, formulasAgainstTable)
	}
}

// Expected value: IAPWS G12-15 for supercooled water at −10 °C, 286.433 Pa, which Hyland and Wexler's formula
// meets within 0.4 % down to −30 °C.
func TestSaturationOverSupercooledWater(t *testing.T) {
	near(t, "water at −10 °C", satPresWaterPa(-10), 286.433, 4e-3)
	if !(satPresWaterPa(-10) > satPresIcePa(-10)) {
		t.Error("below 0 °C saturation over water must exceed that over ice")
	}
}

// Expected value: W = 0.621945 e/(P − e) (ASHRAE Fundamentals ch. 1) at 3169.7 Pa and 95 461 Pa, worked by hand.
func TestHumidityRatio(t *testing.T) {
	near(t, "humidity ratio", humRatioOf(3169.7, 95461), 0.0213603998047487, 1e-12)
	near(t, "vapour pressure and back", vapPresOf(humRatioOf(610, 101325), 101325), 610, 1e-12)
}

// Expected values: ASHRAE Fundamentals 2017 ch. 1 table 1, standard pressures in pascal.
func TestStandardPressure(t *testing.T) {
	for altitudeM, wantPa := range map[float64]float64{0: 101325, 500: 95461, 1000: 89875} {
		near(t, "pressure", pressureAtPa(altitudeM), wantPa, 1e-5)
	}
}

// Expected value: 600 colonies at 5 W give 3 kW and 13.7 kg of water a day, by the stoichiometry of honey (4.58 g
// a day per watt), and would take 13.2 % of the heat with it
// at 2.49 kJ/g if all of it left as vapour.
func TestBeesHeatAndWater(t *testing.T) {
	r := room{colonyWatts: 5}
	const wellSettled, noBroodYet = 70.0, 7.0
	sensibleW, vapourKgS := r.heat(600, noBroodYet, wellSettled)
	near(t, "water a day", vapourKgS*86400, 13.74*vapourShare, 1e-3)
	near(t, "share of latent heat", 1-sensibleW/3000, 0.132*vapourShare, 1e-3)
}

// The heat of a colony is least between 5 and 10 °C (Melathopoulos, The Biology and Management of Colonies in
// Winter) and grows with brood.
func TestColonyHeatIsLeastBetweenFiveAndTen(t *testing.T) {
	least := colonyW(8, 7, 60)
	for _, airC := range []float64{-5, 0, 4, 12, 20} {
		if colonyW(8, airC, 60) <= least {
			t.Errorf("at %g °C a colony gives %g W, not more than %g W at 7 °C", airC, colonyW(8, airC, 60), least)
		}
	}
	if colonyW(8, 5, 60) != colonyW(8, 10, 60) {
		t.Error("between 5 and 10 °C the heat should not change")
	}
	if colonyW(8, 7, 150) <= least {
		t.Error("spring brood should give more heat than midwinter")
	}
}
