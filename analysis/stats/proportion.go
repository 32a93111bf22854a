package stats

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Wilson is the 95 % interval of the share that so many of so many stand for, 0–1 (Wilson 1927, Journal of the American
// Statistical Association 22:209). Of none it is all from 0 to 1.
func Wilson(count, of float64) (low, high float64) {
	if of <= 0 {
		return 0, 1
	}
	z := distuv.UnitNormal.Quantile(0.975)
	share, square := count/of, z*z/of
	middle := (share + square/2) / (1 + square)
	half := z / (1 + square) * math.Sqrt(share*(1-share)/of+square/(4*of))
	return math.Max(0, middle-half), math.Min(1, middle+half)
}

// TwoShares is the 95 % interval of the difference of two independent shares, the first less the second, from the
// Wilson interval of each (Newcombe 1998, Statistics in Medicine 17:873, method 10).
func TwoShares(countA, ofA, countB, ofB float64) (difference, low, high float64) {
	a, b := countA/ofA, countB/ofB
	lowA, highA := Wilson(countA, ofA)
	lowB, highB := Wilson(countB, ofB)
	difference = a - b
	return difference, difference - math.Hypot(a-lowA, highB-b), difference + math.Hypot(highA-a, b-lowB)
}
