// Package moistair is the physics of moist air that the analyses need: one formula per function, named
// after its result, with the unit in every name.
//
// Relative humidity is over liquid water at every temperature (WMO-No. 8, Guide to Instruments and
// Methods of Observation, vol. I ch. 4), as sensors report it; RelHumOverIce and RelHumOverWater go
// between the two meanings below the triple point. Dew point and frost point are different quantities:
// below 0 °C the frost point of the same air lies higher. Air that is saturated over ice but not over
// water is legal, and nothing is clamped: a result that has no meaning is NaN, and a NaN or infinite
// argument gives NaN.
//
// Saturation is that of Hyland and Wexler (1983), equations 5 and 6 of chapter 1 of the ASHRAE Handbook
// of Fundamentals (2017), which the other equation numbers refer to as well. Air and vapour are ideal
// gases without enhancement factor, which leaves the humidity ratio at saturation 0.4 to 0.6 % below
// the Handbook's table of real moist air.
package moistair

import "math"

// Constants of the ideal-gas relations (ASHRAE Fundamentals 2017, ch. 1, eqs. 1, 2 and 20).
const (
	zeroCelsiusK   = 273.15   // K
	triplePointC   = 0.01     // °C, where ice and water saturation meet
	gasConstDryAir = 287.042  // J/(kg·K)
	gasConstVapour = 461.524  // J/(kg·K)
	molarMassRatio = 0.621945 // kg/kg, water to dry air
)

// within reports whether x lies in [lo, hi]; NaN does not.
func within(x, lo, hi float64) bool { return lo <= x && x <= hi }

// orNaN is v, or NaN where the arguments are outside a formula's range or v itself is infinite.
func orNaN(ok bool, v float64) float64 {
	if !ok || math.IsInf(v, 0) {
		return math.NaN()
	}
	return v
}
