package sampledata

import (
	"math"
	"time"
)

const weatherStepMS = 10 * minuteMS

// weather is the outdoor air: straight lines between values ten minutes apart, the first at from.
type weather struct {
	from      int64
	tempC     []float64
	vapPresPa []float64
}

// at is the outdoor temperature and vapour pressure at an instant of the winter.
func (w *weather) at(atMS int64) (tempC, vapPresPa float64) {
	i := int((atMS - w.from) / weatherStepMS)
	part := float64((atMS-w.from)%weatherStepMS) / weatherStepMS
	between := func(v []float64) float64 { return v[i] + part*(v[i+1]-v[i]) }
	return between(w.tempC), between(w.vapPresPa)
}

// anchor is a value of a season at an instant.
type anchor struct {
	atMS  int64
	value float64
}

// season interpolates between anchors.
func season(anchors []anchor, atMS int64) float64 {
	for i := 1; i < len(anchors); i++ {
		a, b := anchors[i-1], anchors[i]
		if atMS < b.atMS {
			return a.value + (b.value-a.value)*float64(atMS-a.atMS)/float64(b.atMS-a.atMS)
		}
	}
	return anchors[len(anchors)-1].value
}

// airMass is a stretch of weather unlike its season.
type airMass struct {
	span
	deltaC float64
	spread float64 // what the dew-point spread is multiplied by
}

// part is how far the air mass has arrived, 0–1; it comes and goes over eighteen hours.
func (a airMass) part(atMS int64) float64 {
	const edge = 18 * hourMS
	in := min(1, max(0, float64(atMS-a.from)/edge))
	out := min(1, max(0, float64(a.to-atMS)/edge))
	x := min(in, out)
	return x * x * (3 - 2*x)
}

// The winter's seasons: mean temperature, half the daily swing under a middling sky, and dew-point spread.
var (
	meanC = []anchor{
		{standard(2024, time.October, 25, 0, 0), 5}, {standard(2024, time.November, 15, 0, 0), 1.5},
		{standard(2024, time.December, 15, 0, 0), -3}, {standard(2025, time.January, 15, 0, 0), -5},
		{standard(2025, time.February, 10, 0, 0), -5.5}, {standard(2025, time.March, 10, 0, 0), -2},
		{standard(2025, time.April, 1, 0, 0), 1.5}, {standard(2025, time.April, 15, 0, 0), 5},
	}
	swingC = []anchor{
		{standard(2024, time.October, 25, 0, 0), 2.2}, {standard(2024, time.December, 1, 0, 0), 0.8},
		{standard(2025, time.January, 10, 0, 0), 0.8}, {standard(2025, time.March, 1, 0, 0), 2.8},
		{standard(2025, time.April, 15, 0, 0), 4.5},
	}
	spreadK = []anchor{
		{standard(2024, time.October, 25, 0, 0), 1.6}, {standard(2024, time.December, 15, 0, 0), 1.0},
		{standard(2025, time.February, 1, 0, 0), 1.2}, {standard(2025, time.April, 15, 0, 0), 2.6},
	}
	airMasses = []airMass{
		{span{standard(2024, time.December, 16, 0, 0), standard(2024, time.December, 22, 12, 0)}, 4, 0.4},
		{span{standard(2025, time.January, 8, 0, 0), standard(2025, time.January, 17, 0, 0)}, -9, 1},
		{span{standard(2025, time.February, 17, 0, 0), standard(2025, time.February, 21, 12, 0)}, 4.5, 0.5},
		{span{standard(2025, time.March, 1, 12, 0), standard(2025, time.March, 6, 0, 0)}, -5, 1.2},
		{span{standard(2025, time.March, 25, 0, 0), standard(2025, time.March, 30, 12, 0)}, 6, 1.3},
	}
)

// newWeather makes the outdoor air of a stretch: season and air masses, a synoptic and a fast wander, a
// daily swing that a cloudy sky flattens. The dew or frost point lies a wandering spread below the day's mean
// temperature and never above the air's own.
func newWeather(s span) *weather {
	const stepS = weatherStepMS / secondMS
	synoptic := newWander(noise(1), 2.4, 2.2*86400, stepS)
	fast := newWander(noise(2), 0.5, 4*3600, stepS)
	sky := newWander(noise(3), 1.5, 1.5*86400, stepS)
	damp := newWander(noise(4), 0.45, 0.8*86400, stepS)
	w := &weather{from: s.from}
	for t := s.from; t <= s.to+weatherStepMS; t += weatherStepMS {
		clear := 1 / (1 + math.Exp(-sky.next()))
		day := season(meanC, t) + synoptic.next() - 2*(clear-0.5)
		spread := season(spreadK, t) * math.Exp(damp.next()) * (0.5 + clear)
		for _, a := range airMasses {
			day += a.deltaC * a.part(t)
			spread *= 1 + (a.spread-1)*a.part(t)
		}
		swing := season(swingC, t) * (0.3 + 1.4*clear) * math.Cos(2*math.Pi*(hourOfDay(t)-14.5)/24)
		tempC := day + swing + fast.next()
		w.tempC = append(w.tempC, tempC)
		w.vapPresPa = append(w.vapPresPa, satPresPa(min(day+0.3*swing-spread, tempC-0.1)))
	}
	return w
}

// hourOfDay is the standard time's hour, 0–24.
func hourOfDay(atMS int64) float64 {
	return float64((atMS+standardZoneMS)%dayMS) / hourMS
}
