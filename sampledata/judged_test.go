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

// reviewed is a demo's review, made from its files, beside the truth.
type reviewed struct {
	engine.Result
	truth sampledata.Truth
}

var (
	rich = sync.OnceValues(func() (reviewed, error) { return reviewOf(sampledata.Demo) })
	thin = sync.OnceValues(func() (reviewed, error) { return reviewOf(sampledata.Thin) })
)

// judged is a demo made and reviewed once.
func judged(t *testing.T, once func() (reviewed, error)) reviewed {
	t.Helper()
	r, err := once()
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range r.Files {
		if f.Err != nil {
			t.Errorf("%s: %v", f.Name, f.Err)
		}
	}
	if len(r.Barns) != len(r.truth.Barns) {
		t.Fatalf("%d barns reviewed, %d made", len(r.Barns), len(r.truth.Barns))
	}
	return r
}

// reviewOf writes a demo's files to a folder of their own and has them reviewed.
func reviewOf(demo func(context.Context, func(int, int)) ([]sampledata.File, error)) (r reviewed, err error) {
	ctx := context.Background()
	made, err := demo(ctx, nil)
	if err != nil {
		return r, err
	}
	dir, err := os.MkdirTemp("", "demo")
	if err != nil {
		return r, err
	}
	defer os.RemoveAll(dir)
	for _, f := range made {
		if f.Name == "truth.json" {
			err = json.Unmarshal(f.Data, &r.truth)
		} else {
			err = os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o600)
		}
		if err != nil {
			return r, err
		}
	}
	r.Result, err = engine.ReviewFile(ctx, filepath.Join(dir, "winter.toml"), nil)
	return r, err
}

// The program sees the barns only through loggers with offsets, noise, lag and rounding; the simulation
// knows what happened. Every range the review gives must hold the truth.
func TestTheReviewHoldsTheTruth(t *testing.T) {
	r := judged(t, rich)
	for i, want := range r.truth.Barns {
		got := r.Barns[i]
		t.Run(want.Name, func(t *testing.T) {
			within(t, "bees in", 0, hoursAfter(got.BeesIn, want.BeesIn), hoursAfter(got.BeesIn, want.BeesIn))
			within(t, "bees out", 0, hoursAfter(got.BeesOut, want.BeesOut), hoursAfter(got.BeesOut, want.BeesOut))
			air(t, got, want, 0)
			within(t, "hive-days", want.HiveDays, got.HiveDays.Mid-1e-6, got.HiveDays.Mid+1e-6)
			wall := got.Surfaces[0]
			within(t, "dew hours", want.Wall.DewHours, wall.DewHours.Low, wall.DewHours.High)
			within(t, "frost hours", want.Wall.FrostHours, wall.FrostHours.Low, wall.FrostHours.High)
			stages(t, got, want)
			heats(t, got, want)
		})
	}
}

// air holds what the review says of the room's air; hours outside may be more by those that were judged too many.
func air(t *testing.T, got analysis.Review, want sampledata.BarnTruth, moreH float64) {
	t.Helper()
	temp := row(t, got, "air_temperature")
	within(t, "mean temperature", want.MeanC, temp.Mean.Low, temp.Mean.High)
	within(t, "hours above 6", want.HoursAbove6, temp.Bands[0].AboveRange.Low-moreH, temp.Bands[0].AboveRange.High)
	within(t, "hours below 2", want.HoursBelow2, temp.Bands[0].BelowRange.Low-moreH, temp.Bands[0].BelowRange.High)
	hum := row(t, got, "relative_humidity")
	within(t, "mean humidity", want.MeanRelHumPct, hum.Mean.Low, hum.Mean.High)
	within(t, "hours above 75 %", want.HoursRHAbove75, hum.Bands[0].AboveRange.Low-moreH, hum.Bands[0].AboveRange.High)
	within(t, "hours below 40 %", want.HoursRHBelow40, hum.Bands[0].BelowRange.Low-moreH, hum.Bands[0].BelowRange.High)
}

