package importers

import (
	"math"
	"slices"
	"strings"

	"thawbook/analysis/series"
)

// noTime stands for a time that is none under the order chosen.
const noTime = math.MinInt64

// dayMonth is the question which of a date's numbers is the day.
const dayMonth = "day_month"

// settleDates decides the order of unsure dates, unpacks the times and finds the year of dates without one. It
// returns whether content or the keeper decided on the order, and the questions that are left.
func (s *scan) settleDates(name string, answers Answers) (o order, certain bool, open []Question) {
	switch from := s.clock.start; {
	case from != nil && from.asked:
		return "", false, s.settleFirstDay(name, answers)
	case from != nil:
		return s.settleStart(answers)
	}
	o, certain, open = s.settleOrder(answers)
	if !s.clock.instants() {
		s.settleHalves()
	}
	open = append(open, s.settleDayZero(answers)...)
	return o, certain, append(open, s.settleYear(o, answers)...)
}

// settleOrder decides the order of unsure dates and unpacks the times.
func (s *scan) settleOrder(answers Answers) (o order, certain bool, open []Question) {
	orders := s.clock.form.orders
	if !s.clock.unsure() {
		return s.clock.order(), true, nil
	}
	fits := fitsOf(s.at, orders)
	o, certain = chooseOrder(fits)
	if answer := order(answers[dayMonth]); slices.Contains(orders, answer) {
		o, certain = answer, true
	} else if !certain && s.clock.form.dotted() && slices.Contains(orders, dmy) {
		o = dmy
	} else if !certain && !sameUnder(s.at, orders) {
		open = append(open, Question{ID: dayMonth, Options: orderNames(possible(fits))})
	}
	read, alone := unpacker{o: o}, fits[slices.Index(orders, o)]
	var turned *turn
	if answers[dayMonth] == "" {
		if m, mixed := mixedOrders(s.at, alone, orders); mixed {
			read, certain, open = m, true, nil
			s.notes.add(series.Remark{Code: RemarkMixedOrders, Line: s.layout.line, Column: s.clock.columns[0] + 1})
		} else if at, found := turnIn(s.at, alone, orders); found {
			turned, certain, open = &at, true, nil
		}
	}
	s.unpackAll(read, turned)
	return o, certain, open
}

// fewestLeaps is how many leaps in time two orders must spare, and all but one in so many of them.
const fewestLeaps, sparedLeaps = 3, 4

// mixedOrders says whether the dates that may be read in both orders are of the other order than those that may not, as
// a spreadsheet leaves them that took for dates what it could: read so, the rows leap far less than in the best order, alone.
func mixedOrders(packed []int64, alone orderFit, orders []order) (read unpacker, mixed bool) {
	if !slices.Contains(orders, dmy) || !slices.Contains(orders, mdy) {
		return read, false
	}
	usual := modeOf(alone.steps)
	leaps := alone.leaps(usual)
	if leaps < fewestLeaps {
		return read, false
	}
	for _, u := range []unpacker{{o: mdy, or: dmy}, {o: dmy, or: mdy}} {
		f := fitOf(packed, u)
		if n := f.leaps(usual); f.lost <= alone.lost && n+fewestLeaps <= leaps && sparedLeaps*n <= leaps {
			read, mixed, leaps = u, true, n
		}
	}
	return read, mixed
}

// possible are the orders under which as many rows are dates as under any: there is no 13th month.
func possible(fits []orderFit) (out []order) {
	least := fits[0].lost
	for _, f := range fits {
		least = min(least, f.lost)
	}
	for _, f := range fits {
		if f.lost == least {
			out = append(out, f.o)
		}
	}
	return out
}

// dotted says whether nothing but dots, and blanks behind them, part the numbers of a date. Where dates are
// written so, the day comes first: in the locale data of the GNU C library every language that writes
// number.number.year does. Where nothing in the file tells, it is taken, not certain and not asked.
func (f dateForm) dotted() bool {
	return strings.ContainsRune(f.pattern, '.') && strings.Trim(f.pattern, "#.WYyh ") == ""
}

// orderLetters are the letters that stand for day, month and year where a header says how its dates are written:
// English and the Nordic languages but Finnish, German, French, Italian, Dutch, Finnish, Polish.
var orderLetters = [][3]string{{"d", "m", "y"}, {"d", "m", "å"}, {"t", "m", "j"}, {"j", "m", "a"}, {"g", "m", "a"}, {"d", "m", "j"}, {"p", "k", "v"}, {"d", "m", "r"}, {"d", "m", "a"}}

