package figure

import (
	"math"
	"strings"
)

// limit is a safe limit with its text.
type limit struct {
	value float64 // in the curves' unit
	text  string
}

// limitLabels are the limits of the last band in view, which ends at the labels.
func limitLabels(lane *Lane, view Span) []limit {
	var out []limit
	for _, v := range limitsAt(lane, view) {
		out = append(out, limit{v, Quantity(roundTo(lane.shown(v), 2), lane.Unit)})
	}
	return out
}

// limitsAt are the finite limits of the last band in view, the upper one first.
func limitsAt(lane *Lane, view Span) (out []float64) {
	if lane.Kind != Curves {
		return nil
	}
	var limits []float64
	for _, b := range lane.Bands {
		if b.Span.To <= b.Span.From || b.Span.From < view.To && b.Span.To > view.From {
			limits = []float64{b.High, b.Low}
		}
	}
	for _, v := range limits {
		if !math.IsInf(v, 0) && !math.IsNaN(v) {
			out = append(out, v)
		}
	}
	return out
}

func roundTo(v float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(v*p) / p
}

// bandText is both limits of a lane in one label, "2–6 °C".
func bandText(lane *Lane, high, low float64) string {
	from, to := Quantity(roundTo(lane.shown(low), 2), ""), Quantity(roundTo(lane.shown(high), 2), lane.Unit)
	if strings.Contains(from+to, Minus) { // a dash would be read as a second minus
		return from + " to " + to
	}
	return from + "–" + to
}

// limitPlaces are the ways to set a lane's limits that are in sight, the best first: each at its own height, where they do not
// meet; both in one label in the middle of the band; that label at the foot of the lane.
func (f *Figure) limitPlaces(l *Layout, i int) [][]label {
	lane, r := &f.Lanes[i], l.Lanes[i]
	top, bottom := float64(r.Min.Y), float64(r.Max.Y)
	var apart []label
	for _, m := range limitLabels(lane, l.View) {
		if y := l.y(i, lane.shown(m.value), false); y >= top-1 && y <= bottom+1 {
			apart = append(apart, label{text: m.text, y: y})
		}
	}
	if len(apart) < 2 {
		return [][]label{apart}
	}
	at := limitsAt(lane, l.View)
	together := label{text: bandText(lane, at[0], at[1]), y: (apart[0].y + apart[1].y) / 2}
	low := together
	low.y = bottom
	ways := [][]label{apart, {together}, {low}}
	if apart[1].y-apart[0].y < labelLine*l.scale {
		return ways[1:]
	}
	return ways
}
