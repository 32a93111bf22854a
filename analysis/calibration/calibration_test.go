package calibration_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"thawbook/analysis/calibration"
	"thawbook/analysis/series"
)

const minuteMS = 60 * 1000

// Greenspan 1977, table 2, in percent at 0, 5, …, 25 °C (from memory; the fit rounds to within 0.01 of it).
func TestSalts(t *testing.T) {
	for salt, want := range map[calibration.SaltName][]float64{
		calibration.SodiumChloride:    {75.51, 75.65, 75.67, 75.61, 75.47, 75.29},
		calibration.MagnesiumChloride: {33.66, 33.60, 33.47, 33.30, 33.07, 32.78},
		calibration.PotassiumChloride: {88.61, 87.67, 86.77, 85.92, 85.11, 84.34},
	} {
		for k, w := range want {
			if got := 100 * calibration.RelHum(salt, float64(5*k)); math.Abs(got-w) > 0.02 {
				t.Errorf("%s at %d °C: %.3f %%, want %v", salt, 5*k, got, w)
			}
		}
		for _, outside := range []float64{-0.1, 50.1, math.NaN()} {
			if got := calibration.RelHum(salt, outside); !math.IsNaN(got) {
				t.Errorf("%s at %v °C: %v", salt, outside, got)
			}
		}
	}
	if got := calibration.RelHum("sugar", 10); !math.IsNaN(got) {
		t.Errorf("sugar: %v", got)
	}
}

// readings are a value per minute, printed with some step.
func readings(t *testing.T, n int, step float64, f func(minute int) float64) series.Curve {
	t.Helper()
	at, val := make([]int64, n), make([]float64, n)
	for i := range n {
		at[i], val[i] = int64(i)*minuteMS, math.Round(f(i)/step)*step
	}
	r, err := series.NewReadings(at, val)
	if err != nil {
		t.Fatal(err)
	}
	return series.Curve{Readings: r, MaxStepMS: 30 * minuteMS}
}

var whole = series.Span{From: 0, To: 1 << 40}

// A logger that reads too warm by 0.35 K goes from a kitchen into ice and back: the offset is −0.35 K, within
// its half-width, over a stretch inside the bath.
func TestIce(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	c := readings(t, 180, 0.1, func(i int) float64 {
		said := 21.0
		if i >= 60 && i < 120 {
			said = 21 * math.Exp(-float64(i-60)/4)
		}
		return said + 0.35 + 0.02*random.NormFloat64()
	})
	got, ok := calibration.Ice(c, whole, 0.1)
	if !ok || math.Abs(got.Offset+0.35) > got.HalfWidth || got.HalfWidth > 0.15 || got.True != 0 {
		t.Fatalf("%v %+v", ok, got)
	}
	if got.Span.From < 75*minuteMS || got.Span.To > 120*minuteMS {
		t.Errorf("the stretch begins at %d min and ends at %d", got.Span.From/minuteMS, got.Span.To/minuteMS)
	}
	if math.Abs(got.Offset-(got.True-got.Said)) > 1e-12 {
		t.Errorf("%+v does not add up", got)
	}
	// Ten minutes in ice are too short, and a kitchen is none.
	for _, span := range []series.Span{{From: 0, To: 60 * minuteMS}, {From: 100 * minuteMS, To: 110 * minuteMS}} {
		if got, ok := calibration.Ice(c, span, 0.1); ok {
			t.Errorf("%+v in %v", got, span)
		}
	}
	// One that never settles: a bath without ice warms by 6 K an hour.
	if got, ok := calibration.Ice(readings(t, 60, 0.1, func(i int) float64 { return float64(i)/10 - 1 }), whole, 0.1); ok {
		t.Errorf("a warming bath: %+v", got)
	}
}

// Sodium chloride at 4 °C is 75.64 % (75.5164 + 0.1593 − 0.0425 + 0.0018); a logger that reads 79.1 % there is
// off by −3.5 points.
func TestSalt(t *testing.T) {
	tempC := readings(t, 900, 0.1, func(int) float64 { return 4 })
	relHum := readings(t, 900, 0.001, func(i int) float64 {
		if i < 300 {
			return 0.5 + 0.291*(1-math.Exp(-float64(i)/60))
		}
		return 0.791
	})
	got, ok := calibration.Salt(tempC, relHum, whole, calibration.SodiumChloride, 0.001)
	if !ok || math.Abs(got.True-0.75635) > 1e-5 || math.Abs(got.Offset-(0.75635-0.791)) > 1e-3 {
		t.Fatalf("%v %+v", ok, got)
	}
	if got.HalfWidth < 0.006 || got.HalfWidth > 0.01 {
		t.Errorf("half-width %v: the salt alone has 0.6 points", got.HalfWidth)
	}
	if got, ok := calibration.Salt(tempC, relHum, whole, calibration.MagnesiumChloride, 0.001); ok {
		t.Errorf("the wrong salt, 42 points away: %+v", got)
	}
	if got, ok := calibration.Salt(readings(t, 900, 0.1, func(int) float64 { return -5 }), relHum, whole, calibration.SodiumChloride, 0.001); ok {
		t.Errorf("below the salt's range: %+v", got)
	}
}

// Three loggers in one box read 0.3, −0.1 and 0.1 K from the truth, 0.1 in the mean: their offsets to the mean
// are −0.2, 0.2 and 0. One of them came half an hour late, from the kitchen.
func TestTogether(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	off := []float64{0.3, -0.1, 0.1}
	var loggers []series.Curve
	for k, o := range off {
		loggers = append(loggers, readings(t, 24*60, 0.01, func(i int) float64 {
			air := 5 + math.Sin(float64(i)/200)
			if k == 2 && i < 30 {
				air = 20
			}
			return air + o + 0.02*random.NormFloat64()
		}))
	}
	got, ok := calibration.Together(loggers, whole, calibration.TogetherK, []float64{0.01, 0.01, 0.01})
	if !ok {
		t.Fatal("not seen as together")
	}
	for k, want := range []float64{-0.2, 0.2, 0} {
		if math.Abs(got[k].Offset-want) > 0.005 || got[k].HalfWidth > 0.08 {
			t.Errorf("logger %d: %+v, want %v", k+1, got[k], want)
		}
		if got[k].Span.From != 30*minuteMS {
			t.Errorf("logger %d: the stretch begins at minute %d", k+1, got[k].Span.From/minuteMS)
		}
	}
	if _, ok := calibration.Together(loggers[:1], whole, calibration.TogetherK, []float64{0.01}); ok {
		t.Error("one logger is checked against itself")
	}
	if _, ok := calibration.Together(loggers, series.Span{From: 0, To: 50 * minuteMS}, calibration.TogetherK, []float64{0.01, 0.01, 0.01}); ok {
		t.Error("twenty minutes together are too short")
	}
}
