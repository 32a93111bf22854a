package ui

import (
	"context"
	"errors"
	"sync"
	"time"
)

// tellEvery is the least time between two shown steps of progress.
const tellEvery = time.Second / 30

// Tell reports progress: so much done of so much, and what is in hand.
type Tell = func(done, total int64, what string)

// worker runs long work beside the window, one piece after another: a newer piece cancels the older, whose
// outcome is dropped, and begins when that has ended. What a piece does before it looks at its context is
// always done. Its methods belong to the main goroutine; stop may be called from any.
type worker struct {
	do       func(func()) // the way back to the main goroutine
	begun    func(what string)
	progress func(done, total int64, what string)
	ended    func(err error) // the latest work ended, or an older one failed; err is nil also when it was cancelled

	latest  int
	cancel  context.CancelFunc
	last    chan struct{} // closed when the latest piece has ended
	running sync.WaitGroup
}

// start runs work; done is called on the main goroutine with what it made, unless it failed, was cancelled
// or was overtaken.
func (w *worker) start(what string, work func(ctx context.Context, tell Tell) (done func(), err error)) {
	w.stop()
	ctx, cancel := context.WithCancel(context.Background())
	w.latest++
	w.cancel = cancel
	number, before, over := w.latest, w.last, make(chan struct{})
	w.last = over
	w.begun(what)
	w.running.Go(func() {
		defer close(over)
		defer cancel()
		if before != nil {
			<-before
		}
		done, err := work(ctx, w.throttled(number))
		w.do(func() { w.finish(number, done, err) })
	})
}

// finish takes the outcome of a piece, if it is the latest; an older one's failure is told all the same.
func (w *worker) finish(number int, done func(), err error) {
	if errors.Is(err, context.Canceled) {
		err, done = nil, nil
	}
	latest := number == w.latest
	if latest {
		w.cancel = nil
	}
	if latest || err != nil {
		w.ended(err)
	}
	if latest && done != nil && err == nil {
		done()
	}
}

// busy says whether work is running.
func (w *worker) busy() bool { return w.cancel != nil }

// stop asks the running work to end.
func (w *worker) stop() {
	if w.cancel != nil {
		w.cancel()
	}
}

// wait is over when all work has ended, or after a while at most.
func (w *worker) wait(atMost time.Duration) bool {
	over := make(chan struct{})
	go func() { w.running.Wait(); close(over) }()
	select {
	case <-over:
		return true
	case <-time.After(atMost):
		return false
	}
}

// throttled passes on at most thirty steps of progress a second, always the latest one.
func (w *worker) throttled(number int) Tell {
	var lock sync.Mutex
	var last time.Time
	waiting := false
	var done, total int64
	var what string
	return func(d, t int64, name string) {
		lock.Lock()
		done, total, what = d, t, name
		due := !waiting && (time.Since(last) >= tellEvery || d >= t)
		if due {
			waiting, last = true, time.Now()
		}
		lock.Unlock()
		if !due {
			return
		}
		w.do(func() {
			lock.Lock()
			d, t, name := done, total, what
			waiting = false
			lock.Unlock()
			if number == w.latest && w.cancel != nil {
				w.progress(d, t, name)
			}
		})
	}
}
