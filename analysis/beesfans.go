package analysis

import "thawbook/analysis/series"

// fansQuietMS is for how long the always-on fan must stand before its first start, or after its last stop, to say that
// no bees needed it (common practice, no source).
const fansQuietMS = dayHours * series.HourMS

// withFans lets the record of a fan that is never off while bees are in the barn stand for an edge that no logger shows for
// sure: the bees went in no later than it was started for good and came out about when it was stopped for good. Going
// in, only where the loggers show nothing, as a barn may be half full before its fans are started; coming out, also
// against a logger that was left hanging. A stop at the record's end says nothing.
func (seen BeesSeen) withFans(in Input) BeesSeen {
	for _, l := range in.Loggers {
		on := spansOf(held(l.State))
		if len(on) == 0 || !neverOff(in.Stages, l.RecordsStage) {
			continue
		}
		at := l.State.Readings.At
		started, stopped := on[0].From, on[len(on)-1].To
		if !seen.In.OK() && started-at[0] >= fansQuietMS {
			seen.In = Edge{At: started, Sure: EdgeLikely, Reason: "fan_started", Logger: l.Name}
		}
		if seen.Out.Sure != EdgeSure && at[len(at)-1]-stopped >= fansQuietMS && !(seen.Out.OK() && seen.Out.At <= stopped) {
			seen.Out = Edge{At: stopped, Sure: EdgeLikely, Reason: "fan_stopped", Logger: l.Name}
		}
	}
	return seen
}

// neverOff says whether a stage is always on or on a timer under all its settings.
func neverOff(stages []Stage, name string) bool {
	for _, st := range stages {
		if st.Name != name {
			continue
		}
		for _, s := range st.Settings {
			if s.Thermostat() {
				return false
			}
		}
		return len(st.Settings) > 0
	}
	return false
}
