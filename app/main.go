// Thawbook reads the loggers of wintering barns and says how the bees' winter went. Without arguments, or
// with a plan, it opens its window; the commands inspect and review do the same work without one.
package main

import (
	"context"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
	_ "time/tzdata" // zones on machines that have none
)

// garbagePercent is how much the heap may grow before it is swept. Most of it are readings, long lists without a pointer,
// which cost nothing to look through; so it is swept four times as often as usual, and stays smaller by a third.
const garbagePercent = 25

func main() {
	debug.SetGCPercent(garbagePercent)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	status := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(status)
}