// hoursAfter is how many hours after an instant of the truth another is.
func hoursAfter(atMS int64, truth string) float64 {
	at, err := time.Parse(time.RFC3339, truth)
	if err != nil {
		return math.NaN()
	}
	return time.UnixMilli(atMS).Sub(at).Hours()
}

// stages holds every stage's hours under every setting against what was called for and what ran. The range of the
// hours called for is to hold nine times in ten: one of a barn may miss, by a hundredth.
func stages(t *testing.T, got analysis.Review, want sampledata.BarnTruth) {
	t.Helper()
	if len(got.Stages) != len(want.Stages) {
		t.Fatalf("%d stages under their settings, want %d", len(got.Stages), len(want.Stages))
	}
	missed := 0
	for i, w := range want.Stages {
		s := got.Stages[i]
		if s.Name != w.Name || !s.Setting.AlwaysOn && (s.Setting.OnC != w.OnC || s.Setting.OffC != w.OffC) {
			t.Errorf("row %d is %s at %g and %g, want %s at %g and %g", i, s.Name, s.Setting.OnC, s.Setting.OffC, w.Name, w.OnC, w.OffC)
		}
		low, high := s.Called.Hours.Low-0.01, s.Called.Hours.High+0.01
		if w.CalledHours < low || w.CalledHours > high {
			missed++
			low, high = 0.99*low, 1.01*high
		}
		within(t, s.Name+" called for", w.CalledHours, low, high)
		if s.Ran != nil {
			within(t, s.Name+" ran", w.RanHours, s.Ran.Hours.Mid-sampled(w.RanStarts), s.Ran.Hours.Mid+sampled(w.RanStarts))
		}
	}
	if missed > 1 {
		t.Errorf("%d ranges of hours called for miss the truth", missed)
	}
}

// heats holds every heat source against the truth, and for how long it fought the fans.
func heats(t *testing.T, got analysis.Review, want sampledata.BarnTruth) {
	t.Helper()
	if len(got.Heats) != len(want.Heats) {
		t.Fatalf("%d heat sources, want %d", len(got.Heats), len(want.Heats))
	}
	for i, w := range want.Heats {
		h := got.Heats[i]
		slack := sampled(want.Stages[1].RanStarts + want.Stages[2].RanStarts)
		within(t, h.Source.Name+" ran", w.RanHours, h.Ran.Hours.Mid-slack, h.Ran.Hours.Mid+slack)
		within(t, h.Source.Name+" fought fans", w.OverlapHours, h.Overlap.Mid-slack, h.Overlap.Mid+slack)
	}
}

// sampled is by how many hours a record taken every two minutes may miss what ran: it sees each switching up to one
// interval late: uniform, so 0.41 interval of standard deviation a run; four of these for all runs together, and an
// interval at the ends.
func sampled(starts int) float64 {
	const intervalH = 2.0 / 60
	return intervalH * (1 + 4*math.Sqrt(float64(starts)/6))
}

// One logger and no records: it was hung the day before the bees came, so that their coming in is read off the warmth they
// brought, and their going out off its being taken down, as the truth has it; the air is told within the logger's error. What
// it can't tell is unknown and never 0.
func TestTheThinWinterIsToldInFull(t *testing.T) {
	r := judged(t, thin)
	want, got := r.truth.Barns[0], r.Barns[0]
	house := want.Loggers[0].InHouse
	down := hoursAfter(got.BeesOut, house[1].Start)
	within(t, "taken down", 0, down-1, down+1)
	early, late := -hoursAfter(got.BeesIn, want.BeesIn), hoursAfter(got.BeesOut, want.BeesOut)
	if early < 0 || late < 0 || early+late > 12 {
		t.Errorf("the bees' time begins %.1f h early and ends %.1f h late", early, late)
	}
	air(t, got, want, early+late)
	if len(got.Stages) > 0 || len(got.Surfaces) > 0 || got.HiveDays.OK || got.Verdict.Fans.State != analysis.Unknown {
		t.Errorf("stages %v, surfaces %v, hive-days %v, fans %v", got.Stages, got.Surfaces, got.HiveDays, got.Verdict.Fans)
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
