package engine

import (
	"context"

	"thawbook/analysis"
	"thawbook/app/winter"
)

// Bare is loggers of a winter as they recorded: their whole record on the true clock, nothing added and nothing left
// out. It is what a check is worked out from. The error is the context's, or that of the winter's zone. cache may be
// nil.
func Bare(ctx context.Context, w winter.Winter, source Source, cache *Cache, slots []winter.Slot) ([]analysis.Logger, error) {
	zone, err := winter.Location(w.Zone)
	if err != nil {
		return nil, err
	}
	var list []winter.Logger
	for _, s := range slots {
		l, _ := w.Logger(s)
		l.From, l.OffsetC, l.OffsetRelHum, l.Checks, l.Exclusions = nil, 0, 0, nil, nil
		list = append(list, l)
	}
	only := w
	only.Barns, only.Outdoor, only.Tray = nil, list, nil
	g := gather(only, source)
	read, err := reader{source: source, cache: cache, answers: w.Answers}.readAll(ctx, g.paths)
	if err != nil {
		return nil, err
	}
	b := newBench(only, zone, g, read, &Cache{})
	out := make([]analysis.Logger, len(list))
	spreadUntil(ctx)(len(list), func(i int) {
		out[i], _, _ = b.logger(list[i:i+1], 0)
	})
	return out, ctx.Err()
}
