package plan

import (
	"time"

	"github.com/pelletier/go-toml/v2"

	"thawbook/app/winter"
)

// moment is a time as the keeper wrote it: a clock face in milliseconds as if it were UTC, and either its
// distance from UTC or none.
type moment struct {
	faceMS   int64
	offsetMS int64
	offset   bool // the text carried its distance from UTC
	day      bool // a bare date
}

// layouts are the ways to write a time as text.
var layouts = []struct {
	layout      string
	offset, day bool
}{
	{"2006-01-02", false, true},
	{"2006-01-02T15:04", false, false},
	{"2006-01-02T15:04:05", false, false},
	{"2006-01-02 15:04", false, false},
	{"2006-01-02 15:04:05", false, false},
	{"2006-01-02T15:04Z07:00", true, false},
	{"2006-01-02T15:04:05Z07:00", true, false},
	{"2006-01-02 15:04Z07:00", true, false},
	{"2006-01-02 15:04:05Z07:00", true, false},
}

// The years a plan may speak of. Before and after them zones are guesswork, and a slip of the pen likely.
const firstYear, lastYear = 1970, 2199

// momentOf reads a value of the file as a time; false when it is none.
func momentOf(value any) (moment, bool) {
	var m moment
	switch v := value.(type) {
	case toml.LocalDate:
		m = moment{faceMS: v.AsTime(time.UTC).UnixMilli(), day: true}
	case toml.LocalDateTime:
		m = moment{faceMS: v.AsTime(time.UTC).UnixMilli()}
	case time.Time:
		m = withOffset(v)
	case string:
		return momentOfText(v)
	default:
		return m, false
	}
	return m, m.inRange()
}

// momentOfText reads a text as a time.
func momentOfText(text string) (moment, bool) {
	for _, l := range layouts {
		t, err := time.Parse(l.layout, text)
		if err != nil {
			continue
		}
		m := moment{faceMS: t.UnixMilli(), day: l.day}
		if l.offset {
			m = withOffset(t)
		}
		return m, m.inRange()
	}
	return moment{}, false
}

// withOffset is the moment of a time that carries its distance from UTC.
func withOffset(t time.Time) moment {
	_, seconds := t.Zone()
	offsetMS := int64(seconds) * 1000
	return moment{faceMS: t.UnixMilli() + offsetMS, offsetMS: offsetMS, offset: true}
}

// inRange says whether the year is one a plan may speak of. An offset keeps a year away from the ends, so
// that the face in any other zone lies in range too.
func (m moment) inRange() bool {
	first, last := firstYear, lastYear
	if m.offset {
		first, last = first+1, last-1
	}
	year := time.UnixMilli(m.faceMS).UTC().Year()
	return first <= year && year <= last
}

// instant is the moment in milliseconds UTC; false when the zone's clock skipped that face.
func (m moment) instant(loc *time.Location) (int64, bool) {
	switch {
	case m.offset:
		return m.faceMS - m.offsetMS, true
	case m.day:
		return winter.DayStart(m.faceMS, loc), true
	}
	instants := winter.Instants(m.faceMS, loc)
	if len(instants) == 0 {
		return 0, false
	}
	return instants[0], true
}

// written is the shortest TOML value that reads back as the instant: a date, a local date-time, or one
// with its offset where the clock showed the same face twice.
func written(at int64, loc *time.Location) any {
	face := winter.Face(at, loc)
	t := time.UnixMilli(face).UTC()
	date := toml.LocalDate{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}
	for _, value := range []any{date, writtenFace(face)} {
		if m, ok := momentOf(value); ok {
			if back, ok := m.instant(loc); ok && back == at {
				return value
			}
		}
	}
	if distance := int(face-at) / 1000; distance%60 == 0 {
		return time.UnixMilli(at).In(time.FixedZone("", distance))
	}
	return time.UnixMilli(at).UTC()
}

// writtenFace is a clock face as a TOML value.
func writtenFace(faceMS int64) any {
	t := time.UnixMilli(faceMS).UTC()
	return toml.LocalDateTime{
		LocalDate: toml.LocalDate{Year: t.Year(), Month: int(t.Month()), Day: t.Day()},
		LocalTime: toml.LocalTime{Hour: t.Hour(), Minute: t.Minute(), Second: t.Second(), Nanosecond: t.Nanosecond()},
	}
}
