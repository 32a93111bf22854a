package stats

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// Cells are a quantity over equal steps of time in order: what each adds to its sum, and with what weight. The quantity
// is all of Sum over all of Weight. A gap is a step that adds nothing and has no weight.
type Cells struct{ Sum, Weight []float64 }

// Ratio is the quantity, NaN without weight.
func (c Cells) Ratio() float64 {
	sum, weight := 0.0, 0.0
	for i := range c.Sum {
		sum, weight = sum+c.Sum[i], weight+c.Weight[i]
	}
	return sum / weight
}

// Deviations are what every step adds beyond what the quantity itself would have it add; 0 in a gap. Their sum is 0,
// and the error of the quantity is that of their sum over all of Weight (the linear form of a ratio; Cochran 1977,
// Sampling Techniques, 2.11).
func (c Cells) Deviations() []float64 {
	ratio := c.Ratio()
	out := make([]float64, len(c.Sum))
	for i := range out {
		if c.Weight[i] > 0 {
			out[i] = c.Sum[i] - ratio*c.Weight[i]
		}
	}
	return out
}

// Effective is how many steps that have nothing to do with one another would leave the quantity as unsure as a standard
// error says: as many steps as have weight, where theirs do not. NaN without an error.
func (c Cells) Effective(standardError float64) float64 {
	weight, squares, n := 0.0, 0.0, 0.0
	for i, d := range c.Deviations() {
		weight, squares = weight+c.Weight[i], squares+d*d
		if c.Weight[i] > 0 {
			n++
		}
	}
	if !(standardError > 0) {
		return math.NaN()
	}
	return n * squares / (weight * weight * standardError * standardError)
}

// Blocks says in what pieces a series is put together anew. Lengths of the stationary bootstrap are geometric with this
// mean (Politis & Romano 1994); fixed ones, all of this length rounded, are moving blocks (Künsch 1989). Either goes on
// at the start where it meets the end, so that every step is as likely as any other (Politis & Romano 1992).
type Blocks struct {
	Length float64 // steps, 1 at least
	Fixed  bool
}

// lengths draws the lengths of blocks.
func (b Blocks) lengths() func(rng *rand.Rand) int {
	switch {
	case b.Fixed:
		length := max(1, int(math.Round(b.Length)))
		return func(*rand.Rand) int { return length }
	case b.Length <= 1:
		return func(*rand.Rand) int { return 1 }
	}
	scale := -1 / math.Log(1-1/b.Length) // of the exponential whose whole part is geometric
	return func(rng *rand.Rand) int { return 1 + int(min(scale*rng.ExpFloat64(), 1<<30)) }
}

// Rounds is how often a series is put together anew. At 2,000 the standard error itself is known to 1.6 %.
const Rounds = 2000

// inOne is how many rounds are one piece of work.
const inOne = 50

// StandardErrors are those of some quantities over the same steps: how far they spread when the steps are put together
// anew. See Replicated.
func StandardErrors(ctx context.Context, all []Cells, b Blocks, seed uint64, spread Spread) ([]float64, error) {
	var columns [][]float64
	places := make([][2]int, len(all)) // of a quantity's sums and weights
	for i, c := range all {
		for k, column := range [][]float64{c.Sum, c.Weight} {
			columns, places[i][k] = placed(columns, column)
		}
	}
	return Replicated(ctx, columns, b, seed, spread, len(all), func(total, out []float64) {
		for i, at := range places {
			out[i] = total[at[0]] / total[at[1]]
		}
	})
}

// placed is where a column stands among those there are: what several quantities have in common, as their weights or sums
// that are nothing throughout, is drawn once.
func placed(columns [][]float64, column []float64) ([][]float64, int) {
	for i, other := range columns {
		if slices.Equal(other, column) {
			return columns, i
		}
	}
	return append(columns, column), len(columns)
}

// Spread does work for 0 to n−1 in whatever order, several at once where it likes, and returns when all is done.
type Spread = func(n int, work func(i int))

// Replicated are the standard errors of what some figures come to that are made of the columns' totals: how far they
// spread when the steps are put together anew in blocks drawn by chance, the same for all of them. figures fills out, of
// the length asked for, from the totals and keeps nothing. An error is NaN where a figure is no number in half of the
// rounds. The seed alone decides the draw, whatever order spread works in. The error is the context's.
func Replicated(ctx context.Context, columns [][]float64, b Blocks, seed uint64, spread Spread, n int, figures func(total, out []float64)) ([]float64, error) {
	out := make([]float64, n)
	if n == 0 || len(columns[0]) == 0 {
		return out, ctx.Err()
	}
	sums, next := prefixed(columns), b.lengths()
	drawn := make([][]float64, Rounds)
	spread(Rounds/inOne, func(piece int) {
		total := make([]float64, sums.width)
		for round := piece * inOne; round < (piece+1)*inOne && ctx.Err() == nil; round++ {
			sums.draw(total, next, rand.New(rand.NewPCG(seed, uint64(round))))
			drawn[round] = make([]float64, n)
			figures(total, drawn[round])
		}
	})
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	values := make([]float64, Rounds)
	for i := range out {
		for round, d := range drawn {
			values[round] = d[i]
		}
		out[i] = spreadOf(values)
	}
	return out, nil
}

// spreadOf is the standard deviation of those values that are numbers, NaN where they are fewer than half.
func spreadOf(values []float64) float64 {
	var known []float64
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			known = append(known, v)
		}
	}
	if 2*len(known) < len(values) {
		return math.NaN()
	}
	return stat.StdDev(known, nil)
}

// prefixSums are running sums of all columns, one beside the other: row i is what lies before step i, so that a block costs
// the same however long it is.
type prefixSums struct {
	steps, width int
	rows         []float64
}

func prefixed(columns [][]float64) prefixSums {
	p := prefixSums{steps: len(columns[0]), width: len(columns)}
	p.rows = make([]float64, (p.steps+1)*p.width)
	for i := range p.steps {
		before, after := p.row(i), p.row(i+1)
		for k, c := range columns {
			after[k] = before[k] + c[i]
		}
	}
	return p
}

func (p prefixSums) row(i int) []float64 { return p.rows[i*p.width : (i+1)*p.width] }

// draw fills total with what all quantities come to over as many steps as there are, put together anew.
func (p prefixSums) draw(total []float64, next func(*rand.Rand) int, rng *rand.Rand) {
	clear(total)
	for left := p.steps; left > 0; {
		from, n := rng.IntN(p.steps), min(left, next(rng))
		left -= n
		if over := from + n - p.steps; over > 0 {
			p.add(total, 0, over)
			n -= over
		}
		p.add(total, from, from+n)
	}
}

// add adds steps from to before to.
func (p prefixSums) add(total []float64, from, to int) {
	before, after := p.row(from), p.row(to)
	for k := range total {
		total[k] += after[k] - before[k]
	}
}
