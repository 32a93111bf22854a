package desk

import (
	"math"
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// humidity is about the room's air outside its band, damp side and dry side.
func (b barn) humidity() []Sentence {
	good, ok := b.band("relative_humidity", "good")
	if !ok {
		return nil
	}
	within := "inside the limits of the phase"
	if good.Low != nil && good.High != nil {
		within = "between " + number(*good.Low, 0) + " and " + Percent(*good.High/100)
	}
	known := good.HoursBelow + good.HoursIn + good.HoursAbove
	s := Sentence{Mark: MarkGood, weight: 40}
	s.Text = "The room's humidity was " + within + " throughout"
	if good.HoursAbove+good.HoursBelow >= 1 {
		s.Text = "The room's humidity was " + within + " for " + OfHundred(good.HoursIn/known) + " hours"
	}
	if good.HoursAbove >= 1 {
		s.Text += "; " + Hours(good.HoursAbove) + " damper" + b.ofWhichVeryDamp()
	}
	if good.HoursBelow >= 1 {
		s.Text += "; " + Hours(good.HoursBelow) + " drier"
	}
	s.Text += "."
	outside := (good.HoursAbove + good.HoursBelow) / known
	if outside > 0.02 {
		s.Mark, s.weight = MarkWatch, 50+30*outside
	}
	if b.r.Verdict.Damp.State == analysis.Yes || b.r.Verdict.Dry.State == analysis.Yes { // as the header has it
		s.Mark = MarkAct
	}
	kinds := "damp"
	if good.HoursBelow > good.HoursAbove {
		kinds = "dry"
	}
	if spells := b.spells(b.place(), kinds); len(spells) > 0 {
		s.Text += b.longest(spells, kinds)
		s.Look = longestSpell(spells).Span
	}
	s.Sure = b.humiditySure(good)
	return []Sentence{s}
}

func (b barn) ofWhichVeryDamp() string {
	watch, ok := b.band("relative_humidity", "watch")
	if !ok || watch.High == nil || watch.HoursAbove < 1 {
		return ""
	}
	return " (" + Hours(watch.HoursAbove) + " above " + Percent(*watch.High/100) + ")"
}

func (b barn) longest(spells []analysis.Spell, kind string) string {
	l := longestSpell(spells)
	if kind == "damp" {
		return " The longest damp spell, " + Hours(l.Hours) + " on " + b.u.Dates(l.Span) + ", reached " + Percent(l.Peak/100) + "."
	}
	return " The longest dry spell, " + Hours(l.Hours) + " on " + b.u.Dates(l.Span) + ", went down to " + Percent(l.Peak/100) + "."
}

func longestSpell(spells []analysis.Spell) analysis.Spell {
	best := spells[0]
	for _, s := range spells[1:] {
		if s.Hours > best.Hours {
			best = s
		}
	}
	return best
}

// humiditySure says how the share may move with the loggers' error.
func (b barn) humiditySure(good analysis.BandRow) string {
	errPct := 100 * b.r.Traces.RoomRelHumErr
	if errPct == 0 || good.AboveRange.High+good.BelowRange.High < 0.5 {
		return ""
	}
	text := "Humidity loggers may be " + number(errPct, 0) + " points off either way: "
	return text + HoursRange(good.AboveRange.Low, good.AboveRange.High) + " damper, " + HoursRange(good.BelowRange.Low, good.BelowRange.High) + " drier."
}

// surfaces are about the listed walls and ceilings, worst first, and cold metal apart.
func (b barn) surfaces() []Sentence {
	var out []Sentence
	var dryOnes []string
	for _, row := range b.r.Surfaces {
		if !row.DewHours.OK || !row.FrostHours.OK {
			continue
		}
		wet := row.DewHours.Mid + row.FrostHours.Mid
		if wet < 1 && row.Kind != "metal" {
			dryOnes = append(dryOnes, "the "+row.Name)
			continue
		}
		if wet >= 1 {
			out = append(out, b.wetSurface(row, wet))
		}
	}
	if len(dryOnes) > 0 {
		verb := " was"
		if len(dryOnes) > 1 {
			verb = " were"
		}
		out = append(out, Sentence{Text: capital(listed(dryOnes)) + verb + " not wet for as much as an hour, as far as can be worked out.", Mark: MarkGood, weight: 30})
	}
	return out
}

func (b barn) wetSurface(row analysis.SurfaceRow, wet float64) Sentence {
	s := Sentence{Mark: MarkAct, weight: 55 + math.Min(wet/5, 30)}
	s.Text = "The " + row.Name + " was wet for " + Hours(wet) + dewAndFrost(row)
	spells := b.spells(row.Name, "dew", "frost")
	if days, hours, ok := b.bulk(spells); ok {
		s.Text += ", " + Hours(hours) + " of it on " + b.u.Dates(days)
		s.Look = days
	}
	s.Text += "."
	s.Sure = "Worked out from the air inside and outside and how much of the room's warmth reaches it (" + Percent(row.Factor.Mid) + ", " + evidenceWord(row.Factor.Evidence) +
		"); it may have been " + HoursRange(row.DewHours.Low+row.FrostHours.Low, row.DewHours.High+row.FrostHours.High) + "."
	if row.Kind == "metal" {
		s.Text += " Cold metal sweats first; it does not count in the answer above."
		s.Mark, s.weight = MarkNone, 25
	}
	return s
}

// dewAndFrost is ", 7 h of it frosted".
func dewAndFrost(row analysis.SurfaceRow) string {
	switch {
	case row.FrostHours.Mid < 0.5:
		return ""
	case row.DewHours.Mid < 0.5:
		return ", all of it frost"
	}
	return ", " + Hours(row.FrostHours.Mid) + " of it as frost"
}

// sweating says below what temperature things would have been wet, where no wall can be worked out.
func (b barn) sweating() []Sentence {
	dew, ok := b.quantity("dew_point")
	if b.judgedSurfaces() > 0 || !ok || !dew.Mean.OK {
		return nil
	}
	return []Sentence{{
		Text: "Anything colder than the dew point would have sweated: " + b.u.Temp(dew.Mean.Mid) + " on average, " +
			b.u.Temp(dew.Max.Mid) + " at the dampest.",
		Sure:   "Worked out from temperature and humidity. " + b.wallsTake(),
		weight: 42,
	}}
}

// wallsTake says what is missing to tell which walls were colder than the dew point.
func (b barn) wallsTake() string {
	listed := slices.ContainsFunc(b.r.Surfaces, func(s analysis.SurfaceRow) bool { return s.Kind != "metal" })
	switch outdoors := b.r.Traces.Outdoor.Len() > 0; {
	case outdoors && listed:
		return "Which walls were that cold can't be told: too little is known of the air outside and of the room at the same time."
	case outdoors:
		return "A listed wall would tell which were that cold."
	case listed:
		return "The air outside would tell which walls were that cold."
	}
	return "The air outside and a listed wall would tell which were that cold."
}

// spellKinds are the kinds of spells of the room's air there were.
func (b barn) spellKinds() (out []string) {
	for _, kind := range []string{"warm", "cold", "damp", "dry"} {
		if len(b.spells(b.place(), kind)) > 0 {
			out = append(out, kind)
		}
	}
	return out
}

// orListed are words with "or" before the last.
func orListed(words []string) string { return strings.Replace(listed(words), " and ", " or ", 1) }

// cannotAndSettle says what the files leave open, and the one thing that would settle most of it.
func (b barn) cannotAndSettle() []Sentence {
	var open []string
	add := func(when bool, text string) {
		if when {
			open = append(open, text)
		}
	}
	noOut := b.r.Traces.Outdoor.Len() == 0
	add(b.r.Traces.RoomRelHum.Len() == 0, "whether it was damp or dry ("+lacks("no_humidity")+")")
	kinds := b.spellKinds()
	add(noOut && len(kinds) > 0, "whether the "+orListed(kinds)+" spells came with the weather (no temperature outside is known)")
	add(!noOut && len(b.r.Surfaces) == 0, "whether walls were wet (no wall or ceiling is listed)")
	add(len(b.in.Stages) == 0, "what the fans did (no stage is set down)")
	if f := b.r.Verdict.Fans.Figure; !f.OK && f.Unknown != "no_stages" {
		add(true, "how much the small fans carried ("+lacks(f.Unknown)+")")
	}
	var out []Sentence
	if len(open) > 0 {
		out = append(out, Sentence{Text: "What can't be told: " + strings.Join(open, "; ") + ".", Mark: MarkUnknown})
	}
	if text := b.settle(); text != "" {
		out = append(out, Sentence{Text: text})
	}
	return out
}

// settle is the one thing that would settle most, in the order in which each makes the others worth more.
func (b barn) settle() string {
	const lead = "What would settle most: "
	switch {
	case b.roomReadings() == 0:
		return lead + "a logger file from inside the room."
	case b.r.Traces.Room.Len() == 0:
		return lead + "a logger in the room that records temperature."
	case b.r.BeesBy.Weaker() == analysis.Assumed:
		return lead + b.openDays() + ", so that only their time is judged."
	case b.recordElsewhere():
		return lead + "the right year and days for the bees in and out, or the loggers' files of that winter."
	case b.outsiders() != "":
		return lead + "leaving out " + b.outsiders() + ", when it was not in the barn, or the right days for the bees."
	case b.r.Verdict.Held.Figure.Unknown == "less_than_a_day":
		return lead + "the days the bees went in and came out, which lie less than a day apart here, or more of the room's record."
	case b.r.Coverage < 0.9:
		return lead + "the missing part of the room's record, if a second logger or an earlier read-out holds it."
	case b.r.Traces.Outdoor.Len() == 0:
		return lead + "a file of the temperature outside; a weather station nearby will do."
	case b.r.Traces.RoomRelHum.Len() == 0:
		return lead + "a logger in the room that records humidity too."
	case len(b.in.Stages) == 0:
		return lead + "at what temperatures each fan stage was set to come on and go off."
	case len(b.r.Surfaces) == 0:
		return lead + "naming " + b.wallToName("the coldest wall or ceiling") + ", so that its wet hours can be worked out."
	case b.anyBlurred():
		return lead + "a logger hung beside the thermostat's own sensor, which would narrow the stages' hours."
	}
	return ""
}

// outsiders is "5 h of the record of East", of the first logger that stood elsewhere while bees were in; empty for none.
func (b barn) outsiders() string {
	for _, r := range b.r.Remarks {
		if r.Code == "logger_elsewhere" && len(r.Args) == 2 {
			return r.Args[1] + " h of the record of " + r.Args[0]
		}
	}
	return ""
}

// openDays are the days for which an end of the record stands.
func (b barn) openDays() string {
	switch by := b.r.BeesBy; {
	case by.In != analysis.Assumed:
		return "the day the bees came out"
	case by.Out != analysis.Assumed:
		return "the day the bees went in"
	}
	return "the days the bees went in and came out"
}

// anyBlurred says whether the logger can't tell one stage from the next.
func (b barn) anyBlurred() bool {
	return hasRemark(b.r.Remarks, "offset_half_stage_spacing") || hasRemark(b.r.Remarks, "control_is_room_mean")
}

func hasRemark(remarks []series.Remark, code string) bool {
	for _, r := range remarks {
		if r.Code == code {
			return true
		}
	}
	return false
}
