package compare

import (
	"context"
	"time"
)

// Winters sets a barn of one winter beside one of another, paired by the day of winter: instants as long after the local
// midnight that began the year. From 29 February on a leap year's days lie a day later, and between the days on which
// summer time began in either an hour. The weather was not the same: the rows at one outdoor temperature, each winter by its
// own outdoor air, are what a comparison of winters rests on. The error is the context's.
func Winters(ctx context.Context, a, b Side, nameA, nameB string, spread Spread) (Pair, error) {
	p := Pair{A: nameA, B: nameB, ByWinterDay: true, LaterMS: newYear(b) - newYear(a)}
	p, err := p.filled(ctx, a, b, spread)
	p.remark("other_winter", true)
	return p, err
}

// newYear is the local midnight, ms UTC, that begins the year a barn's winter ends in.
func newYear(s Side) int64 {
	in := time.UnixMilli(s.Review.BeesIn).In(s.Input.Zone)
	year := in.Year()
	if in.Month() >= time.July {
		year++
	}
	return time.Date(year, time.January, 1, 0, 0, 0, 0, s.Input.Zone).UnixMilli()
}
