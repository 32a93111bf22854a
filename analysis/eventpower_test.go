package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// A room that goes up and down by half a degree a day climbs 3 K within four hours of frost, six times as far as ever
// else: perhaps a power cut. Where the weather is known for less than half of the climb, nothing is claimed.
func TestAClimbTheWeatherDoesNotExplain(t *testing.T) {
	room := through(0, 960, 0.25, func(h float64) float64 {
		wave := 4 + 0.25*math.Sin(2*math.Pi*h/24)
		switch {
		case h >= 500 && h < 504:
			return wave + 0.75*(h-500)
		case h >= 504 && h < 524:
			return wave + 3 - 0.15*(h-504)
		}
		return wave
	})
	frost := func(to, from float64) series.Curve {
		c := through(0, 960, 0.25, constant(-10))
		out := series.Curve{MaxStepMS: c.MaxStepMS}
		for i, at := range c.Readings.At {
			if h := float64(at) / hourMS; h <= to || h >= from {
				out.Readings.At, out.Val = append(out.Readings.At, at), append(out.Val, c.Val[i])
			}
		}
		return out
	}
	for _, row := range []struct {
		name     string
		outdoors series.Curve
		found    int
	}{
		{"known throughout", frost(960, 0), 1}, {"known but for an hour", frost(502, 503), 1}, {"known for none of it", frost(499, 520), 0},
		{"a warm day", through(0, 960, 0.25, constant(3)), 0}, {"unknown", series.Curve{}, 0},
	} {
		in := one(room, series.Curve{}, span(0, 960))
		in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: row.outdoors})
		cuts := 0
		for _, e := range Judge(in).Events {
			if e.Kind == powerCut {
				cuts++
				if !e.MayBe || e.Span.From < 498*hourMS || e.Span.To > 506*hourMS {
					t.Errorf("%s: %+v", row.name, e)
				}
			}
		}
		if cuts != row.found {
			t.Errorf("%s: %d cuts, want %d", row.name, cuts, row.found)
		}
	}
}
