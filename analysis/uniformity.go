package analysis

import (
	"math"

	"thawbook/analysis/series"
)

const (
	apartK       = 2    // K between the warmest and the coldest logger from which a room is uneven (common practice, no source)
	enoughOfHour = 0.75 // least known share of an hour or a day for its mean
)

// Uniformity says how even a place with several loggers was.
type Uniformity struct {
	Place      string
	ApartHours Figure // hours in which the warmest and the coldest logger's means were more than 2 K apart
	KnownHours float64
	Weeks      []UnevenWeek
}

// UnevenWeek is one week of seven days from the first scored instant: the loggers with the highest and the lowest
// mean temperature and the highest mean humidity. Dampest is empty where fewer than two read humidity.
type UnevenWeek struct {
	Span                       series.Span
	Warmest, Coldest, Dampest  string
	WarmestC, ColdestC, DampPc float64
}

// uniformity looks at every judged place with two or more thermometers. The loggers' own errors are not taken
// off: two of them may read apart by the sum of theirs in the same air.
func uniformity(j judgement) []Uniformity {
	out := []Uniformity{}
	for _, s := range j.spots {
		thermometers := having(s.loggers, temperatureOf)
		if !isJudged(s.place) || len(thermometers) < 2 {
			continue
		}
		u := Uniformity{Place: s.place, Weeks: unevenWeeks(j, s.loggers)}
		u.ApartHours, u.KnownHours = apartHours(j, thermometers)
		out = append(out, u)
	}
	return out
}

// having are the loggers that have a quantity.
func having(loggers []Logger, of func(Logger) series.Curve) (out []Logger) {
	for _, l := range loggers {
		if of(l).Len() > 0 {
			out = append(out, l)
		}
	}
	return out
}

// apartHours is for how many of the hours with two or more loggers known their means lay more than 2 K apart, as read
// and with the loggers' errors taken off or added.
func apartHours(j judgement, loggers []Logger) (Figure, float64) {
	hours := j.scored.hours()
	low, high, n := make([]float64, len(hours)), make([]float64, len(hours)), make([]int, len(hours))
	means, slack := make([][]float64, len(loggers)), 0.0
	j.spread(len(loggers), func(i int) { means[i] = loggers[i].TempC.Means(hours, enoughOfHour) })
	for k, l := range loggers {
		slack = math.Max(slack, l.TempErrK*math.Sqrt2)
		for i, v := range means[k] {
			if math.IsNaN(v) {
				continue
			}
			if n[i] == 0 {
				low[i], high[i] = v, v
			}
			low[i], high[i], n[i] = math.Min(low[i], v), math.Max(high[i], v), n[i]+1
		}
	}
	known, over := 0.0, [3]float64{}
	for i, h := range hours {
		if n[i] < 2 {
			continue
		}
		length := float64(h.To-h.From) / series.HourMS
		known += length
		for k, shift := range []float64{0, -slack, slack} {
			if high[i]-low[i]+shift > apartK {
				over[k] += length
			}
		}
	}
	if known == 0 {
		return unknown("nothing_known"), 0
	}
	return enclosing(Recorded, over[0], over[1], over[2]), known
}

// unevenWeeks are the weeks of the bees' time in which two or more loggers are known for half of it.
func unevenWeeks(j judgement, loggers []Logger) []UnevenWeek {
	weeks := series.Steps(j.beesTime, 7*24*series.HourMS, j.beesTime.From)
	tempC, relHum := make([][]float64, len(loggers)), make([][]float64, len(loggers))
	j.spread(len(loggers), func(i int) {
		tempC[i], relHum[i] = loggers[i].TempC.Means(weeks, enoughOfWinter), loggers[i].RelHum.Means(weeks, enoughOfWinter)
	})
	out := []UnevenWeek{}
	for i, week := range weeks {
		w := UnevenWeek{Span: week}
		thermometers, hygrometers := 0, 0
		for k, l := range loggers {
			if v := tempC[k][i]; !math.IsNaN(v) {
				if thermometers == 0 || v > w.WarmestC {
					w.Warmest, w.WarmestC = l.Name, v
				}
				if thermometers == 0 || v < w.ColdestC {
					w.Coldest, w.ColdestC = l.Name, v
				}
				thermometers++
			}
			if v := 100 * relHum[k][i]; !math.IsNaN(v) {
				if hygrometers == 0 || v > w.DampPc {
					w.Dampest, w.DampPc = l.Name, v
				}
				hygrometers++
			}
		}
		if hygrometers < 2 {
			w.Dampest, w.DampPc = "", 0
		}
		if thermometers >= 2 {
			out = append(out, w)
		}
	}
	return out
}
