package analysis

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"thawbook/analysis/series"
)

const (
	leastTurns   = 20 // turning points of each kind an estimate needs
	confidence95 = 1.96
	widestMargin = 0.45 // of the differential: the two limits must not meet
	lagRounds    = 3    // in which the lag is found
	uncancelled  = 0.5  // of the lateness of starts and stops, in the offset's range (common practice, no source)
	reachedBy    = 0.9  // share of corners that reach their limit but for the blur
	endBlurs     = 0.7  // of the blur, and
	endSteps     = 0.2  // of the printed resolution, are added to the offset's range for the hours (see called)
)

// sight is how the logger sees the thermostat: how much it reads above it, how long it lags behind it, and by how
// much its corners, put right for the lag, still scatter round the limits.
type sight struct {
	offset  Figure // K
	lagMS   float64
	stepK   float64 // printed resolution
	blurK   float64
	lateK   float64      // of the offset's range, what lateness may have left in it
	clear   series.Curve // the control temperature without the lag
	corners []corner
}

// shifts are the offset and both ends of its range, K, at which hours are worked out: the blur holds the lateness there.
func (v sight) shifts() [3]float64 {
	return [3]float64{v.offset.Mid, v.offset.Low + v.lateK, v.offset.High - v.lateK}
}

// sightOf estimates the offset from turning points: the median over a thermostat's swings of how far the maximum lies
// above the on-temperature and the minimum above the off-temperature, averaged. Which setting a swing is of depends on the
// offset itself where a thermostat is off by about a stage: likelySwings tells. A slow logger blunts both, and not
// alike, so its lag is found first: the one that makes swings as wide as their differentials, and the curve is put
// right for it. Where records show 20 runs and more of such stages, the temperatures at their starts and stops stand for
// the turning points: a record says which stage switched, a turn only which it may have been, or that a heater did; turns
// count for nothing where the records show fewer runs. The range has the median's scatter and half the printed
// resolution. With fewer than 20 of either the offset is 0 ± the logger's error, assumed.
func sightOf(j judgement) sight {
	control, stepK := forStages(j.control.TempC), j.control.TempStepK
	times := settingPeriods(j.Stages, j.scored)
	v := sight{clear: control, stepK: stepK, blurK: stepK / 2}
	swings, overK, otherwiseK := likelySwings(turnsIn(control, times, stepK), len(j.Heats) > 0)
	runs := recordedSwitchings(j, control)
	if len(runs) < leastTurns && (len(swings) < leastTurns || j.thermostatsRecorded()) {
		v.offset = Figure{Low: -j.control.TempErrK, High: j.control.TempErrK, OK: true, Evidence: Assumed}
		return v
	}
	if len(swings) < leastTurns {
		v.fit(runs)
		return v
	}
	v.lagMS = max(0, lagOf(swings))
	for round := 0; round < lagRounds && v.lagMS > 0; round++ {
		v.clear = withoutLag(control, v.lagMS)
		again := fanSwings(turnsIn(v.clear, times, stepK), overK, widestOffsetK)
		if len(again) < leastTurns {
			break
		}
		swings, v.lagMS = again, max(0, v.lagMS+lagOf(again))
	}
	if runs = recordedSwitchings(j, v.clear); len(runs) < leastTurns {
		runs = nil
		for _, s := range swings {
			runs = append(runs, s.switching())
		}
		v.fit(runs)
		v.reach(otherwiseK)
	} else {
		v.fit(runs)
	}
	v.corners = cornersOf(v.clear, times, swings, max(leastTurnSteps*stepK, leastTurnBlurs*v.blurK))
	return v
}

// thermostatsRecorded says whether every stage that switches by temperature has a record.
func (j judgement) thermostatsRecorded() bool {
	return !slices.ContainsFunc(Thermostats(j.Stages), func(st Stage) bool {
		_, has := recordOf(j.Loggers, st.Name)
		return !has
	})
}

// fit sets offset and blur from switchings seen without lag. What lateness is left in them cancels only where the room climbs to
// a start as fast as it falls to a stop: part of it counts for the range.
func (v *sight) fit(switchings []switching) {
	var short []float64
	over := oversOf(switchings)
	slices.Sort(over)
	mid := series.Median(over)
	v.lateK = uncancelled * latenessOf(switchings)
	half := scatter(over) + v.stepK/2 + v.lateK
	v.offset = Figure{Mid: mid, Low: mid - half, High: mid + half, OK: true, Evidence: WorkedOut}
	for _, s := range switchings {
		short = append(short, mid-s.start, s.stop-mid)
	}
	slices.Sort(short)
	v.blurK = max(v.stepK/2, stat.Quantile(reachedBy, stat.Empirical, short, nil))
}

// reach has the offset's range reach to another that it may be; none is NaN.
func (v *sight) reach(otherwiseK float64) {
	if !math.IsNaN(otherwiseK) {
		v.offset.Low, v.offset.High = math.Min(v.offset.Low, otherwiseK), math.Max(v.offset.High, otherwiseK)
	}
}

// latenessOf is by how much switchings are seen late, K: on the way up above the start and on the way down below the stop.
func latenessOf(switchings []switching) float64 {
	var late []float64
	for _, s := range switchings {
		late = append(late, (s.start-s.stop)/2)
	}
	return math.Abs(series.Median(late))
}

// scatter is the 95 % half-width of a median of independent values (asymptotically 1.253 × that of the mean
// for a normal distribution).
func scatter(v []float64) float64 {
	return confidence95 * 1.253 * stat.StdDev(v, nil) / math.Sqrt(float64(len(v)))
}

// called is when a setting's rule asks for its stage if the logger reads shiftK above the thermostat. Without an
// estimated offset it follows the line as it is, with half the resolution as margin; without corners too. With one, a fan shows itself: a
// line that creeps up to a limit must pass it by the blur, or noise would decide, while a corner that the air leaves
// as steeply as a fan makes it counts though it falls short of the limit by the blur or part of the differential. At the
// ends of the offset's range part of the blur is added to it, and a corner must come that much nearer to the limit on one
// side and less near on the other: whether a fan made it is in doubt too, and between its limits a rule remembers a wrong
// guess for hours. This holds the truth in nine of ten stages of simulated barns; how much is common practice, no source.
func (v sight) called(set Setting, time stretches, shiftK float64) []segment {
	if v.corners == nil {
		margin := min(v.blurK, widestMargin*(set.OnC-set.OffC))
		return time.called(v.clear, set.OnC+shiftK-margin, set.OffC+shiftK+margin, nil)
	}
	if end := shiftK - v.offset.Mid; end != 0 {
		shiftK += math.Copysign(endBlurs*v.blurK+endSteps*v.stepK, end)
	}
	slack := v.blurK + max(v.blurK, cornerPart*(set.OnC-set.OffC))
	corners := slices.Clone(v.corners)
	for i := range corners {
		corners[i].slackK = slack * corners[i].fan
	}
	return time.called(v.clear, set.OnC+shiftK+v.blurK, set.OffC+shiftK-v.blurK, corners)
}
