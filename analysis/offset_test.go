package analysis

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"thawbook/analysis/series"
)

// barnAir simulates a room under one thermostat, 5 on / 4.5 off, at 10 s steps: it warms at up K/h and cools
// at down K/h while the fan runs. A logger sees it through a first-order lag, an offset, noise and a
// printed resolution every so many minutes. It returns the logger's curve and the true hours on.
func barnAir(hours, upKH, downKH, offsetK, lagMin, everyMin, noiseK, resK float64, seed uint64) (series.Curve, float64) {
	rng := rand.New(rand.NewPCG(seed, 1))
	const stepH = 10.0 / 3600
	tempC, seen, on, onH := 4.2, 4.2, false, 0.0
	var vals []float64
	next := 0.0
	for h := 0.0; h <= hours; h += stepH {
		switch {
		case tempC >= 5:
			on = true
		case tempC <= 4.5:
			on = false
		}
		if on {
			tempC -= downKH * stepH
			onH += stepH
		} else {
			tempC += upKH * stepH
		}
		if lagMin > 0 {
			seen += (tempC - seen) * stepH * 60 / lagMin
		} else {
			seen = tempC
		}
		if h >= next-1e-9 {
			vals = append(vals, math.Round((seen+offsetK+noiseK*rng.NormFloat64())/resK)*resK)
			next += everyMin / 60
		}
	}
	c := line(0, everyMin/60, vals...)
	return c, onH
}

func underThermostat(c series.Curve, hours float64) Input {
	in := one(c, series.Curve{}, span(0, hours))
	in.Loggers[0].Place, in.Loggers[0].TempErrK = "control", 0.5
	in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(-1, hours+1), OnC: 5, OffC: 4.5}}}}
	return in
}

// The truth is the simulation's own offset and hours, known before the review sees the curve.
func TestOffsetIsFoundFromTurningPoints(t *testing.T) {
	for _, row := range []struct {
		name                                                       string
		up, down, offset, lagMin, everyMin, noise, resK, tolerance float64
	}{
		{"ideal logger", 0.5, 1, 0, 0, 1, 0, 0.01, 0.02},
		{"reads 0.3 high", 0.5, 1, 0.3, 0, 1, 0, 0.01, 0.02},
		{"reads 0.3 low, 5 min", 0.5, 0.8, -0.3, 0, 5, 0, 0.1, 0.08},
		{"lag of 5 min, noise", 0.6, 0.9, 0.2, 5, 2, 0.02, 0.01, 0.08},
	} {
		const hours = 400
		c, onH := barnAir(hours, row.up, row.down, row.offset, row.lagMin, row.everyMin, row.noise, row.resK, 7)
		r := Judge(underThermostat(c, hours))
		if r.Offset.Evidence != WorkedOut {
			t.Errorf("%s: offset not estimated: %+v", row.name, r.Offset)
			continue
		}
		near(t, row.name+": offset", r.Offset.Mid, row.offset, row.tolerance)
		if row.offset < r.Offset.Low || row.offset > r.Offset.High {
			t.Errorf("%s: offset %v outside %v–%v", row.name, row.offset, r.Offset.Low, r.Offset.High)
		}
		w := r.Stages[0].Called
		if onH < w.Hours.Low || onH > w.Hours.High {
			t.Errorf("%s: true %.1f h outside %.1f–%.1f", row.name, onH, w.Hours.Low, w.Hours.High)
		}
	}
}

// A room that never cycles gives no turning points: the offset is nothing but the logger's error.
func TestOffsetWithoutTurningPointsIsAssumed(t *testing.T) {
	c := through(0, 400, 0.1, func(h float64) float64 { return 3 + 0.01*h/4 })
	f := Judge(underThermostat(c, 400)).Offset
	if f.Evidence != Assumed || f.Mid != 0 || f.Low != -0.5 || f.High != 0.5 {
		t.Errorf("%+v, want 0 ± 0.5 K, assumed", f)
	}
}

func TestOffsetThatBlursTheLadderIsRemarked(t *testing.T) {
	in := underThermostat(through(0, 100, 0.1, constant(4)), 100)
	in.Stages = append(in.Stages, Stage{Name: "three", Settings: []Setting{{Span: span(-1, 101), OnC: 5.9, OffC: 5.4}}})
	if !hasRemark(Judge(in).Remarks, "offset_half_stage_spacing") {
		t.Error("±0.5 K reaches half of a 0.9 K spacing: not remarked")
	}
	in.Loggers[0].TempErrK = 0.3
	if hasRemark(Judge(in).Remarks, "offset_half_stage_spacing") {
		t.Error("±0.3 K does not reach half of a 0.9 K spacing: remarked")
	}
}

func hasRemark(remarks []series.Remark, code string) bool {
	for _, r := range remarks {
		if r.Code == code {
			return true
		}
	}
	return false
}

