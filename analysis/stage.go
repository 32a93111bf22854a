package analysis

import (
	"math"
	"slices"
	"sort"

	"thawbook/analysis/series"
)

// thermostat says whether a setting switches by temperature.
func (s Setting) thermostat() bool { return !s.AlwaysOn && !s.Timer }

// hasThermostat says whether any stage switches by temperature.
func hasThermostat(stages []Stage) bool {
	_, ok := topOnC(stages)
	return ok
}

// stageRows say, for every stage and setting period, what it was called for and what ran. The two are
// never blended.
func stageRows(j judgement) []StageRow {
	rows := []StageRow{}
	for _, st := range j.Stages {
		for _, set := range st.Settings {
			period := stretches(series.Intersect([]series.Span{set.Span}, j.scored))
			if len(period) == 0 {
				continue
			}
			row := StageRow{Name: st.Name, Setting: set, Remarks: []series.Remark{}}
			row.Setting.Span = period.hull()
			row.Called = calledWork(set, j.control.TempC, j.sight, period)
			if record, ok := recordOf(j.Loggers, st.Name); ok {
				row.Ran = worked(held(record), period, record.Interval(), Recorded)
			}
			row.ShareOfAir, row.KWh = unknown("not_worked_out"), energy(row)
			rows = append(rows, row)
		}
	}
	return rows
}

// calledWork is what a setting asked for over some time: by its rule along the control temperature at the
// estimated offset and at both ends of its range; the whole span for an always-on stage; the timer's share
// for a timer.
func calledWork(set Setting, control series.Curve, v sight, s stretches) *Work {
	var whole []segment
	for _, p := range s {
		whole = append(whole, segment{float64(p.From), float64(p.To), true})
	}
	switch {
	case set.AlwaysOn:
		w := worked(whole, s, 0, YourSetting)
		w.Starts, w.MedianRunMin = unknown("always_on"), unknown("always_on")
		return w
	case set.Timer:
		w := worked(whole, s, 0, YourSetting)
		w.Hours = exactly(w.Hours.Mid*set.TimerDuty, YourSetting)
		w.Duty = exactly(set.TimerDuty, YourSetting)
		w.Starts, w.MedianRunMin = unknown("timer"), unknown("timer")
		w.On = []series.Span{}
		return w
	case control.Len() == 0:
		return nil
	}
	at := func(shift float64) *Work {
		onC, offC := v.limits(set, shift)
		return worked(s.called(control, onC, offC), s, control.Interval(), WorkedOut)
	}
	w, low, high := at(v.offset.Mid), at(v.offset.Low), at(v.offset.High)
	w.spread(low, high)
	either, both := series.Union(slices.Concat(w.On, low.On, high.On)), series.Intersect(series.Intersect(w.On, low.On), high.On)
	w.Doubtful = series.Subtract(either, both)
	return w
}

// energy is a stage's electricity in kWh from its recorded, else its called-for hours and its watts.
func energy(row StageRow) Figure {
	w := row.Ran
	if w == nil {
		w = row.Called
	}
	switch {
	case row.Setting.Watts == nil:
		return unknown("no_watts")
	case w == nil || !w.Hours.OK:
		return unknown("hours_unknown")
	}
	k := *row.Setting.Watts / 1000
	h := w.Hours
	return Figure{Mid: k * h.Mid, Low: k * h.Low, High: k * h.High, OK: true, Evidence: h.Evidence}
}

// heatRows say what a record shows of every heat source.
func heatRows(j judgement) []HeatRow {
	rows := make([]HeatRow, 0, len(j.Heats))
	for _, h := range j.Heats {
		row := HeatRow{Source: h}
		if record, ok := recordOf(j.Loggers, h.Name); ok {
			row.Ran = worked(held(record), j.scored, record.Interval(), Recorded)
		}
		rows = append(rows, row)
	}
	return rows
}

// offsetBlursStages says whether the offset's half-width reaches half the spacing of the on-temperatures,
// so that the logger can't tell one stage from the next.
func offsetBlursStages(stages []Stage, offset Figure) bool {
	var ons []float64
	for _, st := range stages {
		for _, s := range st.Settings {
			if s.thermostat() {
				ons = append(ons, s.OnC)
			}
		}
	}
	sort.Float64s(ons)
	spacing := math.Inf(1)
	for i := 1; i < len(ons); i++ {
		if d := ons[i] - ons[i-1]; d > 0 {
			spacing = math.Min(spacing, d)
		}
	}
	return (offset.High-offset.Low)/2 >= spacing/2
}

func sortSpans(s []series.Span) {
	sort.Slice(s, func(i, j int) bool { return s[i].From < s[j].From })
}
