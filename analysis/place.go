package analysis

import "thawbook/analysis/series"

const minuteMS = 60 * 1000

// spot is a place with the loggers that hung there and their mean, which is like a logger without a name.
type spot struct {
	place   string
	loggers []Logger
	mean    Logger
}

// spots gathers the measuring loggers by place, in order of first appearance.
func spots(loggers []Logger, spread Spread) []spot {
	dew := ofMoistAir(loggers, dewPointC, spread)
	var out []spot
	for i, l := range loggers {
		if l.TempC.Len()+l.RelHum.Len() == 0 {
			continue
		}
		l.dewC = dew[i]
		if i := spotIndex(out, l.Place); i >= 0 {
			out[i].loggers = append(out[i].loggers, l)
			continue
		}
		out = append(out, spot{place: l.Place, loggers: []Logger{l}})
	}
	for i := range out {
		out[i].mean = meanLogger(out[i].place, out[i].loggers, spread)
	}
	return out
}

// What a room may have from the control logger.
const ofTemperature, ofHumidity = "temperature", "humidity"

// lend gives the room's mean the temperature or the humidity of the control logger where no logger in the room has it, and
// says which: the thermostat's air is the room's, if at one spot of it.
func lend(all []spot) (what string) {
	i, c := spotIndex(all, "room"), spotAt(all, "control").mean
	if i < 0 {
		return ""
	}
	m := &all[i].mean
	switch {
	case m.TempC.Len() == 0 && c.TempC.Len() > 0:
		m.TempC, m.TempErrK, m.TempStepK = c.TempC, c.TempErrK, c.TempStepK
		return ofTemperature
	case m.RelHum.Len() == 0 && c.RelHum.Len() > 0:
		m.RelHum, m.RelHumErr, m.dewC = c.RelHum, c.RelHumErr, c.dewC
		return ofHumidity
	}
	return ""
}

// roomHaving are the room's loggers that have a quantity, else the control ones.
func (j judgement) roomHaving(of func(Logger) series.Curve) []Logger {
	if own := having(j.room.loggers, of); len(own) > 0 {
		return own
	}
	return having(spotAt(j.spots, "control").loggers, of)
}

// spotAt is the spot at the first of the places that has a logger; it is empty where none has.
func spotAt(all []spot, places ...string) spot {
	for _, p := range places {
		if i := spotIndex(all, p); i >= 0 {
			return all[i]
		}
	}
	return spot{}
}

func spotIndex(all []spot, place string) int {
	for i, s := range all {
		if s.place == place {
			return i
		}
	}
	return -1
}

// meanLogger is the mean of a place's loggers. Its error is that of the worst of them, or, where each was checked by
// itself, what independent errors leave of it.
func meanLogger(place string, loggers []Logger, spread Spread) Logger {
	m := Logger{Place: place}
	means := []struct {
		to *series.Curve
		of func(Logger) series.Curve
	}{{&m.TempC, temperatureOf}, {&m.RelHum, relHumOf}, {&m.dewC, func(l Logger) series.Curve { return l.dewC }}}
	spread(len(means), func(i int) { *means[i].to = meanCurve(loggers, means[i].of) })
	for _, l := range loggers {
		m.TempStepK = max(m.TempStepK, l.TempStepK)
	}
	m.TempErrK = meanErr(having(loggers, temperatureOf), m.TempC, temperatureOf, func(l Logger) (float64, bool) { return l.TempErrK, l.TempApart })
	m.RelHumErr = meanErr(having(loggers, relHumOf), m.RelHum, relHumOf, func(l Logger) (float64, bool) { return l.RelHumErr, l.RelHumApart })
	return m
}

// allAlong is the share of a mean's time for which each of its loggers must be known for their errors to even out in it
// (common practice, no source).
const allAlong = 0.95

// meanErr is the half-width of a mean of loggers: the widest of theirs, or, where each was checked by itself and is known
// nearly all along, theirs in quadrature over their number, u/√k of k alike (house rule).
func meanErr(loggers []Logger, mean series.Curve, of func(Logger) series.Curve, err func(Logger) (half float64, apart bool)) (widest float64) {
	var halves []float64
	evens := true
	span := whole(mean)
	for _, l := range loggers {
		half, apart := err(l)
		widest, halves = max(widest, half), append(halves, half)
		evens = evens && apart && float64(of(l).KnownMS(span)) >= allAlong*float64(mean.KnownMS(span))
	}
	if !evens || len(halves) == 0 {
		return widest
	}
	return quadrature(halves...) / float64(len(halves))
}

func temperatureOf(l Logger) series.Curve { return l.TempC }

func relHumOf(l Logger) series.Curve { return l.RelHum }

// record is what a place or logger read, to tell when: its temperature, else its humidity.
func (l Logger) record() series.Curve {
	if l.TempC.Len() > 0 {
		return l.TempC
	}
	return l.RelHum
}

// meanCurve is the mean of the loggers that have the quantity.
func meanCurve(loggers []Logger, of func(Logger) series.Curve) series.Curve {
	var curves []series.Curve
	for _, l := range loggers {
		if c := of(l); c.Len() > 0 {
			curves = append(curves, c)
		}
	}
	return meanOf(curves)
}

// meanOf is the only curve there is, or the mean of several on a grid at their finest interval, a minute at
// least; none of them is empty.
func meanOf(curves []series.Curve) series.Curve {
	switch len(curves) {
	case 0:
		return series.Curve{}
	case 1:
		return curves[0]
	}
	var step int64
	for _, c := range curves {
		if every := c.Interval(); every > 0 && (step == 0 || every < step) { // a single reading has none
			step = every
		}
	}
	return series.Mean(curves, max(step, minuteMS))
}

// isSurface says whether a place is on a thing rather than in air.
func isSurface(place string) bool {
	switch place {
	case "wall", "ceiling", "cold metal", "floor":
		return true
	}
	return false
}

// isJudged says whether the safe bands of the bees' air apply at a place: in a hive it is warm and damp as it should be,
// and where nobody knows a logger to have hung no band is known.
func isJudged(place string) bool { return isDark(place) && place != "hive" && place != "don't know" }

// isDark says whether a place is one where no light should be seen while the bees are in.
func isDark(place string) bool {
	return !isSurface(place) && place != "outdoor" && place != "intake"
}
