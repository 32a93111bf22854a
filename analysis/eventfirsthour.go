package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// climbLagMS is how late a logger may show a climb that began at once: its first hour is the steepest that begins
// within that time. placeShare is by how much one logger alone may see less or more of a climb than the room's air does,
// as it hangs high or low, near a wall or among the hives. (Loggers respond in minutes; common practice, no source.)
const (
	climbLagMS = 20 * minuteMS
	placeShare = 0.1
)

// firstHour is the rise in the first hour, K/h, and when that hour ended.
//
// A logger of first order that lags τ behind the air reads τ·y' low: it shows a steady rate whole only once it follows,
// and of a climb that bends never all (hourWithoutLag). Where the room's one logger is the one whose lag the fans'
// switching told, the rise is put right for it. Otherwise the lag may be anything up to climbLagMS, and the range reaches
// to the rise with that. It is widened for where the loggers hung (wherever) and, above, by what the straight line between
// two readings hides where a climb begins between them: rate × interval / 4 at most.
func firstHour(j judgement, s series.Span) (Figure, int64) {
	room := j.quickRoom(s)
	k, began := steepestHour(room, s, climbLagMS)
	if math.IsNaN(k) {
		return unknown("too_short"), s.To
	}
	f := enclosing(Recorded, k, hourWithoutLag(room, s, climbLagMS, k))
	if lagMS := j.roomLagMS(); lagMS > 0 {
		f = enclosing(WorkedOut, hourWithoutLag(room, s, lagMS, k), k)
	}
	f = j.wherever(f, func(room series.Curve) float64 {
		own, _ := steepestHour(room, s, climbLagMS)
		return own
	})
	f.High += math.Abs(f.Mid) * float64(room.Interval()) / series.HourMS / 4
	return f, began + series.HourMS
}

// quickMS is up to what interval a logger shows an hour's climb: one that reads less often has it begin or end somewhere
// between its readings (common practice, no source).
const quickMS = 15 * minuteMS

// quickRoom is the room's temperature about a stretch by the loggers that read it often enough; by all where none does.
func (j judgement) quickRoom(s series.Span) series.Curve {
	near := series.Span{From: s.From - series.HourMS, To: s.To + series.HourMS}
	var quick []series.Curve
	for _, l := range j.room.loggers {
		if c := l.TempC.Slice(near); c.Len() > 0 && l.TempC.Interval() <= quickMS {
			quick = append(quick, c)
		}
	}
	if len(quick) == 0 || len(quick) == len(j.room.loggers) {
		return j.room.mean.TempC
	}
	return meanOf(quick)
}

// wherever is a climb with what one logger alone may see less or more of: it holds those of all the room's loggers, or a tenth
// for where one hung, with a step of the resolution in quadrature.
func (j judgement) wherever(f Figure, climb func(room series.Curve) float64) Figure {
	place := placeShare * math.Abs(f.Mid)
	if len(j.room.loggers) > 1 {
		place = 0
		for _, l := range j.room.loggers {
			if own := climb(l.TempC); !math.IsNaN(own) {
				f.Low, f.High = math.Min(f.Low, own), math.Max(f.High, own)
			}
		}
	}
	half := math.Hypot(place, j.room.mean.TempStepK)
	f.Low, f.High = math.Max(min(0, f.Mid), f.Low-half), f.High+half
	return f
}

// hourWithoutLag is the rise in a stretch's first hour, K, had the logger not lagged: of T = y + τ·y' at both ends, the fans
// holding the room level at its start; no less than it read in its steepest hour.
func hourWithoutLag(room series.Curve, s series.Span, lagMS, read float64) float64 {
	end := s.From + series.HourMS
	near := series.Span{From: end - endMS/2, To: min(end+endMS/2, s.To)}
	rise := func(s series.Span) float64 {
		from, known := room.At(s.From)
		to, knownTo := room.At(s.To)
		if !known || !knownTo {
			return math.NaN()
		}
		return to - from
	}
	k := rise(series.Span{From: s.From, To: end}) + lagMS*rise(near)/float64(near.To-near.From)
	if k > read {
		return k
	}
	return read
}

// roomLagMS is the lag of the room's one logger, ms, where the fans' switching told it; else 0.
func (j judgement) roomLagMS() float64 {
	if len(j.room.loggers) == 1 && j.room.loggers[0].Name == j.control.Name {
		return j.sight.lagMS
	}
	return 0
}
