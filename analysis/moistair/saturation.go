package moistair

import "math"

// hylandWexler is ln p = c[0]/T + c[1] + c[2]·T + c[3]·T² + c[4]·T³ + c[5]·T⁴ + c[6]·ln T, p in Pa and
// T in K, over temperatures from lowC to highC.
type hylandWexler struct {
	c           [7]float64
	lowC, highC float64
}

// The coefficients of Hyland and Wexler (1983) as ASHRAE Fundamentals (2017) ch. 1 prints them in eq. 5
// (ice, -100 to 0 °C) and eq. 6 (water, 0 to 200 °C). They are quoted from memory; that they are right
// is shown by the tests against IAPWS and the Handbook's table. The two curves meet at the triple
// point, not at 0.00 °C, so ice reaches up to there. Below 0 °C eq. 6 stands for supercooled water:
// against IAPWS G12-15 it is within 0.37 % down to -30 °C; further down nothing was checked but that it
// is within 1 % of Murphy and Koop (2005) at -40 °C.
var (
	ice = hylandWexler{
		c: [7]float64{-5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9,
			-9.4840240e-13, 4.1635019},
		lowC: -100, highC: triplePointC,
	}
	water = hylandWexler{
		c: [7]float64{-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8,
			0, 6.5459673},
		lowC: -100, highC: 200,
	}
)

// SatPresWaterPa is the saturation vapour pressure over liquid water in Pa, supercooled below 0 °C.
// Range -100 to 200 °C, NaN outside. Source: ASHRAE Fundamentals (2017) ch. 1, eq. 6.
func SatPresWaterPa(tempC float64) float64 { return water.presPa(tempC) }

// SatPresIcePa is the saturation vapour pressure over ice in Pa. Range -100 to 0.01 °C (the triple
// point), NaN outside. Source: ASHRAE Fundamentals (2017) ch. 1, eq. 5.
func SatPresIcePa(tempC float64) float64 { return ice.presPa(tempC) }

// SatPresPa is the saturation vapour pressure in Pa over the phase that is stable: ice below the triple
// point, water from there on. It is what a surface at that temperature holds against the air. Range
// -100 to 200 °C, NaN outside. Source: SatPresIcePa and SatPresWaterPa.
func SatPresPa(tempC float64) float64 {
	if tempC < triplePointC {
		return ice.presPa(tempC)
	}
	return water.presPa(tempC)
}

// presPa is the saturation pressure at tempC, NaN outside the range.
func (h *hylandWexler) presPa(tempC float64) float64 {
	if !within(tempC, h.lowC, h.highC) {
		return math.NaN()
	}
	return math.Exp(h.lnPres(tempC + zeroCelsiusK))
}

// lnPres is the natural logarithm of the saturation pressure at T kelvin.
func (h *hylandWexler) lnPres(T float64) float64 {
	c := &h.c
	return c[0]/T + c[1] + T*(c[2]+T*(c[3]+T*(c[4]+T*c[5]))) + c[6]*math.Log(T)
}

// slope is the derivative of lnPres by T, in 1/K.
func (h *hylandWexler) slope(T float64) float64 {
	c := &h.c
	return -c[0]/(T*T) + c[2] + T*(2*c[3]+T*(3*c[4]+T*4*c[5])) + c[6]/T
}
