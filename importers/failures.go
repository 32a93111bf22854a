package importers

import "math"

// failures are numbers that a sensor gives when it was switched on and not yet read, or could not be read. They lie
// within what a column could hold; but where the readings on both sides are further off than apart, in the unit of the
// column, no air went there and back. 85 °C is what a sensor of 12 bits holds when it is switched on, 185 the same in
// °F; no air has a humidity or carbon dioxide of nought or less. Common practice, no source.
var failures = []struct {
	quantity Quantity
	value    float64
	apart    float64
	never    bool // a column of nothing else has no readings
}{
	{AirTemperature, 85, 40, false}, {AirTemperature, 185, 72, false},
	{RelativeHumidity, -1, 1, true}, {RelativeHumidity, 0, 10, true},
	{CO2, 0, 200, true}, {CO2, -1, 200, true},
}

// dropFailures takes as missing the numbers that stand for a failed reading, and the same number beside a humidity
// that failed.
func (s *scan) dropFailures() {
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind != number || !c.mayHoldFailure() {
			continue
		}
		for _, f := range failures {
			if c.quantity != f.quantity {
				continue
			}
			for _, at := range failedAt(c.val, f.value, f.apart, f.never) {
				s.dropReading(c, at)
				if f.quantity == RelativeHumidity {
					s.dropFailedBeside(i, at, f.value)
				}
			}
		}
	}
}

// mayHoldFailure says whether any of its quantity's failures lies among a column's values: in nearly none one does.
func (c *values) mayHoldFailure() bool {
	p := c.spread()
	for _, f := range failures {
		if f.quantity == c.quantity && p.low <= f.value && f.value <= p.high {
			return true
		}
	}
	return false
}

// dropFailedBeside drops a temperature next to a failed humidity that is the same number.
func (s *scan) dropFailedBeside(i, at int, value float64) {
	for _, k := range []int{i - 1, i + 1} {
		if k < 0 || k >= len(s.columns) || s.columns[k].quantity != AirTemperature || len(s.columns[k].val) != len(s.columns[i].val) {
			continue
		}
		if c := &s.columns[k]; c.val[at] == value && c.row(at) == s.columns[i].row(at) {
			s.dropReading(c, at)
		}
	}
}

// failedAt is where runs of a number lie that differ by more than apart from the readings before and after them.
func failedAt(val []float64, value, apart float64, never bool) (out []int) {
	far := func(v float64) bool { return v != v || math.Abs(v-value) > apart }
	before, from := math.NaN(), 0
	for i := 0; i < len(val); i++ {
		if v := val[i]; v != value {
			if v == v {
				before = v
			}
			continue
		}
		for from = i; i < len(val) && (val[i] == value || val[i] != val[i]); i++ {
		}
		after := math.NaN()
		if i < len(val) {
			after = val[i]
		}
		if lone := before != before && after != after; !far(before) || !far(after) || lone && !never {
			before = after
			continue
		}
		for k := from; k < i; k++ {
			if val[k] == value {
				out = append(out, k)
			}
		}
		before = after
	}
	return out
}
