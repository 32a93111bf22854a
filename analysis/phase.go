package analysis

import (
	"time"

	"thawbook/analysis/series"
)

// The phases of a winter, in order.
const (
	filling    = "filling"
	deepWinter = "deep winter"
	lateWinter = "late winter"
	emptying   = "emptying"
)

// phases cut the bees' time into the stretches that are judged by themselves. Filling lasts while hives are
// carried in, emptying begins when they are carried out for good (see filledAt and emptiedFrom), late winter on
// 1 March of the winter's zone (common practice, no source: brood rearing and warm days begin about then). A
// date the keeper set holds instead; a phase that would not come after the one before it is left out.
func phases(in Input, bees series.Span, scored stretches) []Phase {
	out := []Phase{}
	if bees.To <= bees.From {
		return out
	}
	settings := map[string]PhaseSetting{}
	for _, p := range in.Phases {
		settings[p.Name] = p
	}
	starts := phaseStarts(in, bees)
	for _, name := range []string{filling, deepWinter, lateWinter, emptying} {
		from, has := starts[name]
		if own := settings[name]; own.From != nil {
			from, has = *own.From, true
		}
		if n := len(out); !has || from >= bees.To || n > 0 && from < out[n-1].Span.From {
			continue
		}
		if n := len(out); n > 0 && from <= max(out[n-1].Span.From, bees.From) {
			out = out[:n-1] // nothing of it is left
		}
		out = append(out, Phase{Name: name, Span: series.Span{From: from}, Bands: in.bandsIn(name, settings[name].Bands)})
	}
	for i := range out {
		out[i].Span.To = bees.To
		if i > 0 {
			out[i-1].Span.To = out[i].Span.From
		}
	}
	out[0].Span.From = bees.From
	for i := range out {
		out[i].Parts = series.Intersect(scored, []series.Span{out[i].Span})
	}
	return out
}

// phaseStarts are when the phases begin by the house rule; those that a winter does not have are missing. The
// first begins with the bees' time.
func phaseStarts(in Input, bees series.Span) map[string]int64 {
	first := deepWinter
	starts := map[string]int64{}
	if inSpring(bees.From, in.Zone) {
		first = lateWinter
	} else {
		starts[lateWinter] = firstOfMarch(bees.From, in.Zone)
	}
	starts[first] = bees.From
	if filled, ok := filledAt(in.Heads); ok && filled > bees.From {
		starts[filling], starts[first] = bees.From, filled
	}
	if from, ok := emptiedFrom(in.Heads); ok && from < bees.To {
		starts[emptying] = from
	}
	return starts
}

// inSpring says whether an instant lies between 1 March and the end of July.
func inSpring(at int64, zone *time.Location) bool {
	m := time.UnixMilli(at).In(zone).Month()
	return m >= time.March && m < time.August
}

// firstOfMarch is the local midnight at which March begins, next after an instant.
func firstOfMarch(after int64, zone *time.Location) int64 {
	t := time.UnixMilli(after).In(zone)
	march := time.Date(t.Year(), time.March, 1, 0, 0, 0, 0, zone)
	if march.Before(t) {
		march = time.Date(t.Year()+1, time.March, 1, 0, 0, 0, 0, zone)
	}
	return march.UnixMilli()
}

// Moving a barn's hives takes days: entries of the ledger further apart than this are not one move, and one of
// less than this share of the hives is no move but a few boxes (common practice, no source).
const (
	moveGapMS    = 14 * 24 * series.HourMS
	leastOfAMove = 0.02
)

// filledAt is the last of the entries with which the barn was filled, one after another from the first on; ok
// is false where a single entry filled it, or none did.
func filledAt(heads []HeadChange) (at int64, ok bool) {
	total := 0
	for i, h := range heads {
		switch {
		case h.Change <= 0 && i == 0:
			return 0, false
		case i > 0 && h.At-heads[i-1].At > moveGapMS:
			return at, ok
		case i > 0 && float64(h.Change) > leastOfAMove*float64(total):
			at, ok = h.At, true
		}
		total += h.Change
	}
	return at, ok
}

// emptiedFrom is the first of the entries with which the barn was emptied, one after another back from the last,
// which left it empty (see emptied); ok is false where a single entry emptied it, or none did.
func emptiedFrom(heads []HeadChange) (at int64, ok bool) {
	count := 0
	for _, h := range heads {
		count += h.Change
	}
	if !emptied(heads) {
		return 0, false
	}
	for i := len(heads) - 1; i > 0; i-- {
		before := heads[i-1]
		count -= heads[i].Change
		if heads[i].At-before.At > moveGapMS || before.Change >= 0 {
			return at, ok
		}
		if float64(-before.Change) > leastOfAMove*float64(count-before.Change) {
			at, ok = before.At, true
		}
	}
	return at, ok
}
