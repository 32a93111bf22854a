package importers

import (
	"math"

	"thawbook/analysis/series"
)

// noTime stands for a time that is none under the order chosen.
const noTime = math.MinInt64

// dayMonth is the question which of a date's numbers is the day.
const dayMonth = "day_month"

// settleOrder decides the order of unsure dates and unpacks the times. It returns whether content or the
// keeper decided, and the question that is left.
func (s *scan) settleOrder(answers Answers) (o order, certain bool, open []Question) {
	orders := s.clock.form.orders
	if !s.clock.unsure() {
		return s.clock.order(), true, nil
	}
	o, certain = chooseOrder(s.at, orders)
	if answer := order(answers[dayMonth]); isOneOf(answer, orders) {
		o, certain = answer, true
	} else if !certain && !sameUnder(s.at, orders) {
		open = append(open, Question{ID: dayMonth, Options: orderNames(orders)})
	}
	for row, packed := range s.at {
		at, ok := unpack(packed, o)
		if !ok {
			at = noTime
			s.loseRow(row)
		}
		s.at[row] = at
	}
	return o, certain, open
}

func isOneOf(o order, orders []order) bool {
	for _, k := range orders {
		if k == o {
			return true
		}
	}
	return false
}

func orderNames(orders []order) []string {
	var out []string
	for _, o := range orders {
		out = append(out, string(o))
	}
	return out
}

func (s *scan) loseRow(row int) {
	s.badTime++
	s.notes.add(series.Remark{Code: RemarkBadTime, Line: s.lineOf(row), Column: s.clock.columns[0] + 1})
}

// chooseOrder decides by the whole file: an order under which at least one row in a hundred fewer is a date
// wins (a number above 12 is no month); else the one under which more steps are steady; else, by a row or
// two, the one with fewer rows lost. certain is false when nothing tells two orders apart.
func chooseOrder(packed []int64, orders []order) (best order, certain bool) {
	best = orders[0]
	lost, steady := orderFits(packed, best)
	certain = true
	for _, o := range orders[1:] {
		l, s := orderFits(packed, o)
		few := len(packed) / 100
		better := 0
		switch {
		case l < lost-few || l > lost+few:
			better = lost - l
		case s != steady:
			better = s - steady
		default:
			better = lost - l
		}
		if better > 0 {
			best, lost, steady, certain = o, l, s, true
		} else if better == 0 {
			certain = false
		}
	}
	return best, certain
}

// orderFits counts, under an order, the rows that are no date and the steps forward of at most twice the
// usual step.
func orderFits(packed []int64, o order) (lost, steady int) {
	steps := map[int64]int{}
	before := int64(noTime)
	for _, p := range packed {
		at, ok := unpack(p, o)
		if !ok {
			lost++
			continue
		}
		if before != noTime && at > before {
			steps[at-before]++
		}
		before = at
	}
	usual := modeOf(steps)
	for step, n := range steps {
		if step <= 2*usual {
			steady += n
		}
	}
	return lost, steady
}

// modeOf is the most frequent key, the smaller one on a tie; 0 when there is none.
func modeOf(steps map[int64]int) (mode int64) {
	for step, n := range steps {
		if n > steps[mode] || n == steps[mode] && step < mode {
			mode = step
		}
	}
	return mode
}

// sameUnder says whether all rows mean the same time under every order.
func sameUnder(packed []int64, orders []order) bool {
	for _, p := range packed {
		first, ok := unpack(p, orders[0])
		for _, o := range orders[1:] {
			if at, good := unpack(p, o); good != ok || at != first {
				return false
			}
		}
	}
	return true
}
