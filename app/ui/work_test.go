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
	b.worker = worker{do: b.main.do, begun: func(string) {}, progress: func(int64, int64, string) { b.tells++ }, ended: func(err error) { b.ends++; b.err = err }}
	return b
}

func TestTheLatestWorkWins(t *testing.T) {
	b := newBench()
	made := ""
	blocked := make(chan struct{})
	b.start("first", func(ctx context.Context, _ Tell) (func(), error) {
		<-blocked
		return func() { made += "first" }, nil
	})
	b.start("second", func(context.Context, Tell) (func(), error) { return func() { made += "second" }, nil })
	close(blocked)
	b.running.Wait()
	b.main.until(t, "the second ends", func() bool { return b.ends > 0 })
	for b.main.step() {
	}
	if made != "second" || b.ends != 1 {
		t.Errorf("made %q, ended %d times", made, b.ends)
	}
}

func TestNewWorkCancelsTheOlder(t *testing.T) {
	b := newBench()
	stopped := make(chan error, 1)
	b.start("first", func(ctx context.Context, _ Tell) (func(), error) {
		<-ctx.Done()
		stopped <- ctx.Err()
		return nil, ctx.Err()
	})
	b.start("second", func(context.Context, Tell) (func(), error) { return nil, nil })
	if err := <-stopped; !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
}

// Pieces run one after another, each of them, however fast they come: what the keeper asked to be kept is.
func TestEveryPieceIsRunInTurn(t *testing.T) {
	b := newBench()
	order := ""
	for _, name := range []string{"a", "b", "c", "d"} {
		b.start(name, func(context.Context, Tell) (func(), error) {
			was := order
			time.Sleep(2 * time.Millisecond)
			order = was + name
			return nil, nil
		})
	}
	b.main.until(t, "the last ends", func() bool { return b.ends > 0 })
	if order != "abcd" {
		t.Errorf("%q", order)
	}
}

func TestAnOvertakenFailureIsTold(t *testing.T) {
	b := newBench()
	var told []error
	b.ended = func(err error) { told = append(told, err) }
	b.start("first", func(context.Context, Tell) (func(), error) { return nil, errors.New("the disk is full") })
	b.start("second", func(context.Context, Tell) (func(), error) { return nil, nil })
	b.main.until(t, "both end", func() bool { return len(told) == 2 })
	if told[0] == nil || told[1] != nil {
		t.Errorf("%v", told)
	}
}

func TestCancelledWorkChangesNothing(t *testing.T) {
	b := newBench()
	done := false
	b.start("work", func(ctx context.Context, _ Tell) (func(), error) {
		<-ctx.Done()
		return func() { done = true }, ctx.Err()
	})
	b.stop()
	b.main.until(t, "the work ends", func() bool { return b.ends > 0 })
	if done || b.err != nil {
		t.Errorf("done %v, error %v", done, b.err)
	}
}

func TestAFailureIsTold(t *testing.T) {
	b := newBench()
	b.start("work", func(context.Context, Tell) (func(), error) { return nil, errors.New("the disk is full") })
	b.main.until(t, "the work ends", func() bool { return b.ends > 0 })
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
	b.main.until(t, "the work ends", func() bool { return b.ends > 0 })
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
