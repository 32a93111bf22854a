package engine

import (
	"cmp"
	"slices"
	"strconv"

	"thawbook/analysis/series"
)

// The remarks merging leaves; Args are those of the logger, then those named here.
const (
	SameTimeDropped = "same_time_dropped" // within one file: same time, other value; the first is kept. Args: file
	SortedRows      = "rows_sorted"       // rows out of order were put in order. Args: file
	Duplicates      = "duplicates"        // within one file: same time and value; one is kept. Args: file
	SameReadings    = "same_readings"     // a read-out repeats an earlier one. Args: later file, earlier file, shift in s
	SecondsMissing  = "seconds_missing"   // a minute comes several times; its readings were put evenly into it. Args: file, how often
	ReadoutsDiffer  = "readouts_differ"   // same time, other value; the earlier read-out is kept. Args: later file, earlier file
)

// The rule for two read-outs of one logger that overlap, as far as it is ours (common practice, no source):
// a shift is looked for up to a day and two hours, a wrong zone and summer time together, and believed
// from twelve values on of which four differ.
const (
	maxShiftMS     = 26 * series.HourMS
	sameShare      = 0.95
	leastOverlap   = 12
	leastDifferent = 4
)

// readout is what one file says of one quantity of one logger, on the true clock.
type readout struct {
	file     string
	readings series.Readings
	interval int64
}

// rising says whether every instant is later than the one before.
func rising(at []int64) bool {
	for i := 1; i < len(at); i++ {
		if at[i] <= at[i-1] {
			return false
		}
	}
	return true
}

// tidy orders one file's readings by time and keeps one of each time, the first.
func tidy(file string, at []int64, val []float64) (readout, []series.Remark) {
	if rising(at) { // as nearly every file
		r := series.Readings{At: at, Val: val}
		return readout{file, r, r.Interval()}, nil
	}
	order := make([]int, len(at))
	for i := range order {
		order[i] = i
	}
	sorted := slices.IsSorted(at)
	if !sorted {
		slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(at[a], at[b]) })
	}
	r := series.Readings{At: make([]int64, 0, len(at)), Val: make([]float64, 0, len(at))}
	twice := tally{code: Duplicates, args: []string{file}}
	other := tally{code: SameTimeDropped, args: []string{file}}
	for _, i := range order {
		n := len(r.At)
		switch {
		case n == 0 || at[i] > r.At[n-1]:
			r.At, r.Val = append(r.At, at[i]), append(r.Val, val[i])
		case val[i] == r.Val[n-1]:
			twice.add(at[i])
		default:
			other.add(at[i])
		}
	}
	remarks := append(twice.remarks(), other.remarks()...)
	if !sorted && !descending(at) {
		remarks = append(remarks, series.Remark{Code: SortedRows, Args: []string{file}, Count: 1})
	}
	return readout{file, r, r.Interval()}, remarks
}

// merged is several read-outs as one line of readings; from tells, per reading, the read-out it is of.
type merged struct {
	readings series.Readings
	from     []int
	readouts []readout
}

// merge puts the read-outs of one logger together, the one that ends first being the earliest. No reading
// is changed and none is moved.
func merge(readouts []readout) (merged, []series.Remark) {
	readouts = slices.DeleteFunc(slices.Clone(readouts), func(r readout) bool { return r.readings.Len() == 0 })
	slices.SortStableFunc(readouts, func(a, b readout) int {
		return cmp.Or(cmp.Compare(a.end(), b.end()), cmp.Compare(a.readings.At[0], b.readings.At[0]))
	})
	m := merged{readouts: readouts}
	var remarks []series.Remark
	for k, r := range readouts {
		remarks = append(remarks, m.take(k, r)...)
	}
	return m, remarks
}

// end is the instant of the last reading.
func (r readout) end() int64 { return r.readings.At[r.readings.Len()-1] }

// take adds one more read-out.
func (m *merged) take(k int, r readout) []series.Remark {
	if m.readings.Len() == 0 || r.readings.At[0] > m.readings.At[m.readings.Len()-1] {
		m.put(k, r.readings)
		return nil
	}
	earlier := m.readouts[m.from[m.readings.Len()-1]].file
	if shiftMS, skip, count := sameReadings(m.readings, r.readings); count > 0 {
		start, end := m.readings.At[0], m.readings.At[m.readings.Len()-1]
		before, _ := slices.BinarySearch(r.readings.At[:skip], start)
		after, _ := slices.BinarySearch(r.readings.At, end+1)
		after = max(after, skip+count)
		span := series.Span{From: max(start, r.readings.At[0]), To: end + 1}
		m.putFirst(k, series.Readings{At: r.readings.At[:before], Val: r.readings.Val[:before]})
		m.put(k, series.Readings{At: r.readings.At[after:], Val: r.readings.Val[after:]})
		seconds := strconv.FormatFloat(float64(shiftMS)/1000, 'f', -1, 64)
		return []series.Remark{{Code: SameReadings, Args: []string{r.file, earlier, seconds}, Count: count, Span: span}}
	}
	return m.interleave(k, r, earlier)
}

// put appends readings later than all before. The first are taken as they are.
func (m *merged) put(k int, r series.Readings) {
	if m.readings.Len() == 0 {
		m.readings = series.Readings{At: slices.Clip(r.At), Val: slices.Clip(r.Val)}
	} else {
		m.readings.At = append(m.readings.At, r.At...)
		m.readings.Val = append(m.readings.Val, r.Val...)
	}
	m.from = slices.Grow(m.from, r.Len())
	for range r.At {
		m.from = append(m.from, k)
	}
}

