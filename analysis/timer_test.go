package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// A timer of 5 min in every 30 for 100 h, its state sampled at an interval of minutes, a quarter of a minute late.
func timed(everyMin float64) StageRow {
	in := one(through(0, 100, 0.5, constant(4)), series.Curve{}, span(0, 100))
	in.Stages = []Stage{{Name: "purge", Settings: []Setting{{Span: span(-1, 101), Timer: true, TimerDuty: 5.0 / 30, TimerEveryMS: 30 * minuteMS}}}}
	state := through(0, 100, everyMin/60, func(h float64) float64 {
		if m := int64(h*60+0.25) % 30; m < 5 {
			return 1
		}
		return 0
	})
	in.Loggers = append(in.Loggers, Logger{Name: "purge state", RecordsStage: "purge", State: state})
	return Judge(in).Stages[0]
}

// Sampled every 10 or 15 min it is seen on at every third or second sample, or never: no evidence. Every 7 min
// its samples come at all phases a minute apart, so 1/6 is seen to ± 1/30; every minute likewise.
func TestALoggerInStepWithATimerIsNoEvidence(t *testing.T) {
	for _, every := range []float64{10, 15} {
		row := timed(every)
		if row.Ran.Duty.OK || row.Ran.Hours.OK || !hasRemark(row.Remarks, "in_step_with_timer") {
			t.Errorf("every %v min: %+v", every, row.Ran.Duty)
		}
	}
	for _, every := range []float64{1, 7} {
		row := timed(every)
		near(t, "duty", row.Ran.Duty.Mid, 5.0/30, 1.0/30)
		if row.Ran.Duty.Low > 5.0/30 || row.Ran.Duty.High < 5.0/30 || row.Ran.Starts.OK {
			t.Errorf("every %v min: %+v", every, row.Ran.Duty)
		}
	}
}

func TestGreatestCommonDivisor(t *testing.T) {
	for _, row := range [][3]int64{{10, 30, 10}, {7, 30, 1}, {12, 30, 6}, {45, 30, 15}} {
		if got := gcd(row[0], row[1]); got != row[2] {
			t.Errorf("gcd(%d, %d) = %d, want %d", row[0], row[1], got, row[2])
		}
	}
}
