package desk

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/app/engine"
)

// The tasks a keeper brings after takeout, each from files to words. Logs are written here; what is expected is
// arithmetic a reader can follow, or the value named beside it.

// logOf is a log at equal steps in UTC: a header, then each instant with what cells gives for it.
func logOf(header, from string, days, stepMin float64, face string, cells func(at time.Time) string) string {
	var text strings.Builder
	text.WriteString(header + "\n")
	start, err := time.Parse("2006-01-02 15:04", from)
	if err != nil {
		panic(err)
	}
	for m := 0.0; m <= days*24*60; m += stepMin {
		at := start.Add(time.Duration(m * float64(time.Minute)))
		text.WriteString(at.Format(face) + "," + cells(at) + "\n")
	}
	return text.String()
}

const isoFace = "2006-01-02 15:04"

// judgedFiles reviews a winter from its plan and its files.
func judgedFiles(t *testing.T, plan string, files map[string]string) engine.Result {
	t.Helper()
	files["winter.toml"] = plan
	dir := folderOf(t, files)
	r, err := engine.ReviewFile(context.Background(), filepath.Join(dir, "winter.toml"), nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// folderOf is a folder with some files.
func folderOf(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func utcMS(t *testing.T, s string) int64 {
	t.Helper()
	at, err := time.Parse("2006-01-02 15:04", s)
	if err != nil {
		t.Fatal(err)
	}
	return at.UnixMilli()
}

func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(got >= want-tolerance && got <= want+tolerance) {
		t.Errorf("%s: %.6g, want %.6g ± %.2g", what, got, want, tolerance)
	}
}

const utcWinter = "[winter]\nname = \"Tasks\"\nzone = \"UTC\"\n[[barn]]\nname = \"Alder\"\n"

// One logger in °F, every 30 minutes, steady 40.1 °F and 82 %, and nothing else. Dew point by Magnus over water
// (WMO-No. 8): 4.5 °C and 82 % give 1.7 °C, 35.1 °F.
func TestOneCheapLoggerGetsAFullAnswer(t *testing.T) {
	r := judgedFiles(t, utcWinter+"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"room\"\n", map[string]string{
		"one.csv": logOf("Time,Temperature (°F),Humidity (%)", "2025-11-20 00:00", 100, 30, isoFace, func(time.Time) string { return "40.1,82.0" }),
	})
	if n := len(r.Files[0].Export.Questions); n > 2 {
		t.Errorf("%d questions, want two at most", n)
	}
	b := r.Barns[0]
	within(t, "dew point in °F", b.Traces.RoomDewC.Val[0]*1.8+32, 35, 0.2)
	all := strings.Join(textsOf(FirstLookOf(r.Inputs[0], b, Units{Temperature: Fahrenheit})), "\n")
	for _, want := range []string{"Anything colder than the dew point would have sweated: 35.1 °F", "What can't be told", "What would settle most"} {
		if !strings.Contains(all, want) {
			t.Errorf("lacks %q:\n%s", want, all)
		}
	}
	if b.Verdict.Held.State != analysis.Yes || b.Verdict.Fans.State != analysis.Unknown {
		t.Errorf("held %s, fans %s", b.Verdict.Held.State, b.Verdict.Fans.State)
	}
	if len(b.Surfaces)+len(b.Stages) > 0 {
		t.Error("no wall hours and no starts without a wall or a stage")
	}
}

// A logger that ran from 20 October in the house to 20 April: bees from 9 November to 7 April at 4 °C. The dates are
// read off the trace, and nothing else is scored.
func TestBeesTimeIsReadOffTheTrace(t *testing.T) {
	in, out := utcMS(t, "2025-11-09 12:00"), utcMS(t, "2026-04-07 12:00")
	r := judgedFiles(t, utcWinter+"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"room\"\n", map[string]string{
		"one.csv": logOf("Time,Temperature (°C),Humidity (%)", "2025-10-20 00:00", 182, 30, isoFace, func(at time.Time) string {
			if ms := at.UnixMilli(); ms >= in && ms < out {
				return "4.0,65.0"
			}
			return "20.0,40.0"
		}),
	})
	b := r.Barns[0]
	const dayMS = 24 * 3600 * 1000
	within(t, "bees in, days off", float64(b.BeesIn-in)/dayMS, 0, 1)
	within(t, "bees out, days off", float64(b.BeesOut-out)/dayMS, 0, 1)
	for _, q := range b.Quantities {
		if q.Quantity == "air_temperature" && q.Logger == "" && q.Phase == "" {
			within(t, "hours outside the good band", q.Bands[0].HoursAbove+q.Bands[0].HoursBelow, 0, 0)
		}
	}
}

// A stage on at 5 and off at 4.5 °C to 14 January, then 6 and 5.5; the room steady at 5.2 °C: called for all the
// time before and never after, each under its own setting.
func TestSettingsAreNeverBlended(t *testing.T) {
	plan := utcWinter + "bees_in = 2025-12-15\nbees_out = 2026-02-13\n" +
		"[[barn.stage]]\nname = \"two\"\non_c = 5.0\noff_c = 4.5\n[[barn.stage]]\nname = \"two\"\nfrom = 2026-01-14\non_c = 6.0\noff_c = 5.5\n" +
		"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"control\"\noffset_c = 0.0\n"
	r := judgedFiles(t, plan, map[string]string{
		"one.csv": logOf("Time,Temperature (°C)", "2025-12-15 00:00", 60, 10, isoFace, func(time.Time) string { return "5.20" }),
	})
	rows := r.Barns[0].Stages
	if len(rows) != 2 {
		t.Fatalf("%d rows, want one for each setting", len(rows))
	}
	within(t, "hours called for before", rows[0].Called.Hours.Mid, 30*24, 1e-6)
	within(t, "hours called for after", rows[1].Called.Hours.Mid, 0, 1e-6)
	within(t, "known after", float64(rows[1].Called.KnownMS), 30*24*3600*1000, 1)
}

// 600 in on 10 November 12:00, 150 out on 2 March 10:00 and back on 8 March 18:00, all out on 10 April 12:00: 89,650
// hive-days (house rules). Three pails swept when 600 are in are 0.5 per 100 hives.
func TestHeadCountAndSweepings(t *testing.T) {
	plan := utcWinter +
		"[[barn.heads]]\nat = 2025-11-10T12:00:00Z\nchange = 600\n[[barn.heads]]\nat = 2026-03-02T10:00:00Z\nchange = -150\n" +
		"[[barn.heads]]\nat = 2026-03-08T18:00:00Z\nchange = 150\n[[barn.heads]]\nat = 2026-04-10T12:00:00Z\nchange = -600\n" +
		"[[barn.note]]\nat = 2026-01-20\nkind = \"sweepings\"\nvalue = 3\nunit = \"pails\"\n" +
		"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"room\"\n"
	r := judgedFiles(t, plan, map[string]string{
		"one.csv": logOf("Time,Temperature (°C)", "2025-11-01 00:00", 165, 60, isoFace, func(time.Time) string { return "4.0" }),
	})
	within(t, "hive-days", r.Barns[0].HiveDays.Mid, 89650, 1e-6)
	text := plain(noted(r.Winter.Barns[0].Notes, r.Inputs[0].Heads, r.Barns[0], Units{}))
	if !strings.Contains(text, "20 January: sweepings, 3 pails (0.5 pails per 100 hives)") {
		t.Error(text)
	}
}

// No outdoor logger of one's own, but a weather station's hourly file in UTC and °F, 40 km off: taken, put on the
// barn's clock, and the wall's margin is a range. −4 °F is −20 °C; the barn's zone is six hours behind UTC.
func TestAWeatherStationServesAsOutdoors(t *testing.T) {
	plan := strings.Replace(utcWinter, "\"UTC\"", "\"America/Winnipeg\"", 1) + "bees_in = 2025-12-01\nbees_out = 2026-01-30\n" +
		"[[barn.surface]]\nname = \"north wall\"\nkind = \"wall\"\n" +
		"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"room\"\n" +
		"[[outdoor]]\nname = \"station\"\nfiles = [\"station.csv\"]\nstation_km = 40\n"
	cold := utcMS(t, "2026-01-10 06:00") // midnight of 10 January at the barn
	r := judgedFiles(t, plan, map[string]string{
		"one.csv": logOf("Time,Temperature (°C),Humidity (%)", "2025-12-01 00:00", 60, 15, isoFace, func(time.Time) string { return "4.0,70.0" }),
		"station.csv": logOf("Time (UTC),Temperature (°F),Relative humidity (%)", "2025-11-30 00:00", 64, 60, isoFace, func(at time.Time) string {
			if ms := at.UnixMilli(); ms >= cold && ms < cold+24*3600*1000 {
				return "-22.0,80"
			}
			return "23.0,80"
		}),
	})
	out := r.Barns[0].Traces.Outdoor
	v, known := out.At(cold + 12*3600*1000)
	if !known {
		t.Fatal("the station's air is not known")
	}
	within(t, "at noon of the cold day, °C", v, -30, 0.01)
	v, _ = out.At(cold - 2*3600*1000)
	within(t, "two hours before", v, -5, 0.01)
	row := r.Barns[0].Surfaces[0]
	// 4 °C and 70 % frost at −0.86 °C; a wall of factor 0.90 to 0.95 stands at 0.6 to 2.3 °C at −30 °C outside: dry in
	// the middle of the range, and the loggers' errors decide at its cold end.
	if !row.DewHours.OK || row.Factor.Low >= row.Factor.High || row.Factor.Evidence != analysis.Assumed {
		t.Errorf("%+v, want a range from an assumed factor", row)
	}
}

// 1 K an hour from 4 °C at 00:00 up to 9.5 °C, an alarm at 8 °C and 30 min, a call logged at 05:10: crossed at
// 04:00, due at 04:30, 40 min late; at 7 °C it would have been due at 03:30.
func TestTheAlarmWasLate(t *testing.T) {
	plan := utcWinter + "bees_in = 2026-01-10\nbees_out = 2026-01-12\n" +
		"[[barn.note]]\nat = 2026-01-11T05:10:00Z\nkind = \"alarm call\"\n" +
		"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"room\"\n"
	start := utcMS(t, "2026-01-11 00:00")
	r := judgedFiles(t, plan, map[string]string{
		"one.csv": logOf("Time,Temperature (°C)", "2026-01-10 00:00", 2, 10, isoFace, func(at time.Time) string {
			h := float64(at.UnixMilli()-start) / 3600000
			switch {
			case h < 0:
				return "4.000"
			case h < 5.5:
				return fmt.Sprintf("%.3f", 4+h)
			case h < 11:
				return fmt.Sprintf("%.3f", 9.5-(h-5.5))
			}
			return "4.000"
		}),
	})
	rows := r.Barns[0].Alarms
	for i, want := range []struct{ limitC, dueMin, lateMin float64 }{{8, 270, 40}, {7, 210, 100}} {
		if rows[i].Line.LimitC != want.limitC || rows[i].Line.DelayMin != 30 || len(rows[i].Due) != 1 {
			t.Fatalf("%+v, want one call at %g °C", rows[i], want.limitC)
		}
		within(t, "due, minutes after midnight", float64(rows[i].Due[0].Due-start)/60000, want.dueMin, 0.01)
		within(t, "crossed", float64(rows[i].Due[0].Crossed-start)/60000, want.dueMin-30, 0.01)
		late := rows[i].Due[0].Late()
		if !late.OK {
			t.Fatal("the logged call is not matched")
		}
		within(t, "minutes late", late.Mid, want.lateMin, 0.01)
	}
}

// The top stage recorded for 12 h and called for 160 h: both stand side by side and the difference comes first.
func TestTheTopStageThatHardlyRan(t *testing.T) {
	plan := utcWinter + "bees_in = 2025-12-01\nbees_out = 2026-01-30\n" +
		"[[barn.stage]]\nname = \"small\"\nalways_on = true\n[[barn.stage]]\nname = \"middle\"\non_c = 5.0\noff_c = 4.5\n[[barn.stage]]\nname = \"top\"\non_c = 7.0\noff_c = 6.5\n" +
		"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"control\"\n" +
		"[[barn.logger]]\nname = \"switch\"\nfiles = [\"switch.csv\"]\nplace = \"other\"\nrecords_stage = \"top\"\n"
	warm := utcMS(t, "2026-01-05 00:00")
	during := func(at time.Time, hours float64) bool {
		h := float64(at.UnixMilli()-warm) / 3600000
		return h >= 0 && h < hours
	}
	r := judgedFiles(t, plan, map[string]string{
		"one.csv": logOf("Time,Temperature (°C)", "2025-12-01 00:00", 60, 10, isoFace, func(at time.Time) string {
			if during(at, 160) {
				return "8.0"
			}
			return "4.0"
		}),
		"switch.csv": logOf("Time,Fan (on/off)", "2025-12-01 00:00", 60, 10, isoFace, func(at time.Time) string {
			if during(at, 12) {
				return "on"
			}
			return "off"
		}),
	})
	b := r.Barns[0]
	row := b.Stages[len(b.Stages)-1]
	if row.Called == nil || row.Ran == nil {
		t.Fatal("both must be shown")
	}
	within(t, "called for", row.Called.Hours.Mid, 160, 0.5)
	within(t, "ran", row.Ran.Hours.Mid, 12, 0.2)
	top := Findings(r.Inputs[0], b, Units{})[0]
	if !strings.HasPrefix(plain(top.Text), "Top was called for 160 h and ran for 12 h") {
		t.Errorf("first finding: %q", top.Text)
	}
}

// Nine days at 9 °C in November while the barn was being filled and two in March are told apart.
func TestWarmInNovemberAndInMarchAreTwoThings(t *testing.T) {
	plan := utcWinter +
		"[[barn.heads]]\nat = 2025-11-10T00:00:00Z\nchange = 300\n[[barn.heads]]\nat = 2025-11-19T00:00:00Z\nchange = 300\n[[barn.heads]]\nat = 2026-03-30T00:00:00Z\nchange = -600\n" +
		"[[barn.logger]]\nname = \"one\"\nfiles = [\"one.csv\"]\nplace = \"room\"\n"
	filled, march := utcMS(t, "2025-11-19 00:00"), utcMS(t, "2026-03-10 00:00")
	r := judgedFiles(t, plan, map[string]string{
		"one.csv": logOf("Time,Temperature (°C)", "2025-11-09 00:00", 142, 10, isoFace, func(at time.Time) string {
			if ms := at.UnixMilli(); ms < filled || ms >= march && ms < march+48*3600*1000 {
				return "9.0"
			}
			return "4.0"
		}),
	})
	all := strings.Join(textsOf(FirstLookOf(r.Inputs[0], r.Barns[0], Units{})), "\n")
	if want := "It was warmer than 6 °C for 264 h (216 h while filling, 48 h in late winter)"; !strings.Contains(all, want) {
		t.Errorf("lacks %q:\n%s", want, all)
	}
}

// A recovery pump into the floor, wired with a stage, ran 900 h and solar heat 140 h, 71 of them with the next stage on. The
// room was dry twice: for 160 h, all under the pump, the first 80 of them with the winter's driest air outside; and for 100 h
// after the pump had stopped, the last 50 of them with such air. Arithmetic on the hours below.
func TestFloorHeatAgainstTheFansInADryRoom(t *testing.T) {
	plan := utcWinter + `bees_in = 2026-01-01T00:00:00
bees_out = 2026-02-20T00:00:00
[[barn.logger]]
name = "mid"
files = ["mid.csv"]
place = "room"
[[barn.stage]]
name = "Stage 1"
always_on = true
[[barn.stage]]
name = "Stage 2"
on_c = 5.0
off_c = 4.5
[[barn.stage]]
name = "Stage 3"
on_c = 7.0
off_c = 6.0
[[barn.heat]]
name = "Pump"
kind = "recovery"
into = "floor"
with_stage = "Stage 2"
[[barn.heat]]
name = "Sun"
kind = "solar"
`
	files := map[string]string{}
	log := func(name, header string, cells func(h int) string) {
		from := utcMS(t, "2026-01-01 00:00")
		files[name+".csv"] = logOf(header, "2026-01-01 00:00", 50, 60, isoFace, func(at time.Time) string { return cells(int(at.UnixMilli()-from) / 3_600_000) })
	}
	for name, on := range map[string][2]int{"Stage 2": {10, 910}, "Stage 3": {500, 571}, "Sun": {431, 571}} {
		plan += "[[barn.logger]]\nname = \"" + name + " log\"\nfiles = [\"" + name + ".csv\"]\nplace = \"other\"\nrecords_stage = \"" + name + "\"\n"
		log(name, "Time,Running", func(h int) string { return map[bool]string{true: "on", false: "off"}[on[0] <= h && h < on[1]] })
	}
	plan += "[[outdoor]]\nname = \"out\"\nfiles = [\"out.csv\"]\nplace = \"outdoor\"\n"
	log("mid", "Time,Temp (°C),RH (%)", func(h int) string {
		temp, hum := "5.6", "55"
		if 500 <= h && h < 571 {
			temp = "7.5"
		}
		if 400 <= h && h < 560 || 950 <= h && h < 1050 {
			hum = "32"
		}
		return temp + "," + hum
	})
	log("out", "Time,Temp (°C),RH (%)", func(h int) string {
		if 300 <= h && h < 480 || 1000 <= h && h < 1100 { // 280 of 1,200 h, less than a quarter
			return "-15,80"
		}
		return "-4,85"
	})
	judged := judgedFiles(t, plan, files)
	in, r := judged.Inputs[0], judged.Barns[0]
	if len(r.Dryness) != 2 {
		t.Fatalf("%d dry stretches", len(r.Dryness))
	}
	for i, want := range [][4]float64{{80, 0, 80, 0}, {0, 50, 0, 50}} {
		d := r.Dryness[i]
		for k, f := range []analysis.Figure{d.HeatHours, d.WeatherHours, d.BothHours, d.NeitherHours} {
			within(t, fmt.Sprintf("stretch %d, heat, weather, both, neither: %d", i, k), f.Mid, want[k], 1)
		}
	}
	for _, f := range r.Findings {
		if want := map[string]float64{"dry_with_outdoor_dry": 80 + 50, "dry_with_heat_on": 560 - 431}[f.Code]; want > 0 {
			within(t, f.Code, f.Figure("hours_with").Mid, want, 2)
		}
	}
	said := ""
	for _, f := range Findings(in, r, Units{}) {
		said += plain(f.Text) + "\n" + plain(f.Do) + "\n"
	}
	for _, want := range []string{"Sun and Stage 3 ran at the same time for 71 h of the heat's 140 h: the fans blew out what the heat brought in.",
		"Pump and Stage 3 ran at the same time for 71 h of the heat's 900 h: the fans blew out what the heat brought in.\nLook at the heat's setting: it should stop below where that stage starts. Do not cut the always-on air.",
		"Look at the heat's setting: warmed air is dry air. Never cut the always-on air or add water for it.",
		"Dry weather had its part; what can be turned is the heat."} {
		if !strings.Contains(said, want) {
			t.Errorf("it is not said: %s", want)
		}
	}
	for _, sentence := range strings.FieldsFunc(said, func(c rune) bool { return c == '.' || c == '\n' || c == ';' }) {
		for _, wrong := range []string{"cut", "less air", "add water", "weather alone"} {
			if strings.Contains(sentence, wrong) && !strings.HasPrefix(strings.TrimSpace(sentence), "Never") && !strings.HasPrefix(strings.TrimSpace(sentence), "Do not") {
				t.Errorf("it is advised: %s", sentence)
			}
		}
	}
}

// Files called “1”, “2” and “shed mid”, and two barns: where each hung is proposed with the reason, “don't know” keeps one out
// of the verdict, and a place holds from a day on: “1” at 8 °C and “shed mid” at 5.3 °C are a room of 6.65 °C, above 6, where
// both count, and 20 November is 168 h into 480, 35 of 100.
func TestFilesThatAreCalledOneAndTwo(t *testing.T) {
	dir := t.TempDir()
	swing := func(name string, hours, level float64) string {
		from := utcMS(t, "2024-11-13 00:00")
		return written(t, dir, name, logOf("time,temp (C)", "2024-11-13 00:00", 20, 60, isoFace, func(at time.Time) string {
			h := int(at.UnixMilli()-from) / 3_600_000
			return fmt.Sprintf("%.2f", level+0.4*math.Sin(2*math.Pi*float64(h)/hours))
		}))
	}
	swing("alder.csv", 31, 4)
	barn := func(name string) string {
		return "[[barn]]\nname = \"" + name + "\"\nbees_in = 2024-11-13T00:00:00\nbees_out = 2024-12-03T00:00:00\n"
	}
	plan := written(t, dir, "winter.toml", "[winter]\nname = \"Tasks\"\nzone = \"UTC\"\n"+barn("Alder barn")+
		"[[barn.logger]]\nname = \"alder\"\nfiles = [\"alder.csv\"]\nplace = \"room\"\n"+barn("Long shed"))
	k := keeper(t)
	b := added(t, k, opened(t, k, plan), swing("shed mid.csv", 47, 5.3), swing("2.csv", 23, 12), swing("1.csv", 47, 8))
	proposed := func(name, where, why string) {
		t.Helper()
		if l := pageOf(t, b, name).Loggers[0]; l.Suggestion != where || !strings.Contains(l.Why, why) {
			t.Errorf("%s: %q, %q", name, l.Suggestion, l.Why)
		}
	}
	hang := func(name string, text LoggerText) {
		t.Helper()
		loggers := pageOf(t, b, name).Loggers
		text.List = 1
		e, problem := b.SetLogger(loggers[len(loggers)-1].Entry.At, text)
		if problem != "" {
			t.Fatal(problem)
		}
		b = edited(t, k, b, e)
	}
	says := func(want string) {
		t.Helper()
		v, _ := b.Barn(1, Units{})
		if said := plain(v.FirstLook.Headline); !strings.HasPrefix(said, want) {
			t.Errorf("%q, want %q", said, want)
		}
	}
	proposed("shed mid.csv", "Hang it in Long shed, room", "“shed” is in its name and in no other barn's")
	hang("shed mid.csv", LoggerText{Place: "room"})
	says("It held: 100 of 100 hours")
	proposed("1.csv", "Hang it in Long shed, room", "its temperature goes up and down with that of shed mid there")
	proposed("2.csv", "", "Nothing in its name or its readings says which barn it hung in.")
	hang("2.csv", LoggerText{Place: "don't know"})
	says("It held: 100 of 100 hours")
	hang("1.csv", LoggerText{Place: "room"})
	says("It did not hold: 0 of 100 hours")
	hang("1.csv", LoggerText{Place: "don't know"})
	says("It held: 100 of 100 hours")
	hang("1.csv", LoggerText{Place: "room", Since: "2024-11-20"})
	says("It did not hold: 35 of 100 hours")
}
