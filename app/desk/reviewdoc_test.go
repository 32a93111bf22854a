package desk_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"context"

	"thawbook/analysis/series"
	"thawbook/app/desk"
	"thawbook/app/engine"
)

// reviewed writes a plan and its files into a folder of their own and reviews it.
func reviewed(t *testing.T, files map[string]string) desk.ReviewDoc {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r, err := engine.ReviewFile(context.Background(), filepath.Join(dir, "plan.toml"), nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.SetSideBySide(context.Background()); err != nil {
		t.Fatal(err)
	}
	d := desk.ReviewDocument(r, desk.Program{Version: "test", TZData: "test"})
	holdTo(t, "review.schema.json", d)
	return d
}

// hourly is a log of n hours from 1 January 2026, a cell per column.
func hourly(header string, n int, cells func(h int) string) string {
	var b strings.Builder
	b.WriteString(header + "\n")
	for h := range n {
		b.WriteString(time.Date(2026, 1, 1, h, 0, 0, 0, time.UTC).Format("2006-01-02 15:04,") + cells(h) + "\n")
	}
	return b.String()
}

const thinPlan = `[winter]
name = "Thin"
zone = "UTC"
[[barn]]
name = "Alder"
bees_in = 2026-01-01T00:00:00
bees_out = 2026-01-11T00:00:00
[[barn.logger]]
name = "one"
files = ["one.csv"]
place = "room"
`

// A file that was refused is named with the reason and, where there is something to do, with that.
func TestARefusedFileIsTold(t *testing.T) {
	d := reviewed(t, map[string]string{"plan.toml": thinPlan + "[[barn.logger]]\nname = \"two\"\nfiles = [\"two.csv\"]\nplace = \"room\"\n", "one.csv": ""})
	var said []string
	for _, r := range d.Remarks {
		if r.Code == engine.FileRefused {
			said = append(said, r.Text[:len("Left out: ")]+r.Text[strings.LastIndex(r.Text, "/")+1:])
		}
	}
	if want := []string{"Left out: one.csv is empty; read the logger out again.", "Left out: two.csv does not exist."}; !slices.Equal(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
}

// What one thermometer can't tell is null, never 0.
func TestAThinWinterSaysNullWhereItCannotTell(t *testing.T) {
	d := reviewed(t, map[string]string{"plan.toml": thinPlan, "one.csv": hourly("Time,Temp (°C)", 241, func(int) string { return "4.0" })})
	b := d.Barns[0]
	if b.Verdict.Held.State != "yes" || b.Verdict.Damp.State != "unknown" || b.Verdict.Damp.Figure != nil || b.Verdict.Fans.Figure != nil {
		t.Errorf("verdict %+v", b.Verdict)
	}
	if b.HiveDays != nil || len(b.Surfaces) != 0 || len(b.Stages) != 0 || b.Coverage != 1 {
		t.Errorf("hive-days %v, %d surfaces, %d stages, coverage %v", b.HiveDays, len(b.Surfaces), len(b.Stages), b.Coverage)
	}
	lacking := map[string]string{"dew_point": "no_humidity", "surface_margin": "no_surface"}
	for _, q := range b.Quantities {
		if why := lacking[q.Quantity]; q.Quantity != "air_temperature" && (q.Mean != nil || q.Unknown == nil || *q.Unknown != why) {
			t.Errorf("a thermometer has no %s: %+v", q.Quantity, q)
		}
	}
	if *b.BeesIn != "2026-01-01T00:00:00Z" {
		t.Errorf("bees in %s", *b.BeesIn)
	}
}

// The plan adds a ladder, a wall and weather; every key of the contract is there and holds to the schema.
func TestARichWinterHoldsToTheSchema(t *testing.T) {
	plan := thinPlan + `[[barn.logger]]
name = "fan"
files = ["fan.csv"]
place = "other"
records_stage = "two"
[[barn.stage]]
name = "first"
always_on = true
watts = 100
[[barn.stage]]
name = "two"
on_c = 5.0
off_c = 4.5
[[barn.heat]]
name = "floor"
kind = "floor"
[[barn.surface]]
name = "north wall"
kind = "wall"
factor = 0.8
[[barn.heads]]
at = 2026-01-01T00:00:00
change = 100
[[outdoor]]
name = "yard"
files = ["yard.csv"]
place = "outdoor"
`
	d := reviewed(t, map[string]string{
		"plan.toml": plan,
		"one.csv": hourly("Time,Temp (°C),RH (%)", 241, func(h int) string {
			if h%10 < 5 {
				return "5.5,85"
			}
			return "4.0,85"
		}),
		"yard.csv": hourly("Time,Temp (°C)", 241, func(int) string { return "-20" }),
		"fan.csv": hourly("Time,Fan two", 241, func(h int) string {
			if h%10 < 5 {
				return "on"
			}
			return "off"
		}),
	})
	b := d.Barns[0]
	if *b.HiveDays != 1000 {
		t.Errorf("100 hives for 10 days: %v hive-days", *b.HiveDays)
	}
	if len(b.Stages) != 2 || b.Stages[0].KWh == nil || *b.Stages[0].KWh != 24 {
		t.Fatalf("stages %+v", b.Stages)
	}
	two := b.Stages[1]
	if two.Ran == nil || *two.Ran.Hours != 120 || *two.Ran.Starts != 23 || *two.Ran.MedianRunMin != 300 {
		t.Errorf("half of 240 h in runs of 5 h, the first already on: %+v", two.Ran)
	}
	if two.Called == nil || two.Called.Low == nil || *two.Called.Low > 120 || *two.Called.High < 110 {
		t.Errorf("called for %+v", two.Called)
	}
	// With 85 % at 4 °C a wall needs a factor of 0.905 at −20 °C (Hyland–Wexler): at 0.8 it is wet throughout.
	wall := b.Surfaces[0]
	if wet := *wall.DewHours.Mid + *wall.FrostHours.Mid; wet != 240 {
		t.Errorf("wet for %v of 240 h", wet)
	}
	if len(b.Heats) != 1 || b.Heats[0].Ran != nil {
		t.Errorf("heat source without a record: %+v", b.Heats)
	}
}

// Every note that the packages below can leave has a sentence of its own.
func TestEveryNoteHasASentence(t *testing.T) {
	codes := map[string]int{}
	for _, file := range []string{"../../analysis/judge.go", "../engine/clock.go", "../engine/join.go", "../engine/merge.go", "../engine/plausible.go", "../engine/setdown.go"} {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range regexp.MustCompile(`(?m)^\s*(?:\w+\s+= |\{)"([a-z_]+)"(.*)$`).FindAllStringSubmatch(string(text), -1) {
			codes[m[1]] = argsOf(file, m[2])
		}
	}
	if len(codes) < 20 {
		t.Fatalf("only %d codes found", len(codes))
	}
	for code, args := range codes {
		var named []string
		for i := range args {
			named = append(named, "argument "+strconv.Itoa(i+1))
		}
		text := desk.ReviewNote(series.Remark{Code: code, Args: named})
		if strings.HasPrefix(text, strings.ReplaceAll(code, "_", " ")) || strings.Contains(text, "%") && !strings.Contains(text, "argument") {
			t.Errorf("%s with %d arguments: %q", code, args, text)
		}
	}
}

// Figures of doubts come with the unit of their quantity.
func TestDoubtsHaveUnits(t *testing.T) {
	for _, c := range []struct {
		code string
		args []string
		want string
	}{
		{engine.DoubtStuck, []string{"one", "temperature", "4.1", "96"}, "stood at 4.1 °C for 96 h"},
		{engine.DoubtStuck, []string{"one", "humidity", "71", "96"}, "stood at 71 % for 96 h"},
		{engine.DoubtDrift, []string{"one", "humidity", "-7"}, "by -7 points in all"},
		{engine.DoubtDriftOfTwo, []string{"one", "two", "temperature", "1.2"}, "changed by 1.2 K against"},
		{engine.DoubtSaturated, []string{"one", "36"}, "at 100 % for 36 h"},
	} {
		if text := desk.ReviewNote(series.Remark{Code: c.code, Args: c.args}); !strings.Contains(text, c.want) {
			t.Errorf("%q does not say %q", text, c.want)
		}
	}
}

// argsOf counts the arguments a code's line documents: those of the clock are a logger and a file; those of
// a merge begin with the logger.
func argsOf(file, rest string) int {
	switch {
	case strings.HasSuffix(file, "judge.go"):
		return 0
	case strings.HasSuffix(file, "clock.go"):
		return 2 + strings.Count(rest, "Args: ")
	}
	_, list, _ := strings.Cut(rest, "Args: ")
	n := strings.Count(list, ",") + 1
	if strings.HasSuffix(file, "merge.go") {
		n++
	}
	return n
}

// Nothing that JSON can't say: NaN or an infinity would fail to encode.
func TestReviewEncodes(t *testing.T) {
	d := reviewed(t, map[string]string{"plan.toml": thinPlan, "one.csv": "Time,Temp (°C)\n2025-06-01 00:00,4\n2025-06-01 01:00,4\n"})
	if _, err := json.Marshal(d); err != nil {
		t.Error(err)
	}
	if b := d.Barns[0]; b.Coverage != 0 || b.Verdict.Held.State != "unknown" {
		t.Errorf("nothing recorded in the bees' time: %+v", b.Verdict.Held)
	}
}
