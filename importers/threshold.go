package importers

import (
	"math"
	"slices"
)

// leastSeparability is the share of a record's variance that must lie between two clusters for them to be two.
// The best cut of a normal distribution reaches 2/π = 0.64, of an even one 0.75, of three equal clusters 0.75;
// 0.85 is common practice, no source. leastOfCluster is how many values a cluster has at least.
const leastSeparability, leastOfCluster = 0.85, 3

// betweenShare is the share of values that may lie in the middle half between the clusters' means: a motor that
// is caught while it starts. Common practice, no source.
const betweenShare = 0.05

// Threshold finds the value that parts a record of current or power, in any unit, into off (below) and on
// (above): the cut with the greatest variance between its two sides (N. Otsu 1979, IEEE Transactions on Systems,
// Man, and Cybernetics 9:62–66), half way between the values beside it. ok is false when the values are not
// two clusters. Values that are not numbers are left out.
func Threshold(val []float64) (limit float64, ok bool) {
	v := slices.DeleteFunc(slices.Clone(val), func(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) })
	if len(v) < 2*leastOfCluster {
		return 0, false
	}
	slices.Sort(v)
	mean, variance := moments(v)
	at, between := bestCut(v, mean)
	if variance == 0 || between < leastSeparability*variance || min(at, len(v)-at) < leastOfCluster || crowded(v, at) {
		return 0, false
	}
	return v[at-1] + (v[at]-v[at-1])/2, true
}

// moments are the mean and the variance of all values.
func moments(v []float64) (mean, variance float64) {
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for _, x := range v {
		variance += (x - mean) * (x - mean) / float64(len(v))
	}
	return mean, variance
}

// bestCut is how many of the sorted values lie below the best cut, and the variance between its sides.
func bestCut(v []float64, mean float64) (at int, between float64) {
	n, below := float64(len(v)), 0.0
	for i := 1; i < len(v); i++ {
		below += v[i-1] - mean
		if v[i] == v[i-1] {
			continue
		}
		// With sums taken from the mean, w₀w₁(m₁ − m₀)² is the square of the sum below over n₀n₁.
		if b := below * below / (float64(i) * (n - float64(i))); b > between {
			at, between = i, b
		}
	}
	return at, between
}

// crowded says whether too many of the sorted values lie half way between the means of the two sides.
func crowded(v []float64, at int) bool {
	low, _ := moments(v[:at])
	high, _ := moments(v[at:])
	from, _ := slices.BinarySearch(v, low+(high-low)/4)
	to, _ := slices.BinarySearch(v, high-(high-low)/4)
	return float64(to-from) > betweenShare*float64(len(v))
}

// AsState reads a series of current, power or speed as the state of what draws it, 1 above a limit and 0 below, in the
// series' unit: the threshold between its two clusters, or, of a speed, a share of full speed (see stillShare). One of
// nothing known that holds only 0 and 1 is taken as it is. ok is false for other quantities and where the values are not
// two clusters.
func (s Series) AsState() (state Series, limit float64, ok bool) {
	switch s.Quantity {
	case Current, Power:
		limit, ok = Threshold(s.Val)
	case Speed:
		limit, ok = s.FullSpeed()
		limit *= stillShare
	case Other:
		limit, ok = 0, s.Unit == "" && slices.Contains(s.Val, 1) && !slices.ContainsFunc(s.Val, func(v float64) bool { return v != 0 && v != 1 })
	}
	if !ok {
		return Series{}, 0, false
	}
	state = s
	state.Quantity, state.Unit, state.UnitSource, state.Decimals = State, "", "", 0
	state.Val = make([]float64, len(s.Val))
	for i, v := range s.Val {
		if v > limit {
			state.Val[i] = 1
		}
	}
	return state, limit, true
}
