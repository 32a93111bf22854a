package winter

import (
	"fmt"
	"regexp"
	"strconv"
	"time"
)

// Instants in this file are milliseconds since 1970-01-01 UTC; a clock face is the date and time a clock
// shows, in milliseconds as if it were UTC.

// fixedZone is a zone written as its distance from UTC.
var fixedZone = regexp.MustCompile(`^([+-])(\d\d):?([0-5]\d)$`)

// Location is the zone of a name: an IANA name such as Europe/Tallinn, UTC, or ±hh:mm (up to 18 hours).
// Anything else, "" and Local included, is an error of one sentence.
func Location(name string) (*time.Location, error) {
	if m := fixedZone.FindStringSubmatch(name); m != nil {
		hours, _ := strconv.Atoi(m[2])
		minutes, _ := strconv.Atoi(m[3])
		seconds := (hours*60 + minutes) * 60
		if m[1] == "-" {
			seconds = -seconds
		}
		if hours < 18 {
			return time.FixedZone(name, seconds), nil
		}
	}
	if name != "" && name != "Local" {
		if loc, err := time.LoadLocation(name); err == nil {
			return loc, nil
		}
	}
	return nil, fmt.Errorf("%q is no time zone; write a place such as Europe/Tallinn, UTC, or a distance such as +02:00", name)
}

// Face is what a clock of the zone shows at an instant.
func Face(at int64, loc *time.Location) int64 { return at + offsetMS(at, loc) }

// Instants are the instants, earliest first, at which a clock of the zone shows a face: one, two in an
// hour the clock repeats, none in an hour it skips.
func Instants(face int64, loc *time.Location) []int64 {
	const dayMS = 24 * 3600 * 1000
	var out []int64
	last := int64(0)
	for _, probe := range []int64{face - dayMS, face + dayMS} {
		offset := offsetMS(probe, loc)
		at := face - offset
		if offsetMS(at, loc) == offset && (len(out) == 0 || offset != last) {
			out = append(out, at)
		}
		last = offset
	}
	return out
}

// InstantBefore is when a clock that had not yet been put forward would have shown the face: for a face
// in a skipped hour the instant as far behind the step as the face is.
func InstantBefore(face int64, loc *time.Location) int64 {
	const dayMS = 24 * 3600 * 1000
	return face - offsetMS(face-dayMS, loc)
}

// DayStart is the first instant of the local day a face lies in: midnight, or the step of the clock
// where that skips midnight, or the first midnight where it repeats it.
func DayStart(face int64, loc *time.Location) int64 {
	const dayMS = 24 * 3600 * 1000
	midnight := face - ((face%dayMS)+dayMS)%dayMS
	if at := Instants(midnight, loc); len(at) > 0 {
		return at[0]
	}
	start, _ := time.UnixMilli(InstantBefore(midnight, loc)).In(loc).ZoneBounds()
	return start.UnixMilli()
}

// offsetMS is how far a zone's clock is ahead of UTC at an instant.
func offsetMS(at int64, loc *time.Location) int64 {
	_, seconds := time.UnixMilli(at).In(loc).Zone()
	return int64(seconds) * 1000
}
