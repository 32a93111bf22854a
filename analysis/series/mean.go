package series

import "slices"

// Mean is the mean of several loggers of one quantity on the grid of whole multiples of stepMS UTC
// (a minute or more). Over each grid interval it takes the loggers known throughout it. Where that set
// changes the curve breaks without a gap: the old set's value 1 ms before the grid instant ends its
// piece and the new set's value at it starts one, listed in Breaks, so a logger that drops out or comes
// in makes no line and no run edge. Where no logger is known there is a gap. Between grid instants the
// mean is a straight line; what the loggers did in between is in their own curves (common practice, no
// source). The order of the curves is the order of summation.
func Mean(curves []Curve, stepMS int64) Curve {
	if stepMS < 2 {
		return Curve{}
	}
	members := make([]member, len(curves))
	var edges []int64
	for i, c := range curves {
		members[i] = newMember(c, stepMS)
		for _, s := range members[i].cells {
			edges = append(edges, s.From, s.To)
		}
	}
	slices.Sort(edges)
	return meanBetween(members, slices.Compact(edges), stepMS)
}

// meanBetween makes one piece between each two neighbouring edges: there the set of known loggers is
// constant, as every edge is one where a logger joins or leaves.
func meanBetween(members []member, edges []int64, stepMS int64) Curve {
	out := &builder{Curve: Curve{MaxStepMS: stepMS}}
	out.room(members, edges)
	set, next := []*member(nil), []*member(nil)
	for i := 0; i+1 < len(edges); i++ {
		if i == 0 {
			next = membersAt(next, members, edges[0])
		}
		set, next = next, membersAt(set, members, edges[i+1])
		if len(set) == 0 {
			continue
		}
		end := edges[i+1] * stepMS
		if len(next) > 0 {
			end--
		}
		out.mean(set, Span{edges[i] * stepMS, end}, stepMS)
	}
	return out.Curve
}

// mean appends a piece: the mean of the members' lines at every step of a span and at its end.
func (b *builder) mean(set []*member, s Span, stepMS int64) {
	from := b.Len()
	b.cut = true
	for t := s.From; t < s.To; t += stepMS {
		b.add(t, 0)
	}
	b.add(s.To, 0)
	val := b.Val[from:]
	for _, m := range set {
		m.addTo(val, b.Readings.At[from:])
	}
	for i := range val {
		val[i] /= float64(len(set))
	}
}

// room makes room for as many readings as the pieces between the edges hold at the most.
func (b *builder) room(members []member, edges []int64) {
	var grid int64
	for _, m := range members {
		grid += LengthMS(m.cells)
	}
	if len(edges) > 0 {
		grid = min(grid, edges[len(edges)-1]-edges[0])
	}
	n := int(grid) + len(edges)
	b.Readings = Readings{At: make([]int64, 0, n), Val: make([]float64, 0, n)}
}

// member is a logger of a mean: cells are its known stretches in whole grid steps, k the reading the
// walk along its line has reached.
type member struct {
	c     Curve
	cells []Span
	k     int
}

// newMember finds the whole grid intervals over which c is known.
func newMember(c Curve, stepMS int64) member {
	m := member{c: c}
	if c.Len() == 0 {
		return m
	}
	for _, s := range c.Known(Span{c.Readings.At[0], c.Readings.At[c.Len()-1]}) {
		cell := Span{-floorDiv(-s.From, stepMS), floorDiv(s.To, stepMS)}
		if cell.From < cell.To {
			m.cells = append(m.cells, cell)
		}
	}
	return m
}

// membersAt appends to set[:0] the members known over the grid interval that starts at g, which must
// not fall from call to call.
func membersAt(set []*member, members []member, g int64) []*member {
	set = set[:0]
	for i := range members {
		m := &members[i]
		for len(m.cells) > 0 && m.cells[0].To <= g {
			m.cells = m.cells[1:]
		}
		if len(m.cells) > 0 && m.cells[0].From <= g {
			set = append(set, m)
		}
	}
	return set
}

// addTo adds the values of the line at instants that rise, from call to call too, where it is known.
func (m *member) addTo(sums []float64, instants []int64) {
	at, val, k := m.c.Readings.At, m.c.Val, m.k
	for i, t := range instants {
		for at[k] < t {
			k++
		}
		if at[k] == t {
			sums[i] += val[k]
			continue
		}
		sums[i] += m.c.between(k, float64(t-at[k-1]))
	}
	m.k = k
}
