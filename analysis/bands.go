package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// Band holds the limits of one quantity, in the unit of its rows: °C, or percent for humidity. A nil
// limit is none. Within Good all is well; outside it but within Watch is worth an eye; outside Act it is
// time to do something once it lasts (see actHolds).
type Band struct{ GoodLow, GoodHigh, WatchLow, WatchHigh, ActLow, ActHigh *float64 }

// Bands are the safe bands of a barn.
type Bands struct{ TempC, RelHumPct Band }

// The house defaults: common practice, no source.
const (
	houseLowC, houseHighC       = 2, 6
	watchHighC                  = 8 // where no stage sets it
	watchAboveTopStageK         = 1
	actHighC                    = 8
	fillingK                    = 2 // bees that were just carried in warm the room: watch and act lie higher
	actLowWaterLinesC           = 0
	houseLowPct, houseHighPct   = 40, 75
	watchHighPct                = 85
	enoughOfWinter              = 0.5 // least known share of a winter or phase for a number
	actHold1H, actHold2H, act2K = 6, 2, 2
	dampHoldH, dryHoldH         = 6, 24
)

// bandsIn are the limits of a phase: the keeper's for it, else his for the winter, else the house defaults, of
// which those to watch and to act above are higher while the barn is being filled. A wider band holds the narrower ones:
// where the keeper moved one limit, those he did not move make room for it.
func (in Input) bandsIn(phase string, own Bands) Bands {
	b := Bands{own.TempC.over(in.Bands.TempC), own.RelHumPct.over(in.Bands.RelHumPct)}
	watch, act := float64(watchHighC), float64(actHighC)
	if top, ok := topOnC(in.Stages); ok {
		watch = top + watchAboveTopStageK
	}
	if phase == filling {
		watch, act = watch+fillingK, act+fillingK
	}
	t, h := &b.TempC, &b.RelHumPct
	t.fillGood(houseLowC, houseHighC)
	t.fillHigh(watch, act)
	if in.WaterLines {
		fill(&t.WatchLow, actLowWaterLinesC)
		fill(&t.ActLow, actLowWaterLinesC)
	}
	h.fillGood(houseLowPct, houseHighPct)
	h.fillHigh(watchHighPct, watchHighPct)
	t.nest()
	h.nest()
	return b
}

// fillGood sets the limits of the good band that the keeper did not; beside one of his that lies past them the band is
// as wide as the house's.
func (b *Band) fillGood(low, high float64) {
	width := high - low
	if b.GoodHigh != nil && *b.GoodHigh <= low {
		low = *b.GoodHigh - width
	}
	fill(&b.GoodLow, low)
	if *b.GoodLow >= high {
		high = *b.GoodLow + width
	}
	fill(&b.GoodHigh, high)
}

// fillHigh sets the upper limits to watch and to act above that the keeper did not.
func (b *Band) fillHigh(watch, act float64) {
	fill(&b.ActHigh, act)
	fill(&b.WatchHigh, min(watch, *b.ActHigh))
}

// nest widens what lies inside a narrower band: what is good is neither to watch nor to act on.
func (b *Band) nest() {
	for _, p := range [][2]**float64{{&b.GoodHigh, &b.WatchHigh}, {&b.WatchHigh, &b.ActHigh}} {
		if **p[1] < **p[0] {
			*p[1] = *p[0]
		}
	}
	for _, p := range [][2]**float64{{&b.GoodLow, &b.WatchLow}, {&b.GoodLow, &b.ActLow}, {&b.WatchLow, &b.ActLow}} {
		if *p[0] != nil && *p[1] != nil && **p[1] > **p[0] {
			*p[1] = *p[0]
		}
	}
}

// over is a band with the limits it lacks taken from another.
func (b Band) over(other Band) Band {
	for _, p := range b.pairs(&other) {
		if *p[0] == nil {
			*p[0] = *p[1]
		}
	}
	return b
}

// common is a band with the limits that two bands share.
func (b Band) common(other Band) Band {
	for _, p := range b.pairs(&other) {
		if *p[0] != nil && (*p[1] == nil || **p[0] != **p[1]) {
			*p[0] = nil
		}
	}
	return b
}

