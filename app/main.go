// Thawbook reads the loggers of wintering barns and says how the bees' winter went. Without arguments, or
// with a plan, it opens its window; the commands inspect and review do the same work without one.
package main

import (
	"context"
	"os"
	"os/signal"
	"syscall"
	_ "time/tzdata" // zones on machines that have none
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	status := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(status)
}
