package calibration

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// Loggers seem to hang side by side while, hour by hour, each keeps its distance to the middle of them: no further from
// it than 1 K, moving against it by no more than 0.15 K from one hour to the next and by no more than 0.4 K in all, for
// a day and more; and at least twice as steadily as in the hours they are compared with, when they hung apart. A
// calm room looks the same at both times, and then nothing is said. (Common practice, no source.)
const (
	besideHours             = 24
	besideFarK              = 1.0
	besideStepK, besideAllK = 0.15, 0.4
	besideSteadier          = 2
)

// Beside finds the longest stretch of where in which loggers seem to have hung side by side, and which of them did, by
// their temperatures in °C. rest is when they hung at their places. Loggers that don't fit the others are left aside, the
// worst first. ok is false where there is no such stretch of at least two.
func Beside(loggers []series.Curve, where, rest series.Span) (members []int, span series.Span, ok bool) {
	cells := series.Steps(where, series.HourMS, 0)
	there, apart := hourly(loggers, cells), hourly(loggers, series.Steps(rest, series.HourMS, 0))
	for i := range loggers {
		if knownIn(there[i]) >= besideHours && knownIn(apart[i]) >= besideHours {
			members = append(members, i)
		}
	}
	for len(members) > 1 {
		off := distances(there, members)
		i, j := longestSteady(off, len(cells))
		if j-i >= besideHours && unrest(off, i, j)*besideSteadier <= unrest(distances(apart, members), 0, len(apart[members[0]])) {
			return members, series.Span{From: cells[i].From, To: cells[j-1].To}, true
		}
		members = withoutWorst(members, off)
	}
	return nil, series.Span{}, false
}

// hourly is the mean of every hour per logger, NaN where less than half of it is known.
func hourly(loggers []series.Curve, cells []series.Span) [][]float64 {
	out := make([][]float64, len(loggers))
	for i, c := range loggers {
		out[i] = c.Means(cells, 0.5)
	}
	return out
}

// knownIn counts the known values.
func knownIn(val []float64) (n int) {
	for _, v := range val {
		if !math.IsNaN(v) {
			n++
		}
	}
	return n
}

// distances are how far each member lies from the middle of them, hour by hour; NaN where one is not known.
func distances(val [][]float64, members []int) [][]float64 {
	out := make([][]float64, len(members))
	row := make([]float64, len(members))
	for m := range members {
		out[m] = make([]float64, len(val[members[0]]))
	}
	for k := range val[members[0]] {
		for m, i := range members {
			row[m] = val[i][k]
		}
		middle := math.NaN()
		if !slices.ContainsFunc(row, math.IsNaN) {
			middle = series.Median(row)
		}
		for m := range members {
			out[m][k] = row[m] - middle
		}
	}
	return out
}

// longestSteady is the longest run of hours [i, j) in which all keep their distance.
func longestSteady(off [][]float64, n int) (from, to int) {
	i := 0
	for j := range n {
		for i <= j && !steadyOver(off, i, j) {
			i++
		}
		if j+1-i > to-from {
			from, to = i, j+1
		}
	}
	return from, to
}

// steadyOver says whether hours i to j go together, when i to j−1 do.
func steadyOver(off [][]float64, i, j int) bool {
	for _, own := range off {
		if !(math.Abs(own[j]) <= besideFarK) || j > i && !(math.Abs(own[j]-own[j-1]) <= besideStepK) || !(reach(own[i:j+1]) <= besideAllK) {
			return false
		}
	}
	return true
}

// unrest is the middle of how far the members move against each other from one hour of [i, j) to the next.
func unrest(off [][]float64, i, j int) float64 {
	var moves []float64
	for _, own := range off {
		for k := i + 1; k < j; k++ {
			if move := math.Abs(own[k] - own[k-1]); !math.IsNaN(move) {
				moves = append(moves, move)
			}
		}
	}
	return series.Median(moves)
}

// withoutWorst is the members without the quarter, at least one, that strays most hours from the others.
func withoutWorst(members []int, off [][]float64) []int {
	strays := make([]int, len(members))
	for m, own := range off {
		for k := 1; k < len(own); k++ {
			if !(math.Abs(own[k]) <= besideFarK && math.Abs(own[k]-own[k-1]) <= besideStepK) {
				strays[m]++
			}
		}
	}
	order := make([]int, len(members))
	for m := range order {
		order[m] = m
	}
	slices.SortStableFunc(order, func(a, b int) int { return strays[a] - strays[b] })
	var out []int
	for _, m := range order[:len(order)-max(1, len(order)/4)] {
		out = append(out, members[m])
	}
	slices.Sort(out)
	return out
}
