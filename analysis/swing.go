package analysis

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

const (
	widestOffsetK = 1.0 // farther from a limit than this, a turning point is not the thermostat's
	swingLow      = 0.5 // a thermostat's swing is between these multiples of its differential
	swingHigh     = 2.5
	fanPart       = 0.25          // of the upper quartile's steepness: what leaves a corner slower is the weather's
	steepMS       = 10 * minuteMS // over which steepness is read, or one interval
)

// settingPeriod is a stretch over which no thermostat's setting changes.
type settingPeriod struct {
	span     series.Span
	settings []Setting
}

// settingPeriods cut some time at every change of a thermostat's setting.
func settingPeriods(stages []Stage, scored stretches) []settingPeriod {
	edges := slices.Clone(scored)
	for _, st := range stages {
		for _, s := range st.Settings {
			edges = append(series.Intersect(edges, []series.Span{s.Span}), series.Subtract(edges, []series.Span{s.Span})...)
			sortSpans(edges)
		}
	}
	out := make([]settingPeriod, 0, len(edges))
	for _, e := range edges {
		p := settingPeriod{span: e}
		for _, st := range stages {
			for _, s := range st.Settings {
				if s.Thermostat() && s.Span.From <= e.From && e.To <= s.Span.To {
					p.settings = append(p.settings, s)
				}
			}
		}
		out = append(out, p)
	}
	return out
}

// swing is a fan's half of a thermostat's cycle as a logger shows it: down from a maximum near the on-temperature to a
// minimum near the off-temperature of one setting, with the turns before and after.
type swing struct {
	set                        Setting
	before, top, bottom, after turn
}

// periodTurns are the turning points of a curve within a stretch, and what the thermostats were set to over it.
type periodTurns struct {
	settings []Setting
	turns    []turn
}

// turnsIn are a curve's turning points over stretches of one setting each.
func turnsIn(c series.Curve, times []settingPeriod, stepK float64) (out []periodTurns) {
	for _, p := range times {
		if len(p.settings) > 0 && c.Len() > 0 {
			out = append(out, periodTurns{p.settings, turningPoints(lineInside(c, p.span), max(swingLow*leastDifferential(p.settings), stepK))})
		}
	}
	return out
}

// fanSwings are the thermostat-like swings among turning points where the logger reads about overK above the thermostat:
// about one differential wide, from within widestK of a setting's on-temperature to within as much of its off-temperature,
// and as steep as a fan makes them.
func fanSwings(in []periodTurns, overK, widestK float64) (out []swing) {
	for _, p := range in {
		for i := 1; i+2 < len(p.turns); i++ {
			s := swing{nearestOn(p.settings, p.turns[i].val-overK), p.turns[i-1], p.turns[i], p.turns[i+1], p.turns[i+2]}
			if s.fits(overK, widestK) {
				out = append(out, s)
			}
		}
	}
	return steep(out)
}

// fits says whether a swing is its setting's by its width and where it lies.
func (s swing) fits(overK, widestK float64) bool {
	width, d := s.top.val-s.bottom.val, s.set.OnC-s.set.OffC
	return s.before.piece == s.after.piece && width >= swingLow*d && width <= swingHigh*d &&
		math.Abs(s.top.val-s.set.OnC-overK) <= widestK && math.Abs(s.bottom.val-s.set.OffC-overK) <= widestK
}

// switching is what a swing shows of its thermostat's limits.
func (s swing) switching() switching {
	return switching{s.top.val - s.set.OnC, s.bottom.val - s.set.OffC}
}

// over is how far the logger reads above the thermostat by a swing.
func (s swing) over() float64 { return s.switching().over() }

// Of a ladder whose stages are evenly set, the swings of one stage may lie where the next one's belong. Where some lie so far
// from most, the offset they show is the better one when it explains so many times as many of all: swings above the highest
// stage are hardly anything but a fan's, those below the lowest may be a heater's where there is one. An offset that explains
// nearly as many as the better one may be the true one too. (Common practice, no source.)
const (
	otherOffsetK = 1.5 // how far off a thermostat may be found without records
	otherK       = 0.5
	explainedK   = 0.25
	clearlyMore  = 1.02
	moreHeated   = 1.35
	nearlyAsMany = 0.95
)

