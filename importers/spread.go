package importers

import "math"

// spread is how values lie that are there.
type spread struct {
	n              int
	low, mid, high float64 // the extremes and the mean
}

// spread is how a column's values lie. They are looked at once, until they change.
func (c *values) spread() spread {
	if c.lie == nil {
		p := spreadOf(c.val)
		c.lie = &p
	}
	return *c.lie
}

// changed forgets how a column's values lay.
func (c *values) changed() { c.lie = nil }

// spreadOf is how the values lie of the columns that are chosen.
func (s *scan) spreadOf(chosen func(c *values) bool) spread {
	return s.together(chosen, (*values).spread)
}

// together is how the values lie of the columns that are chosen, or part of them.
func (s *scan) together(chosen func(c *values) bool, part func(c *values) spread) spread {
	all, sum := spreadOf(nil), 0.0
	for i := range s.columns {
		c := &s.columns[i]
		if !chosen(c) {
			continue
		}
		p := part(c)
		all.n, all.low, all.high = all.n+p.n, min(all.low, p.low), max(all.high, p.high)
		sum += p.mid * float64(p.n)
	}
	if all.n > 0 {
		all.mid = sum / float64(all.n)
	}
	return all
}

func spreadOf(val []float64) spread {
	p := spread{low: math.Inf(1), high: math.Inf(-1)}
	sum := 0.0
	for _, v := range val {
		if v != v {
			continue
		}
		if v < p.low {
			p.low = v
		}
		if v > p.high {
			p.high = v
		}
		p.n++
		sum += v
	}
	if p.n > 0 {
		p.mid = sum / float64(p.n)
	}
	return p
}
