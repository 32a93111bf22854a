package engine

import (
	"math"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// Likeness is with which hanging logger's temperature one that hangs nowhere goes up and down, hour by hour.
type Likeness struct {
	List   int // a barn's number, or that of the outdoor list
	Logger string
}

// A likeness needs so many hours known of both, and to be so much closer than in any other barn, as a share of the
// standard deviations of their differences, week by week, where two days of one are known (common practice, no source).
const (
	likeHours, likeShare  = 72, 0.5
	weekHours, leastHours = 7 * 24, 48
)

// Resembling is where a logger seems to have hung by its temperature: the difference to one that hangs there
// wanders half as much as to any that hangs elsewhere. A constant difference counts for nothing: places of one
// room have one, and one that was hung elsewhere in it has another from then on. ok is false where that can't be told, as with fewer than two places to choose from.
func Resembling(r Result, l analysis.Logger) (like Likeness, ok bool) {
	hours := hoursOf(l.TempC)
	mine := l.TempC.Bins(hours)
	best, second := math.Inf(1), math.Inf(1)
	for list := winter.OutdoorList; list < len(r.Winter.Barns); list++ {
		logger, sd := nearest(r.hanging(list), mine, hours)
		switch {
		case sd < best:
			best, second, like = sd, best, Likeness{list, logger}
		case sd < second:
			second = sd
		}
	}
	return like, !math.IsInf(second, 1) && best <= likeShare*second
}

// hoursOf are the hours of a curve, from its first reading to its last.
func hoursOf(c series.Curve) (out []series.Span) {
	at := c.Readings.At
	if len(at) == 0 {
		return nil
	}
	for from := at[0] - at[0]%series.HourMS; from < at[len(at)-1]; from += series.HourMS {
		out = append(out, series.Span{From: from, To: from + series.HourMS})
	}
	return out
}

// hanging are a list's loggers as they were read.
func (r Result) hanging(list int) []analysis.Logger {
	switch {
	case list == winter.OutdoorList && len(r.Inputs) > 0:
		return r.Inputs[0].Loggers[len(r.Winter.Barns[0].Loggers):]
	case list >= 0 && list < len(r.Inputs):
		return r.Inputs[list].Loggers[:len(r.Winter.Barns[list].Loggers)]
	}
	return nil
}

// nearest is the logger to which a temperature's difference wanders least, and by what standard deviation; +Inf
// where too little is known of all.
func nearest(all []analysis.Logger, mine []series.Bin, hours []series.Span) (logger string, least float64) {
	least = math.Inf(1)
	for _, o := range all {
		if sd := wander(mine, o.TempC.Bins(hours)); sd < least {
			logger, least = o.Name, sd
		}
	}
	return logger, least
}

// wander is the standard deviation of the difference of two curves' hourly means within a week, the median of all weeks;
// +Inf where fewer than likeHours are known of both.
func wander(a, b []series.Bin) float64 {
	var weeks []float64
	known := 0
	for from := 0; from < len(a); from += weekHours {
		to := min(from+weekHours, len(a))
		n, sd := differing(a[from:to], b[from:to])
		if known += n; n >= leastHours {
			weeks = append(weeks, sd)
		}
	}
	if known < likeHours || len(weeks) == 0 {
		return math.Inf(1)
	}
	return series.Median(weeks)
}

// differing is the standard deviation of the difference of two curves' hourly means, and of how many hours.
func differing(a, b []series.Bin) (n int, sd float64) {
	sum, squares := 0.0, 0.0
	for i := range a {
		if a[i].KnownMS < series.HourMS/2 || b[i].KnownMS < series.HourMS/2 {
			continue
		}
		d := a[i].Weighted() - b[i].Weighted()
		n, sum, squares = n+1, sum+d, squares+d*d
	}
	mean := sum / float64(max(n, 1))
	return n, math.Sqrt(max(0, squares/float64(max(n, 1))-mean*mean))
}
