package analysis

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"thawbook/analysis/series"
)

// anyInput is a barn as it may come: with or without each of dates, hives, stages, records, walls, weather and notes, by
// loggers that begin and end where they like and have gaps, over a day to a winter.
func anyInput(rng *rand.Rand) Input {
	hours := []float64{0.5, 24, 300, 1500}[rng.IntN(4)]
	some := func(share float64) bool { return rng.Float64() < share }
	at := func() *int64 { v := span(hours*(1.4*rng.Float64()-0.2), 0).From; return &v }
	curve := func(mean, swing float64) series.Curve {
		from, to, gap := hours*0.3*rng.Float64(), hours*(0.7+0.3*rng.Float64()), hours*rng.Float64()
		return through(from, to, []float64{0.25, 0.5, 2}[rng.IntN(3)], func(h float64) float64 {
			if h > gap && h < gap+hours/10 {
				return math.NaN()
			}
			return mean + swing*math.Sin(h/4) + swing/4*rng.NormFloat64()
		})
	}
	in := one(curve(4, 1+3*rng.Float64()), curve(0.7, 0.1), span(0, hours))
	in.BeesIn, in.BeesOut, in.WaterLines = at(), at(), some(0.5)
	if some(0.4) {
		in.BeesIn = nil
	}
	if some(0.4) || in.BeesIn != nil && *in.BeesOut <= *in.BeesIn {
		in.BeesOut = nil
	}
	if some(0.5) {
		in.Heads = []HeadChange{{At: span(0, 0).From, Change: 300}, {At: span(hours, 0).From, Change: -300}}
	}
	for i, place := range []string{"room", "control", "intake", "wall"} {
		if some(0.4) {
			in.Loggers = append(in.Loggers, Logger{Name: fmt.Sprint(place, i), Place: place, TempC: curve(3, 1), RelHum: curve(0.8, 0.1), TempErrK: 0.5, RelHumErr: 0.05, TempStepK: 0.1})
		}
	}
	if some(0.6) {
		in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: curve(-3, 8), RelHum: curve(0.8, 0.1), TempErrK: 0.5})
	}
	for i, onC := range []float64{3.5, 4.5, 6} {
		always, timer, end := some(0.2), some(0.2), hours*rng.Float64()
		st := Stage{Name: fmt.Sprint("stage ", i), Settings: []Setting{{Span: span(-9999, end), OnC: onC, OffC: onC - 0.5, FlowLow: ptr(1), FlowHigh: ptr(2)}}}
		st.Settings = append(st.Settings, Setting{Span: span(end, 9999), AlwaysOn: always, Timer: timer && !always, TimerDuty: 0.1, TimerEveryMS: 10 * minuteMS, OnC: onC + 1, OffC: onC})
		if some(0.5) {
			in.Stages = append(in.Stages, st)
		}
		if some(0.3) {
			in.Loggers = append(in.Loggers, Logger{Name: "switch", Place: "other", RecordsStage: st.Name, State: curve(0.5, 0.5).Map(func(v float64) float64 { return oneIf(v > 0.5) })})
		}
	}
	if some(0.5) {
		in.Surfaces = []Surface{{Name: "ceiling", Kind: "ceiling", Mid: 0.9, Low: 0.8, High: 0.95, Evidence: Assumed, Logger: "wall3"}}
	}
	if some(0.5) {
		in.Heats = []HeatSource{{Name: "floor", Kind: "floor", WithStage: "stage 0"}}
	}
	if some(0.3) {
		in.Excluded = []series.Span{{From: *at(), To: *at()}}
	}
	in.Notes = []Note{{At: *at(), Kind: "alarm call"}, {At: *at(), Kind: "doors open"}, {At: *at(), Kind: "power cut"}}
	return in
}

// Whatever comes together, a barn is judged without a fault; every range holds its middle, the bands of a quantity add up to
// its known hours, nothing is on for longer than it is known, and no spell leaves the bees' time.
func TestAnyBarnIsJudged(t *testing.T) {
	for seed := range uint64(150) {
		r := Judge(anyInput(rand.New(rand.NewPCG(seed, 11))))
		eachFigure(reflect.ValueOf(r), func(f Figure) {
			if f.OK && !(f.Low <= f.Mid+1e-9 && f.Mid <= f.High+1e-9) {
				t.Errorf("seed %d: %+v", seed, f)
			}
		})
		for _, q := range r.Quantities {
			for _, b := range q.Bands {
				near(t, fmt.Sprint("seed ", seed, ": ", q.Quantity, b.Name), b.HoursBelow+b.HoursIn+b.HoursAbove, float64(q.KnownMS)/hourMS, 1e-6)
			}
		}
		for _, row := range r.Stages {
			for _, w := range []*Work{row.Called, row.Ran} {
				if w != nil && w.Hours.OK && w.Hours.Mid > float64(w.KnownMS)/hourMS+1e-6 {
					t.Errorf("seed %d: %s on for %g h of %d ms", seed, row.Name, w.Hours.Mid, w.KnownMS)
				}
			}
		}
		for _, s := range r.Spells {
			if s.Span.From < r.BeesIn-1 || s.Span.To > r.BeesOut+1 {
				t.Errorf("seed %d: %+v outside %d to %d", seed, s, r.BeesIn, r.BeesOut)
			}
		}
	}
}

// eachFigure calls f for every figure within a value.
func eachFigure(v reflect.Value, f func(Figure)) {
	switch {
	case v.Type() == reflect.TypeFor[Figure]():
		if v.CanInterface() {
			f(v.Interface().(Figure))
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			eachFigure(v.Field(i), f)
		}
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		for i := range v.Len() {
			eachFigure(v.Index(i), f)
		}
	case v.Kind() == reflect.Pointer && !v.IsNil():
		eachFigure(v.Elem(), f)
	}
}
