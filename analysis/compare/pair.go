package compare

import (
	"context"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/analysis/stats"
)

// Side is one barn as it was judged.
type Side struct {
	Input  analysis.Input
	Review analysis.Review
}

// Pair is two barns side by side: what they were alike and unlike in over the time they have in common.
type Pair struct {
	A, B         string
	ByWinterDay  bool    // paired by the day of winter, not by the clock
	LaterMS      int64   // by how much B's instants lie later than those they are paired with; 0 by the clock
	OverlapHours float64 // scored in both
	Rows         []Row   // the whole first, then the phases; within each the mean temperature first
	Totals       []Total
	Weather      Weather
	Exposures    []Exposure
	Apart        []Hour // the ten in which the air differed most
	Losses       Losses
	Remarks      []series.Remark
}

// Verdict is what can be said of a difference.
type Verdict string

// The verdicts. A difference that is smaller than its 95 % interval is more than the loggers, or so short a time, can tell.
const (
	More     Verdict = "more"      // A is above B
	Less     Verdict = "less"      // A is below B
	CantTell Verdict = "cant_tell" // more than these loggers can tell
	Alike    Verdict = "alike"     // none, and none that could have been overlooked
	Unknown  Verdict = "unknown"   // there is no interval; Row.Unknown says why
)

// Measures of a quantity.
const (
	Mean             = "mean" // over the common known time
	HoursBelow       = "hours_below"
	HoursAbove       = "hours_above"
	DegreeHoursBelow = "degree_hours_below" // %·h for humidity
	DegreeHoursAbove = "degree_hours_above"
	Hours            = "hours" // of a stage on, of spells
	Count            = "count" // of spells that began
)

// Quantities of rows.
const (
	AirTemperature   = "air_temperature"
	RelativeHumidity = "relative_humidity" // percent
	DewPoint         = "dew_point"
	Margin           = "surface_margin" // between the coldest listed wall or ceiling and the point where it sweats, K
	StageCalled      = "stage_called"
	StageRan         = "stage_ran"
	Spells           = "spells"
)

// Row is one figure of both barns over the hours known in both, and its difference.
type Row struct {
	Quantity, Measure string
	Of, OfB           string   // the band, stage, spell kind or surface; OfB where B's has another name
	Limit             *float64 // of the band, where it is one over all of the time: the laxer of the two barns'
	Phase             string   // in which both were; empty for the whole common time
	Unit              string   // degC, percent, K, h, K·h, percent·h, or empty for a count
	A, B, Difference  float64  // Difference is A − B
	Low, High         float64  // the 95 % interval of the difference with the loggers' errors; only where Unknown is empty
	Unknown           string   // the code of why there is no interval: counted_only, few_effective_hours, too_little_known
	Verdict           Verdict
	OverlapHours      float64 // known in both
	AddedA, AddedB    float64 // what checks of the loggers added to the means; A and B hold it

	// Behind it.
	ResampledHalf float64 // half-width of the 95 % interval by stationary blocks
	MovingHalf    float64 // the same by moving blocks
	SensorHalf    float64 // half-width of what both barns' loggers may be off by
	BlockHours    float64 // mean length of the stationary blocks
	EffectiveN    float64 // hours that have nothing to do with one another and would be as sure; 0 where not known
	Few           bool    // so few that the interval may be too narrow
	Settle        *Settle // what would settle it, where the verdict is that it can't be told
}

// Settle is what would have to be better for a difference of this size to be told.
type Settle struct {
	Code         string  // check_loggers, more_hours, both or too_small
	SensorHalf   float64 // what both loggers together may be off by at the most, in the unit of the difference; 0 where it need not change
	OverlapHours float64 // so many hours at the least; 0 where it need not change
}

// What would settle a difference.
const (
	CheckLoggers = "check_loggers"
	MoreHours    = "more_hours"
	Both         = "both"
	TooSmall     = "too_small" // nothing that is within reach
)

// Spread does work for 0 to n−1 in whatever order and returns when all is done.
type Spread = stats.Spread

// Barns sets two barns of one winter side by side, paired by the clock. The error is the context's.
func Barns(ctx context.Context, a, b Side, spread Spread) (Pair, error) {
	return Pair{A: a.Review.Barn, B: b.Review.Barn}.filled(ctx, a, b, spread)
}

// filled is a pair with all that can be said of it.
func (p Pair) filled(ctx context.Context, a, b Side, spread Spread) (Pair, error) {
	c := commonTime(a.Review.Phases, b.Review.Phases, p.LaterMS)
	p.OverlapHours = float64(series.LengthMS(c.spans())) / series.HourMS
	p.Rows, p.Remarks, p.Exposures, p.Apart = []Row{}, []series.Remark{}, []Exposure{}, []Hour{}
	p.Weather = Weather{Unknown: "no_common_time", Bins: []WeatherBin{}, Stages: stagesByOutdoor(a.Review.Stages, b.Review.Stages)}
	p.Totals, p.Losses = totals(a.Review, b.Review), lossesOf(a.Input, b.Input)
	p.remark("no_common_time", len(c.stretches) == 0)
	p.remark("limits_differ", c.limitsDiffer)
	if len(c.stretches) == 0 {
		return p, ctx.Err()
	}
	air := measuredIn(a, b)
	exposures, measured := make([][]Exposure, len(air)), make([][]*draft, len(air))
	spread(len(air), func(i int) { exposures[i], measured[i] = c.exposure(air[i]), c.measure(air[i]) })
	p.Exposures = append(p.Exposures, slices.Concat(exposures...)...)
	drafts := slices.Concat(measured...)
	if len(drafts) > 0 && drafts[0].Quantity == AirTemperature {
		p.Apart = c.apart(drafts[0], a, b)
	}
	drafts = append(drafts, c.stages(a, b)...)
	drafts = append(drafts, c.spells(a, b)...)
	return p.judged(ctx, c, drafts, a, b, spread)
}

// judged adds the rows of all drafts, and those with the weather taken out.
func (p Pair) judged(ctx context.Context, c common, drafts []*draft, a, b Side, spread Spread) (Pair, error) {
	for _, scope := range c.scopes() {
		rows, err := judged(ctx, of(drafts, scope), spread)
		if err != nil {
			return p, err
		}
		if scope == "" && len(rows) > 0 && rows[0].Quantity == AirTemperature {
			var same []Row
			same, p.Weather, err = c.weather(ctx, rows[0], p.Weather, a, b, spread)
			rows = slices.Insert(rows, 1, same...)
		}
		p.Rows = append(p.Rows, rows...)
		if err != nil {
			return p, err
		}
	}
	return p, nil
}

// remark qualifies a pair where something holds.
func (p *Pair) remark(code string, holds bool) {
	if holds {
		p.Remarks = append(p.Remarks, series.Remark{Code: code, Count: 1})
	}
}
