package analysis

import (
	"slices"
	"sort"

	"thawbook/analysis/series"
)

// HeatRow is a heat source over the bees' time. Called is what the stage it is wired with was called for; Ran is its
// own record, else, worked out, that of the stage. Either is nil without its evidence.
type HeatRow struct {
	Source      HeatSource
	Called, Ran *Work

	// Overlap is for how many hours it added heat while a stage above its own was on: heat fought fans. Against has
	// the same stage by stage, Fought the stretches, KnownMS the time that can be told.
	Overlap Figure
	Against []Overlap
	Fought  []series.Span
	KnownMS int64

	Effectiveness Figure // 0–1, of a recovery into the intake air
}

// Overlap is for how many hours heat was added while a stage was on.
type Overlap struct {
	Stage string
	Hours Figure
}

// heatRows say of every heat source when it ran, and for how long it fought the fans.
func heatRows(j judgement) []HeatRow {
	rows := make([]HeatRow, 0, len(j.Heats))
	for _, h := range j.Heats {
		called, ran := j.heatViews(h)
		row := HeatRow{Source: h, Called: workOf(called, j.scored, j.control.TempC.Interval()), Ran: workOf(ran, j.scored, 0)}
		if record, ok := recordOf(j.Loggers, h.Name); ok {
			row.Ran = workOf(ran, j.scored, sampledEvery(record))
		}
		on := ran
		if on == nil {
			on = called
		}
		row.overlap(on, j.above(h), j)
		row.Effectiveness = effectiveness(j, h, on)
		rows = append(rows, row)
	}
	return rows
}

// workOf is a view summed up; nil of none.
func workOf(v *view, s stretches, intervalMS int64) *Work {
	if v == nil {
		return nil
	}
	return v.worked(s, intervalMS)
}

// heatViews are what the stage a source is wired with was called for, and when the source ran: by its own record,
// else by the record of that stage.
func (j judgement) heatViews(h HeatSource) (called, ran *view) {
	for _, p := range j.periods {
		if h.WithStage != "" && p.stage == h.WithStage {
			called, ran = called.then(p.called), ran.then(p.ran)
		}
	}
	if called != nil {
		called.evidence = WorkedOut
	}
	if record, ok := recordOf(j.Loggers, h.Name); ok {
		return called, seenBy(clip(held(record), j.scored), Recorded)
	}
	if ran != nil {
		ran.evidence = WorkedOut
	}
	return called, ran
}

// Thermostats are the stages that switch by temperature, lowest first by the lowest on-temperature each ever had.
func Thermostats(stages []Stage) []Stage {
	var byOn []Stage
	for _, st := range stages {
		if _, ok := topOnC([]Stage{st}); ok {
			byOn = append(byOn, st)
		}
	}
	sort.SliceStable(byOn, func(i, j int) bool { return lowestOnC(byOn[i]) < lowestOnC(byOn[j]) })
	return byOn
}

// above are the stages that added heat fights: the thermostat stages above the source's own. Its own is the one it
// is wired with. A source on its own takes the highest that another source of the barn is wired with, since a stage
// that gives heat back is part of the barn's heating; where nothing is wired every thermostat stage is above it.
// Always-on and timer stages are minimum ventilation and fight nothing. After published practice in pig barns, where
// the heater is off 1.1 K below the fan's set point so that the two never run together (Brumm 2011); how sources
// take their own stage is common practice, no source.
func (j judgement) above(h HeatSource) []string {
	var ladder []string
	for _, st := range Thermostats(j.Stages) {
		ladder = append(ladder, st.Name)
	}
	own := slices.Index(ladder, h.WithStage)
	if h.WithStage == "" {
		for _, other := range j.Heats {
			own = max(own, slices.Index(ladder, other.WithStage))
		}
	}
	return ladder[own+1:]
}

// overlap sets for how long a source was on together with each of some stages, and with any of them.
func (row *HeatRow) overlap(on *view, stages []string, j judgement) {
	row.Against, row.Fought = []Overlap{}, []series.Span{}
	switch {
	case on == nil:
		row.Overlap = unknown("no_record")
		return
	case len(stages) == 0:
		row.Overlap = unknown("no_stage_above")
		return
	}
	var views []*view
	for _, name := range stages {
		v := j.thermostatView(name)
		if v == nil {
			row.Overlap = unknown("no_control_temperature")
			return
		}
		views = append(views, v)
		hours, _, _ := together(on, v)
		row.Against = append(row.Against, Overlap{name, hours})
	}
	row.Overlap, row.Fought, row.KnownMS = together(on, views...)
}

// thermostatView is what is known best of when a stage was on under its thermostat settings; nil of none.
func (j judgement) thermostatView(stage string) (v *view) {
	for _, p := range j.periods {
		if p.stage == stage && p.set.Thermostat() {
			v = v.then(p.best())
		}
	}
	return v
}

// together is for how many hours something was on while any of others was, when, and how much time can be told: that
// in which the first is known, and one of the others is on or all are known.
func together(on *view, others ...*view) (hours Figure, when []series.Span, knownMS int64) {
	var tried [3]float64
	for i := range on.tries {
		var any, sure []series.Span
		for k, v := range others {
			any = series.Union(append(any, spansOf(v.tries[i])...))
			if sure = series.Intersect(sure, known(v.tries[i])); k == 0 {
				sure = known(v.tries[i])
			}
		}
		both := series.Intersect(spansOf(on.tries[i]), any)
		tried[i] = float64(series.LengthMS(both)) / series.HourMS
		if i == 0 {
			when, knownMS = both, series.LengthMS(series.Intersect(known(on.tries[0]), series.Union(append(sure, any...))))
		}
	}
	if knownMS == 0 {
		return unknown("nothing_known"), when, 0
	}
	hours = enclosing(on.evidence, tried[0], tried[1:]...)
	for _, v := range others {
		if v.evidence != Recorded {
			hours.Evidence = WorkedOut
		}
	}
	hours.withholdWide()
	return hours, when, knownMS
}
