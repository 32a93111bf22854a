package compare

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"reflect"
	"runtime"
	"sync"
	"testing"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// drawn is a barn of 150 days as far as its air goes: the weather both share, a wandering of its own (0.3 K, of which an hour
// keeps 0.95 of the one before), a logger's noise of 0.1 K, and what that logger is off by throughout.
func drawn(rng *rand.Rand, shared []float64, meanC, offK, errK float64) Side {
	c, own := series.Curve{MaxStepMS: 2 * hourMS}, 0.0
	for i, w := range shared {
		own = 0.95*own + 0.3*math.Sqrt(1-0.95*0.95)*rng.NormFloat64()
		c.Readings.At = append(c.Readings.At, beesIn+int64(i)*hourMS)
		c.Readings.Val = append(c.Readings.Val, meanC+w+own+0.1*rng.NormFloat64()+offK)
	}
	whole := series.Span{From: beesIn, To: beesIn + int64(len(shared)-1)*hourMS}
	return Side{Review: analysis.Review{
		Phases: []analysis.Phase{{Name: "deep winter", Span: whole, Parts: []series.Span{whole}}},
		Traces: analysis.Traces{Room: c, RoomErrK: errK},
	}}
}

// weather is air that follows the days and the fronts of a winter.
func weather(rng *rand.Rand) []float64 {
	out, front := make([]float64, 3601), 0.0
	for i := range out {
		front = 0.98*front + 0.2*rng.NormFloat64()
		out[i] = front + 0.5*math.Sin(2*math.Pi*float64(i)/24)
	}
	return out
}

// verdicts counts what is said of the difference in so many pairs of barns; offK draws what a logger is off by.
func verdicts(t *testing.T, times int, differenceK, errK float64, offK func(*rand.Rand) float64) map[Verdict]int {
	t.Helper()
	said := make([]Verdict, times)
	var all sync.WaitGroup
	slots := make(chan struct{}, runtime.NumCPU())
	for i := range times {
		slots <- struct{}{}
		all.Go(func() {
			defer func() { <-slots }()
			rng := rand.New(rand.NewPCG(uint64(i), 17))
			shared := weather(rng)
			a := drawn(rng, shared, 4.5+differenceK, offK(rng), errK)
			p, err := Barns(context.Background(), a, drawn(rng, shared, 4.5, offK(rng), errK), inTurn)
			if err == nil && len(p.Rows) > 0 {
				said[i] = p.Rows[0].Verdict
			}
		})
	}
	all.Wait()
	out := map[Verdict]int{}
	for _, v := range said {
		out[v]++
	}
	return out
}

// Loggers of ±0.3 K, 150 days. Barns that are the same are told apart in fewer than 5 of 100, whatever noise their loggers
// have and whatever they are off by (95 of 100 within ±0.3 K); a true difference of 1.0 K is told in 95 of 100 and more; one
// of 0.2 K is below what two such loggers can tell, √(0.3² + 0.3²) = 0.42 K, and is never told by two that read right.
// SOAK_COVERAGE=full draws a hundred of each, else twelve are drawn, of which one may go astray.
func TestWhatTwoLoggersCanTell(t *testing.T) {
	times, astray := 12, 1
	if os.Getenv("SOAK_COVERAGE") == "full" {
		times, astray = 100, 5
	}
	right := func(*rand.Rand) float64 { return 0 }
	off := func(rng *rand.Rand) float64 { return 0.3 / 1.96 * rng.NormFloat64() }
	for _, c := range []struct {
		name       string
		difference float64
		off        func(*rand.Rand) float64
		want       Verdict
		astray     int
	}{
		{"the same barn", 0, off, CantTell, astray},
		{"1.0 K apart", 1, off, More, astray},
		{"0.2 K apart, loggers that read right", 0.2, right, CantTell, 0},
	} {
		got := verdicts(t, times, c.difference, 0.3, c.off)
		t.Logf("SUMMARY %s: %v of %d", c.name, got, times)
		if got[c.want] < times-c.astray {
			t.Errorf("%s: %v, want %s", c.name, got, c.want)
		}
	}
}

// A pair that is no longer wanted is given up.
func TestCancelled(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	a := barn("A", 30, 0.5, dayAndNight)
	if _, err := Barns(ctx, a, a, inTurn); err == nil {
		t.Error("no error though the context has ended")
	}
}

