package analysis

import "thawbook/analysis/series"

// Heat is said to fight the fans from so many hours of a winter on, and from such a part of the hours it was on: a
// start that overlaps a stop now and then is none (common practice, no source).
const (
	foughtLeastH     = 24
	foughtLeastShare = 0.05
	foughtWeight     = 40.0
)

// heatFindings are the heat sources that ran while a stage above their own was on, counted by the hours that no
// logger's error explains. The more there are, the more they weigh, up to those of spells; what a recovery gives back costs no
// fuel, and weighs the same however long.
func heatFindings(_ judgement, r *Review) (out []Finding) {
	for _, row := range r.Heats {
		on := row.On()
		if on == nil || !row.Overlap.OK || row.Overlap.Low < max(foughtLeastH, foughtLeastShare*on.Hours.High) {
			continue
		}
		weight := foughtWeight + min(row.Overlap.Mid/20, 30)
		if row.Source.Kind == "recovery" {
			weight = foughtWeight
		}
		out = append(out, Finding{Code: "heat_against_fans", About: row.Source.Name, Weight: weight,
			Evidence: row.Overlap.Evidence, Look: longestSpan(row.Fought),
			Figures: []NamedFigure{{"overlap_hours", row.Overlap}, {"heat_hours", on.Hours}}})
	}
	return out
}

// On is what is known best of when a source was on: what ran, else what was called for; nil of neither.
func (row HeatRow) On() *Work {
	if row.Ran != nil {
		return row.Ran
	}
	return row.Called
}

// longestSpan is the first of the longest of some stretches; it is empty for none.
func longestSpan(all []series.Span) (best series.Span) {
	for _, s := range all {
		if s.To-s.From > best.To-best.From {
			best = s
		}
	}
	return best
}
