package analysis

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"thawbook/analysis/series"
)

// simulated is a wintering room as two thermal nodes, air and mass, heated by its bees, cooled by a ladder whose
// thermostats switch on the true temperature, under a winter of sines and correlated noise. Nothing of what it is
// made with is known to the review but the settings and what a logger saw.
type simulated struct {
	rng               *rand.Rand
	days              int
	airJK, massJK     float64 // heat capacities
	couplingWK        float64 // between air and mass
	envelopeWK        float64
	groundWK, groundC float64
	beesW             float64
	onC, offC         []float64
	flowWK            []float64 // heat a stage's air carries per kelvin; the first is always on
	meanC, swingC     float64   // outdoors: the season's mean and its swing
	dayC, noiseC      float64
	stepS             float64
}

// newSimulated draws a barn: some tight, some leaky, some that cycle in minutes, some in hours.
func newSimulated(seed uint64, days int) *simulated {
	rng := rand.New(rand.NewPCG(seed, 77))
	between := func(low, high float64) float64 { return low + (high-low)*rng.Float64() }
	s := &simulated{rng: rng, days: days, stepS: 10, groundC: 6, groundWK: between(20, 50)}
	s.airJK, s.massJK = between(0.8e6, 2.4e6), between(2e7, 8e7)
	s.couplingWK, s.envelopeWK = between(300, 1000), between(30, 110)
	s.beesW = between(1500, 3200)
	s.meanC, s.swingC, s.dayC, s.noiseC = between(-9, -2), between(3, 8), between(1, 5), between(2, 5)
	on, base := between(4, 4.8), s.beesW/between(25, 40)
	s.onC, s.offC, s.flowWK = []float64{0}, []float64{0}, []float64{base * between(0.2, 0.6)}
	for k := range 3 {
		s.onC = append(s.onC, round(on, 0.1))
		s.offC = append(s.offC, round(on-between(0.5, 1), 0.1))
		s.flowWK = append(s.flowWK, base*between(0.8, 1.6)*math.Pow(2, float64(k)))
		on += between(0.8, 1.3)
	}
	return s
}

func round(v, step float64) float64 { return math.Round(v/step) * step }

// outdoors is the temperature of every hour.
func (s *simulated) outdoors() []float64 {
	out, noise := make([]float64, 24*s.days+2), 0.0
	const keep = 0.97 // an hour's weather is mostly the hour's before
	for h := range out {
		noise = keep*noise + math.Sqrt(1-keep*keep)*s.noiseC*s.rng.NormFloat64()
		season := math.Cos(2 * math.Pi * (float64(h)/24/float64(s.days) - 0.5))
		out[h] = s.meanC - s.swingC*season + s.dayC*math.Sin(2*math.Pi*float64(h)/24) + noise
	}
	return out
}

// eye is a logger: how it differs from the truth.
type eye struct {
	offsetK, lagMin, everyMin, stepK, noiseK float64
}

// winter is what a simulation comes to: the truth, step by step, and what the logger printed.
type simulatedWinter struct {
	hoursOn []float64
	starts  []int
	on      [][]bool // per thermostat stage, by simulation step
	curve   series.Curve
	hours   float64
	outC    []float64
}

// run goes through the winter at ten-second steps.
func (s *simulated) run(e eye) simulatedWinter {
	n := int(float64(s.days) * 86400 / s.stepS)
	w := simulatedWinter{hoursOn: make([]float64, len(s.onC)), starts: make([]int, len(s.onC)), on: make([][]bool, len(s.onC)), outC: s.outdoors(), hours: float64(24 * s.days)}
	air, mass, seen, next := s.onC[1]-0.3, 5.0, s.onC[1]-0.3, 0.0
	on := make([]bool, len(s.onC))
	on[0] = true
	var vals []float64
	for i := range n {
		hour := float64(i) * s.stepS / 3600
		h := int(hour)
		out := w.outC[h] + (hour-float64(h))*(w.outC[h+1]-w.outC[h])
		flow := s.envelopeWK
		for k := range on {
			if k > 0 {
				was := on[k]
				on[k] = air >= s.onC[k] || was && air > s.offC[k]
				if on[k] && !was {
					w.starts[k]++
				}
			}
			if on[k] {
				flow += s.flowWK[k]
				w.hoursOn[k] += s.stepS / 3600
			}
			w.on[k] = append(w.on[k], on[k])
		}
		if e.lagMin > 0 {
			seen += (air - seen) * s.stepS / (60 * e.lagMin)
		} else {
			seen = air
		}
		if hour*60 >= next-1e-9 {
			vals = append(vals, round(seen+e.offsetK+e.noiseK*s.rng.NormFloat64(), e.stepK))
			next += e.everyMin
		}
		toMass := s.couplingWK * (air - mass)
		bees := s.beesW * (1 + 0.02*math.Abs(air-7))
		air += (bees - flow*(air-out) - toMass) / s.airJK * s.stepS
		mass += (toMass - s.groundWK*(mass-s.groundC)) / s.massJK * s.stepS
	}
	w.curve = line(0, e.everyMin/60, vals...)
	w.curve.MaxStepMS = max(w.curve.MaxStepMS, 30*minuteMS)
	return w
}

// known is for how many hours a stage was on outside the spans that are unsure.
func (w simulatedWinter) known(k int, unsure []series.Span, stepS float64) (hours float64) {
	for i, on := range w.on[k] {
		at := int64(float64(i) * stepS * 1000)
		if on && !slices.ContainsFunc(unsure, func(s series.Span) bool { return s.From <= at && at < s.To }) {
			hours += stepS / 3600
		}
	}
	return hours
}

