package desk

import (
	"strings"
	"time"

	"thawbook/analysis"
	"thawbook/app/winter"
)

// DayProposal is a moment the loggers tell of: as text to take over, empty where they can't tell, and why.
type DayProposal struct{ Text, Why string }

// BeesSeen are when a barn's bees went in and came out as its loggers tell it.
func (b Book) BeesSeen(barn int) (in, out DayProposal) {
	loc, err := winter.Location(b.doc.Zone)
	if err != nil || barn < 0 || barn >= b.Barns() {
		return DayProposal{}, DayProposal{}
	}
	seen := b.Result.Barns[barn].Seen
	return proposalOf(seen.In, edgeWords[0], loc), proposalOf(seen.Out, edgeWords[1], loc)
}

// edgeWords say why a day is proposed, or why none is, by the reason's code: for bees in, then for bees out. They
// follow the logger's name.
var edgeWords = [2]map[string]string{
	{
		"stood_warmer":         " came from a warmer place and settled in the barn then. The bees likely came with it, and may have come later.",
		"stood_colder":         " came from a colder place and settled in the barn then. The bees likely came with it, and may have come later.",
		"swung_with_days":      " rose and fell with day and night before, and kept calm from then on.",
		"grew_warm":            " came into a cool barn before; it grew warm from then on, as bees make it.",
		"grew_moist":           " came into a barn before whose air held no more water than that outdoors; doors were opened then, and from then on it held what bees give off.",
		"fan_started":          " shows that the fan that is always on was started then and kept on.",
		"record_begins_inside": " can't tell: nothing in its record shows it coming in.",
	},
	{
		"stood_warmer":       " left for a warmer place after that.",
		"stood_colder":       " left for a colder place after that.",
		"swung_with_days":    " kept calm until then, and rose and fell with day and night after.",
		"fan_stopped":        " shows that the fan that is always on was stopped then and not started again.",
		"record_ends_inside": " can't tell: nothing in its record shows it going out.",
	},
}

// proposalOf is an edge in words.
func proposalOf(e analysis.Edge, words map[string]string, loc *time.Location) DayProposal {
	why, known := words[e.Reason]
	if !known || e.Logger == "" {
		return DayProposal{Why: "The loggers can't tell: none shows a fortnight or more of a barn's calm air."}
	}
	p := DayProposal{Why: "The logger " + e.Logger + why}
	if e.OK() {
		p.Text = time.UnixMilli(e.At).In(loc).Format(momentLayouts[0])
	}
	if e.Until > 0 {
		p.Why += " They were in by " + time.UnixMilli(e.Until).In(loc).Format(momentLayouts[0]) + ", as the air's water or warmth tells."
	}
	if e.Sure == analysis.EdgeLikely && !strings.Contains(why, "likely") {
		p.Why += " That is likely, not certain."
	}
	return p
}
