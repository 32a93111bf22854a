package engine

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"thawbook/analysis/series"
)

// said is a read-out at whole minutes.
func said(file string, startMin, stepMin int64, val ...float64) readout {
	at := make([]int64, len(val))
	for i := range at {
		at[i] = (startMin + int64(i)*stepMin) * minuteMS
	}
	r, _ := tidy(file, at, val)
	return r
}

// wave is a long record without two stretches alike.
func wave(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = math.Round(100*(4+math.Sin(float64(i)/7)+math.Sin(float64(i)/11))) / 100
	}
	return out
}

func TestTidyKeepsTheFirstOfATime(t *testing.T) {
	r, remarks := tidy("n.csv", []int64{3, 1, 2, 2, 3, 4, 4}, []float64{30, 10, 20, 21, 30, 40, 41})
	if !slices.Equal(r.readings.At, []int64{1, 2, 3, 4}) || !slices.Equal(r.readings.Val, []float64{10, 20, 30, 40}) {
		t.Errorf("got %v", r.readings)
	}
	want := []series.Remark{
		{Code: Duplicates, Args: []string{"n.csv"}, Count: 1, Span: series.Span{From: 3, To: 4}},
		{Code: SameTimeDropped, Args: []string{"n.csv"}, Count: 2, Span: series.Span{From: 2, To: 5}},
		{Code: SortedRows, Args: []string{"n.csv"}, Count: 1},
	}
	for i := range want {
		if i >= len(remarks) || remarks[i].Code != want[i].Code || remarks[i].Count != want[i].Count || remarks[i].Span != want[i].Span {
			t.Fatalf("remarks %+v, want %+v", remarks, want)
		}
	}
	if _, remarks := tidy("n.csv", []int64{3, 2, 1}, []float64{1, 2, 3}); len(remarks) != 0 {
		t.Errorf("a file with its newest row on top is remarked: %v", codes(remarks))
	}
}

func TestReadoutsThatFollow(t *testing.T) {
	m, remarks := merge([]readout{said("b", 30, 10, 4, 5), said("a", 0, 10, 1, 2, 3)})
	if !slices.Equal(m.readings.Val, []float64{1, 2, 3, 4, 5}) || len(remarks) != 0 {
		t.Errorf("got %v, %v", m.readings, codes(remarks))
	}
	if !slices.Equal(m.from, []int{0, 0, 0, 1, 1}) {
		t.Errorf("read-outs %v", m.from)
	}
}

// The second read-out repeats the first from its 20th reading on, on a clock that is three minutes, or an
// hour, ahead or behind; nothing of the first is changed, what lies behind it is added.
func TestTheSameReadingsAgain(t *testing.T) {
	all := wave(100)
	for _, shiftMin := range []int64{0, 3, -3, 60, -60} {
		first, second := said("first", 0, 10, all[:60]...), said("second", 200+shiftMin, 10, all[20:]...)
		m, remarks := merge([]readout{first, second})
		if !slices.Equal(codes(remarks), []string{SameReadings}) {
			t.Fatalf("shift %d min: remarks %v", shiftMin, codes(remarks))
		}
		if remarks[0].Count != 40 || remarks[0].Args[2] != strconv.FormatInt(60*shiftMin, 10) {
			t.Errorf("shift %d min: %d readings, args %v", shiftMin, remarks[0].Count, remarks[0].Args)
		}
		if !slices.Equal(m.readings.Val[:60], all[:60]) || !slices.Equal(m.readings.At[:60], first.readings.At) {
			t.Errorf("shift %d min: the first read-out was changed", shiftMin)
		}
		for i, v := range m.readings.Val[60:] { // the last of all, none of them again
			if want := all[len(all)-(m.readings.Len()-60)+i]; v != want {
				t.Fatalf("shift %d min: reading %d is %v, want %v", shiftMin, 60+i, v, want)
			}
		}
		for i := 60; i < m.readings.Len(); i++ {
			j := slices.Index(second.readings.At, m.readings.At[i])
			if j < 0 || second.readings.Val[j] != m.readings.Val[i] {
				t.Fatalf("shift %d min: reading %d is of neither read-out", shiftMin, i)
			}
		}
	}
}

// The first read-out is a part of the record, and the second all of it on a clock that is ahead or behind: each reading is
// there once, the part as the first had it, what was before and after it as the second has it.
func TestAllOfItAfterAPart(t *testing.T) {
	all := wave(100)
	for _, shiftMin := range []int64{0, 4, -4, 60, -60} {
		part, whole := said("part", 300, 10, all[30:60]...), said("whole", shiftMin, 10, all...)
		m, remarks := merge([]readout{whole, part})
		if !slices.Equal(codes(remarks), []string{SameReadings}) || remarks[0].Count != 30 || remarks[0].Args[2] != strconv.FormatInt(60*shiftMin, 10) {
			t.Fatalf("shift %d min: %+v", shiftMin, remarks)
		}
		if !rising(m.readings.At) {
			t.Fatalf("shift %d min: out of order", shiftMin)
		}
		var own []float64
		for i, k := range m.from {
			if m.readouts[k].file == "part" {
				own = append(own, m.readings.Val[i])
			}
		}
		if !slices.Equal(own, all[30:60]) {
			t.Errorf("shift %d min: the part was changed", shiftMin)
		}
		lost := 0 // a reading of the second that its clock puts inside the first's time stands back
		if shiftMin != 0 {
			lost = int(max(shiftMin, -shiftMin)+9) / 10
		}
		if n := m.readings.Len(); n > 100 || n < 100-lost {
			t.Errorf("shift %d min: %d readings of 100", shiftMin, n)
		}
	}
}

