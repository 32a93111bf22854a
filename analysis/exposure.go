package analysis

import (
	"math"
	"slices"

	"thawbook/analysis/series"
)

// surfaceMargin is the quantity of a surface's distance from being wet, K.
const surfaceMargin = "surface_margin"

// marginBand are the limits of a surface's margin, K: wet below 0; within a degree of it a logger of ±0.5 K and ±5 %
// can't tell it from wet (that logger's dew point at 4 °C and 75 % is 0.9 K off either way, by the ASHRAE equations).
func marginBand() Band {
	near, wet := 1.0, 0.0
	return Band{GoodLow: &near, WatchLow: &wet, ActLow: &wet}
}

// dewC are the limits of the dew point, °C, that follow from those of temperature and humidity: air within both has a
// dew point between that of the coldest and driest and that of the warmest and dampest of it.
func (b Bands) dewC() Band {
	dew := func(tempC, relHumPct *float64) *float64 {
		if tempC == nil || relHumPct == nil || *relHumPct <= 0 {
			return nil
		}
		v := dewPointC(*tempC, *relHumPct/100)
		return &v
	}
	t, h := b.TempC, b.RelHumPct
	return Band{dew(t.GoodLow, h.GoodLow), dew(t.GoodHigh, h.GoodHigh), dew(t.WatchLow, h.WatchLow),
		dew(t.WatchHigh, h.WatchHigh), dew(t.ActLow, h.ActLow), dew(t.ActHigh, h.ActHigh)}
}

func dewHighC(b Bands) *float64 { return b.dewC().GoodHigh }

// noDewPoint is why a place has no dew point.
func noDewPoint(mean Logger) string {
	switch {
	case mean.RelHum.Len() == 0:
		return "no_humidity"
	case mean.TempC.Len() == 0:
		return "no_room_temperature"
	}
	return "not_read_together"
}

// untold is the row of a quantity that can't be told for want of something.
func untold(quantity, place, unit, lack string) QuantityRow {
	return QuantityRow{Quantity: quantity, Place: place, Unit: unit, Min: unknown(lack), Mean: unknown(lack), Max: unknown(lack), Bands: []BandRow{}}
}

// marginRows are the rows of a surface's margin, for the scored time and for each phase, from the margin as worked out
// and at the wet and the dry end of what it may have been; none where no time is scored.
func marginRows(surface string, mid, wet, dry series.Curve, phases []Phase) []QuantityRow {
	if len(phases) == 0 {
		return nil
	}
	limits := marginBand().Limits(0)
	rows := []QuantityRow{{}}
	var whole [3]tally
	for i, p := range phases {
		var t [3]tally
		for k, c := range []series.Curve{mid, wet, dry} {
			t[k] = stretches(p.Parts).sum(c, limits)
			if i > 0 {
				whole[k] = whole[k].plus(t[k])
			}
		}
		if i == 0 {
			whole = t
		}
		rows = append(rows, marginRow(surface, p.Name, t))
	}
	rows[0] = marginRow(surface, "", whole)
	return rows
}

// marginRow is the row of three tallies: the middle, the wet end and the dry end.
func marginRow(surface, phase string, t [3]tally) QuantityRow {
	row := QuantityRow{Quantity: surfaceMargin, Place: surface, Phase: phase, Unit: "K", Bands: []BandRow{}}
	row.fill(t[0], 0)
	row.Min.span(t[1].bin.Min, t[2].bin.Min)
	row.Mean.span(t[1].bin.Weighted(), t[2].bin.Weighted())
	row.Max.span(t[1].bin.Max, t[2].bin.Max)
	for i, x := range marginBand().all() {
		band := bandRow(t[0].outside[3*i], t[2].outside[3*i], t[1].outside[3*i])
		band.Name, band.Low = x.name, x.low
		row.Bands = append(row.Bands, band)
	}
	return row
}

// span makes a known figure a worked-out one that reaches from low to high.
func (f *Figure) span(low, high float64) {
	if f.OK {
		f.Low, f.High, f.Evidence = math.Min(low, f.Mid), math.Max(high, f.Mid), WorkedOut
	}
}

// exposure is every quantity's row; a dew point of the room, or a margin, that can't be told has one with the reason.
func exposure(j judgement, margins []QuantityRow) []QuantityRow {
	rows := quantityRows(j)
	if len(j.phases) == 0 {
		return rows
	}
	room := j.room.mean
	if room.dewC.Len() == 0 && room.Place != "" {
		rows = append(rows, untold("dew_point", room.Place, "degC", noDewPoint(room)))
	}
	if len(j.Surfaces) == 0 {
		margins = []QuantityRow{untold(surfaceMargin, j.room.place, "K", "no_surface")}
	}
	return slices.Concat(rows, margins)
}
