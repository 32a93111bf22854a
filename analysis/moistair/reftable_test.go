package moistair_test

import (
	"fmt"
	"math"
	"testing"

	"thawbook/analysis/moistair"
)

// The reference table (its header names the libraries and versions) has two conventions. In its ASH_*
// columns saturation, relative humidity and "dew point" are over ice up to 0.01 °C; in its IAPWS_*
// columns relative humidity is over liquid water at every temperature.

func TestReferenceTableASHRAE(t *testing.T) {
	col, rows := readShared(t, "ref_tables.csv")
	if len(rows) != 90 {
		t.Fatalf("%d rows, want 90", len(rows))
	}
	for _, row := range rows {
		cell := func(name string) float64 { return number(row[col[name]]) }
		tempC, relHum := cell("T_C"), cell("RH_pct")/100
		overIce := tempC <= 0.01
		if overIce {
			relHum = moistair.RelHumOverWater(tempC, relHum)
		}
		vapPresPa := moistair.VapPresPa(tempC, relHum)
		humRatio := moistair.HumRatio(vapPresPa, 101325)
		at := func(what string) string { return fmt.Sprintf("%s at %g °C, %s %%", what, tempC, row[col["RH_pct"]]) }

		// Same formulas and coefficients: the table's own eight digits.
		near(t, at("saturation"), moistair.SatPresPa(tempC), cell("ASH_pws_Pa"), 1e-6*cell("ASH_pws_Pa"))
		near(t, at("vapour pressure"), vapPresPa, cell("ASH_pv_Pa"), 1e-6*cell("ASH_pv_Pa"))
		near(t, at("deficit"), moistair.SatPresPa(tempC)-vapPresPa, cell("ASH_vpd_Pa"), 1e-4)
		near(t, at("humidity ratio"), humRatio, cell("ASH_W"), 1e-6*cell("ASH_W"))
		near(t, at("enthalpy"), moistair.EnthalpyJKg(tempC, humRatio), cell("ASH_h_Jkg"), 0.01)
		near(t, at("volume"), moistair.SpecificVolumeM3Kg(tempC, humRatio, 101325), cell("ASH_v_m3kg"), 1e-7)
		// The library stops its search for the wet bulb at 0.001 K.
		near(t, at("wet bulb"), moistair.WetBulbC(tempC, humRatio, 101325), cell("ASH_twb_C"), 1.5e-3)
		// Its dew point is over ice wherever it is below the triple point.
		if tdewC := cell("ASH_tdew_C"); tdewC < 0.01 {
			near(t, at("frost point"), moistair.FrostPointC(vapPresPa), tdewC, 1e-4)
		} else {
			near(t, at("dew point"), moistair.DewPointC(vapPresPa), tdewC, 1e-4)
		}
	}
}

func TestReferenceTableIAPWS(t *testing.T) {
	col, rows := readShared(t, "ref_tables.csv")
	dewPoints, frostPoints := 0, 0
	for _, row := range rows {
		cell := func(name string) float64 { return number(row[col[name]]) }
		tempC, relHum := cell("T_C"), cell("RH_pct")/100
		vapPresPa := moistair.VapPresPa(tempC, relHum)
		at := func(what string) string { return fmt.Sprintf("%s at %g °C, %s %%", what, tempC, row[col["RH_pct"]]) }

		// Hyland and Wexler against IAPWS, measured on a 1 K grid: water 0.018 % from 0 to 40 °C and
		// 0.363 % down to -30 °C (supercooled), ice 0.028 %; dew point 0.017 K above and 0.055 K below
		// 0 °C, frost point 0.033 K.
		waterTol, dewTol := 2e-4, 0.02
		if tempC < 0 {
			waterTol, dewTol = 4e-3, 0.06
		}
		near(t, at("over water"), moistair.SatPresWaterPa(tempC), cell("IAPWS_esw_Pa"), waterTol*cell("IAPWS_esw_Pa"))
		near(t, at("vapour pressure"), vapPresPa, cell("IAPWS_e_Pa"), waterTol*cell("IAPWS_e_Pa"))
		near(t, at("humidity ratio"), moistair.HumRatio(vapPresPa, 101325), cell("IAPWS_W"), 1.1*waterTol*cell("IAPWS_W"))
		if ei := cell("IAPWS_esi_Pa"); !math.IsNaN(ei) {
			near(t, at("over ice"), moistair.SatPresIcePa(tempC), ei, 3e-4*ei)
		}
		if tdewC := cell("IAPWS_tdew_water_C"); !math.IsNaN(tdewC) {
			dewPoints++
			near(t, at("dew point"), moistair.DewPointC(vapPresPa), tdewC, dewTol)
		}
		if tfrostC := cell("IAPWS_tfrost_C"); !math.IsNaN(tfrostC) && tfrostC < 0 {
			frostPoints++
			near(t, at("frost point"), moistair.FrostPointC(vapPresPa), tfrostC, 0.035)
		}
	}
	if dewPoints < 80 || frostPoints < 45 {
		t.Errorf("only %d dew points and %d frost points compared", dewPoints, frostPoints)
	}
}
