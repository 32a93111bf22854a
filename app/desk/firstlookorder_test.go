package desk

import (
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// A room 8 K too cold for 400 h is said before one a degree too warm for 320 h; a room half a degree too cold for as long behind it.
func TestTheGreaterHarmIsSaidFirst(t *testing.T) {
	const hourMS = int64(series.HourMS)
	for coldC, first := range map[float64]string{-6: "It was colder", 1.5: "It was warmer"} {
		from, to := int64(0), 2400*hourMS
		c := series.Curve{MaxStepMS: hourMS}
		for h := range int64(2401) {
			v := 4.0
			switch {
			case h >= 400 && h < 800:
				v = coldC
			case h >= 1200 && h < 1520:
				v = 7
			}
			c.Readings.At, c.Val = append(c.Readings.At, h*hourMS), append(c.Val, v)
		}
		in := analysis.Input{Name: "Alder", Zone: time.UTC, PressurePa: 101325, BeesIn: &from, BeesOut: &to,
			Loggers: []analysis.Logger{{Name: "mid", Place: "room", TempC: c, TempErrK: 0.5, TempStepK: 0.1}}}
		if s := FirstLookOf(in, analysis.Judge(in), Units{}).Sentences[0].Text; !strings.HasPrefix(s, first) {
			t.Errorf("cold at %v °C: %q comes first", coldC, s)
		}
	}
}
