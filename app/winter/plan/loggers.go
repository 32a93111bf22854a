package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"thawbook/app/winter"
)

const minuteMS = 60 * 1000

// barnLoggers builds a barn's loggers; one named again with a later from has been hung elsewhere.
func (b *builder) barnLoggers(path string, tables []loggerTable, records []string) (out []winter.Logger) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.logger[%d]", path, i)
		l := b.logger(at, t)
		l.Place = b.oneOf(at, "place", t.Place, winter.Places)
		b.known(at, "records_stage", t.RecordsStage, records)
		out = append(out, l)
	}
	laterHung(b, path+".logger", out)
	return out
}

// outdoor builds the loggers that hold for every barn.
func (b *builder) outdoor(tables []outdoorTable) (out []winter.Logger) {
	for i, t := range tables {
		at := fmt.Sprintf("outdoor[%d]", i)
		l := b.logger(at, t.loggerTable)
		l.Place = "outdoor"
		if t.Place != "" {
			b.oneOf(at, "place", t.Place, []string{l.Place})
		}
		l.StationKM = b.number(at, "station_km", t.StationKM, 0, 1000)
		out = append(out, l)
	}
	laterHung(b, "outdoor", out)
	return out
}

// tray builds the loggers that hang nowhere yet.
func (b *builder) tray(tables []loggerTable) (out []winter.Logger) {
	for i, t := range tables {
		at := fmt.Sprintf("tray[%d]", i)
		l := b.logger(at, t)
		if t.Place != "" {
			l.Place = b.oneOf(at, "place", t.Place, winter.Places)
		}
		out = append(out, l)
	}
	return out
}

// laterHung refuses a logger that is named again without having been hung elsewhere later. Two instruments of
// one name at different places, or of different channels, may have it from the start.
func laterHung(b *builder, list string, loggers []winter.Logger) {
	laterAgain(b, list, loggers, func(l winter.Logger) (name string, from *int64) {
		if l.From == nil {
			return strings.Join([]string{l.Name, l.Place, l.Channel}, "\x00"), nil
		}
		return l.Name, l.From
	})
}

// logger builds what all kinds of logger share.
func (b *builder) logger(at string, t loggerTable) winter.Logger {
	l := winter.Logger{
		Name: b.text(at, "name", t.Name), Files: listOf(t.Files),
		From:    b.momentIf(at, "from", t.From),
		Channel: t.Channel, RecordsStage: t.RecordsStage,
		OffsetC:      *b.number(at, "offset_c", &t.OffsetC, -20, 20),
		OffsetRelHum: *b.number(at, "offset_rh", &t.OffsetRH, -50, 50) / percent,
		Zone:         t.Zone, FollowsDST: t.FollowsDST, Assumed: t.Assumed,
		AheadMS: int64(math.Round(*b.number(at, "clock_ahead_min", &t.ClockAheadMin, -1e6, 1e6) * minuteMS)),
	}
	if t.Zone != "" {
		b.zone(at, t.Zone)
	}
	if t.Files == nil {
		b.refuse(join(at, "files"), Absent, `%s needs its files, such as files = ["north*.csv"]`, header(at))
	}
	for _, pattern := range t.Files {
		if strings.TrimSpace(pattern) == "" {
			b.refuse(join(at, "files"), BadValue, "files holds an empty name")
		}
	}
	l.Anchors = b.anchors(at, t.Anchors)
	l.Checks = b.checks(at, t.Checks)
	l.Exclusions = b.exclusions(at+".exclude", t.Exclusions, bothQuantities, winter.OfTemperature, winter.OfHumidity)
	l.Kept = b.exclusions(at+".keep", t.Kept, bothQuantities, winter.OfTemperature, winter.OfHumidity)
	return l
}

// checks builds what a logger said beside what was true. What it said of humidity may lie above saturation.
func (b *builder) checks(path string, tables []checkTable) (out []winter.Calibration) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.check[%d]", path, i)
		b.pair(at, "said_c", "true_c", t.SaidC, t.TrueC)
		b.pair(at, "said_rh", "true_rh", t.SaidRH, t.TrueRH)
		if t.SaidC == nil && t.SaidRH == nil {
			b.refuse(at, OneOf, "%s needs one of: said_c and true_c; said_rh and true_rh", header(at))
		}
		out = append(out, winter.Calibration{
			At:         b.momentIf(at, "at", t.At),
			Method:     b.oneOf(at, "method", t.Method, winter.CheckMethods),
			SaidC:      b.number(at, "said_c", t.SaidC, -60, 80),
			TrueC:      b.number(at, "true_c", t.TrueC, -60, 80),
			SaidRelHum: scaled(b.number(at, "said_rh", t.SaidRH, 0, 120), percent),
			TrueRelHum: scaled(b.number(at, "true_rh", t.TrueRH, 0, 100), percent),
		})
	}
	return out
}

// listOf is a list of texts, nil when it is empty.
func listOf(texts []string) []string {
	if len(texts) == 0 {
		return nil
	}
	return texts
}

// anchors builds the pairs of what the logger said and what the watch said, rising by the former.
func (b *builder) anchors(path string, pairs [][]any) (out []winter.Anchor) {
	at := path + ".anchors"
	for _, pair := range pairs {
		if len(pair) != 2 {
			b.refuse(at, BadValue, `an anchor is a pair ["logger said", "watch said"]`)
			return nil
		}
		said, ok := momentOf(pair[0])
		if !ok || said.offset || said.day {
			b.refuse(at, BadTime, `what the logger said is a date and time without zone, such as "2026-11-12T14:30:00"`)
			return nil
		}
		out = append(out, winter.Anchor{FaceMS: said.faceMS, At: b.momentAt(path, "anchors", pair[1])})
	}
	for i := 1; i < len(out); i++ {
		if out[i].FaceMS <= out[i-1].FaceMS || out[i].At <= out[i-1].At {
			b.refuse(at, BadTime, "anchors stand in order of time, both what the logger said and what the watch said")
		}
	}
	return out
}

// known refuses a name that nothing bears; an empty one is none.
func (b *builder) known(at, key, name string, names []string) {
	if name == "" || slices.Contains(names, name) {
		return
	}
	if len(names) == 0 {
		b.refuse(join(at, key), NoSuchName, "%s %q: the barn has nothing of that kind", key, name)
		return
	}
	b.refuse(join(at, key), NoSuchName, "%s %q is not one of: %s", key, name, strings.Join(names, ", "))
}

// stageNames lists the stages' names, each once.
func stageNames(stages []winter.Stage) []string {
	return names(stages, func(s winter.Stage) string { return s.Name })
}

// loggerNames lists the loggers' names, each once.
func loggerNames(loggers []winter.Logger) []string {
	return names(loggers, func(l winter.Logger) string { return l.Name })
}

// names lists what the items are called, each name once.
func names[T any](items []T, name func(T) string) (out []string) {
	for _, item := range items {
		if !slices.Contains(out, name(item)) {
			out = append(out, name(item))
		}
	}
	return out
}

// location is the zone of a winter that has one, else UTC.
func location(zone string) *time.Location {
	if loc, err := winter.Location(zone); err == nil {
		return loc
	}
	return time.UTC
}
