package desk

import (
	"cmp"
	"math"
	"slices"

	"thawbook/analysis/series"
	"thawbook/app/engine"
	"thawbook/app/winter"
)

// marked are a file's small plots with the stretches of its loggers that look odd and those that are left out.
func (b Book) marked(plots []FilePlot, f engine.File, loggers []FileLogger) []FilePlot {
	out := slices.Clone(plots)
	single := len(loggerNames(f)) <= 1
	for _, fl := range loggers {
		l, _ := b.doc.Logger(fl.Entry.At)
		for i := range out {
			if single || out[i].shows(l) {
				out[i].Marks = append(out[i].Marks, out[i].marksOf(fl, l, b.clockOf(f, l))...)
			}
		}
	}
	return out
}

// shows says whether a small plot is of the logger of a file of several that has this name in the winter.
func (p FilePlot) shows(l winter.Logger) bool {
	return p.logger == l.Channel || p.logger == l.Name
}

// clockOf is what the clock of a logger's file shows at an instant, near enough for a small plot.
func (b Book) clockOf(f engine.File, l winter.Logger) func(int64) int64 {
	for _, s := range f.Export.Series {
		if s.Instant && len(s.FaceMS) > 0 {
			return func(at int64) int64 { return at + l.AheadMS + s.OffsetAt(0) }
		}
	}
	loc, err := winter.Location(cmp.Or(l.Zone, f.Export.Layout.Clock.Zone, b.doc.Zone))
	if err != nil {
		loc = b.zone()
	}
	return func(at int64) int64 { return winter.Face(at+l.AheadMS, loc) }
}

// marksOf are the marks of a logger in a small plot: what is left out, and over it what looks odd.
func (p FilePlot) marksOf(fl FileLogger, l winter.Logger, face func(int64) int64) (out []PlotMark) {
	add := func(s series.Span, odd bool) {
		from, to := p.part(face(s.From)), p.part(face(s.To))
		if to > 0 && from < 1 && to > from {
			out = append(out, PlotMark{math.Max(0, from), math.Min(1, to), odd})
		}
	}
	for _, x := range l.Exclusions {
		if x.Takes(p.quantity) {
			add(series.Span{From: x.From, To: x.To}, false)
		}
	}
	for _, d := range fl.Doubts {
		if d.quantity == "" || d.quantity == p.quantity {
			for _, s := range d.spans {
				add(s, true)
			}
		}
	}
	return out
}

// part is where a moment of the file's clock lies in the plot.
func (p FilePlot) part(face int64) float64 {
	return float64(face-p.whole.From) / float64(p.whole.To-p.whole.From)
}
