package compare

import (
	"context"
	"math"
	"slices"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/analysis/stats"
)

// Weather is the two barns' air against the outdoor air.
type Weather struct {
	Unknown string // why there is none: no_outdoor, too_little_known
	Bins    []WeatherBin
	Stages  []StageWeather
}

// WeatherBin are the hours in which the outdoor air was within so many degrees, and the barns' mean air in them. The
// barns may have had them at different times, where each has its own outdoor air.
type WeatherBin struct {
	FromC, ToC     float64
	HoursA, HoursB float64
	A, B           float64 // °C; 0 without hours
}

// StageWeather is the share of time a stage of one name was on, by degree outdoors, in both barns.
type StageWeather struct {
	Name string
	A, B []analysis.Share
}

// InSameWeather are the shares of time on, 0–1, over the degrees outdoors that both barns had, each degree weighted alike
// in both as the bins of the air are; ok is false where they had none in common.
func (s StageWeather) InSameWeather() (a, b float64, ok bool) {
	weight := 0.0
	for _, x := range s.A {
		for _, y := range s.B {
			if x.At != y.At || x.KnownMS == 0 || y.KnownMS == 0 {
				continue
			}
			w := shared(float64(x.KnownMS), float64(y.KnownMS))
			weight += w
			a, b = a+w*float64(x.OnMS)/float64(x.KnownMS), b+w*float64(y.OnMS)/float64(y.KnownMS)
		}
	}
	return a / weight, b / weight, weight > 0
}

// shared is the weight of what two barns were for so long: the one by which a difference of two means has the least
// variance (Cochran 1977, Sampling Techniques, 5A.10).
func shared(a, b float64) float64 { return a * b / (a + b) }

// Measures at one outdoor temperature.
const (
	EqualWeather = "mean_at_equal_outdoor" // over bins, each with the weight of the fewer hours
	ByRegression = "mean_by_regression"    // a straight line of one slope through each barn's hours, at the common mean outdoors
)

const binK = 2 // common practice, no source

// outdoors are the sums of hours by outdoor temperature: per bin the hours and °C·h of each barn, then, for the line, each
// barn's hours and the sums of x, y, xx and xy.
type outdoors struct {
	lowest  int // bin
	columns [][]float64
}

const perBin, perLine = 4, 10

// weather takes the weather out of the difference in air temperature: rows at one outdoor temperature, and the bins.
func (c common) weather(ctx context.Context, plain Row, w Weather, a, b Side, spread Spread) ([]Row, Weather, error) {
	outA, outB := a.Review.Traces.Outdoor, b.Review.Traces.Outdoor
	if outA.Len() == 0 || outB.Len() == 0 {
		w.Unknown = "no_outdoor"
		return nil, w, ctx.Err()
	}
	o := c.byOutdoor(a, b)
	if len(o.columns) == 0 {
		w.Unknown = "too_little_known"
		return nil, w, ctx.Err()
	}
	total, n := o.total(), len(o.columns)-perLine
	w.Unknown, w.Bins = "", o.bins(total)
	errors, err := stats.Replicated(ctx, o.columns, stats.Blocks{Length: plain.BlockHours}, seedOf(o.columns), spread, 2, func(total, out []float64) {
		out[0], out[1] = binned(total[:n]).difference(), regressed(total[n:]).difference()
	})
	if err != nil {
		return nil, w, err
	}
	var rows []Row
	for i, at := range []level{binned(total[:n]), regressed(total[n:])} {
		r := Row{Quantity: AirTemperature, Measure: []string{EqualWeather, ByRegression}[i], Unit: "degC", A: at.a, B: at.b, Difference: at.difference(),
			OverlapHours: plain.OverlapHours, BlockHours: plain.BlockHours, ResampledHalf: stats.HalfWidth(errors[i], o.steps(), plain.BlockHours), EffectiveN: plain.EffectiveN}
		r.SensorHalf = math.Hypot(math.Hypot(a.Review.Traces.RoomErrK, b.Review.Traces.RoomErrK), at.slope*outdoorErrK(a, b))
		if math.IsNaN(at.difference()) {
			continue
		}
		r.conclude()
		rows = append(rows, r)
	}
	return rows, w, nil
}

// outdoorErrK is what the outdoor loggers may be off by against each other: nothing where it is one.
func outdoorErrK(a, b Side) float64 {
	var errs [2]float64
	for i, s := range []Side{a, b} {
		for _, l := range s.Review.Traces.Loggers {
			if l.Place == "outdoor" && l.TempC.Len() > 0 {
				errs[i] = l.TempErrK
				break
			}
		}
	}
	x, y := a.Review.Traces.Outdoor.Readings, b.Review.Traces.Outdoor.Readings
	if slices.Equal(x.At, y.At) && slices.Equal(x.Val, y.Val) {
		return 0
	}
	return math.Hypot(errs[0], errs[1])
}

// outdoorHour is an hour of one barn in which its outdoor air is known.
type outdoorHour struct {
	cell   int
	known  float64 // hours
	x, y   float64 // °C outdoors and in the room
	second bool    // of the second barn
}

// bin is which step of outdoor temperature the hour lies in.
func (h outdoorHour) bin() int { return int(math.Floor(h.x / binK)) }

