package figure

import (
	"strings"
	"testing"
	"time"

	"thawbook/analysis/series"
)

func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

func utc(t *testing.T, s string) int64 {
	t.Helper()
	at, err := time.Parse("2006-01-02 15:04", s)
	if err != nil {
		t.Fatal(err)
	}
	return at.UnixMilli()
}

// The instants of the clock changes are those of the IANA time zone database, 2025b: Europe/Tallinn
// 26 October 2025 and 29 March 2026, both 01:00 UTC; America/St_Johns 2 November 2025 04:30 UTC and
// 8 March 2026 05:30 UTC.
func TestClockTicksAcrossClockChanges(t *testing.T) {
	rows := []struct {
		zone, from, to string // UTC
		wanted         int
		labels         string
		first          string // UTC
	}{
		{"Europe/Tallinn", "2026-03-28 22:30", "2026-03-29 04:00", 8, "01:00 02:00 04:00 05:00 06:00 07:00", "2026-03-28 23:00"},
		{"Europe/Tallinn", "2025-10-25 21:30", "2025-10-26 03:00", 8, "01:00 02:00 03:00 03:00 04:00 05:00", "2025-10-25 22:00"},
		{"America/St_Johns", "2026-03-08 04:00", "2026-03-08 08:30", 6, "01:00 03:00 04:00 05:00 06:00", "2026-03-08 04:30"},
		{"America/St_Johns", "2025-11-02 02:00", "2025-11-02 07:00", 6, "00:00 01:00 01:00 02:00 03:00", "2025-11-02 02:30"},
	}
	for _, r := range rows {
		ticks, _ := TimeTicks{Zone: zone(t, r.zone), Wanted: r.wanted}.Scale(series.Span{From: utc(t, r.from), To: utc(t, r.to)})
		var labels []string
		for i, k := range ticks {
			labels = append(labels, k.Label)
			if i > 0 && k.At-ticks[i-1].At != series.HourMS {
				t.Errorf("%s from %s: tick %s is %d ms after the one before, want one real hour", r.zone, r.from, k.Label, k.At-ticks[i-1].At)
			}
		}
		if got := strings.Join(labels, " "); got != r.labels || ticks[0].At != utc(t, r.first) {
			t.Errorf("%s from %s: %q beginning %d, want %q beginning %s", r.zone, r.from, got, ticks[0].At, r.labels, r.first)
		}
	}
}

// A local day is 23 h on 29 March 2026 and 25 h on 26 October 2025 in Tallinn (the same database).
func TestDayTicksAreLocalMidnights(t *testing.T) {
	for _, r := range []struct {
		from string
		day  string
		long int64
	}{{"2026-03-26 22:00", "29", 23}, {"2025-10-23 21:00", "26", 25}} {
		from := utc(t, r.from)
		ticks, _ := TimeTicks{Zone: tallinn(), Wanted: 7}.Scale(series.Span{From: from, To: from + 6*dayMS})
		seen := false
		for i := 0; i+1 < len(ticks); i++ {
			want := int64(24)
			if ticks[i].Label == r.day {
				want, seen = r.long, true
			}
			if got := (ticks[i+1].At - ticks[i].At) / series.HourMS; got != want {
				t.Errorf("the day labelled %s is %d h long, want %d", ticks[i].Label, got, want)
			}
		}
		if !seen {
			t.Errorf("no tick for the %s", r.day)
		}
	}
}

// Mondays of the winter 2025/26 by the civil calendar: 1 December 2025 and 5 January 2026 are Mondays.
func TestRungs(t *testing.T) {
	rows := []struct {
		from, to string
		wanted   int
		labels   string
		periods  string
	}{
		{"2025-11-28 00:00", "2026-01-08 00:00", 7, "1 8 15 22 29 5", "November 2025|December|January 2026"},
		{"2025-11-28 00:00", "2025-12-04 12:00", 4, "29 1 3", "November 2025|December"},
		{"2025-11-10 00:00", "2026-04-20 00:00", 6, "Dec Jan Feb Mar Apr", "2025|2026"},
		{"2025-12-31 18:00", "2026-01-01 18:00", 4, "18:00 00:00 06:00 12:00 18:00", "Wed 31 December 2025|Thu 1 January 2026"},
		{"2026-01-01 00:00", "2026-01-02 12:00", 4, "00:00 12:00 00:00 12:00", "Thu 1 January 2026|Fri 2 January"},
		{"2026-01-01 12:00", "2026-01-01 12:20", 4, "12:00 12:05 12:10 12:15 12:20", "Thu 1 January 2026"},
		{"2021-06-01 00:00", "2026-02-01 00:00", 5, "2022 2023 2024 2025 2026", ""},
	}
	for _, r := range rows {
		ticks, periods := TimeTicks{Zone: time.UTC, Wanted: r.wanted}.Scale(series.Span{From: utc(t, r.from), To: utc(t, r.to)})
		var labels, names []string
		for _, k := range ticks {
			labels = append(labels, k.Label)
		}
		for _, p := range periods {
			names = append(names, p.Long)
		}
		if got := strings.Join(labels, " "); got != r.labels {
			t.Errorf("%s to %s: ticks %q, want %q", r.from, r.to, got, r.labels)
		}
		if got := strings.Join(names, "|"); got != r.periods {
			t.Errorf("%s to %s: periods %q, want %q", r.from, r.to, got, r.periods)
		}
	}
}

// Whatever the view: ticks rise, lie inside it, are no more than wanted (one over where both ends fall on
// one, two over where a month is short) and the periods tile it.
func TestScaleOnEveryView(t *testing.T) {
	for _, name := range []string{"Europe/Tallinn", "America/St_Johns", "Asia/Kathmandu", "UTC"} {
		z := zone(t, name)
		start := utc(t, "2025-09-01 00:00")
		for length := int64(minuteMS); length < 400*dayMS; length = length*13/10 + 1 {
			s := series.Span{From: start + length/3, To: start + length/3 + length}
			ticks, periods := TimeTicks{Zone: z, Wanted: 12}.Scale(s)
			if len(ticks) > 14 {
				t.Errorf("%s, %d ms: %d ticks", name, length, len(ticks))
			}
			for i, k := range ticks {
				if k.At < s.From || k.At > s.To || i > 0 && k.At <= ticks[i-1].At {
					t.Errorf("%s, %d ms: tick %d at %d", name, length, i, k.At)
				}
			}
			for i, p := range periods {
				if i > 0 && p.Span.From != periods[i-1].Span.To {
					t.Errorf("%s, %d ms: period %q does not follow on", name, length, p.Long)
				}
			}
			if n := len(periods); n > 0 && (periods[0].Span.From > s.From || periods[n-1].Span.To < s.To) {
				t.Errorf("%s, %d ms: periods do not cover the view", name, length)
			}
		}
	}
}

// Half a day in about four steps: 0, 3, 6, 9 and 12 h.
func TestTicksOfHalfADay(t *testing.T) {
	got, _ := TimeTicks{Zone: time.UTC, Wanted: 4}.Scale(series.Span{To: 12 * series.HourMS})
	if len(got) != 5 || got[1].Label != "03:00" || got[1].At != 3*series.HourMS {
		t.Errorf("ticks of half a day: %v", got)
	}
	if _, p := (TimeTicks{}).Scale(series.Span{From: 5, To: 5}); p != nil {
		t.Errorf("an empty span has periods %v", p)
	}
}
