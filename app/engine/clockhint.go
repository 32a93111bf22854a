package engine

import (
	"math"
	"strconv"

	"thawbook/analysis"
	"thawbook/analysis/plausible"
	"thawbook/analysis/series"
)

// held is a logger's clock held against another's.
type held struct {
	plausible.Shift
	known bool // the changes say how the clocks stand
}

// ahead is the shift, none within the half-width.
func (h held) ahead() int64 {
	if !h.Apart() {
		return 0
	}
	return h.AheadMS
}

// clocks are the proposals on loggers whose clock seems to be apart from that of the others. All are held against
// one of them, and the time that most show is taken for right; of two it can't be told which is, and the one with
// the longer record is held to.
func (p place) clocks(spread func(n int, work func(i int))) (out []Proposal) {
	if len(p.loggers) < 2 {
		return nil
	}
	base := p.longest()
	all := make([]held, len(p.loggers))
	spread(len(all), func(i int) {
		if i != base {
			all[i] = heldAgainst(p.loggers[i], p.loggers[base])
		}
	})
	all[base] = held{known: true}
	right, agreeing, said := mostShow(all, base)
	for i, h := range all {
		ahead := h.ahead() - right
		half := max(h.HalfMS, all[said].HalfMS)
		if h.known && abs(ahead) > half {
			out = append(out, p.clockProposal(i, said, ahead, half, agreeing))
		}
	}
	return out
}

// longest is the logger with the longest record of temperature, the first of equals.
func (p place) longest() (best int) {
	long := func(i int) int64 {
		at := p.loggers[i].TempC.Readings.At
		if len(at) == 0 {
			return 0
		}
		return at[len(at)-1] - at[0]
	}
	for i := range p.loggers {
		if long(i) > long(best) {
			best = i
		}
	}
	return best
}

// heldAgainst holds a logger's clock against another's by their temperatures, else by their humidities.
func heldAgainst(a, b analysis.Logger) (h held) {
	h.Shift, h.known = plausible.ClockShift(a.TempC, b.TempC)
	if !h.known && a.RelHum.Len() > 0 && b.RelHum.Len() > 0 {
		h.Shift, h.known = plausible.ClockShift(a.RelHum, b.RelHum)
	}
	return h
}

// mostShow is the shift at which most clocks agree within their half-widths, how many do, and the first that does; of
// equally many the one of the base.
func mostShow(all []held, base int) (right int64, agreeing, said int) {
	count := func(i int) (n int) {
		for _, h := range all {
			if h.known && abs(h.ahead()-all[i].ahead()) <= max(h.HalfMS, all[i].HalfMS) {
				n++
			}
		}
		return n
	}
	said, agreeing = base, count(base)
	tried := map[int64]bool{all[base].ahead(): true}
	for i, h := range all {
		if !h.known || tried[h.ahead()] {
			continue
		}
		tried[h.ahead()] = true
		if n := count(i); n > agreeing {
			said, agreeing = i, n
		}
	}
	return all[said].ahead(), agreeing, said
}

// clockProposal says that a logger's clock is ahead of another's.
func (p place) clockProposal(i, other int, ahead, half int64, agreeing int) Proposal {
	minutes := func(ms int64) string { return figure(math.Round(float64(ms) / minuteMS)) }
	l := p.loggers[i]
	r := series.Remark{Code: DoubtClock, Args: []string{l.Name, p.loggers[other].Name, minutes(ahead), minutes(half), strconv.Itoa(agreeing)}, Count: 1, Span: spanOfCurve(l.TempC)}
	if whole := plausible.WholeHours(ahead, half); whole != 0 {
		r.Code, r.Args[2] = DoubtClockHours, strconv.Itoa(whole)
		ahead = int64(whole) * series.HourMS
	}
	sure := plausible.Likely
	if agreeing < 2 {
		sure = plausible.Perhaps
	}
	return Proposal{Slot: p.slots[i], Quantity: plausible.Both, Sure: sure, Remark: r, Spans: []series.Span{r.Span}, AheadMS: ahead}
}

// spanOfCurve is from a curve's first reading to its last; empty where it has none.
func spanOfCurve(c series.Curve) series.Span {
	if c.Len() == 0 {
		return series.Span{}
	}
	return series.Span{From: c.Readings.At[0], To: c.Readings.At[c.Len()-1] + 1}
}
