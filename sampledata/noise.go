package sampledata

import (
	"math"
	"math/rand/v2"
)

// seed starts every random stream of the demo, so that it is the same winter every time.
const seed = 0x7468_6177

// noise is a repeatable random stream of its own number.
func noise(stream uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, stream)) }

// wander is a first-order autoregressive process with mean 0: sd is its standard deviation, tauS the time in
// seconds over which it forgets.
type wander struct {
	rng         *rand.Rand
	value       float64
	keep, kicks float64
}

func newWander(rng *rand.Rand, sd, tauS, stepS float64) *wander {
	keep := math.Exp(-stepS / tauS)
	return &wander{rng, sd * rng.NormFloat64(), keep, sd * math.Sqrt(1-keep*keep)}
}

func (w *wander) next() float64 {
	w.value = w.keep*w.value + w.kicks*w.rng.NormFloat64()
	return w.value
}
