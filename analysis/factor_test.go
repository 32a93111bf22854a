package analysis

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"thawbook/analysis/series"
)

// wallWinter is a room at 4 °C, outdoors a daily swing about a mean, and a wall between that is warmed by the sun
// from 8 to 17 h: Ts = To + f (Ti − To), and by 3 K more in the sun.
func wallWinter(f, outMeanC float64, rng *rand.Rand) Input {
	const days = 60
	outAt := func(h float64) float64 { return outMeanC - 4*math.Cos(2*math.Pi*(h-3)/24) }
	noise := func() float64 { return 0.1 * rng.NormFloat64() }
	in := one(through(0, days*24, 0.5, func(float64) float64 { return 4 + noise() }), through(0, days*24, 0.5, constant(0.7)), span(0, days*24))
	in.Loggers[0].TempErrK, in.Loggers[0].RelHumErr = 0.1, 0.02
	in.Loggers = append(in.Loggers,
		Logger{Name: "yard", Place: "outdoor", TempC: through(0, days*24, 0.5, func(h float64) float64 { return outAt(h) + noise() }), TempErrK: 0.1},
		Logger{Name: "wall", Place: "wall", TempErrK: 0.1, TempC: through(0, days*24, 0.5, func(h float64) float64 {
			sun := 0.0
			if d := math.Mod(h, 24); d >= 8 && d < 17 {
				sun = 3
			}
			return outAt(h) + f*(4-outAt(h)) + sun + noise()
		})})
	in.Surfaces = []Surface{{Name: "north wall", Kind: "wall", Mid: 0.925, Low: 0.90, High: 0.95, Evidence: Assumed, Logger: "wall"}}
	return in
}

// The factor a wall was made with comes out of its nights within 0.02.
func TestFactorIsMeasuredAtNight(t *testing.T) {
	for seed := range uint64(10) {
		rng := rand.New(rand.NewPCG(seed, 5))
		f := 0.75 + 0.2*rng.Float64()
		got := Judge(wallWinter(f, -14, rng)).Surfaces[0].Factor
		near(t, "factor", got.Mid, f, 0.02)
		if got.Evidence != WorkedOut || got.Low > f || got.High < f {
			t.Errorf("%+v does not hold %.3f", got, f)
		}
	}
}

// In mild nights, 5 to 10 K, the range is wider; below 5 K the assumed factor stands; what the keeper set stands.
func TestFactorOfMildNights(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 5))
	cold, mild := Judge(wallWinter(0.85, -14, rng)).Surfaces[0].Factor, Judge(wallWinter(0.85, 0, rng)).Surfaces[0].Factor
	if mild.Evidence != WorkedOut || mild.High-mild.Low <= cold.High-cold.Low {
		t.Errorf("mild %+v, cold %+v: the range must be wider", mild, cold)
	}
	if none := Judge(wallWinter(0.85, 5, rng)).Surfaces[0].Factor; none.Evidence != Assumed || none.Mid != 0.925 {
		t.Errorf("%+v, want the assumed one", none)
	}
	in := wallWinter(0.85, -14, rng)
	in.Surfaces[0].Evidence = YourSetting
	if own := Judge(in).Surfaces[0].Factor; own.Mid != 0.925 {
		t.Errorf("%+v, want the keeper's", own)
	}
}

// Twenty winters with sensors off by up to their errors: the wet hours of the wall as it was lie inside the range
// in at least 18.
func TestWetHoursOfAMeasuredWallAreInsideTheirRange(t *testing.T) {
	inside := 0
	for seed := range uint64(20) {
		rng := rand.New(rand.NewPCG(seed, 6))
		f := 0.75 + 0.15*rng.Float64()
		in := wallWinter(f, -14, rng)
		truth := wetHoursOf(in.Loggers[0], in.Loggers[1].TempC, f)
		for i := range in.Loggers {
			l := &in.Loggers[i]
			l.TempErrK = 0.3
			off := 0.3 / confidence95 * rng.NormFloat64()
			l.TempC = l.TempC.Map(func(v float64) float64 { return v + off })
		}
		row := Judge(in).Surfaces[0]
		if sum := row.DewHours.Low + row.FrostHours.Low; truth >= sum-0.5 && truth <= row.DewHours.High+row.FrostHours.High+0.5 {
			inside++
		}
	}
	if inside < 18 {
		t.Errorf("%d of 20 inside", inside)
	}
}

