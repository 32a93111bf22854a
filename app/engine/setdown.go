package engine

import (
	"slices"
	"strings"

	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// The remarks on what the keeper set down for a logger.
const (
	LeftOut       = "left_out"       // readings left out; Count is how many. Args: logger, quantity, reason
	ClockMoved    = "clock_moved"    // its clock is taken to be ahead. Args: logger, minutes
	ClockAnchored = "clock_anchored" // its clock was held against a watch, Count times. Args: logger
	Corrected     = "corrected"      // an offset is added that was set or that a check found. Args: logger, quantity, offset, method
)

// setDown remarks on what the keeper set down for a logger that moves its readings: all of it is his setting, and
// none is in the files.
func setDown(l winter.Logger) (out []series.Remark) {
	if l.AheadMS != 0 {
		out = append(out, series.Remark{Code: ClockMoved, Args: []string{l.Name, figure(float64(l.AheadMS) / minuteMS)}, Count: 1})
	}
	if len(l.Anchors) > 0 {
		out = append(out, series.Remark{Code: ClockAnchored, Args: []string{l.Name}, Count: len(l.Anchors)})
	}
	c, relHum, checkedC, checkedRelHum := l.Offset()
	for _, q := range []struct {
		name    string
		offset  float64
		checked bool
		set     bool
		said    func(winter.Calibration) *float64
	}{
		{winter.OfTemperature, c, checkedC, l.OffsetC != 0, func(k winter.Calibration) *float64 { return k.SaidC }},
		{winter.OfHumidity, 100 * relHum, checkedRelHum, l.OffsetRelHum != 0, func(k winter.Calibration) *float64 { return k.SaidRelHum }},
	} {
		if !q.checked {
			continue
		}
		methods := []string{"set"}
		if !q.set {
			methods = methodsOf(l.Checks, q.said)
		}
		out = append(out, series.Remark{Code: Corrected, Args: []string{l.Name, q.name, figure(q.offset), strings.Join(methods, ", ")}, Count: 1})
	}
	return out
}

// methodsOf are the ways by which what a logger said of a quantity was checked, each once.
func methodsOf(checks []winter.Calibration, said func(winter.Calibration) *float64) (out []string) {
	for _, k := range checks {
		if said(k) != nil && !slices.Contains(out, k.Method) {
			out = append(out, k.Method)
		}
	}
	return out
}
