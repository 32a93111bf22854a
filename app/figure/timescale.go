package figure

import (
	"time"

	"thawbook/analysis/series"
)

// TimeTicks places ticks at round local times: minutes, hours, days, Mondays, months and years of Zone
// (nil: UTC), never closer than the labels allow. A local
// hour that a clock change skips has no tick; one that comes twice has two.
type TimeTicks struct {
	Zone   *time.Location
	Wanted int // how many labels fit at most; below 2 counts as 2
}

// TimeTick is one tick of a time axis.
type TimeTick struct {
	At    int64 // ms UTC
	Label string
}

// Period is a stretch of the time axis named below the ticks: a day, a month, a year.
type Period struct {
	Span  series.Span
	Long  string // with what tells it from its neighbours: "3 January 2026"
	Short string // for where the long one does not fit
}

// unit is a rung of the ladder of tick distances.
type unit struct {
	minutes, days, weeks, months int
	ms                           int64 // nominal
	label                        string
	period                       string // day, month, year
}

const (
	minuteMS = 60 * 1000
	dayMS    = 24 * series.HourMS
)

var ladder = buildLadder()

func buildLadder() []unit {
	var l []unit
	for _, m := range []int{1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720} {
		l = append(l, unit{minutes: m, ms: int64(m) * minuteMS, label: "15:04", period: "day"})
	}
	l = append(l, unit{days: 1, ms: dayMS, label: "2", period: "month"},
		unit{days: 2, ms: 2 * dayMS, label: "2", period: "month"},
		unit{weeks: 1, ms: 7 * dayMS, label: "2", period: "month"},
		unit{weeks: 2, ms: 14 * dayMS, label: "2", period: "month"})
	for _, m := range []int{1, 3, 6} {
		l = append(l, unit{months: m, ms: int64(m) * 30 * dayMS, label: "Jan", period: "year"})
	}
	for _, y := range []int{1, 2, 5, 10} {
		l = append(l, unit{months: 12 * y, ms: int64(y) * 365 * dayMS, label: "2006", period: ""})
	}
	return l
}

// Scale returns the ticks inside s (both ends included) and the periods that cover it. The first period
// and every one that opens a new year name their year.
func (t TimeTicks) Scale(s series.Span) ([]TimeTick, []Period) {
	if s.To <= s.From {
		return nil, nil
	}
	zone := t.Zone
	if zone == nil {
		zone = time.UTC
	}
	u := ladder[len(ladder)-1]
	for _, r := range ladder {
		if (s.To-s.From)/r.ms <= int64(max(t.Wanted, 2)) {
			u = r
			break
		}
	}
	return u.ticks(s, zone), u.periods(s, zone)
}

func (u unit) ticks(s series.Span, zone *time.Location) []TimeTick {
	if u.minutes > 0 {
		return u.clockTicks(s, zone)
	}
	var out []TimeTick
	for at := u.first(time.UnixMilli(s.From).In(zone)); ; at = u.next(at) {
		ms := dayStart(at).UnixMilli()
		if ms > s.To {
			return out
		}
		if ms >= s.From && u.wanted(at) {
			out = append(out, TimeTick{At: ms, Label: at.Format(u.label)})
		}
	}
}

// clockTicks steps through real time and keeps the instants whose local face is round.
func (u unit) clockTicks(s series.Span, zone *time.Location) []TimeTick {
	grain := int64(15 * minuteMS) // every zone's offset is a whole quarter of an hour
	if u.minutes < 15 {
		grain = minuteMS
	}
	var out []TimeTick
	for ms := ceilTo(s.From, grain); ms <= s.To; ms += grain {
		at := time.UnixMilli(ms).In(zone)
		if (at.Hour()*60+at.Minute())%u.minutes == 0 {
			out = append(out, TimeTick{At: ms, Label: at.Format(u.label)})
		}
	}
	return out
}

// first returns a calendar day at or before at from which next reaches every tick.
func (u unit) first(at time.Time) time.Time {
	y, m, d := at.Date()
	switch {
	case u.weeks > 0:
		back := (int(at.Weekday()) + 6) % 7
		if u.weeks == 2 && mondayNumber(y, m, d-back)%2 != 0 {
			back += 7
		}
		return noon(y, m, d-back, at.Location())
	case u.months >= 12:
		n := u.months / 12
		return noon(y-y%n, 1, 1, at.Location())
	case u.months > 0:
		return noon(y, m-(m-1)%time.Month(u.months), 1, at.Location())
	}
	return noon(y, m, d, at.Location())
}

func (u unit) next(at time.Time) time.Time {
	y, m, d := at.Date()
	if u.months > 0 {
		return noon(y, m+time.Month(u.months), 1, at.Location())
	}
	return noon(y, m, d+max(1, 7*u.weeks), at.Location())
}

// wanted thins the every-other-day rung to odd days, dropping the 31st before the 1st.
func (u unit) wanted(at time.Time) bool {
	return u.days != 2 || at.Day()%2 == 1 && at.Day() != 31
}

// periods returns the days, months or years that cover s.
func (u unit) periods(s series.Span, zone *time.Location) []Period {
	step := map[string]unit{"day": {days: 1}, "month": {months: 1}, "year": {months: 12}}[u.period]
	if u.period == "" {
		return nil
	}
	var out []Period
	year := 0
	for at := step.first(time.UnixMilli(s.From).In(zone)); ; {
		next := step.next(at)
		p := Period{Span: series.Span{From: dayStart(at).UnixMilli(), To: dayStart(next).UnixMilli()}}
		if p.Span.From >= s.To {
			return out
		}
		p.Long, p.Short = periodNames(u.period, at, at.Year() != year)
		out = append(out, p)
		year, at = at.Year(), next
	}
}

func periodNames(period string, at time.Time, withYear bool) (long, short string) {
	switch {
	case period == "year":
		return at.Format("2006"), at.Format("2006")
	case period == "month" && withYear:
		return at.Format("January 2006"), at.Format("Jan 2006")
	case period == "month":
		return at.Format("January"), at.Format("Jan")
	case withYear:
		return at.Format("Mon 2 January 2006"), at.Format("2 Jan 2006")
	}
	return at.Format("Mon 2 January"), at.Format("2 Jan")
}

// dayStart returns the first instant of at's local day; not midnight where a clock change skips it.
func dayStart(at time.Time) time.Time {
	y, m, d := at.Date()
	t := time.Date(y, m, d, 0, 0, 0, 0, at.Location())
	if t.Day() != at.Day() {
		t = t.Add(time.Hour)
	}
	return t
}

// noon stands for a calendar day: a time of day that no clock change skips.
func noon(y int, m time.Month, d int, zone *time.Location) time.Time {
	return time.Date(y, m, d, 12, 0, 0, 0, zone)
}

func mondayNumber(y int, m time.Month, d int) int64 {
	return (time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix()/86400 + 3) / 7
}

func ceilTo(ms, grain int64) int64 {
	r := ms % grain
	if r < 0 {
		r += grain
	}
	if r == 0 {
		return ms
	}
	return ms - r + grain
}
