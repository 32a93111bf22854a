package moistair

import "math"

// WetBulbC is the thermodynamic wet-bulb temperature in °C of air at tempC with that humidity ratio
// (kg/kg dry air) and total pressure: the psychrometric equation solved by halving the interval. Where
// the bulb would be below 0 °C it is the ice bulb, up to 0.7 K lower: the value jumps there as the air
// gets drier. Air supersaturated over ice has its ice bulb above tempC.
// Range -100 to 200 °C, humRatio and pressurePa such that the air has a dew or frost point; NaN outside,
// also for dry air (humRatio 0). Source: ASHRAE Fundamentals (2017) ch. 1, eqs. 33 (water) and 35 (ice).
func WetBulbC(tempC, humRatio, pressurePa float64) float64 {
	if !within(tempC, water.lowC, water.highC) {
		return math.NaN()
	}
	const rounding = 1e-9 // K, so that saturated air at 0 °C keeps its water bulb
	vapPresPa := VapPresOfHumRatioPa(humRatio, pressurePa)
	if bulbC := solveBulb(humRatioOfWetBulb, DewPointC(vapPresPa), tempC, humRatio, pressurePa); bulbC >= -rounding {
		return bulbC
	}
	return solveBulb(humRatioOfIceBulb, FrostPointC(vapPresPa), tempC, humRatio, pressurePa)
}

// humRatioOfWetBulb is the humidity ratio of air at tempC whose wet bulb reads bulbC (eq. 33).
func humRatioOfWetBulb(tempC, bulbC, pressurePa float64) float64 {
	saturated := HumRatio(SatPresWaterPa(bulbC), pressurePa)
	return ((2501-2.326*bulbC)*saturated - 1.006*(tempC-bulbC)) / (2501 + 1.86*tempC - 4.186*bulbC)
}

// humRatioOfIceBulb is the humidity ratio of air at tempC whose ice bulb reads bulbC (eq. 35).
func humRatioOfIceBulb(tempC, bulbC, pressurePa float64) float64 {
	saturated := HumRatio(SatPresIcePa(min(bulbC, triplePointC)), pressurePa)
	return ((2830-0.24*bulbC)*saturated - 1.006*(tempC-bulbC)) / (2830 + 1.86*tempC - 2.1*bulbC)
}

// solveBulb finds the bulb temperature between the saturation temperature saturatedC and the dry bulb
// at which humRatioOf gives humRatio. NaN when saturatedC is.
func solveBulb(humRatioOf func(tempC, bulbC, pressurePa float64) float64,
	saturatedC, tempC, humRatio, pressurePa float64) float64 {
	if math.IsNaN(saturatedC) {
		return math.NaN()
	}
	lo, hi := min(saturatedC, tempC), max(saturatedC, tempC)
	for range 60 {
		mid := lo + (hi-lo)/2
		if humRatioOf(tempC, mid, pressurePa) < humRatio {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2
}
