package stats

import (
	"bufio"
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// inTurn does one piece after another.
func inTurn(n int, work func(i int)) {
	for i := range n {
		work(i)
	}
}

// together does all pieces at once.
func together(n int, work func(i int)) {
	var all sync.WaitGroup
	for i := range n {
		all.Go(func() { work(i) })
	}
	all.Wait()
}

// ofSeries are the cells of a series without gaps.
func ofSeries(x []float64) Cells {
	ones := make([]float64, len(x))
	for i := range ones {
		ones[i] = 1
	}
	return Cells{x, ones}
}

func errorOf(t *testing.T, x []float64, b Blocks) float64 {
	t.Helper()
	out, err := StandardErrors(context.Background(), []Cells{ofSeries(x)}, b, 1, inTurn)
	if err != nil {
		t.Fatal(err)
	}
	return out[0]
}

// shared opens a file of the folder of open data beside the project; without it the test is skipped.
func shared(t *testing.T, name string) []float64 {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "..", "shared", "data", "oracles", name))
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal(err)
		}
		t.Skip("no folder of open data beside the project")
	}
	defer f.Close()
	var out []float64
	for lines := bufio.NewScanner(f); lines.Scan(); {
		v, err := strconv.ParseFloat(lines.Text(), 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// Attic air less outdoor air of a Finnish house, 14,257 hours (open data, CC BY 4.0). Moving blocks that go round: the
// standard errors R's boot::tsboot gave at 2,000 rounds (sim "fixed", endcorr). Stationary blocks: the closed form of
// Politis & Romano (1994), lemma 1, worked from the series' own autocovariances.
func TestStandardErrorsOfTwoSeries(t *testing.T) {
	x := shared(t, "diff_attic_minus_outdoor.txt")
	near(t, "mean", stat.Mean(x, nil), 2.485299, 5e-7)
	near(t, "standard deviation", stat.StdDev(x, nil), 3.947412, 5e-7)
	near(t, "lag 1", lag1(x), 0.9593, 5e-5)
	for _, c := range []struct{ length, want float64 }{{24, 0.0911}, {72, 0.1400}, {168, 0.2035}} {
		near(t, fmt.Sprint("moving blocks of ", c.length), errorOf(t, x, Blocks{c.length, true}), c.want, 0.05*c.want)
	}
	for _, length := range []float64{24, 72, 168} {
		want := stationaryError(x, length)
		near(t, fmt.Sprint("stationary blocks of ", length), errorOf(t, x, Blocks{Length: length}), want, 0.05*want)
	}
}

// stationaryError is the standard error of the mean that the stationary bootstrap tends to with ever more rounds.
func stationaryError(x []float64, length float64) float64 {
	n, keep := float64(len(x)), 1-1/length
	cov := Autocovariances(x, min(len(x)-1, int(40*length)))
	sum := cov[0]
	for k := 1; k < len(cov); k++ {
		lag := float64(k)
		sum += 2 * cov[k] * ((1-lag/n)*math.Pow(keep, lag) + lag/n*math.Pow(keep, n-lag))
	}
	return math.Sqrt(sum / n)
}

// Values that have nothing to do with one another: the standard error is the standard deviation over √n, and they are
// as many as they are.
func TestStandardErrorOfNoise(t *testing.T) {
	x := noise(4000, 7)
	want := stat.StdDev(x, nil) / math.Sqrt(4000)
	got := errorOf(t, x, Blocks{Length: 1})
	near(t, "error", got, want, 0.05*want)
	near(t, "effective number", ofSeries(x).Effective(got), 4000, 400)
}

// Of an autoregressive series of 0.9 there are n (1 − 0.9)/(1 + 0.9) (Bayley & Hammersley 1946): of 200,000 hours 10,526.
func TestEffectiveNumber(t *testing.T) {
	x := autoregressive(noise(200_000, 9), 0.9)
	length, _ := BlockLengths(x)
	near(t, "effective number", ofSeries(x).Effective(errorOf(t, x, Blocks{Length: length})), 10526, 0.15*10526)
}

// A gap neither adds nor weighs: with every other step unknown the quantity is that of the known ones, and an error of
// half as many.
func TestGapsAreStepsWithoutWeight(t *testing.T) {
	x := noise(4000, 11)
	gappy := ofSeries(slices.Clone(x))
	known := []float64{}
	for i := range x {
		if i%2 == 1 {
			gappy.Sum[i], gappy.Weight[i] = 0, 0
			continue
		}
		known = append(known, x[i])
	}
	near(t, "quantity", gappy.Ratio(), stat.Mean(known, nil), 1e-12)
	out, err := StandardErrors(context.Background(), []Cells{gappy}, Blocks{Length: 1}, 3, inTurn)
	want := stat.StdDev(known, nil) / math.Sqrt(2000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "error", out[0], want, 0.06*want)
	near(t, "effective number", gappy.Effective(out[0]), 2000, 240)
	if d := gappy.Deviations(); d[1] != 0 || math.Abs(d[0]-(x[0]-gappy.Ratio())) > 1e-12 {
		t.Errorf("deviations %v", d[:2])
	}
}

// The draw is one for all quantities, so twice a quantity has exactly twice its error; and it is the same to the last
// bit however the work is spread. What weighs nowhere has no error.
func TestTheSameDrawForAll(t *testing.T) {
	x := autoregressive(noise(1000, 13), 0.8)
	twice := make([]float64, len(x))
	for i, v := range x {
		twice[i] = 2 * v
	}
	nothing := Cells{make([]float64, len(x)), make([]float64, len(x))}
	all := []Cells{ofSeries(x), ofSeries(twice), nothing}
	first, err := StandardErrors(context.Background(), all, Blocks{Length: 20}, 5, inTurn)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "twice", first[1], 2*first[0], 1e-12)
	if !math.IsNaN(first[2]) {
		t.Errorf("an error of nothing: %g", first[2])
	}
	again, _ := StandardErrors(context.Background(), all, Blocks{Length: 20}, 5, together)
	if first[0] != again[0] || first[1] != again[1] {
		t.Errorf("%v in turn, %v together", first, again)
	}
	other, _ := StandardErrors(context.Background(), all, Blocks{Length: 20}, 6, inTurn)
	if first[0] == other[0] {
		t.Error("another seed, the same draw")
	}
}

func TestCancelled(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := StandardErrors(ctx, []Cells{ofSeries(noise(100, 1))}, Blocks{Length: 5}, 1, inTurn); err == nil {
		t.Error("no error though the context has ended")
	}
}

// Of series whose true mean is 0 the 95 % interval holds it in 92 to 97 of 100 where the hours are many for how long they
// hang together. With few for it (0.95 kept over 1,000 hours: 26 that count by Bayley & Hammersley) it may not; then they
// are known to be few. SOAK_COVERAGE=full draws 1,000 of each.
func TestCoverage(t *testing.T) {
	times, slack := 40, 0.07 // twice √(0.95 × 0.05 / 40)
	if os.Getenv("SOAK_COVERAGE") == "full" {
		times, slack = 1000, 0
	}
	for _, c := range []struct {
		kept   float64
		n      int
		enough bool
	}{{0.5, 3600, true}, {0.95, 10000, true}, {0.95, 1000, false}} {
		held, few := coverage(t, c.kept, c.n, times)
		t.Logf("SUMMARY coverage: %g kept over %d hours: held %.1f of 100, called few in %.1f of 100", c.kept, c.n, 100*held, 100*few)
		if c.enough && (held < 0.92-slack || held > 0.97+slack || few > 0) || !c.enough && few < 0.9 {
			t.Errorf("%g kept over %d hours: held in %g, called few in %g", c.kept, c.n, held, few)
		}
	}
}

// coverage is in what share of series the interval holds the true mean, and in what share their hours are called few.
func coverage(t *testing.T, kept float64, n, times int) (held, few float64) {
	t.Helper()
	in, short := make([]bool, times), make([]bool, times)
	var all sync.WaitGroup
	slots := make(chan struct{}, runtime.NumCPU())
	for i := range times {
		slots <- struct{}{}
		all.Go(func() {
			defer func() { <-slots }()
			x := autoregressive(noise(n+500, uint64(1000+i)), kept)[500:]
			length, _ := BlockLengths(x)
			out, _ := StandardErrors(context.Background(), []Cells{ofSeries(x)}, Blocks{Length: length}, uint64(i), inTurn)
			in[i] = math.Abs(stat.Mean(x, nil)) <= HalfWidth(out[0], float64(n), length)
			short[i] = ofSeries(x).Effective(out[0]) < FewEffective
		})
	}
	all.Wait()
	for i := range in {
		if in[i] {
			held += 1 / float64(times)
		}
		if short[i] {
			few += 1 / float64(times)
		}
	}
	return held, few
}
