package desk_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// Two barns with all that can be compared keep to the schema, and every figure of theirs stands in it: what each had is their
// logs' arithmetic. North has 5 + 2 sin over the day, South 1 K less, ten days of it; North's stage is called for as it is 6 °C and
// until it is 5; 3 of North's 20 hives looked at were dead, and South has no count.
func TestTwoBarnsInJSON(t *testing.T) {
	plan := "[winter]\nname = \"Two\"\nzone = \"UTC\"\n"
	files := map[string]string{"out.csv": hourly("Time,Temp (°C)", 241, func(h int) string { return fmt.Sprintf("%.1f", float64(h%30)-20) })}
	for i, name := range []string{"North", "South"} {
		plan += strings.ReplaceAll(`[[barn]]
name = "NAME"
bees_in = 2026-01-01T00:00:00
bees_out = 2026-01-11T00:00:00
[[barn.stage]]
name = "first"
on_c = 6.0
off_c = 5.0
watts = 100
[[barn.surface]]
name = "NAME wall"
kind = "wall"
[[barn.logger]]
name = "NAME in"
files = ["NAME.csv"]
place = "room"
`, "NAME", name)
		files[name+".csv"] = hourly("Time,Temp (°C),Humidity (%)", 241, func(h int) string {
			wave := math.Sin(2 * math.Pi * float64(h) / 24)
			return fmt.Sprintf("%.3f,%.1f", 5-float64(i)+2*wave, 70+20*wave)
		})
	}
	plan = strings.Replace(plan, "[[barn.stage]]", "[[barn.note]]\nat = 2026-01-05T03:00:00\nkind = \"dead count\"\nvalue = 3\nof = 20\n[[barn.stage]]", 1)
	files["plan.toml"] = plan + "[[outdoor]]\nname = \"out\"\nfiles = [\"out.csv\"]\n"
	d := reviewed(t, files)
	if len(d.Pairs) != 1 || d.Pairs[0].A != "North" || d.Pairs[0].OverlapHours != 240 {
		t.Fatalf("%+v", d.Pairs)
	}
	p, mean := d.Pairs[0], d.SideBySide[0]
	if mean.Quantity != "air_temperature" || mean.Measure != "mean" || mean.Phase != nil || math.Abs(mean.Difference-1) > 1e-6 || mean.Verdict != "more" {
		t.Errorf("%+v", mean)
	}
	measures := map[string]bool{}
	for _, r := range d.SideBySide {
		measures[r.Quantity+" "+r.Measure] = true
	}
	for _, want := range []string{"relative_humidity mean", "dew_point mean", "surface_margin mean", "air_temperature hours_above", "air_temperature mean_at_equal_outdoor",
		"air_temperature mean_by_regression", "stage_called hours", "spells count"} {
		if !measures[want] {
			t.Errorf("there is no row %s", want)
		}
	}
	if len(p.Weather.Bins) == 0 || len(p.Weather.Stages) != 1 || len(p.Apart) != 10 || len(p.Exposures) == 0 || len(p.Totals) == 0 {
		t.Errorf("%d bins, %d stages, %d hours, %d exposures, %d totals", len(p.Weather.Bins), len(p.Weather.Stages), len(p.Apart), len(p.Exposures), len(p.Totals))
	}
	l := p.Losses
	if l.A.Dead == nil || *l.A.Dead != 3 || *l.A.Of != 20 || !l.A.Sample || l.B.Unknown == nil || *l.B.Unknown != "no_dead_count" || l.Difference != nil || l.Caution == "" {
		t.Errorf("%+v", l)
	}
}
