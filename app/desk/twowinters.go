package desk

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/compare"
	"thawbook/app/engine"
)

// OtherWinter is a reviewed winter that the open one is set beside, with the barns they have in common; the zero value is none.
type OtherWinter struct {
	result *engine.Result
	pairs  []compare.Pair
}

// InOtherWinter picks, of what a barn can be set beside, its like in the other winter.
const InOtherWinter = -1

// SetBeside reviews the winter of another file, a winter file or a plan, which is only read, and sets the barns of the open
// winter beside it. The error is one sentence about the file, or the context's; then all stays as it was.
func (k *Keeper) SetBeside(ctx context.Context, b Book, path string, tell Progress) (Book, error) {
	if err := k.meant(b); err != nil || k.store == nil {
		return b, err
	}
	result, err := engine.ReviewFile(ctx, path, tell)
	if err == nil {
		err = ctx.Err()
	}
	if err != nil {
		return b, err
	}
	other := OtherWinter{result: &result}
	if other.pairs, err = engine.Winters(ctx, &b.Result, &result); err != nil {
		return b, err
	}
	if len(other.pairs) == 0 && b.Barns() > 0 {
		return b, errors.New(windowNote(result.NotAlike(path)))
	}
	k.other = other
	b.Faults = slices.Clone(b.Faults)
	for _, f := range result.Files {
		if f.Err != nil {
			b.Faults = append(b.Faults, FaultOf(f.Name, f.Err))
		}
	}
	return k.book(b), nil
}

// besideAgain sets the barns of a fresh review beside the other winter anew.
func (k *Keeper) besideAgain(ctx context.Context, result *engine.Result) (err error) {
	if k.other.result != nil {
		k.other.pairs, err = engine.Winters(ctx, result, k.other.result)
	}
	return err
}

// mates are a barn's pairs, from its side, with the reviews their others are of: those of its winter, then that of the other.
func mates(r *engine.Result, with OtherWinter, i int) (pairs []compare.Pair, of []*engine.Result) {
	for _, p := range r.Pairs {
		switch r.Barns[i].Barn {
		case p.A:
			pairs, of = append(pairs, p), append(of, r)
		case p.B:
			pairs, of = append(pairs, p.Turned()), append(of, r)
		}
	}
	for _, p := range with.pairs {
		if p.A == engine.InWinter(r, i) {
			pairs, of = append(pairs, p), append(of, with.result)
		}
	}
	return pairs, of
}

// barnOf is the place of a pair's other barn in the review it is of. A winter of the same name has more words behind it.
func barnOf(p compare.Pair, r *engine.Result) int {
	return slices.IndexFunc(r.Barns, func(b analysis.Review) bool {
		return p.B == b.Barn || p.ByWinterDay && strings.HasPrefix(p.B, b.Barn+", "+r.Winter.Name)
	})
}

// paired says how the hours of both were put together.
func (s twoBarns) paired() []string {
	if !s.p.ByWinterDay {
		return []string{HelpLine("side_by_side")}
	}
	return []string{fmt.Sprintf("Paired by day of winter: each hour of %s is set against the same hour of the same day of the year of %s.", s.p.A, s.p.B),
		HelpLine("side_by_side"), reviewNotes["other_winter"]}
}

// drawn says on whose days the lines of two winters are drawn.
func (s twoBarns) drawn() string {
	return "Paired by day of winter: the lines of " + s.p.B + " are drawn on the days of " + s.p.A + "."
}

// earlier is a lane with its curves so much earlier, ms.
func earlier(l Lane, byMS int64) Lane {
	if byMS == 0 {
		return l
	}
	back := func(instants []int64) []int64 { return shifted(instants, func(int) int64 { return -byMS }, true) }
	l.Traces = slices.Clone(l.Traces)
	for i := range l.Traces {
		c := &l.Traces[i].Curve
		c.Readings.At, c.Breaks = back(c.Readings.At), back(c.Breaks)
	}
	return l
}
