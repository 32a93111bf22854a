package sampledata_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/app/engine"
	"thawbook/sampledata"
)

// judged is the demo winter's review, made from its files, beside the truth; both are made once.
func judged(t *testing.T) (engine.Result, sampledata.Truth) {
	t.Helper()
	r, truth, err := review()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Files {
		if f.Err != nil {
			t.Errorf("%s: %v", f.Name, f.Err)
		}
	}
	if len(r.Barns) != len(truth.Barns) {
		t.Fatalf("%d barns reviewed, %d made", len(r.Barns), len(truth.Barns))
	}
	return r, truth
}

// review writes the demo's files to a folder of their own and has them reviewed.
func review() (r engine.Result, truth sampledata.Truth, err error) {
	once.Do(func() { result, truths, fault = makeReview() })
	return result, truths, fault
}

var (
	once   sync.Once
	result engine.Result
	truths sampledata.Truth
	fault  error
)

func makeReview() (r engine.Result, truth sampledata.Truth, err error) {
	ctx := context.Background()
	made, err := sampledata.Demo(ctx, nil)
	if err != nil {
		return r, truth, err
	}
	dir, err := os.MkdirTemp("", "demo")
	if err != nil {
		return r, truth, err
	}
	defer os.RemoveAll(dir)
	for _, f := range made {
		if f.Name == "truth.json" {
			err = json.Unmarshal(f.Data, &truth)
		} else {
			err = os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o600)
		}
		if err != nil {
			return r, truth, err
		}
	}
	r, err = engine.ReviewFile(ctx, filepath.Join(dir, "winter.toml"), nil)
	return r, truth, err
}

// The program sees the barns only through loggers with offsets, noise, lag and rounding; the simulation
// knows what happened. Every range the review gives must hold the truth.
func TestTheReviewHoldsTheTruth(t *testing.T) {
	r, truth := judged(t)
	for i, want := range truth.Barns {
		got := r.Barns[i]
		t.Run(want.Name, func(t *testing.T) {
			air := row(t, got, "air_temperature")
			within(t, "mean temperature", want.MeanC, air.Mean.Low, air.Mean.High)
			within(t, "hours above 6", want.HoursAbove6, air.Bands[0].AboveRange.Low, air.Bands[0].AboveRange.High)
			within(t, "hours below 2", want.HoursBelow2, air.Bands[0].BelowRange.Low, air.Bands[0].BelowRange.High)
			hum := row(t, got, "relative_humidity")
			within(t, "mean humidity", want.MeanRelHumPct, hum.Mean.Low, hum.Mean.High)
			within(t, "hours above 75 %", want.HoursRHAbove75, hum.Bands[0].AboveRange.Low, hum.Bands[0].AboveRange.High)
			within(t, "hive-days", want.HiveDays, got.HiveDays.Mid-1e-6, got.HiveDays.Mid+1e-6)
			wall := got.Surfaces[0]
			within(t, "dew hours", want.Wall.DewHours, wall.DewHours.Low, wall.DewHours.High)
			within(t, "frost hours", want.Wall.FrostHours, wall.FrostHours.Low, wall.FrostHours.High)
			stages(t, got, want)
		})
	}
}

// stages holds every stage's hours against what was called for and what ran.
func stages(t *testing.T, got analysis.Review, want sampledata.BarnTruth) {
	t.Helper()
	for i, w := range want.Stages {
		s := got.Stages[i]
		within(t, s.Name+" called for", w.CalledHours, s.Called.Hours.Low-0.01, s.Called.Hours.High+0.01)
		if s.Ran == nil {
			continue
		}
		// A sampled record sees each switching up to one interval late: uniform, so 0.41 interval of standard
		// deviation a run; four of these for all runs together, and an interval at the ends.
		const intervalH = 2.0 / 60
		slack := intervalH * (1 + 4*math.Sqrt(float64(w.RanStarts)/6))
		within(t, s.Name+" ran", w.RanHours, s.Ran.Hours.Mid-slack, s.Ran.Hours.Mid+slack)
	}
}

