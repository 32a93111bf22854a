package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// A ladder of four and a room on steps, so that every hour can be counted by hand: 900 h at 5.5 °C (stage 2 on),
// of the last 200 h 71 h at 6.5 °C (stages 2 and 3), else 3 °C.
func laddered(hours float64) Input {
	in := one(through(0, hours, 0.5, func(h float64) float64 {
		switch {
		case h >= 829 && h < 900:
			return 6.5
		case h < 900:
			return 5.5
		}
		return 3
	}), series.Curve{}, span(0, hours))
	in.Loggers[0].TempErrK, in.Loggers[0].TempStepK = 0, 0
	all := span(-1, hours+1)
	in.Stages = []Stage{
		{Name: "one", Settings: []Setting{{Span: all, AlwaysOn: true}}},
		{Name: "two", Settings: []Setting{{Span: all, OnC: 5, OffC: 4.5}}},
		{Name: "three", Settings: []Setting{{Span: all, OnC: 6, OffC: 5.6}}},
		{Name: "four", Settings: []Setting{{Span: all, OnC: 7, OffC: 6.6}}},
	}
	return in
}

// recordOver is a list of changes: on within the spans, off before and after.
func recordOver(name string, hours float64, on ...series.Span) Logger {
	c := series.Curve{MaxStepMS: 1 << 62}
	add := func(at int64, v float64) {
		c.Readings.At, c.Val = append(c.Readings.At, at), append(c.Val, v)
	}
	add(-hourMS, 0)
	for _, s := range on {
		add(s.From, 1)
		add(s.To, 0)
	}
	add(int64(hours*hourMS), 0)
	return Logger{Name: name + " record", Place: "other", RecordsStage: name, State: c}
}

// A recovery pump wired with stage two, 900 h; solar heat on its own for 140 h, 71 of them while stage three is on.
// Straight lines between half-hourly readings move each edge by less than half an hour.
func TestHeatFoughtFansForTheHoursOfTheStageAbove(t *testing.T) {
	in := laddered(2000)
	in.Heats = []HeatSource{{Name: "pump", Kind: "recovery", WithStage: "two", Into: "floor"}, {Name: "sun", Kind: "solar"}, {Name: "floor", Kind: "floor"}}
	in.Loggers = append(in.Loggers, recordOver("sun", 2000, span(760, 900)))
	r := Judge(in)
	pump, sun, floor := r.Heats[0], r.Heats[1], r.Heats[2]
	near(t, "the pump goes with its stage", pump.Called.Hours.Mid, 900, 0.5)
	if pump.Ran != nil || pump.Called.Hours.Evidence != WorkedOut {
		t.Errorf("the pump has no record: ran %+v, called %+v", pump.Ran, pump.Called.Hours)
	}
	near(t, "the pump against three", pump.Overlap.Mid, 71, 0.5)
	near(t, "sun ran", sun.Ran.Hours.Mid, 140, 1e-9)
	near(t, "sun against three", sun.Overlap.Mid, 71, 0.5)
	if len(sun.Against) != 2 || sun.Against[0].Stage != "three" || sun.Against[1].Hours.Mid != 0 {
		t.Errorf("against %+v, want three and four", sun.Against)
	}
	if sun.Overlap.Evidence != WorkedOut {
		t.Errorf("the stage has no record, yet %q", sun.Overlap.Evidence)
	}
	if floor.Overlap.OK || floor.Overlap.Unknown != "no_record" || floor.Ran != nil || floor.Called != nil {
		t.Errorf("nothing shows when the floor ran: %+v", floor)
	}
}

// With no source wired to a stage, heat on its own fights the first thermostat stage too.
func TestHeatAloneFightsEveryThermostatStage(t *testing.T) {
	in := laddered(2000)
	in.Heats = []HeatSource{{Name: "sun", Kind: "solar"}}
	in.Loggers = append(in.Loggers, recordOver("sun", 2000, span(760, 910)), recordOver("two", 2000, span(0, 700), span(860, 905)))
	in.Loggers = append(in.Loggers, recordOver("three", 2000, span(895, 920)), recordOver("four", 2000))
	sun := Judge(in).Heats[0]
	near(t, "860 to 910, all recorded", sun.Overlap.Mid, 50, 1e-9)
	near(t, "against two", sun.Against[0].Hours.Mid, 45, 1e-9)
	if sun.Overlap.Evidence != Recorded {
		t.Errorf("evidence %q, want recorded", sun.Overlap.Evidence)
	}
}

