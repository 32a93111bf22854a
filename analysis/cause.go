package analysis

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// Cause is what went with a spell: not why it came, only what held while it lasted and not around it. Share is
// the part of the spell, with the hours before it, in which it held; Usual the same for the days around. Mean is
// the mean of the quantity behind it over the spell, unknown where there is none.
type Cause struct {
	Code         string
	About        string  // the stage or heat source it is about; empty where it is none
	Share, Usual float64 // 0–1
	Hours        float64 // of the spell's hours, those in which it held
	Mean         Figure
}

// The codes of causes.
const (
	OutdoorWarm   = "outdoor_warm"          // the air outside was too warm to cool with
	OutdoorCold   = "outdoor_cold"          // it was among the coldest quarter of the winter outside
	OutdoorHumid  = "outdoor_humid"         // outdoor air brought to the room's temperature was itself as damp
	OutdoorDry    = "outdoor_dry"           // the air outside held as little water as in the driest quarter
	NotRun        = "called_but_not_run"    // a stage was called for and its record shows it off
	RunUncalled   = "ran_without_call"      // a stage ran though its thermostat can't have asked
	AlwaysOnOff   = "always_on_stood"       // the stage that is always on stood still
	NotCalled     = "no_stage_called"       // the room was outside the band and no thermostat asked
	FansAtLimit   = "every_stage_on"        // every thermostat's stage was on, and the air outside cold enough to cool with
	BigStages     = "big_stages_ran"        // stages above the first moved air
	HeatOn        = "heat_on"               // added heat ran
	HeatOff       = "heat_off"              // heat stood though the room was no warmer than when it usually runs
	RoomDamp      = "room_damp"             // the room's air was above its good band
	JustCarriedIn = "hives_just_carried_in" // within days of the bees' coming in
	PowerCut      = "power_cut"             // noted, or shown by the stages' records, and the hours after it
	DoorsOpen     = "doors_open"            // noted, or shown by several loggers, and the hours after it
)

// How a cause is told from what merely holds all winter (common practice, no source; the shares are held to
// planted causes in the tests).
const (
	mostCauses    = 2
	leastShare    = 0.5                     // of the spell
	leastLift     = 0.3                     // above the days around it
	aroundMS      = 10 * 24 * series.HourMS // the days around, before and after
	awayMS        = 6 * series.HourMS       // from other spells of the kind, for a day to count as usual
	leadMS        = 3 * series.HourMS       // a room answers its weather within hours
	carriedInMS   = 5 * 24 * series.HourMS
	coolingK      = 3  // the air a fan brings must be this much colder than the limit to hold it
	humidPct      = 10 // outdoor air this close below the limit leaves no room for the bees' water
	extremeShare  = 0.25
	leastKnownFor = 0.5 // of the spell, for a cause to be looked at
)

// candidate is something that may go with spells of some kinds: when it held, of the time for which that is known.
type candidate struct {
	code      string
	about     string
	kinds     []string
	on, known []series.Span
	of        series.Curve  // the quantity behind it
	alone     []series.Span // when it is reason enough, whatever the days around were like
}

// explain finds what went with each spell.
func explain(r *Review, all []candidate, bees series.Span) {
	for i := range r.Spells {
		r.Spells[i].WentWith, r.Spells[i].beside = causes(r.Spells, i, all, bees)
	}
}

// causes are the candidates that held for most of a spell, and clearly more than in the days around it or so far that it is reason
// enough, the clearest first, two at most; and beside them those that held for some of it.
func causes(spells []Spell, i int, all []candidate, bees series.Span) (out, beside []Cause) {
	s := spells[i]
	around := usualTime(spells, s, bees)
	window := []series.Span{{From: s.Span.From - leadMS, To: s.Span.To}}
	out = []Cause{}
	for _, c := range all {
		if !slices.Contains(c.kinds, s.Kind) {
			continue
		}
		w := Cause{Code: c.code, About: c.about, Hours: c.hoursOf(s)}
		if held, ok := c.share(window); ok && held >= leastShare {
			w.Share = held
			w.Usual, _ = c.share(around)
		}
		switch {
		case w.Share-w.Usual >= leastLift, w.Share > 0 && c.isEnough(s):
			w.Mean = meanFigure(c.of, s.Span)
			out = append(out, w)
		case w.Hours > 0:
			beside = append(beside, w)
		}
	}
	slices.SortStableFunc(out, func(a, b Cause) int { return cmp.Compare(b.Share-b.Usual, a.Share-a.Usual) })
	most := min(len(out), mostCauses)
	return out[:most], append(beside, out[most:]...)
}

