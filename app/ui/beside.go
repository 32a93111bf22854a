package ui

import "time"

// patience is how long the window waits for what is made beside it: what is there by then is shown without a flicker.
var patience = shippedPatience

const shippedPatience = 10 * time.Millisecond

// beside makes what a page shows beside the window, so that ten million readings do not hold it up. Its methods belong to
// the main goroutine; the zero value with its functions set is ready.
type beside[K comparable, T any] struct {
	do     func(func())             // the way back to the main goroutine
	guard  func(func() error) error // makes an error of a panic
	failed func(error)

	key    K // of what was made last
	made   T
	any    bool // something was made
	making bool
}

// of is what build makes of a key. When that takes longer than the window can wait, fresh is false, the value the one
// before, and again is called once there is another to be had: who then asks for another key has it made.
func (b *beside[K, T]) of(key K, build func() T, again func()) (value T, fresh bool) {
	if b.any && b.key == key {
		return b.made, true
	}
	if b.making {
		return b.made, false
	}
	b.making = true
	var made T
	var err error
	over := running(func() { err = b.guard(func() error { made = build(); return nil }) })
	take := func() {
		b.making, b.any, b.key, b.made = false, true, key, made
		if err != nil {
			b.failed(err)
		}
	}
	select {
	case <-over:
		take()
		return b.made, true
	case <-time.After(patience):
	}
	go func() {
		<-over
		b.do(func() { take(); again() })
	}()
	return b.made, false
}

// running runs something beside the window; the channel is closed when it has ended.
func running(doing func()) <-chan struct{} {
	over := make(chan struct{})
	go func() { defer close(over); doing() }()
	return over
}
