package analysis

import (
	"math"
	"sort"

	"thawbook/analysis/series"
)

// Thermostat says whether a setting switches by temperature.
func (s Setting) Thermostat() bool { return !s.AlwaysOn && !s.Timer }

// hasThermostat says whether any stage switches by temperature.
func hasThermostat(stages []Stage) bool {
	_, ok := topOnC(stages)
	return ok
}

// stageRows say, for every stage and setting period, what it was called for and what ran. The two are
// never blended.
func stageRows(j judgement) []StageRow {
	rows := make([]StageRow, 0, len(j.periods))
	for _, p := range j.periods {
		row := StageRow{Name: p.stage, Setting: p.set, Remarks: []series.Remark{}}
		row.Setting.Span = p.time.hull()
		row.Called = calledWork(p, j.control.TempC.Interval())
		row.remark("undecided_at_an_end", p.called != nil && p.called.undecided())
		if p.ran != nil {
			row.Ran = p.ran.worked(p.time, p.recordMS)
			row.remark("in_step_with_timer", p.set.Timer && row.Ran.timedWork(p.set, p.recordMS))
		}
		row.withholdUnseenRuns()
		hours := hoursOf(row.Ran, row.Called)
		row.Speed = p.meanSpeed(row.Ran)
		row.ShareOfAir, row.AirM3 = j.shareOfAir(p), moved(p.set, p.fullHours(hours, flowPower, flowPower))
		row.AirChanges, row.ChangeMinutes = row.AirM3.perVolume(j.VolumeM3, 1), j.changeMinutes(p)
		row.pattern(j, p)
		row.KWh = energy(p.set.Watts, p.fullHours(hours, leastPower, mostPower))
		row.Cost = cost(row.KWh, j.PricePerKWh)
		row.Agreement = j.agreement(p)
		row.StartsC, row.StopsC = switchedAt(p, j.control)
		row.remark("thermostat_apart", row.switchesApart())
		rows = append(rows, row)
	}
	return rows
}

// moreByRecord is how many times the starts worked out the recorded ones must be to show that the logger did not see them all
// (common practice, no source).
const moreByRecord = 2

// withholdUnseenRuns takes back how often a stage was called for, and for how long at a time, where that can't have been seen:
// hours that can't be named have no runs that can, and a record that shows many more starts shows what the logger's line
// between the limits missed.
func (row *StageRow) withholdUnseenRuns() {
	c, ran := row.Called, row.Ran
	switch {
	case c == nil || !row.Setting.Thermostat():
	case !c.Hours.OK:
		c.Starts, c.MedianRunMin = unknown(c.Hours.Unknown), unknown(c.Hours.Unknown)
	case ran != nil && ran.Starts.OK && c.Starts.OK && ran.Starts.Mid > moreByRecord*c.Starts.Mid:
		c.Starts, c.MedianRunMin = unknown("runs_too_short_to_see"), unknown("runs_too_short_to_see")
	}
}

// pattern sets when within the day, and at what outdoor temperature, a stage that switches was on.
func (row *StageRow) pattern(j judgement, p period) {
	row.ByHour, row.ByOutdoor = []Share{}, []Share{}
	w := row.Ran
	if w == nil {
		w = row.Called
	}
	if v := p.best(); v != nil && p.set.Thermostat() {
		row.ByHour, row.ByOutdoor = byHour(*v, p.time, j.Zone), byOutdoor(*v, p.time, j.weather(temperatureOf))
		row.Cycling = p.cycling(w)
	}
}

// remark qualifies a row where something holds.
func (row *StageRow) remark(code string, holds bool) {
	if holds {
		row.Remarks = append(row.Remarks, series.Remark{Code: code, Count: 1})
	}
}

// calledWork is what a setting asked for over its time: by its rule along the control temperature at the
// estimated offset and at both ends of its range; the whole time for an always-on stage; the timer's share
// for a timer.
func calledWork(p period, intervalMS int64) *Work {
	switch {
	case p.set.AlwaysOn:
		w := p.called.worked(p.time, 0)
		w.Starts, w.MedianRunMin = unknown("always_on"), unknown("always_on")
		return w
	case p.set.Timer:
		w := worked(throughout(p.time), p.time, 0, YourSetting)
		w.Hours = exactly(w.Hours.Mid*p.set.TimerDuty, YourSetting)
		w.Duty = exactly(p.set.TimerDuty, YourSetting)
		w.Starts, w.MedianRunMin = unknown("timer"), unknown("timer")
		w.On = []series.Span{}
		return w
	case p.called == nil:
		return nil
	}
	return p.called.worked(p.time, intervalMS)
}

// CalledAndRan are the hours a stage was called for and those it ran, over the time at which both are known; ok is false
// without both. A timer calls for its share of any time.
func (row StageRow) CalledAndRan() (called, ran Figure, ok bool) {
	switch a := row.Agreement; {
	case row.Setting.Timer && row.Ran != nil && row.Ran.Hours.OK:
		return exactly(row.Setting.TimerDuty*float64(row.Ran.KnownMS)/series.HourMS, YourSetting), row.Ran.Hours, true
	case a != nil && a.KnownMS > 0:
		return a.Called, a.Ran, true
	}
	return Figure{}, Figure{}, false
}

// nearlyAll is the share from which time known twice over is not told apart from time known once (common practice, no source).
const nearlyAll = 0.98

// BothHours are the hours at which both what a stage was called for and what ran are known, and whether they are clearly
// fewer than either's own.
func (row StageRow) BothHours() (hours float64, less bool) {
	if row.Agreement == nil || row.Called == nil || row.Ran == nil {
		return 0, false
	}
	both := row.Agreement.KnownMS
	return float64(both) / series.HourMS, float64(both) < nearlyAll*float64(max(row.Called.KnownMS, row.Ran.KnownMS))
}

// offsetBlursStages says whether the offset's half-width reaches half the spacing of the on-temperatures,
// so that the logger can't tell one stage from the next.
func offsetBlursStages(stages []Stage, offset Figure) bool {
	var ons []float64
	for _, st := range stages {
		for _, s := range st.Settings {
			if s.Thermostat() {
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
