package engine

import (
	"context"

	"thawbook/analysis/compare"
)

// SetSideBySide sets every two barns of a review side by side, in the winter's order. A pair that a fault of the program
// keeps from being compared is left out. The error is the context's.
func (r *Result) SetSideBySide(ctx context.Context) error {
	r.Pairs = []compare.Pair{}
	for i := range r.Barns {
		for k := i + 1; k < len(r.Barns); k++ {
			p, err := r.Pair(ctx, i, k)
			switch {
			case ctx.Err() != nil:
				return ctx.Err()
			case err != nil:
				r.Faults = append(r.Faults, err)
			default:
				r.Pairs = append(r.Pairs, p)
			}
		}
	}
	return nil
}

// Pair is two barns of a review side by side. The error is a fault of the program or the context's.
func (r *Result) Pair(ctx context.Context, i, k int) (p compare.Pair, err error) {
	a, b := sideOf(r, i), sideOf(r, k)
	defer caught(&err, a.Review.Barn+", "+b.Review.Barn)
	return compare.Barns(ctx, a, b, spreadUntil(ctx))
}

// sideOf is one barn of a review as it is compared.
func sideOf(r *Result, barn int) compare.Side {
	return compare.Side{Input: r.Inputs[barn], Review: r.Barns[barn]}
}
