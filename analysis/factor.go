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
	for _, leastK := range []float64{cleanDifferenceK, leastDifferenceK} {
		mid, half, ok := nights.factor(leastK, on.TempErrK, room.TempErrK)
		if ok {
			s.Mid, s.Low, s.High, s.Evidence = mid, mid-half, mid+half, WorkedOut
			return s
		}
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

// nights are the hours of each night, of those that are known throughout.
type nights [][]nightHour

// nightHours gathers the known hours of every night of the bees' time.
func (j judgement) nightHours(surface, room, outdoor series.Curve) (out nights) {
	hours := series.Steps(j.beesTime, series.HourMS, j.beesTime.From)
	on, in, at := surface.Bins(hours), room.Bins(hours), outdoor.Bins(hours)
	night := math.MinInt
	for i, h := range hours {
		t := time.UnixMilli(h.From).In(j.Zone)
		if t.Hour() < nightFrom && t.Hour() >= nightTo || on[i].KnownMS*in[i].KnownMS*at[i].KnownMS == 0 {
			continue
		}
		if n := int(math.Floor(float64(h.From)/series.HourMS-nightFrom)) / 24; n != night {
			night = n
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], nightHour{on[i].Weighted(), in[i].Weighted(), at[i].Weighted()})
	}
	return out
}

// factor is the median over the nights of (Ts − To)/(Ti − To), each from its means over the hours with at least a
// difference in K, and its 95 % half-width: the nights' scatter and the sensors' errors in quadrature.
func (n nights) factor(leastK, surfaceErrK, roomErrK float64) (mid, half float64, ok bool) {
	var factors, differences []float64
	for _, night := range n {
		surface, difference := 0.0, 0.0
		for _, h := range night {
			if h.room-h.outdoor >= leastK {
				surface, difference = surface+h.surface-h.outdoor, difference+h.room-h.outdoor
			}
		}
		if difference > 0 {
			factors, differences = append(factors, surface/difference), append(differences, difference/float64(len(night)))
		}
	}
	if len(factors) < leastNights {
		return 0, 0, false
	}
	spread := scatter(factors)
	mid = series.Median(factors)
	sensors := quadrature(surfaceErrK, mid*roomErrK, (1-mid)*outdoorErrK) / stat.Mean(differences, nil)
	return mid, quadrature(spread, sensors), true
}
