package analysis

import (
	"slices"

	"thawbook/analysis/series"
)

// RulesVersion numbers the rules the figures are made by; it rises whenever a figure may change.
const RulesVersion = 35

// Spread does work for 0 to n−1 in whatever order, several at once where it likes, and returns when all is done.
type Spread func(n int, work func(i int))

// inTurn is a Spread that does one after another.
func inTurn(n int, work func(i int)) {
	for i := range n {
		work(i)
	}
}

// Judge works out what one barn's winter amounts to. Only the bees' time is scored.
func Judge(in Input) Review { return JudgeSpread(in, inTurn, func(int, int) {}) }

// JudgeSpread is Judge with its long work spread over workers; the Review is the same to the last bit. begin is told of
// each part before it, counted from 0, and of how many there are; a panic in it or in spread ends the judgement.
func JudgeSpread(in Input, spread Spread, begin func(part, of int)) Review {
	j := judgement{Input: in, spread: spread}
	r := Review{Barn: in.Name}
	var all []candidate
	var margins []QuantityRow
	parts := []func(){
		j.look,
		func() { j.setTimes(&r) },
		func() { r.Surfaces, margins = surfaceRows(j) },
		func() { r.Quantities = exposure(j, margins) },
		func() { r.Spells = spells(j, r.Surfaces) },
		func() { r.Events = events(j); j.cuts = cutSpans(r.Events) },
		func() { r.Stages = stageRows(j) },
		func() { r.Heats, r.Mixing, r.Air = heatRows(j), mixingRows(j), j.air() },
		func() { r.Power = power(r.Stages, r.Mixing, j.Currency) },
		func() { all = candidates(j, &r) },
		func() { explain(&r, all, j.beesTime) },
		func() { r.Dryness = dryStretches(j, all) },
		func() { r.Uniformity = uniformity(j) },
		func() { r.Verdict = verdict(j, r.Surfaces) },
		func() { r.Alarms = alarms(j) },
		func() { r.Findings = findings(j, &r) },
		func() { r.Remarks = remarks(j, r.BeesBy) },
	}
	for i, part := range parts {
		begin(i, len(parts))
		part()
	}
	return r
}

// look finds the loggers of each place.
func (j *judgement) look() {
	j.spots = spots(j.Loggers, j.spread)
	j.borrowed = lend(j.spots)
	j.room, j.outdoor = spotAt(j.spots, "room", "control"), spotAt(j.spots, "outdoor")
	j.control = j.room.mean
	if c := spotAt(j.spots, "control"); len(c.loggers) > 0 {
		j.control = c.loggers[0]
	}
}

// setTimes finds the bees' time with its phases and periods, and what of it is known.
func (j *judgement) setTimes(r *Review) {
	j.stays = staysOf(j.indoors(), Logger{TempC: j.weather(temperatureOf), RelHum: j.weather(relHumOf)}, j.spread)
	j.seen = beesSeen(j.stays).withFans(j.Input)
	j.beesTime, r.BeesBy = beesTime(j.Input, j.room.mean.record(), j.seen)
	j.scored = series.Subtract([]series.Span{j.beesTime}, series.Union(j.Excluded))
	j.phases = phases(j.Input, j.beesTime, j.scored)
	j.sight = sightOf(*j)
	j.periods = periods(*j)
	r.BeesIn, r.BeesOut, r.Seen, r.Offset, r.Phases = j.beesTime.From, j.beesTime.To, j.seen, j.sight.offset, j.phases
	r.Traces, r.HiveDays = traces(*j), HiveDays(j.Heads, j.beesTime)
	r.Coverage = j.scored.share(j.scored.knownMS(j.room.mean.TempC))
}

// indoors are the loggers in the room and those beside its thermostat, which were hung and taken down with them.
func (j judgement) indoors() []Logger {
	return slices.Concat(spotAt(j.spots, "room").loggers, spotAt(j.spots, "control").loggers)
}

