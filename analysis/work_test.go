package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// square is a state record with equal on and off runs, in hours.
func square(hours, run, step float64) series.Curve {
	return through(0, hours, step, func(h float64) float64 {
		if int64(h/run+1e-9)%2 == 1 {
			return 1
		}
		return 0
	})
}

// A square wave of 2 h off, 2 h on over 24 h: six starts; the run that meets the end is not seen whole.
func TestRanCountsASquareWave(t *testing.T) {
	w := worked(held(square(24, 2, 0.1)), stretches{span(0, 24)}, hourMS/10, Recorded)
	near(t, "hours", w.Hours.Mid, 12, 1e-9)
	near(t, "duty", w.Duty.Mid, 0.5, 1e-9)
	near(t, "starts", w.Starts.Mid, 6, 0)
	near(t, "median run", w.MedianRunMin.Mid, 120, 1e-9)
	if len(w.On) != 6 || len(w.Unsure) != 0 {
		t.Errorf("%d runs on, %d unsure, want 6 and 0", len(w.On), len(w.Unsure))
	}
}

// Runs of one sampling interval are at the limit of what can be seen: hours stand, starts are withheld.
func TestStartsAreWithheldWhenRunsAreTooShortToSee(t *testing.T) {
	w := worked(held(square(24, 0.1, 0.1)), stretches{span(0, 24)}, hourMS/10, Recorded)
	near(t, "hours", w.Hours.Mid, 12, 0.11)
	if w.Starts.OK || w.Starts.Unknown != "runs_too_short_to_see" || w.MedianRunMin.OK {
		t.Errorf("starts %+v, want withheld", w.Starts)
	}
}

func TestRecordWithAGapIsUnknownThere(t *testing.T) {
	record := square(24, 2, 0.1)
	cut := record.Slice(span(0, 9))
	rest := record.Slice(span(15, 25))
	record.Readings.At = append(append([]int64{}, cut.Readings.At...), rest.Readings.At...)
	record.Val = append(append([]float64{}, cut.Val...), rest.Val...)
	w := worked(held(record), stretches{span(0, 24)}, hourMS/10, Recorded)
	near(t, "known hours", float64(w.KnownMS)/hourMS, 24-6.1, 1e-6)
	near(t, "unsure", float64(series.LengthMS(w.Unsure))/hourMS, 6.1, 1e-6)
}

func TestNothingKnownIsNotZero(t *testing.T) {
	w := worked(nil, stretches{span(0, 24)}, hourMS, WorkedOut)
	if w.Hours.OK || w.Duty.OK || w.Starts.OK || w.KnownMS != 0 {
		t.Errorf("%+v, want everything unknown", w)
	}
}

// Half the time 0.2 K above on and half 0.2 K below off: ±0.3 K could make it everything or nothing.
func TestHoursAreWithheldWhenTheOffsetDecidesThem(t *testing.T) {
	in := one(through(0, 100, 0.5, func(h float64) float64 {
		if h < 50 {
			return 5.1
		}
		return 4.4
	}), series.Curve{}, span(0, 100))
	in.Loggers[0].TempErrK = 0.3
	in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(0, 100), OnC: 5, OffC: 4.5}}}}
	w := Judge(in).Stages[0].Called
	if w.Hours.OK || w.Hours.Unknown != "range_too_wide" {
		t.Errorf("hours %+v, want withheld", w.Hours)
	}
	if w.Hours.High-w.Hours.Low < 40 {
		t.Errorf("range %v–%v should still be told", w.Hours.Low, w.Hours.High)
	}
}

// A logger that sees 3 starts where the record shows 7 missed more than half of them: its runs are taken back, those of the
// record stand. One that sees 4 of 7 is believed, and of hours that can't be named neither is told.
func TestRunsThatCannotHaveBeenSeenAreNotTold(t *testing.T) {
	for _, c := range []struct {
		called Work
		told   bool
		why    string
	}{
		{Work{Hours: exactly(40, WorkedOut), Starts: exactly(3, WorkedOut), MedianRunMin: exactly(800, WorkedOut)}, false, "runs_too_short_to_see"},
		{Work{Hours: exactly(40, WorkedOut), Starts: exactly(4, WorkedOut), MedianRunMin: exactly(600, WorkedOut)}, true, ""},
		{Work{Hours: unknown("range_too_wide"), Starts: exactly(6, WorkedOut), MedianRunMin: exactly(300, WorkedOut)}, false, "range_too_wide"},
	} {
		row := StageRow{Setting: Setting{OnC: 5, OffC: 4}, Called: &c.called, Ran: &Work{Hours: exactly(38, Recorded), Starts: exactly(7, Recorded)}}
		row.withholdUnseenRuns()
		if row.Called.Starts.OK != c.told || row.Called.MedianRunMin.OK != c.told || row.Called.Starts.Unknown != c.why || !row.Ran.Starts.OK {
			t.Errorf("%+v, want told %v", row.Called, c.told)
		}
	}
}