// hoursOf are the hours of a spell in which the candidate held; those about which it can't be told count as the rest does.
func (c candidate) hoursOf(s Spell) float64 {
	share, _ := c.part([]series.Span{s.Span})
	return share * s.Hours
}

// isEnough says whether the candidate was reason enough for most of a spell.
func (c candidate) isEnough(s Spell) bool {
	enough := series.Intersect(c.alone, []series.Span{s.Span})
	return float64(series.LengthMS(enough)) >= leastShare*float64(s.Span.To-s.Span.From)
}

// meanFigure is a curve's mean over a span, weighted by time.
func meanFigure(c series.Curve, s series.Span) Figure {
	if b := c.Bin(s); b.KnownMS > 0 {
		return exactly(b.Weighted(), Recorded)
	}
	return unknown("nothing_known")
}

// usualTime is the days around a spell, less it and the other spells of its kind with some hours on either side.
func usualTime(spells []Spell, s Spell, bees series.Span) []series.Span {
	var taken []series.Span
	for _, o := range spells {
		if o.Kind == s.Kind {
			taken = append(taken, series.Span{From: o.Span.From - awayMS, To: o.Span.To + awayMS})
		}
	}
	days := series.Span{From: max(bees.From, s.Span.From-aroundMS), To: min(bees.To, s.Span.To+aroundMS)}
	return series.Subtract([]series.Span{days}, series.Union(taken))
}

// share is the part of some time in which the candidate held; ok is false where too little of it is known.
func (c candidate) share(time []series.Span) (share float64, ok bool) {
	share, knownMS := c.part(time)
	if knownMS == 0 || float64(knownMS) < leastKnownFor*float64(series.LengthMS(time)) {
		return 0, false
	}
	return share, true
}

// part is the part of what is known of some time in which the candidate held, and how much that is; nothing of nothing.
func (c candidate) part(time []series.Span) (share float64, knownMS int64) {
	known := series.Intersect(c.known, time)
	knownMS = series.LengthMS(known)
	if knownMS == 0 {
		return 0, 0
	}
	return float64(series.LengthMS(series.Intersect(c.on, known))) / float64(knownMS), knownMS
}

// candidates are all that could go with a spell of this winter.
func candidates(j judgement, r *Review) []candidate {
	out := slices.Concat(weatherCandidates(j), stageCandidates(j, r), heatCandidates(j, r), eventCandidates(j, r))
	in := series.Span{From: j.beesTime.From - leadMS, To: j.beesTime.From + carriedInMS}
	out = append(out, candidate{code: JustCarriedIn, kinds: []string{"warm", "damp", "moist"}, on: []series.Span{in}, known: []series.Span{{From: in.From, To: j.beesTime.To}}})
	if hum := relHumPct(j.room.mean); hum.Len() > 0 {
		var damp []series.Span
		for _, l := range j.under(goodHighPct) {
			damp = append(damp, long(l.time.above(hum, l.limit), 0)...)
		}
		out = append(out, candidate{code: RoomDamp, kinds: []string{"dew", "frost"}, on: series.Union(damp), known: hum.Known(j.beesTime), of: hum})
	}
	return out
}

