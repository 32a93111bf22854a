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

// worker runs long work beside the window, one piece at a time: a newer piece cancels the older, whose
// outcome is dropped. Its methods belong to the main goroutine; stop may be called from any.
type worker struct {
	do       func(func()) // the way back to the main goroutine
	begun    func(what string)
	progress func(done, total int64, what string)
	ended    func(err error) // err is nil also when the work was cancelled

	latest  int
	cancel  context.CancelFunc
	running sync.WaitGroup
}

// start runs work; done is called on the main goroutine with what it made, unless it failed, was cancelled
// or was overtaken.
func (w *worker) start(what string, work func(ctx context.Context, tell Tell) (done func(), err error)) {
	w.stop()
	ctx, cancel := context.WithCancel(context.Background())
	w.latest++
	w.cancel = cancel
	number := w.latest
	w.begun(what)
	w.running.Go(func() {
		defer cancel()
		done, err := work(ctx, w.throttled(number))
		w.do(func() {
			if number == w.latest {
				w.finish(ctx, done, err)
			}
		})
	})
}

func (w *worker) finish(ctx context.Context, done func(), err error) {
	w.cancel = nil
	if errors.Is(err, context.Canceled) {
		err = nil
		done = nil
	}
	w.ended(err)
	if done != nil && err == nil {
		done()
	}
}

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
