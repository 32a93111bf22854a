package desk

import (
	"math"
	"strings"
	"testing"
	"time"
)

// Three loggers hung side by side for two days from 13 November 2024 on, and apart for the weeks after. They read 0.3 K
// above, 0.1 K below and 0.1 K above the truth: 0.2 K above, 0.2 K below and nothing off against their mean.
func TestLoggersSideBySideAreSetRightByAPress(t *testing.T) {
	logger := func(offset, pace float64) func(int, float64) (time.Duration, float64) {
		return func(k int, air float64) (time.Duration, float64) {
			if k < 2*144 {
				return 0, air + offset
			}
			return 0, air + offset + 1.2*math.Sin(float64(k-2*144)/pace) // its own place
		}
	}
	k := keeper(t)
	b := added(t, k, Book{}, together(t, t.TempDir(), map[string]func(int, float64) (time.Duration, float64){
		"a.csv": logger(0.3, 17), "b.csv": logger(-0.1, 23), "c.csv": logger(0.1, 29),
	})...)
	b = closely(t, k, b)
	page := func(name string) FileLogger { return pageOf(t, b, name).Loggers[0] }
	d := page("a.csv").Doubts
	if len(d) != 1 || d[0].Mark != MarkNone || !strings.HasPrefix(d[0].Text, "From 13 November 00:00 to 15 November 0") || !strings.Contains(d[0].Text, "to b and c more closely") {
		t.Fatalf("%+v", d)
	}
	for _, want := range []string{"a +0.2 °C ± 0.1 °C", "b −0.2 °C ± 0.1 °C", "c 0.0 °C ± 0.1 °C"} {
		if !strings.Contains(strings.ReplaceAll(plain(d[0].Text), "\u00a0", " "), want) {
			t.Errorf("%q lacks %q", d[0].Text, want)
		}
	}
	if b.Files().Files[0].Mark != MarkGood {
		t.Error("a suggestion is no fault of the file")
	}
	first := func(i int) float64 { return b.Result.Inputs[0].Loggers[i].TempC.Val[0] }
	before := [3]float64{first(0), first(1), first(2)}
	b = closely(t, k, edited(t, k, b, d[0].Take))
	for i, want := range []float64{-0.2, 0.2, 0} {
		if got := first(i) - before[i]; math.Abs(got-want) > 0.03 {
			t.Errorf("logger %d is moved by %v, want %v", i, got, want)
		}
		if e := b.Result.Inputs[0].Loggers[i].TempErrK; e != 0.3 {
			t.Errorf("logger %d is off by up to %v", i, e)
		}
	}
	p := page("b.csv")
	if len(p.Doubts) != 0 || len(p.Left) != 1 || !strings.HasPrefix(p.Left[0].Text, "Checked beside other loggers on 13 November 2024: it reads 0.2") {
		t.Fatalf("%+v", p)
	}
	b = closely(t, k, edited(t, k, b, p.Left[0].Undo))
	for i := range before {
		if first(i) != before[i] {
			t.Errorf("taken back, logger %d reads %v, not %v", i, first(i), before[i])
		}
	}
	b = closely(t, k, edited(t, k, b, page("c.csv").Doubts[0].Keep))
	for _, name := range []string{"a.csv", "b.csv", "c.csv"} {
		if d := page(name).Doubts; len(d) != 0 {
			t.Errorf("asked again in %s: %+v", name, d)
		}
	}
	if left := page("c.csv").Left; len(left) != 1 || !strings.HasPrefix(left[0].Text, "It did not hang beside others 13") {
		t.Errorf("%+v", left)
	}
}