// input is the barn as a keeper sets it down, with the logger beside the thermostat.
func (s *simulated) input(w simulatedWinter, e eye) Input {
	all := span(0, w.hours)
	in := Input{Name: "simulated", Zone: time.UTC, PressurePa: 101325, BeesIn: &all.From, BeesOut: &all.To}
	in.Loggers = []Logger{{Name: "beside", Place: "control", TempC: w.curve, TempErrK: 0.5, TempStepK: e.stepK}}
	for k := range s.onC {
		set := Setting{Span: span(-1, w.hours+1), OnC: s.onC[k], OffC: s.offC[k], AlwaysOn: k == 0}
		in.Stages = append(in.Stages, Stage{Name: []string{"first", "second", "third", "fourth"}[k], Settings: []Setting{set}})
	}
	return in
}

// eyeOf draws a logger: offset ±0.3 K, lag up to 10 min, every 1 to 15 min, to a tenth or a hundredth.
func eyeOf(seed uint64) eye {
	rng := rand.New(rand.NewPCG(seed, 5))
	return eye{
		offsetK:  0.6*rng.Float64() - 0.3,
		lagMin:   10 * rng.Float64(),
		everyMin: []float64{1, 2, 5, 10, 15}[rng.IntN(5)],
		stepK:    []float64{0.1, 0.01}[rng.IntN(2)],
		noiseK:   0.02,
	}
}

// record is what a list of a stage's changes says, and what a logger of its state does.
func (w simulatedWinter) record(k int, stepS, everyMin float64) (list, sampled series.Curve) {
	list, sampled = series.Curve{MaxStepMS: 1 << 62}, series.Curve{MaxStepMS: int64(2 * everyMin * minuteMS)}
	every := int(everyMin * 60 / stepS)
	for i, on := range w.on[k] {
		v, at := 0.0, int64(float64(i)*stepS*1000)
		if on {
			v = 1
		}
		if i == 0 || on != w.on[k][i-1] || i+1 == len(w.on[k]) {
			list.Readings.At, list.Val = append(list.Readings.At, at), append(list.Val, v)
		}
		if i%every == 0 {
			sampled.Readings.At, sampled.Val = append(sampled.Readings.At, at), append(sampled.Val, v)
		}
	}
	return list, sampled
}

// A list of changes gives hours and starts exactly; a logger of the state gives every edge to one interval.
func TestRecordedStagesAreExactToOneIntervalInSimulatedBarns(t *testing.T) {
	for seed := range uint64(10) {
		e := eyeOf(seed)
		s := newSimulated(seed, 20)
		w := s.run(e)
		list, sampled := w.record(2, s.stepS, e.everyMin)
		in := s.input(w, e)
		in.Loggers = append(in.Loggers, Logger{Name: "changes", RecordsStage: "third", State: list})
		ran := Judge(in).Stages[2].Ran
		near(t, "list, hours", ran.Hours.Mid, w.hoursOn[2], 2*s.stepS/3600)
		near(t, "list, starts", ran.Starts.Mid, float64(w.starts[2]), 0)
		in.Loggers[1].State = sampled
		near(t, "sampled, hours", Judge(in).Stages[2].Ran.Hours.Mid, w.hoursOn[2], e.everyMin/60*float64(w.starts[2]+1))
	}
}

// What every stage was called for in fifty simulated barns lies within the range given in nine of ten, and where
// turning points suffice that range is not wide. Both hold of the rules of this package only; the barns know none.
func TestCalledForHoldsTheTruthInSimulatedBarns(t *testing.T) {
	inside, all := 0, 0
	var widths []float64
	t.Log("barn  logger: offset lag every step     estimated offset          stage: true  called for  from   to  width")
	for seed := range uint64(50) {
		e := eyeOf(seed)
		s := newSimulated(seed, 90)
		w := s.run(e)
		r := Judge(s.input(w, e))
		for k, row := range r.Stages[1:] {
			truth, h := w.known(k+1, row.Called.Unsure, s.stepS), row.Called.Hours
			edge := e.everyMin / 60 // where the known time ends is known to one interval
			ok := h.Low-edge <= truth && truth <= h.High+edge
			width := math.NaN()
			if h.Mid > 0 {
				width = (h.High - h.Low) / h.Mid
			}
			all++
			if ok {
				inside++
			}
			if r.Offset.Evidence == WorkedOut && truth >= 24 {
				widths = append(widths, width)
			}
			t.Logf("%3d  %+.2f K %4.1f min %2.0f min %.2f K  %+.2f (%+.2f to %+.2f) %-10s %-7s %6.0f %6.0f %6.0f %6.0f  %3.0f %% err %+4.0f %% starts %4d %v", seed, e.offsetK, e.lagMin, e.everyMin, e.stepK,
				r.Offset.Mid, r.Offset.Low, r.Offset.High, r.Offset.Evidence, row.Name, truth, h.Mid, h.Low, h.High, 100*width, 100*(h.Mid-truth)/truth, w.starts[k+1], ok)
		}
	}
	slices.Sort(widths)
	if 10*inside < 9*all {
		t.Errorf("%d of %d inside, want nine of ten", inside, all)
	}
	if m := series.Median(widths); !(m <= 0.3) {
		t.Errorf("median width %.2f, want 0.3 at most", m)
	}
	t.Logf("%d of %d inside; median width where turning points suffice %.0f %% of %d", inside, all, 100*series.Median(widths), len(widths))
}
