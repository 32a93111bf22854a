package analysis

import (
	"math"
	"sort"

	"thawbook/analysis/series"
)

// Agreement sets what a stage was called for beside what a record shows it did.
type Agreement struct {
	Share       Figure // 0–1 of the time at which both are known
	Called, Ran Figure // hours of that time
	KnownMS     int64

	Parted    *int64 // the first instant they clearly part, ms UTC; nil where they never do
	PartedRan bool   // it ran there though it was not called for; else it was called for and did not run

	// UnansweredMS is for how long it was clearly called for and did not run; UncalledMS for how long it clearly was not
	// and ran.
	UnansweredMS, UncalledMS int64

	CutMS   int64  // of UnansweredMS, while the power was out
	Powered *int64 // the first instant it was called for and did not run though there was power; nil where there is none

	unanswered, uncalled []series.Span
}

// leastParting is the shortest stretch that counts as a parting, at the least (common practice, no source): a relay
// that waits, or a logger that is slower than the thermostat, explains minutes.
const leastParting = 30 * minuteMS

// agreement compares a period's rule with its record; nil without either. They part where the record says off while the
// temperature stood above the on-limit, or on while it stood below the off-limit, at every offset within its range and
// by more than the blur, for longer than what either side's sampling can hide: twice the sum of both intervals, half an
// hour at least. Between the limits the rule only remembers, and a single sample or a graze parts nothing.
func (j judgement) agreement(p period) *Agreement {
	if p.called == nil || p.ran == nil {
		return nil
	}
	a := &Agreement{Share: unknown("nothing_known"), Called: unknown("nothing_known"), Ran: unknown("nothing_known")}
	if a.compare(p.called, p.ran); a.KnownMS == 0 {
		return a
	}
	on, off := j.clearly(p)
	a.part(p.ran.tries[0], on, off, j.cuts, max(leastParting, 2*(j.control.TempC.Interval()+p.recordMS)))
	return a
}

// compare sets share and hours over the time at which both are known. An end of the offset's range at which the rule
// settles nothing is no other guess (see worked).
func (a *Agreement) compare(rule, record *view) {
	var share, asked []float64
	ran := record.tries[0]
	for i, called := range rule.tries {
		both := series.LengthMS(series.Intersect(known(called), known(ran)))
		if both == 0 {
			if i == 0 {
				return
			}
			continue
		}
		asked = append(asked, hoursOn(called, ran))
		same := series.LengthMS(series.Intersect(spansOf(called), spansOf(ran))) + series.LengthMS(series.Intersect(offSpans(called), offSpans(ran)))
		share = append(share, float64(same)/float64(both))
		if i == 0 {
			a.KnownMS, a.Ran = both, exactly(hoursOn(ran, called), Recorded)
		}
	}
	a.Share, a.Called = enclosing(WorkedOut, share[0], share[1:]...), enclosing(rule.evidence, asked[0], asked[1:]...)
	a.Called.withholdWide()
}

// hoursOn is for how long the first is on where the other is known.
func hoursOn(segs, other []segment) float64 {
	return float64(series.LengthMS(series.Intersect(spansOf(segs), known(other)))) / series.HourMS
}

// clearly is when the temperature leaves no doubt that a stage is called for, and that it is not: what a logger read while it
// was elsewhere says nothing.
func (j judgement) clearly(p period) (on, off []series.Span) {
	if p.set.AlwaysOn {
		return p.time, nil
	}
	inside := stretches(series.Intersect(p.time, []series.Span{j.controlStay()}))
	limit := p.set.OnC + j.sight.offset.High + j.sight.blurK
	on = long(inside.above(j.control.TempC, limit), 0)
	limit = p.set.OffC + j.sight.offset.Low - j.sight.blurK
	return on, long(inside.below(j.control.TempC, limit), 0)
}

// controlStay is the bees' time less what the control logger was elsewhere before, and what it surely was after.
func (j judgement) controlStay() series.Span {
	stay := j.beesTime
	for _, s := range j.stays {
		if j.control.Name == "" || s.In.Logger != j.control.Name {
			continue
		}
		if s.In.OK() {
			stay.From = max(stay.From, s.In.At)
		}
		if s.Out.Sure == EdgeSure {
			stay.To = min(stay.To, s.Out.At)
		}
	}
	return stay
}

// part finds where rule and record part for at least leastMS; cuts are when the power was out.
func (a *Agreement) part(ran []segment, on, off, cuts []series.Span, leastMS int64) {
	a.unanswered, a.uncalled = series.Intersect(on, offSpans(ran)), series.Intersect(off, spansOf(ran))
	a.UnansweredMS, a.UncalledMS = series.LengthMS(a.unanswered), series.LengthMS(a.uncalled)
	powered := series.Subtract(a.unanswered, cuts)
	a.CutMS = a.UnansweredMS - series.LengthMS(powered)
	a.Parted, a.Powered = firstLong(a.unanswered, leastMS), firstLong(powered, leastMS)
	if at := firstLong(a.uncalled, leastMS); at != nil && (a.Parted == nil || *at < *a.Parted) {
		a.Parted, a.PartedRan = at, true
	}
}

// firstLong is when the first of some spans begins that lasts for a time; nil where none does.
func firstLong(spans []series.Span, leastMS int64) *int64 {
	for _, s := range spans {
		if s.To-s.From >= leastMS {
			return &s.From
		}
	}
	return nil
}

// offSpans are the segments that are known to be off, rounded to the millisecond.
func offSpans(segs []segment) []series.Span {
	return series.Subtract(known(segs), spansOf(segs))
}

const leastSwitchings = 10 // recorded starts or stops a switching temperature needs: fewer give no 95 % range of a median

// switchedAt are the temperatures the control logger showed as the record starts and stops: medians with their range,
// the 95 % range of a median by order statistics (Conover, Practical Nonparametric Statistics) widened by the
// logger's error. Of a sampled record the instant is the middle of the step in which the state changes.
func switchedAt(p period, control Logger) (starts, stops Figure) {
	if p.ran == nil || !p.set.Thermostat() || control.TempC.Len() == 0 {
		return unknown("no_record"), unknown("no_record")
	}
	var up, down []float64
	segs := p.ran.tries[0]
	for i := 1; i < len(segs); i++ {
		v, ok := control.TempC.At(int64(segs[i].From) - p.recordMS/2)
		switch {
		case !ok || segs[i].From != segs[i-1].To:
		case segs[i].On:
			up = append(up, v)
		default:
			down = append(down, v)
		}
	}
	return switchingAt(up, control.TempErrK), switchingAt(down, control.TempErrK)
}

// switchingAt is the median of at least ten values with its range, widened by an error.
func switchingAt(v []float64, err float64) Figure {
	n := len(v)
	if n < leastSwitchings {
		return unknown("too_few_switchings")
	}
	sort.Float64s(v)
	k := max(0, int(math.Floor((float64(n)-confidence95*math.Sqrt(float64(n)))/2)))
	return Figure{Mid: series.Median(v), Low: v[k] - err, High: v[n-1-k] + err, OK: true, Evidence: Recorded}
}

// switchesApart says whether recorded starts or stops lie clearly apart from the temperatures set: the thermostat
// switches elsewhere than it says, or the logger reads wrong by more than its error.
func (row StageRow) switchesApart() bool {
	outside := func(f Figure, setC float64) bool { return f.OK && (setC < f.Low || setC > f.High) }
	return outside(row.StartsC, row.Setting.OnC) || outside(row.StopsC, row.Setting.OffC)
}
