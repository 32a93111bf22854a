package plausible

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// A value is a sentinel when no air has it: below −90 °C or above 90 °C (weather stations have recorded
// −89.2 and 56.7 °C, from memory: WMO archive of extremes; an attic in the sun stays below 90), humidity
// below −2 % or above 120 % (a wet sensor reads a little above 100). Else when it is cut off from the rest:
// no reading within 20 × the interquartile range of it on the side of the others (house rule), that range
// taken as at least 0.5 K, or 2 points, so that a very calm room makes nobody suspect. A sentinel says the same
// each time: where more than three different values are cut off, the logger was somewhere else. (Common practice,
// no source, but for the records.)
const (
	airLowC, airHighC           = -90, 90
	airLowRelHum, airHighRelHum = -0.02, 1.2
	isolatedIQR                 = 20
	isolatedValues              = 3
	leastIQRK, leastIQRRelHum   = 0.5, 0.02
)

// sentinels finds the values of logger i that are none.
func (r *Room) sentinels(i int) []Finding {
	t := r.traces[i]
	return append(sentinelsIn(t.TempC, Temperature, airLowC, airHighC, leastIQRK),
		sentinelsIn(t.RelHum, Humidity, airLowRelHum, airHighRelHum, leastIQRRelHum)...)
}

// sentinelsIn finds the sentinels of one quantity; neighbouring ones are one finding.
func sentinelsIn(c series.Curve, q Quantity, low, high, leastIQR float64) (out []Finding) {
	if c.Len() == 0 {
		return nil
	}
	if least, most := slices.Min(c.Val), slices.Max(c.Val); least >= low && most <= high && most-least <= isolatedIQR*leastIQR {
		return nil // as nearly every logger in a barn
	}
	sorted := slices.Sorted(slices.Values(c.Val))
	sorted = slices.DeleteFunc(sorted, func(v float64) bool { return v < low || v > high })
	low, high = edges(sorted, low, high, leastIQR)
	middle := median(sorted)
	odd := func(v float64) bool { return v < low || v > high }
	for i := 0; i < c.Len(); i++ {
		if !odd(c.Val[i]) {
			continue
		}
		j := i + 1
		for j < c.Len() && odd(c.Val[j]) {
			j++
		}
		out = append(out, Finding{Sentinel, q, spanOf(c, i, j), Likely, []float64{c.Val[i], middle}, ""})
		i = j
	}
	return out
}

// edges narrows the limits to values that hang together with the middle half of the rest.
func edges(sorted []float64, low, high, leastIQR float64) (float64, float64) {
	n := len(sorted)
	if n < 4 {
		return low, high
	}
	apart := isolatedIQR * math.Max(leastIQR, sorted[3*n/4]-sorted[n/4])
	for i := n / 4; i > 0; i-- {
		if sorted[i]-sorted[i-1] > apart && different(sorted[:i]) <= isolatedValues {
			low = sorted[i]
			break
		}
	}
	for i := 3 * n / 4; i < n-1; i++ {
		if sorted[i+1]-sorted[i] > apart && different(sorted[i+1:]) <= isolatedValues {
			high = sorted[i]
			break
		}
	}
	return low, high
}

// different counts the different values among sorted ones.
func different(sorted []float64) int { return len(slices.Compact(slices.Clone(sorted))) }
