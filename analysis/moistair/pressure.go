package moistair

import "math"

// PressurePa is the pressure of the standard atmosphere in Pa at an altitude in m above sea level:
// 101325·(1 - 2.25577e-5·Z)^5.2559. Weather moves the true pressure about this by a few per cent. Range
// -5000 to 11000 m, NaN outside. Source: ASHRAE Fundamentals (2017) ch. 1, eq. 3.
func PressurePa(altitudeM float64) float64 {
	return orNaN(within(altitudeM, -5000, 11000),
		101325*math.Pow(1-2.25577e-5*altitudeM, 5.2559))
}
