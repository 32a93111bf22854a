package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// switching is one recorded run of a thermostat's stage: the temperatures a logger showed as it started and stopped, less
// the limits it was set to, K.
type switching struct{ start, stop float64 }

// over is how far the logger reads above the thermostat by one run: start and stop averaged, so that a slow logger,
// which is late on the way up and on the way down, nearly cancels.
func (s switching) over() float64 { return (s.start + s.stop) / 2 }

// recordedSwitchings are the recorded runs with both ends seen of all stages that switch by temperature. Ends that lie
// farther from their limits than a turning point may are a breaker's, a power cut's or a hand's.
func recordedSwitchings(j judgement, control series.Curve) (out []switching) {
	for _, st := range j.Stages {
		record, ok := recordOf(j.Loggers, st.Name)
		if !ok {
			continue
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
				if knownStart && knownStop && max(math.Abs(s.start), math.Abs(s.stop)) <= widestOffsetK {
					out = append(out, s)
				}
			}
		}
	}
	return out
}
