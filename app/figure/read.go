package figure

import (
	"sort"

	"thawbook/analysis/series"
)

// Reading is what one trace or one track says at an instant. Known is false where there is no line, or
// where it can't be said whether the row was on; Value (in Unit, the printed one) and On hold nothing then.
type Reading struct {
	Lane  string // its title
	Name  string
	Kind  Kind
	Style Style // of a track
	Value float64
	Unit  string
	On    bool
	Known bool

	Thin bool // of one of several loggers
}

// Read returns what every trace and track says at t, ms UTC, lane by lane.
func (f *Figure) Read(t int64) []Reading {
	var out []Reading
	for i := range f.Lanes {
		lane := &f.Lanes[i]
		for _, tr := range lane.Traces {
			r := Reading{Lane: lane.Title, Name: tr.Name, Kind: Curves, Unit: lane.Unit, Thin: tr.Muted && !tr.Outside}
			if v, known := tr.Curve.At(t); known {
				r.Value, r.Known = lane.shown(v), true
			}
			out = append(out, r)
		}
		for _, row := range lane.Rows {
			for _, tr := range row.Tracks {
				known := !covers(tr.Unknown, t)
				out = append(out, Reading{Lane: lane.Title, Name: row.Name, Kind: Bars, Style: tr.Style,
					On: known && covers(tr.On, t), Known: known})
			}
		}
	}
	return out
}

// covers tells whether t lies in one of the sorted, disjoint spans.
func covers(spans []series.Span, t int64) bool {
	i := sort.Search(len(spans), func(i int) bool { return spans[i].To > t })
	return i < len(spans) && spans[i].From <= t
}
