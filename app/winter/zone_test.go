package winter

import (
	"testing"
	"time"
	_ "time/tzdata"
)

// ms is an instant or a face of a text.
func ms(t *testing.T, text string) int64 {
	t.Helper()
	at, err := time.Parse("2006-01-02 15:04", text)
	if err != nil {
		t.Fatal(err)
	}
	return at.UnixMilli()
}

// The expected instants are worked out by hand from the published rules of each zone (IANA time zone
// database): Helsinki steps at 01:00 UTC on the last Sundays of March and October between +2 and +3;
// St John's at 02:00 local on the second Sunday of March and the first of November between −3:30 and −2:30;
// Lord Howe at 02:00 local on the first Sundays of October (forward half an hour) and April, between +10:30 and +11.
func TestInstantsOfAFace(t *testing.T) {
	for _, c := range []struct {
		zone, face string
		want       []string
	}{
		{"Europe/Helsinki", "2026-01-15 12:00", []string{"2026-01-15 10:00"}},
		{"Europe/Helsinki", "2026-07-15 12:00", []string{"2026-07-15 09:00"}},
		{"Europe/Helsinki", "2026-03-29 02:59", []string{"2026-03-29 00:59"}},
		{"Europe/Helsinki", "2026-03-29 03:00", nil},
		{"Europe/Helsinki", "2026-03-29 03:59", nil},
		{"Europe/Helsinki", "2026-03-29 04:00", []string{"2026-03-29 01:00"}},
		{"Europe/Helsinki", "2026-10-25 02:59", []string{"2026-10-24 23:59"}},
		{"Europe/Helsinki", "2026-10-25 03:30", []string{"2026-10-25 00:30", "2026-10-25 01:30"}},
		{"Europe/Helsinki", "2026-10-25 04:00", []string{"2026-10-25 02:00"}},
		{"America/St_Johns", "2026-03-08 01:59", []string{"2026-03-08 05:29"}},
		{"America/St_Johns", "2026-03-08 02:30", nil},
		{"America/St_Johns", "2026-03-08 03:00", []string{"2026-03-08 05:30"}},
		{"America/St_Johns", "2026-11-01 01:30", []string{"2026-11-01 04:00", "2026-11-01 05:00"}},
		{"Australia/Lord_Howe", "2026-04-05 01:45", []string{"2026-04-04 14:45", "2026-04-04 15:15"}},
		{"Australia/Lord_Howe", "2026-04-05 02:00", []string{"2026-04-04 15:30"}},
		{"Australia/Lord_Howe", "2026-10-04 02:15", nil},
		{"Australia/Lord_Howe", "2026-10-04 02:30", []string{"2026-10-03 15:30"}},
		{"+05:45", "2026-03-29 03:00", []string{"2026-03-28 21:15"}},
		{"-03:30", "2026-03-08 02:30", []string{"2026-03-08 06:00"}},
	} {
		loc, err := Location(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		got := Instants(ms(t, c.face), loc)
		if len(got) != len(c.want) {
			t.Errorf("%s %s: %d instants, want %d", c.zone, c.face, len(got), len(c.want))
			continue
		}
		for i := range got {
			if got[i] != ms(t, c.want[i]) {
				t.Errorf("%s %s: %s, want %s", c.zone, c.face, time.UnixMilli(got[i]).UTC(), c.want[i])
			}
			if Face(got[i], loc) != ms(t, c.face) {
				t.Errorf("%s %s: the face does not come back", c.zone, c.face)
			}
		}
	}
}

// In a skipped hour the clock is read as if it had not been put forward: 03:30 in Helsinki is 01:30 UTC.
func TestAFaceInASkippedHour(t *testing.T) {
	loc, _ := Location("Europe/Helsinki")
	if got := InstantBefore(ms(t, "2026-03-29 03:30"), loc); got != ms(t, "2026-03-29 01:30") {
		t.Errorf("got %s", time.UnixMilli(got).UTC())
	}
}

// Beirut put its clocks forward at midnight on 26 March 2022 (to 27 March 01:00, +2 to +3), Havana puts them back at 01:00 to midnight
// (IANA time zone database): the first day starts at 01:00, the second at its first midnight.
func TestTheStartOfADay(t *testing.T) {
	for _, c := range []struct{ zone, face, want string }{
		{"Asia/Beirut", "2022-03-27 09:00", "2022-03-26 22:00"},
		{"America/Havana", "2026-11-01 09:00", "2026-11-01 04:00"},
		{"Europe/Tallinn", "2026-11-12 00:00", "2026-11-11 22:00"},
		{"UTC", "1969-12-31 18:00", "1969-12-31 00:00"},
	} {
		loc, err := Location(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		if got := DayStart(ms(t, c.face), loc); got != ms(t, c.want) {
			t.Errorf("%s %s: %s, want %s", c.zone, c.face, time.UnixMilli(got).UTC(), c.want)
		}
	}
}

func TestNoZone(t *testing.T) {
	for _, name := range []string{"", "Local", "Europe/Nowhere", "+25:00", "+2", "../etc/passwd", "EST5EDT4"} {
		if _, err := Location(name); err == nil {
			t.Errorf("%q passes for a zone", name)
		}
	}
}