// A third stage that was called for and did not run must show: that is what two records side by side are for.
func TestCalledAndRanAreToldApart(t *testing.T) {
	r, truth := judged(t)
	for i, want := range truth.Barns {
		for k, w := range want.Stages {
			if w.FirstParted == nil || w.CalledHours-w.RanHours < 10 {
				continue
			}
			s := r.Barns[i].Stages[k]
			if s.Ran == nil {
				t.Errorf("%s, %s: the record is not seen", want.Name, w.Name)
				continue
			}
			if s.Called.Hours.High < w.CalledHours-0.01 || s.Ran.Hours.Mid > w.RanHours+5 {
				t.Errorf("%s, %s: called %v, ran %v h; truly %v and %v", want.Name, w.Name, s.Called.Hours, s.Ran.Hours.Mid, w.CalledHours, w.RanHours)
			}
			return
		}
	}
	t.Error("the demo has no stage that was called for and did not run")
}

// The first date they part is within a day of the first time the fan did not answer for half an hour and more; shorter
// silences before it are in the truth's first instant, so the review may only be later, and not by much.
func TestTheFirstDateTheyPart(t *testing.T) {
	r, truth := judged(t)
	seen := 0
	for i, want := range truth.Barns {
		for k, w := range want.Stages {
			a := r.Barns[i].Stages[k].Agreement
			if a == nil {
				continue
			}
			if w.FirstParted == nil {
				if a.Parted != nil {
					t.Errorf("%s, %s: parted at %s, truly never", want.Name, w.Name, time.UnixMilli(*a.Parted).UTC())
				}
				continue
			}
			seen++
			at, err := time.Parse(time.RFC3339, *w.FirstParted)
			if err != nil {
				t.Fatal(err)
			}
			if a.Parted == nil || a.PartedRan || time.UnixMilli(*a.Parted).Sub(at).Abs() > 24*time.Hour {
				t.Errorf("%s, %s: parted at %+v, truly at %s", want.Name, w.Name, a, at)
			}
		}
	}
	if seen == 0 {
		t.Error("the demo has no stage whose call and record part")
	}
}

// The clocks of the demo's loggers differ (UTC, local with and without summer time, °F and °C); on one clock
// the two room loggers of a barn agree within their errors at every hour.
func TestLoggersOfABarnAgreeOnOneClock(t *testing.T) {
	r, _ := judged(t)
	for _, in := range r.Inputs {
		var room []analysis.Logger
		for _, l := range in.Loggers {
			if l.Place == "room" {
				room = append(room, l)
			}
		}
		if len(room) != 2 {
			t.Fatalf("%s: %d room loggers, want 2", in.Name, len(room))
		}
		worst, n := 0.0, 0
		for at := *in.BeesIn; at < *in.BeesOut; at += time.Hour.Milliseconds() {
			a, okA := room[0].TempC.At(at)
			b, okB := room[1].TempC.At(at)
			if okA && okB {
				worst, n = math.Max(worst, math.Abs(a-b)), n+1
			}
		}
		if n < 3000 || worst > 2 {
			t.Errorf("%s: over %d hours the loggers differ by up to %.2f K", in.Name, n, worst)
		}
	}
}

func row(t *testing.T, r analysis.Review, quantity string) analysis.QuantityRow {
	t.Helper()
	for _, q := range r.Quantities {
		if q.Quantity == quantity && q.Place == "room" && q.Logger == "" && q.Phase == "" {
			return q
		}
	}
	t.Fatalf("%s: no %s of the room", r.Barn, quantity)
	return analysis.QuantityRow{}
}

func within(t *testing.T, what string, truth, low, high float64) {
	t.Helper()
	if !(low <= truth && truth <= high) {
		t.Errorf("%s: truth %.3f outside %.3f to %.3f", what, truth, low, high)
	} else {
		t.Logf("%s: truth %.3f inside %.3f to %.3f", what, truth, low, high)
	}
}
