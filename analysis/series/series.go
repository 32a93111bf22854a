// Package series holds what a logger said and the line drawn through it: readings, curves with
// their gaps and breaks, bins, local days, resampling, and the min/max pyramid a plot is drawn from.
//
// A quantity is known between two neighbouring readings that lie no further apart than the curve's
// gap limit, and is a straight line there. It is unknown before the first reading, after the last,
// across a gap and across a break. Instants are milliseconds since 1970-01-01 UTC; spans are half
// open. The package knows no barn, no zone but the one it is handed, and no clock.
package series

// HourMS is one hour in milliseconds.
const HourMS = 3600 * 1000

// Span is the half-open stretch of time [From, To), in milliseconds UTC.
type Span struct{ From, To int64 }

// Readings are values at instants: At in milliseconds UTC, strictly rising; Val finite, in the house
// unit of the quantity. Both have the same length and are never changed once made.
type Readings struct {
	At  []int64
	Val []float64
}

// Curve is the line through readings. Two neighbours at most MaxStepMS apart are joined by a straight
// line; a wider step is a gap. Breaks lists, rising, the instants of readings that start a new piece
// although the step before them is no gap (where the set of loggers behind a mean changed).
type Curve struct {
	Readings
	MaxStepMS int64
	Breaks    []int64
}

// Bin is what a stretch of a curve amounts to. N and Sum count and add the readings at instants in
// the span; Min and Max are the extremes of the line over its known time, readings included (NaN when
// nothing is known); Area is the integral over the known time, in value × milliseconds; KnownMS is how
// long the quantity was known. The plain mean is Sum/N, the time-weighted mean Area/KnownMS.
type Bin struct {
	Span
	N                   int
	Min, Max, Sum, Area float64
	KnownMS             int64
}

// Remark is a note on the data that qualifies a figure: a code with its arguments (sentences are made
// elsewhere), where it was seen in the file (1-based; 0 when it has no place there), how often, and the
// stretch of time it touches.
type Remark struct {
	Code         string
	Args         []string
	Line, Column int
	LastLine     int
	Count        int
	Span         Span
}
