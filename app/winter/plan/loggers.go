package plan

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"thawbook/app/winter"
)

// barnLoggers builds a barn's loggers; one named again with a later from has been hung elsewhere.
func (b *builder) barnLoggers(path string, tables []loggerTable, records []string) (out []winter.Logger) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.logger[%d]", path, i)
		l := b.logger(at, t, out)
		l.Place = b.oneOf(at, "place", t.Place, winter.Places)
		b.known(at, "records_stage", t.RecordsStage, records)
		out = append(out, l)
	}
	return out
}

// outdoor builds the loggers that hold for every barn.
func (b *builder) outdoor(tables []outdoorTable) (out []winter.Logger) {
	for i, t := range tables {
		at := fmt.Sprintf("outdoor[%d]", i)
		l := b.logger(at, t.loggerTable, out)
		l.Place = "outdoor"
		if t.Place != "" {
			b.oneOf(at, "place", t.Place, []string{l.Place})
		}
		l.StationKM = b.number(at, "station_km", t.StationKM, 0, 1000)
		out = append(out, l)
	}
	return out
}

// logger builds what both kinds of logger share; before are those already built.
func (b *builder) logger(at string, t loggerTable, before []winter.Logger) winter.Logger {
	l := winter.Logger{
		Name: b.text(at, "name", t.Name), Files: t.Files,
		From:    b.momentIf(at, "from", t.From),
		Channel: t.Channel, RecordsStage: t.RecordsStage,
		OffsetC:      *b.number(at, "offset_c", &t.OffsetC, -20, 20),
		OffsetRelHum: *b.number(at, "offset_rh", &t.OffsetRH, -50, 50) / percent,
		Zone:         t.Zone, FollowsDST: t.FollowsDST,
	}
	if t.Zone != "" {
		b.zone(at, t.Zone)
	}
	if len(t.Files) == 0 {
		b.refuse(join(at, "files"), Absent, `%s needs its files, such as files = ["north*.csv"]`, header(at))
	}
	for _, pattern := range t.Files {
		if strings.TrimSpace(pattern) == "" {
			b.refuse(join(at, "files"), BadValue, "files holds an empty name")
		}
	}
	l.Anchors = b.anchors(at, t.Anchors)
	from, named := earlierLogger(before, l.Name)
	b.laterThanBefore(at, l.Name, l.From, from, named)
	return l
}

// earlierLogger says whether a logger was named before, and from when on it hung there.
func earlierLogger(loggers []winter.Logger, name string) (from *int64, named bool) {
	for _, l := range slices.Backward(loggers) {
		if l.Name == name {
			return l.From, true
		}
	}
	return nil, false
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

// recordable names what a logger can keep a record of: the barn's stages and heat sources.
func recordable(barn winter.Barn) []string {
	names := stageNames(barn.Stages)
	for _, h := range barn.Heats {
		names = append(names, h.Name)
	}
	return names
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
