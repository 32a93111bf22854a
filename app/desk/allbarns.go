package desk

import (
	"fmt"
	"math"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/compare"
	"thawbook/analysis/series"
	"thawbook/app/engine"
)

// AllBarns is every barn of a winter of three and more: a row each, and the room's temperature of each on the same axes.
type AllBarns struct {
	Sentence string
	Columns  []Column
	Rows     []AllBarnsRow
	Plots    Timeline // a lane a barn
	Notes    []string
}

// AllBarnsRow is one barn's figures, with what each is ordered by.
type AllBarnsRow struct{ keyed }

// Sorted are the rows in the order of a column, rising or falling; what is not known comes last either way.
func (v AllBarns) Sorted(column int, falling bool) []AllBarnsRow {
	return rowsInOrder(v.Rows, column, falling)
}

// manyBarns is from how many barns on they are set out in a table: two stand beside one another.
const manyBarns = 3

// AllBarnsOf sets out all barns of a review; without rows where there are fewer than three.
func AllBarnsOf(r *engine.Result, u Units) AllBarns {
	if len(r.Barns) < manyBarns {
		return AllBarns{}
	}
	v := AllBarns{Columns: []Column{{Title: "Barn"}, {Title: "Mean", Unit: u.TempSymbol(), Number: true}, {Title: "Known", Unit: "h", Number: true},
		{Title: "Outside", Unit: "h", Number: true}, {Title: "Humidity", Unit: "%", Number: true}, {Title: "Margin", Unit: u.TempSymbol(), Number: true},
		{Title: "Small fans", Unit: "%", Number: true}, {Title: "kWh a hive", Number: true}, {Title: "Lost", Unit: "%", Number: true}},
		Notes: []string{HelpLine("all_barns"), cautionComparison}}
	var all []barn
	for i := range r.Barns {
		b := newBarn(r.Inputs[i], r.Barns[i], u)
		all, v.Rows = append(all, b), append(v.Rows, AllBarnsRow{b.amongAll()})
	}
	v.Sentence = warmestAndColdest(all, r)
	v.Plots = temperaturesOf(all)
	return v
}

// amongAll are a barn's figures beside those of all others.
func (b barn) amongAll() keyed {
	k := keyed{Cells: []string{b.r.Barn}, keys: []float64{0}, words: []string{b.r.Barn}}
	outside, known := unknownFigure, unknownFigure
	if q, ok := b.quantity("air_temperature"); ok {
		known = sureFigure(float64(q.KnownMS) / series.HourMS)
	}
	if good, ok := b.band("air_temperature", "good"); ok {
		outside = sureFigure(good.HoursBelow + good.HoursAbove)
	}
	degrees := func(v float64) string { return number(b.u.TempValue(v), 1) }
	k.add(b.mean("air_temperature").justMid(), degrees)
	k.add(known, hoursNumber)
	k.add(outside, hoursNumber)
	k.add(b.mean("relative_humidity").justMid(), wholeNumber)
	k.add(b.coldestMargin().justMid(), func(v float64) string { return number(b.u.DiffValue(v), 1) })
	k.add(shownFigure(b.r.Verdict.Fans.Figure), wholeNumber)
	k.add(shownFigure(compare.EnergyPerHive(b.r)), func(v float64) string { return number(v, 1) })
	k.add(b.lost(), func(v float64) string { return number(v, 1) })
	return k
}

func wholeNumber(v float64) string { return number(v, 0) }

// shownFigure is a figure as a cell shows it: its range, else what it comes to.
type shownFigure analysis.Figure

var unknownFigure shownFigure

func sureFigure(v float64) shownFigure { return shownFigure{Mid: v, Low: v, High: v, OK: true} }

// justMid is a figure without its range: where all barns' loggers are alike, the ranges say little in a table.
func (f shownFigure) justMid() shownFigure {
	f.Low, f.High = f.Mid, f.Mid
	return f
}

// mean is the mean of a quantity of the room over the bees' time.
func (b barn) mean(quantity string) shownFigure {
	q, _ := b.quantity(quantity)
	return shownFigure(q.Mean)
}

// coldestMargin is how far the coldest listed wall or ceiling stayed above wet in the mean, K.
func (b barn) coldestMargin() shownFigure {
	s, ok := b.coldestSurface()
	for _, q := range b.r.Quantities {
		if ok && s.Kind != "metal" && q.Quantity == compare.Margin && q.Place == s.Name && q.Phase == "" {
			return shownFigure(q.Mean)
		}
	}
	return unknownFigure
}

