package sampledata

import (
	"slices"
	"testing"
)

func testLadder() *ladder {
	return newLadder([]stage{
		{name: "1", alwaysOn: true, flowM3S: 0.1},
		{name: "2", settings: set(4.5, 3.5), flowM3S: 0.2},
		{name: "3", settings: set(6, 5), flowM3S: 0.4, dead: []span{{100, 200}}},
	})
}

// A stage goes on at its on-temperature, off at its off-temperature, and holds in between.
func TestLadderHysteresis(t *testing.T) {
	l := testLadder()
	for i, step := range []struct {
		feltC      float64
		second     bool
		third      bool
		wantFlowM3 float64
	}{
		{4.4, false, false, 0.1}, // never was on
		{4.5, true, false, 0.3},  // on exactly at the limit
		{3.6, true, false, 0.3},  // holds
		{3.5, false, false, 0.1}, // off exactly at the limit
		{4.4, false, false, 0.1}, // holds
		{6.5, true, true, 0.7},
		{5.1, true, true, 0.7},
		{4.9, true, false, 0.3},
		{2, false, false, 0.1}, // the first stage is always on
	} {
		l.follow(step.feltC, 0, true)
		if !l.called[0] || l.called[1] != step.second || l.called[2] != step.third {
			t.Errorf("step %d at %g °C: called %v", i, step.feltC, l.called)
		}
		near(t, "flow", l.flowM3S(), step.wantFlowM3, 1e-12)
	}
}

// A dead stage is called for and does not run; the call outlives the fault.
func TestCalledForButDead(t *testing.T) {
	l := testLadder()
	for _, step := range []struct {
		atMS int64
		ran  bool
	}{{99, true}, {100, false}, {199, false}, {200, true}} {
		l.follow(6.2, step.atMS, true)
		if !l.called[2] || l.ran[2] != step.ran {
			t.Errorf("at %d: called %v, ran %v, want true and %v", step.atMS, l.called[2], l.ran[2], step.ran)
		}
	}
}

// Without power everything is asked for as before and nothing runs; the pump wired with a stage stands with it.
func TestWithoutPowerNothingRuns(t *testing.T) {
	l := testLadder()
	h := newHeating([]heatSource{{name: "floor", withStage: "2", watts: 300}, {name: "sun", areaM2: 10}}, l.stages)
	l.follow(6.2, 0, true)
	h.follow(l.ran, 500, true)
	if want := 300 + 10*sunIntoHeat*500; h.floorW(500) != want {
		t.Errorf("with power the floor gets %g W, want %g", h.floorW(500), want)
	}
	l.follow(6.2, 0, false)
	h.follow(l.ran, 500, false)
	if l.flowM3S() != 0 || h.floorW(500) != 0 || !l.called[0] || !l.called[1] {
		t.Errorf("without power: flow %g, heat %g, called %v", l.flowM3S(), h.floorW(500), l.called)
	}
}

// A stage set anew follows the new setting from that instant on, from the state it was in.
func TestSettingsChange(t *testing.T) {
	l := newLadder([]stage{{name: "2", settings: []setting{{0, 4.5, 3.5}, {1000, 6, 5.5}}}})
	for _, step := range []struct {
		atMS   int64
		called bool
	}{{0, true}, {999, true}, {1000, false}, {2000, false}} {
		if l.follow(5.2, step.atMS, true); l.called[0] != step.called {
			t.Errorf("at %d ms called is %v", step.atMS, l.called[0])
		}
	}
}

// The sun's loop starts at one brightness and holds down to another.
func TestTheSunsLoopHolds(t *testing.T) {
	h := newHeating([]heatSource{{name: "sun", areaM2: 1}}, nil)
	for i, step := range []struct {
		sunWM2 float64
		on     bool
	}{{sunOnWM2 - 1, false}, {sunOnWM2, true}, {sunOffWM2 + 1, true}, {sunOffWM2, false}, {sunOnWM2 - 1, false}} {
		if h.follow(nil, step.sunWM2, true); h.on[0] != step.on {
			t.Errorf("step %d: on is %v", i, h.on[0])
		}
	}
}

// An alarm at 8 °C and half an hour: above from minute 10 it is due at minute 40, once; back at the limit it is
// ready again; off it is due and not logged.
func TestAlarm(t *testing.T) {
	a := &alarm{limitC: 8, delayMS: 30 * minuteMS, lateMS: []int64{0}, off: []span{{100 * minuteMS, 200 * minuteMS}}}
	for at := int64(0); at < 200*minuteMS; at += stepS * secondMS {
		feltC := 7.0
		if minute := at / minuteMS; minute >= 10 && minute < 90 || minute >= 95 {
			feltC = 8.5
		}
		a.feel(feltC, at)
	}
	want := []dueCall{{10 * minuteMS, 40 * minuteMS, 40 * minuteMS}, {95 * minuteMS, 125 * minuteMS, 0}}
	if !slices.Equal(a.due, want) {
		t.Errorf("due are %v, want %v", a.due, want)
	}
}
