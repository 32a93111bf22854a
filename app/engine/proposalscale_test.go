package engine

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/app/winter"
)

// drawer is a reviewed winter of many loggers in one room, with so many readings each: one air, and every logger's own
// distance from it and noise.
func drawer(t testing.TB, loggers, readings int, every int64) Result {
	t.Helper()
	r := Result{Winter: winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "Alder"}}}, Inputs: []analysis.Input{{}}}
	walk := rand.New(rand.NewPCG(1, 1))
	air, push := make([]float64, readings), 0.0
	for i := 1; i < readings; i++ {
		push = 0.9*push + 0.02*walk.NormFloat64()
		air[i] = 0.999*air[i-1] + push
	}
	for k := range loggers {
		random := rand.New(rand.NewPCG(2, uint64(k)))
		at, tempC, relHum := make([]int64, readings), make([]float64, readings), make([]float64, readings)
		own := 0.3 * random.NormFloat64()
		for i := range at {
			at[i] = int64(i) * every
			tempC[i] = math.Round(10*(4+air[i]+own+0.05*random.NormFloat64())) / 10
			relHum[i] = math.Round(1000*(0.7-0.02*air[i]+0.005*random.NormFloat64())) / 1000
		}
		line := func(val []float64) series.Curve {
			return series.Curve{Readings: series.Readings{At: at, Val: val}, MaxStepMS: 30 * minuteMS}
		}
		name := fmt.Sprint("logger ", k+1)
		r.Winter.Barns[0].Loggers = append(r.Winter.Barns[0].Loggers, winter.Logger{Name: name, Place: "room"})
		r.Inputs[0].Loggers = append(r.Inputs[0].Loggers, analysis.Logger{Name: name, Place: "room", TempC: line(tempC), RelHum: line(relHum), TempStepK: 0.1})
	}
	return r
}

// Wherever the work is when the keeper turns to something else, it is given up; how late is told with -v.
func TestALookIsGivenUp(t *testing.T) {
	r := drawer(t, 40, 60*24*60, minuteMS)
	for _, after := range []time.Duration{0, 50 * time.Millisecond, 150 * time.Millisecond, 300 * time.Millisecond} {
		ctx, cancel := context.WithCancel(context.Background())
		over := make(chan error)
		go func() {
			_, _, err := Proposals(ctx, r)
			over <- err
		}()
		time.Sleep(after)
		began := time.Now()
		cancel()
		err := <-over
		t.Logf("given up %v after %v: %v", time.Since(began), after, err)
		if err != nil && !errors.Is(err, context.Canceled) || err == nil && after == 0 {
			t.Errorf("given up after %v: %v", after, err)
		}
	}
}

func BenchmarkProposals(b *testing.B) {
	for _, c := range []struct {
		loggers, readings int
		every             int64
	}{{20, 216_000, minuteMS}, {500, 14_400, 15 * minuteMS}, {500, 3600, series.HourMS}} {
		r := drawer(b, c.loggers, c.readings, c.every)
		b.Run(fmt.Sprintf("%dx%d", c.loggers, c.readings), func(b *testing.B) {
			for b.Loop() {
				if _, _, err := Proposals(context.Background(), r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
