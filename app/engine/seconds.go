package engine

import "slices"

// Some loggers that read several times a minute print no seconds: each minute then comes several times. The
// readings are put evenly into it, in the order of the rows.

// leastRepeats is how often a minute must come: twice may be two loggers by turns. usualRuns is the share of the
// minutes that must come as often as most do (common practice, no source).
const (
	leastRepeats = 3
	usualRuns    = 0.9
)

// spaced puts readings that bear the same minute evenly into it; repeats is how often most minutes come, 0 where
// nothing was moved. Rows that come twice with the same values are left alone.
func spaced(at []int64, val []float64) (moved []int64, repeats int) {
	if rising(at) || !slices.IsSorted(at) {
		return at, 0
	}
	runs := sameTimes(at)
	repeats = usualRun(runs)
	if repeats < leastRepeats || !inMinutes(at, runs, repeats) || !differ(val, runs) {
		return at, 0
	}
	moved = make([]int64, len(at))
	for k, r := range runs {
		missing := 0
		if n := r.to - r.from; k == 0 && n < repeats { // the log began within the minute
			missing = repeats - n
		}
		for i := r.from; i < r.to; i++ {
			moved[i] = at[i] + int64(missing+i-r.from)*minuteMS/int64(max(repeats, r.to-r.from))
		}
	}
	return moved, repeats
}

// sameTimes are the runs of equal times.
func sameTimes(at []int64) (out []run) {
	from := 0
	for i := 1; i <= len(at); i++ {
		if i == len(at) || at[i] != at[from] {
			out, from = append(out, run{from, i}), i
		}
	}
	return out
}

// usualRun is the commonest length of runs, the first and the last left out.
func usualRun(runs []run) (usual int) {
	count := map[int]int{}
	for _, r := range runs[min(1, len(runs)):max(len(runs)-1, 1)] {
		count[r.to-r.from]++
	}
	for n, times := range count {
		if times > count[usual] || times == count[usual] && n < usual {
			usual = n
		}
	}
	return usual
}

// inMinutes says whether nearly all runs are of the usual length and a minute apart.
func inMinutes(at []int64, runs []run, usual int) bool {
	same, apart := 0, 0
	for k, r := range runs {
		if r.to-r.from == usual {
			same++
		}
		if k > 0 && at[r.from]-at[r.from-1] == minuteMS {
			apart++
		}
	}
	least := usualRuns * float64(len(runs)-2)
	return float64(same) >= least && float64(apart) >= least
}

// differ says whether the values within any run differ.
func differ(val []float64, runs []run) bool {
	return slices.ContainsFunc(runs, func(r run) bool {
		return slices.ContainsFunc(val[r.from:r.to], func(v float64) bool { return v != val[r.from] })
	})
}