// judgement is an input with what every question asks of it first.
type judgement struct {
	Input
	spread        Spread
	spots         []spot
	room, outdoor spot
	borrowed      string     // what the room has from the control logger for want of its own: temperature, humidity
	control       Logger     // what the thermostat is judged by
	stays         []BeesSeen // of the thermometers in the room and beside its thermostat
	seen          BeesSeen
	beesTime      series.Span
	scored        stretches // the bees' time less what the keeper excludes
	phases        []Phase   // they follow on one another and make up the bees' time
	sight         sight
	periods       []period      // every stage's setting periods
	cuts          []series.Span // when the power was out
}

// traces gathers the curves behind the figures.
func traces(j judgement) Traces {
	return Traces{
		RoomPlace: j.room.place, RoomErrK: j.room.mean.TempErrK, RoomRelHumErr: j.room.mean.RelHumErr, RoomDewErrK: j.room.mean.dewErrK(j.scored),
		Room: j.room.mean.TempC, RoomRelHum: j.room.mean.RelHum, RoomDewC: j.room.mean.dewC,
		Outdoor: j.weather(temperatureOf), OutdoorRelHum: j.weather(relHumOf),
		Loggers: j.Loggers, Control: j.control.TempC, ControlName: j.control.Name,
	}
}

// outdoorErrK is the least 95 % half-width taken for outdoor air: sun and wind reach a logger there that is right itself
// (common practice, no source).
const outdoorErrK = 0.5

// weatherErrK is what the outdoor temperature may be off by: a weather station's more, at its distance.
func (j judgement) weatherErrK() float64 {
	for _, l := range j.outdoor.loggers {
		if l.TempC.Len() > 0 {
			return max(outdoorErrK, l.TempErrK)
		}
	}
	return outdoorErrK
}

// weather is the first outdoor logger's curve that has the quantity.
func (j judgement) weather(of func(Logger) series.Curve) series.Curve {
	for _, l := range j.outdoor.loggers {
		if c := of(l); c.Len() > 0 {
			return c
		}
	}
	return series.Curve{}
}

// remarks qualify the review as a whole.
func remarks(j judgement, by BeesBy) []series.Remark {
	room := j.room.mean
	notes := []struct {
		code string
		when bool
	}{
		{"bees_time_assumed", by == BeesBy{Assumed, Assumed} && room.Place != ""},
		{"bees_time_half_seen", by == BeesBy{WorkedOut, Assumed} || by == BeesBy{Assumed, WorkedOut}},
		{"bees_time_from_traces", by == BeesBy{WorkedOut, WorkedOut}},
		{"bees_in_assumed", by == BeesBy{Assumed, YourSetting}},
		{"bees_in_from_traces", by == BeesBy{WorkedOut, YourSetting}},
		{"bees_out_assumed", by == BeesBy{YourSetting, Assumed}},
		{"bees_out_from_traces", by == BeesBy{YourSetting, WorkedOut}},
		{"no_room_temperature", room.TempC.Len() == 0},
		{"room_is_control", room.Place == "control" && room.TempC.Len() > 0},
		{"temperature_is_control", j.borrowed == ofTemperature},
		{"humidity_is_control", j.borrowed == ofHumidity},
		{"no_humidity", room.RelHum.Len() == 0},
		{"no_outdoor", j.weather(temperatureOf).Len() == 0},
		{"control_is_room_mean", j.control.Name == "" && hasThermostat(j.Stages)},
		{"alarm_is_room_mean", j.alarmAir().Name == "" && len(notesOf(j.Notes, "alarm call")) > 0},
		{"offset_not_estimated", hasThermostat(j.Stages) && j.sight.offset.Evidence == Assumed},
		{"offset_half_stage_spacing", offsetBlursStages(j.Stages, j.sight.offset)},
	}
	out := []series.Remark{}
	for _, n := range notes {
		if n.when {
			out = append(out, series.Remark{Code: n.code, Count: 1})
		}
	}
	return append(out, loggersElsewhere(j.indoors(), j.stays, j.beesTime)...)
}