// wetHoursOf counts the half hours in which a wall without sun, To + f (Ti − To), lies below the point where the
// room's air leaves water: saturation over ice at or below 0 °C and over water above (Magnus forms, WMO-No. 8).
func wetHoursOf(room Logger, outdoor series.Curve, f float64) (hours float64) {
	for i, tempC := range room.TempC.Val {
		surface := outdoor.Val[i] + f*(tempC-outdoor.Val[i])
		a, b := 17.62, 243.12
		if surface <= 0 {
			a, b = 22.46, 272.62
		}
		vap := room.RelHum.Val[i] * math.Exp(17.62*tempC/(243.12+tempC))
		if vap > math.Exp(a*surface/(b+surface)) {
			hours += 0.5
		}
	}
	return hours
}

// Loggers that read off all winter, by as much as half a degree and each another way, move the line through mild and
// cold nights and do not turn it: by hand, with Ts' = Ts + 0.5, Ti' = Ti − 0.4 and To' = To + 0.3 the difference Ts' − To' is
// f (Ti' − To') + 0.2 + 0.7 f, a line of slope f, while the ratio at 15 K is off by (0.2 + 0.7 f)/15.
func TestFactorIsFreeOfWhatLoggersAreOffBy(t *testing.T) {
	for seed := range uint64(5) {
		rng := rand.New(rand.NewPCG(seed, 7))
		f := 0.75 + 0.2*rng.Float64()
		in := wallWinter(f, -12, rng)
		// Cold and mild weeks: ±8 K within twenty days, to which room and wall answer as the factor says.
		wave := func(at int64) float64 { return 8 * math.Sin(2*math.Pi*float64(at)/(20*24*hourMS)) }
		for i, turn := range map[int]float64{1: 1, 2: 1 - f} {
			c := in.Loggers[i].TempC.Map(func(v float64) float64 { return v })
			for k, at := range c.Readings.At {
				c.Val[k] += turn * wave(at)
			}
			in.Loggers[i].TempC = c
		}
		for i, off := range []float64{-0.4, 0.3, 0.5} {
			in.Loggers[i].TempC = in.Loggers[i].TempC.Map(func(v float64) float64 { return v + off })
			in.Loggers[i].TempErrK = 0.5
		}
		got := Judge(in).Surfaces[0].Factor
		near(t, "factor", got.Mid, f, 0.01)
		if got.High-got.Low > 0.06 || got.Low > f || got.High < f {
			t.Errorf("%+v, want a narrow range that holds %.3f", got, f)
		}
	}
}

// Ten days from noon to noon of the local clock hold ten nights of eight hours, 22 to 6, wherever midnight of UTC falls in
// them: by hand.
func TestNightsAreThoseOfTheLocalClock(t *testing.T) {
	for _, offsetH := range []float64{-6, -3.5, 0, 2, 5.5, 10} {
		j := judgement{Input: Input{Zone: time.FixedZone("", int(offsetH*3600))}, scored: stretches{span(12-offsetH, 252-offsetH)}}
		c := through(-24, 300, 0.5, constant(1))
		got := j.nightHours(c, c, c)
		if len(got) != 10 {
			t.Errorf("%g h from UTC: %d nights, want 10", offsetH, len(got))
		}
		for _, night := range got {
			if len(night) != 8 {
				t.Errorf("%g h from UTC: a night of %d h, want 8", offsetH, len(night))
			}
		}
	}
}
