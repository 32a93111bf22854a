package sampledata

import "testing"

func testLadder() *ladder {
	return newLadder([]stage{
		{name: "1", alwaysOn: true, flowM3S: 0.1},
		{name: "2", onC: 4.5, offC: 3.5, flowM3S: 0.2},
		{name: "3", onC: 6, offC: 5, flowM3S: 0.4, dead: []span{{100, 200}}},
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
		l.follow(step.feltC, 0)
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
		l.follow(6.2, step.atMS)
		if !l.called[2] || l.ran[2] != step.ran {
			t.Errorf("at %d: called %v, ran %v, want true and %v", step.atMS, l.called[2], l.ran[2], step.ran)
		}
	}
}
