package sampledata

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"

	"thawbook/app/winter"
	"thawbook/app/winter/plan"
)

var (
	once     = sync.OnceValues(func() ([]File, error) { return Demo(context.Background(), nil) })
	thinOnce = sync.OnceValues(func() ([]File, error) { return Thin(context.Background(), nil) })
)

// demo is the demo made once for all tests, by name, with its truth.
func demo(t *testing.T) (map[string][]byte, Truth) { return made(t, once) }

// thin is the same of the thin one.
func thin(t *testing.T) (map[string][]byte, Truth) { return made(t, thinOnce) }

func made(t *testing.T, once func() ([]File, error)) (map[string][]byte, Truth) {
	t.Helper()
	files, err := once()
	if err != nil {
		t.Fatal(err)
	}
	byName := map[string][]byte{}
	for _, f := range files {
		byName[f.Name] = f.Data
	}
	var truth Truth
	if err := json.Unmarshal(byName["truth.json"], &truth); err != nil {
		t.Fatal(err)
	}
	return byName, truth
}

func TestDemosAreTheSameEveryTime(t *testing.T) {
	isTheSame(t, once, Demo)
	isTheSame(t, thinOnce, Thin)
}

func isTheSame(t *testing.T, once func() ([]File, error), again func(context.Context, func(int, int)) ([]File, error)) {
	first, err := once()
	if err != nil {
		t.Fatal(err)
	}
	last, total := 0, 0
	second, err := again(context.Background(), func(done, of int) {
		if done != last+1 || done > of {
			t.Fatalf("progress went from %d to %d of %d", last, done, of)
		}
		last, total = done, of
	})
	if err != nil {
		t.Fatal(err)
	}
	if last != total || total == 0 {
		t.Errorf("progress ended at %d of %d", last, total)
	}
	if len(first) != len(second) {
		t.Fatalf("%d files, then %d", len(first), len(second))
	}
	for i := range first {
		if first[i].Name != second[i].Name || !bytes.Equal(first[i].Data, second[i].Data) {
			t.Errorf("%s differs from run to run", first[i].Name)
		}
	}
}

func TestDemoStopsWhenAsked(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	calls := 0
	files, err := Demo(ctx, func(int, int) {
		calls++
		cancel()
	})
	if !errors.Is(err, context.Canceled) || files != nil {
		t.Errorf("got %d files and %v, want none and context.Canceled", len(files), err)
	}
	if calls != 1 {
		t.Errorf("went on for %d days after it was asked to stop", calls)
	}
}

// The demos must stay small enough to be made at run time and copied about.
func TestDemoSize(t *testing.T) {
	rich, _ := demo(t)
	poor, _ := thin(t)
	sum := 0
	for _, files := range []map[string][]byte{rich, poor} {
		for _, data := range files {
			sum += len(data)
		}
	}
	if sum > 20e6 {
		t.Errorf("the demo has grown to %d bytes", sum)
	}
}

// The hours of the truth add up, and the bees' time is what the scenario says: from 5 November 15:00 (+02:00) to
// 5 April 07:00 (+03:00) are 151 days less 9 hours, for the other barn from 8 November 14:00 to 6 April 07:30
// 149 days less 7.5 hours, and for the shed from 9 November 12:00 to 7 April 07:00 149 days less 5 hours.
func TestTruthAddsUp(t *testing.T) {
	_, truth := demo(t)
	_, poor := thin(t)
	wantHours := map[string]float64{"Alder barn": 151*24 - 9, "Rowan barn": 149*24 - 7.5, "Long shed": 149*24 - 5}
	for _, b := range append(truth.Barns, poor.Barns...) {
		near(t, b.Name+" hours", b.Hours, wantHours[b.Name], 1e-9)
		near(t, b.Name+" bands", b.HoursBelow2+b.HoursIn+b.HoursAbove6, b.Hours, 1e-9)
		if b.HoursAbove8 > b.HoursAbove6 || b.HoursRHAbove85 > b.HoursRHAbove75 {
			t.Errorf("%s: the hotter and damper hours must be among the hot and damp ones", b.Name)
		}
		months, above6 := 0.0, 0.0
		for _, m := range b.Months {
			months, above6 = months+m.Hours, above6+m.HoursAbove6
		}
		near(t, b.Name+" months", months, b.Hours, 1e-9)
		near(t, b.Name+" hours above 6 by month", above6, b.HoursAbove6, 1e-9)
		near(t, b.Name+" first stage", b.Stages[0].CalledHours, b.Hours, 1e-9)
	}
}

