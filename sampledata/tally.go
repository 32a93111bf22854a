package sampledata

import "slices"

// tally sums up a barn's truth while the simulation runs, over the bees' time only.
type tally struct {
	zone        zone
	bees        span
	whole       counts
	months      []*counts
	minC, maxC  float64
	colonySteps int
	ladder      []stage
	stages      [][]stageTally // by stage and its settings
	heats       []heatTally
	cuts        []cutTally
}

// counts are the steps of a stretch by what the barn was like.
type counts struct {
	month                  string // yyyy-mm, local; empty for the whole bees' time
	airC, relHumPct, outC  mean
	below2, above6, above8 int
	dry, damp, wet         int // relative humidity below 40, above 75, above 85 %
	dew, frost             int // on the listed wall
}

// stageTally counts the steps and starts of one stage under one setting.
type stageTally struct {
	called, ran             int
	calledStarts, ranStarts int
	wasCalled, wasRan       bool
	partedMS                int64
	steps                   int
}

// heatTally counts the steps of a heat source, and those in which a stage above all that are wired with one ran too.
type heatTally struct{ ran, fought int }

// cutTally is what a power cut did to the room's air: at its start, an hour on, at its end, and the most it came to
// then or in the hour after.
type cutTally struct {
	span
	startC, hourC, endC, peakC float64
}

func newTally(b *barn, z zone) *tally {
	t := &tally{zone: z, bees: b.beesTime(), minC: 100, maxC: -100, ladder: b.ladderStages, heats: make([]heatTally, len(b.heats))}
	for _, st := range b.ladderStages {
		t.stages = append(t.stages, make([]stageTally, max(1, len(st.settings))))
	}
	for _, s := range b.powerCuts {
		t.cuts = append(t.cuts, cutTally{span: s, peakC: -100})
	}
	return t
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
		now := t.ladder[i].settingAt(s.atMS)
		if now > 0 && t.stages[i][now].steps == 0 {
			before := t.stages[i][now-1]
			t.stages[i][now].wasCalled, t.stages[i][now].wasRan = before.wasCalled, before.wasRan
		}
		t.stages[i][now].add(s.atMS, s.called[i], s.ran[i], first)
	}
	for i := range t.heats {
		count(&t.heats[i].ran, s.heating[i])
		count(&t.heats[i].fought, s.heating[i] && t.bigRan(s.ran))
	}
	for i := range t.cuts {
		t.cuts[i].add(s.atMS, s.airC)
	}
}

// bigRan says whether a stage above the second ran: heat sources are wired with the second at most.
func (t *tally) bigRan(ran []bool) bool {
	return slices.Contains(ran[2:], true)
}

// add looks at the air at an instant of a cut or of the hour after.
func (c *cutTally) add(atMS int64, airC float64) {
	if atMS < c.from || atMS > c.to+hourMS {
		return
	}
	c.peakC = max(c.peakC, airC)
	switch atMS {
	case c.from:
		c.startC = airC
	case c.from + hourMS:
		c.hourC = airC
	case c.to:
		c.endC = airC
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
	name := t.zone.local(atMS, "2006-01")
	if last < 0 || t.months[last].month != name {
		t.months = append(t.months, &counts{month: name})
		last++
	}
	return t.months[last]
}

// add counts a stage's step; a stage that is on as the bees come in has not started then.
func (st *stageTally) add(atMS int64, called, ran, first bool) {
	st.steps++
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
