package analysis

import (
	"math"

	"thawbook/analysis/series"
)

// surfaceRows say how long each listed surface was wet. The surface's temperature is
// To + f (Ti − To), with f its temperature factor (EN ISO 13788's definition); it is wet where that is below
// the point at which the room's air leaves water: dew above 0 °C, frost below. The margins are their exposure.
func surfaceRows(j judgement) (rows []SurfaceRow, margins []QuantityRow) {
	rows = make([]SurfaceRow, 0, len(j.Surfaces))
	sides := sidesOf(j)
	for _, s := range j.Surfaces {
		s = j.measured(s)
		row := SurfaceRow{Name: s.Name, Kind: s.Kind, Factor: Figure{Mid: s.Mid, Low: s.Low, High: s.High, OK: true, Evidence: s.Evidence}}
		margins = append(margins, row.judge(j, s, sides)...)
		rows = append(rows, row)
	}
	return rows, margins
}

// noWall is why nothing can be told of a surface; empty where it can.
func (j judgement) noWall() string {
	switch {
	case j.room.mean.TempC.Len() == 0:
		return "no_room_temperature"
	case j.room.mean.RelHum.Len() == 0:
		return "no_humidity"
	case j.weather(temperatureOf).Len() == 0:
		return "no_outdoor"
	}
	return ""
}

// judge fills the wet hours, or says what they lack, and gives the rows of the margin.
func (r *SurfaceRow) judge(j judgement, s Surface, sides []side) []QuantityRow {
	if lack := j.noWall(); lack != "" {
		r.DewHours, r.FrostHours, r.MouldIndex = unknown(lack), unknown(lack), unknown(lack)
		return []QuantityRow{untold(surfaceMargin, s.Name, "K", lack)}
	}
	mid, low, high := meanWall(sides, s, 0, j.spread), meanWall(sides, s, -1, j.spread), meanWall(sides, s, 1, j.spread)
	r.Margin, r.SurfaceC, r.wet, r.dry = mid.margin, mid.surfaceC, low.margin, high.margin
	r.MarginErrK = (j.scored.sum(high.margin, nil).bin.Weighted() - j.scored.sum(low.margin, nil).bin.Weighted()) / 2
	margins := marginRows(s.Name, mid.margin, low.margin, high.margin, j.phases)
	if j.scored.share(j.scored.knownMS(mid.margin)) < enoughOfWinter {
		r.DewHours, r.FrostHours, r.MouldIndex = unknown("too_little_known"), unknown("too_little_known"), unknown("too_little_known")
		return margins
	}
	r.DewHours, r.FrostHours = wetFigures(mid, low, high, j.scored)
	r.MouldIndex = mouldFigure(j, mid, low, high)
	return margins
}

// side is what a surface has on its two sides by one logger: its air, with what it begins to leave water at, and the
// outdoor line at the instants where it read both temperature and humidity, and its mean state, if it has one.
type side struct {
	Logger
	outC, onsetC   series.Curve
	outErrK        float64
	meanC, meanHum float64
	told           bool
}

// sidesOf are the sides by each of the room's loggers; none where no surface can be told of.
func sidesOf(j judgement) []side {
	if len(j.Surfaces) == 0 || j.noWall() != "" {
		return nil
	}
	outdoor := j.weather(temperatureOf)
	loggers := j.roomHaving(func(l Logger) series.Curve { return l.dewC })
	onset := ofMoistAir(loggers, wetBelowC, j.spread)
	sides := make([]side, len(onset))
	j.spread(len(sides), func(i int) {
		l := loggers[i]
		sides[i] = side{Logger: l, outC: series.ZipAlong(series.Zip(l.TempC, l.RelHum, first), outdoor, second), onsetC: onset[i], outErrK: j.weatherErrK()}
		sides[i].meanC, sides[i].meanHum, sides[i].told = l.meanState(j.scored)
	})
	return sides
}

// wall is a surface's temperature and its margin to wetness over time.
type wall struct{ surfaceC, margin series.Curve }

