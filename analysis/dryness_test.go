package analysis

import (
	"testing"
	"time"
)

// 40 days at 4 °C. From day 10 for 48 h the air stands at 30 %: in the first 12 h the heater runs, from hour 6 to
// hour 30 the air outside is at −20 °C instead of −5 °C, both at 80 %.
func TestDryStretchIsSplit(t *testing.T) {
	const days, at = 40, 240.0
	between := func(h, from, to float64) bool { return h >= at+from && h < at+to }
	in := one(through(0, days*24, 0.5, constant(4)), through(0, days*24, 0.5, func(h float64) float64 {
		if between(h, 0, 48) {
			return 0.30
		}
		return 0.60
	}), span(0, days*24))
	in.Zone = time.UTC
	in.Loggers = append(in.Loggers,
		Logger{Name: "yard", Place: "outdoor", RelHum: through(0, days*24, 0.5, constant(0.8)), TempC: through(0, days*24, 0.5, func(h float64) float64 {
			if between(h, 6, 30) {
				return -20
			}
			return -5
		})},
		Logger{Name: "switch", Place: "other", RecordsStage: "heater", State: through(0, days*24, 0.5, func(h float64) float64 { return oneIf(between(h, 0, 12)) })})
	in.Heats = []HeatSource{{Name: "heater", Kind: "heater"}}
	r := Judge(in)
	if len(r.Dryness) != 1 {
		t.Fatalf("%d dry stretches, want one", len(r.Dryness))
	}
	d := r.Dryness[0]
	// The line falls from 60 to 30 % within half an hour and rises so after the last reading at 30 %: it is below
	// 40 % from two thirds of the way on and to one third, so 47.5 h at 10 %·h an hour and two triangles.
	near(t, "percent hours", d.PercentHours, 475+2*0.5*10*0.5/3, 0.1)
	near(t, "heat alone", d.HeatHours.Mid, 6, 0.6)
	near(t, "both", d.BothHours.Mid, 6, 0.6)
	near(t, "weather alone", d.WeatherHours.Mid, 18, 0.6)
	near(t, "neither", d.NeitherHours.Mid, 18, 0.6)
	// The sheet of saturation pressures (Hyland–Wexler over water): 813.48 Pa at 4 °C; at −20 °C 125.63, at −5 °C
	// 421.6 (from memory), so 80 % of them are 12.4 % and 41.5 % of the first, for 24 h each.
	near(t, "intake", d.IntakePct.Mid, (12.4+41.5)/2, 1)
	near(t, "drying power at 4 °C and 30 %", d.VPDPa.Mid, 0.7*813.48, 5)
}

// What is not recorded is not told: no outdoor logger, no heat record.
func TestDryStretchWithoutRecordsIsNotSplit(t *testing.T) {
	in := one(through(0, 100, 0.5, constant(4)), through(0, 100, 0.5, constant(0.3)), span(0, 100))
	d := Judge(in).Dryness[0]
	for _, f := range []Figure{d.HeatHours, d.WeatherHours, d.BothHours, d.NeitherHours, d.IntakePct} {
		if f.OK {
			t.Errorf("%+v, want unknown", f)
		}
	}
}
