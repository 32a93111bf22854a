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
// saying what they amounted to.
func (e *Export) KeepSummaries() {
	for i := range e.Series {
		s := &e.Series[i]
		sum := s.Summary()
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
	first, last := s.extremes()
	sum.FirstMS, sum.FirstOffsetMS = s.FaceMS[first], s.OffsetAt(first)
	sum.LastMS, sum.LastOffsetMS = s.FaceMS[last], s.OffsetAt(last)
	sum.IntervalMS, sum.Gaps, sum.Duplicates = stepsOf(inTimeOrder(s.FaceMS))
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

// extremes are the indices of the earliest and the latest reading.
func (s Series) extremes() (first, last int) {
	for i, at := range s.FaceMS {
		if at < s.FaceMS[first] {
			first = i
		}
		if at > s.FaceMS[last] {
			last = i
		}
	}
	return first, last
}

// inTimeOrder returns the times sorted, themselves when they already are.
func inTimeOrder(at []int64) []int64 {
	if slices.IsSorted(at) {
		return at
	}
	at = slices.Clone(at)
	slices.Sort(at)
	return at
}

// stepsOf reads the interval, the gaps and the duplicates off times in order.
func stepsOf(at []int64) (interval int64, gaps, duplicates int) {
	steps := map[int64]int{}
	run, step := 0, int64(0)
	for i := 1; i < len(at); i++ {
		d := at[i] - at[i-1]
		if d == step {
			run++
			continue
		}
		steps[step] += run
		step, run = d, 1
	}
	steps[step] += run
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

// levels are the extremes and the plain mean. The sum carries its rounding errors along (Neumaier 1974), so
// the mean of ten million readings is as good as that of ten.
func levels(val []float64) (low, mean, high float64) {
	low, high = val[0], val[0]
	var sum, lost float64
	for _, v := range val {
		low, high = min(low, v), max(high, v)
		t := sum + v
		if math.Abs(sum) >= math.Abs(v) {
			lost += (sum - t) + v
		} else {
			lost += (v - t) + sum
		}
		sum = t
	}
	return low, (sum + lost) / float64(len(val)), high
}
