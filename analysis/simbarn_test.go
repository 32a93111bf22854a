package analysis

import (
	"math"
	"math/rand/v2"
	"time"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// simBarn is a made-up barn for trying what is seen in traces: a room of air and mass, bees, a fan ladder with a
// thermostat, doors, power. A minute a step; hours count from 20 October, 00:00. It knows the physics alone and uses
// nothing it is meant to try, but the saturation pressure.
type simBarn struct {
	seed        uint64
	hours       float64
	in, out     float64 // when the bees went in and came out
	doors, cuts []series.Span
	outdoorC    func(h float64) float64 // nil for a winter of its own
}

// simTrace is what happened, by the minute.
type simTrace struct {
	roomC, roomPa, outC, outPa []float64
	fans                       [][]float64 // 0 or 1, a list per stage
}

// simStages are an always-on stage and three by thermostat: m³/s at on and off temperatures.
var simStages = []struct{ onC, offC, flow float64 }{{-99, -100, 0.06}, {4.4, 3.7, 0.2}, {5.4, 4.6, 0.5}, {6.4, 5.6, 1.0}}

const (
	simAirJK, simMassJK, simCouplingWK = 1.5e6, 5e7, 700.0
	simEnvelopeWK, simVolumeM3         = 60.0, 600.0
	simBeesW, simDoorM3S               = 2600.0, 0.6
	simSensible                        = 0.87   // of the bees' heat (stoichiometry)
	simWaterKgJ                        = 5.3e-8 // 4.58 g/d per W
	simAirJM3K, simVapourJKgK          = 1274, 461.5
)

// weather is a winter outdoors: its mean falls from 6 °C to −8 °C and rises again, a daily swing of 3 K either way, and
// a wander of 3 K over two days.
func (b simBarn) weather(rng *rand.Rand) func(h float64) float64 {
	if b.outdoorC != nil {
		return b.outdoorC
	}
	wander, steps := 0.0, make([]float64, int(b.hours)+2)
	for i := range steps {
		wander += -wander/48 + 3*math.Sqrt(2.0/48)*rng.NormFloat64()
		steps[i] = wander
	}
	return func(h float64) float64 {
		i, part := int(h), h-math.Floor(h)
		season := -1 - 7*math.Sin(math.Pi*(h/24-20)/150)
		return season - 3*math.Cos(2*math.Pi*(h-3)/24) + steps[i]*(1-part) + steps[i+1]*part
	}
}

func during(spans []series.Span, ms int64) bool { return coversAt(spans, ms) }

// run lets the winter happen.
func (b simBarn) run() simTrace {
	rng := rand.New(rand.NewPCG(b.seed, 1))
	outside := b.weather(rng)
	var t simTrace
	t.fans = make([][]float64, len(simStages))
	on := make([]bool, len(simStages))
	airC, massC := outside(0), 6.0
	vapPa := 0.8 * moistair.SatPresWaterPa(airC)
	for m := 0; float64(m) <= b.hours*60; m++ {
		h, ms := float64(m)/60, int64(m)*minuteMS
		outC := outside(h)
		outPa := 0.85 * moistair.SatPresWaterPa(outC)
		flow := 0.005
		for i, s := range simStages {
			on[i] = airC >= s.onC || on[i] && airC > s.offC
			state := 0.0
			if on[i] && !during(b.cuts, ms) {
				state = 1
				flow += s.flow
			}
			t.fans[i] = append(t.fans[i], state)
		}
		if during(b.doors, ms) {
			flow += simDoorM3S
		}
		bees := 0.0
		if h >= b.in && h < b.out {
			bees = simBeesW
		}
		toMass := simCouplingWK * (airC - massC)
		airC += 60 * (simSensible*bees - toMass - (simEnvelopeWK+simAirJM3K*flow)*(airC-outC)) / simAirJK
		massC += 60 * (toMass - 30*(massC-6)) / simMassJK
		gain := bees * simWaterKgJ * simVapourJKgK * (airC + 273.15) / simVolumeM3
		vapPa += 60 * (gain + flow/simVolumeM3*(outPa-vapPa))
		vapPa = math.Min(vapPa, moistair.SatPresWaterPa(airC))
		t.roomC, t.roomPa = append(t.roomC, airC), append(t.roomPa, vapPa)
		t.outC, t.outPa = append(t.outC, outC), append(t.outPa, outPa)
	}
	return t
}

// simLogger looks at a trace through an offset, noise, a lag in minutes and a resolution, every few minutes.
type simLogger struct {
	seed                          uint64
	everyMin                      int
	offset, noise, lagMin, stepOf float64
	where                         func(h, roomC, outC float64) float64 // nil: in the room
}

func (l simLogger) see(val []float64, outC []float64) series.Curve {
	rng := rand.New(rand.NewPCG(l.seed, 2))
	c := series.Curve{MaxStepMS: int64(max(2*l.everyMin, 30)) * minuteMS}
	felt := math.NaN()
	for m, v := range val {
		if l.where != nil {
			v = l.where(float64(m)/60, v, outC[m])
		}
		if math.IsNaN(felt) || l.lagMin < 1 {
			felt = v
		} else {
			felt += (v - felt) / l.lagMin
		}
		if m%l.everyMin == 0 {
			said := felt + l.offset + l.noise*rng.NormFloat64()
			c.Readings.At = append(c.Readings.At, int64(m)*minuteMS)
			c.Val = append(c.Val, math.Round(said/l.stepOf)*l.stepOf)
		}
	}
	return c
}

// relHums are a trace's relative humidities, 0–1.
func relHums(tempC, vapPa []float64) []float64 {
	out := make([]float64, len(tempC))
	for i := range out {
		out[i] = vapPa[i] / moistair.SatPresWaterPa(tempC[i])
	}
	return out
}

// simInput is a barn's loggers, one in the room and one outdoors, with offsets, noise and lags by the seed.
func simInput(b simBarn, t simTrace, everyMin int, where func(h, roomC, outC float64) float64) Input {
	rng := rand.New(rand.NewPCG(b.seed, 3))
	logger := func(name, place string, temp, pa []float64, seed uint64, at func(h, roomC, outC float64) float64) Logger {
		see := simLogger{seed: seed, everyMin: everyMin, offset: 0.6*rng.Float64() - 0.3, noise: 0.03, lagMin: 1 + 9*rng.Float64(), stepOf: 0.1, where: at}
		hum := simLogger{seed: seed + 1, everyMin: everyMin, offset: 0.04*rng.Float64() - 0.02, noise: 0.003, lagMin: see.lagMin, stepOf: 0.001}
		return Logger{Name: name, Place: place, TempC: see.see(temp, t.outC), RelHum: hum.see(relHums(temp, pa), nil), TempErrK: 0.5, RelHumErr: 0.05, TempStepK: 0.1}
	}
	in := Input{Name: "sim", Zone: time.UTC, PressurePa: 101325}
	in.Loggers = append(in.Loggers, logger("mid", "room", t.roomC, t.roomPa, b.seed*10+1, where), logger("yard", "outdoor", t.outC, t.outPa, b.seed*10+5, nil))
	return in
}

// withRoomLogger adds a second logger of the room.
func withRoomLogger(in Input, b simBarn, t simTrace, everyMin int) Input {
	other := b
	other.seed += 1000
	l := simInput(other, t, everyMin, nil).Loggers[0]
	l.Name = "far"
	in.Loggers = append(in.Loggers, l)
	return in
}

// withRecords adds the stages and a record of each, every two minutes.
func withRecords(in Input, t simTrace) Input {
	for i, s := range simStages {
		name := string(rune('1' + i))
		set := Setting{Span: series.Span{From: -1 << 60, To: 1 << 60}, AlwaysOn: i == 0, OnC: s.onC, OffC: s.offC}
		in.Stages = append(in.Stages, Stage{Name: name, Settings: []Setting{set}})
		c := series.Curve{MaxStepMS: 4 * minuteMS}
		for m := 0; m < len(t.fans[i]); m += 2 {
			c.Readings.At, c.Val = append(c.Readings.At, int64(m)*minuteMS), append(c.Val, t.fans[i][m])
		}
		in.Loggers = append(in.Loggers, Logger{Name: "fan " + name, Place: "other", RecordsStage: name, State: c})
	}
	return in
}