// weatherCandidates are what the air outside may have done.
func weatherCandidates(j judgement) (out []candidate) {
	outdoor := j.weather(temperatureOf)
	if outdoor.Len() == 0 {
		return nil
	}
	s := series.Span{From: j.beesTime.From - leadMS, To: j.beesTime.To}
	add := func(code string, of series.Curve, runs []series.Run, kinds ...string) {
		out = append(out, candidate{code: code, kinds: kinds, on: series.Union(long(runs, 0)), known: of.Known(s), of: of})
	}
	aboveLimits := func(c series.Curve, limit func(Bands) *float64, lessBy float64) (runs []series.Run) {
		for i, l := range j.under(limit) {
			if i == 0 { // the hours before the first phase are its own
				l.time = append(stretches{{From: s.From, To: j.beesTime.From}}, l.time...)
			}
			runs = append(runs, l.time.above(c, l.limit-lessBy)...)
		}
		return runs
	}
	mild := aboveLimits(outdoor, goodHighC, coolingK)
	add(OutdoorWarm, outdoor, mild, "moist")
	add(OutdoorWarm, outdoor, mild, "warm")
	out[len(out)-1].alone = series.Union(long(aboveLimits(outdoor, goodHighC, 0), 0)) // no fan holds a room below the air it brings in
	add(OutdoorCold, outdoor, outdoor.Below(s, quantile(outdoor, s, extremeShare)), "cold", "dew", "frost")
	vap := series.Zip(outdoor, j.weather(relHumOf), moistair.VapPresPa)
	if vap.Len() == 0 {
		return out
	}
	add(OutdoorDry, vap, vap.Below(s, quantile(vap, s, extremeShare)), "dry")
	indoors := intakePct(vap, j.room.mean.TempC)
	add(OutdoorHumid, indoors, aboveLimits(indoors, goodHighPct, humidPct), "damp", "moist", "dew", "frost")
	return out
}

// intakePct is the relative humidity, percent, of the air outside once it has the room's temperature: the damp
// that the weather alone brings in (its vapour pressure stays as it is when it is warmed).
func intakePct(outdoorVapPa, roomC series.Curve) series.Curve {
	return series.ZipAlong(outdoorVapPa, roomC, func(vapPa, tempC float64) float64 { return 100 * vapPa / moistair.SatPresWaterPa(tempC) })
}

// quantile is the value that a share of a curve's readings in a span does not pass; NaN without readings.
func quantile(c series.Curve, s series.Span, share float64) float64 {
	val := slices.Clone(c.Slice(s).Val)
	if len(val) == 0 {
		return math.NaN()
	}
	slices.Sort(val)
	return stat.Quantile(share, stat.Empirical, val, nil)
}

// step is when a stage was called for and when it ran, put together over its settings.
type step struct {
	name          string
	called, sure  []series.Span // called for, of the time for which that is known
	ran, recorded []series.Span
	alwaysOn      bool

	unanswered, uncalled []series.Span // clearly called for and not run; run and clearly not called for
}

// steps are the stages of a review by name, in order.
func steps(r *Review) (out []step) {
	at := map[string]int{}
	for _, row := range r.Stages {
		i, seen := at[row.Name]
		if !seen {
			i = len(out)
			at[row.Name], out = i, append(out, step{name: row.Name, alwaysOn: row.Setting.AlwaysOn})
		}
		l := &out[i]
		period := []series.Span{row.Setting.Span}
		if row.Called != nil && !row.Setting.Timer {
			l.called = append(l.called, row.Called.On...)
			l.sure = append(l.sure, series.Subtract(series.Subtract(period, row.Called.Unsure), row.Called.Doubtful)...)
		}
		if row.Ran != nil {
			l.ran = append(l.ran, row.Ran.On...)
			l.recorded = append(l.recorded, series.Subtract(period, row.Ran.Unsure)...)
		}
		if a := row.Agreement; a != nil {
			l.unanswered, l.uncalled = append(l.unanswered, a.unanswered...), append(l.uncalled, a.uncalled...)
		}
	}
	return out
}

