package analysis

import (
	"time"

	"thawbook/analysis/series"
)

// phases cut the bees' time into deep winter and late winter, which starts on 1 March of the winter's zone
// (common practice, no source: brood rearing and warm days begin about then).
func phases(s series.Span, zone *time.Location) []Phase {
	if s.To <= s.From {
		return []Phase{}
	}
	march := firstOfMarch(s.From, zone)
	if march <= s.From || march >= s.To {
		name := "deep winter"
		if m := time.UnixMilli(s.From).In(zone).Month(); m >= time.March && m < time.August {
			name = "late winter"
		}
		return []Phase{{name, s}}
	}
	return []Phase{
		{"deep winter", series.Span{From: s.From, To: march}},
		{"late winter", series.Span{From: march, To: s.To}},
	}
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
