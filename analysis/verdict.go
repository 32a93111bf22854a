package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// The verdict's lines: held as in the house rules; the others common practice, no source.
const (
	heldYes, heldMostly   = 0.98, 0.90
	freeShare, oftenShare = 0.02, 0.10
	fansYes, fansMostly   = 0.95, 0.80

	leastJudgedMS = dayHours * series.HourMS // of bees' time: a winter's barn can't be judged by less than a day and a night
)

// verdict answers the four questions over the bees' time.
func verdict(j judgement, surfaces []SurfaceRow) (v Verdict) {
	answers := []func(){
		func() { v.Held = heldAnswer(j) }, func() { v.Damp = dampAnswer(j, surfaces) },
		func() { v.Dry = dryAnswer(j) }, func() { v.Fans = fansAnswer(j) },
	}
	j.spread(len(answers), func(i int) { answers[i]() })
	if length := j.beesTime.To - j.beesTime.From; length > 0 && length < leastJudgedMS {
		for _, a := range []*Answer{&v.Held, &v.Damp, &v.Dry, &v.Fans} {
			a.leaveOpen("less_than_a_day")
		}
	}
	return v
}

// leaveOpen takes back what was answered, with the code of the reason; what could not be told anyway keeps its own.
func (a *Answer) leaveOpen(reason string) {
	if a.State != Unknown {
		a.State, a.Figure = Unknown, unknown(reason)
	}
}

// heldAnswer is the share of known hours, in percent, at which the room's air was in the good band: yes at
// 98 % with no time to act, mostly at 90 %.
func heldAnswer(j judgement) Answer {
	room := j.room.mean.TempC
	a := Answer{State: Unknown, Unit: "percent", Coverage: j.scored.share(j.scored.knownMS(room)), Figure: unknown("too_little_known")}
	switch {
	case room.Len() == 0:
		a.Figure = unknown("no_room_temperature")
		return a
	case a.Coverage < enoughOfWinter:
		return a
	}
	errK := j.room.mean.TempErrK
	var whole tally
	for i, p := range j.phases {
		var limits []series.Limits
		for _, shift := range []float64{0, errK, -errK, errK / 2, -errK / 2} { // less may be warm and cold between the ends than at either
			limits = append(limits, series.Limits{Low: *p.Bands.TempC.GoodLow - shift, High: *p.Bands.TempC.GoodHigh - shift})
		}
		if t := stretches(p.Parts).sum(room, limits); i == 0 {
			whole = t
		} else {
			whole = whole.plus(t)
		}
	}
	var good []float64
	for _, o := range whole.outside {
		good = append(good, 100*(1-(o.BelowMS+o.AboveMS)/float64(o.KnownMS)))
	}
	a.Figure = enclosing(Recorded, good[0], good[1:]...)
	switch {
	case a.Figure.Mid >= 100*heldYes && !needsAction(j):
		a.State = Yes
	case a.Figure.Mid >= 100*heldMostly:
		a.State = Mostly
	default:
		a.State = No
	}
	return a
}

// enclosing is a figure with the range of its other estimates.
func enclosing(e Evidence, mid float64, others ...float64) Figure {
	f := exactly(mid, e)
	for _, v := range others {
		f.Low, f.High = math.Min(f.Low, v), math.Max(f.High, v)
	}
	return f
}

// needsAction says whether the air was ever above the act limit for 6 h, 2 K above it for 2 h, or below the
// lower act limit, where there is one, for an hour.
func needsAction(j judgement) bool {
	room := j.room.mean.TempC
	for _, l := range j.under(func(b Bands) *float64 { return b.TempC.ActHigh }) {
		if len(long(l.time.above(room, l.limit), actHold1H)) > 0 || len(long(l.time.above(room, l.limit+act2K), actHold2H)) > 0 {
			return true
		}
	}
	for _, l := range j.under(func(b Bands) *float64 { return b.TempC.ActLow }) {
		if len(long(l.time.below(room, l.limit), 1)) > 0 {
			return true
		}
	}
	return false
}

// dampAnswer is for how many hours walls or ceilings were wet or the air stayed above the watch limit for
// 6 h and more. Cold metal is left out. The range has every hygrometer one error drier and damper, and walls at the dry and
// the wet end of what they may have been.
func dampAnswer(j judgement, surfaces []SurfaceRow) Answer {
	hum, errPct := relHumPct(j.room.mean), 100*j.room.mean.RelHumErr
	walled := false
	damp := func(shiftPct float64, margin func(SurfaceRow) series.Curve) (spans []series.Span) {
		for _, l := range j.under(func(b Bands) *float64 { return b.RelHumPct.WatchHigh }) {
			spans = append(spans, long(l.time.above(hum, l.limit-shiftPct), dampHoldH)...)
		}
		for _, row := range surfaces {
			if row.Kind == "metal" {
				continue
			}
			wet := long(j.scored.below(margin(row), 0), 0)
			spans, walled = append(spans, wet...), walled || len(wet) > 0
		}
		return spans
	}
	a := j.often(hum, damp(0, func(r SurfaceRow) series.Curve { return r.Margin }),
		damp(-errPct, func(r SurfaceRow) series.Curve { return r.dry }), damp(errPct, func(r SurfaceRow) series.Curve { return r.wet }))
	if walled && a.Figure.OK {
		a.Figure.Evidence = WorkedOut
	}
	return a
}

// dryAnswer is for how many hours the air stayed below the good band for a day and more, and with every hygrometer one
// error damper and drier.
func dryAnswer(j judgement) Answer {
	hum, errPct := relHumPct(j.room.mean), 100*j.room.mean.RelHumErr
	dry := func(shiftPct float64) (spans []series.Span) {
		for _, l := range j.dryRuns(hum, shiftPct) {
			spans = append(spans, l.time...)
		}
		return spans
	}
	return j.often(hum, dry(0), dry(errPct), dry(-errPct))
}

