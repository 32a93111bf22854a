package analysis

import "thawbook/analysis/series"

// The share of a fan's nameplate flow that it moves behind light traps and flaps (common practice, no source).
const nameplateLow, nameplateHigh = 0.5, 0.8

// Air is what all stages with a flow moved over the bees' time.
type Air struct {
	M3             Figure // over the known hours
	ChangesPerHour Figure // of the barn's volume
	KnownMS        int64  // when every stage with a flow is known
}

// flow is the range of the air a setting moves while on, m³/s: the keeper's range, or a measured flow, as it is; a
// single number is the fan's nameplate, of which it moves 50–80 % (see nameplateLow).
func (s Setting) flow() (low, high float64, ok bool) {
	switch {
	case s.FlowLow == nil || s.FlowHigh == nil:
		return 0, 0, false
	case *s.FlowLow == *s.FlowHigh && !s.FlowMeasured:
		return nameplateLow * *s.FlowLow, nameplateHigh * *s.FlowHigh, true
	}
	return *s.FlowLow, *s.FlowHigh, true
}

// known is when a period's stage is known to be on or off; a timer's always is.
func (p period) known() []series.Span {
	v := p.best()
	switch {
	case v == nil && p.set.Timer:
		return p.time
	case v == nil:
		return nil
	}
	return series.Intersect(known(v.tries[0]), p.time)
}

// onSeconds is for how long a period's stage was on within some time, by one of its guesses; where its speed is known, for
// how long at full speed it would have moved as much air.
func (p period) onSeconds(sure []series.Span, try int) float64 {
	if p.speed.Len() > 0 {
		return p.atFullSpeed(sure, flowPower) * 3600
	}
	if v := p.best(); v != nil {
		return float64(series.LengthMS(series.Intersect(spansOf(v.tries[try]), sure))) / 1000
	}
	return p.set.TimerDuty * float64(series.LengthMS(series.Intersect(p.time, sure))) / 1000
}

// flowing is the time within s at which every stage with a flow is known, and the periods in it that have one.
func (j judgement) flowing(s stretches) (sure []series.Span, with []period) {
	sure = s
	for _, p := range j.periods {
		here := series.Intersect(p.time, sure)
		if _, _, ok := p.set.flow(); !ok || len(here) == 0 {
			continue
		}
		with = append(with, p)
		sure = series.Subtract(sure, series.Subtract(here, p.known()))
	}
	return sure, with
}

// volume is the air, m³, that some periods' stages moved in some time, by one guess of when they were on: least, in
// the middle and most.
func volume(of []period, sure []series.Span, try int) (v Figure) {
	for _, p := range of {
		low, high, _ := p.set.flow()
		v = v.plus(Figure{Mid: 1, Low: 1, High: 1}.times(low*p.onSeconds(sure, try), high*p.onSeconds(sure, try)))
	}
	return v
}

// shareOfAir is what part of all the air a period's stage moved while the setting held, 0–1, over the hours in which
// every stage with a flow is known. Flows are ranges, independent of one another.
func (j judgement) shareOfAir(p period) Figure {
	if _, _, ok := p.set.flow(); !ok {
		return unknown("no_flow")
	}
	sure, with := j.flowing(p.time)
	if len(sure) == 0 {
		return unknown("nothing_known")
	}
	var others []period
	for _, o := range with {
		if o.stage != p.stage {
			others = append(others, o)
		}
	}
	var f Figure
	for try := range 3 {
		own, rest := volume([]period{p}, sure, try), volume(others, sure, try)
		if own.High+rest.High == 0 {
			return unknown("no_air_moved")
		}
		t := Figure{Mid: own.Mid / (own.Mid + rest.Mid), Low: part(own.Low, rest.High), High: part(own.High, rest.Low), OK: true, Evidence: WorkedOut}
		if try == 0 {
			f = t
		}
		f.Low, f.High = min(f.Low, t.Low), max(f.High, t.High)
	}
	return f
}

// part is a of a and b together, 0 of nothing.
func part(a, b float64) float64 {
	if a == 0 {
		return 0
	}
	return a / (a + b)
}

// air adds up what all stages with a flow moved.
func (j judgement) air() Air {
	sure, with := j.flowing(j.scored)
	a := Air{KnownMS: series.LengthMS(sure), M3: unknown("no_flow"), ChangesPerHour: unknown("no_flow")}
	if len(with) == 0 || a.KnownMS == 0 {
		return a
	}
	var v [3]Figure
	for try := range v {
		v[try] = volume(with, sure, try)
	}
	a.M3 = Figure{Mid: v[0].Mid, Low: min(v[0].Low, v[1].Low, v[2].Low), High: max(v[0].High, v[1].High, v[2].High), OK: true, Evidence: WorkedOut}
	a.ChangesPerHour = a.M3.perVolume(j.VolumeM3, float64(a.KnownMS)/series.HourMS)
	return a
}

// perVolume is air as changes of a barn's volume, per so many hours.
func (f Figure) perVolume(m3 *float64, hours float64) Figure {
	switch {
	case !f.OK:
		return unknown(f.Unknown)
	case m3 == nil || *m3 == 0:
		return unknown("no_volume")
	}
	k := 1 / (*m3 * hours)
	return f.times(k, k)
}

// moved is the air, m³, a setting moved over its recorded, else called-for hours, or what they come to at full speed.
func moved(set Setting, hours Figure) Figure {
	low, high, ok := set.flow()
	switch {
	case !ok:
		return unknown("no_flow")
	case !hours.OK:
		return unknown("hours_unknown")
	}
	return hours.times(low*3600, high*3600)
}

// changeMinutes is how long one change of the barn's air takes with a period's stage and all smaller ones on, as they
// were set when it began; a timer counts by its share. The top step of a ladder turns a barn's air over in about five
// minutes, and stages sit about a degree apart (common practice, no source).
func (j judgement) changeMinutes(p period) Figure {
	if j.VolumeM3 == nil {
		return unknown("no_volume")
	}
	at, total := p.time[0].From, Figure{OK: true, Evidence: YourSetting}
	for _, o := range j.periods {
		if o.time.hull().From > at || at >= o.time.hull().To || o.step() > p.step() {
			continue
		}
		low, high, ok := o.set.flow()
		if !ok {
			return unknown("no_flow")
		}
		if o.set.Timer {
			low, high = low*o.set.TimerDuty, high*o.set.TimerDuty
		}
		total = Figure{Mid: total.Mid + (low+high)/2, Low: total.Low + low, High: total.High + high}
	}
	if total.Low <= 0 {
		return unknown("no_flow")
	}
	v := *j.VolumeM3 / 60
	return Figure{Mid: v / total.Mid, Low: v / total.High, High: v / total.Low, OK: true, Evidence: YourSetting}
}

// step is where a setting stands in the ladder: its on-temperature, below all of them for minimum ventilation.
func (p period) step() float64 {
	if p.set.Thermostat() {
		return p.set.OnC
	}
	return -1000
}
