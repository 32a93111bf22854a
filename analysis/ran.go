package analysis

import "thawbook/analysis/series"

// held reads a record of states (above 0.5 is on): each holds until the next entry, no longer than the
// curve's gap limit; nothing is known after the last entry.
func held(record series.Curve) []segment {
	var out []segment
	for i := 1; i < record.Len(); i++ {
		from, to := record.Readings.At[i-1], record.Readings.At[i]
		if to-from > record.MaxStepMS {
			continue
		}
		on := record.Val[i-1] > 0.5
		if n := len(out); n > 0 && out[n-1].On == on && out[n-1].To == float64(from) {
			out[n-1].To = float64(to)
			continue
		}
		out = append(out, segment{float64(from), float64(to), on})
	}
	return out
}

// recordOf is the state record of a stage or heat source, and whether there is one.
func recordOf(loggers []Logger, name string) (series.Curve, bool) {
	for _, l := range loggers {
		if l.RecordsStage == name && l.State.Len() > 1 {
			return l.State, true
		}
	}
	return series.Curve{}, false
}

// speedOf is the speed record of a stage; empty where it has none.
func speedOf(loggers []Logger, name string) series.Curve {
	for _, l := range loggers {
		if l.RecordsStage == name && l.Speed.Len() > 1 {
			return l.Speed
		}
	}
	return series.Curve{}
}

// clip is the part of segments inside some time; both are in order.
func clip(segs []segment, s stretches) []segment {
	var out []segment
	for i, k := 0, 0; i < len(segs) && k < len(s); {
		g := segs[i]
		g.From, g.To = max(g.From, float64(s[k].From)), min(g.To, float64(s[k].To))
		if g.To > g.From {
			out = append(out, g)
		}
		if segs[i].To < float64(s[k].To) {
			i++
		} else {
			k++
		}
	}
	return out
}
