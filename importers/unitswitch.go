package importers

import (
	"math"

	"thawbook/analysis/series"
)

// A logger may be set to another unit while it logs, and its file say nothing of it: then the numbers leap from one
// reading to the next to what the same temperature is in the other unit, and stay there.

// How much the temperature itself may change at such a switch, in kelvin; the least leap; and how many readings must lie
// before, between and behind. (Common practice, no source.)
const switchK, switchLeap, switchReadings = 1, 20, 24

// stretch is readings in a row in one unit.
type stretch struct {
	from, to  int
	n         int
	low, high float64
	inF       bool
}

// settleSwitches takes the temperatures of columns that name no unit, and leap between °C and °F, to °C.
func (s *scan) settleSwitches() {
	for i := range s.columns {
		c := &s.columns[i]
		if !isTemperature(c.quantity) || c.unit != "" || c.divisor != 0 {
			continue
		}
		if p := c.spread(); p.high-p.low < switchLeap {
			continue
		}
		stretches := c.stretches()
		if !areUnits(stretches) {
			continue
		}
		c.unit, c.unitFrom = "degC", "values"
		for k, t := range stretches {
			if t.inF {
				toCelsius(c.val[t.from:t.to], "degF")
				c.changed()
			}
			if k > 0 {
				s.notes.add(series.Remark{Code: RemarkUnitSwitch, Line: s.lineOf(c.row(t.from)), Column: c.index + 1, Args: []string{c.header}})
			}
		}
	}
}

// stretches are a column's readings, parted where they leap between °C and °F.
func (c *values) stretches() []stretch {
	out := []stretch{{low: math.Inf(1), high: math.Inf(-1)}}
	before := math.NaN()
	for i, v := range c.val {
		if v != v {
			continue
		}
		last := &out[len(out)-1]
		up, down := leaps(before, v), leaps(v, before)
		if up || down {
			last.to, last.inF = i, down
			out = append(out, stretch{from: i, low: v, high: v, inF: up})
			last = &out[len(out)-1]
		}
		last.n++
		last.low, last.high, before = min(last.low, v), max(last.high, v), v
	}
	out[len(out)-1].to = len(c.val)
	return out
}

// leaps says whether a number in °C is followed by what may be the same temperature in °F.
func leaps(inC, inF float64) bool {
	return inF-inC >= switchLeap && math.Abs((inF-32)/1.8-inC) <= switchK
}

// areUnits says whether stretches are in °C and °F by turns, each long enough and none in °C as high as any in °F.
func areUnits(stretches []stretch) bool {
	lowF, highC := math.Inf(1), math.Inf(-1)
	for i, t := range stretches {
		if t.n < switchReadings || i > 0 && t.inF == stretches[i-1].inF {
			return false
		}
		if t.inF {
			lowF = min(lowF, t.low)
		} else {
			highC = max(highC, t.high)
		}
	}
	return len(stretches) > 1 && lowF > highC
}
