package analysis

import (
	"math"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

// climb adds what a stretch without fans did to the room, as the log measured it: the whole rise, the first hour and
// the later hours apart, as the climb bends when the masses warm and one line from the first hour is several times too
// fast (house rule); and the hours from the stretch's start to the alarm line.
func (e *Event) climb(j judgement, s series.Span) {
	room := j.room.mean.TempC
	from, known := room.At(s.From)
	b := room.Bin(s)
	if !known || b.KnownMS == 0 {
		e.add("climb_k", unknown("too_little_known"))
		return
	}
	s.To = peakedAt(room, s)
	e.add("from_c", exactly(from, Recorded))
	e.add("peak_c", exactly(b.Max, Recorded))
	e.add("climb_k", j.wherever(exactly(b.Max-from, Recorded), func(room series.Curve) float64 {
		from, known := room.At(s.From)
		if !known {
			return math.NaN()
		}
		return room.Bin(s).Max - from
	}))
	first, ended := firstHour(j, s)
	later := laterSlope(j.room.mean, series.Span{From: ended, To: s.To})
	e.add("first_hour_k_per_h", first)
	e.add("later_k_per_h", later)
	e.add("hours_to_alarm_h", hoursToLine(room, s, j.alarmLines()[0].LimitC, later))
	e.add("outdoors_c", meanOver(j.weather(temperatureOf), s))
}

// peakedAt is when the room was highest in the last hour of a stretch, or its end: a record says only to an interval
// when fans began again, and then the room falls fast.
func peakedAt(room series.Curve, s series.Span) int64 {
	in := room.Slice(series.Span{From: max(s.From+1, s.To-series.HourMS), To: s.To})
	if in.Len() == 0 {
		return s.To
	}
	top := 0
	for i, v := range in.Val {
		if v >= in.Val[top] {
			top = i
		}
	}
	return in.Readings.At[top]
}

// endMS is over how much of a climb its ends are averaged: a reading's noise and rounding go, and the bend within is
// small (common practice, no source).
const endMS = 30 * minuteMS

// laterSlope is the mean rise after the first hour, K/h: from the mean of the half hour after that to the mean of the
// last half hour, where they lie apart, else the least-squares slope. A line through a climb that bends leans to the
// middle of it; ends do not. Its range holds the line's slope and those of its two halves, which say how much it still
// bends, the rise between the end readings, and a step of the logger's resolution over the time. It takes an hour, less
// a tenth, and six readings at least.
func laterSlope(mean Logger, s series.Span) Figure {
	room := mean.TempC
	in := room.Slice(series.Span{From: s.From, To: s.To + 1})
	n, hours := in.Len(), float64(s.To-s.From)/series.HourMS
	from, known := room.At(s.From)
	to, knownTo := room.At(s.To)
	if n < 6 || hours < 0.9 || !known || !knownTo {
		return unknown("too_short")
	}
	part := func(i, j int) float64 { return slope(in.Readings.At[i:j], in.Val[i:j]) }
	line := part(0, n)
	mid := line
	begin, end := meanOver(room, series.Span{From: s.From, To: s.From + endMS}), meanOver(room, series.Span{From: s.To - endMS, To: s.To})
	if s.To-s.From >= 3*endMS && begin.OK && end.OK {
		mid = (end.Mid - begin.Mid) / (hours - float64(endMS)/series.HourMS)
	}
	step := mean.TempStepK / hours
	return enclosing(WorkedOut, mid, line, part(0, n/2), part(n/2, n), (to-from)/hours, mid-step, mid+step)
}

// slope is the least-squares slope of values per hour.
func slope(at []int64, val []float64) float64 {
	hours := make([]float64, len(at))
	for i, t := range at {
		hours[i] = float64(t-at[0]) / series.HourMS
	}
	_, k := stat.LinearRegression(hours, val, nil, false)
	return k
}

// alarmWidest is how many times the shortest the longest time to the alarm line may be.
const alarmWidest = 10

// hoursToLine is how many hours after a stretch's start the room reached a line, or would have, had the later slope
// gone on from the stretch's end; its range is that of the slope, and one of more than ten to one says nothing.
func hoursToLine(room series.Curve, s series.Span, lineC float64, later Figure) Figure {
	if from, known := room.At(s.From); known && from > lineC {
		return exactly(0, Recorded)
	}
	if runs := room.Above(s, lineC); len(runs) > 0 {
		return exactly((runs[0].From-float64(s.From))/series.HourMS, Recorded)
	}
	end, known := room.At(s.To)
	switch {
	case !later.OK || !known:
		return unknown("too_short")
	case later.Low <= 0:
		return unknown("climb_levels_off")
	}
	hours := func(slope float64) float64 {
		return float64(s.To-s.From)/series.HourMS + (lineC-end)/slope
	}
	f := exactly(hours(later.Mid), WorkedOut)
	f.Low, f.High = hours(later.High), hours(later.Low)
	if f.High > alarmWidest*f.Low {
		return unknown("climb_levels_off")
	}
	return f
}