// pairs are the limits of a band beside those of another.
func (b *Band) pairs(other *Band) [][2]**float64 {
	return [][2]**float64{{&b.GoodLow, &other.GoodLow}, {&b.GoodHigh, &other.GoodHigh}, {&b.WatchLow, &other.WatchLow},
		{&b.WatchHigh, &other.WatchHigh}, {&b.ActLow, &other.ActLow}, {&b.ActHigh, &other.ActHigh}}
}

func fill(limit **float64, value float64) {
	if *limit == nil {
		*limit = &value
	}
}

// topOnC is the highest on-temperature of any stage, °C.
func topOnC(stages []Stage) (top float64, ok bool) {
	for _, st := range stages {
		for _, s := range st.Settings {
			if s.Thermostat() && (!ok || s.OnC > top) {
				top, ok = s.OnC, true
			}
		}
	}
	return top, ok
}

// all are the bands with their limits, the good one first.
func (b Band) all() []namedBand {
	return []namedBand{{"good", b.GoodLow, b.GoodHigh}, {"watch", b.WatchLow, b.WatchHigh}, {"act", b.ActLow, b.ActHigh}}
}

type namedBand struct {
	name      string
	low, high *float64
}

// Limits are those of good, watch and act: of each as they are, and with every reading one sensor error (errHalf, its
// 95 % half-width) higher and lower, which is as if the limits lay that much lower and higher. A limit that is none
// lies infinitely far off.
func (b Band) Limits(errHalf float64) (out []series.Limits) {
	for _, x := range b.all() {
		lo, hi := orInf(x.low, -1), orInf(x.high, 1)
		out = append(out, series.Limits{Low: lo, High: hi}, series.Limits{Low: lo - errHalf, High: hi - errHalf}, series.Limits{Low: lo + errHalf, High: hi + errHalf})
	}
	return out
}

// rows are the bands' counts from what lay outside each of their limits.
func (b Band) rows(outside []series.Outside) []BandRow {
	rows := []BandRow{}
	for i, x := range b.all() {
		row := bandRow(outside[3*i], outside[3*i+1], outside[3*i+2])
		row.Name, row.Low, row.High = x.name, x.low, x.high
		rows = append(rows, row)
	}
	return rows
}

// bandRow is the counts of one band: as read, and with every reading one sensor error higher (warmer) and lower
// (colder).
func bandRow(mid, warmer, colder series.Outside) BandRow {
	hours := func(ms float64) float64 { return ms / series.HourMS }
	return BandRow{
		HoursBelow:    hours(mid.BelowMS),
		HoursAbove:    hours(mid.AboveMS),
		HoursIn:       hours(float64(mid.KnownMS) - mid.BelowMS - mid.AboveMS),
		DegHoursBelow: hours(mid.BelowArea),
		DegHoursAbove: hours(mid.AboveArea),
		BelowRange:    Range{hours(warmer.BelowMS), hours(colder.BelowMS)},
		AboveRange:    Range{hours(colder.AboveMS), hours(warmer.AboveMS)},
		DegBelowRange: Range{hours(warmer.BelowArea), hours(colder.BelowArea)},
		DegAboveRange: Range{hours(colder.AboveArea), hours(warmer.AboveArea)},
	}
}

// orInf is the limit, or infinity of the given sign where there is none.
func orInf(limit *float64, sign int) float64 {
	if limit == nil {
		return math.Inf(sign)
	}
	return *limit
}

// measure is one quantity of the review: how to take it from a logger, and how it is judged.
type measure struct {
	quantity, unit string
	of             func(Logger) series.Curve
	errHalf        func(Logger, stretches) float64 // over some time
	band           func(Bands) Band                // nil where the safe bands do not apply
}

// measures lists what is taken at a place.
func measures(place string) []measure {
	temperature := measure{"air_temperature", "degC", temperatureOf, func(l Logger, _ stretches) float64 { return l.TempErrK }, nil}
	humidity := measure{"relative_humidity", "percent", relHumPct, func(l Logger, _ stretches) float64 { return 100 * l.RelHumErr }, nil}
	dew := measure{"dew_point", "degC", func(l Logger) series.Curve { return l.dewC }, Logger.dewErrK, nil}
	if isSurface(place) {
		temperature.quantity = "surface_temperature"
	}
	if isJudged(place) {
		temperature.band, humidity.band = func(b Bands) Band { return b.TempC }, func(b Bands) Band { return b.RelHumPct }
		dew.band = Bands.dewC
	}
	return []measure{temperature, humidity, dew}
}