// A power cut of six and a half hours stops everything, and nothing but it and a breaker keeps from running what is
// called for. A loop wired with a stage runs as long as that.
func TestWhatWasCalledForRan(t *testing.T) {
	_, truth := demo(t)
	for _, b := range truth.Barns {
		near(t, b.Name+" first stage stood", b.Stages[0].CalledHours-b.Stages[0].RanHours, 6.5, 1e-9)
		for _, st := range b.Stages {
			stood := st.CalledHours - st.RanHours
			if breaker := b.Name == "Rowan barn" && st.Name == "Stage 3"; breaker != (stood > 6.5) {
				t.Errorf("%s, %s stood for %.2f h while it was called for", b.Name, st.Name, stood)
			}
		}
		for _, h := range b.Heats {
			if h.WithStage == "Stage 2" && h.RanHours != b.Stages[1].RanHours {
				t.Errorf("%s ran %g h, its stage %g h", h.Name, h.RanHours, b.Stages[1].RanHours)
			}
		}
	}
}

// The planted events stand in the truth with what the scenario says of them.
func TestEventsOfTheTruth(t *testing.T) {
	_, truth := demo(t)
	want := map[string][]string{
		"Alder barn": {"doors open", "doors open", "setting changed", "power cut", "doors open"},
		"Rowan barn": {"doors open", "breaker out", "power cut", "doors open", "batch out", "doors open", "doors open"},
	}
	for _, b := range truth.Barns {
		var kinds []string
		for _, e := range b.Events {
			kinds = append(kinds, e.Kind)
			if e.Kind == "power cut" && !(*e.FirstHourK > 1 && *e.LaterKH > 0 && *e.LaterKH < *e.FirstHourK/4) {
				t.Errorf("%s climbed %g K in the first hour without power and %g K/h later", b.Name, *e.FirstHourK, *e.LaterKH)
			}
		}
		if !slices.Equal(kinds, want[b.Name]) {
			t.Errorf("%s: %q", b.Name, kinds)
		}
	}
	logged, late, off := 0, 0, 0
	for _, c := range truth.Barns[1].Alarm.Due {
		switch {
		case c.Logged == nil:
			off++
		case parsed(t, *c.Logged)-parsed(t, c.Due) == 40*minuteMS:
			late++
			fallthrough
		default:
			logged++
		}
	}
	if logged < 3 || late < 1 || off < 1 {
		t.Errorf("%d calls logged, %d of them late, %d while it was off", logged, late, off)
	}
}

// Hive-days by hand from the scenario's ledgers: 190 for 150 days 15 h (less the clock's hour), 150 from 6 November
// 12:00, less 6 from 8 February 14:00; and 220 for 148 days 16.5 h, less 5, less 60 for 5 days 7 h, less 2 after.
func TestHiveDays(t *testing.T) {
	_, truth := demo(t)
	day := func(h float64) float64 { return h / 24 }
	alder := 190*day(151*24-9) + 150*day(150*24-6) - 6*day(56*24-8)
	rowan := 220*day(149*24-7.5) - 5*day(56*24-4.5) - 60*day(5*24+7) - 2*day(21*24-10.5)
	near(t, "Alder barn", truth.Barns[0].HiveDays, alder, 1e-9)
	near(t, "Rowan barn", truth.Barns[1].HiveDays, rowan, 1e-9)
}

