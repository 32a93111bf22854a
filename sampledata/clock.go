package sampledata

import "time"

const (
	secondMS = 1000
	minuteMS = 60 * secondMS
	hourMS   = 3600 * secondMS
	dayMS    = 24 * hourMS
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

// zone is a place's time: its name, its distance from UTC in winter, and whether its clocks go forward in summer by
// the rule of the European Union: from the last Sunday of March to the last Sunday of October, changing at 01:00 UTC
// (since 1996).
type zone struct {
	name     string
	winterMS int64
	summer   bool
}

var (
	tallinn   = zone{"Europe/Tallinn", 2 * hourMS, true}
	regina    = zone{"America/Regina", -6 * hourMS, false}
	universal = zone{"UTC", 0, false}
)

// at is an instant given by the zone's winter time.
func (z zone) at(year int, month time.Month, day, hour, minute int) int64 {
	return time.Date(year, month, day, hour, minute, 0, 0, time.UTC).UnixMilli() - z.winterMS
}

// standard is an instant given by the winter time of the lowland.
func standard(year int, month time.Month, day, hour, minute int) int64 {
	return tallinn.at(year, month, day, hour, minute)
}

// offsetMS is the zone's distance from UTC at an instant.
func (z zone) offsetMS(atMS int64) int64 {
	year := time.UnixMilli(atMS).UTC().Year()
	if z.summer && atMS >= lastSundayMS(year, time.March) && atMS < lastSundayMS(year, time.October) {
		return z.winterMS + hourMS
	}
	return z.winterMS
}

// lastSundayMS is 01:00 UTC on the last Sunday of a month that has 31 days.
func lastSundayMS(year int, month time.Month) int64 {
	last := time.Date(year, month, 31, 1, 0, 0, 0, time.UTC)
	return last.AddDate(0, 0, -int(last.Weekday())).UnixMilli()
}

// local writes an instant as the keeper's wall clock and calendar.
func (z zone) local(atMS int64, layout string) string {
	return time.UnixMilli(atMS + z.offsetMS(atMS)).UTC().Format(layout)
}

// clock says what a logger was set to. A clock that runs fast is right as its record begins.
type clock struct {
	zone
	named      bool    // the plan has to name the zone: it is not the winter's
	followsDST bool    // it goes forward with summer time
	fast       float64 // what it gains, as a share of the time that passes
}

var (
	winterTime  = clock{zone: tallinn}
	wallClock   = clock{zone: tallinn, followsDST: true}
	worldTime   = clock{zone: universal, named: true}
	prairieTime = clock{zone: regina}
)

// face is what a clock that gains nothing reads at an instant, as if it were UTC.
func (c clock) face(atMS int64) time.Time {
	offset := c.winterMS
	if c.followsDST {
		offset = c.offsetMS(atMS)
	}
	return time.UnixMilli(atMS + offset).UTC()
}

// gainedMS is by how much the clock is ahead a while after it was set.
func (c clock) gainedMS(passedMS int64) int64 { return int64(float64(passedMS) * c.fast) }
