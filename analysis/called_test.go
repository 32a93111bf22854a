package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// hoursOn and hoursKnown of segments.
func onKnown(segs []segment) (onH, knownH float64) {
	on, known := times(segs)
	return on / hourMS, known / hourMS
}

// Switching instants worked out by hand on straight lines.
func TestCalledFollowsTheRuleAlongTheLine(t *testing.T) {
	na := math.NaN()
	for _, row := range []struct {
		name        string
		c           series.Curve
		onH, knownH float64
		segments    int
	}{
		// Off from 0 h (4 ≤ 4.5); on at 1 h when the ramp meets 5.
		{"a ramp 4 to 7 in 3 h", line(0, 1, 4, 5, 6, 7), 2, 3, 2},
		// On at 1 h; down from 6 at 2 h to 4 at 4 h meets 4.5 at 3.5 h.
		{"up and down", line(0, 1, 4, 5, 6, 5, 4), 2.5, 4, 3},
		{"equal to the on-limit is on", line(0, 1, 5, 5), 1, 1, 1},
		{"equal to the off-limit is off", line(0, 1, 4.5, 4.5), 0, 1, 1},
		{"between the limits nothing is known", line(0, 1, 4.7, 4.8, 4.7), 0, 0, 0},
		// Unknown for the 0.3 h from 4.7 until the line meets 5 (1 K/h), then on.
		{"known from the first crossing", line(0, 1, 4.7, 5.7), 0.7, 0.7, 1},
		// Gap of 3 steps: on until 1 h; unknown again at 4 h (4.8) until 4.5 is met at 4.3 h.
		{"unknown again after a gap", line(0, 1, 6, 6, na, na, 4.8, 3.8), 1, 1.7, 2},
		{"a step of exactly the gap limit is a line", line(0, 1, 6, na, 6), 2, 2, 1},
	} {
		segs := called(row.c, span(0, 10), 5, 4.5)
		on, known := onKnown(segs)
		near(t, row.name+": hours on", on, row.onH, 1e-6)
		near(t, row.name+": hours known", known, row.knownH, 1e-6)
		if len(segs) != row.segments {
			t.Errorf("%s: %d segments, want %d: %v", row.name, len(segs), row.segments, segs)
		}
	}
}

// A break (the set of loggers behind a mean changed) keeps the state unless the other side settles it.
func TestCalledKeepsItsStateAtABreak(t *testing.T) {
	c := line(0, 1, 5.2, 5.2, 4.8, 4.8, 4.2, 4.2)
	c.Readings.At[2] = c.Readings.At[1] + 1
	c.Readings.At[4] = c.Readings.At[3] + 1
	c.MaxStepMS = 3 * hourMS
	c.Breaks = []int64{c.Readings.At[2], c.Readings.At[4]}
	segs := called(c, span(0, 10), 5, 4.5)
	on, _ := onKnown(segs)
	near(t, "on until the value beyond the second break is below off", on, 3, 1e-6)
}

// A logger every five minutes at 6 °C, with a step of ten minutes and one of twenty-five: the air is a straight line over both,
// a stage on at 5 is known over the first alone, ten of 125 minutes being no wider than twice the interval. A break an hour
// and a half wide, that another read-out's limit would bridge, loses that time too. By hand.
func TestAWideStepLosesAStage(t *testing.T) {
	c := series.Curve{MaxStepMS: 30 * minuteMS}
	for m := int64(0); m <= 125; m += 5 {
		if m != 30 && (m <= 60 || m >= 85) {
			c.Readings.At, c.Val = append(c.Readings.At, m*minuteMS), append(c.Val, 6)
		}
	}
	on, known := onKnown(called(forStages(c), span(0, 10), 5, 4.5))
	near(t, "minutes known", 60*known, 100, 1e-6)
	near(t, "minutes on", 60*on, 100, 1e-6)
	near(t, "minutes of air", float64(c.KnownMS(span(0, 10)))/minuteMS, 125, 0)

	torn := line(0, 0.5, 6, 6, math.NaN(), math.NaN(), 6, 6)
	torn.MaxStepMS, torn.Breaks = 2*hourMS, []int64{2 * hourMS}
	_, known = onKnown(called(torn, span(0, 10), 5, 4.5))
	near(t, "hours known", known, 1, 1e-6)
}

