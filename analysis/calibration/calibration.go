// Package calibration finds what a logger is off by: from a stretch in melting ice, over the slush of a
// salt, or where loggers hung together. Values in, values out; nothing is applied here.
package calibration

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

// Check is what one check of a logger found, in the unit of its curve (°C, or 0–1 of humidity).
type Check struct {
	Span       series.Span // the steady stretch
	Readings   int
	Said, True float64 // means over it
	Offset     float64 // to be added to what it said: True − Said
	HalfWidth  float64 // 95 %, of the offset
}

// A stretch is steady while its readings stay within a band: 0.2 K or 1 point of humidity, or two printed
// steps where those are wider, for at least a time that a logger needs to settle (15 min in ice: from memory;
// 2 h over a salt, an hour side by side: common practice, no source). The first third of it is not counted, for
// the last of the settling. Of several the longest is taken, the first of equal ones.
const (
	IceMS, SaltMS, togetherMS = 15 * 60 * 1000, 2 * series.HourMS, series.HourMS
	SteadyReadings            = 8 // with the first third that is not counted
	steadyK, steadyRelHum     = 0.2, 0.01
	leastReadings             = 5
	iceNearK, saltNear        = 3, 0.15
	iceErrK, saltErr          = 0.05, 0.006
	settlingPart              = 3
)

// Ice is the check against melting ice, 0 °C, within a span in which the keeper had the logger in it. Crushed
// ice in water holds 0.00 ± 0.05 °C (from memory). Readings more than 3 K from it are not of the bath. stepK
// is the printed resolution. ok is false when there is no steady stretch of 15 minutes and five readings.
func Ice(tempC series.Curve, span series.Span, stepK float64) (Check, bool) {
	return against(tempC.Slice(span), IceMS, math.Max(steadyK, 2*stepK), stepK, iceErrK, iceNearK, func(int64) float64 { return 0 })
}

// Salt is the check over the slush of a salt within a span in which the keeper had the logger there, at the
// temperature the logger itself said. Readings more than 15 points from the salt's value are not of the jar.
// step is the printed resolution, 0–1. The salt's value is taken as good to 0.6 points: so far two published
// measurements of sodium chloride differ at 0 °C (Wexler and Hasegawa 1954: 74.9 %; Greenspan 1977: 75.5 %).
// ok is false when there is no steady stretch of two hours or the temperature is outside the salt's range.
func Salt(tempC, relHum series.Curve, span series.Span, salt SaltName, step float64) (Check, bool) {
	c := relHum.Slice(span)
	return against(c, SaltMS, math.Max(steadyRelHum, 2*step), step, saltErr, saltNear, func(at int64) float64 {
		t, known := tempC.At(at)
		if !known {
			return math.NaN()
		}
		return RelHum(salt, t)
	})
}

// against is the check of a curve against what is known of every instant.
func against(c series.Curve, longMS int64, band, step, refErr, near float64, truth func(at int64) float64) (Check, bool) {
	want := make([]float64, c.Len())
	for i, at := range c.Readings.At {
		want[i] = truth(at)
	}
	belongs := func(i int) bool { return math.Abs(c.Val[i]-want[i]) <= near } // false for NaN
	i, j := steady(c, longMS, band, belongs)
	i += (j - i) / settlingPart
	if j-i < leastReadings {
		return Check{}, false
	}
	return checkOf(c, want, i, j, step, refErr), true
}

// checkOf is the check over readings [i, j). The half-width takes together, as the root of the squares, the
// reference's own, half a printed step, and half the spread of the middle 95 % of the readings: what wandered
// within the stretch may wander again.
func checkOf(c series.Curve, want []float64, i, j int, step, refErr float64) Check {
	said, meant := stat.Mean(c.Val[i:j], nil), stat.Mean(want[i:j], nil)
	off := make([]float64, 0, j-i)
	for k := i; k < j; k++ {
		off = append(off, want[k]-c.Val[k])
	}
	slices.Sort(off)
	wander := (stat.Quantile(0.975, stat.Empirical, off, nil) - stat.Quantile(0.025, stat.Empirical, off, nil)) / 2
	return Check{
		Span: series.Span{From: c.Readings.At[i], To: c.Readings.At[j-1] + 1}, Readings: j - i, Said: said, True: meant,
		Offset: meant - said, HalfWidth: math.Sqrt(refErr*refErr + step*step/4 + wander*wander),
	}
}

// steady is the longest run of readings [i, j), joined, that all belong and stay within a band, at least
// longMS long; empty when there is none.
func steady(c series.Curve, longMS int64, band float64, belongs func(i int) bool) (from, to int) {
	var longest int64 = -1
	i := 0
	for j := range c.Len() {
		switch {
		case !belongs(j):
			i = j + 1
			continue
		case j > i && !c.Joined(j):
			i = j
		}
		for i < j && reach(c.Val[i:j+1]) > band {
			i++
		}
		if long := c.Readings.At[j] - c.Readings.At[i]; long >= longMS && long > longest {
			longest, from, to = long, i, j+1
		}
	}
	return from, to
}

// reach is how far values lie apart.
func reach(val []float64) float64 { return slices.Max(val) - slices.Min(val) }
