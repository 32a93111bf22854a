package importers

import "slices"

// airLimits are what readings of air, and of what it touches, lie between: in °C, and as fractions. The coldest air measured
// had −89.2 °C (Vostok, 21 July 1983; WMO, World Weather and Climate Extremes Archive); the other limits are common
// practice, no source. Air a little beyond saturation is possible, and sensors print more than there is.
var airLimits = map[Quantity]struct{ low, high float64 }{
	AirTemperature: {-90, 100}, DewPoint: {-90, 100}, SurfaceTemperature: {-90, 300}, RelativeHumidity: {0, mostHumid},
}

// mostHumid is more than sensors print for any air, as a fraction. Common practice, no source.
const mostHumid = 1.1

// printedLimits are the limits of what is possible in a column's unit; of a temperature without one, in any.
func (c *values) printedLimits() (low, high float64) {
	p := airLimits[c.quantity]
	switch c.unit {
	case "degC", "fraction":
		return p.low, p.high
	case "percent":
		return 100 * p.low, 100 * p.high
	case "degF":
		return 1.8*p.low + 32, 1.8*p.high + 32
	case "K":
		return p.low + zeroC, p.high + zeroC
	}
	return 1.8*p.low + 32, p.high + zeroC
}

// dropImpossible takes as missing what no air is. A column of which most is that is of something else.
func (s *scan) dropImpossible(c *values) {
	low, high := c.printedLimits()
	if p := c.spread(); p.n == 0 || p.low >= low && p.high <= high {
		return
	}
	var beyond []int
	for at, v := range c.val {
		if v < low || v > high {
			beyond = append(beyond, at)
		}
	}
	if 2*len(beyond) > c.spread().n {
		c.quantity = Other
		if c.unitFrom == "values" {
			c.unit, c.unitFrom = "", ""
		}
		return
	}
	for _, at := range beyond {
		s.dropReading(c, at)
	}
}

// A number that comes back again and again, each time from and to readings further off than they are apart, stands for no
// reading of a temperature: in so many stretches, at most one in so many readings, at least so many degrees off.
// Common practice, no source.
const markStretches, markShare, markOff = 3, 5, 40

// dropMarks takes as missing the lowest or highest number of a temperature where it is such a one.
func (s *scan) dropMarks(c *values) {
	p := c.spread()
	if p.high-p.low <= markOff {
		return
	}
	for _, mark := range []float64{p.low, p.high} {
		if !c.isMark(mark) {
			continue
		}
		for at, v := range c.val {
			if v == mark {
				s.dropReading(c, at)
			}
		}
	}
}

// isMark says whether a column's lowest or highest number stands for no reading.
func (c *values) isMark(mark float64) bool {
	others := make([]float64, 0, len(c.val))
	stretches, before := 0, missing
	for _, v := range c.val {
		if v != v {
			continue
		}
		if v != mark {
			others = append(others, v)
		} else if before != mark {
			stretches++
		}
		before = v
	}
	p := spreadOf(others)
	marks := c.spread().n - p.n
	return stretches >= markStretches && markShare*marks <= p.n && max(p.low-mark, mark-p.high) > max(p.high-p.low, markOff)
}

// The body of a column is all but the few that lie far off: beyond a tenth of the readings at either end by more than what
// lies between, and some degrees or percent. Fewer readings have none. Common practice, no source.
const bodyShare, bodyLeast, bodyRoom = 10, 8, 10

// body is how a column's values lie without the few far off.
func (c *values) body() spread {
	sorted := make([]float64, 0, len(c.val))
	for _, v := range c.val {
		if v == v {
			sorted = append(sorted, v)
		}
	}
	n := len(sorted)
	if n < bodyLeast {
		return c.spread()
	}
	slices.Sort(sorted)
	cut := max(1, n/bodyShare)
	low, high := sorted[cut], sorted[n-1-cut]
	room := high - low + bodyRoom
	from, _ := slices.BinarySearch(sorted, low-room)
	to, _ := slices.BinarySearch(sorted, high+room)
	return spreadOf(sorted[from:to])
}