// The demo teaches what the trade would expect of two such barns (the README beside this says what): the larger one
// holds most of the time, is never cold, dry in deep cold and dry at the wall; the smaller one is cold in January,
// wet at its north wall, and for three days had a stage that was called for and did not run.
func TestDemoTellsItsStory(t *testing.T) {
	_, truth := demo(t)
	alder, rowan := truth.Barns[0], truth.Barns[1]
	for what, holds := range map[string]bool{
		"Alder holds nine hours in ten":        alder.HoursIn > 0.9*alder.Hours,
		"Alder is never cold":                  alder.HoursBelow2 == 0,
		"Alder is dry in deep cold":            alder.HoursRHBelow40 > 48,
		"Alder's wall stays dry":               alder.Wall.DewHours+alder.Wall.FrostHours == 0,
		"Rowan holds less than Alder":          rowan.HoursIn/rowan.Hours < alder.HoursIn/alder.Hours-0.05,
		"Rowan is cold in January":             rowan.Months[2].HoursBelow2 > 48,
		"Rowan is damper":                      rowan.MeanRelHumPct > alder.MeanRelHumPct+2,
		"Rowan's wall frosts":                  rowan.Wall.FrostHours > 48,
		"Rowan's wall sweats":                  rowan.Wall.DewHours > 12,
		"Alder is warm without power":          monthOf(alder, "2025-02").HoursAbove8 > 0.5,
		"heat fought fans in Rowan":            rowan.Heats[0].OverlapHours > 500 && rowan.Heats[1].OverlapHours > 100,
		"Rowan's third stage did not run":      stageOf(rowan, 3).FirstParted != nil && stageOf(rowan, 3).CalledHours-stageOf(rowan, 3).RanHours > 48,
		"both run hot in March":                alder.Months[4].HoursAbove8 > 12 && rowan.Months[4].HoursAbove8 > 12,
		"no barn runs hot in January":          alder.Months[2].HoursAbove6 == 0 && rowan.Months[2].HoursAbove6 == 0,
		"the second stage cycles in both":      stageOf(alder, 2).RanStarts > 200 && stageOf(rowan, 2).RanStarts > 200,
		"the third starts less often":          stageOf(alder, 3).RanStarts < stageOf(alder, 2).RanStarts && stageOf(rowan, 3).RanStarts < stageOf(rowan, 2).RanStarts,
		"the fourth starts least":              stageOf(alder, 4).RanStarts < stageOf(alder, 3).RanStarts && stageOf(rowan, 4).RanStarts < stageOf(rowan, 3).RanStarts,
		"the fourth runs when it is warm only": stageOf(alder, 4).RanHours < 0.15*alder.Hours && stageOf(rowan, 4).RanHours < 0.15*rowan.Hours,
	} {
		if !holds {
			t.Errorf("no longer true: %s", what)
		}
	}
}

// stageOf is a stage by its number under its last setting.
func stageOf(b BarnTruth, n int) StageTruth {
	name := fmt.Sprintf("Stage %d", n)
	for _, st := range slices.Backward(b.Stages) {
		if st.Name == name {
			return st
		}
	}
	return StageTruth{}
}

// monthOf is one of a barn's.
func monthOf(b BarnTruth, name string) MonthTruth {
	return b.Months[slices.IndexFunc(b.Months, func(m MonthTruth) bool { return m.Month == name })]
}

// Outdoor air never holds more than saturation, nor is it colder or warmer than a northern lowland's winter.
func TestWeatherIsBelievable(t *testing.T) {
	w := newWeather(lowland())
	for i, tempC := range w.tempC {
		if w.vapPresPa[i] > satPresPa(tempC) || w.vapPresPa[i] < 0.2*satPresPa(tempC) {
			t.Fatalf("vapour pressure %g Pa at %g °C", w.vapPresPa[i], tempC)
		}
		if tempC < -30 || tempC > 18 {
			t.Fatalf("%g °C outdoors", tempC)
		}
	}
}

