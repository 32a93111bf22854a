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

// mate is what a barn can be set beside: a barn of its own winter, or its like in the other.
type mate struct {
	name string
	of   *engine.Result
	barn int
	pair *compare.Pair // with its like; nil where it is made when asked for
}

// mates are what a barn can be set beside: the others of its winter, then its like in the other winter.
func mates(r *engine.Result, with OtherWinter, i int) (out []mate) {
	for k, b := range r.Barns {
		if k != i {
			out = append(out, mate{name: b.Barn, of: r, barn: k})
		}
	}
	for k, p := range with.pairs {
		if p.A == engine.InWinter(r, i) {
			out = append(out, mate{p.B, with.result, barnOf(p, with.result), &with.pairs[k]})
		}
	}
	return out
}

// beside is a barn's pair with a mate, from its side. The error is a fault of the program.
func (m mate) beside(r *engine.Result, i int) (compare.Pair, error) {
	if m.pair != nil {
		return *m.pair, nil
	}
	return pairOf(r, i, m.barn)
}

// pairOf is two barns of a winter side by side: as the review has them, or made now. The error is a fault of the program.
func pairOf(r *engine.Result, i, k int) (compare.Pair, error) {
	for _, p := range r.Pairs {
		switch [2]string{r.Barns[i].Barn, r.Barns[k].Barn} {
		case [2]string{p.A, p.B}:
			return p, nil
		case [2]string{p.B, p.A}:
			return p.Turned(), nil
		}
	}
	return r.Pair(context.Background(), i, k)
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
