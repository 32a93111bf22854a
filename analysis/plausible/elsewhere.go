package plausible

import (
	"math"

	"thawbook/analysis/series"
)

// A logger in a room where bees rest hung elsewhere, or reads far off, when the middle of all it said lies more than 8 K
// from the middle of the room's loggers and none of them lies within 4 K of it, while two others are that near to each
// other. Of two loggers it can't be told which. (Common practice, no source.)
const (
	elsewhereK  = 8
	companyK    = 4
	elsewhereIn = dayHours // known hours of the logger, at least
)

// elsewhere finds whether logger i can't have hung with the others.
func (r *Room) elsewhere(i int) []Finding {
	own := r.levels[i]
	if !r.traces[i].Resting || !isKnown(own) {
		return nil
	}
	var others []float64
	for k, level := range r.levels {
		if k != i && isKnown(level) {
			if math.Abs(level-own) <= companyK {
				return nil
			}
			others = append(others, level)
		}
	}
	if len(others) < 2 {
		return nil
	}
	middle := median(others)
	near := 0
	for _, level := range others {
		if math.Abs(level-middle) <= companyK {
			near++
		}
	}
	if near < 2 || math.Abs(own-middle) <= elsewhereK {
		return nil
	}
	at := r.traces[i].TempC.Readings.At
	whole := series.Span{From: at[0], To: at[len(at)-1] + 1}
	return []Finding{{Elsewhere, Both, whole, Likely, []float64{own - middle}, ""}}
}

// levelOf is the middle of what a logger said, NaN of less than a day.
func levelOf(h hours) float64 {
	var known []float64
	for _, v := range h.val {
		if isKnown(v) {
			known = append(known, v)
		}
	}
	if len(known) < elsewhereIn {
		return math.NaN()
	}
	return median(known)
}