// The plan is one the program reads, and it names the scenario's instants, settings and files.
func TestPlanIsComplete(t *testing.T) {
	files, truth := demo(t)
	w, err := plan.Read(files["winter.toml"], "winter.toml")
	if err != nil {
		t.Fatal(err)
	}
	if w.Zone != "Europe/Tallinn" || len(w.Barns) != 2 || len(w.Outdoor) != 1 {
		t.Fatalf("zone %q, %d barns, %d outdoors", w.Zone, len(w.Barns), len(w.Outdoor))
	}
	for i, b := range w.Barns {
		checkBarn(t, b, truth.Barns[i])
		for _, l := range append(b.Loggers, w.Outdoor...) {
			if len(l.Files) == 0 || l.Place == "" || l.FollowsDST == nil {
				t.Errorf("%s: files %v, place %q", l.Name, l.Files, l.Place)
			}
			for _, name := range l.Files {
				if files[name] == nil {
					t.Errorf("%s: the file %s is not there", l.Name, name)
				}
			}
		}
	}
}

func checkBarn(t *testing.T, b winter.Barn, truth BarnTruth) {
	t.Helper()
	if b.Name != truth.Name || b.BeesIn == nil || b.BeesOut == nil || utc(*b.BeesIn) != truth.BeesIn || utc(*b.BeesOut) != truth.BeesOut {
		t.Errorf("%s: bees in and out are not %s and %s", b.Name, truth.BeesIn, truth.BeesOut)
	}
	if len(b.Heads) < 4 || len(b.Notes) < 3 || b.AltitudeM == nil || b.VolumeM3 == nil {
		t.Errorf("%s: %d entries of heads, %d notes", b.Name, len(b.Heads), len(b.Notes))
	}
	left := 0
	for _, h := range b.Heads {
		left += h.Change
	}
	if left != 0 {
		t.Errorf("%s: %d colonies were left behind", b.Name, left)
	}
	if len(b.Surfaces) != 1 || *b.Surfaces[0].Low > truth.Wall.Factor || *b.Surfaces[0].High < truth.Wall.Factor {
		t.Errorf("%s: the wall's factor %g is not in the plan's range", b.Name, truth.Wall.Factor)
	}
	if len(b.Stages) != len(truth.Stages) || !b.Stages[0].AlwaysOn || len(b.Heats) != len(truth.Heats) {
		t.Fatalf("%s: %d stages, %d heat sources", b.Name, len(b.Stages), len(b.Heats))
	}
	for i, st := range b.Stages {
		want := truth.Stages[i]
		if math.Abs(*st.FlowLow*3600-want.FlowM3H) > 0.5 || st.Watts == nil || st.Name != want.Name {
			t.Errorf("%s, %s: flow %g m³/s", b.Name, st.Name, *st.FlowLow)
		}
		if i > 0 && (*st.OffC >= *st.OnC || *st.OnC != want.OnC || *st.OffC != want.OffC) {
			t.Errorf("%s, %s: on %g, off %g", b.Name, st.Name, *st.OnC, *st.OffC)
		}
		if (st.From == nil) != (want.From == nil) || st.From != nil && utc(*st.From) != *want.From {
			t.Errorf("%s, %s: set on another date than the truth's", b.Name, st.Name)
		}
	}
}

// The thin plan says where the one logger hung and nothing else; its keeper wrote nothing down.
func TestThinPlanIsThin(t *testing.T) {
	files, truth := thin(t)
	w, err := plan.Read(files["winter.toml"], "winter.toml")
	if err != nil {
		t.Fatal(err)
	}
	want := winter.Barn{Name: truth.Barns[0].Name, Loggers: []winter.Logger{{Name: "Shed", Files: []string{"shed.csv"}, Place: "room"}}}
	if w.Zone != "America/Regina" || len(w.Barns) != 1 || len(w.Outdoor) != 0 || !reflect.DeepEqual(w.Barns[0], want) {
		t.Errorf("%+v", w)
	}
}

// parsed reads an instant of the truth.
func parsed(t *testing.T, text string) int64 {
	t.Helper()
	at, err := time.Parse(time.RFC3339, text)
	if err != nil {
		t.Fatal(err)
	}
	return at.UnixMilli()
}
