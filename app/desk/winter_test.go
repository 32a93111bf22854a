package desk

import (
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// day0 is 1 November 2024, 00:00 UTC; the invented winters of these tests run for a hundred days from it.
var day0 = time.Date(2024, time.November, 1, 0, 0, 0, 0, time.UTC).UnixMilli()

const (
	hourMS     = series.HourMS
	testDays   = 100
	firstHot   = 50 * 24 // 21 December 00:00
	hotHours   = 60      // to 23 December 12:00
	stillC     = 4.0
	hotC       = 9.0
	outColdC   = -5.0
	outMildC   = 12.0
	relHumEven = 0.6
)

// hourly is a curve with a reading every full hour over the hundred days.
func hourly(t *testing.T, at func(hour int) float64) series.Curve {
	t.Helper()
	var when []int64
	var val []float64
	for h := 0; h <= testDays*24; h++ {
		when, val = append(when, day0+int64(h)*hourMS), append(val, at(h))
	}
	r, err := series.NewReadings(when, val)
	if err != nil {
		t.Fatal(err)
	}
	return series.Curve{Readings: r, MaxStepMS: 2 * hourMS}
}

func hot(hour int) bool { return hour >= firstHot && hour <= firstHot+hotHours }

func stepped(usual, whileHot float64) func(int) float64 {
	return func(h int) float64 {
		if hot(h) {
			return whileHot
		}
		return usual
	}
}

// rich is a winter with everything set down: dates, hives, stages, a wall, the air outside.
func rich(t *testing.T) analysis.Input {
	in, out := day0, day0+testDays*24*hourMS
	always := []analysis.Setting{{Span: series.Span{From: in, To: out}, AlwaysOn: true}}
	by := func(on, off float64) []analysis.Setting {
		return []analysis.Setting{{Span: series.Span{From: in, To: out}, OnC: on, OffC: off}}
	}
	return analysis.Input{
		Name: "Alder barn", Zone: time.UTC, PressurePa: 101325, BeesIn: &in, BeesOut: &out,
		Heads:    []analysis.HeadChange{{At: in, Change: 338}, {At: out, Change: -338}},
		Stages:   []analysis.Stage{{Name: "Stage 1", Settings: always}, {Name: "Stage 2", Settings: by(3.5, 3)}, {Name: "Stage 3", Settings: by(6.5, 5.5)}, {Name: "Stage 4", Settings: by(8, 7)}},
		Surfaces: []analysis.Surface{{Name: "north wall", Kind: "wall", Mid: 0.9, Low: 0.85, High: 0.95, Evidence: analysis.Assumed}},
		Loggers: []analysis.Logger{
			{Name: "middle", Place: "room", TempC: hourly(t, stepped(stillC, hotC)), RelHum: hourly(t, stepped(relHumEven, relHumEven)), TempErrK: 0.1, RelHumErr: 0.05, TempStepK: 0.01},
			{Name: "yard", Place: "outdoor", TempC: hourly(t, stepped(outColdC, outMildC)), TempErrK: 0.5},
		},
	}
}

// thin is one logger in the room and nothing set down.
func thin(t *testing.T) analysis.Input {
	in := rich(t)
	return analysis.Input{Name: "Barn", Zone: time.UTC, PressurePa: in.PressurePa, Loggers: in.Loggers[:1]}
}

// dryLogger is one logger without humidity.
func dryLogger(t *testing.T) analysis.Input {
	in := thin(t)
	l := in.Loggers[0]
	l.RelHum = series.Curve{}
	in.Loggers = []analysis.Logger{l}
	return in
}

// gappy has readings for the first fifth of the bees' time only.
func gappy(t *testing.T) analysis.Input {
	in := rich(t)
	l := in.Loggers[0]
	part := series.Span{From: day0, To: day0 + testDays*24*hourMS/5}
	l.TempC, l.RelHum = l.TempC.Slice(part), l.RelHum.Slice(part)
	in.Loggers = []analysis.Logger{l, in.Loggers[1]}
	return in
}

// bare has no logger and no date.
func bare(*testing.T) analysis.Input {
	return analysis.Input{Name: "Empty barn", Zone: time.UTC, PressurePa: 101325}
}

// recorded is the rich winter with Stage 3's fan recorded as never running.
func recorded(t *testing.T) analysis.Input {
	in := rich(t)
	in.Loggers = append(in.Loggers, analysis.Logger{Name: "fan", RecordsStage: "Stage 3", State: hourly(t, stepped(0, 0))})
	return in
}

// even is the rich winter without its hot days.
func even(t *testing.T) analysis.Input {
	in := rich(t)
	in.Loggers[0].TempC = hourly(t, stepped(stillC, stillC))
	return in
}

// twin has a second room logger that reads 3 K more.
func twin(t *testing.T) analysis.Input {
	in := rich(t)
	second := in.Loggers[0]
	second.Name, second.TempC = "door", hourly(t, stepped(stillC+3, hotC+3))
	in.Loggers = append(in.Loggers, second)
	return in
}

// frozen has cold days instead of hot ones.
func frozen(t *testing.T) analysis.Input {
	in := rich(t)
	in.Loggers[0].TempC = hourly(t, stepped(stillC, -3))
	return in
}

// byPhase is the rich winter with a good band of its own, up to 9.5 °C, from the first of the hot days on.
func byPhase(t *testing.T) analysis.Input {
	in := rich(t)
	from, high := day0+(firstHot-1)*hourMS, 9.5
	in.Phases = []analysis.PhaseSetting{{Name: "late winter", From: &from, Bands: analysis.Bands{TempC: analysis.Band{GoodHigh: &high}}}}
	return in
}

// wet is the rich winter by a logger of humidity alone, with no dates set down.
func wet(t *testing.T) analysis.Input {
	in := thin(t)
	l := in.Loggers[0]
	l.TempC = series.Curve{}
	in.Loggers = []analysis.Logger{l}
	return in
}

// single is one reading and nothing set down.
func single(t *testing.T) analysis.Input {
	in := thin(t)
	l := in.Loggers[0]
	l.TempC, l.RelHum = l.TempC.Slice(series.Span{From: day0, To: day0 + 1}), series.Curve{}
	in.Loggers = []analysis.Logger{l}
	return in
}

// carriedIn is the rich winter in which only the day the bees went in is set down, and their number.
func carriedIn(t *testing.T) analysis.Input {
	in := rich(t)
	in.BeesOut, in.Heads = nil, []analysis.HeadChange{{At: day0, Change: 1}}
	return in
}

var winters = map[string]func(*testing.T) analysis.Input{
	"rich": rich, "thin": thin, "no humidity": dryLogger, "mostly unknown": gappy, "bare": bare,
	"recorded": recorded, "even": even, "two loggers": twin, "frozen": frozen,
	"limits by phase": byPhase, "humidity alone": wet, "one reading": single, "carried in": carriedIn,
}
