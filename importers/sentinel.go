package importers

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"thawbook/analysis/series"
)

// sentinels are numbers that instruments and archives print where there is no reading: far from any reading,
// round in decimal or the ends of what two bytes hold. Common practice, no source.
var sentinels = []float64{
	-99, -99.9, -99.99, -127, -200, -888, -888.8, -999, -999.9, -999.99, -9999, -9999.9, -9999.99, -99999, -6999, -7999, -32767, -32768,
	999, 999.9, 999.99, 6999, 7999, 9999, 9999.9, 9999.99, 99999, 99999.9, 999999, -999999, 32767, 65535,
}

// airSentinels are those of temperatures and humidities alone: what sensors of 14 and 16 bits give that were not read,
// the ends of what others can tell, and what stands for no reading in two bytes of tenths. Common practice, no source.
var airSentinels = []float64{-46.85, -46.9, -46.8, -45, -273.15, 3276.7, -3276.8, 1000, 255, 130, 119, 118.99}

// temperatureSentinels are those of temperatures alone: where three signs are printed, and what many humidities are.
// Common practice, no source.
var temperatureSentinels = []float64{99, 99.9, 99.99, 100, -88, -88.8}

// farOff is how many interquartile ranges part a sentinel from the readings (the rules of the numbers; common
// practice, no source).
const farOff = 20

// nothingKeys are the beginnings of the keys, in key–value lines, whose value stands for no reading.
var nothingKeys = []string{"missing", "no data", "nodata", "no_data", "null value", "invalid", "error value", "fill", "fehlwert", "kein wert", "ungultig", "valeur manquante", "saknat", "puuttuva"}

// dropSentinels takes as missing what the file names as no reading, and those of sentinels that lie far off
// the readings of their series.
func (s *scan) dropSentinels() {
	named := s.namedSentinels()
	for i := range s.columns {
		c := &s.columns[i]
		if c.kind != number && c.kind != vacant || c.quantity == State || !c.holdsSentinel(named) {
			continue
		}
		isolated := isolation(c, named)
		for at, v := range c.val {
			if slices.Contains(named, v) || c.isSentinel(v) && isolated(v) {
				s.dropReading(c, at)
			}
		}
	}
}

// dropReading takes a number as missing, with a remark.
func (s *scan) dropReading(c *values, at int) {
	s.notes.add(series.Remark{Code: RemarkSentinel, Line: s.lineOf(c.row(at)), Column: c.index + 1, Args: []string{strconv.FormatFloat(c.val[at], 'g', -1, 64), c.header}})
	c.val[at] = missing
	c.changed()
}

// namedSentinels are the numbers that a line above the table says stand for no reading.
func (s *scan) namedSentinels() (named []float64) {
	for _, r := range s.preamble {
		key, value := keyValue(text(r.text))
		if !hasAnyPrefix(strings.ToLower(fold(key)), nothingKeys) {
			continue
		}
		if v, _, _, ok := numberInText([]byte(value), s.mark); ok {
			named = append(named, v)
		}
	}
	return named
}

// isSentinel says whether a number may stand for no reading of a column; no air is drier than dry.
func (c *values) isSentinel(v float64) bool {
	humid := c.quantity == RelativeHumidity
	warm := isTemperature(c.quantity)
	return slices.Contains(sentinels, v) || (humid || warm) && slices.Contains(airSentinels, v) || warm && slices.Contains(temperatureSentinels, v) || humid && v < failedRaw && v > driestRaw
}

// failedRaw is one of failures; driestRaw is less than a sensor of humidity that was not read gives, in percent.
const failedRaw, driestRaw = -1, -50

// holdsSentinel looks for what the file names, and else at the extremes alone: what lies far off the readings
// is one of them.
func (c *values) holdsSentinel(named []float64) bool {
	for _, v := range named {
		if slices.Contains(c.val, v) {
			return true
		}
	}
	p := c.spread()
	return p.low < 0 && c.isSentinel(p.low) || p.high > 0 && c.isSentinel(p.high)
}

// isolation says which sentinels lie far off a column's other values. Where there are no others, none is a
// temperature or a humidity, and none below nought anything that is known. The spread is at least the printed resolution, so that a constant column has one.
// From a temperature that changes fast it is far off where it is further from all others than they are from each other.
func isolation(c *values, named []float64) func(v float64) bool {
	others := make([]float64, 0, len(c.val))
	for _, v := range c.val {
		if v == v && !c.isSentinel(v) && !slices.Contains(named, v) {
			others = append(others, v)
		}
	}
	if len(others) == 0 {
		never := isTemperature(c.quantity) || c.quantity == RelativeHumidity
		return func(v float64) bool { return slices.Contains(sentinels, v) && (never || v < 0 && c.quantity != Other) }
	}
	slices.Sort(others)
	n := len(others)
	far := farOff * max(others[3*n/4]-others[n/4], math.Pow10(-c.usualDecimals()))
	if isTemperature(c.quantity) {
		far = min(far, max(others[n-1]-others[0], markOff))
	}
	low, high := others[0]-far, others[n-1]+far
	return func(v float64) bool { return v < low || v > high }
}
