package engine

import (
	"context"
	"math"
	"testing"

	"thawbook/analysis"
	"thawbook/app/winter"
)

// Two barns swing with different periods, outdoors with a third. A logger that swings as the second barn does, three
// degrees colder throughout, hung there, and so did one that was hung five degrees warmer half way; one that swings as
// outdoors does hung outside. Of one that swings as none of them, of one that was read for two days only, and with a single
// barn nothing can be told.
func TestALoggerResemblesItsBarn(t *testing.T) {
	swing := func(mean, hours float64) func(int) float64 {
		return func(i int) float64 { return mean + math.Sin(2*math.Pi*float64(i)/hours) }
	}
	log := func(n int, tempC func(int) float64) string { return hourly(t, "2026-11-12 00:00", n, tempC, flat(60)) }
	dir := folder(t, map[string]string{
		"alder.csv": log(480, swing(4, 31)), "rowan.csv": log(480, swing(5, 47)), "out.csv": log(480, swing(-4, 24)),
		"1.csv": log(480, swing(2, 47)), "2.csv": log(480, swing(-3, 24)), "3.csv": log(480, swing(4, 11)), "4.csv": log(48, swing(5, 47)),
		"5.csv": log(480, func(i int) float64 { return swing(2, 47)(i) + 5*float64(i/240) }),
	})
	barn := func(name string) winter.Barn {
		return winter.Barn{Name: name, Loggers: []winter.Logger{{Name: name, Files: []string{name + ".csv"}, Place: "room"}}}
	}
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{barn("alder"), barn("rowan")}, Outdoor: []winter.Logger{{Name: "out", Files: []string{"out.csv"}, Place: "outdoor"}}}
	review := func(w winter.Winter) Result {
		r, err := Review(context.Background(), w, Folder(dir), nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	curve := func(name string) analysis.Logger {
		return review(winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Loggers: []winter.Logger{{Name: name, Files: []string{name + ".csv"}, Place: "room"}}}}}).Inputs[0].Loggers[0]
	}
	r := review(w)
	for name, want := range map[string]Likeness{"1": {1, "rowan"}, "2": {winter.OutdoorList, "out"}, "5": {1, "rowan"}} {
		if got, ok := Resembling(r, curve(name)); !ok || got != want {
			t.Errorf("%s: %+v, %v", name, got, ok)
		}
	}
	w.Barns, w.Outdoor = w.Barns[:1], nil
	alone := review(w)
	for name, r := range map[string]Result{"3": r, "4": r, "1": alone} {
		if got, ok := Resembling(r, curve(name)); ok {
			t.Errorf("%s: %+v", name, got)
		}
	}
}
