package engine

import (
	"context"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/calibration"
	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// Alongside is a stretch in which loggers seem to have hung side by side, before or after the bees' time, and what each
// was off by against the mean of them. RelHum is empty where not all of them recorded humidity.
type Alongside struct {
	Slots         []winter.Slot
	Names         []string
	Span          series.Span
	TempC, RelHum []calibration.Check // per slot
}

// Where nobody said when the bees were in, the first and the last ten days of the record are looked at; no more than a
// month before and after, and the first of their time to compare with (common practice, no source).
const alongsideDays, alongsideMost = 10 * 24 * series.HourMS, 30 * 24 * series.HourMS

// SideBySide looks for stretches before and after the bees' time in which loggers of a winter seem to have hung side by
// side. Nothing is taken from them unasked. The error is the context's, or that of the winter's zone.
func SideBySide(ctx context.Context, w winter.Winter, source Source, cache *Cache) ([]Alongside, error) {
	var slots []winter.Slot
	for list := winter.OutdoorList; list < len(w.Barns); list++ {
		all, _ := w.List(list)
		for i, l := range all {
			if l.RecordsStage == "" && l.StationKM == nil {
				slots = append(slots, winter.Slot{List: list, Index: i})
			}
		}
	}
	if len(slots) < 2 {
		return nil, ctx.Err()
	}
	bare, err := Bare(ctx, w, source, cache, slots)
	if err != nil {
		return nil, err
	}
	before, bees, after := timesOf(w, bare)
	var out []Alongside
	for _, where := range []series.Span{before, after} {
		if found, ok := alongside(slots, bare, where, bees); ok {
			out = append(out, found)
		}
	}
	return out, ctx.Err()
}

// timesOf are the time before the bees', the bees' and that after it.
func timesOf(w winter.Winter, loggers []analysis.Logger) (before, bees, after series.Span) {
	var record series.Span
	for _, l := range loggers {
		switch s := spanOfCurve(l.TempC); {
		case s.To == s.From:
		case record.To == record.From:
			record = s
		default:
			record = series.Span{From: min(record.From, s.From), To: max(record.To, s.To)}
		}
	}
	in, out := record.To, record.From
	for _, b := range w.Barns {
		if b.BeesIn != nil {
			in = min(in, *b.BeesIn)
		}
		if b.BeesOut != nil {
			out = max(out, *b.BeesOut)
		}
	}
	if in == record.To {
		in = min(record.To, record.From+alongsideDays)
	}
	if out == record.From {
		out = max(in, record.To-alongsideDays)
	}
	in, out = max(record.From, in), max(in, min(record.To, out))
	before = series.Span{From: max(record.From, in-alongsideMost), To: in}
	after = series.Span{From: out, To: min(record.To, out+alongsideMost)}
	return before, series.Span{From: in, To: min(out, in+alongsideMost)}, after
}

// alongside is the stretch within where in which some of the loggers seem to have hung side by side.
func alongside(slots []winter.Slot, loggers []analysis.Logger, where, bees series.Span) (out Alongside, ok bool) {
	var temp, relHum []series.Curve
	for _, l := range loggers {
		temp, relHum = append(temp, l.TempC), append(relHum, l.RelHum)
	}
	members, span, ok := calibration.Beside(temp, where, bees)
	if !ok {
		return out, false
	}
	out.Span = span
	var own, damp []series.Curve
	var steps, dampSteps []float64
	for _, m := range members {
		out.Slots, out.Names = append(out.Slots, slots[m]), append(out.Names, loggers[m].Name)
		own, damp = append(own, temp[m]), append(damp, relHum[m])
		steps, dampSteps = append(steps, loggers[m].TempStepK), append(dampSteps, relHum[m].SmallestStep())
	}
	if out.TempC, ok = calibration.Together(own, span, calibration.TogetherK, steps); !ok {
		return out, false
	}
	if !slices.ContainsFunc(damp, func(c series.Curve) bool { return c.Slice(span).Len() == 0 }) {
		out.RelHum, _ = calibration.Together(damp, span, calibration.TogetherRelHum, dampSteps)
	}
	return out, true
}
