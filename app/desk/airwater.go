package desk

import (
	"slices"
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// AirWater is what air and water did in a barn: wet surfaces, dry stretches and what they went with, how even the
// room was, added heat.
type AirWater struct {
	Sentence string
	Lacks    []string // a line each for what can't be told, and what would tell
	Walls    Table
	Dry      []DryView
	DryHelp  string // how the dry stretches were counted, and split where the weather is known
	Even     string
	Loggers  Table // the room's, each by itself, those outside the band longest
	Heat     Table
	Exposure Table    // hours inside and outside the bands, over the whole winter and by phase
	Untold   []string // a line for each quantity that it can't tell
	Mould    []string // deep: only behind a press
	Cautions []string
}

// DryView is a dry stretch in words.
type DryView struct {
	Text string
	Look series.Span
}

// AirWaterOf makes the Air and water screen of one barn.
func AirWaterOf(in analysis.Input, r analysis.Review, u Units) AirWater {
	b := newBarn(in, r, u)
	v := AirWater{Walls: b.wallTable(), Even: b.evenWords(), Loggers: b.loggerTable(), Heat: b.heatTable(), Mould: b.mouldWords(), Cautions: []string{cautionMould, cautionAir, cautionHeat}}
	for _, d := range r.Dryness {
		v.Dry = append(v.Dry, DryView{b.dryWords(d), d.Span})
	}
	v.DryHelp = HelpLine("dry_runs")
	if slices.ContainsFunc(r.Dryness, func(d analysis.DryStretch) bool { return d.WeatherHours.OK }) {
		v.DryHelp += " " + HelpLine("dry_split")
	}
	v.Sentence, v.Lacks = b.waterSentence(), b.waterLacks()
	v.Exposure, v.Untold = b.exposureTable()
	return v
}

// waterSentence is which wall was wet longest, and how damp and how dry the air was.
func (b barn) waterSentence() string {
	if b.r.Traces.RoomRelHum.Len() == 0 {
		return "What the water in the air did can't be told: no logger in the room recorded humidity."
	}
	air := "the air was " + b.damperWords() + b.parchedWords() + "."
	if wet := b.wettestWords(); wet != "" {
		air = wet + "; " + air
	}
	return capital(air)
}

// wettestWords are which listed wall or ceiling was wet longest; empty where none can be judged. Metal does not count.
func (b barn) wettestWords() string {
	wettest, hours := "", 0.0
	for _, s := range b.r.Surfaces {
		if h := s.DewHours.Mid + s.FrostHours.Mid; s.DewHours.OK && s.Kind != "metal" && h > hours {
			wettest, hours = s.Name, h
		}
	}
	switch {
	case b.judgedSurfaces() == 0:
		return ""
	case hours < 1:
		return "no listed wall or ceiling was wet for as much as an hour"
	}
	return "the " + wettest + " was wet longest, " + Hours(hours)
}

// damperWords are "damper than 75 % for 331 h and "; empty for less than an hour.
func (b barn) damperWords() string {
	good, ok := b.band("relative_humidity", "good")
	if !ok || good.HoursAbove < 1 {
		return ""
	}
	edge := "its band"
	if good.High != nil {
		edge = Percent(*good.High / 100)
	}
	return "damper than " + edge + " for " + Hours(good.HoursAbove) + " and "
}

// parchedWords are for how long the air was parched.
func (b barn) parchedWords() string {
	dry := 0.0
	for _, d := range b.r.Dryness {
		dry += float64(d.Span.To-d.Span.From) / series.HourMS
	}
	if dry == 0 {
		return "never parched for as long as a day"
	}
	return "parched for " + Hours(dry) + " in " + plural(number(float64(len(b.r.Dryness)), 0), "long stretch", "long stretches")
}

// waterLacks are a line each for what is missing.
func (b barn) waterLacks() (out []string) {
	add := func(when bool, text string) {
		if when {
			out = append(out, text)
		}
	}
	noOut := b.r.Traces.Outdoor.Len() == 0
	add(b.r.Traces.RoomRelHum.Len() == 0, "Walls and dryness need a logger in the room that records humidity.")
	add(noOut, "To count the wet hours of walls, add the temperature outside; the file of a weather station nearby will do.")
	add(!noOut && len(b.r.Surfaces) == 0, "Wet hours need a listed wall or ceiling; name "+b.wallToName("the coldest one")+".")
	add(len(b.in.Heats) == 0, "To tell what added heat did, a heat source with a record of when it ran is needed.")
	add(len(b.r.Uniformity) == 0, "To tell how even the room was, two loggers in it are needed.")
	return out
}

// wallToName is the wall or ceiling to be listed first: that which a logger hangs on, else the other.
func (b barn) wallToName(other string) string {
	var on []string
	for _, l := range b.in.Loggers {
		if surfaceKinds[l.Place] != "" && !slices.Contains(on, l.Name) {
			on = append(on, l.Name)
		}
	}
	switch len(on) {
	case 0:
		return other
	case 1:
		return "what " + on[0] + " hangs on"
	}
	return "what " + listed(on) + " hang on"
}

// wallTable are the listed surfaces with their hours.
func (b barn) wallTable() Table {
	t := Table{Columns: []Column{{Title: "Surface"}, {Title: "Wet", Unit: "h", Number: true}, {Title: "Of it frosted", Unit: "h", Number: true},
		{Title: "May have been", Unit: "h", Number: true}, {Title: "Warmth that reaches it"}}}
	for _, s := range b.r.Surfaces {
		row := []string{capital(s.Name), noNumber, noNumber, noNumber, Percent(s.Factor.Mid) + ", " + evidenceWord(s.Factor.Evidence)}
		if s.DewHours.OK {
			row[1], row[2] = hoursNumber(s.DewHours.Mid+s.FrostHours.Mid), hoursNumber(s.FrostHours.Mid)
			row[3] = rangeOf(hoursNumber(s.DewHours.Low+s.FrostHours.Low), hoursNumber(s.DewHours.High+s.FrostHours.High))
		}
		t.Rows = append(t.Rows, row)
		for column, kinds := range map[int][]string{1: {"dew", "frost"}, 2: {"frost"}} {
			t.lookAt(column, longest(spansOf(b.spells(s.Name, kinds...), b.span())))
		}
	}
	return t
}

// dryWords are a dry stretch and what it went with.
func (b barn) dryWords(d analysis.DryStretch) string {
	text := b.u.Dates(d.Span) + ": parched for " + Hours(float64(d.Span.To-d.Span.From)/series.HourMS)
	if d.IntakePct.OK {
		text += "; the air outside, once as warm as the room, was at " + Percent(d.IntakePct.Mid/100)
	}
	var parts []string
	add := func(f analysis.Figure, words string) {
		if f.OK && f.Mid >= 0.5 {
			parts = append(parts, Hours(f.Mid)+" "+words)
		}
	}
	add(d.BothHours, "with both dry weather and added heat")
	add(d.HeatHours, "with added heat alone")
	add(d.WeatherHours, "with dry weather")
	add(d.NeitherHours, "with neither")
	if len(parts) > 0 {
		text += "; " + strings.Join(parts, ", ")
	}
	return text + "."
}

// evenWords say how far apart the room's loggers were; empty with fewer than two.
func (b barn) evenWords() string {
	for _, u := range b.r.Uniformity {
		if u.Place != b.place() || u.KnownHours == 0 {
			continue
		}
		text := "The room's warmest and coldest logger were "
		if share := u.ApartHours.Mid / u.KnownHours; share < 0.005 {
			text += "hardly ever more than " + b.u.Diff(2) + " apart"
		} else {
			text += "more than " + b.u.Diff(2) + " apart in " + OfHundred(share) + " hours"
		}
		if warm, cold := mostNamedWeeks(u.Weeks); warm != "" {
			text += "; most weeks " + warm + " was the warmest and " + cold + " the coldest"
		}
		return text + "."
	}
	return ""
}

// mostNamedWeeks are the loggers that were warmest and coldest in more than half of the weeks; empty where none was.
func mostNamedWeeks(weeks []analysis.UnevenWeek) (warm, cold string) {
	warms, colds := map[string]int{}, map[string]int{}
	for _, w := range weeks {
		warms[w.Warmest]++
		colds[w.Coldest]++
		if 2*warms[w.Warmest] > len(weeks) {
			warm = w.Warmest
		}
		if 2*colds[w.Coldest] > len(weeks) {
			cold = w.Coldest
		}
	}
	if warm == "" || cold == "" {
		return "", ""
	}
	return warm, cold
}

// heatTable are the heat sources with their hours and for how many of them they fought the fans.
func (b barn) heatTable() Table {
	t := Table{Columns: []Column{{Title: "Heat"}, {Title: "Ran", Unit: "h", Number: true}, {Title: "How known"}, {Title: "With a bigger fan on", Unit: "h", Number: true}}}
	for _, h := range b.r.Heats {
		row := []string{capital(h.Source.Name), noNumber, "no record", noNumber}
		w := h.Ran
		if w == nil {
			w = h.Called
		}
		if w != nil && w.Hours.OK {
			row[1], row[2] = hoursNumber(w.Hours.Mid), evidenceWord(w.Hours.Evidence)
		}
		if h.Overlap.OK {
			row[3] = hoursNumber(h.Overlap.Mid)
		}
		t.Rows = append(t.Rows, row)
		if w != nil {
			t.lookAt(1, longest(w.On))
		}
		t.lookAt(3, longest(h.Fought))
	}
	return t
}

// mouldWords are the surfaces' mould indices with what the number means.
func (b barn) mouldWords() (out []string) {
	for _, s := range b.r.Surfaces {
		if s.MouldIndex.OK {
			out = append(out, capital(s.Name)+": mould index "+number(s.MouldIndex.Mid, 1)+" ("+rangeOf(number(s.MouldIndex.Low, 1), number(s.MouldIndex.High, 1))+
				") of 6 for bare pine; 1 is seen under a microscope, 3 with the eye (Hukka and Viitanen 1999).")
		}
	}
	return out
}
