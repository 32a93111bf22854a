package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// switched is a stage with a list of changes: on for onMin of every everyMin over 20 h.
func switched(onMin, everyMin float64) StageRow {
	in := one(through(0, 24, 0.5, constant(4)), series.Curve{}, span(0, 24))
	in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(-1, 25), OnC: 5, OffC: 4.5}}}}
	var on []series.Span
	for m := 60.0; m < 20*60; m += everyMin {
		on = append(on, series.Span{From: int64(m * minuteMS), To: int64((m + onMin) * minuteMS)})
	}
	in.Loggers = append(in.Loggers, recordOver("two", 24, on...))
	return Judge(in).Stages[0]
}

func TestShortCycling(t *testing.T) {
	for _, row := range []struct {
		on, every float64
		busiest   int
		short     bool
	}{
		{5, 20, 3, false}, // three starts in any 60 minutes
		{5, 10, 6, false},
		{4, 8, 8, true},    // 0, 8 … 56 min: eight
		{2.5, 30, 2, true}, // a median of 2.5 min
	} {
		c := switched(row.on, row.every).Cycling
		if c == nil || c.BusiestHour != row.busiest || c.Short != row.short {
			t.Errorf("%v min of %v: %+v", row.on, row.every, c)
		}
	}
}
