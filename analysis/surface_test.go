package analysis

import (
	"testing"

	"thawbook/analysis/moistair"
	"thawbook/analysis/series"
)

// walled is a room of steady air with a wall of a given factor and steady weather.
func walled(tempC, relHum, outC, factor float64) Input {
	s := span(0, 100)
	in := one(through(0, 100, 0.5, constant(tempC)), through(0, 100, 0.5, constant(relHum)), s)
	in.Loggers = append(in.Loggers, Logger{Name: "yard", Place: "outdoor", TempC: through(0, 100, 1, constant(outC))})
	in.Surfaces = []Surface{{Name: "north wall", Kind: "wall", Mid: factor, Low: factor, High: factor, Evidence: YourSetting}}
	return in
}

// Barn air at 4 °C with −20 °C outside: the factor below which a wall sweats or frosts, and the surface
// temperature at which it does. Worked with Hyland–Wexler saturation from ASHRAE Fundamentals ch. 1,
// eq. 5 and 6, by hand (the table of factors for RH 50 to 85 %).
func TestTheFactorAtWhichAWallGetsWet(t *testing.T) {
	for _, row := range []struct{ relHum, onset, factor float64 }{
		{0.50, -4.86, 0.631}, {0.60, -2.70, 0.721}, {0.70, -0.86, 0.798},
		{0.75, -0.02, 0.832}, {0.80, 0.87, 0.869}, {0.85, 1.71, 0.905},
	} {
		near(t, "onset", onsetC(moistair.VapPresPa(4, row.relHum)), row.onset, 0.006)
		wet := Judge(walled(4, row.relHum, -20, row.factor-0.002)).Surfaces[0]
		dry := Judge(walled(4, row.relHum, -20, row.factor+0.002)).Surfaces[0]
		near(t, "hours wet just below the factor", wet.DewHours.Mid+wet.FrostHours.Mid, 100, 1e-6)
		near(t, "hours wet just above it", dry.DewHours.Mid+dry.FrostHours.Mid, 0, 1e-9)
		frost := row.onset < 0
		if (wet.FrostHours.Mid > 0) != frost {
			t.Errorf("%v: frost %v h, dew %v h; the surface is at %v °C", row.relHum, wet.FrostHours.Mid, wet.DewHours.Mid, row.onset)
		}
		if !(dry.DewHours.High+dry.FrostHours.High > 0) {
			t.Errorf("%v: a margin of 0.05 K should not be sure", row.relHum)
		}
	}
}

// A wall that was wet for all of a hundred hours is a finding; one that never was, and one of cold metal, are none.
func TestAWetWallIsAFinding(t *testing.T) {
	for _, c := range []struct {
		factor float64
		kind   string
		want   int
	}{{0.80, "wall", 1}, {0.99, "wall", 0}, {0.80, "metal", 0}} {
		in := walled(4, 0.85, -20, c.factor)
		in.Surfaces[0].Kind = c.kind
		got := 0
		for _, f := range Judge(in).Findings {
			if f.Code != "surface_wet" {
				continue
			}
			got++
			near(t, "wet, h", f.Figure("dew_hours").Mid+f.Figure("frost_hours").Mid, 100, 1e-6)
		}
		if got != c.want {
			t.Errorf("factor %v, %s: %d findings, want %d", c.factor, c.kind, got, c.want)
		}
	}
}

func TestAWallWithoutWeatherOrHumidityHasNoHours(t *testing.T) {
	in := walled(4, 0.85, -20, 0.9)
	in.Loggers = in.Loggers[:1]
	if f := Judge(in).Surfaces[0].DewHours; f.OK || f.Unknown != "no_outdoor" {
		t.Errorf("without outdoors: %+v", f)
	}
	in = walled(4, 0.85, -20, 0.9)
	in.Loggers[0].RelHum = series.Curve{}
	if f := Judge(in).Surfaces[0].FrostHours; f.OK || f.Unknown != "no_humidity" {
		t.Errorf("without humidity: %+v", f)
	}
}

// Half-widths of a ±3 % logger at 4 °C as dew point, from the error table worked with the same equations:
// 60 %: −3.06 −0.68/+0.66 K; 90 %: 2.51 −0.48/+0.46 K.
func TestOnsetErrorOfAHumiditySensor(t *testing.T) {
	for _, row := range []struct{ relHum, low, mid, high float64 }{{0.90, 2.04, 2.51, 2.97}} {
		_, up := onsetSlopes(4, row.relHum, 0, 0.03)
		_, down := onsetSlopes(4, row.relHum, 0, -0.03)
		near(t, "up", up, row.high-row.mid, 0.011)
		near(t, "down", down, row.low-row.mid, 0.011)
	}
}

func TestColdMetalNeverMakesTheVerdict(t *testing.T) {
	in := walled(4, 0.70, -20, 0.3)
	wall := Judge(in).Verdict.Damp
	in.Surfaces[0].Kind = "metal"
	metal := Judge(in).Verdict.Damp
	if wall.State != Yes || metal.State != No {
		t.Errorf("wall %s, metal %s; want yes, no", wall.State, metal.State)
	}
	if wall.Figure.Evidence != WorkedOut || metal.Figure.Evidence != Recorded {
		t.Errorf("wall %s, metal %s; want worked out, recorded", wall.Figure.Evidence, metal.Figure.Evidence)
	}
}

// Half of the weather reaches a surface of factor 0.5: by a room's logger without error, a yard logger of ±0.3 K, of which
// half a degree is taken at the least, makes its margin ±0.25 K, and a weather station of ±1.5 K ±0.75 K. By hand.
func TestAWeatherStationsErrorWidensAWallsMargin(t *testing.T) {
	for errK, want := range map[float64]float64{0.3: 0.25, 1.5: 0.75} {
		in := walled(4, 0.7, -20, 0.5)
		in.Loggers[0].TempErrK, in.Loggers[0].RelHumErr = 0, 0
		in.Loggers[1].TempErrK = errK
		near(t, "half-width", Judge(in).Surfaces[0].MarginErrK, want, 1e-9)
	}
}

// A logger of ±5 % at 4 °C and 75 % while the bees were in, and as long at 20 °C and 50 % before: its dew point is good to
// 0.89 K, from −0.02 to 0.87 °C (the error table of the same equations), whatever it read in the summer.
func TestADewPointsErrorIsThatOfTheBeesTime(t *testing.T) {
	summerThen := func(before, after float64) series.Curve {
		return through(-1000, 1000, 1, func(h float64) float64 {
			if h < 0 {
				return before
			}
			return after
		})
	}
	in := one(summerThen(20, 4), summerThen(0.5, 0.75), span(0, 1000))
	in.Loggers[0].TempErrK = 0
	near(t, "half-width", Judge(in).Traces.RoomDewErrK, 0.89, 0.011)
}

// The bees went in after the record's end: there is no time to judge, no row and no hour, and no fault either.
func TestAWallOfNoJudgedTimeHasNoRows(t *testing.T) {
	in := walled(4, 0.7, -20, 0.9)
	late := span(200, 200).From
	in.BeesIn, in.BeesOut = &late, nil
	r := Judge(in)
	if len(r.Quantities) != 0 || len(r.Surfaces) != 1 || r.Surfaces[0].DewHours.OK {
		t.Errorf("%+v %+v", r.Quantities, r.Surfaces)
	}
}
