package series_test

import (
	"slices"
	"testing"
	"time"
	_ "time/tzdata" // the zone rules, so that the machine's own don't matter

	"thawbook/analysis/series"
)

func TestSteps(t *testing.T) {
	for _, row := range []struct {
		s            series.Span
		step, origin int64
		want         []series.Span
	}{
		{series.Span{From: 0, To: 20}, 10, 0, []series.Span{{From: 0, To: 10}, {From: 10, To: 20}}},
		{series.Span{From: -3, To: 12}, 10, 0, []series.Span{{From: -3, To: 0}, {From: 0, To: 10}, {From: 10, To: 12}}},
		{series.Span{From: 0, To: 12}, 10, 4, []series.Span{{From: 0, To: 4}, {From: 4, To: 12}}},
		{series.Span{From: 2, To: 3}, 10, 0, []series.Span{{From: 2, To: 3}}},
		{series.Span{From: 5, To: 5}, 10, 0, nil},
		{series.Span{From: 5, To: 1}, 10, 0, nil},
		{series.Span{From: 0, To: 20}, 0, 0, nil},
	} {
		if got := series.Steps(row.s, row.step, row.origin); !slices.Equal(got, row.want) {
			t.Errorf("Steps(%v, %d, %d) = %v", row.s, row.step, row.origin, got)
		}
	}
}

// zone is a location of the IANA time zone database.
func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

func TestLocalDaysWhereClocksChange(t *testing.T) {
	// The IANA time zone database; the start of each day in UTC worked by hand from its rules.
	for _, row := range []struct {
		what, zone, day, start string
		hours                  float64
	}{
		{"spring, hour skipped at 2", "America/Montreal", "2012-03-11", "2012-03-11 05:00:00", 23},
		{"autumn, hour repeated at 1", "America/Montreal", "2012-11-04", "2012-11-04 04:00:00", 25},
		{"an ordinary day", "America/Montreal", "2012-07-01", "2012-07-01 04:00:00", 24},
		{"half-hour change, spring", "Australia/Lord_Howe", "2023-10-01", "2023-09-30 13:30:00", 23.5},
		{"half-hour change, autumn", "Australia/Lord_Howe", "2023-04-02", "2023-04-01 13:00:00", 24.5},
		{"half-hour offset", "Australia/Adelaide", "2023-10-01", "2023-09-30 14:30:00", 23},
		{"midnight skipped", "America/Sao_Paulo", "2018-11-04", "2018-11-04 03:00:00", 23},
		{"the day before", "America/Sao_Paulo", "2018-11-03", "2018-11-03 03:00:00", 24},
		{"clock back from midnight", "America/Sao_Paulo", "2018-02-17", "2018-02-17 02:00:00", 25},
		{"midnight twice", "America/Havana", "2023-11-05", "2023-11-05 04:00:00", 25},
		{"day before one skipped whole", "Pacific/Apia", "2011-12-29", "2011-12-29 10:00:00", 24},
		{"day after it", "Pacific/Apia", "2011-12-31", "2011-12-30 10:00:00", 24},
		{"no zone rules", "UTC", "2012-03-11", "2012-03-11 00:00:00", 24},
	} {
		loc := zone(t, row.zone)
		noon, err := time.ParseInLocation(time.DateOnly+" 15", row.day+" 12", loc)
		if err != nil {
			t.Fatal(err)
		}
		from := noon.UnixMilli()
		days := series.LocalDays(series.Span{From: from - 3*day, To: from + 3*day}, loc)
		found := false
		for i, d := range days {
			if i > 0 && d.From != days[i-1].To {
				t.Errorf("%s %s: day %d does not follow on", row.what, row.day, i)
			}
			if d.From <= from && from < d.To {
				found = true
				near(t, row.what+": start", float64(d.From), float64(clock(t, row.start)), 0)
				near(t, row.what+": hours", float64(d.To-d.From)/hour, row.hours, 0)
			}
		}
		if !found {
			t.Errorf("%s: no day holds noon", row.what)
		}
	}
}

func TestLocalDaysCoverAnySpan(t *testing.T) {
	for _, name := range []string{"America/Montreal", "Australia/Lord_Howe", "Africa/Casablanca", "America/Goose_Bay", "Asia/Beirut", "Pacific/Apia"} {
		loc := zone(t, name)
		s := series.Span{From: clock(t, "2005-06-01 07:13:00"), To: clock(t, "2026-03-03 19:01:00")}
		days := series.LocalDays(s, loc)
		if days[0].From != s.From || days[len(days)-1].To != s.To || series.LengthMS(days) != s.To-s.From {
			t.Errorf("%s: the days don't cover the span", name)
		}
		for i := 1; i < len(days); i++ {
			if days[i].From != days[i-1].To || days[i].To-days[i].From > 26*hour || days[i].From >= days[i].To {
				t.Fatalf("%s: day %d is %v after %v", name, i, days[i], days[i-1])
			}
			// Its first instant is the first with its date: the millisecond before belongs to another.
			before, at := time.UnixMilli(days[i].From-1).In(loc), time.UnixMilli(days[i].From).In(loc)
			if before.YearDay() == at.YearDay() {
				t.Errorf("%s: a day begins inside %v", name, at)
			}
		}
	}
	if got := series.LocalDays(series.Span{From: 5, To: 5}, time.UTC); got != nil {
		t.Errorf("an empty span has days %v", got)
	}
}
