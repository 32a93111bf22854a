package sampledata

// setting is what a stage's thermostat is set to, from a date on; 0 is from the start.
type setting struct {
	fromMS    int64
	onC, offC float64
}

// stage is one step of a fan ladder.
type stage struct {
	name     string
	alwaysOn bool
	settings []setting // one and its changes, in order; none when it is always on
	flowM3S  float64
	watts    float64
	dead     []span // it was asked for and did not run
}

// set are the settings of a stage that never changes.
func set(onC, offC float64) []setting { return []setting{{0, onC, offC}} }

// settingAt is which of the stage's settings holds at an instant.
func (st *stage) settingAt(atMS int64) int {
	i := 0
	for i+1 < len(st.settings) && st.settings[i+1].fromMS <= atMS {
		i++
	}
	return i
}

// asks says whether a stage is asked for by a temperature: on from onC, off from offC, in between as it was.
func (st *stage) asks(was bool, feltC float64, atMS int64) bool {
	if st.alwaysOn {
		return true
	}
	s := st.settings[st.settingAt(atMS)]
	return feltC >= s.onC || was && feltC > s.offC
}

// ladder is the thermostat: what it asks of each stage, and what ran.
type ladder struct {
	stages      []stage
	called, ran []bool
}

func newLadder(stages []stage) *ladder {
	return &ladder{stages, make([]bool, len(stages)), make([]bool, len(stages))}
}

// follow sets every stage by the temperature the thermostat feels. Without power nothing runs, whatever is asked.
func (l *ladder) follow(feltC float64, atMS int64, power bool) {
	for i := range l.stages {
		st := &l.stages[i]
		l.called[i] = st.asks(l.called[i], feltC, atMS)
		l.ran[i] = l.called[i] && power && !within(st.dead, atMS)
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
