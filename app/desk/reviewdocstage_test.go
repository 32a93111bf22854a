package desk_test

import (
	"math"
	"strings"
	"testing"
)

const januaryPlan = `[winter]
name = "January"
zone = "UTC"
[[barn]]
name = "Alder"
bees_in = 2026-01-01T00:00:00
bees_out = 2026-01-31T00:00:00
[[barn.logger]]
name = "one"
files = ["one.csv"]
place = "room"
[[barn.stage]]
name = "first"
always_on = true
`

// onWithin is "on" within the hours, else "off".
func onWithin(h, from, to int) string {
	if h >= from && h < to {
		return "on"
	}
	return "off"
}

// A stage on 5/off 4.5 to 14 January, then 6/5.5, the room steady at 5.2: called for all the time, then never.
func TestSettingsAreJudgedOneByOneFromFiles(t *testing.T) {
	plan := januaryPlan + "[[barn.stage]]\nname = \"two\"\non_c = 5.0\noff_c = 4.5\n[[barn.stage]]\nname = \"two\"\nfrom = 2026-01-14T00:00:00\non_c = 6.0\noff_c = 5.5\n"
	d := reviewed(t, map[string]string{"plan.toml": plan, "one.csv": hourly("Time,Temp (°C)", 721, func(int) string { return "5.2" })})
	before, after := d.Barns[0].Stages[1].Called, d.Barns[0].Stages[2].Called
	if before.Duty == nil || *before.Duty != 1 || after.Duty == nil || *after.Duty != 0 {
		t.Errorf("before %v, after %v, want 1 and 0", before.Duty, after.Duty)
	}
}

// The top stage is called for 160 h from 5 January 04:00 and its record shows 12 h: both are shown, with the first
// date they part, as the fan stops at 16:00. Hourly readings place the edges to an hour.
func TestTheDateCallAndRecordPartFromFiles(t *testing.T) {
	plan := januaryPlan + "[[barn.stage]]\nname = \"top\"\non_c = 7.0\noff_c = 6.0\n[[barn.logger]]\nname = \"fan\"\nfiles = [\"fan.csv\"]\nplace = \"other\"\nrecords_stage = \"top\"\n"
	d := reviewed(t, map[string]string{
		"plan.toml": plan,
		"one.csv": hourly("Time,Temp (°C)", 721, func(h int) string {
			if h >= 100 && h < 260 {
				return "9.0"
			}
			return "4.0"
		}),
		"fan.csv": hourly("Time,Fan", 721, func(h int) string { return onWithin(h, 100, 112) }),
	})
	top := d.Barns[0].Stages[1]
	if math.Abs(*top.Called.Hours-160) > 1 || *top.Ran.Hours != 12 {
		t.Errorf("called for %v h, ran %v h", *top.Called.Hours, *top.Ran.Hours)
	}
	a := top.Agreement
	if a == nil || a.FirstParted == nil || !strings.HasPrefix(*a.FirstParted, "2026-01-05T16:00") || *a.Parted != "called_not_run" {
		t.Errorf("agreement %+v", a)
	}
}

// A pump wired with stage two and solar heat for 140 h, 71 of them with stage three on.
func TestHeatAgainstFansFromFiles(t *testing.T) {
	plan := strings.Replace(januaryPlan, "2026-01-31", "2026-02-20", 1) + `[[barn.stage]]
name = "two"
on_c = 5.0
off_c = 4.5
[[barn.stage]]
name = "three"
on_c = 7.0
off_c = 6.0
[[barn.heat]]
name = "pump"
kind = "recovery"
into = "floor"
with_stage = "two"
[[barn.heat]]
name = "sun"
kind = "solar"
`
	for _, name := range []string{"two", "three", "sun"} {
		plan += "[[barn.logger]]\nname = \"" + name + " log\"\nfiles = [\"" + name + ".csv\"]\nplace = \"other\"\nrecords_stage = \"" + name + "\"\n"
	}
	d := reviewed(t, map[string]string{
		"plan.toml": plan,
		"one.csv":   hourly("Time,Temp (°C)", 1201, func(int) string { return "5.6" }),
		"two.csv":   hourly("Time,Two", 1201, func(h int) string { return onWithin(h, 10, 910) }),
		"three.csv": hourly("Time,Three", 1201, func(h int) string { return onWithin(h, 500, 571) }),
		"sun.csv":   hourly("Time,Sun", 1201, func(h int) string { return onWithin(h, 431, 571) }),
	})
	pump, sun := d.Barns[0].Heats[0], d.Barns[0].Heats[1]
	if *pump.Ran.Hours != 900 || *pump.Ran.Evidence != "worked_out" || *pump.OverlapHours != 71 {
		t.Errorf("pump ran %v h by %v, against fans %v", *pump.Ran.Hours, *pump.Ran.Evidence, *pump.OverlapHours)
	}
	if *sun.Ran.Hours != 140 || *sun.OverlapHours != 71 || len(sun.Against) != 1 || sun.Against[0].Stage != "three" {
		t.Errorf("sun ran %v h, against fans %v, %+v", *sun.Ran.Hours, *sun.OverlapHours, sun.Against)
	}
}
