package compare

import (
	"context"
	"encoding/binary"
	"hash/fnv"
	"math"

	"thawbook/analysis"
	"thawbook/analysis/series"
	"thawbook/analysis/stats"
)

// draft is a row in the making: what each hour adds to the difference, and for how long it is known in both.
type draft struct {
	Row
	cells        stats.Cells
	sumA, sumB   [3]float64 // as read, and with the loggers reading too low and too high
	total        bool       // of all the hours; else the mean over them
	countedOnly  bool       // told as it was counted, without an interval
	hasLimit     bool
	limitsVaried bool
}

func (c common) draft(r Row) *draft {
	return &draft{Row: r, cells: stats.Cells{Sum: make([]float64, c.cells), Weight: make([]float64, c.cells)}}
}

// of are the drafts of one scope.
func of(all []*draft, scope string) (out []*draft) {
	for _, d := range all {
		if d.Phase == scope {
			out = append(out, d)
		}
	}
	return out
}

// add adds a part of an hour.
func (d *draft) add(p part, a, b [3]float64) {
	for end := range a {
		d.sumA[end], d.sumB[end] = d.sumA[end]+a[end], d.sumB[end]+b[end]
	}
	d.cells.Sum[p.cell] += a[asRead] - b[asRead]
	hours := float64(p.To-p.From) / series.HourMS
	d.cells.Weight[p.cell] += hours
	d.OverlapHours += hours
}

// limited notes the limit that held for a part; a limit that varies is none to name.
func (d *draft) limited(limit int, band analysis.Band) {
	if limit < 0 {
		return
	}
	v := limitsOf(band)[limit]
	switch {
	case v == nil:
	case !d.hasLimit:
		d.Limit, d.hasLimit = v, true
	case d.limitsVaried || d.Limit == nil || *d.Limit != *v:
		d.Limit, d.limitsVaried = nil, true
	}
}

// judged are the rows of drafts over the same hours: differences with their 95 % intervals by the stationary bootstrap, of
// one automatic block length, the longest any of the means asks for, and one draw shared by all. The half-width is
// Student's t with as many degrees of freedom as there are blocks, less one, and is combined in quadrature with what the
// loggers of both barns may be off by, which no length of time takes out.
func judged(ctx context.Context, drafts []*draft, spread Spread) ([]Row, error) {
	from, to := heldCells(drafts)
	var cells []stats.Cells
	var sums [][]float64
	stationary, moving := 1.0, 1.0
	for _, d := range drafts {
		d.cells = stats.Cells{Sum: d.cells.Sum[from:to], Weight: d.cells.Weight[from:to]}
		cells, sums = append(cells, d.cells), append(sums, d.cells.Sum)
		if d.Measure == Mean && d.OverlapHours > 0 {
			s, m := stats.BlockLengths(d.cells.Deviations())
			stationary, moving = max(stationary, s), max(moving, m)
		}
	}
	byStationary, err := stats.StandardErrors(ctx, cells, stats.Blocks{Length: stationary}, seedOf(sums), spread)
	if err != nil {
		return nil, err
	}
	byMoving, err := stats.StandardErrors(ctx, cells, stats.Blocks{Length: moving, Fixed: true}, seedOf(sums), spread)
	if err != nil {
		return nil, err
	}
	var rows []Row
	for i, d := range drafts {
		if d.OverlapHours > 0 {
			rows = append(rows, d.judge(byStationary[i], stationary, byMoving[i], moving))
		}
	}
	return rows, nil
}

// heldCells are the first hour in which anything is known, and the one after the last.
func heldCells(drafts []*draft) (from, to int) {
	from = math.MaxInt
	for _, d := range drafts {
		for i, w := range d.cells.Weight {
			if w > 0 {
				from, to = min(from, i), max(to, i+1)
			}
		}
	}
	return min(from, to), to
}

// seedOf makes the draw depend on the data and on nothing else.
func seedOf(columns [][]float64) uint64 {
	sum, word := fnv.New64a(), make([]byte, 8)
	for _, c := range columns {
		for _, v := range c {
			binary.LittleEndian.PutUint64(word, math.Float64bits(v))
			sum.Write(word)
		}
	}
	return sum.Sum64()
}

// judge is the row of a draft, from the standard errors of its difference per hour.
func (d *draft) judge(byStationary, stationary, byMoving, moving float64) Row {
	r, scale := d.Row, 1.0
	if d.total {
		scale = r.OverlapHours
	}
	per := scale / r.OverlapHours
	r.A, r.B = d.sumA[asRead]*per, d.sumB[asRead]*per
	r.Difference = r.A - r.B
	r.SensorHalf = math.Hypot(d.sumA[readLow]-d.sumA[readHigh], d.sumB[readLow]-d.sumB[readHigh]) / 2 * per
	steps := 0.0
	for _, w := range d.cells.Weight {
		if w > 0 {
			steps++
		}
	}
	r.BlockHours = stationary
	r.ResampledHalf = stats.HalfWidth(byStationary, steps, stationary) * scale
	r.MovingHalf = stats.HalfWidth(byMoving, steps, moving) * scale
	if n := d.cells.Effective(byStationary); n > 0 {
		r.EffectiveN = min(n, steps)
	}
	if d.countedOnly {
		r.Unknown = "counted_only"
	}
	r.conclude()
	return r
}

// conclude sets interval and verdict from the half-widths.
func (r *Row) conclude() {
	half := math.Hypot(r.ResampledHalf, r.SensorHalf)
	switch {
	case r.Unknown != "":
	case math.IsNaN(half):
		r.Unknown, r.ResampledHalf, r.MovingHalf = "too_little_known", 0, 0
	case r.ResampledHalf > 0 && r.EffectiveN < stats.LeastEffective:
		r.Unknown = "few_effective_hours"
	}
	if r.Unknown != "" {
		r.Verdict = Unknown
		return
	}
	r.Low, r.High, r.Few = r.Difference-half, r.Difference+half, r.ResampledHalf > 0 && r.EffectiveN < stats.FewEffective
	switch {
	case half == 0 && r.Difference == 0:
		r.Verdict = Alike
	case r.Difference > half:
		r.Verdict = More
	case -r.Difference > half:
		r.Verdict = Less
	default:
		r.Verdict, r.Settle = CantTell, r.settle()
	}
}

// beyondReach is by how many times the loggers or the hours would have to be better for it to be no use to try.
const beyondReach = 5

// settle is what would tell a difference of this size: loggers that are surer of one another where the time would do; more
// hours where the loggers would, as the interval narrows with the root of the time; or both, each then by √2 better than
// the difference. Where either would have to be five times better it is too small to be told (common practice, no source).
func (r *Row) settle() *Settle {
	size := math.Abs(r.Difference)
	left := func(half float64) float64 { return math.Sqrt(size*size - half*half) }
	s := &Settle{Code: Both}
	loggers, time := size/math.Sqrt2, size/math.Sqrt2
	switch {
	case size == 0:
		return nil
	case r.ResampledHalf < size:
		s.Code, loggers, time = CheckLoggers, left(r.ResampledHalf), 0
	case r.SensorHalf < size:
		s.Code, loggers, time = MoreHours, 0, left(r.SensorHalf)
	}
	if loggers > 0 {
		s.SensorHalf = loggers
	}
	if time > 0 {
		s.OverlapHours = r.OverlapHours * (r.ResampledHalf / time) * (r.ResampledHalf / time)
	}
	if loggers > 0 && loggers*beyondReach < r.SensorHalf || s.OverlapHours > beyondReach*r.OverlapHours {
		return &Settle{Code: TooSmall}
	}
	return s
}
