package sampledata

import "time"

// tally sums up a barn's truth while the simulation runs, over the bees' time only.
type tally struct {
	bees        span
	whole       counts
	months      []*counts
	minC, maxC  float64
	colonySteps int
	stages      []stageTally
}

// counts are the steps of a stretch by what the barn was like.
type counts struct {
	month                  string // yyyy-mm, local; empty for the whole bees' time
	airC, relHumPct, outC  mean
	below2, above6, above8 int
	dry, damp, wet         int // relative humidity below 40, above 75, above 85 %
	dew, frost             int // on the listed wall
}

// stageTally counts the steps and starts of one stage.
type stageTally struct {
	called, ran             int
	calledStarts, ranStarts int
	wasCalled, wasRan       bool
	partedMS                int64
}

func newTally(b *barn) *tally {
	return &tally{bees: b.beesTime(), minC: 100, maxC: -100, stages: make([]stageTally, len(b.ladderStages))}
}

// add counts one step.
func (t *tally) add(s *scene, colonies int) {
	first := t.whole.airC.n == 0
	relHumPct := 100 * relHum(s.vapPa, s.airC)
	sweats := s.vapPa > satPresPa(s.wallC)
	t.whole.add(s, relHumPct, sweats)
	t.month(s.atMS).add(s, relHumPct, sweats)
	t.minC, t.maxC = min(t.minC, s.airC), max(t.maxC, s.airC)
	t.colonySteps += colonies
	for i := range t.stages {
		t.stages[i].add(s.atMS, s.called[i], s.ran[i], first)
	}
}

func (c *counts) add(s *scene, relHumPct float64, sweats bool) {
	c.airC.add(s.airC)
	c.relHumPct.add(relHumPct)
	c.outC.add(s.outC)
	count(&c.below2, s.airC < 2)
	count(&c.above6, s.airC > 6)
	count(&c.above8, s.airC > 8)
	count(&c.dry, relHumPct < 40)
	count(&c.damp, relHumPct > 75)
	count(&c.wet, relHumPct > 85)
	count(&c.dew, sweats && s.wallC > 0)
	count(&c.frost, sweats && s.wallC <= 0)
}

// month is the local month's counts; a month can only change on the hour.
func (t *tally) month(atMS int64) *counts {
	last := len(t.months) - 1
	if last >= 0 && atMS%hourMS != 0 {
		return t.months[last]
	}
	name := time.UnixMilli(atMS + zoneMS(atMS)).UTC().Format("2006-01")
	if last < 0 || t.months[last].month != name {
		t.months = append(t.months, &counts{month: name})
		last++
	}
	return t.months[last]
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

func count(n *int, yes bool) {
	if yes {
		*n++
	}
}