// likelySwings are the swings under the offset, of none and the one that those far from most show, that explains clearly more,
// and the other of the two where it may be the true one: NaN for none.
func likelySwings(in []periodTurns, heated bool) (swings []swing, overK, otherwiseK float64) {
	swings, otherwiseK = fanSwings(in, 0, widestOffsetK), math.NaN()
	mid, _ := explainedBy(swings)
	_, explained := explainedBy(fanSwings(in, mid, widestOffsetK))
	var below, above []float64
	for _, s := range fanSwings(in, 0, otherOffsetK) {
		switch over := s.over(); {
		case over < mid-otherK:
			below = append(below, over)
		case over > mid+otherK:
			above = append(above, over)
		}
	}
	needBelow := clearlyMore
	if heated {
		needBelow = moreHeated
	}
	for _, other := range []struct {
		over []float64
		more float64
	}{{below, needBelow}, {above, clearlyMore}} {
		if len(other.over) < leastTurns {
			continue
		}
		overK := series.Median(other.over)
		again := fanSwings(in, overK, widestOffsetK)
		otherMid, n := explainedBy(again)
		times := float64(n) / float64(explained)
		switch {
		case times < nearlyAsMany || math.Abs(otherMid-mid) <= otherK:
		case times < other.more:
			otherwiseK = otherMid
		case times*nearlyAsMany <= 1:
			return again, overK, mid
		default:
			return again, overK, math.NaN()
		}
	}
	return swings, 0, otherwiseK
}

// explainedBy is the median of how far the logger reads above the thermostat by swings, and how many lie near it.
func explainedBy(swings []swing) (overK float64, n int) {
	over := oversOf(swings)
	overK = series.Median(over)
	for _, v := range over {
		if math.Abs(v-overK) <= explainedK {
			n++
		}
	}
	return overK, n
}

// steep are the swings whose corners the air leaves at a quarter of the steepness of the steepest quarter, at least.
func steep(swings []swing) (out []swing) {
	fall, rise := steepness(swings, 0.75)
	for _, s := range swings {
		if s.top.steep >= fanPart*fall && s.bottom.steep >= fanPart*rise {
			out = append(out, s)
		}
	}
	return out
}

// steepness is a quantile of how steeply swings leave their maxima and their minima, K/ms.
func steepness(swings []swing, q float64) (fall, rise float64) {
	if len(swings) == 0 {
		return 0, 0
	}
	var falls, rises []float64
	for _, s := range swings {
		falls, rises = append(falls, s.top.steep), append(rises, s.bottom.steep)
	}
	slices.Sort(falls)
	slices.Sort(rises)
	return stat.Quantile(q, stat.Empirical, falls, nil), stat.Quantile(q, stat.Empirical, rises, nil)
}

// nearestOn is the setting whose on-temperature lies nearest a temperature.
func nearestOn(settings []Setting, tempC float64) Setting {
	best := settings[0]
	for _, s := range settings[1:] {
		if math.Abs(s.OnC-tempC) < math.Abs(best.OnC-tempC) {
			best = s
		}
	}
	return best
}

// leastDifferential is the smallest on − off, K.
func leastDifferential(settings []Setting) float64 {
	d := settings[0].OnC - settings[0].OffC
	for _, s := range settings[1:] {
		d = math.Min(d, s.OnC-s.OffC)
	}
	return d
}

// turn is a turning point: a reading of a line cut to a span. Turns of one piece have no gap between them. steep is how
// steeply the line leaves it, K/ms.
type turn struct {
	at, val, steep float64
	piece, index   int
}

// turningPoints are the alternating maxima and minima of a line that are followed by a reversal of at least
// leastK.
func turningPoints(c lineCut, leastK float64) []turn {
	var out []turn
	piece, rising := 0, 0
	var extreme turn
	for i, v := range c.Val {
		here := turn{at: float64(c.Readings.At[i]), val: v, piece: piece, index: i}
		if i == 0 || !c.Joined(i) {
			piece++
			here.piece = piece
			rising, extreme = 0, here
			continue
		}
		switch {
		case rising >= 0 && v > extreme.val, rising <= 0 && v < extreme.val:
			if rising == 0 {
				rising = sign(v - extreme.val)
			}
			extreme = here
		case math.Abs(v-extreme.val) >= leastK:
			extreme.steep = math.Abs(c.slopeAfter(extreme.index))
			out = append(out, extreme)
			rising, extreme = -rising, here
		}
	}
	return out
}

// slopeAfter is how a line leaves a reading, K/ms, over ten minutes or one interval.
func (c lineCut) slopeAfter(i int) float64 {
	k := i
	for k+1 < c.Len() && c.Joined(k+1) && (k == i || c.Readings.At[k]-c.Readings.At[i] < steepMS) {
		k++
	}
	if k == i {
		return 0
	}
	return (c.Val[k] - c.Val[i]) / float64(c.Readings.At[k]-c.Readings.At[i])
}

func sign(v float64) int {
	if v < 0 {
		return -1
	}
	return 1
}
