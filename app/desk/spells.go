package desk

import (
	"strings"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// SpellsView is every unbroken run outside a safe band: one sentence and a table that can be put in any order.
type SpellsView struct {
	Sentence string
	Columns  []Column
	Rows     []SpellRow
	Help     string
}

// SpellRow is one spell: its cells, what each is ordered by, and what went with it.
type SpellRow struct {
	keyed
	Says string
	Look series.Span
}

// Sorted are the rows in the order of a column, rising or falling; rows that are alike keep their order.
func (v SpellsView) Sorted(column int, falling bool) []SpellRow {
	return rowsInOrder(v.Rows, column, falling)
}

// SpellsOf makes the Spells screen of one barn.
func SpellsOf(in analysis.Input, r analysis.Review, u Units) SpellsView {
	b := newBarn(in, r, u)
	v := SpellsView{Sentence: b.spellsSentence(), Help: HelpLine("went_with"), Columns: []Column{
		{Title: "Began"}, {Title: "What", About: "outside of"}, {Title: "Where"}, {Title: "Lasted", Unit: "h", Number: true}, {Title: "Farthest", Number: true}, {Title: "Went with"},
	}}
	for _, s := range r.Spells {
		v.Rows = append(v.Rows, b.spellRow(s))
	}
	return v
}

// spellsSentence is "Outside the safe bands in the room: 26 warm spells (191 h), 9 damp (310 h)." Walls come behind.
func (b barn) spellsSentence() string {
	room := b.spellCounts(func(s analysis.Spell) bool { return s.Place == b.place() }, "warm", "cold", "damp", "dry", "moist")
	walls := b.spellCounts(func(analysis.Spell) bool { return true }, "dew", "frost")
	switch {
	case room == "" && walls == "" && b.unread():
		return "Whether it was warm, cold, damp or dry for long can't be told: there is no reading from the room."
	case room == "" && walls == "":
		return "No spell outside the safe bands was long enough to tell of." + b.partKnown()
	case room == "":
		return "The room kept inside its safe bands; walls and ceilings: " + walls + "." + b.partKnown()
	case walls != "":
		walls = "; walls and ceilings: " + walls
	}
	return "Outside the safe bands in the room: " + room + walls + "." + b.partKnown()
}

// partKnown is " Known for 66 of 100 hours.", of temperature, where a twentieth or more of the bees' time is not.
func (b barn) partKnown() string {
	if b.r.Traces.Room.Len() == 0 || b.r.Coverage >= mostlyKnown {
		return ""
	}
	return " " + knownFor(b.r.Coverage) + "."
}

// mostlyKnown is the share of the bees' time from which what is not known is left unsaid (common practice, no source).
const mostlyKnown = 0.95

// spellCounts are how many spells of each kind there were, with their hours.
func (b barn) spellCounts(count func(analysis.Spell) bool, kinds ...string) string {
	var parts []string
	for _, kind := range kinds {
		n, hours := 0, 0.0
		for _, s := range b.r.Spells {
			if s.Kind == kind && count(s) {
				n, hours = n+1, hours+s.Hours
			}
		}
		if n > 0 {
			word := spellWord(kind)
			if kind == "moist" {
				word = "of " + word
			}
			parts = append(parts, number(float64(n), 0)+" "+word+" ("+Hours(hours)+")")
		}
	}
	return strings.Join(parts, ", ")
}

func (b barn) spellRow(s analysis.Spell) SpellRow {
	went := make([]string, 0, len(s.WentWith))
	for _, c := range s.WentWith {
		went = append(went, strings.ReplaceAll(shortCauses[c.Code], "{it}", c.About))
	}
	short := listed(went)
	switch {
	case len(went) == 0 && b.knowsRoomAlone():
		short = "can't tell"
	case len(went) == 0:
		short = "none found"
	}
	row := SpellRow{Look: s.Span, keyed: keyed{
		Cells: []string{b.u.Clock(s.Span.From), capital(spellWord(s.Kind)), s.Place, hoursNumber(s.Hours), b.farthest(s), short},
		keys:  []float64{float64(s.Span.From), 0, 0, s.Hours, s.Peak, 0},
		words: []string{"", s.Kind, s.Place, "", s.Quantity, short},
	}}
	row.Says = b.spellSays(s)
	return row
}

// knowsRoomAlone says whether nothing is known but the air of the room: there is nothing that a spell could be seen to go with.
func (b barn) knowsRoomAlone() bool {
	return b.r.Traces.Outdoor.Len() == 0 && len(b.r.Stages) == 0 && len(b.r.Heats) == 0
}

// farthest is the value farthest out, with its unit.
func (b barn) farthest(s analysis.Spell) string {
	switch s.Quantity {
	case "relative_humidity":
		return Percent(s.Peak / 100)
	case "surface_margin":
		return b.u.Diff(s.Peak)
	}
	return b.u.Temp(s.Peak)
}

// spellSays is a spell in a sentence or two, with what went with it and for how much of it.
func (b barn) spellSays(s analysis.Spell) string {
	at := " at the "
	if s.Place == "room" {
		at = " in the "
	}
	text := capital(spellWord(s.Kind)) + at + s.Place + " from " + b.u.Clock(s.Span.From) + " to " + b.until(s.Span) + ", for " + Hours(s.Hours)
	if s.Cut {
		text += ", cut by a gap or by the end of the time that is judged"
	}
	text += "."
	switch {
	case len(s.WentWith) == 0 && b.knowsRoomAlone():
		return text + " What it went with can't be told: nothing is known of the air outside, of fans or of heat."
	case len(s.WentWith) == 0:
		return text + " Nothing recorded was clearly different while it lasted."
	}
	var parts []string
	for _, c := range s.WentWith {
		parts = append(parts, OfHundred(c.Share)+" hours fell "+strings.ReplaceAll(causeWords[c.Code], "{it}", c.About)+" ("+OfHundred(c.Usual)+" in the days around)")
	}
	return text + " Of it and the three hours before, " + strings.Join(parts, "; ") + "."
}

// until is the end of a stretch, without its day where it began that day.
func (b barn) until(s series.Span) string {
	if b.u.Date(s.From) == b.u.Date(s.To) {
		return b.u.local(s.To).Format("15:04")
	}
	return b.u.Clock(s.To)
}

// shortCauses name causes in a table's cell.
var shortCauses = map[string]string{
	analysis.OutdoorWarm:   "warm air outside",
	analysis.OutdoorCold:   "cold outside",
	analysis.OutdoorHumid:  "damp air outside",
	analysis.OutdoorDry:    "dry air outside",
	analysis.NotRun:        "{it} stood though called for",
	analysis.RunUncalled:   "{it} ran uncalled",
	analysis.AlwaysOnOff:   "{it} stood",
	analysis.NotCalled:     "no stage called for",
	analysis.FansAtLimit:   "every fan on",
	analysis.BigStages:     "bigger fans",
	analysis.HeatOn:        "heat on ({it})",
	analysis.HeatOff:       "heat off ({it})",
	analysis.RoomDamp:      "damp room",
	analysis.JustCarriedIn: "hives just carried in",
	analysis.PowerCut:      "power cut",
	analysis.DoorsOpen:     "doors open",
}
