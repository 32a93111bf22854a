package ui

import (
	"image/color"
	"strings"

	"thawbook/app/chart"
	"thawbook/app/desk"
)

// newPlot shows a Timeline's figure as a chart; read is told what the pointer reads.
func newPlot(t desk.Timeline, f *chart.Figure, read func(string)) *chart.Chart {
	c := chart.New(f)
	c.SetWhole(t.Whole)
	c.OnHover = func(at int64, all []chart.Reading) { read(toldAt(t, c, at, t.Read(at, saidOf(all)))) }
	c.OnLeave = func() { read("") }
	return c
}

// pointerReach is how near a note or an event counts as under the pointer, as a part of the view.
const pointerReach = 150

// toldAt puts the keeper's notes at hand, then what happened, before what is read of an instant of a Timeline.
func toldAt(t desk.Timeline, c *chart.Chart, at int64, read string) string {
	v := c.View()
	near := (v.To - v.From) / pointerReach
	return strings.TrimSpace(strings.Join([]string{t.NotedNear(at, near), t.HappenedNear(at, near), read}, " "))
}

// figureOf turns a Timeline's lanes into a figure's, in the light palette.
func figureOf(t desk.Timeline) *chart.Figure {
	f := &chart.Figure{View: t.View, Focus: t.Bees, Zone: t.Units.Zone}
	for _, l := range t.Lanes {
		f.Lanes = append(f.Lanes, laneOf(l))
	}
	inPalette(f, false)
	for _, s := range t.Shades {
		f.Shades = append(f.Shades, chart.Shade(s))
	}
	for _, p := range t.Points {
		f.Marks = append(f.Marks, chart.Mark(p))
	}
	return f
}

// inPalette gives a figure its theme, and every logger's thin line one of the theme's inks.
func inPalette(f *chart.Figure, dark bool) {
	f.Theme = chart.Light()
	if dark {
		f.Theme = chart.Dark()
	}
	for _, l := range f.Lanes {
		thin := 0
		for i, t := range l.Traces {
			if t.Muted && !t.Outside {
				l.Traces[i].Color = f.Theme.Traces[thin%len(f.Theme.Traces)]
				thin++
			}
		}
	}
}

// mostLines is how many loggers of a lane are drawn each with a line: of more nobody could follow one, and the veil
// shows their spread.
const mostLines = 40

func laneOf(l desk.Lane) chart.Lane {
	out := chart.Lane{Title: l.Title, Unit: l.Unit, Height: l.Weight, Shown: l.Shown, Veil: l.Veil, Bare: l.Rare}
	for _, t := range l.Traces {
		trace := chart.NewTrace(t.Name, t.Curve, color.NRGBA{})
		trace.Muted, trace.OwnScale = t.Role != desk.Firm, t.OwnScale
		trace.Outside = t.Role == desk.Outside
		trace.Veiled = t.Role == desk.Thin && len(l.Traces) > mostLines
		out.Traces = append(out.Traces, trace)
	}
	for _, b := range l.Bands {
		out.Bands = append(out.Bands, chart.Band(b))
	}
	if l.Range != nil {
		out.Range = &chart.Range{Low: l.Range[0], High: l.Range[1]}
	}
	for _, r := range l.Rows {
		out.Kind = chart.Bars
		out.Rows = append(out.Rows, chart.BarRow{Name: r.Name, Tracks: tracksOf(r), Rare: l.Rare})
	}
	return out
}

// tracksOf has what ran above what was called for.
func tracksOf(r desk.StageBar) (out []chart.Track) {
	if r.Ran != nil {
		out = append(out, chart.Track{Style: chart.Ran, On: r.Ran.On, Unknown: r.Ran.Unsure})
	}
	if r.Called != nil {
		out = append(out, chart.Track{Style: chart.Called, On: r.Called.On, Unknown: r.Called.Unsure})
	}
	return out
}

func saidOf(all []chart.Reading) []desk.Said {
	out := make([]desk.Said, 0, len(all))
	for _, r := range all {
		out = append(out, desk.Said{
			Lane: r.Lane, Name: r.Name, Value: r.Value, Unit: r.Unit, Known: r.Known,
			Bar: r.Kind == chart.Bars, On: r.On, Ran: r.Style == chart.Ran, Thin: r.Thin,
		})
	}
	return out
}
