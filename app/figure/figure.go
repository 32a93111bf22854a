package figure

import (
	"image/color"
	"time"

	"thawbook/analysis/series"
)

// Span is the stretch of time [From, To), in milliseconds UTC.
type Span = series.Span

// Kind says what a lane shows.
type Kind int

// The kinds of lane.
const (
	Curves Kind = iota // values over time
	Bars               // stretches of time something was on
)

// Style says what a bar rests on.
type Style int

// The styles of a track.
const (
	Ran    Style = iota // a record shows it: solid
	Called              // worked out: outlined
)

// Figure is a stack of lanes over one time axis. Change its fields between drawings, not during one; one
// figure is drawn by one goroutine at a time.
type Figure struct {
	Lanes  []Lane      // top to bottom
	View   series.Span // the stretch of time shown; empty: all of it
	Focus  series.Span // the value scales fit the curves inside it; empty: the curves' whole length
	Zone   *time.Location
	Shades []Shade // phases and what lies outside the bees' time
	Marks  []Mark
	Theme  Theme

	fonts  faces
	cols   [][]series.Column // of each trace of the lane being drawn
	px     [][]pixelColumn
	inks   []color.NRGBA
	crowds []crowd // one for each processor
	veil   []pixelColumn
	layers []layer
	pts    []point
	cover  []float64
	mask   mask
}

// Lane is one strip of the figure. Height is its weight among the curve lanes (0 counts as 1); a bar
// lane is as high as its rows need. Shown turns the curves' unit and the band's limits into the unit
// printed (nil: as they are); it must be a rising straight line.
type Lane struct {
	Kind   Kind
	Title  string
	Unit   string // printed unit: °C, °F, %, K
	Height float64
	Shown  func(float64) float64
	Range  *Range  // nil: fitted to the curves and the band
	Traces []Trace // firm ones are drawn over loggers, those over the weather, earlier over later
	Veil   bool    // tint the spread of the traces that share the lane's scale
	Bands  []Band
	Rows   []BarRow // of a bar lane, top to bottom; the always-on stage belongs last
	Bare   bool     // its title is not drawn: its rows' names say enough

	reach *reach // as it was last drawn
}

// Range fixes a lane's value scale, in the curves' unit.
type Range struct{ Low, High float64 }

// Trace is one curve. Pyramid is built from Curve at the first drawing when nil; NewTrace sets both.
type Trace struct {
	Name     string
	Curve    series.Curve
	Pyramid  *series.Pyramid
	Color    color.NRGBA // zero: ink, or the muted ink of a muted trace, or the weather's; of many loggers see chooseInks
	Width    float64     // design pixels; 0: 1.5, or 1 for a muted trace
	Muted    bool
	OwnScale bool // takes a scale of its own, at the right, where it would flatten the others
	Outside  bool // the weather: it widens no veil
	Veiled   bool // widens the lane's veil and has no line of its own
}

// Band is the good range of a lane, in the curves' unit, within a span; an empty one is all time. An infinite limit is none.
type Band struct {
	Low, High float64
	Span      Span
}

// BarRow is one named row: a stage, a heat source, a kind of event.
type BarRow struct {
	Name   string
	Color  color.NRGBA // zero: the theme's bar colour
	Tracks []Track     // drawn one below the other
	Rare   bool        // each stretch is drawn wide enough to be seen, however short
}

// Track is when a row was on, by one kind of evidence. Span lists are sorted and disjoint; what lies in
// neither was off.
type Track struct {
	Style   Style
	On      []series.Span
	Unknown []series.Span // hatched
}

// Shade is a named stretch of time. Outside greys it: what lies there is not judged.
type Shade struct {
	Span    series.Span
	Name    string
	Outside bool
}

// Mark is a named instant: bees in, a note, a power cut.
type Mark struct {
	At   int64
	Name string
	Note bool // a pennant over a thin rule, without its name: there may be many
}

// NewTrace returns a trace of the curve with its pyramid built. The zero colour stands for ink.
func NewTrace(name string, c series.Curve, col color.NRGBA) Trace {
	return Trace{Name: name, Curve: c, Pyramid: series.NewPyramid(c), Color: col}
}

// Extent returns the span from the first to the last reading of all traces and bars; empty without any.
func (f *Figure) Extent() series.Span {
	var s series.Span
	for _, l := range f.Lanes {
		for _, t := range l.Traces {
			if n := t.Curve.Len(); n > 0 {
				s = around(s, t.Curve.Readings.At[0], t.Curve.Readings.At[n-1])
			}
		}
		for _, r := range l.Rows {
			s = r.around(s)
		}
	}
	return s
}

// around widens a span to what the row's bars take.
func (r BarRow) around(s series.Span) series.Span {
	for _, t := range r.Tracks {
		if n := len(t.On); n > 0 {
			s = around(s, t.On[0].From, t.On[n-1].To)
		}
	}
	return s
}

// around widens a span to two more instants; an empty one is those two.
func around(s series.Span, from, to int64) series.Span {
	if s == (series.Span{}) {
		return series.Span{From: from, To: to}
	}
	return series.Span{From: min(s.From, from), To: max(s.To, to)}
}

// view returns the stretch of time shown, never an empty one.
func (f *Figure) view() series.Span {
	v := f.View
	if v.To <= v.From {
		v = f.Extent()
	}
	return series.Span{From: v.From, To: max(v.To, v.From+1)}
}

func (l *Lane) shown(v float64) float64 {
	if l.Shown == nil {
		return v
	}
	return l.Shown(v)
}

// prepare builds the pyramids that are missing.
func (f *Figure) prepare() {
	for i := range f.Lanes {
		for j := range f.Lanes[i].Traces {
			t := &f.Lanes[i].Traces[j]
			if t.Pyramid == nil && t.Curve.Len() > 0 {
				t.Pyramid = series.NewPyramid(t.Curve)
			}
		}
	}
}
