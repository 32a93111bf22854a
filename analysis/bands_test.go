package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// Hourly 7, 9, 11, 8 against 8: 3.75 K·h and 2.5 h on straight lines (by hand: 0.25 + 2 + 1.5).
func TestDegreeHoursAreExactForTheLine(t *testing.T) {
	b := Band{ActHigh: ptr(8)}
	row := b.rows(line(0, 1, 7, 9, 11, 8).OutsideEach(span(0, 3), b.Limits(0.5)))[2]
	near(t, "hours above", row.HoursAbove, 2.5, 1e-9)
	near(t, "degree-hours above", row.DegHoursAbove, 3.75, 1e-9)
	near(t, "hours in", row.HoursIn, 0.5, 1e-9)
	near(t, "hours below", row.HoursBelow, 0, 0)
	// The same line 0.5 K lower meets 8 at 0.75 h and 2 5/6 h; 0.5 K higher at 0.25 h and never again.
	near(t, "least hours", row.AboveRange.Low, 2+5.0/6-0.75, 1e-9)
	near(t, "most hours", row.AboveRange.High, 2.75, 1e-9)
}

func TestBandsAddUpToTheKnownHours(t *testing.T) {
	in := one(line(0, 1, 1, 3, 7, 9, 5, 0.5), line(0, 1, 0.3, 0.5, 0.9, 0.8, 0.7, 0.2), span(0, 5))
	for _, q := range Judge(in).Quantities {
		for _, b := range q.Bands {
			near(t, q.Quantity+" "+b.Name, b.HoursBelow+b.HoursIn+b.HoursAbove, float64(q.KnownMS)/hourMS, 1e-6)
		}
	}
}

func TestDefaultBands(t *testing.T) {
	plain := Input{}.bandsIn(deepWinter, Bands{})
	near(t, "watch", *plain.TempC.WatchHigh, 8, 0)
	if plain.TempC.ActLow != nil || plain.TempC.WatchLow != nil {
		t.Error("below 2 °C is watch only where there are no water lines")
	}
	top := Stage{Settings: []Setting{{OnC: 6.5, OffC: 6}}}
	near(t, "watch up to the top stage + 1 K", *Input{Stages: []Stage{top}}.bandsIn(deepWinter, Bands{}).TempC.WatchHigh, 7.5, 1e-12)
	near(t, "water lines", *Input{WaterLines: true}.bandsIn(deepWinter, Bands{}).TempC.ActLow, 0, 0)
	own := Input{Bands: Bands{TempC: Band{GoodHigh: ptr(5)}}}.bandsIn(lateWinter, Bands{TempC: Band{GoodLow: ptr(3)}})
	near(t, "his limit for the phase stands", *own.TempC.GoodLow, 3, 0)
	near(t, "the keeper's own limit stands", *own.TempC.GoodHigh, 5, 0)
}

// Limits the keeper did not set make room for those he did, so that no hour is good and to be acted on at once: by hand.
// The house rule: watch reaches to a degree above the on-temperature of the top stage, wherever it stands in the list.
func TestWatchReachesAboveTheTopStage(t *testing.T) {
	stage := func(name string, onC float64) Stage {
		return Stage{Name: name, Settings: []Setting{{Span: span(0, 10), OnC: onC, OffC: onC - 1}}}
	}
	for _, stages := range [][]Stage{{stage("top", 6.3), stage("second", 4.5)}, {stage("second", 4.5), stage("top", 6.3)}} {
		in := one(through(0, 10, 0.5, constant(4)), series.Curve{}, span(0, 10))
		in.Stages = stages
		near(t, "watch up to, °C", *in.bandsIn(deepWinter, Bands{}).TempC.WatchHigh, 7.3, 1e-9)
	}
}

