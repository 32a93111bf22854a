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

// Of the runs seen whole a third are under 2 min, more than a fifth. The run in which the record begins, and the one in which
// it breaks off, short as they are, are not seen whole: they count neither way.
func TestShortRunsAreThoseSeenWhole(t *testing.T) {
	at := func(from, to float64, on bool) segment { return segment{from * minuteMS, to * minuteMS, on} }
	segs := []segment{
		at(0, 1, true), at(1, 60, false),
		at(60, 61, true), at(61, 110, false), at(110, 120, true), at(120, 180, false), at(180, 190, true), at(190, 300, false),
		at(300, 301, true), at(400, 500, false),
	}
	w := worked(segs, stretches{span(0, 10)}, 0, Recorded)
	c := period{ran: &view{tries: [3][]segment{segs, segs, segs}}}.cycling(w)
	if c == nil || c.ShortRuns != 1.0/3 || !c.Short || c.BusiestHour != 2 {
		t.Errorf("%+v, want a third of the runs short, and two starts in any hour at most", c)
	}
}
