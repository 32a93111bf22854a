package analysis

import (
	"testing"

	"thawbook/analysis/series"
)

// The one hygrometer hangs beside the thermostat: damp hours, wet walls and the dew point are those of the same barn with it
// in the room, and it is said. A room that reads humidity alone takes the temperature from there.
func TestARoomBorrowsWhatItsControlLoggerHas(t *testing.T) {
	own := walled(4, 0.9, -20, 0.8)
	wanted := Judge(own)
	in := walled(4, 0.9, -20, 0.8)
	control := in.Loggers[0]
	control.Name, control.Place = "thermostat", "control"
	in.Loggers[0].RelHum = series.Curve{}
	in.Loggers = append(in.Loggers, control)
	r := Judge(in)
	near(t, "damp hours", r.Verdict.Damp.Figure.Mid, wanted.Verdict.Damp.Figure.Mid, 1e-9)
	near(t, "wet hours", r.Surfaces[0].DewHours.Mid, wanted.Surfaces[0].DewHours.Mid, 1e-9)
	near(t, "most wet hours", r.Surfaces[0].DewHours.High, wanted.Surfaces[0].DewHours.High, 1e-9)
	near(t, "dew point", r.Traces.RoomDewC.Val[0], wanted.Traces.RoomDewC.Val[0], 1e-9)
	if !hasRemark(r.Remarks, "humidity_is_control") || hasRemark(wanted.Remarks, "humidity_is_control") {
		t.Errorf("%+v", r.Remarks)
	}
	in.Loggers[0].RelHum, in.Loggers[0].TempC = control.RelHum, series.Curve{}
	r = Judge(in)
	if r.Verdict.Held.State != Yes || !hasRemark(r.Remarks, "temperature_is_control") {
		t.Errorf("%+v %+v", r.Verdict.Held, r.Remarks)
	}
}

// A logger with a single reading beside one that reads every half hour: the room is known every half hour, by the one.
func TestASingleReadingMakesNoGrid(t *testing.T) {
	in := one(through(0, 100, 0.5, constant(4)), series.Curve{}, span(0, 100))
	in.Loggers = append(in.Loggers, Logger{Name: "dead", Place: "room", TempC: line(50, 1, 9)})
	r := Judge(in)
	near(t, "interval, min", float64(r.Traces.Room.Interval())/minuteMS, 30, 0)
	near(t, "held", r.Verdict.Held.Figure.Mid, 100, 0)
	near(t, "known", r.Coverage, 1, 1e-9)
}

// Four loggers of ±0.3 K that were each checked in ice are good to 0.3/√4 K together; one that was not, or that ran for half
// of the time, and the worst of them stands for all.
func TestErrorsOfLoggersCheckedApartEvenOut(t *testing.T) {
	winter := func(change func(l []Logger)) Review {
		in := one(through(0, 100, 0.5, constant(4)), series.Curve{}, span(0, 100))
		l := in.Loggers[0]
		l.TempErrK, l.TempApart = 0.3, true
		in.Loggers = []Logger{l, l, l, l}
		change(in.Loggers)
		return Judge(in)
	}
	near(t, "checked apart", winter(func([]Logger) {}).Traces.RoomErrK, 0.15, 1e-12)
	near(t, "one not", winter(func(l []Logger) { l[2].TempApart = false }).Traces.RoomErrK, 0.3, 0)
	near(t, "one for half of the time", winter(func(l []Logger) { l[2].TempC = l[2].TempC.Slice(span(0, 50)) }).Traces.RoomErrK, 0.3, 0)
}
