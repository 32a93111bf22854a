package desk

import (
	"math"
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// FindingView is something worth a look before next winter: what was seen, what to look at, and how sure it is.
type FindingView struct {
	Text string
	Do   string
	Sure string
	Mark Mark
	Look series.Span // empty where it has no one place

	what, tail string // of one that others may join: "84 h of the 110 h of warm spells", " fell in …."
	heat       string // the heat source it is about
}

// Findings are a barn's findings in a keeper's words, what to look at first on top.
func Findings(in analysis.Input, r analysis.Review, u Units) []FindingView {
	b := newBarn(in, r, u)
	var all []FindingView
	for _, f := range r.Findings {
		if v := b.finding(f); v.Text != "" {
			all = append(all, v)
		}
	}
	return causesOnce(heatOnce(all))
}

// causesOnce joins findings of one cause with one thing to do.
func causesOnce(all []FindingView) []FindingView {
	out := []FindingView{}
	for _, v := range all {
		i := slices.IndexFunc(out, v.alike)
		if i < 0 {
			out = append(out, v)
			continue
		}
		and := " and "
		if v.tail == foughtTail {
			and = ", and "
		}
		out[i].what += and + v.what
		out[i].Text = out[i].joined()
	}
	return out
}

// alike says whether two findings are of one cause with one thing to do: the second would only repeat the first.
func (v FindingView) alike(o FindingView) bool {
	return v.tail != "" && v.tail == o.tail && v.Do == o.Do && v.Sure == o.Sure
}

// joined is "84 h of the 110 h of warm spells fell in …."
func (v FindingView) joined() string { return capital(v.what) + v.tail }

// actsFrom is the weight from which a finding calls for something to be done.
const actsFrom = 75

// finding is one finding in words; its text is empty for a code without any.
func (b barn) finding(f analysis.Finding) FindingView {
	v := FindingView{Mark: MarkWatch, Look: f.Look, Sure: restsOn(f.Evidence)}
	if f.Weight >= actsFrom {
		v.Mark = MarkAct
	}
	if kind, cause, ok := strings.Cut(f.Code, "_with_"); ok {
		var when string
		if v.what, when, v.Do = wentWith(f, kind, cause); when != "" {
			v.tail = " fell " + when + "."
			v.Text = v.joined()
		}
		switch {
		case cause == analysis.HeatOn:
			v.heat = f.About
		case kind == "dry" && cause == analysis.OutdoorDry && b.heatedWhenDry():
			v.Do = weatherAndHeatDo
		case cause == analysis.OutdoorDry, cause == analysis.JustCarriedIn: // there is nothing to do
			v.Mark = MarkNone
		}
		return v
	}
	if f.Code == heatAgainstFans {
		v.heat, v.what, v.tail, v.Do = f.About, b.foughtWords(f), foughtTail, foughtDo
		v.Text = v.joined()
		return v
	}
	for _, all := range []map[string]findingText{findingWords, eventFindingWords} {
		if words, ok := all[f.Code]; ok {
			v.Text, v.Do = words.text(b, f), words.do
		}
	}
	return v
}

// weatherAndHeatDo is what to look at where dry weather and added heat went together.
const weatherAndHeatDo = "Dry weather had its part; what can be turned is the heat. Never cut the always-on air or add water for it."

// heatedWhenDry says whether dry spells went with added heat too.
func (b barn) heatedWhenDry() bool {
	return slices.ContainsFunc(b.r.Findings, func(f analysis.Finding) bool { return f.Code == "dry_with_"+analysis.HeatOn })
}

// wentWith is what fell when, "84 h of the 110 h of warm spells", "in …", with what to look at; empty for a cause
// without words.
func wentWith(f analysis.Finding, kind, cause string) (what, when, do string) {
	words, known := causeWords[cause]
	if !known {
		return "", "", ""
	}
	hours, with := f.Figure("hours").Mid, f.Figure("hours_with").Mid
	part := Hours(with) + " of the " + Hours(hours)
	if hours-with < 0.5 {
		part = "all " + Hours(hours)
	}
	do = causeDo[kind+" "+cause]
	if do == "" {
		do = causeDo[cause]
	}
	return part + " " + spellsWords(kind, f.About), strings.ReplaceAll(words, "{it}", f.About), do
}

// spellsWords are "of warm spells".
func spellsWords(kind, about string) string {
	switch kind {
	case "dew":
		return "in which there was dew on the " + about
	case "frost":
		return "in which there was frost on the " + about
	}
	return "of " + kind + " spells"
}

// causeWords say when the hours of a spell fell; {it} is the stage or the heat source.
var causeWords = map[string]string{
	analysis.OutdoorWarm:   "when the air outside was hardly colder than the limit, or warmer",
	analysis.OutdoorCold:   "in the coldest weather of the winter",
	analysis.OutdoorHumid:  "when the air outside was as damp itself",
	analysis.OutdoorDry:    "when the air outside held least water",
	analysis.NotRun:        "while {it} stood, though it was called for",
	analysis.RunUncalled:   "while {it} ran, though no thermostat had called for it",
	analysis.AlwaysOnOff:   "while {it}, which is always on, stood",
	analysis.NotCalled:     "before any thermostat called for a fan",
	analysis.FansAtLimit:   "while every fan was on, with air outside cold enough to cool with",
	analysis.BigStages:     "while the bigger fans moved air",
	analysis.HeatOn:        "while heat was added ({it})",
	analysis.HeatOff:       "while the heat stood ({it})",
	analysis.RoomDamp:      "while the air in the room was damp",
	analysis.JustCarriedIn: "in the days after the hives came in",
	analysis.PowerCut:      "while the power was off, or in the hours after",
	analysis.DoorsOpen:     "while doors were open, or in the hours after",
}

// causeDo is what to look at, by kind and cause where it differs, else by cause (common practice, no source).
var causeDo = map[string]string{
	analysis.OutdoorWarm:           "No fan cools with such air. Look at shade, at airing in the cold hours of the night, at cooling, or at an earlier takeout.",
	"cold " + analysis.OutdoorCold: "Look at leaks and insulation, and at how much the always-on fan moves in deep cold; cut it only with the air's CO₂ and damp in view.",
	analysis.OutdoorCold:           "Look at the cold spot itself: insulation, and air blowing along it. Drier air in the room is the other half.",
	analysis.OutdoorHumid:          "More air would have brought no drier air. A little heat in such weather would have dried it; look whether the barn has any.",
	analysis.OutdoorDry:            "With dry weather alone there is nothing to turn. Never cut the always-on air or add water for it.",
	analysis.NotRun:                "Look at that fan, its belt, its breaker and its thermostat. Lock it out first.",
	analysis.RunUncalled:           "Look at that fan's thermostat and switch; an electrician's work.",
	analysis.AlwaysOnOff:           "Find out when and why it stood. An always-on fan deserves an alarm of its own.",
	analysis.NotCalled:             "Look at the lowest on-temperature: it may lie above the safe band. Change one setting at a time.",
	analysis.FansAtLimit:           "The fans are at their limit. Look first at what they really move, past flaps, light traps and dirt, and at heat that should be off; then one more fan.",
	"cold " + analysis.BigStages:   "Look at the bigger stages' off-temperatures, and whether one fan can be made smaller.",
	analysis.BigStages:             "Look at why so much air was needed: heat from a floor or a heater calls for it, and it dries the room.",
	"dry " + analysis.HeatOn:       "Look at the heat's setting: warmed air is dry air. Never cut the always-on air or add water for it.",
	analysis.HeatOn:                "Look at the heat's thermostat: it should go off a degree or more below the first fan's on-temperature.",
	analysis.HeatOff:               "Look at why the heat stood, and whether anything told of it.",
	analysis.RoomDamp:              "Look at what made the air damp first; the surface only shows it.",
	analysis.JustCarriedIn:         "Wet hives dry out within days when they are given air. Nothing to change if it passed.",
	analysis.PowerCut:              "Look at what tells of a power cut, and at a generator sized for every fan: exhaust outdoors, a transfer switch by an electrician.",
	analysis.DoorsOpen:             "Nothing to change if the work had to be done; in deep cold or thaw keep it short.",
}

// findingText is what is said of a kind of finding, and what to do.
type findingText struct {
	text func(barn, analysis.Finding) string
	do   string
}

// findingWords are the findings that are no causes: what was seen, and what to look at.
var findingWords = map[string]findingText{
	"stage_did_not_run": {func(_ barn, f analysis.Finding) string {
		return capital(f.About) + " was called for " + calledHours(f.Figure("called_hours")) + " and ran for " + Hours(f.Figure("ran_hours").Mid) + bothKnown(f) + "."
	}, "Look at that fan, its belt, its breaker and its thermostat, and at the day the two part. Lock it out first."},
	"stage_ran_uncalled": {func(_ barn, f analysis.Finding) string {
		return capital(f.About) + " ran for " + Hours(f.Figure("ran_hours").Mid) + ", though it was called for " + calledHours(f.Figure("called_hours")) + bothKnown(f) + "."
	}, "Look whether its thermostat is set as it is written down here, and at its switch; an electrician's work."},
	"stage_starts_often": {func(_ barn, f analysis.Finding) string {
		return capital(f.About) + " started " + plural(number(f.Figure("starts").Mid, 0), "time", "times") + ", " + number(f.Figure("busiest_hour_starts").Mid, 0) + " of them in its busiest hour."
	}, "A wider step between its on- and off-temperature spares the motor and its switch; a fan that is too big for its step starts often too."},
	"warm_unexplained": {unexplainedWords("warm"), unexplainedDo},
	"cold_unexplained": {unexplainedWords("cold"), unexplainedDo},
	"damp_unexplained": {unexplainedWords("damp"), unexplainedDo},
	"dry_unexplained":  {unexplainedWords("dry"), unexplainedDo},
	"big_stages_carried_much": {func(b barn, f analysis.Finding) string {
		return b.carried(f.Figure("small_alone_percent")) + "; the bigger fans were needed in the rest."
	}, "Look at the size of these fans, and at heat that was left on, before anything bigger: the small fans should carry nearly all of the winter."},
	"surface_wet": {func(_ barn, f analysis.Finding) string {
		dew, frost := f.Figure("dew_hours"), f.Figure("frost_hours")
		return "The " + f.About + " was wet for " + Hours(dew.Mid+frost.Mid) + " (" + HoursRange(dew.Low+frost.Low, dew.High+frost.High) + ")."
	}, "Look at its insulation and at what blows along it; a logger hung on it for a winter tells how cold it really is."},
	"mould_could_begin": {func(_ barn, f analysis.Finding) string {
		return "On bare wood at the " + f.About + " mould could have begun to grow."
	}, "Look at it in daylight. Wear a mask, and don't brush mould dry."},
	"room_uneven": {func(b barn, f analysis.Finding) string {
		return "The " + f.About + "’s loggers were more than " + b.u.Diff(2) + " apart in " + OfHundred(f.Figure("apart_hours").Mid/f.Figure("known_hours").Mid) + " hours."
	}, "Look at where the air comes in and whether a mixing fan reaches the far end; hang two loggers together for a day to see that they agree."},
	"thermostat_apart": {func(b barn, f analysis.Finding) string {
		o := f.Figure("offset_k")
		way := "below"
		if o.Mid < 0 {
			way = "above"
		}
		return "The fans switched as if the thermostat read " + b.u.Diff(math.Abs(o.Mid)) + " " + way + " the logger."
	}, "Check both in melting ice or side by side before a setting is changed: either may be off, or they hang in different air."},
	"room_record_incomplete": {func(_ barn, f analysis.Finding) string {
		return "The room's temperature is known for " + OfHundred(f.Figure("known_share").Mid) + " hours of the bees' time."
	}, "Look at batteries and memory before next winter; a second cheap logger covers the first."},
}

// unexplainedDo is what to look at where no cause of spells is known.
const unexplainedDo = "Compare these days with what you noted or remember."

// unexplainedWords say that no cause of a kind of spell is known, and what would tell of one that is not there yet.
func unexplainedWords(kind string) func(barn, analysis.Finding) string {
	return func(b barn, f analysis.Finding) string {
		text := "Nothing in these files explains most of the " + Hours(f.Figure("hours").Mid) + " of " + kind + " spells."
		var lacking []string
		if b.r.Traces.Outdoor.Len() == 0 {
			lacking = append(lacking, "the temperature outside")
		}
		if !slices.ContainsFunc(b.r.Stages, func(row analysis.StageRow) bool { return row.Ran != nil }) {
			lacking = append(lacking, "a record of the fans")
		}
		if len(lacking) == 0 {
			return text
		}
		return text + " " + capital(listed(lacking)) + " might."
	}
}

// bothKnown is inBoth where a finding says that it is not nearly all the time of either.
func bothKnown(f analysis.Finding) string {
	if h := f.Figure("both_hours"); h.OK {
		return inBoth(h.Mid)
	}
	return ""
}

// inBoth is " in the 468 h for which both are known".
func inBoth(h float64) string { return " in the " + Hours(h) + " for which both are known" }

// calledHours are hours with their range, or "too uncertain to name".
func calledHours(f analysis.Figure) string {
	if !f.OK {
		return HoursRange(f.Low, f.High)
	}
	return Hours(f.Mid)
}

// FindingDoc is a finding for programs.
type FindingDoc struct {
	Code     string              `json:"code"`
	Barn     string              `json:"barn"`
	About    *string             `json:"about"`
	Weight   float64             `json:"weight"`
	Figures  map[string]RangeDoc `json:"figures"`
	Evidence string              `json:"evidence"`
	Text     string              `json:"text"`
}

// findingDocs are a barn's findings.
func findingDocs(in analysis.Input, r analysis.Review) []FindingDoc {
	b := newBarn(in, r, Units{})
	out := []FindingDoc{}
	for _, f := range r.Findings {
		v := b.finding(f)
		d := FindingDoc{f.Code, r.Barn, textOrNull(f.About), f.Weight, map[string]RangeDoc{}, string(f.Evidence), strings.TrimSpace(v.Text + " " + v.Do)}
		for _, n := range f.Figures {
			d.Figures[n.Name] = rangeDoc(n.Figure)
		}
		out = append(out, d)
	}
	return out
}
