package compare

import (
	"context"
	"math"
	"reflect"
	"slices"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

const hourMS = series.HourMS

// beesIn is 10 November 2024, noon UTC.
var beesIn = time.Date(2024, time.November, 10, 12, 0, 0, 0, time.UTC).UnixMilli()

func inTurn(n int, work func(i int)) {
	for i := range n {
		work(i)
	}
}

// barn is a judged barn with one room logger that read a value every hour for so many days.
func barn(name string, days int, errK float64, tempC func(hour int) float64, more ...func(*analysis.Input)) Side {
	out := beesIn + int64(days)*24*hourMS
	in := analysis.Input{Name: name, Zone: time.UTC, PressurePa: 101325, BeesIn: &beesIn, BeesOut: &out,
		Loggers: []analysis.Logger{{Name: name + " room", Place: "room", TempC: hourlyCurve(24*days+1, tempC), TempErrK: errK, RelHumErr: 0.05}}}
	for _, f := range more {
		f(&in)
	}
	return Side{in, analysis.Judge(in)}
}

// hourlyCurve is a value every hour from bees in on; where it is no number there is a gap.
func hourlyCurve(n int, value func(hour int) float64) series.Curve {
	c := series.Curve{MaxStepMS: 2 * hourMS}
	for i := range n {
		if v := value(i); !math.IsNaN(v) {
			c.Readings.At, c.Readings.Val = append(c.Readings.At, beesIn+int64(i)*hourMS), append(c.Readings.Val, v)
		}
	}
	return c
}

func pairOf(t *testing.T, a, b Side) Pair {
	t.Helper()
	p, err := Barns(context.Background(), a, b, inTurn)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// rowOf is a row of a pair; the test ends where there is none.
func rowOf(t *testing.T, p Pair, quantity, measure, of, phase string) Row {
	t.Helper()
	for _, r := range p.Rows {
		if r.Quantity == quantity && r.Measure == measure && r.Of == of && r.Phase == phase {
			return r
		}
	}
	t.Fatalf("no row %s %s %s %s", quantity, measure, of, phase)
	return Row{}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.9g, want %.9g within %g", what, got, want, within)
	}
}

// dayAndNight is 5 °C in the mean, 3 to 7 over the day.
func dayAndNight(hour int) float64 { return 5 + 2*math.Sin(2*math.Pi*float64(hour)/24) }

// B reads 1 K below A in every hour: nothing is left to chance, and two loggers of ±0.5 K may be off by √(0.5² + 0.5²) =
// 0.707 K together. The difference is told, 0.293 to 1.707 K. With a difference of 0.5 K it is not; then loggers that are
// off by no more than 0.5 K together would tell it.
func TestALevelDifference(t *testing.T) {
	a := barn("A", 150, 0.5, dayAndNight)
	p := pairOf(t, a, barn("B", 150, 0.5, func(h int) float64 { return dayAndNight(h) - 1 }))
	near(t, "overlap", p.OverlapHours, 3600, 0)
	r := rowOf(t, p, AirTemperature, Mean, "", "")
	near(t, "A", r.A, 5, 1e-9)
	near(t, "B", r.B, 4, 1e-9)
	near(t, "low", r.Low, 1-math.Sqrt(0.5), 1e-9)
	near(t, "high", r.High, 1+math.Sqrt(0.5), 1e-9)
	if r.Verdict != More || r.Settle != nil {
		t.Errorf("verdict %s, settled by %v", r.Verdict, r.Settle)
	}
	r = rowOf(t, pairOf(t, a, barn("B", 150, 0.5, func(h int) float64 { return dayAndNight(h) + 0.5 })), AirTemperature, Mean, "", "")
	if r.Verdict != CantTell || r.Settle == nil || r.Settle.Code != CheckLoggers {
		t.Fatalf("verdict %s, settled by %v", r.Verdict, r.Settle)
	}
	near(t, "settled by", r.Settle.SensorHalf, 0.5, 1e-9)
}

// Hours are paired by time: where one logger was silent neither counts. A reads 9 in the first ten hours of every day and
// 5 else, straight lines of an hour between; B 5 always, and nothing on the last fifty days. A is above 6 °C for 9 hours
// and 3/4 of an hour at either side, 10.5 a day, with 9 × 3 + 2 × 0.75 × 1.5 = 29.25 K·h above it.
func TestHoursArePairedByTime(t *testing.T) {
	a := barn("A", 150, 0, func(h int) float64 {
		if h%24 >= 1 && h%24 <= 10 {
			return 9
		}
		return 5
	})
	p := pairOf(t, a, barn("B", 150, 0, func(h int) float64 {
		if h > 100*24 {
			return math.NaN()
		}
		return 5
	}))
	r := rowOf(t, p, AirTemperature, HoursAbove, "good", "")
	near(t, "overlap", r.OverlapHours, 2400, 0)
	near(t, "hours", r.A, 1050, 1e-6)
	near(t, "difference", r.Difference, 1050, 1e-6)
	if r.Limit == nil || *r.Limit != 6 {
		t.Errorf("limit %v", r.Limit)
	}
	near(t, "degree-hours", rowOf(t, p, AirTemperature, DegreeHoursAbove, "good", "").A, 2925, 1e-6)
}

// Both barns by one outdoor logger that is −4 °C in the first half and +4 °C in the second. A is 4 + x/2 °C, B 1 K below it; B
// was silent for most of the second half, which does not count for A either. At one outdoor temperature they differ by 1 K.
func TestWeatherTakenOut(t *testing.T) {
	outside := func(h int) float64 {
		if h < 1800 {
			return -4 + math.Sin(float64(h))
		}
		return 4 + math.Sin(float64(h))
	}
	with := func(in *analysis.Input) {
		in.Loggers = append(in.Loggers, analysis.Logger{Name: "out", Place: "outdoor", TempC: hourlyCurve(3601, outside), TempErrK: 0.5})
	}
	a := barn("A", 150, 0.1, func(h int) float64 { return 4 + outside(h)/2 }, with)
	p := pairOf(t, a, barn("B", 150, 0.1, func(h int) float64 {
		if h > 2000 {
			return math.NaN()
		}
		return 3 + outside(h)/2
	}, with))
	for _, measure := range []string{EqualWeather, ByRegression} {
		r := rowOf(t, p, AirTemperature, measure, "", "")
		near(t, measure, r.Difference, 1, 1e-9)
		near(t, measure+": loggers", r.SensorHalf, math.Hypot(0.1, 0.1), 1e-9) // the outdoor logger is one
	}
	hours := 0.0
	for _, b := range p.Weather.Bins {
		hours += b.HoursA
		near(t, "hours of both", b.HoursA, b.HoursB, 1e-9)
		near(t, "means", b.A-b.B, 1, 1e-9)
	}
	near(t, "hours in all", hours, 2000, 1e-9)
	if p.Weather.Unknown != "" {
		t.Error(p.Weather.Unknown)
	}
	if p := pairOf(t, barn("A", 30, 0.1, dayAndNight), barn("B", 30, 0.1, dayAndNight)); p.Weather.Unknown != "no_outdoor" {
		t.Errorf("without an outdoor logger: %q", p.Weather.Unknown)
	}
}

// Worked by hand. Two bins: A 10 h of 5 °C and 30 h of 6; B 30 h of 4 and 10 h of 5. Each bin weighs 10 × 30/40 = 7.5, so A is
// 5.5, B 4.5. The lines: A has the points (0, 1) and (2, 3), B (2, 2) and (4, 4): one slope of 1, mean outdoors 2, there A is
// on 3 and B on 2.
func TestOneOutdoorTemperature(t *testing.T) {
	l := binned([]float64{10, 50, 30, 120, 30, 180, 10, 50})
	near(t, "A in bins", l.a, 5.5, 1e-12)
	near(t, "B in bins", l.b, 4.5, 1e-12)
	l = regressed([]float64{2, 2, 4, 4, 6, 2, 6, 6, 20, 20})
	near(t, "A on its line", l.a, 3, 1e-12)
	near(t, "B on its line", l.b, 2, 1e-12)
	near(t, "slope", l.slope, 1, 1e-12)
}

// A stands at 5 °C, B at 3.2 °C for 100 of 720 hours and at 5 else, straight lines of an hour at either side. At or above 5 °C
// A lay for 720 hours, B for 720 − 101 − … the 99 hours between the 100 readings and the two flanks: 619. Above 4 °C it is the 99
// and of each flank the part below 4, (4 − 3.2)/(5 − 3.2) of an hour: 720 − 99.889 = 620.111.
func TestExposure(t *testing.T) {
	low := func(h int) float64 {
		if h >= 300 && h < 400 {
			return 3.2
		}
		return 5
	}
	p := pairOf(t, barn("A", 30, 0.1, func(int) float64 { return 5 }), barn("B", 30, 0.1, low))
	for _, e := range p.Exposures {
		if e.Quantity != AirTemperature || e.Phase != "" {
			continue
		}
		at := map[float64][2]float64{}
		for i, v := range e.Levels {
			at[v] = [2]float64{e.A[i], e.B[i]}
		}
		near(t, "A at 5", at[5][0], 720, 1e-6)
		near(t, "B at 5", at[5][1], 619, 1e-6)
		near(t, "B at 4", at[4][1], 720-99-2*0.8/1.8, 1e-6)
		near(t, "B at 3", at[3][1], 720, 1e-6)
		near(t, "A at 5.5", at[5.5][0], 0, 1e-6)
	}
}

// A was colder by 3 K for six hours from hour 200 on, in which the keeper had the doors open, and by 2 K for six from hour
// 400 on. Six whole hours lie at 3 K or between; the ten that differ most are the first stretch's and then the second's.
func TestTheTenHoursFarthestApart(t *testing.T) {
	at := beesIn + 200*hourMS
	until := at + 6*hourMS
	a := barn("A", 30, 0.1, func(h int) float64 {
		switch {
		case h >= 200 && h <= 206:
			return 2
		case h >= 400 && h <= 406:
			return 3
		}
		return 5
	}, func(in *analysis.Input) {
		in.Notes = []analysis.Note{{At: at, Until: &until, Kind: "doors open"}, {At: beesIn, Kind: "other"}}
		in.Stages = []analysis.Stage{{Name: "Stage 1", Settings: []analysis.Setting{{Span: series.Span{From: 0, To: 1 << 50}, AlwaysOn: true}}}}
	})
	p := pairOf(t, a, barn("B", 30, 0.1, func(int) float64 { return 5 }))
	if len(p.Apart) != 10 {
		t.Fatalf("%d hours", len(p.Apart))
	}
	for i, h := range p.Apart {
		first := h.Span.From >= at && h.Span.From < until
		if want := i < 6; first != want {
			t.Errorf("hour %d is %s", i, time.UnixMilli(h.Span.From).UTC())
		}
		if doors := len(h.OnA.Notes) == 1 && h.OnA.Notes[0] == "doors open"; doors != first || len(h.OnB.Notes) > 0 {
			t.Errorf("hour %d: notes %v and %v", i, h.OnA.Notes, h.OnB.Notes)
		}
		if len(h.OnA.Stages) != 1 || h.OnA.Stages[0] != (StageOn{"Stage 1", 1, false}) {
			t.Errorf("stages %v", h.OnA.Stages)
		}
	}
	near(t, "A", p.Apart[0].A, 2, 1e-9)
	near(t, "difference", p.Apart[0].Difference, -3, 1e-9)
	near(t, "the seventh", p.Apart[6].Difference, -2, 1e-9)
}

// Hives in by the ledger: 150 and 190 less nothing carried out meanwhile, so 340 at the most. Dead 12 and 5 of all of them are
// 5 %; of 50 looked at 5 were dead, 10 % (4.3–21.4 %, Wilson by hand). A count above the number there was is no count.
func TestLosses(t *testing.T) {
	five, twelve, fifty := 5.0, 12.0, 50.0
	ledger := []analysis.HeadChange{{At: 1, Change: 150}, {At: 2, Change: 190}, {At: 3, Change: -340}}
	all := LossOf(analysis.Input{Heads: ledger, Notes: []analysis.Note{{Kind: "dead count", Value: &twelve}, {Kind: "dead count", Value: &five}, {Kind: "sweepings", Value: &fifty}}})
	if all.HivesIn != 340 || all.Dead != 17 || all.Of != 340 || all.Sample || all.Unknown != "" {
		t.Errorf("%+v", all)
	}
	near(t, "share", all.Share, 0.05, 1e-12)
	sample := LossOf(analysis.Input{Notes: []analysis.Note{{Kind: "dead count", Value: &twelve}, {Kind: "dead count", Value: &five, Of: &fifty}}})
	if sample.Dead != 5 || sample.Of != 50 || !sample.Sample || sample.Unknown != "" {
		t.Errorf("%+v", sample)
	}
	near(t, "low", 100*sample.Low, 4.3, 0.05)
	near(t, "high", 100*sample.High, 21.4, 0.05)
	for want, in := range map[string]analysis.Input{
		"no_dead_count":        {Heads: ledger},
		"no_head_count":        {Notes: []analysis.Note{{Kind: "dead count", Value: &five}}},
		"more_dead_than_hives": {Heads: []analysis.HeadChange{{Change: 4}}, Notes: []analysis.Note{{Kind: "dead count", Value: &five}}},
	} {
		if got := LossOf(in).Unknown; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	l := lossesOf(analysis.Input{Heads: ledger, Notes: []analysis.Note{{Kind: "dead count", Value: &fifty}}}, analysis.Input{Heads: ledger, Notes: []analysis.Note{{Kind: "dead count", Value: &five}}})
	if l.Verdict != More || l.Low <= 0 {
		t.Errorf("50 of 340 against 5 of 340: %+v", l)
	}
}

// Two barns with the bees in at different times have nothing in common, and it is said.
func TestNothingInCommon(t *testing.T) {
	a, b := barn("A", 10, 0.1, dayAndNight), barn("B", 10, 0.1, dayAndNight)
	for i := range b.Review.Phases {
		b.Review.Phases[i].Parts = moved(b.Review.Phases[i].Parts, 20*24*hourMS)
	}
	p := pairOf(t, a, b)
	if len(p.Rows) != 0 || len(p.Remarks) != 1 || p.Remarks[0].Code != "no_common_time" || p.OverlapHours != 0 {
		t.Errorf("%d rows, %v", len(p.Rows), p.Remarks)
	}
}

// Stages of one name: A's is called for by a thermostat of 6 and 5 °C, B's by one of 4 and 3; the air of both is 5 + 2 sin. A's
// is on from 6 °C rising (1/12 of a day after the mean) to 5 °C falling (half a day), B's from the first 4 °C on for good but for
// the hours below: from 3 °C to 4 °C. Straight lines of an hour replace the sine, so the hours are near 10 of 24 and 20 of 24.
func TestStagesOfOneName(t *testing.T) {
	set := func(on, off float64) func(*analysis.Input) {
		return func(in *analysis.Input) {
			in.Stages = []analysis.Stage{{Name: "Stage 2", Settings: []analysis.Setting{{Span: series.Span{From: 0, To: 1 << 50}, OnC: on, OffC: off}}}}
		}
	}
	p := pairOf(t, barn("A", 30, 0.01, dayAndNight, set(6, 5)), barn("B", 30, 0.01, dayAndNight, set(4, 3)))
	r := rowOf(t, p, StageCalled, Hours, "Stage 2", "")
	near(t, "A", r.A/r.OverlapHours, 10.0/24, 0.02)
	near(t, "B", r.B/r.OverlapHours, 20.0/24, 0.04)
	if r.Verdict != Less {
		t.Errorf("verdict %s", r.Verdict)
	}
}

// Seen from the second barn all is the other way round, and twice turned it is as it was.
func TestAPairTurned(t *testing.T) {
	with := func(in *analysis.Input) {
		in.Loggers = append(in.Loggers, analysis.Logger{Name: "out", Place: "outdoor", TempC: hourlyCurve(721, func(h int) float64 { return float64(h%40) - 20 })})
	}
	p := pairOf(t, barn("A", 30, 0.1, dayAndNight, with), barn("B", 30, 0.1, func(h int) float64 { return dayAndNight(h) - 1 }, with))
	back := p.Turned()
	r, was := rowOf(t, back, AirTemperature, Mean, "", ""), rowOf(t, p, AirTemperature, Mean, "", "")
	if back.A != "B" || r.A != was.B || r.Low != -was.High || was.Verdict != More || r.Verdict != Less {
		t.Errorf("%+v", r)
	}
	if b, w := back.Weather.Bins[3], p.Weather.Bins[3]; b.A != w.B || b.HoursB != w.HoursA {
		t.Errorf("%+v, was %+v", b, w)
	}
	if h, w := back.Apart[0], p.Apart[0]; h.A != w.B || h.Difference != -w.Difference {
		t.Errorf("%+v, was %+v", h, w)
	}
	if e, w := back.Exposures[0], p.Exposures[0]; e.A[5] != w.B[5] {
		t.Errorf("%+v, was %+v", e, w)
	}
	if again := back.Turned(); !reflect.DeepEqual(again, p) {
		t.Error("twice turned it is not as it was")
	}
}

// A barn beside itself a winter later: 365 days on, the same logger reads 1 K more day by day, and outdoors it was 2 K warmer, of
// which half comes through. Paired by the day of winter the later one is 1 K warmer; at one outdoor temperature they are alike.
// Its doors stood open a winter later to the hour: the hour that differs most knows of it.
func TestTwoWinters(t *testing.T) {
	outside := func(h int) float64 { return 4*math.Sin(float64(h)/50) + 2*math.Sin(float64(h)/7) }
	year := int64(365 * 24 * hourMS)
	inWinter := func(laterMS int64, warmerK float64) Side {
		s := barn("A", 100, 0.1, func(h int) float64 { return 4 + (outside(h)+warmerK)/2 }, func(in *analysis.Input) {
			in.Loggers = append(in.Loggers, analysis.Logger{Name: "out", Place: "outdoor", TempC: hourlyCurve(2401, func(h int) float64 { return outside(h) + warmerK }), TempErrK: 0.1})
			at := *in.BeesIn + laterMS
			out := *in.BeesOut + laterMS
			in.BeesIn, in.BeesOut = &at, &out
			for i := range in.Loggers {
				in.Loggers[i].TempC.Readings.At = slices.Clone(in.Loggers[i].TempC.Readings.At)
				for k := range in.Loggers[i].TempC.Readings.At {
					in.Loggers[i].TempC.Readings.At[k] += laterMS
				}
			}
			in.Notes = []analysis.Note{{At: at + 500*hourMS, Kind: "doors open"}}
		})
		return s
	}
	p, err := Winters(context.Background(), inWinter(0, 0), inWinter(year, 2), "A 2024", "A 2025", inTurn)
	if err != nil {
		t.Fatal(err)
	}
	if p.LaterMS != year || !p.ByWinterDay || p.OverlapHours != 2400 {
		t.Errorf("later by %d h, %g h in common", p.LaterMS/hourMS, p.OverlapHours)
	}
	r := rowOf(t, p, AirTemperature, Mean, "", "")
	near(t, "day by day", r.Difference, -1, 1e-9)
	if r.Verdict != Less {
		t.Errorf("verdict %s", r.Verdict)
	}
	r = rowOf(t, p, AirTemperature, ByRegression, "", "")
	near(t, "in the same weather", r.Difference, 0, 1e-9)
	near(t, "loggers", r.SensorHalf, math.Hypot(math.Hypot(0.1, 0.1), 0.5*math.Hypot(0.1, 0.1)), 1e-9)
	near(t, "in the same weather, by bins", rowOf(t, p, AirTemperature, EqualWeather, "", "").Difference, 0, 0.1)
	for _, h := range p.Apart {
		if at := h.Span.From == beesIn+500*hourMS; at != (len(h.OnA.Notes) > 0) || at != (len(h.OnB.Notes) > 0) {
			t.Errorf("%s: %v and %v", time.UnixMilli(h.Span.From).UTC(), h.OnA.Notes, h.OnB.Notes)
		}
	}
}

// The year a winter ends in begins on 1 January: the next for bees in by the end of the year, this one for bees in after it.
func TestNewYear(t *testing.T) {
	for in, want := range map[string]string{"2024-11-10T12:00:00Z": "2025-01-01T00:00:00Z", "2025-01-20T12:00:00Z": "2025-01-01T00:00:00Z", "2024-07-01T00:00:00Z": "2025-01-01T00:00:00Z"} {
		at, _ := time.Parse(time.RFC3339, in)
		s := Side{Input: analysis.Input{Zone: time.UTC}, Review: analysis.Review{BeesIn: at.UnixMilli()}}
		if got := time.UnixMilli(newYear(s)).UTC().Format(time.RFC3339); got != want {
			t.Errorf("%s: %s, want %s", in, got, want)
		}
	}
}
