package ui

import (
	"context"
	"errors"
	"testing"
	"time"
)

// bench is a worker with its tally.
type bench struct {
	worker
	main  turn
	tells int
	ends  int
	err   error
}

func newBench() *bench {
	b := &bench{}
	plainly := func(doing func() error) error { return doing() }
	b.worker = worker{do: b.main.do, guard: plainly, begun: func(string) {}, progress: func(int64, int64, string) { b.tells++ }, ended: func(err error, _ bool) { b.ends++; b.err = err }}
	return b
}

// idle runs the main goroutine's turn until all work is over.
func (b *bench) idle(t *testing.T) {
	t.Helper()
	b.main.until(t, "the work ends", func() bool { return !b.busy() })
}

func TestAReviewIsOvertaken(t *testing.T) {
	for _, next := range []string{"review", "change"} {
		b := newBench()
		made := ""
		b.judge("first", func(ctx context.Context, _ Tell) (func(), error) {
			<-ctx.Done()
			return func() { made += "first" }, ctx.Err()
		})
		second := func(context.Context, Tell) (func(), error) { return func() { made += "second" }, nil }
		if next == "review" {
			b.judge("second", second)
		} else {
			b.start("second", second)
		}
		b.idle(t)
		if made != "second" || b.err != nil {
			t.Errorf("%s: made %q, error %v", next, made, b.err)
		}
	}
}

// A change is kept whatever comes after it: nothing overtakes it.
func TestEveryPieceIsRunInTurn(t *testing.T) {
	b := newBench()
	order, made := "", ""
	for _, name := range []string{"a", "b", "c", "d"} {
		b.start(name, func(ctx context.Context, _ Tell) (func(), error) {
			was := order
			time.Sleep(2 * time.Millisecond)
			order = was + name
			return func() { made += name }, ctx.Err()
		})
	}
	b.idle(t)
	if order != "abcd" || made != "abcd" || b.ends != 4 {
		t.Errorf("%q, %q, %d ends", order, made, b.ends)
	}
}

func TestStoppedWorkIsSaid(t *testing.T) {
	b := newBench()
	done := false
	stubborn := func(ctx context.Context, _ Tell) (func(), error) {
		<-ctx.Done()
		return func() { done = true }, ctx.Err()
	}
	b.start("Reading files", stubborn)
	b.stop()
	b.idle(t)
	if done || b.err == nil || b.err.Error() != "Reading files was stopped before it was done" {
		t.Errorf("done %v, error %v", done, b.err)
	}
	b.judge("Working it out", stubborn)
	b.stop()
	b.idle(t)
	if done || b.err != nil {
		t.Errorf("a review: done %v, error %v", done, b.err)
	}
}

func TestAFailureIsTold(t *testing.T) {
	b := newBench()
	b.start("work", func(context.Context, Tell) (func(), error) { return nil, errors.New("the disk is full") })
	b.idle(t)
	if b.err == nil || b.err.Error() != "the disk is full" {
		t.Errorf("%v", b.err)
	}
}

// At most thirty steps a second reach the window, whatever the work reports, and the last one always does.
func TestProgressIsThrottled(t *testing.T) {
	b := newBench()
	var last int64
	b.progress = func(done, _ int64, _ string) { b.tells++; last = done }
	began := time.Now()
	b.start("work", func(_ context.Context, tell Tell) (func(), error) {
		for i := range int64(100000) {
			tell(i+1, 100000, "file")
		}
		return nil, nil
	})
	b.idle(t)
	most := int(time.Since(began)/tellEvery) + 2
	if b.tells == 0 || b.tells > most {
		t.Errorf("%d steps shown, at most %d", b.tells, most)
	}
	if last == 0 {
		t.Error("nothing was shown")
	}
}

func TestWaitingEnds(t *testing.T) {
	b := newBench()
	free := make(chan struct{})
	b.start("stubborn", func(context.Context, Tell) (func(), error) { <-free; return nil, nil })
	if b.wait(10 * time.Millisecond) {
		t.Error("work that runs was called ended")
	}
	close(free)
	if !b.wait(10 * time.Second) {
		t.Error("work that ended was called running")
	}
}

// A stopped review is over at once, even where it goes on for a while; what comes next waits for it, and is not mixed up
// with it.
func TestAStoppedReviewIsOverAtOnce(t *testing.T) {
	b := newBench()
	free, done := make(chan struct{}), ""
	b.judge("Working it out", func(context.Context, Tell) (func(), error) {
		<-free
		return func() { done += "review" }, nil
	})
	b.stop()
	if b.busy() || b.ends != 1 || b.err != nil {
		t.Errorf("busy %v, %d ends, %v", b.busy(), b.ends, b.err)
	}
	b.start("Keeping the change", func(context.Context, Tell) (func(), error) { return func() { done += "change" }, nil })
	if b.wait(10 * time.Millisecond) {
		t.Error("the change did not wait")
	}
	close(free)
	b.idle(t)
	if done != "change" || b.ends != 2 {
		t.Errorf("done %q, %d ends", done, b.ends)
	}
}
