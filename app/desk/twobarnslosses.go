package desk

import (
	"fmt"

	"thawbook/analysis/compare"
)

// losses says how many hives were found dead in both barns, and what the difference comes to; empty where neither has a
// count.
func (s twoBarns) losses() string {
	l := s.p.Losses
	if l.A.Unknown == "no_dead_count" && l.B.Unknown == "no_dead_count" {
		return ""
	}
	return lostWords(s.p.A, l.A) + " " + lostWords(s.p.B, l.B) + s.lossGap()
}

// lostWords are one barn's hives found dead.
func lostWords(barn string, l compare.Loss) string {
	switch l.Unknown {
	case "no_dead_count":
		return fmt.Sprintf("How many hives of %s were found dead is not set down.", barn)
	case "no_head_count":
		return fmt.Sprintf("%s lost %s; how many hives went in is not set down.", barn, hives(l.Dead))
	case "more_dead_than_hives":
		return fmt.Sprintf("For %s more dead hives are set down than there were: look at the counts.", barn)
	}
	of := "of " + number(l.Of, 0)
	if l.Sample {
		of = "of " + number(l.Of, 0) + " looked at"
	}
	return fmt.Sprintf("%s lost %s %s, %s (%s).", barn, number(l.Dead, 0), of, tenths(l.Share), rangeOfTenths(l.Low, l.High))
}

// lossGap is what the difference of the shares comes to.
func (s twoBarns) lossGap() string {
	l := s.p.Losses
	if l.Unknown != "" {
		return ""
	}
	points := func(v float64) string { return withUnit(number(100*v, 1), "points") }
	gap := fmt.Sprintf("%s (%s to %s)", signedAs(l.Difference, points), points(l.Low), points(l.High))
	switch l.Verdict {
	case compare.More:
		return fmt.Sprintf(" %s lost the larger share: %s.", s.p.A, gap)
	case compare.Less:
		return fmt.Sprintf(" %s lost the larger share: %s for %s.", s.p.B, gap, s.p.A)
	}
	return fmt.Sprintf(" The difference, %s, could be chance.", gap)
}

func hives(n float64) string { return plural(number(n, 0), "hive", "hives") }

// rangeOfTenths is a range of shares to a tenth of a percent.
func rangeOfTenths(low, high float64) string {
	return withUnit(rangeOf(number(100*low, 1), number(100*high, 1)), "%")
}
