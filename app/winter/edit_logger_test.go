package winter

import "testing"

// What is set down of a clock is there, and what it was found to be ahead under the setting before holds no longer.
func TestALoggersClock(t *testing.T) {
	follows, slot := true, Slot{1, 0}
	moved := applied(t, sample(), MoveClock{slot, 60000})
	if l := moved.Barns[1].Loggers[0]; l.AheadMS != 60000 {
		t.Fatalf("%+v", l)
	}
	if same := applied(t, moved, SetClock{At: slot}); same.Barns[1].Loggers[0].AheadMS != 60000 {
		t.Error("a clock that was left as it was moved")
	}
	set := applied(t, moved, SetClock{slot, "+02:00", &follows, []Anchor{{10, 20}, {30, 41}}})
	if l := set.Barns[1].Loggers[0]; l.Zone != "+02:00" || !*l.FollowsDST || len(l.Anchors) != 2 || l.AheadMS != 0 {
		t.Errorf("%+v", l)
	}
	for _, e := range []Edit{SetClock{At: Slot{0, 9}}, SetClock{At: slot, Zone: "Nowhere"}, SetClock{At: slot, Anchors: []Anchor{{10, 20}, {10, 30}}}, SetClock{At: slot, Anchors: []Anchor{{10, 20}, {11, 20}}}, MoveClock{At: Slot{0, 9}}} {
		if _, err := e.Apply(sample()); err == nil {
			t.Errorf("%+v was taken", e)
		}
	}
}

func TestOddReadingsAreKeptAndAskedAgain(t *testing.T) {
	slot := Slot{1, 0}
	kept := applied(t, sample(), Keep{slot, []Exclusion{{1, 2, "stuck", OfTemperature}, {5, 6, "stuck", OfHumidity}}})
	if l := kept.Barns[1].Loggers[0]; len(l.Kept) != 2 || len(l.Exclusions) != 0 {
		t.Fatalf("%+v", l)
	}
	again := applied(t, kept, AskAgain{slot, "stuck", OfTemperature})
	if l := again.Barns[1].Loggers[0]; len(l.Kept) != 1 || l.Kept[0].Quantity != OfHumidity {
		t.Errorf("%+v", l)
	}
	for _, e := range []Edit{Keep{At: Slot{0, 9}}, AskAgain{slot, "stuck", ""}} {
		if _, err := e.Apply(kept); err == nil {
			t.Errorf("%+v was taken", e)
		}
	}
}

// Ice found a logger 0.3 K too warm once and 0.1 K another time: its mean offset is −0.2 K. Taken back, the other stays.
func TestChecksOfLoggers(t *testing.T) {
	zero, high, higher := 0.0, 0.1, 0.3
	one, two := Calibration{Method: "ice", SaidC: &higher, TrueC: &zero}, Calibration{Method: "ice", SaidC: &high, TrueC: &zero}
	slot := Slot{1, 0}
	both := applied(t, sample(), AddChecks{[]CheckOf{{slot, one}, {slot, two}, {Slot{OutdoorList, 0}, one}}})
	c, _, checkedC, checkedRelHum := both.Barns[1].Loggers[0].Offset()
	if c < -0.2001 || c > -0.1999 || !checkedC || checkedRelHum || len(both.Outdoor[0].Checks) != 1 {
		t.Errorf("%v %v %v", c, checkedC, checkedRelHum)
	}
	left := applied(t, both, RemoveChecks{[]CheckOf{{slot, one}, {Slot{OutdoorList, 0}, one}}})
	if c, _, _, _ := left.Barns[1].Loggers[0].Offset(); c != -0.1 || len(left.Outdoor[0].Checks) != 0 {
		t.Errorf("%v", c)
	}
	for _, e := range []Edit{AddChecks{[]CheckOf{{Slot{0, 9}, one}}}, RemoveChecks{[]CheckOf{{slot, one}}}} {
		if _, err := e.Apply(left); err == nil {
			t.Errorf("%+v was taken", e)
		}
	}
}

// Ice and salt tell of a logger by itself; another logger beside it, or an offset that was only said, does not.
func TestCheckedApart(t *testing.T) {
	v := 0.1
	ice, beside := Calibration{Method: "ice", SaidC: &v, TrueC: new(float64)}, Calibration{Method: "side by side", SaidC: &v, TrueC: new(float64)}
	salt := Calibration{Method: "salt", SaidRelHum: &v, TrueRelHum: &v}
	for name, c := range map[string]struct {
		l            Logger
		temp, relHum bool
	}{
		"never": {Logger{}, false, false}, "ice": {Logger{Checks: []Calibration{ice}}, true, false}, "both": {Logger{Checks: []Calibration{ice, salt}}, true, true},
		"beside": {Logger{Checks: []Calibration{beside}}, false, false}, "beside, and salt": {Logger{Checks: []Calibration{beside, salt}}, false, true}, "ice and beside": {Logger{Checks: []Calibration{ice, beside}}, false, false},
		"said": {Logger{OffsetC: 0.2, Checks: []Calibration{ice}}, false, false},
	} {
		if temp, relHum := c.l.CheckedApart(); temp != c.temp || relHum != c.relHum {
			t.Errorf("%s: %t, %t", name, temp, relHum)
		}
	}
}
