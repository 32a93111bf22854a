package analysis

import (
	"math"
	"testing"

	"thawbook/analysis/series"
)

// A fan of 2 m³/s and 100 W runs ten hours at half speed and ten at full. By the fan laws (half speed moves half the air
// and takes an eighth of the power, AMCA 201) that is 15 full hours of air, 108 000 m³, and 10 + 1.25 full hours of power,
// 1.125 kWh; at the power of 2.5 half speed takes 0.177 of it, 1.177 kWh in all.
func TestFanLaws(t *testing.T) {
	in := one(through(0, 40, 1, constant(4)), series.Curve{}, span(0, 40))
	volume, watts, flow := 600.0, 100.0, 2.0
	in.VolumeM3 = &volume
	in.Stages = []Stage{{Name: "two", Settings: []Setting{{Span: span(-1, 41), OnC: 5, OffC: 4.5, FlowLow: &flow, FlowHigh: &flow, FlowMeasured: true, Watts: &watts}}}}
	speed := func(h float64) float64 {
		switch {
		case h >= 10 && h < 20:
			return 0.5
		case h >= 20 && h < 30:
			return 1
		}
		return 0
	}
	record := recordOver("two", 40, span(10, 30))
	in.Loggers = append(in.Loggers, record)
	plain := Judge(in).Stages[0]
	near(t, "kWh without a record of speed", plain.KWh.Mid, 2, 1e-9)
	near(t, "air without a record of speed", plain.AirM3.Mid, 144000, 1e-6)
	if plain.Speed.OK || plain.Speed.Unknown != "no_speed_record" {
		t.Errorf("speed %+v without a record of it", plain.Speed)
	}

	in.Loggers[1].Speed = through(0, 40, 0.25, speed)
	r := Judge(in)
	row := r.Stages[0]
	near(t, "hours it ran", row.Ran.Hours.Mid, 20, 1e-9)
	near(t, "mean speed", row.Speed.Mid, 0.75, 1e-9)
	near(t, "air", row.AirM3.Mid, 108000, 1e-6)
	near(t, "kWh by the cube", row.KWh.Low, 1.125, 1e-9)
	near(t, "kWh by the power of 2.5", row.KWh.High, 1.1768, 1e-4)
	near(t, "the barn's air", r.Air.M3.Mid, 108000, 1e-6)
	near(t, "the barn's kWh", r.Power.KWh.Mid, row.KWh.Mid, 1e-9)
	near(t, "share of air", row.ShareOfAir.Mid, 1, 1e-9)
}

// Where the record of speed has a gap it says nothing.
func TestASpeedIsNotHeldAcrossAGap(t *testing.T) {
	p := period{time: stretches{span(0, 10)}, ran: seenBy([]segment{{0, 10 * hourMS, true}}, Recorded), speed: line(0, 1, 0.5, 0.5, math.NaN(), math.NaN(), math.NaN(), 0.5, 0.5)}
	near(t, "hours at full speed", p.atFullSpeed(p.time, 1), 1, 1e-9) // 0 to 1 and 5 to 6
}