// Two barns of twenty loggers each, five months at a minute: their means are what is compared, with humidity, dew point,
// four phases with limits, and four stages that switch every half hour. Where an hour keeps little of the one before, blocks
// are short and many.
func BenchmarkPair(b *testing.B) {
	for _, air := range []struct {
		name  string
		keeps float64 // of a minute's wandering in the next
	}{{"air that lasts", 0.999}, {"air that does not", 0.9}} {
		b.Run(air.name, func(b *testing.B) { pairOfLongSides(b, air.keeps) })
	}
}

func pairOfLongSides(b *testing.B, keeps float64) {
	sides := [2]Side{longSide(1, keeps), longSide(2, keeps)}
	spread := func(n int, work func(i int)) {
		var all sync.WaitGroup
		var next sync.Mutex
		at := 0
		for range 2 {
			all.Go(func() {
				for {
					next.Lock()
					i := at
					at++
					next.Unlock()
					if i >= n {
						return
					}
					work(i)
				}
			})
		}
		all.Wait()
	}
	for b.Loop() {
		if _, err := Barns(context.Background(), sides[0], sides[1], spread); err != nil {
			b.Fatal(err)
		}
	}
}

// longSide is one of them.
func longSide(seed uint64, keeps float64) Side {
	const minuteMS, minutes = 60_000, 150 * 24 * 60
	rng := rand.New(rand.NewPCG(seed, 3))
	wander := func(mean, size float64) series.Curve {
		c, v := series.Curve{MaxStepMS: 30 * minuteMS}, 0.0
		for i := range minutes {
			v = keeps*v + size*math.Sqrt(1-keeps*keeps)*rng.NormFloat64()
			c.Readings.At, c.Readings.Val = append(c.Readings.At, beesIn+int64(i)*minuteMS), append(c.Readings.Val, mean+v)
		}
		return c
	}
	low, high, act := 2.0, 6.0, 8.0
	bands := analysis.Bands{TempC: analysis.Band{GoodLow: &low, GoodHigh: &high, WatchHigh: &act, ActHigh: &act}}
	s := Side{Review: analysis.Review{Traces: analysis.Traces{
		Room: wander(4.5, 1.5), RoomRelHum: wander(0.6, 0.1), RoomDewC: wander(-2, 1), Outdoor: wander(-3, 5), RoomErrK: 0.5, RoomRelHumErr: 0.05,
	}}}
	const days = 24 * hourMS
	for i, name := range []string{"filling", "deep winter", "late winter", "emptying"} {
		span := series.Span{From: beesIn + int64([]int{0, 5, 110, 145}[i])*days, To: beesIn + int64([]int{5, 110, 145, 150}[i])*days}
		s.Review.Phases = append(s.Review.Phases, analysis.Phase{Name: name, Span: span, Parts: []series.Span{span}, Bands: bands})
	}
	for i := range 4 {
		w := &analysis.Work{KnownMS: 150 * days}
		for at := beesIn; at < beesIn+150*days; at += hourMS / 2 {
			w.On = append(w.On, series.Span{From: at, To: at + int64(i+1)*5*minuteMS})
		}
		s.Review.Stages = append(s.Review.Stages, analysis.StageRow{Name: []string{"1", "2", "3", "4"}[i], Called: w,
			Setting: analysis.Setting{Span: series.Span{From: beesIn, To: beesIn + 150*days}}})
	}
	return s
}

// The same two sides give the same pair to the last bit, however the work is spread.
func TestTheSamePairHoweverTheWorkIsSpread(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	shared := weather(rng)
	a, b := drawn(rng, shared, 4.5, 0, 0.3), drawn(rng, shared, 5, 0, 0.3)
	first, err := Barns(context.Background(), a, b, inTurn)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Barns(context.Background(), a, b, func(n int, work func(i int)) {
		var all sync.WaitGroup
		for i := range n {
			all.Go(func() { work(n - 1 - i) })
		}
		all.Wait()
	})
	if err != nil || !reflect.DeepEqual(first, again) {
		t.Errorf("%v: %+v, then %+v", err, first.Rows[0], again.Rows[0])
	}
}
