package plausible_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"thawbook/analysis/plausible"
	"thawbook/analysis/series"
)

const minuteMS = 60 * 1000

// walk is the air of an invented room, minute by minute: doors and fans that push it, walls that pull it back.
func walk(seed uint64, minutes int) []float64 {
	random := rand.New(rand.NewPCG(seed, 3))
	out := make([]float64, minutes)
	push, v := 0.0, 0.0
	for i := range out {
		push = 0.95*push + 0.01*random.NormFloat64()
		v = 0.998*v + push
		out[i] = 4 + v + 0.5*math.Sin(2*math.Pi*float64(i)/1440)
	}
	return out
}

// logged is what a logger makes of it every so many minutes, with a clock that is ahead.
func logged(t *testing.T, air []float64, seed uint64, first, every int, aheadMin int64, step float64) series.Curve {
	t.Helper()
	random := rand.New(rand.NewPCG(seed, 4))
	var at []int64
	var val []float64
	for i := first; i < len(air); i += every {
		at = append(at, (int64(i)+aheadMin)*minuteMS)
		val = append(val, math.Round((air[i]+0.05*random.NormFloat64())/step)*step)
	}
	r, err := series.NewReadings(at, val)
	if err != nil {
		t.Fatal(err)
	}
	return series.Curve{Readings: r, MaxStepMS: 30 * minuteMS}
}

// Two loggers in one room for three weeks, at all kinds of shift: the right one is suggested, within the
// half-width, and none where there is none.
func TestAClockThatIsAheadIsFound(t *testing.T) {
	tried, found := 0, 0
	for seed := range uint64(8) {
		air := walk(seed, 21*1440)
		still := logged(t, air, seed+100, 3, 10, 0, 0.1)
		for _, ahead := range []int64{-720, -120, -60, -37, 60, 95, 180, 1440} {
			s, ok := plausible.ClockShift(logged(t, air, seed+200, 0, 5, ahead, 0.1), still)
			tried++
			if !ok {
				continue
			}
			found++
			if off := s.AheadMS - ahead*minuteMS; max(off, -off) > s.HalfMS {
				t.Errorf("ahead by %d min, suggested %v min ± %v", ahead, float64(s.AheadMS)/minuteMS, float64(s.HalfMS)/minuteMS)
			}
			if want := int(ahead) / 60; ahead%60 == 0 && s.WholeHours != want || ahead%60 != 0 && s.WholeHours != 0 && ahead != -37 {
				t.Errorf("ahead by %d min, said to be %d whole hours", ahead, s.WholeHours)
			}
		}
		if s, ok := plausible.ClockShift(logged(t, air, seed+300, 1, 10, 0, 0.1), still); !ok || s.Apart() {
			t.Errorf("no shift, suggested %+v", s)
		}
		if s, ok := plausible.ClockShift(logged(t, walk(seed+50, 21*1440), seed, 0, 10, 0, 0.1), still); ok {
			t.Errorf("two rooms that have only the day in common, suggested %+v", s)
		}
	}
	t.Logf("found %d of %d shifts", found, tried)
	if 10*found < 9*tried {
		t.Errorf("found only %d of %d shifts", found, tried)
	}
}

// Measured air: the attic and the house have other air, the attic beside itself an hour ahead has the same.
func TestClocksOfMeasuredAir(t *testing.T) {
	atticC, atticRelHum := measured(t, "d06_fi_attic_air.csv", "T", "RH")
	houseC, _ := measured(t, "d08_fi_attic_indoor.csv", "T", "RH")
	if s, ok := plausible.ClockShift(houseC, atticC); ok {
		t.Errorf("house and attic: %+v", s)
	}
	other := beside(t, plausible.Trace{TempC: atticC, RelHum: atticRelHum}, 9)
	if s, _ := plausible.ClockShift(other.TempC, atticC); s.Apart() {
		t.Errorf("no shift, suggested %+v", s)
	}
	at := make([]int64, other.TempC.Len())
	for i, a := range other.TempC.Readings.At {
		at[i] = a + 2*series.HourMS
	}
	s, ok := plausible.ClockShift(curve(t, at, other.TempC.Val), atticC)
	if !ok || s.WholeHours != 2 {
		t.Errorf("two hours ahead: %v %+v", ok, s)
	}
}

// A fan cycles every 33 to 50 minutes, a little faster or slower with the weather, and two loggers with right clocks read the
// room every half hour, nine or fourteen minutes apart: that is too seldom to tell their clocks, and no clock is said to be off.
func TestACycleFasterThanTheReadingsIsNoShift(t *testing.T) {
	told := 0
	for seed := range uint64(24) {
		slow := walk(seed, 60*1440)
		air, phase := make([]float64, len(slow)), 0.0
		for i := range air {
			phase += 1 / (33 + float64(seed%18) + 4*math.Sin(2*math.Pi*float64(i)/1440))
			air[i] = 4 + 0.1*(slow[i]-4) + math.Abs(2*(phase-math.Floor(phase))-1)
		}
		a, b := logged(t, air, seed, 3, 30, 0, 0.1), logged(t, air, seed+50, 12+int(seed%2)*5, 30, 0, 0.1)
		if s, ok := plausible.ClockShift(a, b); ok && s.Apart() {
			t.Errorf("seed %d: %+v", seed, s)
		} else if ok && max(s.AheadMS, -s.AheadMS) > s.HalfMS {
			told++
		}
	}
	if told == 0 {
		t.Error("no pair in which the readings feign a shift: the test shows nothing")
	}
}
