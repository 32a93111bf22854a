package desk

import (
	"cmp"
	"slices"

	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// FilePlot is a small picture of what one column of a file read, from the first to the last reading.
type FilePlot struct {
	Name      string
	Low, High string // with their unit
	From, To  string
	Columns   []PlotColumn
	Marks     []PlotMark

	quantity, logger string
	whole            Span // on the file's own clock
}

// PlotMark is a stretch of a small plot, 0 at its beginning and 1 at its end: one that looks odd, or one that is left out.
type PlotMark struct {
	From, To float64
	Odd      bool
}

// PlotColumn is an upright stroke of a small plot, 0 at the lowest reading and 1 at the highest; where
// nothing is known there is none.
type PlotColumn struct {
	Low, High float64
	Known     bool
}

// A file has at most so many small plots, of so many strokes each.
const mostPlots, plotColumns = 6, 360

// plotsOf draws a file's temperatures, humidities and records; while it waits its readings stand at no sure time.
func plotsOf(f engine.File, u Units) (out []FilePlot) {
	if waits(f) {
		return nil
	}
	several := len(loggerNames(f)) > 1
	for _, s := range f.Export.Series {
		word := quantityWords[string(s.Quantity)]
		if len(out) == mostPlots || len(s.Val) < 2 || word != "temperature" && word != "humidity" && !s.IsRecord() {
			continue
		}
		draw := plotOf
		if s.Quantity == "state" {
			draw = heldPlotOf
		}
		p, ok := draw(shifted(s.FaceMS, s.OffsetAt, len(s.Offsets) > 0), s.Val)
		if !ok {
			continue
		}
		p.Name, p.quantity, p.logger = capital(word), word, s.Logger
		switch {
		case s.IsRecord():
			p.Name = capital(recordName(f, s))
		case several:
			p.Name += ", " + s.Logger
		}
		p.Low, p.High = plotEnds(s, isDoor(titleOf(f.Name)+" "+p.Name), u)
		out = append(out, p)
	}
	return out
}

// plotEnds are the words beside a small plot's lowest and highest reading.
func plotEnds(s engine.Series, door bool, u Units) (low, high string) {
	shown := func(v float64) string { return withUnit(number(v, 1), cmp.Or(unitSigns[s.Unit], s.Unit)) }
	switch {
	case s.Quantity == "state" && door:
		return "closed", "open"
	case s.Quantity == "state":
		return "off", "on"
	case s.Quantity == "relative_humidity":
		shown = Percent
	case !s.IsRecord():
		shown = u.Temp
	}
	return shown(slices.Min(s.Val)), shown(slices.Max(s.Val))
}

// unitSigns are what units of records are printed as, where that is not their name.
var unitSigns = map[string]string{"percent": "%"}

// heldPlotOf puts a record's states in order, of which each holds until the next; a stroke is as high as the share of its time
// that was on.
func heldPlotOf(at []int64, val []float64) (p FilePlot, ok bool) {
	r := inOrder(at, val)
	n := len(r.At)
	if n < 2 {
		return p, false
	}
	p.whole = Span{From: r.At[0], To: r.At[n-1]}
	p.From, p.To = faceDay(p.whole.From), faceDay(p.whole.To)
	on, known := make([]float64, plotColumns), make([]float64, plotColumns)
	each, longest := float64(p.whole.To-p.whole.From)/plotColumns, engine.StatesHold(r)
	for i := 1; i < n; i++ {
		if r.At[i]-r.At[i-1] > longest {
			continue
		}
		from, to := float64(r.At[i-1]-p.whole.From)/each, float64(r.At[i]-p.whole.From)/each
		for k := int(from); k < plotColumns && float64(k) < to; k++ {
			part := min(to, float64(k+1)) - max(from, float64(k))
			known[k] += part
			on[k] += part * r.Val[i-1]
		}
	}
	p.Columns = make([]PlotColumn, plotColumns)
	for k := range on {
		if known[k] > 0 {
			p.Columns[k] = PlotColumn{High: on[k] / known[k], Known: true}
		}
	}
	return p, true
}

// shifted are instants with what is to be added to each, where anything is.
func shifted(at []int64, by func(i int) int64, any bool) []int64 {
	if !any {
		return at
	}
	out := slices.Clone(at)
	for i := range out {
		out[i] += by(i)
	}
	return out
}

// inOrder are readings in order of time, of several at one instant the first. Those that are so already are not copied:
// there may be ten million.
func inOrder(at []int64, val []float64) series.Readings {
	if r, err := series.NewReadings(at, val); err == nil {
		return r
	}
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(at[a], at[b]) })
	var r series.Readings
	for _, i := range order {
		if n := len(r.At); n == 0 || at[i] > r.At[n-1] {
			r.At, r.Val = append(r.At, at[i]), append(r.Val, val[i])
		}
	}
	return r
}

// plotOf puts readings in order and sums them up stroke by stroke; ok is false for a single instant.
func plotOf(at []int64, val []float64) (p FilePlot, ok bool) {
	r := inOrder(at, val)
	n := len(r.At)
	low, high := slices.Min(r.Val), slices.Max(r.Val)
	if n < 2 {
		return p, false
	}
	whole := Span{From: r.At[0], To: r.At[n-1] + 1}
	c := series.Curve{Readings: r, MaxStepMS: max(2*r.Interval(), 30*60*1000)}
	spans := make([]series.Span, plotColumns)
	for i := range spans {
		edge := func(k int64) int64 { return whole.From + (whole.To-whole.From)*k/plotColumns }
		spans[i] = Span{From: edge(int64(i)), To: edge(int64(i) + 1)}
	}
	for _, b := range c.Bins(spans) {
		p.Columns = append(p.Columns, strokeOf(b, low, high))
	}
	p.From, p.To, p.whole = faceDay(whole.From), faceDay(whole.To), whole
	return p, true
}

// strokeOf is a bin's stroke: from its lowest to its highest value, or the line's height where it has no reading.
func strokeOf(b series.Bin, low, high float64) PlotColumn {
	if b.KnownMS == 0 && b.N == 0 {
		return PlotColumn{}
	}
	from, to := b.Min, b.Max
	if b.N == 0 {
		from, to = b.Weighted(), b.Weighted()
	}
	if high == low {
		return PlotColumn{0.5, 0.5, true}
	}
	return PlotColumn{(from - low) / (high - low), (to - low) / (high - low), true}
}
