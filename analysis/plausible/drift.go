package plausible

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"thawbook/analysis/series"
)

// A logger drifts when its daily difference to the median of the others grows the same way through the
// first, middle and last third of at least three weeks, by more in all than loggers differ by as they come
// (0.8 K, 6 points) and than five times the scatter of the days. What goes with the weather is taken out
// first: a wall side cools with the cold outdoors every winter and no logger drifts for that. Of three or
// more loggers the one is named that parts from the others at least 1.5 times as far as any other does; of
// two it can't be told which. (Common practice, no source.)
const (
	driftK, driftRelHum = 0.8, 0.06
	driftDays           = 21
	driftScatter        = 5
	driftThird          = 0.2
	driftBlame          = 1.5
	dayHours            = 24
)

// trend is how a difference grew: the change from the first day to the last, and where it was looked at.
type trend struct {
	change float64
	span   series.Span
	ok     bool // it grew all the while, and out of the scatter
}

// drifting finds whether logger i parts slowly from its neighbours.
func (r *Room) drifting(i int) []Finding {
	return append(r.driftIn(i, r.temp, Temperature, driftK), r.driftIn(i, r.relHum, Humidity, driftRelHum)...)
}

// driftIn is drifting for one quantity.
func (r *Room) driftIn(i int, all *crowd, q Quantity, least float64) []Finding {
	if all.n < 2 || !all.has[i] {
		return nil
	}
	own := all.trends[i]
	if !own.ok || math.Abs(own.change) < least {
		return nil
	}
	if all.n == 2 {
		return r.driftOfTwo(i, all, Finding{DriftOfTwo, q, own.span, Perhaps, []float64{own.change}, ""})
	}
	for k := range all.trends {
		if k != i && math.Abs(own.change) < driftBlame*math.Abs(all.trends[k].change) {
			return nil
		}
	}
	return []Finding{{Drift, q, own.span, Likely, []float64{own.change}, ""}}
}

// driftOfTwo is the finding on logger i, with the other's name, if i is the first of the two; else none.
func (r *Room) driftOfTwo(i int, all *crowd, f Finding) []Finding {
	for k := i + 1; k < len(all.has); k++ {
		if all.has[k] {
			f.Beside = r.traces[k].Name
			return []Finding{f}
		}
	}
	return nil
}

// trendOf is how logger i grew apart from the median of the others.
func (r *Room) trendOf(all *crowd, i int) trend {
	near, n := all.others(i)
	if n == 0 || !all.has[i] {
		return trend{}
	}
	apart := all.all[i].minus(near)
	weather := apart
	if r.outdoor.any() {
		weather = r.outdoor
	}
	days, x, at := daily(apart, weather)
	if len(days) < driftDays {
		return trend{}
	}
	if !r.outdoor.any() {
		x = nil
	}
	slope, rest := fitTrend(days, x, at)
	out := trend{change: slope * (at[len(at)-1] - at[0]), span: apart.span(int(at[0])*dayHours, min(int(at[len(at)-1]+1)*dayHours, len(apart.val)))}
	out.ok = grows(rest, out.change) && math.Abs(out.change) > driftScatter*scatter(rest, slope, at)
	return out
}

// daily are the medians of the days of two series of hours, where the first is known for half of the day
// and the second at all, and the numbers of those days.
func daily(a, b hours) (days, beside, at []float64) {
	for k := 0; k*dayHours < len(a.val); k++ {
		from, to := k*dayHours, min((k+1)*dayHours, len(a.val))
		own, other := a.val[from:to], b.val[from:to]
		if 2*len(known(own)) < dayHours || len(known(other)) == 0 {
			continue
		}
		days, beside, at = append(days, median(own)), append(beside, median(other)), append(at, float64(k))
	}
	return days, beside, at
}

// fitTrend is the slope per day of the days by least squares beside the weather x, which may be nil, and the
// days with the weather's part taken out.
func fitTrend(days, x, at []float64) (slope float64, rest []float64) {
	columns := 2
	if x != nil {
		columns = 3
	}
	a := mat.NewDense(len(days), columns, nil)
	for i := range days {
		a.Set(i, 0, 1)
		a.Set(i, 1, at[i]-at[0])
		if x != nil {
			a.Set(i, 2, x[i])
		}
	}
	var fit mat.VecDense
	if err := fit.SolveVec(a, mat.NewVecDense(len(days), days)); err != nil {
		return 0, days
	}
	rest = make([]float64, len(days))
	for i := range days {
		rest[i] = days[i]
		if x != nil {
			rest[i] -= fit.AtVec(2) * x[i]
		}
	}
	return fit.AtVec(1), rest
}

// grows says whether the middle of each third lies beyond the one before, by a fifth of the change.
func grows(rest []float64, change float64) bool {
	n := len(rest)
	first, second, third := median(rest[:n/3]), median(rest[n/3:2*n/3]), median(rest[2*n/3:])
	return (second-first)/change >= driftThird && (third-second)/change >= driftThird
}

// scatter is the median distance of the days from their straight line.
func scatter(rest []float64, slope float64, at []float64) float64 {
	level := make([]float64, len(rest))
	for i := range rest {
		level[i] = rest[i] - slope*(at[i]-at[0])
	}
	middle := median(level)
	for i := range level {
		level[i] = math.Abs(level[i] - middle)
	}
	return median(level)
}
