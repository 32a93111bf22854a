package moistair

import "math"

// DewPointC is the temperature in °C at which air of that vapour pressure is saturated over liquid
// water, supercooled below 0 °C. It inverts SatPresWaterPa by Newton's method. Range: the pressures of
// -100 to 200 °C (0.0036 Pa to 1.55 MPa), NaN outside; dry air (0 Pa) has no dew point.
func DewPointC(vapPresPa float64) float64 { return water.tempC(vapPresPa, 17.62, 243.12) }

// FrostPointC is the temperature in °C at which air of that vapour pressure is saturated over ice. It
// inverts SatPresIcePa by Newton's method. Range: the pressures of -100 °C to the triple point (0.0014
// to 611.66 Pa), NaN outside: moister air meets dew, not frost.
func FrostPointC(vapPresPa float64) float64 { return ice.tempC(vapPresPa, 22.46, 272.62) }

// tempC solves lnPres(T) = ln(vapPresPa), starting from the Magnus formula with coefficients a and b
// (WMO-No. 8, vol. I, annex 4.B). NaN when the solution is outside the range.
func (h *hylandWexler) tempC(vapPresPa, a, b float64) float64 {
	if !(vapPresPa > 0) || math.IsInf(vapPresPa, 1) {
		return math.NaN()
	}
	m := math.Log(vapPresPa / 611.2)
	guess := b * m / (a - m)
	if !within(guess, h.lowC-20, h.highC+50) {
		return math.NaN()
	}
	T, lnPres := guess+zeroCelsiusK, math.Log(vapPresPa)
	for range 20 {
		dT := (lnPres - h.lnPres(T)) / h.slope(T)
		T += dT
		if math.Abs(dT) < 1e-9 {
			break
		}
	}
	const slack = 1e-6 // K, so that a range's own end survives the round trip
	return orNaN(within(T-zeroCelsiusK, h.lowC-slack, h.highC+slack), T-zeroCelsiusK)
}
