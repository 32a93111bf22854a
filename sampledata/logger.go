package sampledata

import (
	"math"
	"math/rand/v2"
	"time"
)

// scene is what there is to be seen in and around one barn at an instant.
type scene struct {
	atMS           int64
	outC, outVapPa float64
	airC, vapPa    float64 // room mean
	wallC          float64 // inner surface of the listed wall
	called, ran    []bool
}

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
// file is written in.
type channel struct {
	title    string
	quantity quantity
	see      func(*scene) float64
	lagS     float64
	offset   float64
	noise    float64 // standard deviation
	step     float64
	decimals int

	takeUp  float64 // by the lag in one step
	felt    float64 // what has come through the lag
	seen    mean    // what there was to be seen during the bees' time
	missing int
}

// logger is an instrument, the file it writes, and the clock it was set to.
type logger struct {
	name, file, place string
	layout            *layout
	firstMS, lastMS   int64 // first reading, and the end of the record
	everyMS           int64
	clock             clock
	silent            []span  // no rows at all
	loss              float64 // share of readings replaced by a missing word
	planned           planned
	channels          []*channel

	rng      *rand.Rand
	rows     int
	from, to int64 // first and last row written
	text     []byte
}

// planned is what only the plan says of a logger.
type planned struct {
	channel       string
	recordsStages bool
}

// clock says what a logger was set to.
type clock struct {
	zone       string // IANA name for the plan, "" for the winter's own
	offsetMS   int64
	followsDST bool
}

var (
	winterTime = clock{offsetMS: standardZoneMS}
	wallClock  = clock{offsetMS: standardZoneMS, followsDST: true}
	worldTime  = clock{zone: "UTC"}
)

// face is the clock's reading at an instant, as if it were UTC.
func (c clock) face(atMS int64) time.Time {
	offset := c.offsetMS
	if c.followsDST {
		offset = zoneMS(atMS)
	}
	return time.UnixMilli(atMS + offset).UTC()
}

// watch lets every channel feel the scene for one step, and writes a row when one is due. While the bees are
// in, what there was to be seen is averaged for the truth.
func (l *logger) watch(s *scene, beesIn bool) {
	for _, c := range l.channels {
		v := c.see(s)
		if beesIn {
			c.seen.add(v)
		}
		c.felt += (v - c.felt) * c.takeUp
	}
	due := s.atMS >= l.firstMS && s.atMS < l.lastMS && (s.atMS-l.firstMS)%l.everyMS == 0
	if due && !within(l.silent, s.atMS) {
		l.row(s.atMS)
	}
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

// reading is what the channel says now in the unit of the file.
func (c *channel) reading(rng *rand.Rand, fahrenheit bool) float64 {
	v := c.felt + c.offset + c.noise*rng.NormFloat64()
	if fahrenheit && (c.quantity == temperature || c.quantity == surface) {
		v = v*1.8 + 32
	}
	if c.quantity == humidity {
		v = min(100, max(0, v))
	}
	return math.Round(v/c.step) * c.step
}

// mean is a running average over equal steps.
type mean struct {
	sum float64
	n   int
}

func (m *mean) add(v float64) { m.sum, m.n = m.sum+v, m.n+1 }

func (m *mean) value() float64 { return m.sum / float64(m.n) }