// A long record read out again an hour later by the clock, one reading in forty written over.
func TestALongRecordAgain(t *testing.T) {
	all := wave(5000)
	again := slices.Clone(all[3000:])
	for i := 0; i < len(again); i += 40 {
		again[i] += 50
	}
	if _, _, count := sameReadings(said("a", 0, 1, all[:4900]...).readings, said("b", 3060, 1, again...).readings); count != 1900 {
		t.Errorf("%d readings", count)
	}
}

// 95 of 100 overlapped values are enough to be the same readings, 94 are not.
func TestHowManyMustMatch(t *testing.T) {
	all := wave(100)
	for wrong, same := range map[int]bool{5: true, 6: false} {
		other := slices.Clone(all)
		for i := range wrong {
			other[10+i] += 50
		}
		_, remarks := merge([]readout{said("first", 0, 10, all...), said("second", 0, 10, append(other, 7)...)})
		want := SameReadings
		if !same {
			want = ReadoutsDiffer
		}
		if !slices.Equal(codes(remarks), []string{want}) {
			t.Errorf("%d wrong: remarks %v", wrong, codes(remarks))
		}
		if !same && remarks[0].Count != wrong {
			t.Errorf("%d wrong: %d counted", wrong, remarks[0].Count)
		}
	}
}

func TestDifferentReadingsOfTheSameTime(t *testing.T) {
	m, remarks := merge([]readout{said("late", 10, 10, 21, 31, 41, 51), said("early", 0, 10, 10, 20, 30)})
	if !slices.Equal(m.readings.Val, []float64{10, 20, 30, 41, 51}) {
		t.Errorf("got %v", m.readings)
	}
	if !slices.Equal(codes(remarks), []string{ReadoutsDiffer}) || remarks[0].Count != 2 || !slices.Equal(remarks[0].Args, []string{"late", "early"}) {
		t.Errorf("remarks %+v", remarks)
	}
	again, _ := merge([]readout{said("early", 0, 10, 10, 20, 30), said("late", 10, 10, 21, 31, 41, 51)})
	if !slices.Equal(again.readings.Val, m.readings.Val) {
		t.Error("the order of the files counts")
	}
}

// A flat line repeats itself at every shift: only none at all is believed.
func TestAFlatLineIsNoEvidence(t *testing.T) {
	flat := make([]float64, 50)
	if _, _, count := sameReadings(said("a", 0, 10, flat...).readings, said("b", 3, 10, flat...).readings); count > 0 {
		t.Error("a flat line passes for a shifted one")
	}
}

func TestGapLimits(t *testing.T) {
	own := 90.0
	for _, c := range []struct {
		name string
		rule gapRule
		step int64 // min
		want int64 // min
	}{
		{"every minute", gapOfMeasured(nil), 1, 30},
		{"every quarter of an hour", gapOfMeasured(nil), 15, 30},
		{"hourly", gapOfMeasured(nil), 60, 120},
		{"the keeper's own", gapOfMeasured(&own), 60, 90},
		{"states every ten minutes", gapOfStates, 10, 20},
	} {
		m, _ := merge([]readout{said("a", 0, c.step, 1, 0, 1, 0, 1)})
		if got := curveOf(m, c.rule).MaxStepMS; got != c.want*minuteMS {
			t.Errorf("%s: %d min, want %d", c.name, got/minuteMS, c.want)
		}
	}
	events, _ := tidy("fans", []int64{0, 7 * hourMS, 8 * hourMS, 31 * hourMS, 90 * hourMS}, []float64{0, 1, 0, 1, 0})
	m, _ := merge([]readout{events})
	if got := curveOf(m, gapOfStates).MaxStepMS; got < 1000*dayMS {
		t.Errorf("in a list of events a state holds for %d h only", got/hourMS)
	}
}

// Ten-minute readings (limit 30 min) with a hole of 40 min, then hourly ones (limit 120 min): the hole
// stays open though the curve's limit is 120 min, and the step between the read-outs (60 min) is bridged.
func TestEachReadoutHasItsOwnLimit(t *testing.T) {
	fine, _ := tidy("fine", []int64{0, 10 * minuteMS, 20 * minuteMS, 60 * minuteMS, 70 * minuteMS}, []float64{1, 2, 3, 4, 5})
	m, _ := merge([]readout{fine, said("coarse", 130, 60, 6, 7, 8)})
	c := curveOf(m, gapOfMeasured(nil))
	if c.MaxStepMS != 120*minuteMS || !slices.Equal(c.Breaks, []int64{60 * minuteMS}) {
		t.Errorf("limit %d min, breaks %v", c.MaxStepMS/minuteMS, c.Breaks)
	}
}

// A logger that prints tenths and goes by halves has the resolution it goes by, once it changed often enough to have shown
// a finer one; a single finer change shows that.
func TestResolutionIsWhatReadingsGoBy(t *testing.T) {
	zigzag := func(n int, step, last float64) series.Curve {
		c := series.Curve{MaxStepMS: series.HourMS}
		for i := range n {
			c.Readings.At, c.Val = append(c.Readings.At, int64(i)*600000), append(c.Val, 4+step*float64(i%2))
		}
		c.Readings.At, c.Val = append(c.Readings.At, int64(n)*600000), append(c.Val, c.Val[n-1]+last)
		return c
	}
	for name, c := range map[string]struct {
		curve series.Curve
		want  float64
	}{
		"by halves": {zigzag(200, 0.5, 0.5), 0.5}, "a tenth once": {zigzag(200, 0.5, 0.1), 0.1}, "too few changes": {zigzag(50, 3, 3), 0.1}, "none": {series.Curve{}, 0.1},
	} {
		if got := resolution(0.1, c.curve); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %g, want %g", name, got, c.want)
		}
	}
}
