package compare

import (
	"math"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// measured is one quantity of both barns.
type measured struct {
	quantity, unit string
	a, b           series.Curve
	errA, errB     float64 // 95 % half-widths
	addedA, addedB float64 // what checks of the loggers added to the mean
	of, ofB        string
	band           func(analysis.Bands) analysis.Band // nil where no limits apply
}

// measuredIn is what was measured in both barns.
func measuredIn(a, b Side) (out []measured) {
	ta, tb := a.Review.Traces, b.Review.Traces
	percent := func(h series.Curve) series.Curve { return h.Map(func(v float64) float64 { return 100 * v }) }
	all := []measured{
		{quantity: AirTemperature, unit: "degC", a: ta.Room, b: tb.Room, errA: ta.RoomErrK, errB: tb.RoomErrK,
			addedA: added(a, func(l analysis.Logger) float64 { return l.AddedK }), addedB: added(b, func(l analysis.Logger) float64 { return l.AddedK }),
			band: func(x analysis.Bands) analysis.Band { return x.TempC }},
		{quantity: RelativeHumidity, unit: "percent", a: percent(ta.RoomRelHum), b: percent(tb.RoomRelHum), errA: 100 * ta.RoomRelHumErr, errB: 100 * tb.RoomRelHumErr,
			addedA: 100 * added(a, func(l analysis.Logger) float64 { return l.AddedRelHum }), addedB: 100 * added(b, func(l analysis.Logger) float64 { return l.AddedRelHum }),
			band: func(x analysis.Bands) analysis.Band { return x.RelHumPct }},
		{quantity: DewPoint, unit: "degC", a: ta.RoomDewC, b: tb.RoomDewC, errA: ta.RoomDewErrK, errB: tb.RoomDewErrK},
	}
	if sa, sb := coldest(a.Review.Surfaces), coldest(b.Review.Surfaces); sa != nil && sb != nil {
		all = append(all, measured{quantity: Margin, unit: "K", a: sa.Margin, b: sb.Margin, errA: sa.MarginErrK, errB: sb.MarginErrK,
			of: sa.Name, ofB: sb.Name, band: func(analysis.Bands) analysis.Band { return analysis.Band{GoodLow: new(float64)} }})
	}
	for _, m := range all {
		if m.a.Len() > 0 && m.b.Len() > 0 {
			out = append(out, m)
		}
	}
	return out
}

// added is what the checks of a room's loggers added to what they read, in the mean of them.
func added(s Side, of func(analysis.Logger) float64) float64 {
	sum, n := 0.0, 0.0
	for _, l := range s.Review.Traces.Loggers {
		if l.Place == s.Review.Traces.RoomPlace && l.TempC.Len() > 0 {
			sum, n = sum+of(l), n+1
		}
	}
	if n == 0 {
		return 0
	}
	return sum / n
}

// coldest is the listed wall or ceiling nearest to sweating in the mean; nil where nothing is known of any. Metal is
// listed apart and not compared.
func coldest(all []analysis.SurfaceRow) (out *analysis.SurfaceRow) {
	least := math.Inf(1)
	for i, s := range all {
		if s.Kind == "metal" || s.Margin.Len() == 0 {
			continue
		}
		if m := s.Margin.Bin(series.Span{From: s.Margin.Readings.At[0], To: s.Margin.Readings.At[s.Margin.Len()-1]}).Weighted(); m < least {
			least, out = m, &all[i]
		}
	}
	return out
}

// taken is what a part of an hour adds to a figure.
type taken struct {
	measure string
	limit   int // of limitsOf; −1 for the mean
	adds    func(bin series.Bin, outside []series.Outside, end int) float64
}

// The ends of what a logger may be off by, as analysis.Band.Limits orders them: as read, too low by its error, too high.
const asRead, readLow, readHigh = 0, 1, 2

// takings are the mean and what lies outside each limit.
func (m measured) takings(errHalf float64) []taken {
	out := []taken{{Mean, -1, func(bin series.Bin, _ []series.Outside, end int) float64 {
		return (bin.Area + [3]float64{0, errHalf, -errHalf}[end]*float64(bin.KnownMS)) / series.HourMS
	}}}
	if m.band == nil {
		return out
	}
	hours := func(ms float64) float64 { return ms / series.HourMS }
	for k := range 3 {
		out = append(out,
			taken{HoursBelow, 2 * k, func(_ series.Bin, o []series.Outside, end int) float64 { return hours(o[3*k+end].BelowMS) }},
			taken{HoursAbove, 2*k + 1, func(_ series.Bin, o []series.Outside, end int) float64 { return hours(o[3*k+end].AboveMS) }},
			taken{DegreeHoursBelow, 2 * k, func(_ series.Bin, o []series.Outside, end int) float64 { return hours(o[3*k+end].BelowArea) }},
			taken{DegreeHoursAbove, 2*k + 1, func(_ series.Bin, o []series.Outside, end int) float64 { return hours(o[3*k+end].AboveArea) }})
	}
	return out
}

var bandNames = [3]string{"good", "watch", "act"}

// measure are the drafts of one quantity: its mean, and hours and degree-hours outside the limits, over the whole common
// time and for each phase.
func (c common) measure(m measured) (out []*draft) {
	takeA, takeB := m.takings(m.errA), m.takings(m.errB)
	rows := map[string][]*draft{}
	for _, scope := range c.scopes() {
		for _, t := range takeA {
			d := c.draft(m.row(t, scope))
			d.total = t.measure != Mean
			rows[scope], out = append(rows[scope], d), append(out, d)
		}
	}
	for _, p := range c.parts(m.a.Known, m.b.Known) {
		var band analysis.Band
		if m.band != nil {
			band = m.band(p.stretch.bands)
		}
		binA, outA := m.a.BinOutside(p.Span, band.Limits(m.errA))
		binB, outB := m.b.BinOutside(later(p.Span, c.laterMS), band.Limits(m.errB))
		for _, scope := range p.stretch.scopes() {
			for i, d := range rows[scope] {
				var a, b [3]float64
				for end := range a {
					a[end], b[end] = takeA[i].adds(binA, outA, end), takeB[i].adds(binB, outB, end)
				}
				d.add(p, a, b)
				d.limited(takeA[i].limit, band)
			}
		}
	}
	return slices.DeleteFunc(out, func(d *draft) bool { return d.Measure != Mean && !d.hasLimit })
}

// row is the head of a row.
func (m measured) row(t taken, scope string) Row {
	r := Row{Quantity: m.quantity, Measure: t.measure, Phase: scope, Unit: m.unit, Of: m.of, OfB: m.ofB}
	if t.limit >= 0 && m.of == "" {
		r.Of = bandNames[t.limit/2]
	}
	switch t.measure {
	case Mean:
		r.AddedA, r.AddedB = m.addedA, m.addedB
	case HoursBelow, HoursAbove:
		r.Unit = "h"
	case DegreeHoursBelow, DegreeHoursAbove:
		r.Unit = "K·h"
		if m.unit == "percent" {
			r.Unit = "percent·h"
		}
	}
	if r.OfB == r.Of {
		r.OfB = ""
	}
	return r
}
