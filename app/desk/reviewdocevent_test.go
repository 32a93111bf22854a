package desk_test

import (
	"fmt"
	"strings"
	"testing"

	"thawbook/app/desk"
)

// The house's worked alarm, from files: a degree an hour from 4 °C at midnight to 9.5 °C, a call logged at 05:10. It passed
// 8 °C at 04:00; the call was due at 04:30 and came 40 minutes late. At 7 °C it would have been due at 03:30. The noted
// power cut has the log's own climb, and the light is told by its hours.
func TestAlarmsAndEventsFromFiles(t *testing.T) {
	plan := strings.Replace(thinPlan, "bees_out = 2026-01-11T00:00:00", "bees_out = 2026-01-01T05:30:00", 1)
	plan = strings.Replace(plan, "[[barn.logger]]", `[[barn.note]]
at = 2026-01-01T05:10:00
kind = "alarm call"
text = "phone rang"
[[barn.note]]
at = 2026-01-01T00:30:00
until = 2026-01-01T05:30:00
kind = "power cut"
[[barn.logger]]`, 1)
	var log strings.Builder
	log.WriteString("Time,Temp (°C),Light (lux)\n")
	for i := range 12 {
		lux := 0
		if i == 4 {
			lux = 30
		}
		fmt.Fprintf(&log, "2026-01-01 %02d:%02d,%.1f,%d\n", i/2, 30*(i%2), 4+float64(i)/2, lux)
	}
	b := reviewed(t, map[string]string{"plan.toml": plan, "one.csv": log.String()}).Barns[0]
	first, second := b.Alarms[0], b.Alarms[1]
	if first.Limit != 8 || first.DelayMin != 30 || first.Side != "above" || *first.Calls != 1 || len(first.Due) != 1 || *first.Missed != 0 {
		t.Fatalf("%+v", first)
	}
	call := first.Due[0]
	if call.Crossed != "2026-01-01T04:00:00Z" || call.Due != "2026-01-01T04:30:00Z" || *call.Logged != "2026-01-01T05:10:00Z" || *call.LateMin != 40 {
		t.Errorf("%+v", call)
	}
	if second.Limit != 7 || second.Due[0].Due != "2026-01-01T03:30:00Z" {
		t.Errorf("%+v", second)
	}
	cut, light := eventOf(t, b, "power cut"), eventOf(t, b, "light")
	if !cut.Noted || cut.Evidence != "your_setting" || *cut.Figures["climb_k"] != 5 || *cut.Figures["first_hour_k_per_h"] != 1 || *cut.Figures["later_k_per_h"] < 0.999 {
		t.Errorf("%+v", cut)
	}
	if *cut.Figures["hours_to_alarm_h"] != 3.5 || cut.Figures["outdoors_c"] != nil {
		t.Errorf("from 4.5 °C at 00:30 to 8 °C at 04:00, and no weather: %+v", cut.Figures)
	}
	if light.Place != "room" || *light.Figures["peak_lux"] != 30 {
		t.Errorf("%+v", light)
	}
}

func eventOf(t *testing.T, b desk.BarnDoc, kind string) desk.EventDoc {
	t.Helper()
	for _, e := range b.Events {
		if e.Kind == kind {
			return e
		}
	}
	t.Fatalf("no %s among %+v", kind, b.Events)
	return desk.EventDoc{}
}