// stageCandidates are what the fans may have done. That they stood while the power was out is the power cut's.
func stageCandidates(j judgement, r *Review) (out []candidate) {
	var asked, sure, big, bigKnown []series.Span
	var limit atLimit
	add := func(code, about string, on, known []series.Span, kinds ...string) {
		if len(known) > 0 {
			out = append(out, candidate{code: code, about: about, kinds: kinds, on: series.Union(on), known: series.Union(known)})
		}
	}
	isBig := map[string]bool{}
	for _, st := range bigStages(j.Stages) {
		isBig[st.Name] = true
	}
	for _, l := range steps(r) {
		known := series.Intersect(series.Union(l.sure), series.Union(l.recorded))
		switch {
		case l.alwaysOn:
			add(AlwaysOnOff, l.name, series.Subtract(series.Subtract(series.Union(l.recorded), series.Union(l.ran)), j.cuts), l.recorded, "warm", "damp", "moist", "dew", "frost")
			continue
		case len(l.sure) == 0:
			continue
		}
		add(NotRun, l.name, series.Intersect(known, series.Subtract(series.Union(l.unanswered), j.cuts)), known, "warm", "damp", "moist")
		add(RunUncalled, l.name, series.Intersect(known, series.Union(l.uncalled)), known, "cold", "dry")
		asked, sure = append(asked, l.called...), append(sure, l.sure...)
		moved, told := l.moved()
		limit.with(moved, told)
		if isBig[l.name] {
			big, bigKnown = append(big, moved...), append(bigKnown, told...)
		}
	}
	var warm []series.Span
	for _, l := range j.under(goodHighC) {
		warm = append(warm, long(l.time.above(j.control.TempC, l.limit), 0)...)
	}
	add(NotCalled, "", series.Intersect(series.Union(warm), series.Subtract(series.Union(sure), series.Union(asked))), sure, "warm")
	add(FansAtLimit, "", noShorter(series.Intersect(limit.on, j.coolOutdoors()), limitLeastH), series.Intersect(limit.known, j.weather(temperatureOf).Known(j.beesTime)), "warm")
	add(BigStages, "", big, bigKnown, "cold", "dry")
	return out
}

// limitLeastH is how long every fan must have been on: what is over in fewer hours they answer as they should, whatever it came
// from (common practice, no source).
const limitLeastH = 6

// noShorter are the stretches of at least some hours.
func noShorter(spans []series.Span, hours float64) []series.Span {
	return slices.DeleteFunc(spans, func(s series.Span) bool { return float64(s.To-s.From) < hours*series.HourMS })
}

// moved is when a stage moved air, of the time for which that is known: by its record, else by what it was called for.
func (l step) moved() (on, known []series.Span) {
	if len(l.recorded) > 0 {
		return series.Union(l.ran), series.Union(l.recorded)
	}
	return series.Union(l.called), series.Union(l.sure)
}

// atLimit is when every stage taken so far was on, of the time for which all are known.
type atLimit struct {
	on, known []series.Span
	any       bool
}

// with takes one more stage.
func (a *atLimit) with(on, known []series.Span) {
	if !a.any {
		a.on, a.known, a.any = on, known, true
		return
	}
	a.on, a.known = series.Intersect(a.on, on), series.Intersect(a.known, known)
}

// coolOutdoors is when the air outside was so much colder than the limit that a fan could hold it.
func (j judgement) coolOutdoors() (out []series.Span) {
	outdoor := j.weather(temperatureOf)
	for _, l := range j.under(goodHighC) {
		out = append(out, long(l.time.below(outdoor, l.limit-coolingK), 0)...)
	}
	return series.Union(out)
}

// heatCandidates are what added heat may have done. Heat that is wired with a fan stage stands whenever that stage
// does, in the cold above all: that is no heat missing. Nor is it where the room is warmer than it mostly is while the heat
// runs: its thermostat has it stand then.
func heatCandidates(j judgement, r *Review) (out []candidate) {
	for _, h := range r.Heats {
		if h.Ran == nil {
			continue
		}
		known := series.Subtract([]series.Span{j.beesTime}, h.Ran.Unsure)
		out = append(out, candidate{code: HeatOn, about: h.Source.Name, kinds: []string{"warm", "dry"}, on: h.Ran.On, known: known})
		if h.Source.WithStage == "" {
			off := series.Intersect(series.Subtract(known, h.Ran.On), j.wantsHeat(h.Ran.On))
			out = append(out, candidate{code: HeatOff, about: h.Source.Name, kinds: []string{"cold", "damp", "dew", "frost"}, on: off, known: known})
		}
	}
	return out
}

// wantsHeat is when the room was no warmer than it mostly was while heat ran; always where its temperature was not known then.
func (j judgement) wantsHeat(ran []series.Span) []series.Span {
	var tempC []float64
	for _, s := range ran {
		tempC = append(tempC, j.room.mean.TempC.Slice(s).Val...)
	}
	if len(tempC) == 0 {
		return []series.Span{j.beesTime}
	}
	return series.Union(long(j.room.mean.TempC.Below(j.beesTime, series.Quantile(1-extremeShare, tempC)), 0))
}
