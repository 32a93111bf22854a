package moistair

// EnthalpyJKg is the specific enthalpy of moist air in J per kg dry air, zero for dry air at 0 °C and
// liquid water at 0 °C: 1006·t + W·(2501000 + 1860·t). Range -100 to 200 °C, humRatio (kg/kg dry air)
// from 0 on; NaN outside. Source: ASHRAE Fundamentals (2017) ch. 1, eq. 30.
func EnthalpyJKg(tempC, humRatio float64) float64 {
	return orNaN(within(tempC, water.lowC, water.highC) && humRatio >= 0,
		1006*tempC+humRatio*(2501000+1860*tempC))
}

// SpecificVolumeM3Kg is the volume in m³ of moist air that holds 1 kg of dry air:
// 287.042·T·(1 + 1.607858·W)/p. Range -100 to 200 °C, humRatio (kg/kg dry air) from 0 on, pressurePa
// above 0; NaN outside. Source: ASHRAE Fundamentals (2017) ch. 1, eq. 26.
func SpecificVolumeM3Kg(tempC, humRatio, pressurePa float64) float64 {
	return orNaN(within(tempC, water.lowC, water.highC) && humRatio >= 0 && pressurePa > 0,
		gasConstDryAir*(tempC+zeroCelsiusK)*(1+1.607858*humRatio)/pressurePa)
}
