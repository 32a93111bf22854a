package compare

import (
	"context"
	"math"
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
