package engine

import (
	"context"

	"thawbook/analysis/compare"
)

// Winters sets the barns of a reviewed winter beside those of the same name of another, one pair a barn, in the first's
// order; a barn the other winter does not have is left out. In a winter of one barn each the names don't matter. Barns are
// named with their winter. The error is the context's.
func Winters(ctx context.Context, a, b *Result) ([]compare.Pair, error) {
	out := []compare.Pair{}
	for i := range a.Barns {
		for k := range b.Barns {
			if a.Barns[i].Barn != b.Barns[k].Barn && len(a.Barns)+len(b.Barns) > 2 {
				continue
			}
			p, err := compare.Winters(ctx, sideOf(a, i), sideOf(b, k), InWinter(a, i), InWinter(b, k), spreadUntil(ctx))
			if err != nil {
				return nil, err
			}
			out = append(out, p)
		}
	}
	return out, nil
}

// InWinter names a barn with its winter, as Winters does.
func InWinter(r *Result, barn int) string { return r.Barns[barn].Barn + ", " + r.Winter.Name }
