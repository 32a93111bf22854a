package calibration_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"thawbook/analysis/calibration"
	"thawbook/analysis/series"
)

// shelf is loggers with known offsets, a reading every ten minutes: for two days they lie on one shelf, then each hangs
// for ten days where the air goes its own way by some K. One of them, where it is told to, hung elsewhere from the start.
func shelf(t *testing.T, offsets []float64, ownK float64, elsewhere int) []series.Curve {
	t.Helper()
	var out []series.Curve
	for k, off := range offsets {
		random := rand.New(rand.NewPCG(7, uint64(k)))
		own := 0.0
		out = append(out, everyTen(t, 12*144, func(i int) float64 {
			air := 8 + 3*math.Sin(float64(i)/60)
			if own = 0.95*own + ownK*random.NormFloat64(); i < 2*144 && k != elsewhere {
				return air + off + 0.02*random.NormFloat64()
			}
			return air + off + own + 0.02*random.NormFloat64()
		}))
	}
	return out
}

// everyTen is a curve with a reading every ten minutes, printed in hundredths.
func everyTen(t *testing.T, n int, f func(i int) float64) series.Curve {
	t.Helper()
	at, val := make([]int64, n), make([]float64, n)
	for i := range n {
		at[i], val[i] = int64(i)*10*minuteMS, math.Round(100*f(i))/100
	}
	r, err := series.NewReadings(at, val)
	if err != nil {
		t.Fatal(err)
	}
	return series.Curve{Readings: r, MaxStepMS: 30 * minuteMS}
}

const dayMS = 24 * 60 * minuteMS

// On the shelf are the first two days, and offsets of 0.3, −0.1 and 0.1 K lie −0.2, 0.2 and 0 K from their mean.
func TestLoggersOnAShelfAreFound(t *testing.T) {
	where, rest := series.Span{From: 0, To: 4 * dayMS}, series.Span{From: 4 * dayMS, To: 12 * dayMS}
	for _, c := range []struct {
		elsewhere int
		members   []int
		offsets   []float64
	}{{-1, []int{0, 1, 2}, []float64{-0.2, 0.2, 0}}, {1, []int{0, 2}, []float64{-0.1, 0.1}}} {
		all := shelf(t, []float64{0.3, -0.1, 0.1}, 0.3, c.elsewhere)
		members, span, ok := calibration.Beside(all, where, rest)
		if !ok || !slices.Equal(members, c.members) {
			t.Fatalf("found %v %v in %v", ok, members, span)
		}
		if off := span.To - 2*dayMS; max(off, -off) > 3*series.HourMS || span.From > 3*series.HourMS {
			t.Errorf("on the shelf from hour %d to %d, want 0 to 48", span.From/series.HourMS, span.To/series.HourMS)
		}
		var own []series.Curve
		for _, m := range members {
			own = append(own, all[m])
		}
		checks, ok := calibration.Together(own, span, calibration.TogetherK, []float64{0.01, 0.01, 0.01}[:len(own)])
		if !ok {
			t.Fatal("not together")
		}
		for k, want := range c.offsets {
			if math.Abs(checks[k].Offset-want) > 0.03 {
				t.Errorf("logger %d: %v, want %v", members[k], checks[k].Offset, want)
			}
		}
	}
}

// Loggers that never hung apart, or never together, say nothing.
func TestNoShelfIsInvented(t *testing.T) {
	where, rest := series.Span{From: 0, To: 4 * dayMS}, series.Span{From: 4 * dayMS, To: 12 * dayMS}
	if members, span, ok := calibration.Beside(shelf(t, []float64{0.3, -0.1, 0.1}, 0, -1), where, rest); ok {
		t.Errorf("a calm room all the while: %v in %v", members, span)
	}
	apart := shelf(t, []float64{0, 0.1, 0.2}, 0.3, -1)
	if members, span, ok := calibration.Beside(apart, series.Span{From: 3 * dayMS, To: 6 * dayMS}, series.Span{From: 6 * dayMS, To: 12 * dayMS}); ok {
		t.Errorf("apart all the while: %v in %v", members, span)
	}
	if _, _, ok := calibration.Beside(apart[:1], where, rest); ok {
		t.Error("one alone")
	}
}
