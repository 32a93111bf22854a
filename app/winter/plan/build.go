package plan

import (
	"fmt"

	"thawbook/app/winter"
)

// secondsPerHour turns m³/h into m³/s.
const secondsPerHour = 3600

// percent turns percent into 0–1.
const percent = 100

// winter builds the whole document.
func (b *builder) winter(doc document) winter.Winter {
	if doc.Winter.Name == nil {
		b.refuse("winter.name", Absent, "the plan needs a [winter] table with a name")
	}
	if doc.Winter.Zone == "" {
		b.refuse("winter.zone", Absent, `[winter] needs the zone its times are in, such as zone = "Europe/Tallinn"`)
	}
	if len(doc.Barns) == 0 {
		b.refuse("", Absent, "the plan names no barn; write one in a table [[barn]]")
	}
	if b.err != nil {
		return winter.Winter{}
	}
	b.loc = b.zone("winter", doc.Winter.Zone)
	w := winter.Winter{
		Name: *doc.Winter.Name, Zone: doc.Winter.Zone,
		GapMinutes: b.number("winter", "gap_minutes", doc.Winter.GapMinutes, 1, 10080),
	}
	for i, t := range doc.Barns {
		w.Barns = append(w.Barns, b.barn(fmt.Sprintf("barn[%d]", i), t))
	}
	namedOnce(b, "barn", w.Barns, func(barn winter.Barn) string { return barn.Name })
	w.Outdoor = b.outdoor(doc.Outdoor)
	w.Bands = b.bands(doc.Bands)
	w.Answers = b.answers(doc.Answers)
	return w
}

// barn builds one barn and checks the names its tables call each other by.
func (b *builder) barn(path string, t barnTable) winter.Barn {
	barn := winter.Barn{
		Name:       b.text(path, "name", t.Name),
		AltitudeM:  b.number(path, "altitude_m", t.AltitudeM, -500, 9000),
		VolumeM3:   b.number(path, "volume_m3", t.VolumeM3, 1, 1e7),
		BeesIn:     b.momentIf(path, "bees_in", t.BeesIn),
		BeesOut:    b.momentIf(path, "bees_out", t.BeesOut),
		WaterLines: t.WaterLines,
		Heads:      b.heads(path, t.Heads),
		Stages:     b.stages(path, t.Stages),
	}
	if barn.BeesIn != nil && barn.BeesOut != nil && *barn.BeesOut <= *barn.BeesIn {
		b.refuse(join(path, "bees_out"), BadTime, "bees_out is not later than bees_in")
	}
	barn.Heats = b.heats(path, t.Heats, barn.Stages)
	barn.Loggers = b.barnLoggers(path, t.Loggers, recordable(barn))
	barn.Surfaces = b.surfaces(path, t.Surfaces, loggerNames(barn.Loggers))
	barn.Notes = b.notes(path, t.Notes)
	return barn
}

// heads builds the head-count ledger.
func (b *builder) heads(path string, tables []headsTable) (out []winter.HeadCount) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.heads[%d]", path, i)
		if t.Change == nil {
			b.refuse(join(at, "change"), Absent, "[[barn.heads]] needs a change, such as 340 in or -12 out")
			return out
		}
		out = append(out, winter.HeadCount{At: b.momentAt(at, "at", t.At), Change: *t.Change, Note: t.Note})
	}
	return out
}

// heats builds the heat sources.
func (b *builder) heats(path string, tables []heatTable, stages []winter.Stage) (out []winter.HeatSource) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.heat[%d]", path, i)
		h := winter.HeatSource{
			Name:      b.text(at, "name", t.Name),
			Kind:      b.oneOf(at, "kind", t.Kind, []string{"floor", "solar", "heater", "recovery"}),
			WithStage: t.WithStage,
			Into:      b.oneOf(at, "into", t.Into, []string{"air", "floor", "water", ""}),
		}
		b.known(at, "with_stage", t.WithStage, stageNames(stages))
		out = append(out, h)
	}
	namedOnce(b, path+".heat", out, func(h winter.HeatSource) string { return h.Name })
	return out
}

// surfaces builds the surfaces between room and outdoors.
func (b *builder) surfaces(path string, tables []surfaceTable, loggers []string) (out []winter.Surface) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.surface[%d]", path, i)
		s := winter.Surface{
			Name:   b.text(at, "name", t.Name),
			Kind:   b.oneOf(at, "kind", t.Kind, []string{"wall", "ceiling", "corner", "metal"}),
			Factor: b.number(at, "factor", t.Factor, -1, 1),
			Low:    b.number(at, "low", t.Low, -1, 1),
			High:   b.number(at, "high", t.High, -1, 1),
			Logger: t.Logger,
		}
		b.pair(at, "low", "high", t.Low, t.High)
		b.rising(at, "low", "factor", t.Low, t.Factor)
		b.rising(at, "factor", "high", t.Factor, t.High)
		b.known(at, "logger", t.Logger, loggers)
		out = append(out, s)
	}
	namedOnce(b, path+".surface", out, func(s winter.Surface) string { return s.Name })
	return out
}

// notes builds what the keeper saw.
func (b *builder) notes(path string, tables []noteTable) (out []winter.Note) {
	for i, t := range tables {
		at := fmt.Sprintf("%s.note[%d]", path, i)
		out = append(out, winter.Note{
			At:    b.momentAt(at, "at", t.At),
			Kind:  b.text(at, "kind", t.Kind),
			Value: b.number(at, "value", t.Value, -1e12, 1e12),
			Text:  t.Text,
		})
	}
	return out
}

// bands builds the keeper's own limits.
func (b *builder) bands(t *bandsTable) (out winter.Bands) {
	if t == nil {
		return out
	}
	out.TempC = b.band("bands.air_temperature", t.AirTemperature, -60, 80, 1)
	out.RelHum = b.band("bands.relative_humidity", t.RelativeHumidity, 0, 100, percent)
	return out
}

// band builds the limits of one quantity, each divided by by.
func (b *builder) band(path string, t *bandTable, low, high, by float64) (out winter.Band) {
	if t == nil {
		return out
	}
	limit := func(key string, value *float64) *float64 {
		return scaled(b.number(path, key, value, low, high), by)
	}
	b.rising(path, "good_low", "good_high", t.GoodLow, t.GoodHigh)
	b.rising(path, "watch_low", "watch_high", t.WatchLow, t.WatchHigh)
	b.rising(path, "act_low", "act_high", t.ActLow, t.ActHigh)
	return winter.Band{
		GoodLow: limit("good_low", t.GoodLow), GoodHigh: limit("good_high", t.GoodHigh),
		WatchLow: limit("watch_low", t.WatchLow), WatchHigh: limit("watch_high", t.WatchHigh),
		ActLow: limit("act_low", t.ActLow), ActHigh: limit("act_high", t.ActHigh),
	}
}

// answers builds the replies to questions about files.
func (b *builder) answers(tables []answerTable) (out []winter.Answer) {
	for i, t := range tables {
		at := fmt.Sprintf("answer[%d]", i)
		out = append(out, winter.Answer{
			File: b.text(at, "file", t.File), ID: b.text(at, "id", t.ID), Option: b.text(at, "option", t.Option),
		})
	}
	return out
}
