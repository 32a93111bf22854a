package moistair

// VapPresPa is the vapour pressure in Pa of air at tempC with relative humidity relHum (0 to 1, over
// liquid water): relHum × SatPresWaterPa. Range -100 to 200 °C, relHum from 0 on, above 1 too (a wet
// sensor reads so); NaN outside. Source: ASHRAE Fundamentals (2017) ch. 1, eq. 12.
func VapPresPa(tempC, relHum float64) float64 {
	return orNaN(relHum >= 0, relHum*SatPresWaterPa(tempC))
}

// RelHum is the relative humidity (0 to 1, over liquid water) of air at tempC with that vapour
// pressure. Range -100 to 200 °C, pressure from 0 on; NaN outside. The inverse of VapPresPa.
func RelHum(tempC, vapPresPa float64) float64 {
	return orNaN(vapPresPa >= 0, vapPresPa/SatPresWaterPa(tempC))
}

// RelHumOverIce turns relative humidity over liquid water into relative humidity over ice, both 0 to 1;
// above 1 the air is supersaturated over ice, which is legal. Range -100 to 0.01 °C, relHum from 0 on;
// NaN outside. Source: the definition of WMO-No. 8, vol. I ch. 4, with the two saturation pressures.
func RelHumOverIce(tempC, relHum float64) float64 {
	return orNaN(relHum >= 0, relHum*SatPresWaterPa(tempC)/SatPresIcePa(tempC))
}

// RelHumOverWater turns relative humidity over ice into relative humidity over liquid water, both 0 to
// 1. Range -100 to 0.01 °C, relHumIce from 0 on; NaN outside. The inverse of RelHumOverIce.
func RelHumOverWater(tempC, relHumIce float64) float64 {
	return orNaN(relHumIce >= 0, relHumIce*SatPresIcePa(tempC)/SatPresWaterPa(tempC))
}

// VPDPa is the vapour pressure deficit in Pa: how much more vapour pressure the air could take up
// before it is saturated over liquid water, negative when relHum is above 1. Range as VapPresPa.
// Source: FAO Irrigation and Drainage Paper 56 (1998), ch. 3, "vapour pressure deficit".
func VPDPa(tempC, relHum float64) float64 {
	return SatPresWaterPa(tempC) - VapPresPa(tempC, relHum)
}

// HumRatio is the humidity ratio, kg water vapour per kg dry air, of air at total pressure pressurePa:
// 0.621945·e/(p - e). Range 0 ≤ vapPresPa < pressurePa, NaN outside. Source: ASHRAE Fundamentals (2017)
// ch. 1, eq. 20.
func HumRatio(vapPresPa, pressurePa float64) float64 {
	return orNaN(vapPresPa >= 0 && vapPresPa < pressurePa,
		molarMassRatio*vapPresPa/(pressurePa-vapPresPa))
}

// VapPresOfHumRatioPa is the vapour pressure in Pa of air with that humidity ratio (kg/kg dry air) at
// total pressure pressurePa. Range: humRatio from 0 on, pressurePa above 0; NaN outside. The inverse of
// HumRatio.
func VapPresOfHumRatioPa(humRatio, pressurePa float64) float64 {
	return orNaN(humRatio >= 0 && pressurePa > 0, pressurePa*humRatio/(molarMassRatio+humRatio))
}

// AbsHumidityKgM3 is the absolute humidity, kg water vapour per m³ of moist air, of air at tempC:
// e/(R·T) with R = 461.524 J/(kg·K). Range -100 to 200 °C, vapPresPa from 0 on; NaN outside. Source:
// the ideal gas law for vapour, ASHRAE Fundamentals (2017) ch. 1, eqs. 2 and 11.
func AbsHumidityKgM3(tempC, vapPresPa float64) float64 {
	return orNaN(vapPresPa >= 0 && within(tempC, water.lowC, water.highC),
		vapPresPa/(gasConstVapour*(tempC+zeroCelsiusK)))
}