// lost is how many of a hundred hives were found dead.
func (b barn) lost() shownFigure {
	l := compare.LossOf(b.in)
	if l.Unknown != "" {
		return unknownFigure
	}
	return sureFigure(100 * l.Share)
}

// add ends a row with a figure.
func (k *keyed) add(f shownFigure, shown func(float64) string) {
	key := math.NaN()
	if f.OK {
		key = f.Mid
	}
	k.Cells, k.keys, k.words = append(k.Cells, f.text(shown)), append(k.keys, key), append(k.words, "")
}

// text is the figure's range where its ends are shown apart, else what it comes to; a dash where it is not known.
func (f shownFigure) text(shown func(float64) string) string {
	low, high := shown(f.Low), shown(f.High)
	switch {
	case !f.OK:
		return enDash
	case low != high:
		return rangeOf(low, high)
	}
	return shown(f.Mid)
}

// warmestAndColdest names the barns that read warmest and coldest, and says where their loggers can't tell which was.
func warmestAndColdest(all []barn, r *engine.Result) string {
	read := slices.DeleteFunc(slices.Clone(all), func(b barn) bool { return !b.mean("air_temperature").OK })
	if len(read) < 2 {
		return fmt.Sprintf("Of %d barns too little is known to set them side by side by their temperature.", len(all))
	}
	slices.SortStableFunc(read, func(x, y barn) int {
		return int(math.Copysign(1, x.mean("air_temperature").Mid-y.mean("air_temperature").Mid))
	})
	cold, warm := read[0], read[len(read)-1]
	temp := func(b barn) string { return b.u.Temp(b.mean("air_temperature").Mid) }
	if temp(warm) == temp(cold) {
		return fmt.Sprintf("All %d barns read %s in the mean.", len(read), temp(cold))
	}
	text := fmt.Sprintf("Of %d barns %s read warmest in the mean, %s, and %s coldest, %s", len(all), warm.r.Barn, temp(warm), cold.r.Barn, temp(cold))
	if !toldWarmer(r, warm.r.Barn, cold.r.Barn) {
		return text + "; which was the warmer is more than their loggers can tell."
	}
	return text + "."
}

// toldWarmer says whether a barn was warmer than another by more than their loggers can be off, over the hours known in both.
func toldWarmer(r *engine.Result, warm, cold string) bool {
	at := func(name string) int {
		return slices.IndexFunc(r.Barns, func(b analysis.Review) bool { return b.Barn == name })
	}
	p, err := pairOf(r, at(warm), at(cold))
	return err == nil && len(p.Rows) > 0 && p.Rows[0].Quantity == compare.AirTemperature && p.Rows[0].Verdict == compare.More
}

// temperaturesOf has a lane for each barn's room, all on one scale of time and one of temperature.
func temperaturesOf(all []barn) Timeline {
	t := Timeline{Units: all[0].u, ByLane: true}
	low, high := math.Inf(1), math.Inf(-1)
	for _, b := range all {
		l := Lane{Title: b.r.Barn, Unit: b.u.TempSymbol(), Shown: b.u.TempValue}
		if l.add(b.roomName(), b.r.Traces.Room, Firm); len(l.Traces) == 0 {
			continue
		}
		l.Bands = b.tempBands()
		if bin := b.r.Traces.Room.Bin(b.span()); bin.KnownMS > 0 {
			low, high = min(low, bin.Min), max(high, bin.Max)
		}
		if t.Bees.To == 0 {
			t.Bees = b.span()
		}
		t.Bees = series.Span{From: min(t.Bees.From, b.r.BeesIn), To: max(t.Bees.To, b.r.BeesOut)}
		t.Lanes = append(t.Lanes, l)
	}
	if len(t.Lanes) == 0 {
		t.Lacks = "None of the barns has a temperature to draw."
		return t
	}
	for i := range t.Lanes {
		if low <= high {
			t.Lanes[i].Range = &[2]float64{math.Floor(low), math.Ceil(high)}
		}
	}
	t.Whole = extent(t.Lanes)
	t.View = barn{r: analysis.Review{BeesIn: t.Bees.From, BeesOut: t.Bees.To}}.firstView(t.Whole)
	for _, apart := range series.Subtract([]series.Span{t.Whole}, []series.Span{t.Bees}) {
		t.Shades = append(t.Shades, Shade{apart, "no bees in any", true})
	}
	return t
}
