package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// Stage one always on at a measured 0.1 m³/s, stage two at a nameplate of 0.4, which moves 0.2 to 0.32; the room is
// warm for 50 of 100 h. One moves 0.1 × 360 000 s = 36 000 m³, two 36 000 to 57 600.
func airy() Input {
	in := one(through(0, 100, 0.5, func(h float64) float64 {
		if h < 50 {
			return 6
		}
		return 3
	}), series.Curve{}, span(0, 100))
	in.Loggers[0].TempErrK, in.Loggers[0].TempStepK = 0, 0
	all := span(-1, 101)
	in.VolumeM3 = ptr(120)
	in.Stages = []Stage{
		{Name: "one", Settings: []Setting{{Span: all, AlwaysOn: true, FlowLow: ptr(0.1), FlowHigh: ptr(0.1), FlowMeasured: true}}},
		{Name: "two", Settings: []Setting{{Span: all, OnC: 5, OffC: 4.5, FlowLow: ptr(0.4), FlowHigh: ptr(0.4)}}},
	}
	in.Loggers = append(in.Loggers, recordOver("two", 100, span(0, 50)))
	return in
}

func TestAirIsSharedByFlowAndHours(t *testing.T) {
	r := Judge(airy())
	first, second := r.Stages[0], r.Stages[1]
	near(t, "one moved", first.AirM3.Mid, 36000, 1e-6)
	near(t, "two moved at least", second.AirM3.Low, 36000, 1e-6)
	near(t, "two moved at most", second.AirM3.High, 57600, 1e-6)
	near(t, "two's share, 46 800 of 82 800", second.ShareOfAir.Mid, 46800.0/82800, 1e-9)
	near(t, "two's share at least", second.ShareOfAir.Low, 0.5, 1e-9)
	near(t, "two's share at most, 57 600 of 93 600", second.ShareOfAir.High, 57.6/93.6, 1e-9)
	near(t, "changes by one", first.AirChanges.Mid, 300, 1e-9)
	near(t, "changes an hour, 82 800 / 120 / 100", r.Air.ChangesPerHour.Mid, 6.9, 1e-9)
	// 120 m³ at 0.1 m³/s are 20 min; with two on, 0.3 to 0.42 m³/s, 6.7 to 4.8 min.
	near(t, "one change with one on", first.ChangeMinutes.Mid, 20, 1e-9)
	near(t, "one change with two on, at most", second.ChangeMinutes.High, 120/0.3/60, 1e-9)
	near(t, "one change with two on, at least", second.ChangeMinutes.Low, 120/0.42/60, 1e-9)
}

func TestAirWithoutFlowsOrVolumeIsUnknown(t *testing.T) {
	in := airy()
	in.VolumeM3 = nil
	in.Stages[1].Settings[0].FlowLow = nil
	r := Judge(in)
	if s := r.Stages[1]; s.ShareOfAir.OK || s.ShareOfAir.Unknown != "no_flow" || s.AirM3.OK || s.ChangeMinutes.OK {
		t.Errorf("no flow, yet %+v, %+v", s.ShareOfAir, s.AirM3)
	}
	if s := r.Stages[0]; !s.ShareOfAir.OK || s.AirChanges.Unknown != "no_volume" {
		t.Errorf("%+v, %+v", s.ShareOfAir, s.AirChanges)
	}
}

// Where the record of two is lost for 30 of its 50 h, the share is of the other 70 h: 20 h on.
func TestShareCountsOnlyHoursWhenEveryStageIsKnown(t *testing.T) {
	in := airy()
	in.Loggers[1].State = series.Curve{MaxStepMS: 25 * hourMS, Readings: series.Readings{At: []int64{0, 20 * hourMS, 50 * hourMS, 75 * hourMS, 100 * hourMS}, Val: []float64{1, 1, 0, 0, 0}}}
	s := Judge(in).Stages[1]
	// 0.26 × 20 h against 0.1 × 70 h.
	near(t, "share", s.ShareOfAir.Mid, 5.2/12.2, 1e-9)
}
