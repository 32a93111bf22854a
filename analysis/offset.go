package analysis

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

const (
	leastTurns    = 20  // turning points of each kind an estimate needs
	widestOffsetK = 1.0 // farther from a limit than this, a turning point is not the thermostat's
	swingLow      = 0.5 // a thermostat's swing is between these multiples of its differential
	swingHigh     = 2.5
	reachedBy     = 0.9  // share of turning points that must reach a limit for it to be followed
	widestMargin  = 0.45 // of the differential: the two limits must not meet
	confidence95  = 1.96
)

// sight is how the logger sees the thermostat: how much it reads above it, K, and by how much its turning
// points fall short of the limits, K.
type sight struct {
	offset  Figure
	marginK float64
}

// shifts are the offset and both ends of its range, K.
func (v sight) shifts() [3]float64 { return [3]float64{v.offset.Mid, v.offset.Low, v.offset.High} }

// limits are the temperatures, °C, at which the logger shows a setting switching, if it reads shiftK above
// the thermostat.
func (v sight) limits(s Setting, shiftK float64) (onC, offC float64) {
	margin := math.Min(v.marginK, widestMargin*(s.OnC-s.OffC))
	return s.OnC + shiftK - margin, s.OffC + shiftK + margin
}

// sightOf estimates the offset from turning points: the median of temperature maxima less their nearest
// on-temperature, averaged with that of minima less their nearest off-temperature. A slow logger blunts
// both, a thermostat that overshoots sharpens both; the true offset lies between the two medians, so its
// range spans them, widened by their scatter and half the printed resolution. The margin is half the
// resolution, or what nine in ten turning points fall short by. With fewer than 20 turning points of a
// kind the offset is 0 ± the logger's error, assumed.
func sightOf(j judgement) sight {
	errK, stepK := j.control.TempErrK, j.control.TempStepK
	maxima, minima := []float64{}, []float64{}
	for _, s := range settingPeriods(j.Stages, j.scored) {
		up, down := turnsOf(j.control.TempC, s.span, s.settings, stepK)
		maxima, minima = append(maxima, up...), append(minima, down...)
	}
	if len(maxima) < leastTurns || len(minima) < leastTurns {
		return sight{Figure{Low: -errK, High: errK, OK: true, Evidence: Assumed}, stepK / 2}
	}
	over, under := median(maxima), median(minima) // which sorts them
	half := math.Abs(over-under)/2 + math.Max(scatter(maxima), scatter(minima)) + stepK/2
	short := stat.Quantile(reachedBy, stat.Empirical, minima, nil) - stat.Quantile(1-reachedBy, stat.Empirical, maxima, nil)
	mid := (over + under) / 2
	return sight{
		Figure{Mid: mid, Low: mid - half, High: mid + half, OK: true, Evidence: WorkedOut},
		math.Max(stepK, short) / 2,
	}
}

// scatter is the 95 % half-width of a median of independent values (asymptotically 1.253 × that of the mean
// for a normal distribution).
func scatter(v []float64) float64 {
	return confidence95 * 1.253 * stat.StdDev(v, nil) / math.Sqrt(float64(len(v)))
}

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
				if s.thermostat() && s.Span.From <= e.From && e.To <= s.Span.To {
					p.settings = append(p.settings, s)
				}
			}
		}
		out = append(out, p)
	}
	return out
}

// turnsOf are the distances, K, of a curve's thermostat-like turning points from the limits they belong to:
// maxima above on-temperatures, minima above off-temperatures. A turn counts when the swing that follows it
// is about one differential wide and ends near the same stage's other limit.
func turnsOf(c series.Curve, s series.Span, settings []Setting, stepK float64) (maxima, minima []float64) {
	if len(settings) == 0 || c.Len() == 0 {
		return nil, nil
	}
	turns := turningPoints(lineInside(c, s), math.Max(swingLow*leastDifferential(settings), stepK))
	for i := 1; i < len(turns); i++ {
		a, b := turns[i-1], turns[i]
		if a.piece != b.piece {
			continue
		}
		top, bottom := math.Max(a.val, b.val), math.Min(a.val, b.val)
		set := nearestOn(settings, top)
		d := set.OnC - set.OffC
		if swing := top - bottom; swing < swingLow*d || swing > swingHigh*d {
			continue
		}
		if math.Abs(top-set.OnC) > widestOffsetK || math.Abs(bottom-set.OffC) > widestOffsetK {
			continue
		}
		if a.val > b.val { // the fan's own half of the cycle: down from on to off
			maxima, minima = append(maxima, top-set.OnC), append(minima, bottom-set.OffC)
		}
	}
	return maxima, minima
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

// turn is a turning point; turns of one piece have no gap between them.
type turn struct {
	val   float64
	piece int
}

// turningPoints are the alternating maxima and minima of a line that are followed by a reversal of at least
// leastK.
func turningPoints(c lineCut, leastK float64) []turn {
	var out []turn
	piece, rising := 0, 0
	var extreme float64
	for i, v := range c.Val {
		if i == 0 || !c.Joined(i) {
			piece++
			rising, extreme = 0, v
			continue
		}
		switch {
		case rising >= 0 && v > extreme, rising <= 0 && v < extreme:
			if rising == 0 {
				rising = sign(v - extreme)
			}
			extreme = v
		case math.Abs(v-extreme) >= leastK:
			out = append(out, turn{extreme, piece})
			rising, extreme = -rising, v
		}
	}
	return out
}

func sign(v float64) int {
	if v < 0 {
		return -1
	}
	return 1
}
