package importers

import (
	"math"
	"slices"
)

// Summary is what a series amounts to, before anything is merged or left out.
type Summary struct {
	Readings        int
	FirstMS, LastMS int64   // earliest and latest, as Series.FaceMS
	FirstOffsetMS   int64   // the offset those readings carry, 0 when they carry none
	LastOffsetMS    int64   //
	IntervalMS      int64   // mode of the positive steps in time order, the smaller on a tie; 0 when there is none
	Gaps            int     // steps between consecutive distinct times over 1.5 × the interval
	Duplicates      int     // readings less distinct times
	Min, Mean, Max  float64 // house units; the mean is the plain mean of all readings; NaN without readings
}

// KeepSummaries sums every series up and lets its readings go, which take most of an export's memory. Summary goes on
// saying what they amounted to. Nobody may hold on to the readings: the files read next are put in their place.
func (e *Export) KeepSummaries() {
	shared := map[*int64]bool{} // times that were let go with another series
	for i := range e.Series {
		s := &e.Series[i]
		sum := s.Summary()
		if len(s.Val) > 0 && !shared[&s.FaceMS[0]] {
			shared[&s.FaceMS[0]] = true
			letGo(s.FaceMS)
		}
		letGo(s.Val)
		s.summed, s.FaceMS, s.Val, s.Offsets = &sum, nil, nil, nil
	}
}

// Readings is how many readings a series has.
func (s Series) Readings() int {
	if s.summed != nil {
		return s.summed.Readings
	}
	return len(s.Val)
}

// Summary sums a series up.
func (s Series) Summary() Summary {
	if s.summed != nil {
		return *s.summed
	}
	sum := Summary{Readings: len(s.Val), Min: math.NaN(), Mean: math.NaN(), Max: math.NaN()}
	if len(s.Val) == 0 {
		return sum
	}
	at, steps := inTimeOrder(s.FaceMS)
	sum.FirstMS, sum.LastMS = at[0], at[len(at)-1]
	if len(s.Offsets) > 0 {
		sum.FirstOffsetMS = s.OffsetAt(slices.Index(s.FaceMS, sum.FirstMS))
		sum.LastOffsetMS = s.OffsetAt(slices.Index(s.FaceMS, sum.LastMS))
	}
	sum.IntervalMS, sum.Gaps, sum.Duplicates = rhythmOf(steps)
	sum.Min, sum.Mean, sum.Max = levels(s.Val)
	return sum
}

// OffsetAt is how far the printed face of reading i lies from its instant, in milliseconds; 0 when the rows
// carry no offset.
func (s Series) OffsetAt(i int) int64 {
	for k := len(s.Offsets) - 1; k >= 0; k-- {
		if s.Offsets[k].From <= i {
			return s.Offsets[k].MS
		}
	}
	return 0
}

// inTimeOrder returns the times sorted, themselves when they already are, and how often each step between them occurs.
func inTimeOrder(at []int64) (sorted []int64, steps map[int64]int) {
	steps, ok := stepsOf(at)
	if ok {
		return at, steps
	}
	at = slices.Clone(at)
	slices.Sort(at)
	steps, _ = stepsOf(at)
	return at, steps
}

// stepsOf counts the steps between times that are in order; false when they are not.
func stepsOf(at []int64) (steps map[int64]int, ok bool) {
	counter := newStepCounter()
	for i := 1; i < len(at); i++ {
		step := at[i] - at[i-1]
		if step < 0 {
			return nil, false
		}
		counter.add(step)
	}
	return counter.counts(), true
}

// rhythmOf reads the interval, the gaps and the duplicates off the steps of times in order.
func rhythmOf(steps map[int64]int) (interval int64, gaps, duplicates int) {
	duplicates = steps[0]
	delete(steps, 0)
	interval = modeOf(steps)
	for d, n := range steps {
		if 2*d > 3*interval {
			gaps += n
		}
	}
	return interval, gaps, duplicates
}

// levels are the extremes and the plain mean. The sum carries its rounding errors along (Neumaier 1974; the error of an
// addition as in Knuth 1969, without a question which of the two is larger), so the mean of ten million readings is as
// good as that of ten.
func levels(val []float64) (low, mean, high float64) {
	low, high = val[0], val[0]
	var sum, lost float64
	for _, v := range val {
		if v < low {
			low = v
		} else if v > high {
			high = v
		}
		t := sum + v
		added := t - sum
		lost += (sum - (t - added)) + (v - added)
		sum = t
	}
	return low, (sum + lost) / float64(len(val)), high
}