// The seam of two spans: parts add up when each part begins where the rule decides at once.
func TestCalledPartsAddUp(t *testing.T) {
	c := through(0, 48, 0.25, func(h float64) float64 { return 5 + 2*math.Sin(h) })
	whole, _ := onKnown(called(c, span(0, 48), 5, 4.5))
	// sin reaches 0 rising at 2πk: the rule decides on at that very instant.
	seam := 8 * math.Pi
	a, _ := onKnown(called(c, span(0, seam), 5, 4.5))
	b, _ := onKnown(called(c, span(seam, 48), 5, 4.5))
	near(t, "parts", a+b, whole, 0.02)
}

// A stage set 5/4.5 and later 6/5.5, the room steady at 5.2: called for throughout, then never.
func TestSettingPeriodsAreNeverBlended(t *testing.T) {
	in := one(through(0, 96, 0.5, constant(5.2)), series.Curve{}, span(0, 96))
	in.Stages = []Stage{{Name: "two", Settings: []Setting{
		{Span: span(0, 48), OnC: 5, OffC: 4.5},
		{Span: span(48, 96), OnC: 6, OffC: 5.5},
	}}}
	in.Loggers[0].TempErrK = 0.05
	r := Judge(in)
	if len(r.Stages) != 2 {
		t.Fatalf("%d rows, want one per setting", len(r.Stages))
	}
	before, after := r.Stages[0].Called, r.Stages[1].Called
	near(t, "duty before", before.Duty.Mid, 1, 1e-9)
	near(t, "duty after", after.Duty.Mid, 0, 1e-9)
	near(t, "hours before", before.Hours.Mid, 48, 1e-6)
	in.Loggers[0].TempErrK = 0.5 // at one end of it 5.2 lies between 5 and 5.5: nothing is settled there
	for i, s := range Judge(in).Stages {
		near(t, "duty with a common logger", s.Called.Duty.Mid, float64(1-i), 1e-9)
		if !s.Called.Duty.OK || !hasRemark(s.Remarks, "undecided_at_an_end") {
			t.Errorf("%+v, remarks %+v", s.Called.Duty, s.Remarks)
		}
	}
	if !after.Hours.OK || after.Hours.Mid != 0 {
		t.Errorf("after: %+v, want 0 h, known", after.Hours)
	}
}

func TestAlwaysOnAndTimerStagesAreTheirSetting(t *testing.T) {
	in := one(through(0, 24, 0.5, constant(4)), series.Curve{}, span(0, 24))
	in.Stages = []Stage{
		{Name: "one", Settings: []Setting{{Span: span(-100, 100), AlwaysOn: true, Watts: ptr(250)}}},
		{Name: "purge", Settings: []Setting{{Span: span(-100, 100), Timer: true, TimerDuty: 0.05}}},
	}
	r := Judge(in)
	near(t, "always on", r.Stages[0].Called.Hours.Mid, 24, 1e-9)
	near(t, "its energy, 250 W for 24 h", r.Stages[0].KWh.Mid, 6, 1e-9)
	near(t, "1.5 min in 30", r.Stages[1].Called.Hours.Mid, 1.2, 1e-9)
	for _, s := range r.Stages {
		if s.Called.Starts.OK {
			t.Errorf("%s: starts %v, want none: no thermostat starts it", s.Name, s.Called.Starts.Mid)
		}
		if s.Ran != nil {
			t.Errorf("%s: ran without a record", s.Name)
		}
	}
}
