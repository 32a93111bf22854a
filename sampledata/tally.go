package sampledata

import "time"

const stepH = stepS / 3600.0

// tally sums up a barn's truth while the simulation runs, over the bees' time only.
type tally struct {
	bees                   span
	wallName               string
	below2, above6, above8 int
	dry, damp, wet         int
	dew, frost             int
	minC, maxC             float64
	airC, relHumPct, out   mean
	colonySteps            int
	stages                 []stageTally
	months                 []*monthTally
}

type stageTally struct {
	called, ran             int
	calledStarts, ranStarts int
	wasCalled, wasRan       bool
	partedMS                int64
}

type monthTally struct {
	name                   string
	airC, relHumPct, out   mean
	below2, above6, above8 int
}

func newTally(b *barn) *tally {
	return &tally{bees: b.beesTime(), minC: 100, maxC: -100, stages: make([]stageTally, len(b.ladderStages))}
}

// add counts one step.
func (t *tally) add(s *scene, colonies int) {
	pct := 100 * relHum(s.vapPa, s.airC)
	t.airC.add(s.airC)
	t.relHumPct.add(pct)
	t.out.add(s.outC)
	t.minC, t.maxC = min(t.minC, s.airC), max(t.maxC, s.airC)
	count(&t.below2, s.airC < 2)
	count(&t.above6, s.airC > 6)
	count(&t.above8, s.airC > 8)
	count(&t.dry, pct < 40)
	count(&t.damp, pct > 75)
	count(&t.wet, pct > 85)
	sweats := s.vapPa > satPresPa(s.wallC)
	count(&t.dew, sweats && s.wallC > 0)
	count(&t.frost, sweats && s.wallC <= 0)
	t.colonySteps += colonies
	t.addMonth(s, pct)
	for i := range t.stages {
		t.stages[i].add(s.atMS, s.called[i], s.ran[i], t.airC.n == 1)
	}
}

// add counts a stage's step; a stage that is on as the bees come in has not started then.
func (st *stageTally) add(atMS int64, called, ran, first bool) {
	count(&st.called, called)
	count(&st.ran, ran)
	count(&st.calledStarts, called && !st.wasCalled && !first)
	count(&st.ranStarts, ran && !st.wasRan && !first)
	if called && !ran && st.partedMS == 0 {
		st.partedMS = atMS
	}
	st.wasCalled, st.wasRan = called, ran
}

// addMonth counts a step in its local month.
func (t *tally) addMonth(s *scene, pct float64) {
	last := len(t.months) - 1
	if last < 0 || s.atMS%hourMS == 0 {
		name := time.UnixMilli(s.atMS + zoneMS(s.atMS)).UTC().Format("2006-01")
		if last < 0 || t.months[last].name != name {
			t.months = append(t.months, &monthTally{name: name})
			last++
		}
	}
	m := t.months[last]
	m.airC.add(s.airC)
	m.relHumPct.add(pct)
	m.out.add(s.outC)
	count(&m.below2, s.airC < 2)
	count(&m.above6, s.airC > 6)
	count(&m.above8, s.airC > 8)
}

func count(n *int, yes bool) {
	if yes {
		*n++
	}
}
