package desk

import (
	"slices"
	"strings"

	"thawbook/analysis"
)

// What is said of heat that ran while fans above its own stage were on, and what to look at.
const (
	heatAgainstFans = "heat_against_fans"
	foughtTail      = ": the fans blew out what the heat brought in."
	foughtDo        = "Look at the heat's setting: it should stop below where that stage starts. Do not cut the always-on air."
)

// wholeShare is the part of the hours from which one stage is named for all that fought a heat source.
const wholeShare = 0.95

// foughtWords are "floor heat and stage 3 ran at the same time for 71 h (68–75 h) of the heat's 140 h".
func (b barn) foughtWords(f analysis.Finding) string {
	hours, heat := f.Figure("overlap_hours"), f.Figure("heat_hours")
	text := f.About + " and " + b.foughtBy(f.About) + " ran at the same time for " + Hours(hours.Mid)
	if b.onlyCalled(f.About) {
		text = f.About + " and " + b.foughtBy(f.About) + " were called for at the same time for " + Hours(hours.Mid)
	}
	if hoursNumber(hours.Low) != hoursNumber(hours.High) {
		text += " (" + HoursRange(hours.Low, hours.High) + ")"
	}
	if heat.OK {
		text += " of the heat's " + Hours(heat.Mid)
	}
	return text
}

// foughtBy are the stages a source ran together with: the one that stands for nearly all of the hours, else all.
func (b barn) foughtBy(source string) string {
	var names []string
	for _, h := range b.r.Heats {
		if h.Source.Name != source {
			continue
		}
		for _, a := range h.Against {
			if a.Hours.OK && a.Hours.Mid >= wholeShare*h.Overlap.Mid {
				return a.Stage
			}
			if a.Hours.Mid >= 1 {
				names = append(names, a.Stage)
			}
		}
	}
	if len(names) == 0 {
		return "a bigger fan"
	}
	return strings.Join(names, " or ")
}

// onlyCalled says whether nothing shows when a source ran, but only what its stage was called for.
func (b barn) onlyCalled(source string) bool {
	return slices.ContainsFunc(b.r.Heats, func(h analysis.HeatRow) bool { return h.Source.Name == source && h.Ran == nil })
}

// foughtFound says whether a finding says of a source that it fought the fans.
func (b barn) foughtFound(source string) bool {
	return slices.ContainsFunc(b.r.Findings, func(f analysis.Finding) bool { return f.Code == heatAgainstFans && f.About == source })
}

// heatOnce tells of one heat source in one place: where dry or warm spells went with it, that it fought the fans is said
// there, and its setting is spoken of once.
func heatOnce(all []FindingView) (out []FindingView) {
	for _, v := range all {
		i := slices.IndexFunc(out, func(o FindingView) bool {
			return v.heat != "" && v.heat == o.heat && (v.tail == foughtTail) != (o.tail == foughtTail)
		})
		if i < 0 {
			out = append(out, v)
			continue
		}
		out[i] = out[i].withOther(v)
	}
	return out
}

// withOther is a finding with the other of its heat source behind it: one of them of spells, one of fans. It joins no more.
func (v FindingView) withOther(o FindingView) FindingView {
	spell := v
	if v.tail == foughtTail {
		spell = o
	}
	more := " Do not cut the always-on air."
	if spell.Do == causeDo["dry "+analysis.HeatOn] {
		more = " The heat should stop below where that stage starts."
	}
	v.Text += " " + o.Text
	v.Do, v.Sure = spell.Do+more, spell.Sure
	v.heat, v.tail = "", ""
	return v
}