// orderInName is the order that the letters in a name say, dd/mm/yyyy; "" when there are none.
func orderInName(name string) order {
	low := strings.ToLower(name)
	for _, k := range orderLetters {
		day, month, year := letterRun(low, k[0], 2), letterRun(low, k[1], 2), letterRun(low, k[2], 2)
		switch {
		case day < 0 || month < 0 || year < 0:
		case year < month && month < day:
			return ymd
		case day < month && month < year:
			return dmy
		case month < day && day < year:
			return mdy
		}
	}
	return ""
}

// letterRun is where a letter first stands at least so often in a row; −1 when it does nowhere.
func letterRun(s, letter string, times int) int {
	return strings.Index(s, strings.Repeat(letter, times))
}

// learnOrder takes the order that the names of the clock's columns, or a line above the table, say, where the rows
// are dates under it.
func (l *layout) learnOrder(rows []record, names []string) {
	said := order("")
	for _, i := range l.clock.columns {
		if i < len(names) && said == "" {
			said = orderInName(names[i])
		}
	}
	for _, r := range l.preamble {
		if said == "" {
			said = orderInName(text(r.text))
		}
	}
	if !l.clock.unsure() || !slices.Contains(l.clock.form.orders, said) {
		return
	}
	told := *l.clock
	told.form.orders = []order{said}
	told.forget()
	for _, r := range rows {
		_, _, ok := told.read(&told, r.cells)
		if _, _, before := l.clock.read(l.clock, r.cells); before && !ok {
			return
		}
	}
	l.clock = &told
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

// fewestOff is less than half of what days are apart in the wrong order: rows that far apart are as steady in either.
const fewestOff = 14 * dayMS

// chooseOrder decides by the whole file: an order under which at least one row in a hundred fewer is a date
// wins (a number above 12 is no month); else the one under which more steps are steady; else, by a row or
// two, the one with fewer rows lost. certain is false when nothing tells two orders apart.
func chooseOrder(fits []orderFit) (best order, certain bool) {
	usual := int64(math.MaxInt64)
	for _, f := range fits {
		if mode := modeOf(f.steps); mode > 0 {
			usual = min(usual, mode)
		}
	}
	won := fits[0]
	certain = true
	few := won.rows / 100
	for _, f := range fits[1:] {
		better := won.lost - f.lost
		if steadier := f.steady(usual) - won.steady(usual); usual < fewestOff && steadier != 0 && better <= few && -better <= few {
			better = steadier
		}
		if better > 0 {
			won, certain = f, true
		} else if better == 0 {
			certain = false
		}
	}
	return won.o, certain
}

// orderFit is how rows read under an order: how many are no date, and how often each step occurs.
type orderFit struct {
	o     order
	rows  int
	lost  int
	steps map[int64]int
}

func fitsOf(packed []int64, orders []order) (fits []orderFit) {
	for _, o := range orders {
		fits = append(fits, fitOf(packed, unpacker{o: o}))
	}
	return fits
}

func fitOf(packed []int64, read unpacker) orderFit {
	f := orderFit{o: read.o, rows: len(packed)}
	steps := newStepCounter()
	before := int64(noTime)
	for _, p := range packed {
		at, ok := read.at(p)
		if !ok {
			f.lost++
			continue
		}
		if before != noTime && at != before {
			steps.add(max(at-before, before-at)) // the newest row may stand on top
		}
		before = at
	}
	f.steps = steps.counts()
	return f
}

// stepCounter counts how often each step occurs. Most steps are the same as the one before: such are counted together.
type stepCounter struct {
	of   map[int64]int
	step int64
	run  int // how often it came without another between, not yet in of
}

func newStepCounter() stepCounter { return stepCounter{of: map[int64]int{}} }

func (c *stepCounter) add(step int64) {
	if step == c.step {
		c.run++
		return
	}
	c.counts()
	c.step, c.run = step, 1
}

// counts is how often each step was added; steps of 0 are among them only if there were any.
func (c *stepCounter) counts() map[int64]int {
	if c.run > 0 {
		c.of[c.step] += c.run
	}
	c.run = 0
	return c.of
}

// steady counts the steps of at most twice the usual one, which is the shortest that any order makes usual:
// read in the wrong order a log leaps by months or years, however evenly.
func (f orderFit) steady(usual int64) (n int) {
	for step, count := range f.steps {
		if step/2 <= usual {
			n += count
		}
	}
	return n
}

// leaps counts the steps of more than twice the usual one.
func (f orderFit) leaps(usual int64) (n int) {
	for _, count := range f.steps {
		n += count
	}
	return n - f.steady(usual)
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
	first := unpacker{o: orders[0]}
	for _, o := range orders[1:] {
		other := unpacker{o: o}
		for _, p := range packed {
			at, ok := first.at(p)
			if also, good := other.at(p); good != ok || also != at {
				return false
			}
		}
	}
	return true
}
