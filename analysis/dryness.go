package analysis

import (
	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// DryStretch is a day or more below the good humidity without a break, split into what went with it. The parts
// of its hours are those with added heat, those in which the air outside was as dry as in the driest quarter of
// the winter, both and neither; each is unknown where it can't be told.
type DryStretch struct {
	Span         series.Span
	PercentHours float64 // %·h below the limit
	VPDPa        Figure  // mean drying power of the room's air: saturation pressure less vapour pressure
	IntakePct    Figure  // mean humidity, percent, that the air outside had once brought to the room's temperature

	HeatHours, WeatherHours, BothHours, NeitherHours Figure
}

// dryStretches are the stretches that make a barn dry (see dryAnswer), with what each splits into. That a fan
// took the air away is no part of it: airing for heat is the barn's work, and added heat calls for more of it.
func dryStretches(j judgement, all []candidate) []DryStretch {
	out := []DryStretch{}
	hum := relHumPct(j.room.mean)
	runs := j.dryRuns(hum, 0)
	if len(runs) == 0 {
		return out
	}
	vpd := series.Zip(j.room.mean.TempC, j.room.mean.RelHum, moistair.VPDPa)
	intake := candidateOf(all, OutdoorHumid).of
	weather, heat := candidateOf(all, OutdoorDry), addedHeat(all)
	for _, l := range runs {
		for _, s := range l.time {
			d := DryStretch{Span: s, PercentHours: degreeHours(hum, s, l.limit, -1)}
			d.VPDPa, d.IntakePct = meanFigure(vpd, s), meanFigure(intake, s)
			d.split(s, weather, heat)
			out = append(out, d)
		}
	}
	return out
}

// dryRuns are the stretches of a day and more below the good humidity, by the limit that held, with every reading some
// percent of humidity higher.
func (j judgement) dryRuns(hum series.Curve, shiftPct float64) (out []limited) {
	for _, l := range j.under(goodLowPct) {
		if runs := long(l.time.below(hum, l.limit-shiftPct), dryHoldH); len(runs) > 0 {
			out = append(out, limited{l.limit, runs})
		}
	}
	return out
}

// split fills in the hours of each part.
func (d *DryStretch) split(s series.Span, weather, heat candidate) {
	time := []series.Span{s}
	_, weatherKnown := weather.share(time)
	_, heatKnown := heat.share(time)
	hours := func(known bool, spans []series.Span) Figure {
		if !known {
			return unknown("nothing_known")
		}
		return exactly(float64(series.LengthMS(series.Intersect(time, spans)))/series.HourMS, Recorded)
	}
	both := series.Intersect(weather.on, heat.on)
	d.HeatHours = hours(heatKnown, series.Subtract(heat.on, both))
	d.WeatherHours = hours(weatherKnown, series.Subtract(weather.on, both))
	d.BothHours = hours(weatherKnown && heatKnown, both)
	told := series.Intersect(time, series.Union(append(append([]series.Span{}, weather.on...), heat.on...)))
	d.NeitherHours = hours(weatherKnown && heatKnown, series.Subtract(time, told))
}

// candidateOf is the candidate of a code; it is empty, and so never known, where there is none.
func candidateOf(all []candidate, code string) candidate {
	for _, c := range all {
		if c.code == code {
			return c
		}
	}
	return candidate{}
}

// addedHeat is when any heat source ran, known where all that have a record are.
func addedHeat(all []candidate) (out candidate) {
	first := true
	for _, c := range all {
		if c.code != HeatOn {
			continue
		}
		out.on = series.Union(append(out.on, c.on...))
		if first {
			out.known = c.known
		}
		out.known, first = series.Intersect(out.known, c.known), false
	}
	return out
}