// By hand: a fan set to 4.0/3.4 °C swings the air between the two, an hour up and an hour down, for 80 hours; the logger reads
// 0.45 K high, so that its maxima lie at 4.45 °C, nearer to the next fan's 4.6 than to 4.0. The first fan's record says
// which it was: 0.45 K, and half of the time called for.
func TestARecordSaysWhichFanTurnedTheAir(t *testing.T) {
	down := func(h float64) bool { return math.Mod(h, 2) >= 1 }
	air := func(h float64) float64 {
		part := math.Mod(h, 1)
		if down(h) {
			part = 1 - part
		}
		return 3.4 + 0.6*part + 0.45
	}
	in := one(through(0, 80, 1.0/12, air), series.Curve{}, span(0, 80))
	fan := func(name string, on, off float64) Stage {
		return Stage{Name: name, Settings: []Setting{{Span: span(-1000, 1000), OnC: on, OffC: off}}}
	}
	in.Stages = []Stage{fan("first", 4, 3.4), fan("second", 4.6, 4)}
	record := through(0, 80, 1, func(h float64) float64 {
		if down(h) {
			return 1
		}
		return 0
	})
	record.MaxStepMS = 1 << 60 // a list of changes
	in.Loggers = append(in.Loggers, Logger{Name: "relay", Place: "other", RecordsStage: "first", State: record})
	r := Judge(in)
	near(t, "offset", r.Offset.Mid, 0.45, 1e-6)
	near(t, "called", r.Stages[0].Called.Hours.Mid, 40, 1)
	if f := r.Stages[1].Called.Hours; f.High > 1 {
		t.Errorf("the second fan was never asked: %+v", f)
	}
	if a := r.Stages[0].Agreement; a == nil || a.UnansweredMS+a.UncalledMS > hourMS {
		t.Errorf("rule and record agree: %+v", a)
	}
}

// By hand: two fans, set to 4.0/3.4 and 4.6/4.0 °C, swing the air between 4.9 and 6.1 °C by 1.2 K/h: the logger reads 1.5 K
// above the thermostat, as the records of both say, and the fans are called for when they run. Where only one has a record,
// or the other runs 2.2 K above its limits, another rule may have run them: nothing is known.
func TestRecordsOfTwoFansShowAThermostatFarOff(t *testing.T) {
	air := func(h float64) float64 { return 6.1 - 1.2*math.Abs(math.Mod(h, 2)-1) }
	ran := func(onC, offC float64) Logger { // on from where it rises through onC to where it falls through offC
		var on []series.Span
		for k := 0.0; k < 80; k += 2 {
			on = append(on, span(k+1-(6.1-onC)/1.2, k+1+(6.1-offC)/1.2))
		}
		return recordOver("", 80, on...)
	}
	for _, c := range []struct {
		name     string
		records  [][2]float64
		secondOn float64
		want     float64
		by       Evidence
	}{
		{"both", [][2]float64{{5.5, 4.9001}, {6.1, 5.5}}, 4.6, 1.5, WorkedOut},
		{"one", [][2]float64{{5.5, 4.9001}}, 4.6, 0, Assumed},
		{"apart", [][2]float64{{5.5, 4.9001}, {6.1, 5.5}}, 3.9, 0, Assumed}, // the second runs 2.2 K above what it is set to
	} {
		in := one(through(0, 80, 1.0/12, air), series.Curve{}, span(0, 80))
		in.Stages = []Stage{
			{Name: "first", Settings: []Setting{{Span: span(-1000, 1000), OnC: 4, OffC: 3.4}}},
			{Name: "second", Settings: []Setting{{Span: span(-1000, 1000), OnC: c.secondOn, OffC: c.secondOn - 0.6}}},
		}
		for i, limits := range c.records {
			l := ran(limits[0], limits[1])
			l.Name, l.RecordsStage = in.Stages[i].Name+" relay", in.Stages[i].Name
			in.Loggers = append(in.Loggers, l)
		}
		r := Judge(in)
		if r.Offset.Evidence != c.by || math.Abs(r.Offset.Mid-c.want) > 0.05 {
			t.Errorf("%s: offset %+v, want %v %s", c.name, r.Offset, c.want, c.by)
		}
		if c.by == WorkedOut {
			near(t, "called of two hours", r.Stages[0].Called.Hours.Mid, r.Stages[0].Ran.Hours.Mid, 4)
		}
	}
}

