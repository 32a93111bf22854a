package analysis

import (
	"math"
	"testing"
	"time"

	"thawbook/analysis/series"
)

const hourMS = series.HourMS

// line is a curve of values at equal steps from an instant, in hours; NaN leaves a reading out. Steps of up
// to two are joined.
func line(fromH, stepH float64, vals ...float64) series.Curve {
	c := series.Curve{MaxStepMS: int64(2 * stepH * hourMS)}
	for i, v := range vals {
		if !math.IsNaN(v) {
			c.Readings.At = append(c.Readings.At, int64((fromH+float64(i)*stepH)*hourMS))
			c.Val = append(c.Val, v)
		}
	}
	return c
}

// through is a curve of f at equal steps over a span of hours.
func through(fromH, toH, stepH float64, f func(h float64) float64) series.Curve {
	var vals []float64
	for h := fromH; h <= toH+1e-9; h += stepH {
		vals = append(vals, f(h))
	}
	return line(fromH, stepH, vals...)
}

func constant(v float64) func(float64) float64 { return func(float64) float64 { return v } }

func span(fromH, toH float64) series.Span {
	return series.Span{From: int64(fromH * hourMS), To: int64(toH * hourMS)}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tolerance)
	}
}

func instant(t *testing.T, s string) int64 {
	t.Helper()
	at, err := time.Parse("2006-01-02 15:04", s)
	if err != nil {
		t.Fatal(err)
	}
	return at.UnixMilli()
}

// one is an input with one room logger over a span, in UTC.
func one(temp, relHum series.Curve, s series.Span) Input {
	return Input{
		Name: "Alder", Zone: time.UTC, PressurePa: 101325, BeesIn: &s.From, BeesOut: &s.To,
		Loggers: []Logger{{Name: "mid", Place: "room", TempC: temp, RelHum: relHum, TempErrK: 0.5, RelHumErr: 0.05, TempStepK: 0.1}},
	}
}

func ptr(v float64) *float64 { return &v }