// often counts the hours of spans, and of those that other guesses at the same give: no up to 2 % of the known time, yes
// from 10 %, mostly between.
func (j judgement) often(hum series.Curve, spans []series.Span, others ...[]series.Span) Answer {
	knownMS := j.scored.knownMS(hum)
	a := Answer{State: Unknown, Unit: "h", Coverage: j.scored.share(knownMS), Figure: unknown("too_little_known")}
	switch {
	case hum.Len() == 0:
		a.Figure = unknown("no_humidity")
		return a
	case a.Coverage < enoughOfWinter || knownMS == 0:
		return a
	}
	hours := func(spans []series.Span) float64 {
		return float64(series.LengthMS(series.Union(spans))) / series.HourMS
	}
	a.Figure = exactly(hours(spans), Recorded)
	for _, o := range others {
		a.Figure = enclosing(Recorded, a.Figure.Mid, a.Figure.Low, a.Figure.High, hours(o))
	}
	switch part := a.Figure.Mid * series.HourMS / float64(knownMS); {
	case part <= freeShare:
		a.State = No
	case part >= oftenShare:
		a.State = Yes
	default:
		a.State = Mostly
	}
	return a
}

// long keeps the runs of at least some hours.
func long(runs []series.Run, hours float64) []series.Span {
	var out []series.Span
	for _, r := range runs {
		if r.To-r.From >= hours*series.HourMS {
			out = append(out, spanOf(r))
		}
	}
	return out
}

func spanOf(r series.Run) series.Span {
	return series.Span{From: int64(math.Round(r.From)), To: int64(math.Round(r.To))}
}

// fansAnswer is the share of hours, in percent, that the always-on and the first thermostat stage carried
// alone: from records where every larger stage has one, else from what they were called for, at the
// estimated offset and both its ends.
func fansAnswer(j judgement) Answer {
	a := Answer{State: Unknown, Unit: "percent", Figure: unknown("no_stages")}
	big := bigStages(j.Stages)
	if len(big) == 0 {
		return a
	}
	if figure, coverage, ok := aloneByRecord(j, big); ok {
		a.Figure, a.Coverage = figure, coverage
	} else {
		a.Figure, a.Coverage = aloneByCall(j, big)
	}
	switch {
	case a.Coverage < enoughOfWinter:
		a.Figure = unknown("too_little_known")
	case a.Figure.Mid >= 100*fansYes:
		a.State = Yes
	case a.Figure.Mid >= 100*fansMostly:
		a.State = Mostly
	default:
		a.State = No
	}
	return a
}

// bigStages are the thermostat stages above the first one, by the lowest on-temperature each ever had.
func bigStages(stages []Stage) []Stage {
	byOn := Thermostats(stages)
	if len(byOn) < 2 {
		return nil
	}
	return byOn[1:]
}

// lowestOnC is the lowest on-temperature a thermostat stage ever had.
func lowestOnC(st Stage) float64 {
	low := math.Inf(1)
	for _, s := range st.Settings {
		if s.Thermostat() {
			low = math.Min(low, s.OnC)
		}
	}
	return low
}

// aloneByRecord is the share of time, in percent, in which no large stage ran, and the share of the bees'
// time that is known; ok is false unless each has a record.
func aloneByRecord(j judgement, big []Stage) (f Figure, coverage float64, ok bool) {
	var all [][]segment
	for _, st := range big {
		record, has := recordOf(j.Loggers, st.Name)
		if !has {
			return Figure{}, 0, false
		}
		all = append(all, clip(held(record), j.scored))
	}
	percent, coverage := noneOn(all, j.scored)
	return exactly(percent, Recorded), coverage, coverage > 0
}

// aloneByCall is the same share from the thermostats' rules, with its range over the offset's.
func aloneByCall(j judgement, big []Stage) (f Figure, coverage float64) {
	if j.control.TempC.Len() == 0 {
		return unknown("no_control_temperature"), 0
	}
	at := func(shift float64) (percent, coverage float64) {
		var all [][]segment
		for _, st := range big {
			all = append(all, calledAll(j, st, shift))
		}
		return noneOn(all, j.scored)
	}
	shifts := j.sight.shifts()
	mid, coverage := at(shifts[0])
	low, _ := at(shifts[1])
	high, _ := at(shifts[2])
	return enclosing(WorkedOut, mid, low, high), coverage
}

// calledAll is what a stage was called for over the bees' time under all its thermostat settings.
func calledAll(j judgement, st Stage, shift float64) []segment {
	var segs []segment
	for _, set := range st.Settings {
		if set.Thermostat() {
			segs = append(segs, j.sight.called(set, series.Intersect([]series.Span{set.Span}, j.scored), shift)...)
		}
	}
	return segs
}

// noneOn is the share of time, in percent, at which every list of segments is known to be off, of the time
// at which all are known, and that time's share of a span.
func noneOn(all [][]segment, s stretches) (percent, coverage float64) {
	on, sure := []series.Span{}, []series.Span(s)
	for _, segs := range all {
		on, sure = append(on, spansOf(segs)...), series.Intersect(sure, known(segs))
	}
	knownMS := series.LengthMS(sure)
	if knownMS == 0 {
		return 0, 0
	}
	busy := series.LengthMS(series.Intersect(sure, series.Union(on)))
	return 100 * (1 - float64(busy)/float64(knownMS)), s.share(knownMS)
}
