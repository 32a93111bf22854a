package engine

import (
	"context"

	"thawbook/analysis/compare"
)

// compare sets every two barns of a review side by side, in the winter's order. A pair that a fault of the program keeps
// from being compared is left out. The error is the context's.
func (b bench) compare(ctx context.Context, out *Result, keys []memoKey) error {
	out.Pairs = []compare.Pair{}
	for i := range out.Barns {
		for k := i + 1; k < len(out.Barns); k++ {
			var fault error
			p := b.cache.pairs.of(keyOfAll(keys[i], keys[k]), func() (p compare.Pair, sound bool) {
				p, fault = paired(ctx, sideOf(out, i), sideOf(out, k))
				return p, fault == nil
			})
			switch {
			case ctx.Err() != nil:
				return ctx.Err()
			case fault != nil:
				out.Faults = append(out.Faults, fault)
			default:
				out.Pairs = append(out.Pairs, p)
			}
		}
	}
	return nil
}

// paired is two barns side by side; the error is a fault of the program or the context's.
func paired(ctx context.Context, a, b compare.Side) (p compare.Pair, err error) {
	defer caught(&err, a.Review.Barn+", "+b.Review.Barn)
	return compare.Barns(ctx, a, b, spreadUntil(ctx))
}

// sideOf is one barn of a review as it is compared.
func sideOf(r *Result, barn int) compare.Side {
	return compare.Side{Input: r.Inputs[barn], Review: r.Barns[barn]}
}
