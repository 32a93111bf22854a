package analysis

import (
	"math"
	"slices"
	"time"

	"thawbook/analysis/series"
)

// Share is for how long something was on, of a known time. At is the hour of the local day, 0–23, or the whole degree
// of outdoor temperature that begins the bin, °C.
type Share struct {
	At            int
	OnMS, KnownMS int64
}

// byHour is the share of time on by hour of the local day.
func byHour(v view, s stretches, zone *time.Location) []Share {
	cells := map[int][]series.Span{}
	for _, p := range s {
		for from := p.From; from < p.To; {
			local := time.UnixMilli(from).In(zone)
			to := min(p.To, from-intoHourMS(local)+series.HourMS)
			cells[local.Hour()] = append(cells[local.Hour()], series.Span{From: from, To: to})
			from = to
		}
	}
	return sharesOf(v, cells)
}

// intoHourMS is how long before an instant its clock's hour began, ms.
func intoHourMS(t time.Time) int64 {
	return int64(t.Minute())*minuteMS + int64(t.Second())*1000 + int64(t.Nanosecond())/1e6
}

// byOutdoor is the share of time on by whole degrees of outdoor temperature, exactly for its line.
func byOutdoor(v view, s stretches, outdoor series.Curve) []Share {
	cells := map[int][]series.Span{}
	for _, p := range s {
		cut := lineInside(outdoor, p)
		for i := range cut.Val {
			if i > 0 && cut.Joined(i) {
				degrees(cells, cut.Readings.At[i-1], cut.Readings.At[i], cut.Val[i-1], cut.Val[i])
			}
		}
	}
	return sharesOf(v, cells)
}

// degrees cuts a straight line at every whole degree and adds its parts to the cells.
func degrees(cells map[int][]series.Span, t0, t1 int64, v0, v1 float64) {
	step := 1.0
	if v1 < v0 {
		step = -1
	}
	for from, at := t0, v0; from < t1; {
		next := math.Floor(at) + 1
		if step < 0 {
			next = math.Ceil(at) - 1
		}
		to := t1
		if (v1-next)*step > 0 {
			to = min(t1, t0+int64(math.Round((next-v0)/(v1-v0)*float64(t1-t0))))
		}
		k := int(math.Floor(min(at, at+step/1e6)))
		if to > from {
			cells[k] = append(cells[k], series.Span{From: from, To: to})
		}
		if to == t1 {
			return
		}
		from, at = to, next
	}
}

// sharesOf are the shares of cells, lowest first; a cell in which nothing is known is left out.
func sharesOf(v view, cells map[int][]series.Span) []Share {
	on, sure := spansOf(v.tries[0]), known(v.tries[0])
	keys := make([]int, 0, len(cells))
	for k := range cells {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	out := []Share{}
	for _, k := range keys {
		cell := series.Union(cells[k])
		share := Share{k, series.LengthMS(series.Intersect(on, cell)), series.LengthMS(series.Intersect(sure, cell))}
		if share.KnownMS > 0 {
			out = append(out, share)
		}
	}
	return out
}