func TestLimitsMakeRoomForTheKeepersOwn(t *testing.T) {
	top := func(onC float64) []Stage { return []Stage{{Settings: []Setting{{OnC: onC, OffC: onC - 1}}}} }
	for _, c := range []struct {
		name   string
		in     Input
		phase  string
		limits [6]float64 // good, watch, act; NaN for none
	}{
		{"good up to 10", Input{Bands: Bands{TempC: Band{GoodHigh: ptr(10)}}}, deepWinter, [6]float64{2, 10, math.NaN(), 10, math.NaN(), 10}},
		{"watch up to 9", Input{Bands: Bands{TempC: Band{WatchHigh: ptr(9)}}}, deepWinter, [6]float64{2, 6, math.NaN(), 9, math.NaN(), 9}},
		{"act above 7", Input{Bands: Bands{TempC: Band{ActHigh: ptr(7)}}}, deepWinter, [6]float64{2, 6, math.NaN(), 7, math.NaN(), 7}},
		{"all of good below the house's", Input{Bands: Bands{TempC: Band{GoodHigh: ptr(1)}}}, deepWinter, [6]float64{-3, 1, math.NaN(), 8, math.NaN(), 8}},
		{"all of good above it", Input{Bands: Bands{TempC: Band{GoodLow: ptr(7)}}}, deepWinter, [6]float64{7, 11, math.NaN(), 11, math.NaN(), 11}},
		{"good from −1 with water lines", Input{WaterLines: true, Bands: Bands{TempC: Band{GoodLow: ptr(-1)}}}, deepWinter, [6]float64{-1, 6, -1, 8, -1, 8}},
		{"a ladder that ends below the good band", Input{Stages: top(4.2)}, deepWinter, [6]float64{2, 6, math.NaN(), 6, math.NaN(), 8}},
		{"a summer stage", Input{Stages: top(15)}, deepWinter, [6]float64{2, 6, math.NaN(), 8, math.NaN(), 8}},
		{"a summer stage, while filling", Input{Stages: top(15)}, filling, [6]float64{2, 6, math.NaN(), 10, math.NaN(), 10}},
	} {
		b := c.in.bandsIn(c.phase, Bands{}).TempC
		for i, got := range []*float64{b.GoodLow, b.GoodHigh, b.WatchLow, b.WatchHigh, b.ActLow, b.ActHigh} {
			if want := c.limits[i]; (got == nil) != math.IsNaN(want) || got != nil && *got != want {
				t.Errorf("%s: limit %d is %v, want %g", c.name, i, got, want)
			}
		}
	}
	damp := Input{Bands: Bands{RelHumPct: Band{GoodHigh: ptr(90)}}}.bandsIn(deepWinter, Bands{}).RelHumPct
	near(t, "humidity to watch above", *damp.WatchHigh, 90, 0)
	near(t, "humidity to act above", *damp.ActHigh, 90, 0)
}

func TestRowsPerPlaceLoggerAndPhase(t *testing.T) {
	s := series.Span{From: instant(t, "2026-02-01 00:00"), To: instant(t, "2026-03-31 00:00")}
	from, to := float64(s.From)/hourMS, float64(s.To)/hourMS
	in := one(through(from, to, 1, constant(4)), through(from, to, 1, constant(0.6)), s)
	in.Loggers = append(in.Loggers, Logger{Name: "far", Place: "room", TempC: through(from, to, 1, constant(5))})
	rows := Judge(in).Quantities
	seen := map[string]float64{}
	for _, q := range rows {
		seen[q.Quantity+"|"+q.Place+"|"+q.Logger+"|"+q.Phase] = q.Mean.Mid
	}
	for key, want := range map[string]float64{
		"air_temperature|room||":               4.5,
		"air_temperature|room|mid|":            4,
		"air_temperature|room|far|late winter": 5,
		"relative_humidity|room||deep winter":  60,
		"dew_point|room|mid|":                  -3.06, // ASHRAE equations at 4 °C, 60 %
	} {
		got, ok := seen[key]
		if !ok {
			t.Errorf("no row %s", key)
		}
		near(t, key, got, want, 0.006)
	}
}

// Below half of the span known there is no mean, but what was seen is still counted.
func TestTooLittleKnownHasNoMean(t *testing.T) {
	in := one(through(0, 40, 1, constant(7)), series.Curve{}, span(0, 100))
	q := Judge(in).Quantities[0]
	if q.Mean.OK || q.Min.OK || q.Max.OK {
		t.Errorf("mean %+v from 40 of 100 h", q.Mean)
	}
	near(t, "hours above 6", q.Bands[0].HoursAbove, 40, 1e-9)
	near(t, "unknown", float64(q.UnknownMS)/hourMS, 60, 1e-9)
}
