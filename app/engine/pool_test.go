package engine

import (
	"context"
	"runtime"
	"sync/atomic"
	"testing"
	"time"
)

func TestWorkNobodyWaitsForLeavesAProcessor(t *testing.T) {
	for name, tc := range map[string]struct {
		ctx  context.Context
		most int64
	}{
		"waited for": {t.Context(), int64(runtime.NumCPU())},
		"aside":      {Aside(t.Context()), int64(max(1, runtime.NumCPU()-1))},
	} {
		var now, most, did atomic.Int64
		_ = each(tc.ctx, 8*runtime.NumCPU(), func(int) {
			if n := now.Add(1); n > most.Load() {
				most.Store(n)
			}
			time.Sleep(5 * time.Millisecond)
			now.Add(-1)
			did.Add(1)
		})
		if most.Load() > tc.most || did.Load() != int64(8*runtime.NumCPU()) {
			t.Errorf("%s: %d at once, at most %d may be; %d of %d were done", name, most.Load(), tc.most, did.Load(), 8*runtime.NumCPU())
		}
	}
}
