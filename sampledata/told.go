package sampledata

import (
	"cmp"
	"encoding/json"
	"slices"
	"time"
)

func utc(atMS int64) string { return time.UnixMilli(atMS).UTC().Format(time.RFC3339) }

func (s span) truth() SpanTruth { return SpanTruth{utc(s.from), utc(s.to)} }

// truths are some stretches; none is an empty list.
func truths(spans []span) []SpanTruth {
	out := []SpanTruth{}
	for _, s := range spans {
		out = append(out, s.truth())
	}
	return out
}

func hours(steps int) float64 { return float64(steps) * stepS / 3600 }

// truth is the finished simulation's.
func (sim *simulation) truth() BarnTruth {
	t, c := sim.tally, sim.tally.whole
	b := BarnTruth{
		Name: sim.name, BeesIn: utc(t.bees.from), BeesOut: utc(t.bees.to),
		Hours: hours(c.airC.n), HoursBelow2: hours(c.below2), HoursIn: hours(c.airC.n - c.below2 - c.above6),
		HoursAbove6: hours(c.above6), HoursAbove8: hours(c.above8),
		MeanC: c.airC.value(), MinC: t.minC, MaxC: t.maxC,
		MeanRelHumPct: c.relHumPct.value(), HoursRHBelow40: hours(c.dry),
		HoursRHAbove75: hours(c.damp), HoursRHAbove85: hours(c.wet),
		MeanOutdoorC: c.outC.value(), HiveDays: hours(t.colonySteps) / 24, PressurePa: sim.pressurePa,
		ThermostatLagS: thermostatLagS, RestingColonyW: sim.colonyWatts,
		Wall:  WallTruth{sim.wallFactor, sim.wallLagS, hours(c.dew), hours(c.frost)},
		Heats: []HeatTruth{}, Events: sim.events(), Alarm: sim.alarm.truth(),
	}
	for i, st := range sim.ladderStages {
		for k, sums := range t.stages[i] {
			b.Stages = append(b.Stages, sums.truth(st, k))
		}
	}
	for i, h := range sim.heats {
		b.Heats = append(b.Heats, HeatTruth{h.name, h.kind, h.withStage, hours(t.heats[i].ran), hours(t.heats[i].fought)})
	}
	for _, m := range t.months {
		b.Months = append(b.Months, m.truth())
	}
	for _, l := range sim.loggers {
		b.Loggers = append(b.Loggers, l.truth())
	}
	return b
}

func (c *counts) truth() MonthTruth {
	return MonthTruth{
		Month: c.month, Hours: hours(c.airC.n),
		MeanC: c.airC.value(), MeanRelHumPct: c.relHumPct.value(), MeanOutdoorC: c.outC.value(),
		HoursBelow2: hours(c.below2), HoursAbove6: hours(c.above6), HoursAbove8: hours(c.above8),
		DewHours: hours(c.dew), FrostHours: hours(c.frost),
	}
}

// truth is a stage's under its setting number k.
func (st stageTally) truth(s stage, k int) StageTruth {
	t := StageTruth{
		Name: s.name, CalledHours: hours(st.called), RanHours: hours(st.ran),
		CalledStarts: st.calledStarts, RanStarts: st.ranStarts,
		FlowM3H: s.flowM3S * 3600, KWh: s.watts * hours(st.ran) / 1000,
	}
	if !s.alwaysOn {
		t.OnC, t.OffC = s.settings[k].onC, s.settings[k].offC
	}
	if k > 0 {
		at := utc(s.settings[k].fromMS)
		t.From = &at
	}
	if st.partedMS != 0 {
		at := utc(st.partedMS)
		t.FirstParted = &at
	}
	return t
}

// events are what happened to a barn, in order.
func (sim *simulation) events() []EventTruth {
	out := []EventTruth{}
	add := func(kind string, s span) {
		out = append(out, EventTruth{Kind: kind, Start: utc(s.from), End: utc(s.to)})
	}
	for _, s := range sim.doorsOpen {
		add("doors open", s)
	}
	for _, c := range sim.tally.cuts {
		out = append(out, c.truth())
	}
	for _, st := range sim.ladderStages {
		for _, s := range st.dead {
			add("breaker out", s)
		}
		for _, s := range st.settings[min(1, len(st.settings)):] {
			add("setting changed", span{s.fromMS, s.fromMS})
		}
	}
	for i, h := range sim.headCount {
		if i > 0 && i+1 < len(sim.headCount) && h.change > 0 && sim.headCount[i-1].change < 0 {
			add("batch out", span{sim.headCount[i-1].atMS, h.atMS})
		}
	}
	slices.SortStableFunc(out, func(a, b EventTruth) int { return cmp.Compare(a.Start, b.Start) })
	return out
}

func (c cutTally) truth() EventTruth {
	rise, climb := c.hourC-c.startC, (c.endC-c.hourC)/(float64(c.to-c.from)/hourMS-1)
	return EventTruth{
		Kind: "power cut", Start: utc(c.from), End: utc(c.to),
		StartC: &c.startC, FirstHourK: &rise, LaterKH: &climb, PeakC: &c.peakC,
	}
}

func (a *alarm) truth() *AlarmTruth {
	if a == nil {
		return nil
	}
	t := &AlarmTruth{LimitC: a.limitC, DelayMin: float64(a.delayMS) / minuteMS, Off: truths(a.off), Due: []CallTruth{}}
	for _, c := range a.due {
		call := CallTruth{Crossed: utc(c.crossedMS), Due: utc(c.dueMS)}
		if c.loggedMS != 0 {
			at := utc(c.loggedMS)
			call.Logged = &at
		}
		t.Due = append(t.Due, call)
	}
	return t
}

func (l *logger) truth() LoggerTruth {
	t := LoggerTruth{
		Name: l.name, Place: l.place, IntervalS: l.everyMS / secondMS, EmptyBattery: l.emptyBattery,
		Silent: truths(l.silent), InHouse: truths(l.inHouse),
		ClockGainMin: float64(l.clock.gainedMS(l.lastMS-l.firstMS)) / minuteMS,
	}
	for _, f := range l.files {
		t.Files = append(t.Files, FileTruth{f.name, f.rows, utc(f.from), utc(f.to)})
	}
	for _, c := range l.channels {
		t.Channels = append(t.Channels, c.truth())
	}
	return t
}

func (c *channel) truth() ChannelTruth {
	t := ChannelTruth{
		Column: c.title, Quantity: string(c.quantity), Offset: c.offset, NoiseSD: c.noise,
		LagS: c.lagS, Step: c.step, Missing: c.missing,
	}
	if c.stuck != (span{}) {
		s := c.stuck.truth()
		t.Stuck = &s
	}
	if c.seen.n > 0 {
		v := c.seen.value()
		t.TrueMean = &v
	}
	return t
}

// text is the truth as a JSON file.
func (t Truth) text() ([]byte, error) {
	text, err := json.MarshalIndent(t, "", "  ")
	return append(text, '\n'), err
}
