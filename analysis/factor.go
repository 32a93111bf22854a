package analysis

import (
	"math"
	"time"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

// A surface's temperature factor is measured at night, without the sun on the wall, in hours with at least this
// difference between inside and out; with the smaller one only where nights of the larger are too few, and with
// the wider range that it gives (house rules; EN ISO 13788's definition of the factor).
const (
	cleanDifferenceK, leastDifferenceK = 10, 5
	leastNights                        = 5
	nightFrom, nightTo                 = 22, 6 // hours of the local clock
)

// measured is the surface with the factor its logger shows, where the keeper set none himself and enough nights
// are cold enough.
func (j judgement) measured(s Surface) Surface {
	if s.Evidence != Assumed || s.Logger == "" {
		return s
	}
	on := j.loggerOn(s.Logger)
	room, outdoor := j.room.mean, j.weather(temperatureOf)
	if on.TempC.Len() == 0 || room.TempC.Len() == 0 || outdoor.Len() == 0 {
		return s
	}
	nights := j.nightHours(on.TempC, room.TempC, outdoor)
	set := func(mid, half float64) Surface {
		s.Mid, s.Low, s.High, s.Evidence = mid, mid-half, mid+half, WorkedOut
		return s
	}
	for _, leastK := range []float64{cleanDifferenceK, leastDifferenceK} {
		mid, half, ok := nights.factor(leastK, on.TempErrK, room.TempErrK, j.weatherErrK())
		if !ok {
			continue
		}
		if turned, less, ok := nights.line(); ok && less < half {
			return set(turned, less)
		}
		return set(mid, half)
	}
	return s
}

// loggerOn is the logger of a name; it is empty where there is none with a temperature.
func (j judgement) loggerOn(name string) Logger {
	for _, l := range j.Loggers {
		if l.Name == name && l.TempC.Len() > 0 {
			return l
		}
	}
	return Logger{}
}

// nightHour is the means of one hour at night: on the surface, in the room, outdoors, in °C.
type nightHour struct{ surface, room, outdoor float64 }

// nights are the hours of each night.
type nights [][]nightHour

// nightHours gathers the known hours of every night of the bees' time.
func (j judgement) nightHours(surface, room, outdoor series.Curve) (out nights) {
	hours := j.scored.hours()
	on, in, at := surface.Means(hours, enoughOfHour), room.Means(hours, enoughOfHour), outdoor.Means(hours, enoughOfHour)
	night := 0
	for i, h := range hours {
		t := time.UnixMilli(h.From).In(j.Zone)
		if t.Hour() < nightFrom && t.Hour() >= nightTo || math.IsNaN(on[i]+in[i]+at[i]) {
			continue
		}
		if n := t.Add((24 - nightFrom) * time.Hour).YearDay(); n != night { // a night is the day's it ends on
			night = n
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], nightHour{on[i], in[i], at[i]})
	}
	return out
}

// above are a night's surface and room above outdoors, K.
type above struct{ surface, room float64 }

// above are the means of every night over its hours with at least a difference in K; nights without one are left out.
func (n nights) above(leastK float64) (out []above) {
	for _, night := range n {
		var sum above
		hours := 0.0
		for _, h := range night {
			if h.room-h.outdoor >= leastK {
				sum, hours = above{sum.surface + h.surface - h.outdoor, sum.room + h.room - h.outdoor}, hours+1
			}
		}
		if hours > 0 {
			out = append(out, above{sum.surface / hours, sum.room / hours})
		}
	}
	return out
}

// factor is the median over the nights of (Ts − To)/(Ti − To), each from its means over the hours with at least a
// difference in K, and its 95 % half-width: the nights' scatter and the sensors' errors in quadrature.
func (n nights) factor(leastK, surfaceErrK, roomErrK, outErrK float64) (mid, half float64, ok bool) {
	var factors, differences []float64
	for _, night := range n.above(leastK) {
		factors, differences = append(factors, night.surface/night.room), append(differences, night.room)
	}
	if len(factors) < leastNights {
		return 0, 0, false
	}
	spread := scatter(factors)
	mid = series.Median(factors)
	sensors := quadrature(surfaceErrK, mid*roomErrK, (1-mid)*outErrK) / stat.Mean(differences, nil)
	return mid, quadrature(spread, sensors), true
}

// A line through the nights needs this many, and differences that spread by this much (their standard deviation): cold
// nights and mild ones. (Common practice, no source.)
const (
	lineNights  = 20
	lineSpreadK = 3
	lineTurned  = 0.02 // what may turn the line: air by the wall that cools more with the cold than the room, wind, a wall's lag
)

// line is the factor as the slope of Ts − To over Ti − To from night to night, and its 95 % half-width. What a logger reads
// off by all winter moves the line and does not turn it, so that no sensor's error stands in it; the scatter round the
// line does, nights that follow on one another not counting in full (n (1 − r)/(1 + r), Bayley & Hammersley 1946).
func (n nights) line() (slope, half float64, ok bool) {
	var surface, room []float64
	for _, night := range n.above(leastDifferenceK) {
		surface, room = append(surface, night.surface), append(room, night.room)
	}
	if len(room) < lineNights || stat.StdDev(room, nil) < lineSpreadK {
		return 0, 0, false
	}
	at, slope := stat.LinearRegression(room, surface, nil, false)
	off := make([]float64, len(room))
	for i := range room {
		off[i] = surface[i] - at - slope*room[i]
	}
	r := min(max(0, stat.Correlation(off[1:], off[:len(off)-1], nil)), 0.99)
	count := float64(len(room)) * (1 - r) / (1 + r)
	return slope, quadrature(lineTurned, confidence95*stat.StdDev(off, nil)/(stat.StdDev(room, nil)*math.Sqrt(count))), true
}
