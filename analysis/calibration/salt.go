package calibration

import "math"

// SaltName is one of the salts whose slush holds a known humidity.
type SaltName string

// The salts that can be bought and that span a wintering room's humidity.
const (
	SodiumChloride    SaltName = "sodium chloride"
	MagnesiumChloride SaltName = "magnesium chloride"
	PotassiumChloride SaltName = "potassium chloride"
)

// Salts lists the salts, the driest first.
var Salts = []SaltName{MagnesiumChloride, SodiumChloride, PotassiumChloride}

// polynomials are the coefficients of the humidity in percent over t in °C, the constant first, of L. Greenspan,
// Humidity fixed points of binary saturated aqueous solutions, J. Res. Natl. Bur. Stand. 81A (1977) 89. Read
// through published code, not on the paper.
var polynomials = map[SaltName][]float64{
	SodiumChloride:    {75.5164, 0.0398321, -0.265459e-2, 0.2848e-4},
	MagnesiumChloride: {33.6686, -0.00797397, -0.108988e-2},
	PotassiumChloride: {88.619, -0.19334, 0.899706e-3},
}

// RelHum is the relative humidity, 0–1 over water, of the air over a salt's slush at tempC. Range 0 to 50 °C,
// in which the three fits are safe; NaN outside, and for a salt that is none of Salts.
func RelHum(salt SaltName, tempC float64) float64 {
	p := polynomials[salt]
	if len(p) == 0 || !(tempC >= 0 && tempC <= 50) {
		return math.NaN()
	}
	percent := 0.0
	for k := len(p) - 1; k >= 0; k-- {
		percent = percent*tempC + p[k]
	}
	return percent / 100
}
