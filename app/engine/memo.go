package engine

import (
	"crypto/sha256"
	"encoding/json"
	"sync"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// keptRounds is for how many reviews an outcome that is not asked for stays: so an undo finds it again.
const keptRounds = 8

// memo keeps outcomes by all that went into them, so that an edit works out anew only what it touches. Its
// zero value is ready; it may be used from several goroutines.
type memo[T any] struct {
	lock  sync.Mutex
	round int
	kept  map[memoKey]*memoized[T]
}

type memoKey [sha256.Size]byte

type memoized[T any] struct {
	outcome T
	round   int
}

// keyOfAll is the key of everything that goes into an outcome. What it is given must be plain values.
func keyOfAll(parts ...any) memoKey {
	text, err := json.Marshal(parts)
	if err != nil {
		panic(err) // no plain values
	}
	return sha256.Sum256(text)
}

// begin starts a review: what the last few did not ask for goes.
func (m *memo[T]) begin() {
	m.lock.Lock()
	defer m.lock.Unlock()
	m.round++
	for key, k := range m.kept {
		if k.round < m.round-keptRounds {
			delete(m.kept, key)
		}
	}
}

// of is the outcome kept under a key, else what make makes, which is kept then if it is sound.
func (m *memo[T]) of(key memoKey, make func() (outcome T, sound bool)) T {
	m.lock.Lock()
	known := m.kept[key]
	if known != nil {
		known.round = m.round
	}
	m.lock.Unlock()
	if known != nil {
		return known.outcome
	}
	outcome, sound := make()
	if sound {
		m.keep(key, outcome)
	}
	return outcome
}

func (m *memo[T]) keep(key memoKey, outcome T) {
	m.lock.Lock()
	defer m.lock.Unlock()
	if m.kept == nil {
		m.kept = map[memoKey]*memoized[T]{}
	}
	m.kept[key] = &memoized[T]{outcome, m.round}
}

// joined is a list of loggers with their curves, and what there was to remark.
type joined struct {
	loggers []analysis.Logger
	remarks []series.Remark
	faults  []error // of the program; a logger that met one is left without curves
}

// judged is a barn's input and review; fault is why there is none.
type judged struct {
	input  analysis.Input
	review analysis.Review
	fault  error
}