// putFirst puts readings earlier than all others in front of them.
func (m *merged) putFirst(k int, r series.Readings) {
	if r.Len() == 0 {
		return
	}
	from := make([]int, r.Len(), r.Len()+len(m.from))
	for i := range from {
		from[i] = k
	}
	m.readings = series.Readings{At: slices.Concat(r.At, m.readings.At), Val: slices.Concat(r.Val, m.readings.Val)}
	m.from = append(from, m.from...)
}

// interleave puts two overlapping read-outs in one order of time; at the same time the earlier's is kept.
func (m *merged) interleave(k int, r readout, earlier string) []series.Remark {
	old := *m
	*m = merged{readouts: old.readouts}
	differ := tally{code: ReadoutsDiffer, args: []string{r.file, earlier}}
	i, j := 0, 0
	for i < old.readings.Len() || j < r.readings.Len() {
		if i == old.readings.Len() || j < r.readings.Len() && r.readings.At[j] < old.readings.At[i] {
			m.one(k, r.readings, j)
			j++
			continue
		}
		if j < r.readings.Len() && old.readings.At[i] == r.readings.At[j] {
			if old.readings.Val[i] != r.readings.Val[j] {
				differ.add(r.readings.At[j])
			}
			j++
		}
		m.one(old.from[i], old.readings, i)
		i++
	}
	return differ.remarks()
}

// one appends reading i of r.
func (m *merged) one(k int, r series.Readings, i int) {
	m.readings.At, m.readings.Val = append(m.readings.At, r.At[i]), append(m.readings.Val, r.Val[i])
	m.from = append(m.from, k)
}

// sameReadings looks for the constant shift (later clock minus earlier clock) at which a later read-out
// repeats an earlier one, none first, then small before large. Either may begin first: of the later's readings those
// from number skip on are the repeated ones, count of them; count is 0 when they are not the same.
func sameReadings(earlier, later series.Readings) (shiftMS int64, skip, count int) {
	start, _ := slices.BinarySearch(earlier.At, later.At[0])
	if start == 0 {
		start, _ = slices.BinarySearch(later.At, earlier.At[0])
		start = -start
	}
	for away := range max(start+later.Len(), earlier.Len()-start) + 1 {
		tried := false
		for _, lag := range []int{start + away, start - away} {
			if lag <= -later.Len() || lag >= earlier.Len() || abs(shiftAt(earlier, later, lag)) > maxShiftMS {
				continue
			}
			tried = true
			if n, ok := repeats(earlier, later, lag); ok {
				return shiftAt(earlier, later, lag), max(0, -lag), n
			}
		}
		if !tried && away > 0 {
			break
		}
	}
	return 0, 0, 0
}

// shiftAt is how far the later read-out's clock is ahead where its first reading is the earlier's number lag, or, with a
// lag below zero, where the earlier's first is its number −lag.
func shiftAt(earlier, later series.Readings, lag int) int64 {
	return later.At[max(0, -lag)] - earlier.At[max(0, lag)]
}

// repeats says whether the later read-out's readings from its first on are the earlier's from lag on, or the earlier's
// from its first on the later's from −lag on: as many of them, in value and in constant shift, as the rule asks.
func repeats(earlier, later series.Readings, lag int) (n int, ok bool) {
	shift, skip := shiftAt(earlier, later, lag), max(0, -lag)
	later = series.Readings{At: later.At[skip:], Val: later.Val[skip:]}
	lag = max(0, lag)
	n = min(earlier.Len()-lag, later.Len())
	if n < leastOverlap {
		return n, false
	}
	if unlike(earlier, later, lag, n) {
		return n, false
	}
	wrong, allowed := 0, int(float64(n)*(1-sameShare))
	different := map[float64]bool{}
	for i := range n {
		if later.Val[i] != earlier.Val[lag+i] || later.At[i]-earlier.At[lag+i] != shift {
			wrong++
		}
		if wrong > allowed {
			return n, false
		}
		if len(different) < leastDifferent {
			different[later.Val[i]] = true
		}
	}
	return n, shift == 0 || len(different) >= leastDifferent
}

// unlike says from a hundred values spread over the overlap that most differ: with readings every second
// there are a hundred thousand shifts to try, and nearly all of them end here.
func unlike(earlier, later series.Readings, lag, n int) bool {
	const probes = 100
	if n < 2*probes {
		return false
	}
	differ := 0
	for k := range probes {
		i := k * (n - 1) / (probes - 1)
		if later.Val[i] != earlier.Val[lag+i] {
			differ++
		}
	}
	return differ > probes/2
}

// tally counts how often something was seen, and where first and last.
type tally struct {
	code  string
	args  []string
	count int
	span  series.Span
}

// add counts one at an instant.
func (t *tally) add(at int64) {
	if t.count == 0 {
		t.span.From = at
	}
	t.count++
	t.span.To = max(t.span.To, at+1)
}

// remarks is the tally as a remark, or nothing.
func (t *tally) remarks() []series.Remark {
	if t.count == 0 {
		return nil
	}
	return []series.Remark{{Code: t.code, Args: t.args, Count: t.count, Span: t.span}}
}
