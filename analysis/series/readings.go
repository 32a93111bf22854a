package series

import (
	"fmt"
	"math"
)

// maxInstantMS is the furthest instant from 1970 that Readings hold: up to here every millisecond has
// an exact float64, so edges of runs keep their place.
const maxInstantMS = 1 << 53

// NewReadings makes Readings of instants (milliseconds UTC, strictly rising, within 2^53 of 1970) and
// as many finite values. Both slices are kept, not copied, and must not be changed afterwards. The
// error names the first index (0-based) that breaks a rule.
func NewReadings(at []int64, val []float64) (Readings, error) {
	if len(at) != len(val) {
		return Readings{}, fmt.Errorf("series: %d instants for %d values", len(at), len(val))
	}
	for i, t := range at {
		if t < -maxInstantMS || t > maxInstantMS {
			return Readings{}, fmt.Errorf("series: reading %d: instant %d ms out of range", i, t)
		}
		if i > 0 && t <= at[i-1] {
			return Readings{}, fmt.Errorf("series: reading %d: instant %d ms is not after %d ms", i, t, at[i-1])
		}
		if !isFinite(val[i]) {
			return Readings{}, fmt.Errorf("series: reading %d: value %v is not finite", i, val[i])
		}
	}
	return Readings{At: at, Val: val}, nil
}

// Len is the number of readings.
func (r Readings) Len() int { return len(r.At) }

// Interval is the nominal interval in milliseconds: the most frequent step between neighbours, the
// smaller one when two are equally frequent, 0 for fewer than two readings (the mode of the steps:
// common practice, no source).
func (r Readings) Interval() int64 {
	count := make(map[int64]int)
	for i := 1; i < len(r.At); {
		step, same := r.At[i]-r.At[i-1], 0
		for ; i < len(r.At) && r.At[i]-r.At[i-1] == step; i++ {
			same++
		}
		count[step] += same
	}
	var mode int64
	for step, n := range count {
		if n > count[mode] || n == count[mode] && step < mode {
			mode = step
		}
	}
	return mode
}

// isFinite reports whether v is a number that is neither NaN nor infinite.
func isFinite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
