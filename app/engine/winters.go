package engine

import (
	"context"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"thawbook/analysis/compare"
	"thawbook/analysis/series"
)

// NoneAlike remarks that no barn of a winter has its like in another. Args: the other's file, its barns.
const NoneAlike = "none_alike"

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
			p, err := compare.Winters(ctx, sideOf(a, i), sideOf(b, k), InWinter(a, i), InOtherWinter(a, b, k), spreadUntil(ctx))
			if err != nil {
				return nil, err
			}
			out = append(out, p)
		}
	}
	return out, nil
}

// NotAlike is the remark that no barn has its like in the review of the winter at path.
func (r *Result) NotAlike(path string) series.Remark {
	var barns []string
	for _, b := range r.Barns {
		barns = append(barns, b.Barn)
	}
	return series.Remark{Code: NoneAlike, Args: []string{filepath.Base(path), strings.Join(barns, ", ")}, Count: 1}
}

// InWinter names a barn with its winter, as Winters does.
func InWinter(r *Result, barn int) string { return r.Barns[barn].Barn + ", " + r.Winter.Name }

// InOtherWinter names a barn of a winter b that is set beside a, as Winters does: where both winters have one name, with the
// year its bees went in, or, were that the same too, as that of the other file.
func InOtherWinter(a, b *Result, barn int) string {
	name := InWinter(b, barn)
	if a.Winter.Name != b.Winter.Name {
		return name
	}
	year := yearIn(b, barn)
	for i := range a.Barns {
		if yearIn(a, i) == year {
			return name + " (the other file)"
		}
	}
	return name + " (in from " + strconv.Itoa(year) + ")"
}

// yearIn is the year a barn's bees went in.
func yearIn(r *Result, barn int) int { return time.UnixMilli(r.Barns[barn].BeesIn).UTC().Year() }
