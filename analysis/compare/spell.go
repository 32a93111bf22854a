package compare

import (
	"thawbook/analysis"
	"thawbook/analysis/series"
)

// spells are the drafts of how many spells of each kind began, and how long they lasted, in the hours known in both; how
// sure such a difference is, the hours outside the bands tell. Those of the air are the room's; wet ones are those of the surfaces whose margins are compared.
func (c common) spells(a, b Side) (out []*draft) {
	ta, tb := a.Review.Traces, b.Review.Traces
	for _, kind := range []string{"warm", "cold"} {
		out = append(out, c.ofKind(kind, a, b, ta.RoomPlace, tb.RoomPlace, ta.Room, tb.Room)...)
	}
	for _, kind := range []string{"damp", "dry"} {
		out = append(out, c.ofKind(kind, a, b, ta.RoomPlace, tb.RoomPlace, ta.RoomRelHum, tb.RoomRelHum)...)
	}
	if sa, sb := coldest(a.Review.Surfaces), coldest(b.Review.Surfaces); sa != nil && sb != nil {
		for _, kind := range []string{"dew", "frost"} {
			out = append(out, c.ofKind(kind, a, b, sa.Name, sb.Name, sa.Margin, sb.Margin)...)
		}
	}
	return out
}

// ofKind are the drafts of one kind of spell at a place of each barn; none where neither had one.
func (c common) ofKind(kind string, a, b Side, placeA, placeB string, knownA, knownB series.Curve) []*draft {
	sa, sb := spellsAt(a.Review.Spells, kind, placeA), spellsAt(b.Review.Spells, kind, placeB)
	if len(sa)+len(sb) == 0 || knownA.Len() == 0 || knownB.Len() == 0 {
		return nil
	}
	count := c.draft(Row{Quantity: Spells, Measure: Count, Of: kind})
	hours := c.draft(Row{Quantity: Spells, Measure: Hours, Of: kind, Unit: "h"})
	count.total, hours.total, count.countedOnly, hours.countedOnly = true, true, true, true
	for _, p := range c.parts(knownA.Known, knownB.Known) {
		inB := later(p.Span, c.laterMS)
		count.add(p, same(begun(sa, p.Span)), same(begun(sb, inB)))
		hours.add(p, same(during(sa, p.Span)), same(during(sb, inB)))
	}
	return []*draft{count, hours}
}

// same is a figure that is told as it was counted.
func same(v float64) [3]float64 { return [3]float64{v, v, v} }

func spellsAt(all []analysis.Spell, kind, place string) (out []series.Span) {
	for _, s := range all {
		if s.Kind == kind && s.Place == place {
			out = append(out, s.Span)
		}
	}
	return out
}

// begun is how many spells began within a span.
func begun(spells []series.Span, s series.Span) (n float64) {
	for _, x := range spells {
		if s.From <= x.From && x.From < s.To {
			n++
		}
	}
	return n
}

// during is how many hours of a span lay in spells.
func during(spells []series.Span, s series.Span) (hours float64) {
	for _, x := range spells {
		if d := min(x.To, s.To) - max(x.From, s.From); d > 0 {
			hours += float64(d) / series.HourMS
		}
	}
	return hours
}
