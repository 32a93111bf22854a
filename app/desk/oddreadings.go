package desk

import (
	"context"
	"slices"
	"strconv"

	"thawbook/analysis"
	"thawbook/analysis/plausible"
	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// misleading are the doubts about readings that bend a barn's figures while they count.
var misleading = []string{engine.DoubtStuck, engine.DoubtSaturated, engine.DoubtSentinel, engine.DoubtSwapped, engine.DoubtFahrenheit, engine.DoubtElsewhere, engine.DoubtApart}

// misleads says whether a proposal is about such readings, hardly in doubt.
func misleads(p engine.Proposal) bool {
	return p.Sure == plausible.Likely && slices.Contains(misleading, p.Remark.Code)
}

// withoutOdd judges the barns without the readings that can hardly be right and that the keeper did not say to keep; none where there
// are no such. The error is the context's.
func (k *Keeper) withoutOdd(ctx context.Context, w winter.Winter, proposals []engine.Proposal) ([]analysis.Review, error) {
	found := false
	for _, p := range proposals {
		l, known := w.Logger(p.Slot)
		if !known || !misleads(p) || len(p.Exclusions) == 0 {
			continue
		}
		next, err := winter.Exclude{At: p.Slot, Stretches: openStretches(l, p)}.Apply(w)
		if err != nil {
			continue
		}
		w, found = next, true
	}
	if !found {
		return nil, nil
	}
	r, err := engine.Review(ctx, w, k.files, k.cache, nil)
	return r.Barns, err
}

// odd is what of a logger's readings can hardly be right, and the longest stretch of it.
type odd struct {
	what string
	look series.Span
}

// odds are what of a barn's readings in the bees' time can hardly be right and counts all the same, the longest first; none where
// there is nothing of the kind, or nobody looked.
func (b Book) odds(barn int) (all []odd) {
	if b.stale {
		return nil
	}
	r := b.Result.Barns[barn]
	bees := []series.Span{{From: r.BeesIn, To: r.BeesOut}}
	for _, p := range b.looked.proposals {
		l, known := b.doc.Logger(p.Slot)
		if !known || p.Slot.List != barn || !misleads(p) {
			continue
		}
		var counts []series.Span
		for _, x := range openStretches(l, p) {
			counts = append(counts, series.Span{From: x.From, To: x.To})
		}
		if counts = series.Intersect(series.Union(counts), bees); len(counts) == 0 {
			continue
		}
		longest := slices.MaxFunc(counts, func(a, b series.Span) int { return int((a.To - a.From) - (b.To - b.From)) })
		all = append(all, odd{oddWords(l, p.Quantity), longest})
	}
	slices.SortStableFunc(all, func(a, b odd) int { return int((b.look.To - b.look.From) - (a.look.To - a.look.From)) })
	return all
}

// oddReadings is the sentence on a barn's readings that can hardly be right, and on what would be said without them; none where there
// are no such.
func (b Book) oddReadings(barn int, u Units) []Sentence {
	all := b.odds(barn)
	if len(all) == 0 {
		return nil
	}
	var named []string
	for _, o := range all[:min(len(all), mostNamed)] {
		named = append(named, o.what+" on "+u.Dates(o.look))
	}
	if n := len(all) - len(named); n > 0 {
		named = append(named, strconv.Itoa(n)+" more")
	}
	text := "Some readings can hardly be right, and count in all figures here: " + listed(named) + ". "
	if barn < len(b.looked.without) {
		with, _ := newBarn(b.Result.Inputs[barn], b.Result.Barns[barn], u).headline()
		without, _ := newBarn(b.Result.Inputs[barn], b.looked.without[barn], u).headline()
		if with == without {
			without = "the room's temperature held as it did with them."
		}
		text += "Without them " + lowerFirst(without) + " "
	}
	return []Sentence{{Text: text + "On Files each can be left out, or kept.", Mark: MarkWatch, Look: all[0].look}}
}

// InDoubt says whether readings of a barn that count can hardly be right, as far as anybody looked.
func (b Book) InDoubt() bool {
	for i := range b.Barns() {
		if len(b.odds(i)) > 0 {
			return true
		}
	}
	return false
}

// oddWords are "Bay 3's temperature", or the logger alone where both of its quantities are meant.
func oddWords(l winter.Logger, q plausible.Quantity) string {
	switch q {
	case plausible.Temperature:
		return l.Name + "’s temperature"
	case plausible.Humidity:
		return l.Name + "’s humidity"
	}
	return l.Name
}
