package analysis

import (
	"math"

	"thawbook/analysis/series"
)

const (
	recoveryGateK  = 10.0 // least |exhaust − outdoor|
	recoveryHoursH = 24.0 // least time a recovery's effectiveness is read from (common practice, no source)
)

// effectiveness is what share of the difference between the air going out and the air outdoors a recovery gives to the
// intake air: ε = (supply − outdoor)/(exhaust − outdoor), the apparent sensible effectiveness, which holds for
// equal flows and counts the fan's own heat and leaks (after CSA C439; ASHRAE 84 multiplies by the ratio of mass
// flows). Supply is the place intake; exhaust the place exhaust, else the room's air. Only while the source ran,
// and only where |exhaust − outdoor| ≥ 10 K: the ratio of two small differences is noise. The range has the three
// loggers' errors in quadrature.
func effectiveness(j judgement, h HeatSource, on *view) Figure {
	supply, exhaust := spotAt(j.spots, "intake").mean, spotAt(j.spots, "exhaust", "room", "control").mean
	out := j.weather(temperatureOf)
	switch {
	case h.Kind != "recovery" || h.Into != "air":
		return unknown("not_into_intake_air")
	case supply.TempC.Len() == 0 || exhaust.TempC.Len() == 0:
		return unknown("no_intake_logger")
	case out.Len() == 0:
		return unknown("no_outdoor")
	case on == nil:
		return unknown("no_record")
	}
	rise, drive, n := recovered(supply.TempC, exhaust.TempC, out, spansOf(on.tries[0]))
	if float64(n)*float64(supply.TempC.Interval()) < recoveryHoursH*series.HourMS {
		return unknown("too_few_cold_hours")
	}
	e, mean := rise/drive, drive/float64(n)
	half := math.Hypot(math.Hypot(supply.TempErrK, e*exhaust.TempErrK), (1-e)*j.outdoor.mean.TempErrK) / mean
	return Figure{Mid: e, Low: e - half, High: e + half, OK: true, Evidence: WorkedOut}
}

// recovered sums, over the supply's readings in some spans that pass the gate, the supply's and the exhaust's
// temperature above outdoors, K, both negative where outdoors is the warmer side; n is how many they are.
func recovered(supply, exhaust, out series.Curve, spans []series.Span) (rise, drive float64, n int) {
	for _, s := range spans {
		in := supply.Slice(s)
		for i, t := range in.Readings.At {
			e, knownE := exhaust.At(t)
			o, knownO := out.At(t)
			if knownE && knownO && math.Abs(e-o) >= recoveryGateK {
				rise, drive, n = rise+in.Val[i]-o, drive+e-o, n+1
			}
		}
	}
	return rise, drive, n
}
