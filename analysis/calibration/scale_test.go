package calibration_test

import (
	"testing"
	"time"

	"thawbook/analysis/calibration"
	"thawbook/analysis/series"
)

// Of five hundred loggers it is told whether they lay on a shelf; how long that takes is told with -v.
func TestManyLoggersOnAShelf(t *testing.T) {
	offsets := make([]float64, 500)
	for k := range offsets {
		offsets[k] = float64(k%9)/10 - 0.4
	}
	all := shelf(t, offsets, 0.3, -1)
	for _, where := range []series.Span{{From: 0, To: 4 * dayMS}, {From: 3 * dayMS, To: 6 * dayMS}} {
		began := time.Now()
		members, _, ok := calibration.Beside(all, where, series.Span{From: 6 * dayMS, To: 12 * dayMS})
		t.Logf("%d loggers, %v, in %v", len(members), ok, time.Since(began))
		if ok != (where.From == 0) {
			t.Errorf("%v from %d on", ok, where.From)
		}
	}
}
