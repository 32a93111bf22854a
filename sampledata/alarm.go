package sampledata

// alarm rings when the thermostat's own sensor has been above a limit without a break for a while. Off, it rings for
// nobody, though a call is due all the same.
type alarm struct {
	limitC  float64
	delayMS int64
	off     []span
	lateMS  []int64 // how long after a call was due the keeper wrote it down, call by call, over and over

	aboveSinceMS int64 // 0 while it is not above
	due          []dueCall
	rung         int
}

// dueCall is a call that was due, and when it was written down; 0 for never.
type dueCall struct{ crossedMS, dueMS, loggedMS int64 }

// feel looks at the sensor.
func (a *alarm) feel(feltC float64, atMS int64) {
	switch {
	case feltC <= a.limitC:
		a.aboveSinceMS = 0
		return
	case a.aboveSinceMS == 0:
		a.aboveSinceMS = atMS
	}
	if atMS-a.aboveSinceMS != a.delayMS {
		return
	}
	call := dueCall{crossedMS: a.aboveSinceMS, dueMS: atMS}
	if !within(a.off, atMS) {
		call.loggedMS = atMS + a.lateMS[a.rung%len(a.lateMS)]
		a.rung++
	}
	a.due = append(a.due, call)
}
