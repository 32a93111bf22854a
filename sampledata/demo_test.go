package sampledata

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"math"
	"sync"
	"testing"
	"time"

	"thawbook/app/winter"
	"thawbook/app/winter/plan"
)

var once = sync.OnceValues(func() ([]File, error) { return Demo(context.Background(), nil) })

// demo is the demo made once for all tests, by name, with its truth.
func demo(t *testing.T) (map[string][]byte, Truth) {
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

func TestDemoIsTheSameEveryTime(t *testing.T) {
	first, err := once()
	if err != nil {
		t.Fatal(err)
	}
	last, total := 0, 0
	second, err := Demo(context.Background(), func(done, of int) {
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

// The demo must stay small enough to be made at run time and copied about.
func TestDemoSize(t *testing.T) {
	files, _ := demo(t)
	sum := 0
	for _, data := range files {
		sum += len(data)
	}
	if sum > 20e6 {
		t.Errorf("the demo has grown to %d bytes", sum)
	}
}

// The hours of the truth add up, and the bees' time is what the scenario says: from 5 November 15:00 (+02:00) to
// 5 April 07:00 (+03:00) are 151 days less 9 hours, and for the other barn from 8 November 14:00 to 6 April 07:30
// 149 days less 7.5 hours.
func TestTruthAddsUp(t *testing.T) {
	_, truth := demo(t)
	wantHours := map[string]float64{"Alder barn": 151*24 - 9, "Rowan barn": 149*24 - 7.5}
	for _, b := range truth.Barns {
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
		"Rowan is damper":                      rowan.MeanRelHumPct > alder.MeanRelHumPct+3,
		"Rowan's wall frosts":                  rowan.Wall.FrostHours > 48,
		"Rowan's wall sweats":                  rowan.Wall.DewHours > 12,
		"Alder's stages ran as called":         alder.Stages[2].FirstParted == nil && alder.Stages[2].RanHours == alder.Stages[2].CalledHours,
		"Rowan's third stage did not":          rowan.Stages[2].FirstParted != nil && rowan.Stages[2].CalledHours-rowan.Stages[2].RanHours > 48,
		"both run hot in March":                alder.Months[4].HoursAbove8 > 12 && rowan.Months[4].HoursAbove8 > 12,
		"no barn runs hot in January":          alder.Months[2].HoursAbove6 == 0 && rowan.Months[2].HoursAbove6 == 0,
		"the second stage cycles in both":      alder.Stages[1].RanStarts > 200 && rowan.Stages[1].RanStarts > 200,
		"the third starts less often":          alder.Stages[2].RanStarts < alder.Stages[1].RanStarts && rowan.Stages[2].RanStarts < rowan.Stages[1].RanStarts,
		"the fourth starts least":              alder.Stages[3].RanStarts < alder.Stages[2].RanStarts && rowan.Stages[3].RanStarts < rowan.Stages[2].RanStarts,
		"the fourth runs when it is warm only": alder.Stages[3].RanHours < 0.15*alder.Hours && rowan.Stages[3].RanHours < 0.15*rowan.Hours,
	} {
		if !holds {
			t.Errorf("no longer true: %s", what)
		}
	}
}

// Outdoor air never holds more than saturation, nor is it colder or warmer than a northern lowland's winter.
func TestWeatherIsBelievable(t *testing.T) {
	w := newWeather(simulated)
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
			if len(l.Files) != 1 || files[l.Files[0]] == nil || l.Place == "" || l.FollowsDST == nil {
				t.Errorf("%s: files %v, place %q", l.Name, l.Files, l.Place)
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
	if len(b.Stages) != 4 || !b.Stages[0].AlwaysOn {
		t.Fatalf("%s: %d stages", b.Name, len(b.Stages))
	}
	for i, st := range b.Stages {
		if math.Abs(*st.FlowLow*3600-truth.Stages[i].FlowM3H) > 0.5 || st.Watts == nil {
			t.Errorf("%s, %s: flow %g m³/s", b.Name, st.Name, *st.FlowLow)
		}
		if i > 0 && (*st.OffC >= *st.OnC || i > 1 && math.Abs(*st.OnC-*b.Stages[i-1].OnC-1) < 0.05) {
			t.Errorf("%s, %s: on %g, off %g", b.Name, st.Name, *st.OnC, *st.OffC)
		}
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
