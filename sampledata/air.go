package sampledata

import "math"

const (
	zeroCK         = 273.15
	triplePointC   = 0.01
	waterAirRatio  = 0.621945 // molar masses of water and dry air (ASHRAE Fundamentals ch. 1)
	airDensityKgM3 = 1.2737   // dry air at 4 °C and 101 325 Pa, ideal gas
	airHeatJM3K    = 1281.0   // density times specific heat of that air
)

// satPresWaterPa is the saturation pressure over liquid water, Pa (Hyland and Wexler 1983; ASHRAE
// Fundamentals ch. 1 eq. 6).
func satPresWaterPa(tempC float64) float64 {
	t := tempC + zeroCK
	return math.Exp(-5.8002206e3/t + 1.3914993 + t*(-4.8640239e-2+t*(4.1764768e-5-t*1.4452093e-8)) + 6.5459673*math.Log(t))
}

// satPresIcePa is the saturation pressure over ice, Pa (Hyland and Wexler 1983; ASHRAE Fundamentals ch. 1 eq. 5).
func satPresIcePa(tempC float64) float64 {
	t := tempC + zeroCK
	return math.Exp(-5.6745359e3/t + 6.3925247 + t*(-9.6778430e-3+t*(6.2215701e-7+t*(2.0747825e-9-t*9.4840240e-13))) + 4.1635019*math.Log(t))
}

// satPresPa is the pressure at which vapour settles on something of that temperature: as dew above the triple
// point, as frost below it.
func satPresPa(tempC float64) float64 {
	if tempC < triplePointC {
		return satPresIcePa(tempC)
	}
	return satPresWaterPa(tempC)
}

// relHum is the relative humidity over liquid water, 0–1, at every temperature (WMO-No. 8).
func relHum(vapPresPa, tempC float64) float64 { return vapPresPa / satPresWaterPa(tempC) }

// humRatioOf is the humidity ratio, kg of vapour per kg of dry air.
func humRatioOf(vapPresPa, pressurePa float64) float64 {
	return waterAirRatio * vapPresPa / (pressurePa - vapPresPa)
}

// vapPresOf is the vapour pressure of a humidity ratio, Pa.
func vapPresOf(humRatio, pressurePa float64) float64 {
	return pressurePa * humRatio / (waterAirRatio + humRatio)
}

// pressureAtPa is the standard pressure at an altitude, Pa (ASHRAE Fundamentals ch. 1 eq. 3).
func pressureAtPa(altitudeM float64) float64 {
	return 101325 * math.Pow(1-2.25577e-5*altitudeM, 5.2559)
}
