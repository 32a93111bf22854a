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
