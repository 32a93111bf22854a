package sampledata

import "time"

const (
	secondMS       = 1000
	minuteMS       = 60 * secondMS
	hourMS         = 3600 * secondMS
	dayMS          = 24 * hourMS
	standardZoneMS = 2 * hourMS // Europe/Tallinn in winter
)

// span is the half-open stretch [from, to) in milliseconds UTC.
type span struct{ from, to int64 }

// within says whether an instant lies in one of the spans.
func within(spans []span, atMS int64) bool {
	for _, s := range spans {
		if s.from <= atMS && atMS < s.to {
			return true
		}
	}
	return false
}

// standard is an instant given by the standard time of the zone.
func standard(year int, month time.Month, day, hour, minute int) int64 {
	return time.Date(year, month, day, hour, minute, 0, 0, time.UTC).UnixMilli() - standardZoneMS
}

// zoneMS is the offset of Europe/Tallinn at an instant: summer time from the last Sunday of March to the last
// Sunday of October, changing at 01:00 UTC (the rule of the European Union since 1996).
func zoneMS(atMS int64) int64 {
	year := time.UnixMilli(atMS).UTC().Year()
	if atMS >= lastSundayMS(year, time.March) && atMS < lastSundayMS(year, time.October) {
		return standardZoneMS + hourMS
	}
	return standardZoneMS
}

// lastSundayMS is 01:00 UTC on the last Sunday of a month that has 31 days.
func lastSundayMS(year int, month time.Month) int64 {
	last := time.Date(year, month, 31, 1, 0, 0, 0, time.UTC)
	return last.AddDate(0, 0, -int(last.Weekday())).UnixMilli()
}

// local writes an instant as the keeper's wall clock and calendar.
func local(atMS int64, layout string) string {
	return time.UnixMilli(atMS + zoneMS(atMS)).UTC().Format(layout)
}
