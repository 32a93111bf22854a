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
		onC      float64 // of the one stage; 0 for none set down
		found    int
	}{
		{"known throughout", frost(960, 0), 0, 1}, {"known but for an hour", frost(502, 503), 0, 1}, {"known for none of it", frost(499, 520), 0, 0},
		{"a warm day", through(0, 960, 0.25, constant(3)), 0, 0}, {"unknown", series.Curve{}, 0, 0},
		{"to where a fan is called for", frost(960, 0), 6, 1}, {"no fan was called for", frost(960, 0), 6.8, 0}, // it comes to 7 °C, read to half a degree
	} {
		in := one(room, series.Curve{}, span(0, 960))
		if row.onC > 0 {
			in.Stages = []Stage{{Name: "first", Settings: []Setting{{Span: span(0, 960), OnC: row.onC, OffC: row.onC - 1}}}}
		}
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

// A room at 4 °C that climbs by 2.5 K in an hour and another 0.5 K in the next, as its walls warm along: that may be a power cut also
// where nobody measured the weather, or where it was -10 °C but for a warm quarter of an hour; not in the last hours before the bees
// are out, nor in a room that rises as fast from -6 °C, where no fan is missing.
func TestASteepClimbNeedsNoWeather(t *testing.T) {
	noon := through(0, 960, 0.25, func(h float64) float64 {
		if h == 501 {
			return 6
		}
		return -10
	})
	for _, row := range []struct {
		name      string
		from, out float64
		outdoors  series.Curve
		found     int
	}{
		{"unknown", 4, 960, series.Curve{}, 1}, {"cold but for a quarter of an hour", 4, 960, noon, 1},
		{"as the bees leave", 4, 504, series.Curve{}, 0}, {"far below", -6, 960, series.Curve{}, 0},
	} {
		room := through(0, row.out, 0.25, func(h float64) float64 {
			wave := row.from + 0.2*math.Sin(2*math.Pi*h/24)
			switch {
			case h > 500 && h < 501:
				return wave + 2.5*(h-500)
			case h >= 501 && h < 503:
				return wave + 2.5 + 0.25*(h-501)
			case h >= 503:
				return wave + 3*math.Exp(503-h)
			}
			return wave
		})
		in := one(room, series.Curve{}, span(0, row.out))
		in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: row.outdoors})
		if cuts := kinds(Judge(in).Events, powerCut); len(cuts) != row.found {
			t.Errorf("%s: %+v, want %d", row.name, cuts, row.found)
		}
	}
}

// The fan that is always on stood from hour 100 to 150, and the second, in record too, went on and off as the room called for
// it every two hours: the pauses of the second are no power cuts. Where the second had not been called for at all, it may have
// been one, as nothing but that fan tells; where it was called for and stood too, it was one.
func TestTheAlwaysOnFanAloneIsNoPowerCut(t *testing.T) {
	for _, c := range []struct {
		name             string
		second           func(h float64) bool
		peakC            float64
		certain, perhaps int
	}{
		{"the second came and went", func(h float64) bool { return math.Mod(h, 2) >= 1 }, 5, 0, 0},
		{"the second not called for", func(float64) bool { return false }, 4, 0, 1},
		{"the second called for and stood", func(float64) bool { return false }, 8, 1, 0},
	} {
		room := through(0, 300, 0.25, func(h float64) float64 {
			switch {
			case c.second(h):
				return 4 + (c.peakC-4)*(1-math.Mod(h, 1))
			case c.second(h - 1): // an hour's climb to the second's start
				return 4 + (c.peakC-4)*math.Mod(h, 1)
			case h > 100 && h < 150:
				return 3.5 + (c.peakC-3.5)*(h-100)/50
			}
			return 3.5
		})
		in := one(room, series.Curve{}, span(0, 300))
		in.Stages = []Stage{{Name: "first", Settings: []Setting{{Span: span(-10, 400), AlwaysOn: true}}},
			{Name: "second", Settings: []Setting{{Span: span(-10, 400), OnC: 5, OffC: 4}}}}
		in.Loggers = append(in.Loggers,
			Logger{Name: "a", Place: "other", RecordsStage: "first", State: through(0, 300, 0.25, func(h float64) float64 { return oneIf(h < 100 || h >= 150) })},
			Logger{Name: "b", Place: "other", RecordsStage: "second", State: through(0, 300, 0.25, func(h float64) float64 { return oneIf(c.second(h)) })})
		certain, perhaps := 0, 0
		for _, e := range kinds(Judge(in).Events, powerCut) {
			if e.MayBe {
				perhaps++
			} else {
				certain++
			}
		}
		if certain != c.certain || perhaps != c.perhaps {
			t.Errorf("%s: %d cuts and %d that may be, want %d and %d", c.name, certain, perhaps, c.certain, c.perhaps)
		}
	}
}

// The room climbs by 3 K in frost from hour 500 to 504 and then cools slowly, without power, to hour 510: the climb alone may be a cut and
// ends with the climb; the keeper's note says to when, and that it was one.
func TestTheNotedEndOfACutGoesBeforeTheClimbs(t *testing.T) {
	room := through(0, 960, 0.25, func(h float64) float64 {
		wave := 4 + 0.25*math.Sin(2*math.Pi*h/24)
		if h > 500 && h < 520 {
			return wave + 3*math.Min(1, (h-500)/4) - 0.15*math.Max(0, h-504)
		}
		return wave
	})
	in := one(room, series.Curve{}, span(0, 960))
	in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: through(0, 960, 1, constant(-10))})
	for _, noted := range []bool{false, true} {
		end := int64(510 * hourMS)
		if in.Notes = nil; noted {
			in.Notes = []Note{{At: 500 * hourMS, Until: &end, Kind: powerCut}}
		}
		cuts := kinds(Judge(in).Events, powerCut)
		if len(cuts) != 1 || cuts[0].MayBe == noted || (cuts[0].Span.To == end) != noted {
			t.Errorf("noted %v: %+v", noted, cuts)
		}
	}
}

// A climb that still goes on when the record ends is one; of a record of nothing there is none.
func TestAClimbMayReachTheEndOfTheRecord(t *testing.T) {
	room := through(0, 10, 0.5, func(h float64) float64 { return 4 + max(0, h-6) })
	got := climbs(room, span(0, 11))
	if len(got) != 1 || got[0].From != 6*hourMS || got[0].To != 10*hourMS || got[0].toC != 8 {
		t.Errorf("%+v, want one from 6 to 10 h, to 8 °C", got)
	}
	if got := climbs(series.Curve{}, span(0, 10)); len(got) != 0 {
		t.Errorf("%+v of nothing", got)
	}
}

// The same climb at the 73rd hour of the bees is a truckload of hives that warms the room; at the 200th it may be a cut.
func TestAClimbWhileHivesAreCarriedInIsNoCut(t *testing.T) {
	for at, want := range map[float64]int{73: 0, 200: 1} {
		in := one(through(0, 960, 0.25, func(h float64) float64 {
			wave := 4 + 0.25*math.Sin(2*math.Pi*h/24)
			switch {
			case h >= at && h < at+4:
				return wave + 0.75*(h-at)
			case h >= at+4 && h < at+24:
				return wave + 3 - 0.15*(h-at-4)
			}
			return wave
		}), series.Curve{}, span(0, 960))
		in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: through(0, 960, 0.25, constant(-10))})
		cuts := 0
		for _, e := range Judge(in).Events {
			if e.Kind == powerCut {
				cuts++
			}
		}
		if cuts != want {
			t.Errorf("at hour %v: %d cuts, want %d", at, cuts, want)
		}
	}
}
