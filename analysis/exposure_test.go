package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// exposureRow is the row of a quantity over a phase; it fails where there is none.
func exposureRow(t *testing.T, r Review, quantity, place, phase string) QuantityRow {
	t.Helper()
	for _, q := range r.Quantities {
		if q.Quantity == quantity && q.Place == place && q.Logger == "" && q.Phase == phase {
			return q
		}
	}
	t.Fatalf("no row of %s at %s, phase %q", quantity, place, phase)
	return QuantityRow{}
}

// Air at 4 °C with the dew point as the ASHRAE equations give it: 60 % −3.06 °C, 75 % −0.02 °C, 90 % 2.51 °C (domain
// table of logger errors). The house bands 2–6 °C and 40–75 % hold air with dew points from −10.2 to 1.9 °C: 0.40 × 706 Pa
// is 282 Pa, which water has 0.2 K below the 286 Pa of −10 °C, and 0.75 × 935 Pa is 702 Pa, that of 1.9 °C (saturation
// over water by IAPWS).
func TestDewPointHoursByPhase(t *testing.T) {
	s := series.Span{From: instant(t, "2026-02-01 00:00"), To: instant(t, "2026-03-11 00:00")}
	march := instant(t, "2026-03-01 00:00")
	from, to := float64(s.From)/hourMS, float64(s.To)/hourMS
	hum := through(from, to, 1, func(h float64) float64 {
		if h >= float64(march)/hourMS {
			return 0.90
		}
		return 0.60
	})
	r := Judge(one(through(from, to, 1, constant(4)), hum, s))
	february, whole := exposureRow(t, r, "dew_point", "room", deepWinter), exposureRow(t, r, "dew_point", "room", "")
	late := exposureRow(t, r, "dew_point", "room", lateWinter)
	near(t, "mean in February", february.Mean.Mid, -3.06, 0.02)
	near(t, "mean in March", late.Mean.Mid, 2.51, 0.02)
	good := late.Bands[0]
	near(t, "upper limit", *good.High, 1.9, 0.05)
	near(t, "lower limit", *good.Low, -10.2, 0.1)
	near(t, "hours above in March", good.HoursAbove, 240, 1e-6)
	near(t, "hours above in February", february.Bands[0].HoursAbove, 0, 1)
	near(t, "hours above in all", whole.Bands[0].HoursAbove, february.Bands[0].HoursAbove+240, 1e-6)
	// ±0.5 K and ±5 % put a dew point of 2.51 °C about 0.9 K off: it may have been below 1.9 °C all the time.
	near(t, "least hours above", good.AboveRange.Low, 0, 1e-6)
	n := 0
	for _, sp := range r.Spells {
		if sp.Kind == "moist" {
			n++
			near(t, "hours of the moist spell", sp.Hours, 240, 1)
			near(t, "its peak", sp.Peak, 2.51, 0.02)
		}
	}
	near(t, "moist spells", float64(n), 1, 0)
}

// A wall at factor 0.9 between 4 °C and −20 °C is at 1.6 °C; at 60 % frost begins at −2.70 °C (table of factors): 4.30 K
// to go. With the factor from 0.8 to 1 it is at −0.8 to 4 °C.
func TestMarginHoursWithTheirRange(t *testing.T) {
	in := walled(4, 0.60, -20, 0.9)
	in.Surfaces[0].Low, in.Surfaces[0].High = 0.8, 1
	r := Judge(in)
	row := exposureRow(t, r, "surface_margin", "north wall", "")
	near(t, "margin", row.Mean.Mid, 4.30, 0.01)
	near(t, "hours of a degree and more", row.Bands[0].HoursIn, 100, 1e-6)
	if row.Unit != "K" || !(row.Mean.Low < -0.8+2.70 && row.Mean.High > 4+2.70) {
		t.Errorf("%s, from %v to %v; wants the ends of the factor with the loggers' error", row.Unit, row.Mean.Low, row.Mean.High)
	}
	wet := walled(4, 0.85, -20, 0.9) // wet below 0.905
	row = exposureRow(t, Judge(wet), "surface_margin", "north wall", "")
	act := row.Bands[2]
	near(t, "hours wet", act.HoursBelow, 100, 1e-6)
	near(t, "hours wet at the dry end", act.BelowRange.Low, 0, 1e-6)
	near(t, "hours wet at the wet end", act.BelowRange.High, 100, 1e-6)
	near(t, "degree-hours wet", act.DegHoursBelow, 100*(1.71-1.6), 1)
}

func TestWhatCanNotBeToldHasItsReason(t *testing.T) {
	in := walled(4, 0.85, -20, 0.9)
	in.Loggers = in.Loggers[:1]
	if u := exposureRow(t, Judge(in), "surface_margin", "north wall", "").Mean.Unknown; u != "no_outdoor" {
		t.Errorf("without outdoors: %q", u)
	}
	in.Surfaces = nil
	if u := exposureRow(t, Judge(in), "surface_margin", "room", "").Mean.Unknown; u != "no_surface" {
		t.Errorf("without a surface: %q", u)
	}
	in.Loggers[0].RelHum = series.Curve{}
	if u := exposureRow(t, Judge(in), "dew_point", "room", "").Mean.Unknown; u != "no_humidity" {
		t.Errorf("without humidity: %q", u)
	}
	in.Loggers = append(in.Loggers, Logger{Name: "wet", Place: "room", RelHum: through(0.5, 99.5, 1, constant(0.6))})
	if u := exposureRow(t, Judge(in), "dew_point", "room", "").Mean.Unknown; u != "not_read_together" {
		t.Errorf("read apart: %q", u)
	}
}