// outdoorHours are the hours known in both barns, each with its own outdoor air.
func (c common) outdoorHours(a, b Side) (hours []outdoorHour) {
	for _, p := range c.parts(a.Review.Traces.Room.Known, b.Review.Traces.Room.Known) {
		for i, s := range []Side{a, b} {
			span := later(p.Span, c.laterMS*int64(i))
			out := s.Review.Traces.Outdoor.Bin(span)
			if out.KnownMS == 0 {
				continue
			}
			hours = append(hours, outdoorHour{p.cell, float64(p.To-p.From) / series.HourMS, out.Weighted(), s.Review.Traces.Room.Bin(span).Weighted(), i == 1})
		}
	}
	return hours
}

// byOutdoor sums the hours known in both barns, each by its own outdoor air.
func (c common) byOutdoor(a, b Side) outdoors {
	hours := c.outdoorHours(a, b)
	if len(hours) == 0 {
		return outdoors{}
	}
	lowest, highest := math.MaxInt, math.MinInt
	for _, h := range hours {
		lowest, highest = min(lowest, h.bin()), max(highest, h.bin())
	}
	o := outdoors{lowest: lowest, columns: make([][]float64, (highest-lowest+1)*perBin+perLine)}
	for k := range o.columns {
		o.columns[k] = make([]float64, c.cells)
	}
	for _, h := range hours {
		k, line := (h.bin()-lowest)*perBin, len(o.columns)-perLine
		if h.second {
			k, line = k+2, line+perLine/2
		}
		o.columns[k][h.cell] += h.known
		o.columns[k+1][h.cell] += h.known * h.y
		for i, v := range []float64{1, h.x, h.y, h.x * h.x, h.x * h.y} {
			o.columns[line+i][h.cell] += h.known * v
		}
	}
	return o
}

// total is what every column comes to.
func (o outdoors) total() []float64 {
	out := make([]float64, len(o.columns))
	for k, column := range o.columns {
		for _, v := range column {
			out[k] += v
		}
	}
	return out
}

// steps are the hours in which either barn is known.
func (o outdoors) steps() (n float64) {
	line := len(o.columns) - perLine
	for i, a := range o.columns[line] {
		if a > 0 || o.columns[line+perLine/2][i] > 0 {
			n++
		}
	}
	return n
}

// level is the air of both barns at one outdoor temperature; slope is how much warmer it is per degree outdoors.
type level struct{ a, b, slope float64 }

func (l level) difference() float64 { return l.a - l.b }

// binned are the means over bins, each weighted by the hours it is known for in both.
func binned(total []float64) level {
	weight, l := 0.0, level{}
	for k := 0; k < len(total); k += perBin {
		if hA, hB := total[k], total[k+2]; hA > 0 && hB > 0 {
			w := shared(hA, hB)
			weight, l.a, l.b = weight+w, l.a+w*total[k+1]/hA, l.b+w*total[k+3]/hB
		}
	}
	return level{l.a / weight, l.b / weight, 0}
}

// regressed are the values of two straight lines of one slope, fitted by least squares, at the mean of all outdoor hours
// (the analysis of covariance; Cochran 1957, Biometrics 13:261).
func regressed(total []float64) level {
	a, b := total[:perLine/2], total[perLine/2:]
	within := func(s []float64) (xx, xy float64) { return s[3] - s[1]*s[1]/s[0], s[4] - s[1]*s[2]/s[0] }
	xxA, xyA := within(a)
	xxB, xyB := within(b)
	slope := (xyA + xyB) / (xxA + xxB)
	x := (a[1] + b[1]) / (a[0] + b[0])
	at := func(s []float64) float64 { return s[2]/s[0] + slope*(x-s[1]/s[0]) }
	return level{at(a), at(b), slope}
}

// bins are those in which either barn had hours.
func (o outdoors) bins(total []float64) []WeatherBin {
	out := []WeatherBin{}
	for k := 0; k < len(total)-perLine; k += perBin {
		from := float64(o.lowest+k/perBin) * binK
		b := WeatherBin{FromC: from, ToC: from + binK, HoursA: total[k], HoursB: total[k+2]}
		if b.HoursA+b.HoursB == 0 {
			continue
		}
		if b.HoursA > 0 {
			b.A = total[k+1] / b.HoursA
		}
		if b.HoursB > 0 {
			b.B = total[k+3] / b.HoursB
		}
		out = append(out, b)
	}
	return out
}

// stagesByOutdoor are the shares of time on of the stages of one name in both barns, over all of their settings.
func stagesByOutdoor(a, b []analysis.StageRow) []StageWeather {
	out := []StageWeather{}
	for _, name := range stageNames(a) {
		s := StageWeather{name, sharesOf(a, name), sharesOf(b, name)}
		if len(s.A) > 0 && len(s.B) > 0 {
			out = append(out, s)
		}
	}
	return out
}

func sharesOf(rows []analysis.StageRow, name string) (out []analysis.Share) {
	by := map[int]analysis.Share{}
	var at []int
	for _, r := range rows {
		if r.Name != name {
			continue
		}
		for _, s := range r.ByOutdoor {
			sum, known := by[s.At]
			if !known {
				at = append(at, s.At)
			}
			by[s.At] = analysis.Share{At: s.At, OnMS: sum.OnMS + s.OnMS, KnownMS: sum.KnownMS + s.KnownMS}
		}
	}
	slices.Sort(at)
	for _, k := range at {
		out = append(out, by[k])
	}
	return out
}
