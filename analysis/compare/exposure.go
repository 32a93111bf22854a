package compare

import (
	"math"

	"thawbook/analysis/series"
)

// Exposure is for how long a quantity lay at or above each of a row of levels in both barns, over the hours known in both.
type Exposure struct {
	Quantity, Unit, Phase string // Phase is empty for the whole common time
	KnownHours            float64
	Levels                []float64 // rising
	A, B                  []float64 // hours
}

// levels are those an exposure is given at: °C, percent, K (common practice, no source).
var levels = map[string]struct{ from, to, step float64 }{
	AirTemperature: {-2, 14, 0.5}, RelativeHumidity: {20, 100, 5}, DewPoint: {-15, 10, 1}, Margin: {-6, 12, 1},
}

// exposure is that of one quantity, for the whole common time and for each phase.
func (c common) exposure(m measured) (out []Exposure) {
	by := map[string]*Exposure{}
	at, limits := levelsOf(m.quantity)
	for _, scope := range c.scopes() {
		by[scope] = &Exposure{Quantity: m.quantity, Unit: m.unit, Phase: scope, Levels: at, A: make([]float64, len(at)), B: make([]float64, len(at))}
	}
	for _, s := range c.stretches {
		for _, known := range c.known(s, m.a.Known, m.b.Known) {
			outA, outB := m.a.OutsideEach(known, limits), m.b.OutsideEach(later(known, c.laterMS), limits)
			for _, scope := range s.scopes() {
				by[scope].add(known, outA, outB)
			}
		}
	}
	for _, scope := range c.scopes() {
		if e := by[scope]; e.KnownHours > 0 {
			out = append(out, *e)
		}
	}
	return out
}

// levelsOf are the levels of a quantity, and each as a limit below which time counts as below.
func levelsOf(quantity string) (at []float64, limits []series.Limits) {
	l := levels[quantity]
	for i := 0; l.from+float64(i)*l.step <= l.to; i++ {
		v := l.from + float64(i)*l.step
		at, limits = append(at, v), append(limits, series.Limits{Low: v, High: math.Inf(1)})
	}
	return at, limits
}

// add adds known time.
func (e *Exposure) add(s series.Span, a, b []series.Outside) {
	known := float64(s.To-s.From) / series.HourMS
	e.KnownHours += known
	for i := range e.Levels {
		e.A[i] += known - a[i].BelowMS/series.HourMS
		e.B[i] += known - b[i].BelowMS/series.HourMS
	}
}