// relHumPct is a logger's humidity in percent.
func relHumPct(l Logger) series.Curve {
	return l.RelHum.Map(func(v float64) float64 { return 100 * v })
}

// quantityRows has a row per place and per logger, for the whole bees' time and for each phase.
func quantityRows(j judgement) []QuantityRow {
	type task struct {
		measure
		logger Logger
	}
	var tasks []task
	for _, s := range j.spots {
		for _, m := range measures(s.place) {
			for _, l := range append([]Logger{s.mean}, s.loggers...) {
				tasks = append(tasks, task{m, l})
			}
		}
	}
	made := make([][]QuantityRow, len(tasks))
	j.spread(len(tasks), func(i int) { made[i] = tasks[i].rows(tasks[i].logger, j.phases) })
	return append([]QuantityRow{}, slices.Concat(made...)...)
}

// rows has a row for the scored time and one per phase, of a logger or a place's mean; none where it lacks the
// quantity or no time is scored. The phases make up the scored time, so each hour is counted once.
func (m measure) rows(l Logger, phases []Phase) []QuantityRow {
	c := m.of(l)
	if c.Len() == 0 || len(phases) == 0 {
		return nil
	}
	var scored stretches
	for _, p := range phases {
		scored = append(scored, p.Parts...)
	}
	errHalf := m.errHalf(l, scored)
	rows := []QuantityRow{{}}
	var whole tally
	var common Band
	for i, p := range phases {
		var band Band
		var limits []series.Limits
		if m.band != nil {
			band = m.band(p.Bands)
			limits = band.Limits(errHalf)
		}
		t := stretches(p.Parts).sum(c, limits)
		rows = append(rows, m.row(l, p.Name, t, band, errHalf))
		if i == 0 {
			whole, common = t, band
			continue
		}
		whole, common = whole.plus(t), common.common(band)
	}
	rows[0] = m.row(l, "", whole, common, errHalf)
	return rows
}

// tally is what a curve comes to over some time: in all, and outside each of the limits.
type tally struct {
	bin      series.Bin
	outside  []series.Outside
	lengthMS int64
}

// plus is the tally of both where next comes after t.
func (t tally) plus(next tally) tally {
	out := tally{bin: t.bin.Plus(next.bin), lengthMS: t.lengthMS + next.lengthMS}
	for i, o := range t.outside {
		out.outside = append(out.outside, o.Plus(next.outside[i]))
	}
	return out
}

// row is the row of a tally.
func (m measure) row(l Logger, phase string, t tally, band Band, errHalf float64) QuantityRow {
	row := QuantityRow{Quantity: m.quantity, Place: l.Place, Logger: l.Name, Phase: phase, Unit: m.unit, Bands: []BandRow{}}
	row.fill(t, errHalf)
	if m.band != nil {
		row.Bands = band.rows(t.outside)
	}
	return row
}

// fill sets the known hours and, where enough of the span is known, least, mean and greatest value.
func (r *QuantityRow) fill(t tally, errHalf float64) {
	b := t.bin
	r.KnownMS, r.UnknownMS = b.KnownMS, t.lengthMS-b.KnownMS
	if b.KnownMS == 0 || float64(b.KnownMS) < enoughOfWinter*float64(t.lengthMS) {
		r.Min, r.Mean, r.Max = unknown("too_little_known"), unknown("too_little_known"), unknown("too_little_known")
		return
	}
	r.Min, r.Mean, r.Max = within(b.Min, errHalf), within(b.Weighted(), errHalf), within(b.Max, errHalf)
}

// within is a recorded figure with a half-width.
func within(v, half float64) Figure {
	return Figure{Mid: v, Low: v - half, High: v + half, OK: true, Evidence: Recorded}
}

// dewErrK is the dew point's half-width from both sensors in quadrature, at the logger's mean state over some time.
func (l Logger) dewErrK(time stretches) float64 {
	tempC, relHum, ok := l.meanState(time)
	if !ok {
		return 0
	}
	return quadrature(onsetSlopes(tempC, relHum, l.TempErrK, l.RelHumErr))
}

// meanState is the plain mean of a logger's readings over some time; ok is false where it lacks a quantity.
func (l Logger) meanState(time stretches) (tempC, relHum float64, ok bool) {
	tempC, relHum = time.sum(l.TempC, nil).bin.Plain(), time.sum(l.RelHum, nil).bin.Plain()
	return tempC, relHum, !math.IsNaN(tempC + relHum)
}
