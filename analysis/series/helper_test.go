package series_test

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"thawbook/analysis/series"
)

const (
	minute = 60 * 1000
	hour   = series.HourMS
	day    = 24 * hour
	tenMin = 10 * minute
)

// line reads a curve from one line of notation, a reading every 10 minutes from 0 on and the gap limit
// 10 minutes: "20 21+0.5x4 _ _ 23 | 24" is 20, then 21 and four more each 0.5 higher, two readings
// missing, 23, and a break before 24.
func line(t testing.TB, notation string) series.Curve {
	t.Helper()
	c := series.Curve{MaxStepMS: tenMin}
	at := int64(0)
	for _, word := range strings.Fields(notation) {
		switch word {
		case "|":
			c.Breaks = append(c.Breaks, at)
		case "_":
			at += tenMin
		default:
			for _, v := range values(t, word) {
				c.Readings.At, c.Val = append(c.Readings.At, at), append(c.Val, v)
				at += tenMin
			}
		}
	}
	return c
}

// values reads one word of the notation: a number, or start+stepxtimes, or start-stepxtimes.
func values(t testing.TB, word string) []float64 {
	t.Helper()
	start, rest := word, ""
	if i := strings.LastIndexAny(word, "+-"); i > 0 {
		start, rest = word[:i], word[i:]
	}
	vals := []float64{number(t, start)}
	if rest == "" {
		return vals
	}
	step, times, _ := strings.Cut(rest, "x")
	for k := 1; k <= int(number(t, times)); k++ {
		vals = append(vals, vals[0]+float64(k)*number(t, step))
	}
	return vals
}

func number(t testing.TB, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// whole is the span from the first reading to the last.
func whole(c series.Curve) series.Span {
	return series.Span{From: c.Readings.At[0], To: c.Readings.At[c.Len()-1]}
}

// sharedRows reads a CSV file of the reference data that lies beside the repository, its header
// included. Without the data folder the test is skipped, and fails when CI=true.
func sharedRows(t testing.TB, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "..", "shared", "data", name))
	if errors.Is(err, fs.ErrNotExist) && os.Getenv("CI") != "true" {
		t.Skip("reference data folder absent")
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// sharedCurve is one column of such a file, its first column the clock face, taken as UTC.
func sharedCurve(t testing.TB, name string, column int, maxStepMS int64) series.Curve {
	t.Helper()
	c := series.Curve{MaxStepMS: maxStepMS}
	for _, row := range sharedRows(t, name)[1:] {
		c.Readings.At = append(c.Readings.At, clock(t, row[0]))
		c.Val = append(c.Val, number(t, row[column]))
	}
	return c
}

// clock is the instant of a clock face in UTC.
func clock(t testing.TB, face string) int64 {
	t.Helper()
	layout := time.DateTime
	if len(face) == len(time.DateOnly) {
		layout = time.DateOnly
	}
	at, err := time.Parse(layout, face)
	if err != nil {
		t.Fatal(err)
	}
	return at.UnixMilli()
}

// near fails the test unless got is within tol of want; NaN is near NaN only.
func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) && math.IsNaN(want) {
		return
	}
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.12g, want %.12g within %g", what, got, want, tol)
	}
}

// random is a curve of up to n readings with steps of 1 to 20 ms around a gap limit of 12, breaks now
// and then, and values that often meet a whole number.
func random(r *rand.Rand, n int) series.Curve {
	c := series.Curve{MaxStepMS: 12}
	at := r.Int64N(1000) - 500
	for range r.IntN(n + 1) {
		at += 1 + r.Int64N(20)
		if r.IntN(8) == 0 {
			c.Breaks = append(c.Breaks, at)
		}
		v := math.Round(r.NormFloat64() * 3)
		if r.IntN(3) == 0 {
			v = r.NormFloat64() * 3
		}
		c.Readings.At, c.Val = append(c.Readings.At, at), append(c.Val, v)
	}
	return c
}

// randomSpan is a span in or around the readings of random.
func randomSpan(r *rand.Rand) series.Span {
	from := r.Int64N(1400) - 600
	return series.Span{From: from, To: from + r.Int64N(400)}
}
