package engine

import (
	"testing"

	"thawbook/analysis/series"
)

// ahead puts one logger's clock ahead.
func ahead(r Result, logger int, ms int64) {
	l := &r.Inputs[0].Loggers[logger]
	at := make([]int64, l.TempC.Len())
	for i, t := range l.TempC.Readings.At {
		at[i] = t + ms
	}
	l.TempC.Readings.At, l.RelHum.Readings.At = at, at
}

// Four loggers, three of them on one clock: the odd one is named whichever it is, the first included, and by what its
// clock was put ahead; of two it is said that it can't be told.
func TestTheClockThatIsApartIsNamed(t *testing.T) {
	for _, c := range []struct {
		loggers, odd int
		ms           int64
		code, shift  string
		agreeing     string
	}{
		{4, 2, 2 * series.HourMS, DoubtClockHours, "2", "3"}, {4, 0, -series.HourMS, DoubtClockHours, "-1", "3"},
		{4, 3, 95 * minuteMS, DoubtClock, "95", "3"}, {2, 1, series.HourMS, DoubtClockHours, "1", "1"}, {4, 1, 0, "", "", ""},
	} {
		r := drawer(t, c.loggers, 30*24*12, 5*minuteMS)
		ahead(r, c.odd, c.ms)
		proposals, _, err := Proposals(t.Context(), r)
		if err != nil {
			t.Fatal(err)
		}
		if c.code == "" {
			if len(proposals) > 0 {
				t.Errorf("all on one clock: %+v", proposals)
			}
			continue
		}
		if len(proposals) != 1 {
			t.Fatalf("logger %d ahead by %d min: %+v", c.odd+1, c.ms/minuteMS, proposals)
		}
		p := proposals[0]
		off := p.AheadMS - c.ms
		if p.Slot.Index != c.odd || p.Remark.Code != c.code || abs(off) > 5*minuteMS/2 || p.Remark.Args[4] != c.agreeing {
			t.Errorf("logger %d ahead by %d min: %+v", c.odd+1, c.ms/minuteMS, p)
		}
	}
}
