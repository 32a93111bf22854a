package compare

import (
	"thawbook/analysis"
	"thawbook/analysis/stats"
)

// Losses are the hives found dead in both barns, as shares. Hives were not assigned to barns by chance, mites, queens and
// stores kill more than thermostats, and one winter is one winter: a difference of shares says what was counted and not
// what it came of.
type Losses struct {
	A, B                  Loss
	Difference, Low, High float64 // of the shares, A − B, with its 95 % interval; only where Unknown is empty
	Unknown               string
	Verdict               Verdict
}

// Loss is how many hives of a barn were found dead.
type Loss struct {
	HivesIn   float64 // the most that were in at a time; 0 where there is no ledger
	Dead      float64
	Of        float64 // of how many
	Sample    bool    // of so many that were looked at; else of all
	Share     float64 // 0–1
	Low, High float64 // its 95 % interval
	Unknown   string  // no_dead_count, no_head_count, more_dead_than_hives
}

// lossesOf compares two barns' losses.
func lossesOf(a, b analysis.Input) Losses {
	l := Losses{A: LossOf(a), B: LossOf(b), Verdict: Unknown}
	switch {
	case l.A.Unknown != "":
		l.Unknown = l.A.Unknown
	case l.B.Unknown != "":
		l.Unknown = l.B.Unknown
	default:
		l.Difference, l.Low, l.High = stats.TwoShares(l.A.Dead, l.A.Of, l.B.Dead, l.B.Of)
		l.Verdict = verdictOf(l.Low, l.High)
	}
	return l
}

// verdictOf is what an interval says of a difference.
func verdictOf(low, high float64) Verdict {
	switch {
	case low > 0:
		return More
	case high < 0:
		return Less
	}
	return CantTell
}

// deadCount is the kind of note that says how many hives were found dead.
const deadCount = "dead count"

// LossOf adds up a barn's dead counts. Where some were of a sample, those alone count, and stand for the barn.
func LossOf(in analysis.Input) Loss {
	var l Loss
	hives := 0
	for _, h := range in.Heads {
		hives += h.Change
		l.HivesIn = max(l.HivesIn, float64(hives))
	}
	l.Unknown = "no_dead_count"
	for _, n := range in.Notes {
		switch {
		case n.Kind != deadCount || n.Value == nil:
		case n.Of != nil && !l.Sample:
			l.Dead, l.Of, l.Sample, l.Unknown = *n.Value, *n.Of, true, ""
		case n.Of != nil:
			l.Dead, l.Of = l.Dead+*n.Value, l.Of+*n.Of
		case !l.Sample:
			l.Dead, l.Of, l.Unknown = l.Dead+*n.Value, l.HivesIn, ""
		}
	}
	switch {
	case l.Unknown != "":
		return l
	case l.Of == 0:
		l.Unknown = "no_head_count"
		return l
	case l.Dead > l.Of || l.Dead < 0:
		l.Unknown = "more_dead_than_hives"
		return l
	}
	l.Share = l.Dead / l.Of
	l.Low, l.High = stats.Wilson(l.Dead, l.Of)
	return l
}