// A source's own record goes before that of its stage; without it the stage's record tells, worked out.
func TestAWiredSourceRanAsItsStageDid(t *testing.T) {
	in := laddered(2000)
	in.Heats = []HeatSource{{Name: "pump", Kind: "recovery", WithStage: "two", Into: "water"}}
	in.Loggers = append(in.Loggers, recordOver("two", 2000, span(100, 400)))
	pump := Judge(in).Heats[0]
	near(t, "as the stage", pump.Ran.Hours.Mid, 300, 1e-9)
	if pump.Ran.Hours.Evidence != WorkedOut {
		t.Errorf("evidence %q, want worked out", pump.Ran.Hours.Evidence)
	}
	in.Loggers = append(in.Loggers, recordOver("pump", 2000, span(100, 150)))
	pump = Judge(in).Heats[0]
	if pump.Ran.Hours.Mid != 50 || pump.Ran.Hours.Evidence != Recorded {
		t.Errorf("%+v, want its own 50 h", pump.Ran.Hours)
	}
}

// Nothing is said of hours in which neither the stage nor its silence is known.
func TestUnknownHoursAreNoOverlap(t *testing.T) {
	in := laddered(2000)
	in.Heats = []HeatSource{{Name: "sun", Kind: "solar"}}
	in.Loggers[0].TempC = in.Loggers[0].TempC.Slice(span(0, 800))
	in.Loggers = append(in.Loggers, recordOver("sun", 2000, span(760, 900)))
	sun := Judge(in).Heats[0]
	near(t, "known overlap, 760 to 799.5", sun.Overlap.Mid, 39.5, 1e-6)
	near(t, "known", float64(sun.KnownMS)/hourMS, 799.5, 1e-6)
}

// ε 0.65 at −20 °C outdoors and 4 °C inside brings the supply to −4.40 °C (ASHRAE 84 with equal flows); five kelvin
// of difference are no ground for a figure.
func TestEffectivenessOfIntakeAirRecovery(t *testing.T) {
	at := func(outC, supplyC float64, h HeatSource) Figure {
		in := one(through(0, 100, 0.5, constant(4)), series.Curve{}, span(0, 100))
		in.Loggers = append(in.Loggers,
			Logger{Name: "in", Place: "intake", TempC: through(0, 100, 0.5, constant(supplyC)), TempErrK: 0.5},
			Logger{Name: "out", Place: "outdoor", TempC: through(0, 100, 1, constant(outC)), TempErrK: 0.5})
		in.Stages = []Stage{{Name: "one", Settings: []Setting{{Span: span(-1, 101), AlwaysOn: true}}}}
		in.Heats = []HeatSource{h}
		return Judge(in).Heats[0].Effectiveness
	}
	air := HeatSource{Name: "core", Kind: "recovery", WithStage: "one", Into: "air"}
	f := at(-20, -4.4, air)
	near(t, "effectiveness", f.Mid, 0.65, 1e-9)
	// 0.5/24 × √(1 + 0.65² + 0.35²), by hand 0.0259.
	near(t, "half-width", (f.High-f.Low)/2, 0.0259, 1e-4)
	if f := at(-1, 2.25, air); f.OK || f.Unknown != "too_few_cold_hours" {
		t.Errorf("5 K of difference gave %+v", f)
	}
	air.Into = "floor"
	if f := at(-20, -4.4, air); f.OK || f.Unknown != "not_into_intake_air" {
		t.Errorf("a recovery into the floor has no supply air: %+v", f)
	}
}

// A mixing fan is no stage: it runs by its record alone, 250 W for 48 h are 12 kWh, at 0.15 a kWh 1.80.
func TestMixingFansRunByTheirRecord(t *testing.T) {
	in := laddered(2000)
	price := 0.15
	in.PricePerKWh, in.Currency = &price, "CAD"
	in.Mixing = []MixingFan{{Name: "stirrer", Span: span(-1, 3000), Watts: ptr(250)}, {Name: "other", Span: span(-1, 3000), Watts: ptr(250)}}
	in.Loggers = append(in.Loggers, recordOver("stirrer", 2000, span(100, 148)))
	r := Judge(in)
	near(t, "hours", r.Mixing[0].Ran.Hours.Mid, 48, 1e-9)
	near(t, "kWh", r.Mixing[0].KWh.Mid, 12, 1e-9)
	near(t, "cost", r.Mixing[0].Cost.Mid, 1.8, 1e-9)
	near(t, "all there is to add up", r.Power.Cost.Mid, 1.8, 1e-9)
	if r.Mixing[1].Ran != nil || r.Mixing[1].KWh.OK || len(r.Power.Without) != 5 {
		t.Errorf("no record, yet %+v; without %v", r.Mixing[1], r.Power.Without)
	}
}
