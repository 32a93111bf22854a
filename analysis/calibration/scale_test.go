package calibration_test

import (
	"testing"
	"time"

	"thawbook/analysis/calibration"
	"thawbook/analysis/series"
)

// Of five hundred loggers on a shelf, or never on one, it is told in well under a second on an idle machine.
func TestManyLoggersOnAShelf(t *testing.T) {
	if testing.Short() {
		t.Skip("it measures time, and the race detector takes its own")
	}
	offsets := make([]float64, 500)
	for k := range offsets {
		offsets[k] = float64(k%9)/10 - 0.4
	}
	all := shelf(t, offsets, 0.3, -1)
	for _, where := range []series.Span{{From: 0, To: 4 * dayMS}, {From: 3 * dayMS, To: 6 * dayMS}} {
		began := time.Now()
		members, _, ok := calibration.Beside(all, where, series.Span{From: 6 * dayMS, To: 12 * dayMS})
		took := time.Since(began)
		t.Logf("%d loggers, %v, in %v", len(members), ok, took)
		if took > 5*time.Second || ok != (where.From == 0) {
			t.Errorf("%v after %v", ok, took)
		}
	}
}
