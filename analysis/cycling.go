package analysis

import (
	"thawbook/analysis/series"
)

// The lines of short cycling (common practice, no source).
const (
	mostStartsAnHour = 6
	shortMedianMin   = 3.0
	shortRunMin      = 2.0
	mostShortRuns    = 0.2
)

// Cycling is how often something switches, where its starts can be seen.
type Cycling struct {
	BusiestHour int     // most starts within any 60 minutes
	ShortRuns   float64 // 0–1 of the runs seen whole that are under 2 min
	Short       bool    // more than 6 starts within an hour, a median run under 3 min, or a fifth of the runs under 2
}

// cycling looks at a stage's record, else at its rule; nil where starts can't be seen, and for timers, which switch
// as they are told.
func (p period) cycling(w *Work) *Cycling {
	if w == nil || !w.Starts.OK || !w.MedianRunMin.OK {
		return nil
	}
	c := &Cycling{}
	segs := p.best().tries[0]
	runs, short := 0, 0
	var starts []float64
	for i, g := range segs {
		if !g.On || i == 0 || segs[i-1].To != g.From {
			continue
		}
		starts = append(starts, g.From)
		for g.From-starts[0] >= series.HourMS {
			starts = starts[1:]
		}
		c.BusiestHour = max(c.BusiestHour, len(starts))
		if i+1 < len(segs) && segs[i+1].From == g.To {
			runs++
			if g.To-g.From < shortRunMin*minuteMS {
				short++
			}
		}
	}
	c.ShortRuns = float64(short) / float64(max(1, runs))
	c.Short = c.BusiestHour > mostStartsAnHour || w.MedianRunMin.Mid < shortMedianMin || c.ShortRuns > mostShortRuns
	return c
}