// meanWall is a surface at its factor, and, with end −1 and +1, at the wet and the dry end of its range with the
// loggers' errors in quadrature. For several loggers it is the mean of their walls.
func meanWall(sides []side, s Surface, end int, spread Spread) (mean wall) {
	walls := make([]wall, len(sides))
	spread(len(sides), func(i int) { walls[i] = sides[i].wall(s, end) })
	var surface, margin []series.Curve
	for _, w := range walls {
		if w.margin.Len() > 0 {
			surface, margin = append(surface, w.surfaceC), append(margin, w.margin)
		}
	}
	spread(2, func(i int) {
		if i == 0 {
			mean.surfaceC = meanOf(surface)
			return
		}
		mean.margin = meanOf(margin)
	})
	return mean
}

// wall works out a surface by one logger; end −1 and +1 give the wet and the dry end of what it may have been.
func (l side) wall(s Surface, end int) wall {
	surface := series.Zip(l.TempC, l.outC, func(tempC, outC float64) float64 {
		return surfaceC(s, tempC, outC, end)
	})
	half := 0.0
	if end != 0 {
		half = float64(end) * l.marginHalfK(s)
	}
	return wall{surface, series.Zip(surface, l.onsetC, func(surfC, onsetC float64) float64 { return surfC - onsetC + half })}
}

func first(a, _ float64) float64 { return a }

func second(_, b float64) float64 { return b }

// surfaceC is To + f (Ti − To), °C: at the middle factor, or at that end of its range which makes it colder
// (end −1) or warmer (+1).
func surfaceC(s Surface, inC, outC float64, end int) float64 {
	of := func(f float64) float64 { return outC + f*(inC-outC) }
	switch {
	case end < 0:
		return math.Min(of(s.Low), of(s.High))
	case end > 0:
		return math.Max(of(s.Low), of(s.High))
	}
	return of(s.Mid)
}

// marginHalfK is the margin's 95 % half-width, K, from the sensors alone at the logger's mean state: the
// temperature error moves surface and dew point together, the humidity error the dew point, and the
// outdoor error the surface.
func (l side) marginHalfK(s Surface) float64 {
	if !l.told {
		return 0
	}
	byTemp, byRelHum := onsetSlopes(l.meanC, l.meanHum, l.TempErrK, l.RelHumErr)
	return quadrature(s.Mid*l.TempErrK-byTemp, byRelHum, (1-s.Mid)*l.outErrK)
}

// wetFigures are dew and frost hours with the range between the dry and the wet end.
func wetFigures(mid, low, high wall, scored stretches) (dew, frost Figure) {
	midFrost, midDew := wetTime(mid.margin, mid.surfaceC, scored)
	wetFrost, wetDew := wetTime(low.margin, low.surfaceC, scored)
	dryFrost, dryDew := wetTime(high.margin, high.surfaceC, scored)
	return ranged(midDew, wetDew, dryDew), ranged(midFrost, wetFrost, dryFrost)
}

// ranged is a worked-out figure in hours enclosing all the given milliseconds.
func ranged(mid float64, others ...float64) Figure {
	f := Figure{Mid: mid, Low: mid, High: mid, OK: true, Evidence: WorkedOut}
	for _, v := range others {
		f.Low, f.High = math.Min(f.Low, v), math.Max(f.High, v)
	}
	f.Mid, f.Low, f.High = f.Mid/series.HourMS, f.Low/series.HourMS, f.High/series.HourMS
	return f
}

// wetTime is how long, in milliseconds, the margin was below zero: with the surface at or below 0 °C (frost)
// and above it (dew).
func wetTime(margin, surfaceC series.Curve, s stretches) (frostMS, dewMS float64) {
	wet := s.below(margin, 0)
	warm := s.above(surfaceC, 0)
	total := 0.0
	for _, w := range wet {
		total += w.To - w.From
	}
	dewMS = overlapMS(wet, warm)
	return total - dewMS, dewMS
}

// overlapMS is how long two rising lists of runs hold together, in milliseconds.
func overlapMS(a, b []series.Run) float64 {
	sum := 0.0
	for i, j := 0, 0; i < len(a) && j < len(b); {
		if d := math.Min(a[i].To, b[j].To) - math.Max(a[i].From, b[j].From); d > 0 {
			sum += d
		}
		if a[i].To < b[j].To {
			i++
		} else {
			j++
		}
	}
	return sum
}
