package sampledata

// stage is one step of a fan ladder.
type stage struct {
	name      string
	alwaysOn  bool
	onC, offC float64
	flowM3S   float64
	watts     float64
	dead      []span // it was asked for and did not run
}

// ladder is the thermostat: what it asks of each stage, and what ran.
type ladder struct {
	stages      []stage
	called, ran []bool
}

func newLadder(stages []stage) *ladder {
	return &ladder{stages, make([]bool, len(stages)), make([]bool, len(stages))}
}

// follow sets every stage by the temperature the thermostat feels: on from onC, off from offC, in between
// as it was.
func (l *ladder) follow(feltC float64, atMS int64) {
	for i := range l.stages {
		st := &l.stages[i]
		switch {
		case st.alwaysOn || feltC >= st.onC:
			l.called[i] = true
		case feltC <= st.offC:
			l.called[i] = false
		}
		l.ran[i] = l.called[i] && !within(st.dead, atMS)
	}
}

// flowM3S is the air the running stages move.
func (l *ladder) flowM3S() float64 {
	sum := 0.0
	for i, on := range l.ran {
		if on {
			sum += l.stages[i].flowM3S
		}
	}
	return sum
}
