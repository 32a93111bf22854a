package engine

import (
	"slices"
	"testing"
	"time"
	_ "time/tzdata"

	"thawbook/analysis/series"
	"thawbook/app/winter"
)

const hourMS, dayMS = series.HourMS, 24 * series.HourMS

// utc is an instant, or a clock face as if it were UTC, from a text.
func utc(t *testing.T, text string) int64 {
	t.Helper()
	at, err := time.Parse("2006-01-02 15:04", text)
	if err != nil {
		t.Fatal(err)
	}
	return at.UnixMilli()
}

// zoneOf is a zone that must exist.
func zoneOf(t *testing.T, name string) *time.Location {
	t.Helper()
	loc, err := winter.Location(name)
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

// codes lists what was remarked.
func codes(remarks []series.Remark) []string {
	out := []string{}
	for _, r := range remarks {
		out = append(out, r.Code)
	}
	return out
}

// step is one change of a zone's clocks, from the IANA time zone database, by hand.
type step struct {
	zone, at      string
	before, after int64 // minutes ahead of UTC
}

// Europe/Helsinki: 01:00 UTC, last Sundays of March and October. America/St_Johns: 02:00 local (05:30 and
// 04:30 UTC), second Sunday of March and first of November. Australia/Lord_Howe: 02:00 local, first Sunday
// of October (15:30 UTC the day before) and of April (15:00 UTC the day before), by half an hour.
var steps = []step{
	{"Europe/Helsinki", "2027-03-28 01:00", 120, 180},
	{"Europe/Helsinki", "2026-10-25 01:00", 180, 120},
	{"America/St_Johns", "2027-03-14 05:30", -210, -150},
	{"America/St_Johns", "2026-11-01 04:30", -150, -210},
	{"Australia/Lord_Howe", "2026-10-03 15:30", 630, 660},
	{"Australia/Lord_Howe", "2027-04-03 15:00", 660, 630},
}

// log is what a logger writes from two days and some minutes before a change until two days after: the
// true instants, and the faces of a clock that follows or does not.
func (s step) log(t *testing.T, intervalMin int64, follows bool) (at, face []int64) {
	change := utc(t, s.at)
	for x := change - 48*hourMS; x <= change+48*hourMS; x += intervalMin * minuteMS {
		offset := s.before
		if follows && x >= change {
			offset = s.after
		}
		at, face = append(at, x), append(face, x+offset*minuteMS)
	}
	return at, face
}

func TestTheFaceShowsWhetherItFollowed(t *testing.T) {
	for _, s := range steps {
		for _, intervalMin := range []int64{1, 7, 10, 15, 30, 60, 120, 180} {
			for _, follows := range []bool{true, false} {
				at, face := s.log(t, intervalMin, follows)
				c, remarks := clockOf(winter.Logger{Zone: s.zone}, "", time.UTC, face, false)
				got, impossible := c.instants(face)
				if !slices.Equal(got, at) || impossible > 0 {
					t.Errorf("%s %s, every %d min, follows %v: wrong instants", s.zone, s.at, intervalMin, follows)
				}
				want := []string{}
				if follows {
					want = []string{ClockSkippedHour}
					if s.after < s.before {
						want = []string{ClockRepeatedHour}
					}
				}
				if !slices.Equal(codes(remarks), want) {
					t.Errorf("%s %s, every %d min, follows %v: remarks %v, want %v", s.zone, s.at, intervalMin, follows, codes(remarks), want)
				}
			}
		}
	}
}

// A whole winter from October to April has both steps in it.
func TestAWinterWithBothSteps(t *testing.T) {
	first, autumn, spring := utc(t, "2026-10-01 00:00"), utc(t, "2026-10-25 01:00"), utc(t, "2027-03-28 01:00")
	var at, face []int64
	for x := first; x < utc(t, "2027-04-20 00:00"); x += 15 * minuteMS {
		offset := int64(3)
		if autumn <= x && x < spring {
			offset = 2
		}
		at, face = append(at, x), append(face, x+offset*hourMS)
	}
	c, remarks := clockOf(winter.Logger{}, "Europe/Helsinki", time.UTC, face, false)
	if got, _ := c.instants(face); !slices.Equal(got, at) {
		t.Error("wrong instants")
	}
	if got := codes(remarks); !slices.Equal(got, []string{ClockRepeatedHour, ClockSkippedHour}) {
		t.Errorf("remarks %v", got)
	}
	slices.Reverse(face)
	slices.Reverse(at)
	c, _ = clockOf(winter.Logger{}, "Europe/Helsinki", time.UTC, face, false)
	if got, _ := c.instants(face); !slices.Equal(got, at) {
		t.Error("wrong instants with the newest row on top")
	}
}

func TestWhatTheFaceCantTell(t *testing.T) {
	s := steps[0]
	at, face := s.log(t, 10, false)
	cut := func(all []int64) []int64 { // the readings of a whole day about the step are missing
		return slices.DeleteFunc(slices.Clone(all), func(x int64) bool { return abs(x-all[len(all)/2]) < 12*hourMS })
	}
	c, remarks := clockOf(winter.Logger{}, "", zoneOf(t, s.zone), cut(face), false)
	if got, _ := c.instants(cut(face)); !slices.Equal(got, cut(at)) {
		t.Error("a clock that can't be read is not held at its first distance from UTC")
	}
	if got := codes(remarks); !slices.Equal(got, []string{ClockZoneAssumed, ClockAssumedFixed}) {
		t.Errorf("remarks %v", got)
	}
}

// An hour's readings are missing at other times too, so one more such hole is no evidence.
func TestCommonHolesAreNoStep(t *testing.T) {
	_, face := steps[0].log(t, 10, true)
	var holed []int64
	for i, f := range face {
		if i%60 < 7 || i%60 > 12 {
			holed = append(holed, f)
		}
	}
	c, remarks := clockOf(winter.Logger{Zone: "Europe/Helsinki"}, "", time.UTC, holed, false)
	if c.follows || !slices.Contains(codes(remarks), ClockAssumedFixed) {
		t.Errorf("follows %v, remarks %v", c.follows, codes(remarks))
	}
}

func TestTheKeepersWordCounts(t *testing.T) {
	yes, no := true, false
	s := steps[0]
	_, held := s.log(t, 10, false)
	c, _ := clockOf(winter.Logger{FollowsDST: &yes}, s.zone, time.UTC, held, false)
	got, impossible := c.instants(held)
	// Six readings lie in the skipped hour 03:00–04:00; the faces behind it are an hour earlier than thought.
	if impossible != 6 || got[len(got)-1] != held[len(held)-1]-180*minuteMS {
		t.Errorf("%d readings in the skipped hour, the last at %s", impossible, time.UnixMilli(got[len(got)-1]).UTC())
	}
	_, followed := s.log(t, 10, true)
	c, remarks := clockOf(winter.Logger{FollowsDST: &no}, s.zone, time.UTC, followed, false)
	got, _ = c.instants(followed)
	if last := len(got) - 1; got[last] != followed[last]-120*minuteMS || len(remarks) != 0 {
		t.Errorf("the last at %s, remarks %v", time.UnixMilli(got[last]).UTC(), codes(remarks))
	}
}

func TestWhichZone(t *testing.T) {
	face := []int64{utc(t, "2027-01-01 12:00"), utc(t, "2027-01-01 13:00")}
	for _, c := range []struct{ plan, file, want string }{
		{"", "", "2027-01-01 10:00"},
		{"", "+05:00", "2027-01-01 07:00"},
		{"-03:30", "+05:00", "2027-01-01 15:30"},
	} {
		clock, remarks := clockOf(winter.Logger{Zone: c.plan}, c.file, zoneOf(t, "Europe/Tallinn"), face, false)
		if got, _ := clock.instants(face); got[0] != utc(t, c.want) {
			t.Errorf("plan %q, file %q: %s", c.plan, c.file, time.UnixMilli(got[0]).UTC())
		}
		if assumed := slices.Contains(codes(remarks), ClockZoneAssumed); assumed != (c.plan == "" && c.file == "") {
			t.Errorf("plan %q, file %q: remarks %v", c.plan, c.file, codes(remarks))
		}
	}
	// Who says that a clock does not follow summer time, or what his watch said, speaks of the winter's zone: it is not asked.
	no := false
	for _, said := range []winter.Logger{{FollowsDST: &no}, {Anchors: []winter.Anchor{{FaceMS: face[0], At: face[0]}}}} {
		if _, remarks := clockOf(said, "", zoneOf(t, "Europe/Tallinn"), face, false); slices.Contains(codes(remarks), ClockZoneAssumed) {
			t.Errorf("%+v: remarks %v", said, codes(remarks))
		}
	}
	clock, _ := clockOf(winter.Logger{Zone: "-03:30"}, "", time.UTC, face, true)
	if got, _ := clock.instants(face); !slices.Equal(got, face) {
		t.Error("instants were moved")
	}
}

// One anchor is a constant; two are a drift of 60 s in ten days, 6 s a day, which goes on beyond them.
func TestAnchors(t *testing.T) {
	first, second := utc(t, "2026-11-12 09:00"), utc(t, "2026-11-22 09:00")
	face := []int64{first - dayMS, first, first + 5*dayMS, second, second + dayMS}
	one := winter.Logger{Anchors: []winter.Anchor{{FaceMS: first, At: first + 30000}}}
	two := winter.Logger{Anchors: append(slices.Clone(one.Anchors), winter.Anchor{FaceMS: second, At: second + 90000})}
	for _, c := range []struct {
		logger winter.Logger
		want   []int64 // seconds ahead
	}{
		{one, []int64{30, 30, 30, 30, 30}},
		{two, []int64{24, 30, 60, 90, 96}},
	} {
		clock, _ := clockOf(c.logger, "UTC", time.UTC, face, false)
		got, _ := clock.instants(face)
		for i := range got {
			if got[i]-face[i] != c.want[i]*1000 {
				t.Errorf("%d anchors, face %d: moved by %d ms, want %d s", len(c.logger.Anchors), i, got[i]-face[i], c.want[i])
			}
		}
	}
}

// An anchor is a face of the logger's own zone, the watch's time an instant.
func TestAnchorsInAnotherZone(t *testing.T) {
	face := []int64{utc(t, "2026-11-12 09:00")}
	l := winter.Logger{Zone: "+05:00", Anchors: []winter.Anchor{{FaceMS: face[0], At: utc(t, "2026-11-12 04:02")}}}
	clock, _ := clockOf(l, "", time.UTC, face, false)
	if got, _ := clock.instants(face); got[0] != utc(t, "2026-11-12 04:02") {
		t.Errorf("got %s", time.UnixMilli(got[0]).UTC())
	}
}
