package ui

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"time"
)

// tellEvery is the least time between two shown steps of progress.
const tellEvery = time.Second / 30

// Tell reports progress: so much done of so much, and what is in hand.
type Tell = func(done, total int64, what string)

// Work is a piece of long work: what it returns is called on the main goroutine when it succeeded.
type Work = func(ctx context.Context, tell Tell) (done func(), err error)

// worker runs long work beside the window, one piece after another. Each piece is run, and ends early only when
// the keeper stops it; a review is more than that overtaken by whatever comes after it, and dropped. Its methods
// belong to the main goroutine.
type worker struct {
	do       func(func())             // the way back to the main goroutine
	guard    func(func() error) error // makes an error of a panic
	begun    func(what string)
	progress func(done, total int64, what string)
	ended    func(err error, review bool) // err is nil also when a review was stopped

	number  int
	running map[int]piece      // those that wait, run or have not been taken in
	review  context.CancelFunc // of the latest review
	last    chan struct{}      // closed when the latest piece has ended
	all     sync.WaitGroup
}

// piece is a piece of work that is not over.
type piece struct {
	what   string
	review bool
	cancel context.CancelFunc
}

// start runs a piece of work.
func (w *worker) start(what string, work Work) { w.queue(what, work, false) }

// judge runs a review, which whatever comes after it overtakes.
func (w *worker) judge(what string, work Work) { w.queue(what, work, true) }

func (w *worker) queue(what string, work Work, review bool) {
	if w.review != nil {
		w.review()
		w.review = nil
	}
	ctx, cancel := context.WithCancel(context.Background())
	if review {
		w.review = cancel
	}
	w.number++
	if w.running == nil {
		w.running = map[int]piece{}
	}
	number, before, over := w.number, w.last, make(chan struct{})
	w.running[number], w.last = piece{what, review, cancel}, over
	w.begun(what)
	w.all.Go(func() {
		defer close(over)
		defer cancel()
		if before != nil {
			<-before
		}
		done, err := w.run(ctx, number, work)
		if review && ctx.Err() != nil { // overtaken or stopped: whatever it found is of no more use
			done, err = nil, nil
		}
		w.do(func() { w.finish(number, done, err) })
	})
}

// run does a piece; a panic in it is its error.
func (w *worker) run(ctx context.Context, number int, work Work) (done func(), err error) {
	err = w.guard(func() (err error) {
		done, err = work(ctx, w.throttled(number))
		return err
	})
	return done, err
}

// finish takes the outcome of a piece in, unless it was given up.
func (w *worker) finish(number int, done func(), err error) {
	p, waits := w.running[number]
	if !waits {
		return
	}
	delete(w.running, number)
	if errors.Is(err, context.Canceled) {
		err = fmt.Errorf("%s was stopped before it was done", p.what)
	}
	if done != nil && err == nil {
		done()
	}
	w.ended(err, p.review)
}

// busy says whether any work is running.
func (w *worker) busy() bool { return len(w.running) > 0 }

// stop asks all work to end. Reviews are over at once: however far one has come by the time it hears of it, nobody waits
// for it but the next piece.
func (w *worker) stop() {
	var reviews []int
	for number, p := range w.running {
		p.cancel()
		if p.review {
			reviews = append(reviews, number)
		}
	}
	for _, number := range reviews {
		w.finish(number, nil, nil)
	}
}

// wait is over when all work has ended, or after a while at most.
func (w *worker) wait(atMost time.Duration) bool {
	over := make(chan struct{})
	go func() { w.all.Wait(); close(over) }()
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
			if _, waits := w.running[number]; waits {
				w.progress(d, t, name)
			}
		})
	}
}
