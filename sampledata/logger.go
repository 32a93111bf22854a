package sampledata

import (
	"math"
	"math/rand/v2"
)

// scene is what there is to be seen in and around one barn at an instant.
type scene struct {
	atMS           int64
	outC, outVapPa float64
	airC, vapPa    float64 // room mean
	wallC          float64 // inner surface of the listed wall
	called, ran    []bool  // of the stages
	heating        []bool  // of the heat sources
}

// house is what a logger sees that lies on the kitchen table: 20.5 °C, 38 %.
var house = &scene{airC: 20.5, outC: 20.5, vapPa: 0.38 * satPresWaterPa(20.5)}

// quantity is what a channel shows.
type quantity string

const (
	temperature quantity = "air_temperature"
	surface     quantity = "surface_temperature"
	humidity    quantity = "relative_humidity"
	state01     quantity = "state"
)

// channel is one column of a logger. What it sees is in °C, percent, or 0 and 1 for a state. The reading
// is that, delayed by a first-order lag, plus a fixed offset and noise, on a grid of steps in the unit the
// file is written in. While it is stuck it says what it said when that began.
type channel struct {
	title    string
	quantity quantity
	see      func(*scene) float64
	lagS     float64
	offset   float64
	noise    float64 // standard deviation
	step     float64
	decimals int
	stuck    span

	takeUp  float64 // by the lag in one step
	felt    float64 // what has come through the lag
	said    float64 // the last reading
	seen    mean    // what there was to be seen during the bees' time, while it recorded that
	missing int
}

// logger is an instrument, the files it wrote, and the clock it was set to.
type logger struct {
	name, place     string
	files           []*file
	layout          *layout
	firstMS, lastMS int64 // first reading, and the end of the record
	everyMS         int64
	clock           clock
	silent          []span  // no rows at all
	inHouse         []span  // it did not hang at its place
	emptyBattery    bool    // which is why the record ends
	loss            float64 // share of readings replaced by a missing word
	planned         planned
	channels        []*channel

	rng   *rand.Rand
	taken int64 // readings the clock has asked for, silent or not
	rows  int   // written to any file
}

// file is one read-out: the part of the record it holds, all of it where no part is named.
type file struct {
	name string
	part span

	rows     int
	from, to int64 // first and last row written
	text     []byte
}

// holds says whether a row of an instant is in the read-out.
func (f *file) holds(atMS int64) bool { return f.part == span{} || within([]span{f.part}, atMS) }

// one is the file of a logger that was read out once.
func one(name string) []*file { return []*file{{name: name}} }

// planned is what only the plan says of a logger.
type planned struct {
	channel       string
	recordsStages bool
}

// watch lets every channel feel the scene for one step, and writes a row when one is due. While the bees are
// in, what there was to be seen is averaged for the truth.
func (l *logger) watch(s *scene, beesIn bool) {
	at := s.atMS
	if within(l.inHouse, at) {
		s = house
	}
	recording := at >= l.firstMS && at < l.lastMS && !within(l.silent, at)
	for _, c := range l.channels {
		v := c.see(s)
		if beesIn && recording && !within([]span{c.stuck}, at) {
			c.seen.add(v)
		}
		c.felt += (v - c.felt) * c.takeUp
	}
	if at < l.dueMS() || at >= l.lastMS {
		return
	}
	if recording {
		l.row(at, l.clock.face(l.firstMS+l.taken*l.everyMS))
	}
	l.taken++
}

// dueMS is when the logger's own clock asks for the next reading.
func (l *logger) dueMS() int64 {
	return l.firstMS + int64(math.Round(float64(l.taken*l.everyMS)/(1+l.clock.fast)))
}

// takeUp is the share of a difference that comes through a first-order lag in one step.
func takeUp(lagS float64) float64 {
	if lagS == 0 {
		return 1
	}
	return 1 - math.Exp(-stepS/lagS)
}

// ready gives a logger its own random stream and its channels their lags.
func (l *logger) ready(stream uint64) {
	l.rng = noise(stream)
	for _, c := range l.channels {
		c.takeUp = takeUp(c.lagS)
	}
}

// reading is what the channel says at an instant in the unit of the file.
func (c *channel) reading(rng *rand.Rand, atMS int64, fahrenheit bool) float64 {
	v := c.felt + c.offset + c.noise*rng.NormFloat64()
	if fahrenheit && (c.quantity == temperature || c.quantity == surface) {
		v = v*1.8 + 32
	}
	if c.quantity == humidity {
		v = min(100, max(0, v))
	}
	if !within([]span{c.stuck}, atMS) {
		c.said = math.Round(v/c.step) * c.step
	}
	return c.said
}

// mean is a running average over equal steps.
type mean struct {
	sum float64
	n   int
}

func (m *mean) add(v float64) { m.sum, m.n = m.sum+v, m.n+1 }

func (m *mean) value() float64 { return m.sum / float64(m.n) }
