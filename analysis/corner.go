package analysis

import (
	"math"

	"thawbook/analysis/series"
)

const (
	cornerPart     = 0.3 // of the differential: as much may a fan's corner fall short of its limit
	turnPart       = 1.0 / 3
	leastTurnSteps = 1.5 // of the resolution, and
	leastTurnBlurs = 3.0 // of the blur: smaller reversals are noise
)

// corner is a turning point that a fan may have made: fan is 1 where the air leaves it as steeply as a fan makes it
// and falls to 0 with the square of the steepness; the air may have gone slackK farther than the logger shows.
type corner struct {
	at          int64
	fan, slackK float64
	top         bool
}

// cornersOf are a curve's turning points of at least leastK and a third of the smallest differential, measured by the
// median steepness of swings.
func cornersOf(c series.Curve, times []settingPeriod, swings []swing, leastK float64) (out []corner) {
	fall, rise := steepness(swings, 0.5)
	for _, p := range times {
		if len(p.settings) == 0 {
			continue
		}
		cut := lineInside(c, p.span)
		turns := turningPoints(cut, max(turnPart*leastDifferential(p.settings), leastK))
		for i, t := range turns {
			top := i > 0 && t.val > turns[i-1].val || i+1 < len(turns) && t.val > turns[i+1].val
			typical, down := rise, 1.0
			if top {
				typical, down = fall, -1
			}
			at, steep := cut.steepestNear(t, leastK/leastTurnBlurs, down)
			out = append(out, corner{at: at, fan: math.Pow(min(1, steep/typical), 2), top: top})
		}
	}
	return out
}

// steepestNear is the instant of the reading that the line leaves most steeply, upward or (sign −1) downward, among
// those around a turning point that lie within band of it: air that creeps up to a limit turns where the fan starts.
func (c lineCut) steepestNear(t turn, band, sign float64) (at int64, steep float64) {
	at, steep = c.Readings.At[t.index], t.steep
	for _, step := range []int{-1, 1} {
		for i := t.index + step; i > 0 && i+1 < c.Len() && math.Abs(c.Val[i]-t.val) <= band && c.Joined(max(i, i-step)); i += step {
			if s := sign * c.slopeAfter(i); s > steep {
				at, steep = c.Readings.At[i], s
			}
		}
	}
	return at, steep
}
