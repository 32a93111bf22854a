package series

import "time"

// Steps lists the cells of a regular grid that cover s, the first and last clipped to s. Cell edges lie
// at originMS plus whole multiples of stepMS (milliseconds UTC). None when s is empty or stepMS < 1.
func Steps(s Span, stepMS, originMS int64) []Span {
	if stepMS < 1 || s.From >= s.To {
		return nil
	}
	first := floorDiv(s.From-originMS, stepMS)
	last := floorDiv(s.To-1-originMS, stepMS)
	cells := make([]Span, 0, last-first+1)
	for k := first; k <= last; k++ {
		from := originMS + k*stepMS
		cells = append(cells, Span{max(from, s.From), min(from+stepMS, s.To)})
	}
	return cells
}

// LocalDays lists the days of loc that cover s, the first and last clipped to s: 24 hours long, or 23,
// 25, 23.5, 24.5 … where the clocks change. A day whose midnight the clocks skip begins at the jump;
// one whose midnight comes twice begins at the first; one that is skipped whole is left out.
func LocalDays(s Span, loc *time.Location) []Span {
	var days []Span
	year, month, day := time.UnixMilli(s.From).In(loc).Date()
	for from := s.From; from < s.To; {
		day++
		to := min(dayStart(year, month, day, loc), s.To)
		if to > from {
			days = append(days, Span{from, to})
			from = to
		}
	}
	return days
}

// dayStart is the first instant of loc whose calendar date has reached year, month, day. Day may lie
// outside the month, as in time.Date. time.Date itself does not say which instant it takes for a
// midnight that is skipped or repeated, so the stretches of constant offset are tried in turn.
func dayStart(year int, month time.Month, day int, loc *time.Location) int64 {
	wall := time.Date(year, month, day, 0, 0, 0, 0, time.UTC)
	at := wall.Add(-26 * time.Hour).In(loc) // no offset from UTC reaches a day
	for {
		_, offset := at.Zone()
		from, to := at.ZoneBounds()
		midnight := wall.Add(-time.Duration(offset) * time.Second)
		if midnight.Before(from) {
			midnight = from
		}
		if to.IsZero() || midnight.Before(to) {
			return midnight.UnixMilli()
		}
		at = to
	}
}

// floorDiv is a/b rounded down, for b > 0.
func floorDiv(a, b int64) int64 {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}
