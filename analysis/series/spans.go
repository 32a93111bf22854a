package series

import (
	"cmp"
	"slices"
)

// Union lists the stretches of time in any of the spans, which may come in any order and overlap: sorted,
// disjoint, those that touch joined. The argument is left as it is.
func Union(spans []Span) []Span {
	sorted := slices.SortedFunc(slices.Values(spans), func(a, b Span) int { return cmp.Compare(a.From, b.From) })
	var out []Span
	for _, s := range sorted {
		if n := len(out); n > 0 && s.From <= out[n-1].To {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}

// Intersect lists the stretches of time in both a and b. Both lists must be sorted and disjoint, and so
// is the result.
func Intersect(a, b []Span) []Span {
	var both []Span
	for i, j := 0, 0; i < len(a) && j < len(b); {
		s := Span{max(a[i].From, b[j].From), min(a[i].To, b[j].To)}
		if s.From < s.To {
			both = append(both, s)
		}
		if a[i].To < b[j].To {
			i++
		} else {
			j++
		}
	}
	return both
}

// Subtract lists the stretches of time in a but not in b. Both lists must be sorted and disjoint, and
// so is the result.
func Subtract(a, b []Span) []Span {
	var rest []Span
	j := 0
	for _, s := range a {
		for j < len(b) && b[j].To <= s.From {
			j++
		}
		for k := j; k < len(b) && b[k].From < s.To; k++ {
			if s.From < b[k].From {
				rest = append(rest, Span{s.From, b[k].From})
			}
			s.From = max(s.From, b[k].To)
		}
		if s.From < s.To {
			rest = append(rest, s)
		}
	}
	return rest
}

// LengthMS is the total length of the spans in milliseconds; an empty or reversed span adds nothing.
func LengthMS(s []Span) int64 {
	var sum int64
	for _, x := range s {
		sum += max(0, x.To-x.From)
	}
	return sum
}