// By hand: three fans set to 4.0/3.4, 5.1/4.5 and 6.2/5.6 °C swing the air between their limits, the first 60 times, the second
// 40 and the third 25 times, an hour up and an hour down. Where the logger reads 1 K above or below the thermostat, two fans'
// swings lie 0.1 K from the limits of their neighbours; all three lie 1 K from their own. Swings as steep as a fan's half a
// kelvin under the lowest limits, 25 of them, change nothing.
func TestALadderThatIsOffByOneStageIsSeen(t *testing.T) {
	for _, c := range []struct {
		overK float64
		below int
	}{{0, 0}, {1, 0}, {-1, 0}, {0, 25}, {1, 25}} {
		var lows []float64
		for _, s := range []struct {
			offC  float64
			times int
		}{{3.4, 60}, {4.5, 40}, {5.6, 25}, {2.9, c.below}} {
			for range s.times {
				lows = append(lows, s.offC+c.overK)
			}
		}
		air := func(h float64) float64 {
			low := lows[min(int(h/2), len(lows)-1)]
			return low + 0.6*(1-math.Abs(math.Mod(h, 2)-1))
		}
		hours := float64(2 * len(lows))
		in := one(through(0, hours, 1.0/12, air), series.Curve{}, span(0, hours))
		for i, onC := range []float64{4, 5.1, 6.2} {
			in.Stages = append(in.Stages, Stage{Name: string(rune('a' + i)), Settings: []Setting{{Span: span(-1000, 1000), OnC: onC, OffC: onC - 0.6}}})
		}
		if r := Judge(in); r.Offset.Evidence != WorkedOut || math.Abs(r.Offset.Mid-c.overK) > 0.05 {
			t.Errorf("%+v: offset %+v", c, r.Offset)
		}
	}
}

// By hand: of the same ladder the first fan swings 25 times, the second 40 and the third 60 times, with a logger 1 K below the
// thermostat: 125 swings lie 1 K from their limits, and 100 of them 0.1 K from their neighbours'. Without heat it is the first;
// where heat is added, which may have made the 25 that lie lower, it may be either.
func TestALadderOffByOneStageMayBeAHeatersWork(t *testing.T) {
	for _, heated := range []bool{false, true} {
		var lows []float64
		for i, times := range []int{25, 40, 60} {
			for range times {
				lows = append(lows, 3.4+1.1*float64(i)-1)
			}
		}
		air := func(h float64) float64 {
			return lows[min(int(h/2), len(lows)-1)] + 0.6*(1-math.Abs(math.Mod(h, 2)-1))
		}
		hours := float64(2 * len(lows))
		in := one(through(0, hours, 1.0/12, air), series.Curve{}, span(0, hours))
		for i, onC := range []float64{4, 5.1, 6.2} {
			in.Stages = append(in.Stages, Stage{Name: string(rune('a' + i)), Settings: []Setting{{Span: span(-1000, 1000), OnC: onC, OffC: onC - 0.6}}})
		}
		want := -1.0
		if heated {
			in.Heats, want = []HeatSource{{Name: "heater", Kind: "heater"}}, 0.1
		}
		o := Judge(in).Offset
		near(t, "offset", o.Mid, want, 0.05)
		if holds := o.Low <= -0.95 && o.High >= 0.05; holds != heated {
			t.Errorf("heated %v: %+v", heated, o)
		}
	}
}

// By hand: a logger six minutes later than the thermostat, in a room that climbs by 1 K/h to a start and falls by 3 K/h to a
// stop, reads 0.1 K low at the one and 0.3 K high at the other. On average that is 0.1 K, though it reads right: its range
// must hold 0. The hours' ends allow for lateness by themselves.
func TestLatenessIsPartOfTheOffsetsRange(t *testing.T) {
	v := sight{stepK: 0.01}
	v.fit(slices.Repeat([]switching{{-0.1, 0.3}}, 30))
	near(t, "offset", v.offset.Mid, 0.1, 1e-9)
	if v.offset.Low > 0 {
		t.Errorf("range %v to %v, want 0 inside", v.offset.Low, v.offset.High)
	}
	near(t, "low end for the hours", v.shifts()[1], 0.1-0.005, 1e-9)
}

// By hand: a heater, not a fan, swings the air between 2.4 and 3.0 °C for a month, near the limits 3.6 and 2.9 of a fan that its
// record shows standing. The swings are no turning points of the fan's thermostat: its offset is not known, and nothing says
// that the fan was called for and did not run.
func TestAHeatersSwingsSayNothingOfAFan(t *testing.T) {
	air := func(h float64) float64 { return 2.4 + 0.6*math.Abs(math.Mod(h, 2)-1) }
	in := one(through(0, 720, 1.0/12, air), series.Curve{}, span(0, 720))
	in.Stages = []Stage{{Name: "fan", Settings: []Setting{{Span: span(-10, 800), OnC: 3.6, OffC: 2.9}}}}
	in.Loggers = append(in.Loggers, Logger{Name: "relay", Place: "other", RecordsStage: "fan", State: through(0, 720, 0.5, constant(0))})
	r := Judge(in)
	if r.Offset.Evidence != Assumed {
		t.Errorf("offset %+v, want assumed", r.Offset)
	}
	for _, f := range r.Findings {
		if f.Code == "stage_did_not_run" || f.Code == "thermostat_apart" {
			t.Errorf("%+v", f)
		}
	}
}
