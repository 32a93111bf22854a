package analysis

import "thawbook/analysis/series"

// RulesVersion numbers the rules the figures are made by; it rises whenever a figure may change.
const RulesVersion = 12

// Spread does work for 0 to n−1 in whatever order, several at once where it likes, and returns when all is done.
type Spread func(n int, work func(i int))

// inTurn is a Spread that does one after another.
func inTurn(n int, work func(i int)) {
	for i := range n {
		work(i)
	}
}

// Judge works out what one barn's winter amounts to. Only the bees' time is scored.
func Judge(in Input) Review { return JudgeSpread(in, inTurn) }

// JudgeSpread is Judge with its long work spread over workers; the Review is the same to the last bit.
func JudgeSpread(in Input, spread Spread) Review {
	j := judgement{Input: in, spread: spread, spots: spots(in.Loggers, spread)}
	j.room, j.outdoor = spotAt(j.spots, "room", "control"), spotAt(j.spots, "outdoor")
	j.control = j.room.mean
	if c := spotAt(j.spots, "control"); len(c.loggers) > 0 {
		j.control = c.loggers[0]
	}
	var evidence Evidence
	j.seen = beesSeen(j.room.loggers, j.weather(temperatureOf), spread)
	j.beesTime, evidence = beesTime(in, j.room.mean.TempC, j.seen)
	j.scored = series.Subtract([]series.Span{j.beesTime}, series.Union(in.Excluded))
	j.phases = phases(in, j.beesTime, j.scored)
	j.sight = sightOf(j)
	j.periods = periods(j)

	r := Review{Barn: in.Name, BeesIn: j.beesTime.From, BeesOut: j.beesTime.To, BeesTime: evidence, Seen: j.seen, Offset: j.sight.offset}
	r.Traces = traces(j)
	r.HiveDays = HiveDays(in.Heads, j.beesTime)
	r.Coverage = j.scored.share(j.scored.knownMS(j.room.mean.TempC))
	r.Phases = j.phases
	surfaces, margins := surfaceRows(j)
	r.Surfaces, r.Quantities = surfaces, exposure(j, margins)
	r.Spells = spells(j, r.Surfaces)
	r.Stages = stageRows(j)
	r.Heats, r.Mixing = heatRows(j), mixingRows(j)
	r.Air = j.air()
	r.Power = power(r.Stages, r.Mixing, j.Currency)
	r.Events = events(j)
	all := candidates(j, &r)
	explain(&r, all, j.beesTime)
	r.Dryness = dryStretches(j, all)
	r.Uniformity = uniformity(j)
	r.Verdict = verdict(j, r.Surfaces)
	r.Alarms = alarms(j)
	r.Findings = findings(j, &r)
	r.Remarks = remarks(j, evidence)
	return r
}

// judgement is an input with what every question asks of it first.
type judgement struct {
	Input
	spread        Spread
	spots         []spot
	room, outdoor spot
	control       Logger // what the thermostat is judged by
	seen          BeesSeen
	beesTime      series.Span
	scored        stretches // the bees' time less what the keeper excludes
	phases        []Phase   // they follow on one another and make up the bees' time
	sight         sight
	periods       []period // every stage's setting periods
}

// traces gathers the curves behind the figures.
func traces(j judgement) Traces {
	return Traces{
		RoomPlace: j.room.place, RoomErrK: j.room.mean.TempErrK, RoomRelHumErr: j.room.mean.RelHumErr, RoomDewErrK: j.room.mean.dewErrK(),
		Room: j.room.mean.TempC, RoomRelHum: j.room.mean.RelHum, RoomDewC: j.room.mean.dewC,
		Outdoor: j.weather(temperatureOf), OutdoorRelHum: j.weather(relHumOf),
		Loggers: j.Loggers, Control: j.control.TempC, ControlName: j.control.Name,
	}
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
func remarks(j judgement, beesTime Evidence) []series.Remark {
	room := j.room.mean
	notes := []struct {
		code string
		when bool
	}{
		{"bees_time_assumed", beesTime == Assumed && !halfSeen(j.Input, j.seen)},
		{"bees_time_half_seen", beesTime == Assumed && halfSeen(j.Input, j.seen)},
		{"bees_time_from_traces", beesTime == WorkedOut},
		{"no_room_temperature", room.TempC.Len() == 0},
		{"room_is_control", room.Place == "control" && room.TempC.Len() > 0},
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
	return out
}
