package desk

import (
	"math"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// A figure of a table may have happened somewhere in the winter: a highest reading at its hour, hours above the band
// longest in one spell. This file finds where.

// TableCell is a cell of a table's rows.
type TableCell struct{ Row, Column int }

// Look is where in the Timeline a cell's figure can be seen; empty where it has no one place.
func (t Table) Look(row, column int) Span { return t.Looks[TableCell{row, column}] }

// lookAt says where the figure in a column of the last row can be seen.
func (t *Table) lookAt(column int, s Span) {
	if s.To <= s.From || t.Rows[len(t.Rows)-1][column] == noValue {
		return
	}
	if t.Looks == nil {
		t.Looks = map[TableCell]Span{}
	}
	t.Looks[TableCell{len(t.Rows) - 1, column}] = s
}

// longest is the longest of some stretches.
func longest(spans []Span) (most Span) {
	for _, s := range spans {
		if s.To-s.From > most.To-most.From {
			most = s
		}
	}
	return most
}

// parts are what of the winter, or of one phase, is scored.
func (b barn) parts(phase string) (out []Span) {
	for _, p := range b.r.Phases {
		if phase == "" || p.Name == phase {
			out = append(out, p.Parts...)
		}
	}
	return out
}

// curveOf are the readings a row of figures rests on.
func (b barn) curveOf(q analysis.QuantityRow) series.Curve {
	if q.Quantity == "surface_margin" {
		i := slices.IndexFunc(b.r.Surfaces, func(s analysis.SurfaceRow) bool { return s.Name == q.Place })
		if i < 0 {
			return series.Curve{}
		}
		return b.r.Surfaces[i].Margin
	}
	room := analysis.Logger{TempC: b.r.Traces.Room, RelHum: b.r.Traces.RoomRelHum}
	for _, l := range b.r.Traces.Loggers {
		if l.Name == q.Logger {
			room = l
		}
	}
	switch q.Quantity {
	case "air_temperature":
		return room.TempC
	case "relative_humidity":
		return room.RelHum
	}
	return b.r.Traces.RoomDewC
}

// extremes are the stretches, of no more than a step of the readings, in which a curve was lowest and highest within some parts.
func extremes(c series.Curve, parts []Span) (lowest, highest Span) {
	low, high := math.Inf(1), math.Inf(-1)
	for _, part := range parts {
		within := c.Slice(part)
		for i, v := range within.Val {
			at := Span{From: within.Readings.At[i], To: within.Readings.At[i] + 1}
			if v < low {
				low, lowest = v, at
			}
			if v > high {
				high, highest = v, at
			}
		}
	}
	return lowest, highest
}

// sideKinds are the spells below and above the band of a quantity.
var sideKinds = map[string][2][]string{
	"air_temperature":   {{"cold"}, {"warm"}},
	"relative_humidity": {{"dry"}, {"damp"}},
	"dew_point":         {nil, {"moist"}},
	"surface_margin":    {{"dew", "frost"}, nil},
}

// lookAtExposure says where lowest and highest reading, and most of the hours below and above the band, can be seen: first is
// the column of the lowest, and those of the mean, the highest and the hours below, inside and above follow.
func (b barn) lookAtExposure(t *Table, q analysis.QuantityRow, first int) {
	parts := b.parts(q.Phase)
	lowest, highest := extremes(b.curveOf(q), parts)
	t.lookAt(first, lowest)
	t.lookAt(first+2, highest)
	if q.Logger != "" {
		return
	}
	for side, kinds := range sideKinds[q.Quantity] {
		t.lookAt(first+3+2*side, longest(series.Intersect(spansOf(b.spells(q.Place, kinds...), b.span()), parts)))
	}
}
