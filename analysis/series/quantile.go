package series

import (
	"math"
	"slices"
)

// Quantile is the p-quantile of some values, none of them NaN, by straight lines between them: the value at place
// p·n of the sorted ones, counted from 1, and the first below that (method 4 of Hyndman and Fan 1996, American
// Statistician 50:361–365). NaN without values.
func Quantile(p float64, values []float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	place := p * float64(len(values))
	i := max(int(math.Ceil(place))-1, 0)
	v := slices.Clone(values)
	above := nth(v, i)
	if i == 0 {
		return above
	}
	share := float64(i+1) - place // of the value below
	return share*slices.Max(v[:i]) + (1-share)*above
}

// Median is the value in the middle, of an even number the mean of the two there; NaN without values.
func Median(values []float64) float64 {
	n := len(values)
	if n == 0 {
		return math.NaN()
	}
	v := slices.Clone(values)
	upper := nth(v, n/2)
	if n%2 == 1 {
		return upper
	}
	return (slices.Max(v[:n/2]) + upper) / 2
}

// nth is the value that would stand at place n, from 0 on, were they sorted. It reorders them so that those before it
// are no greater and those after it no less: quickselect (Hoare 1961), which takes time by their number alone.
func nth(v []float64, n int) float64 {
	for lo, hi := 0, len(v)-1; lo < hi; {
		pivot := middleOfThree(v[lo], v[(lo+hi)/2], v[hi])
		i, j := lo, hi
		for i <= j {
			for v[i] < pivot {
				i++
			}
			for v[j] > pivot {
				j--
			}
			if i <= j {
				v[i], v[j] = v[j], v[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case n <= j:
			hi = j
		case n >= i:
			lo = i
		default:
			return v[n]
		}
	}
	return v[n]
}

func middleOfThree(a, b, c float64) float64 { return max(min(a, b), min(max(a, b), c)) }
