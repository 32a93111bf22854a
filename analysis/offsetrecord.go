package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// switching is one recorded run of a thermostat's stage: the temperatures a logger showed as it started and stopped, less
// the limits it was set to, K.
type switching struct{ start, stop float64 }

// over is how far the logger reads above the thermostat by one run: start and stop averaged, so that a slow logger,
// which is late on the way up and on the way down, nearly cancels.
func (s switching) over() float64 { return (s.start + s.stop) / 2 }

// A thermostat may be off by more than a turning point may lie from its limit where the records of two stages and more say
// so: so far, and with medians so near each other. One stage alone may have run by another rule. (Common practice, no source.)
const (
	farthestOffsetK = 3
	agreeingK       = 0.5
	tellingRuns     = 5 // of a stage, for its median to say anything
)

// recordedSwitchings are the recorded runs with both ends seen of all stages that switch by temperature. Ends that lie
// farther from their limits than a turning point may are a breaker's, a power cut's or a hand's; unless few lie nearer, and
// all of several stages switch as far from their limits, on the same side: then the ends near that are meant.
func recordedSwitchings(j judgement, control series.Curve) []switching {
	var near, all []switching
	var medians []float64
	for _, st := range j.Stages {
		runs := recordedRuns(j, st, control)
		near, all = append(near, around(runs, 0)...), append(all, runs...)
		if len(runs) >= tellingRuns {
			medians = append(medians, series.Median(oversOf(runs)))
		}
	}
	if len(near) >= leastTurns || len(medians) < 2 || slices.Max(medians)-slices.Min(medians) > agreeingK {
		return near
	}
	return around(all, series.Median(oversOf(all)))
}

// around are the runs whose ends lie as near to their limits and an offset as a turning point may.
func around(runs []switching, offsetK float64) (out []switching) {
	for _, s := range runs {
		if max(math.Abs(s.start-offsetK), math.Abs(s.stop-offsetK)) <= widestOffsetK {
			out = append(out, s)
		}
	}
	return out
}

// oversOf are how far the logger reads above the thermostat, by each of some swings or runs.
func oversOf[T interface{ over() float64 }](list []T) []float64 {
	over := make([]float64, len(list))
	for i, s := range list {
		over[i] = s.over()
	}
	return over
}

// recordedRuns are the recorded runs of a stage with both ends seen, no farther from its limits than a thermostat may be off.
func recordedRuns(j judgement, st Stage, control series.Curve) (out []switching) {
	record, ok := recordOf(j.Loggers, st.Name)
	if !ok {
		return nil
	}
	every := sampledEvery(record)
	for _, set := range st.Settings {
		if !set.Thermostat() {
			continue
		}
		segs := clip(held(record), series.Intersect(j.scored, []series.Span{set.Span}))
		for i := 1; i+1 < len(segs); i++ {
			if !segs[i].On || segs[i-1].To != segs[i].From || segs[i].To != segs[i+1].From {
				continue
			}
			start, knownStart := control.At(int64(segs[i].From) - every/2)
			stop, knownStop := control.At(int64(segs[i].To) - every/2)
			s := switching{start - set.OnC, stop - set.OffC}
			if knownStart && knownStop && max(math.Abs(s.start), math.Abs(s.stop)) <= farthestOffsetK {
				out = append(out, s)
			}
		}
	}
	return out
}
