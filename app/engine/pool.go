package engine

import (
	"context"
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"thawbook/analysis"
)

// aside marks the context of work that nobody waits for.
type aside struct{}

// Aside is a context for work that nobody waits for: one processor is left to what the keeper looks at meanwhile.
func Aside(ctx context.Context) context.Context { return context.WithValue(ctx, aside{}, true) }

// workersFor is how many work at n pieces at once: at most one per processor.
func workersFor(ctx context.Context, n int) int {
	processors := runtime.NumCPU()
	if ctx.Value(aside{}) != nil {
		processors = max(1, processors-1)
	}
	return min(n, processors)
}

// each does work for 0 to n−1, on as many workers as the context allows, and comes back when all have ended.
// No further work is begun once the context ends; its error is returned.
func each(ctx context.Context, n int, work func(i int)) error {
	var next atomic.Int64
	var workers sync.WaitGroup
	for range workersFor(ctx, n) {
		workers.Go(func() {
			for i := int(next.Add(1)) - 1; i < n && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				work(i)
			}
		})
	}
	workers.Wait()
	return ctx.Err()
}

// spreadUntil is each for the parts of one barn: a fault of one of them is thrown where the barn is judged.
func spreadUntil(ctx context.Context) func(n int, work func(i int)) {
	return func(n int, work func(i int)) {
		faults := make([]error, n)
		_ = each(ctx, n, func(i int) {
			defer caught(&faults[i], "")
			work(i)
		})
		for _, err := range faults {
			if err != nil {
				panic(err)
			}
		}
	}
}

// halting is spreadUntil given up by a panic once the context ends: what it was for is of no more use then.
func halting(ctx context.Context) analysis.Spread {
	return func(n int, work func(i int)) {
		spreadUntil(ctx)(n, work)
		if err := ctx.Err(); err != nil {
			panic(err)
		}
	}
}

// meter tells how far reading has come, one call at a time: of one file its name, of several how many are done.
type meter struct {
	lock         sync.Mutex
	done, total  int64
	ended, files int
	verb         string // what is done with the files, as "Reading"
	tell         Progress
}

// add counts n more bytes of a file.
func (m *meter) add(n int64, what string) {
	if m.tell == nil {
		return
	}
	m.lock.Lock()
	defer m.lock.Unlock()
	m.done += n
	if m.files > 1 {
		what = fmt.Sprintf("%s %d of %d files", m.verb, min(m.ended+1, m.files), m.files)
	}
	m.tell(m.done, max(m.done, m.total), what)
}

// end counts a file that was dealt with.
func (m *meter) end(what string) {
	m.lock.Lock()
	m.ended++
	m.lock.Unlock()
	m.add(0, what)
}
