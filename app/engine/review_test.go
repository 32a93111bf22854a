package engine

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/app/files"
	"thawbook/app/winter"
	"thawbook/app/winter/plan"
	"thawbook/importers"
)

// folder writes files into a folder of the test and returns the folder.
func folder(t *testing.T, content map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range content {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// hourly is a log of n hourly readings from an instant on, in UTC.
func hourly(t *testing.T, from string, n int, tempC, relHumPct func(i int) float64) string {
	t.Helper()
	var text strings.Builder
	text.WriteString("time,Temperature (°C),Humidity (%)\n")
	at := time.UnixMilli(utc(t, from)).UTC()
	for i := range n {
		fmt.Fprintf(&text, "%s,%.2f,%.1f\n", at.Add(time.Duration(i)*time.Hour).Format("2006-01-02 15:04:05"), tempC(i), relHumPct(i))
	}
	return text.String()
}

func flat(v float64) func(int) float64 { return func(int) float64 { return v } }

// saw climbs by a hundredth an hour and starts again every ten days.
func saw(i int) float64 { return 3 + float64(i%240)/100 }

const planHead = "[winter]\nname = \"W\"\nzone = \"UTC\"\n[[barn]]\nname = \"Alder\"\n"

func planLogger(name, file, place string) string {
	return fmt.Sprintf("[[barn.logger]]\nname = %q\nfiles = [%q]\nplace = %q\n", name, file, place)
}

func TestAFileCostsOnlyItself(t *testing.T) {
	dir := folder(t, map[string]string{
		"room.csv":  hourly(t, "2026-11-12 00:00", 240, saw, flat(60)),
		"empty.csv": "",
		"w.toml": planHead + planLogger("n", "room.csv", "room") + planLogger("gone", "gone*.csv", "room") +
			planLogger("dir", "more", "room") + planLogger("empty", "empty.csv", "wall"),
		"more/x.csv": "x",
	})
	result, err := ReviewFile(context.Background(), filepath.Join(dir, "w.toml"), nil)
	if err != nil {
		t.Fatal(err)
	}
	if !result.Refused() {
		t.Error("nothing is said to be refused")
	}
	var said []string
	for _, r := range result.Remarks {
		if r.Code == FileRefused {
			said = append(said, r.Args[0])
		}
	}
	want := []string{filepath.ToSlash(dir) + "/empty.csv", "gone*.csv", "more"}
	if !slices.Equal(said, want) {
		t.Errorf("refused %q, want %q", said, want)
	}
	if len(result.Barns) != 1 || result.Inputs[0].Loggers[0].TempC.Len() != 240 {
		t.Errorf("the good file was not reviewed: %+v", result.Inputs)
	}
}

func TestRefusedPlans(t *testing.T) {
	dir := folder(t, map[string]string{
		"bad.toml":   planHead + "[[barn.stage]]\nname = \"1\"\non_c = 4\noff_c = 5\n",
		"empty.toml": "",
		"large.toml": strings.Repeat("# much\n", 200000),
	})
	var fault *plan.Error
	_, err := ReviewFile(context.Background(), filepath.Join(dir, "bad.toml"), nil)
	if !errors.As(err, &fault) || fault.Line != 9 || fault.Code != plan.OffNotLow {
		t.Errorf("off above on gives %v", err)
	}
	_, err = ReviewFile(context.Background(), filepath.Join(dir, "large.toml"), nil)
	if !errors.As(err, &fault) || !strings.Contains(err.Error(), "larger than") {
		t.Errorf("a large plan gives %v", err)
	}
	for name, code := range map[string]files.Code{"none.toml": files.Missing, "empty.toml": files.Empty, "": files.Directory} {
		_, err = ReviewFile(context.Background(), filepath.Join(dir, name), nil)
		var refused *files.Error
		if !errors.As(err, &refused) || refused.Code != code {
			t.Errorf("%q gives %v", name, err)
		}
	}
}

func TestAnAnswerToNoFile(t *testing.T) {
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 30, saw, flat(60))})
	w := winter.Winter{
		Zone:    "UTC",
		Barns:   []winter.Barn{{Name: "A", Loggers: []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}}},
		Answers: []winter.Answer{{File: "a*.csv", ID: "zone", Option: "UTC"}, {File: "b.csv", ID: "zone", Option: "UTC"}},
	}
	result, err := Review(context.Background(), w, Folder(dir), nil, nil)
	if err != nil || !slices.Equal(codes(result.Remarks), []string{AnswerUnused}) || result.Remarks[0].Args[0] != "b.csv" {
		t.Errorf("%v, %+v", err, result.Remarks)
	}
}

// The same file twice, by two patterns and as a copy under another name, changes nothing.
func TestTheSameFileTwice(t *testing.T) {
	log := hourly(t, "2026-11-12 00:00", 240, saw, flat(60))
	dir := folder(t, map[string]string{"room.csv": log, "copy of room.csv": log})
	review := func(patterns ...string) Result {
		w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{{Name: "room", Files: patterns, Place: "room"}}}}}
		result, err := Review(context.Background(), w, Folder(dir), nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		return result
	}
	once := review("room.csv")
	for _, twice := range []Result{review("room.csv", "r*.csv"), review("*.csv")} {
		if !reflect.DeepEqual(once.Inputs[0].Loggers[0].TempC, twice.Inputs[0].Loggers[0].TempC) || !reflect.DeepEqual(once.Barns, twice.Barns) {
			t.Error("the review is another")
		}
	}
	if n := len(review("room.csv", "r*.csv").Files); n != 1 {
		t.Errorf("%d files were read where one was named twice", n)
	}
	if !slices.Contains(codes(review("*.csv").Remarks), SameReadings) {
		t.Error("the copy is not remarked")
	}
}

func TestOutdoorAndSettingsReachTheBarn(t *testing.T) {
	dir := folder(t, map[string]string{
		"room.csv": hourly(t, "2026-11-12 00:00", 48, flat(4), flat(55)),
		"out.csv":  hourly(t, "2026-11-12 00:00", 48, flat(-10), flat(90)),
		"w.toml": `[winter]
name = "W"
zone = "UTC"
gap_minutes = 90
[[barn]]
name = "Alder"
altitude_m = 1000
[[barn.stage]]
name = "1"
always_on = true
[[barn.stage]]
name = "2"
on_c = 5
off_c = 4
flow_m3h = 3600
[[barn.stage]]
name = "2"
from = 2026-11-13
on_c = 6
off_c = 4
[[barn.surface]]
name = "north"
kind = "wall"
[[barn.surface]]
name = "gable"
kind = "wall"
factor = 0.8
[[barn.logger]]
name = "n"
files = ["room.csv"]
place = "room"
offset_c = 0.25
offset_rh = -5
[[outdoor]]
name = "o"
files = ["out.csv"]
station_km = 8
[bands.relative_humidity]
good_high = 55
`})
	result, err := ReviewFile(context.Background(), filepath.Join(dir, "w.toml"), nil)
	if err != nil {
		t.Fatal(err)
	}
	in := result.Inputs[0]
	room, outdoor := in.Loggers[0], in.Loggers[1]
	november13 := utc(t, "2026-11-13 00:00")
	setting := in.Stages[1].Settings
	for what, ok := range map[string]bool{
		"calibration":        room.TempC.Val[0] == 4.25 && abs(int64(room.RelHum.Val[0]*1e6)-500000) <= 1,
		"gap limit":          room.TempC.MaxStepMS == 90*minuteMS,
		"a checked logger":   room.TempErrK == 0.3 && room.RelHumErr == 0.03,
		"a station":          outdoor.TempErrK > 0.5 && *outdoor.StationKM == 8,
		"resolution":         room.TempStepK == 0.01,
		"outdoor":            outdoor.Place == "outdoor" && outdoor.TempC.Val[0] == -10,
		"stage order":        in.Stages[0].Name == "1" && in.Stages[0].Settings[0].AlwaysOn,
		"settings in spans":  setting[0].Span.To == november13 && setting[1].Span.From == november13 && setting[1].OnC == 6,
		"flow":               *setting[0].FlowLow == 1 && setting[1].FlowLow == nil,
		"an assumed surface": in.Surfaces[0].Evidence == analysis.Assumed && in.Surfaces[0].Low == 0.90 && in.Surfaces[0].High == 0.95,
		"a given factor":     in.Surfaces[1].Evidence == analysis.YourSetting && in.Surfaces[1].Mid == 0.8,
		"percent":            *in.Bands.RelHumPct.GoodHigh == 55,
		// 898.75 hPa at 1000 m: the standard atmosphere (ISO 2533, table).
		"pressure": in.PressurePa > 89870 && in.PressurePa < 89880,
	} {
		if !ok {
			t.Errorf("%s did not arrive: %+v", what, in)
		}
	}
}

// A logger named again from a later date on hung in the room first and at the wall then.
func TestALoggerThatWasMoved(t *testing.T) {
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 48, saw, flat(60))})
	moved := utc(t, "2026-11-13 00:00")
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{
		{Name: "a", Files: []string{"a.csv"}, Place: "room"},
		{Name: "a", Files: []string{"a.csv"}, Place: "wall", From: &moved},
	}}}}
	result, err := Review(context.Background(), w, Folder(dir), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	room, wall := result.Inputs[0].Loggers[0].TempC, result.Inputs[0].Loggers[1].TempC
	if room.Len() != 24 || wall.Len() != 24 || wall.Readings.At[0] != moved || room.Readings.At[23] >= moved {
		t.Errorf("%d readings in the room, %d at the wall", room.Len(), wall.Len())
	}
}

func TestTheOrderOfFilesIsNotThatOfTheWorkers(t *testing.T) {
	content := map[string]string{}
	for i := range 30 {
		content[fmt.Sprintf("f%02d.csv", i)] = hourly(t, "2026-11-12 00:00", 10+i*7%13*100, saw, flat(60))
	}
	dir := folder(t, content)
	read, err := Inspect(context.Background(), []string{dir, filepath.Join(dir, "f05.csv")}, nil, nil)
	if err != nil || len(read) != 31 {
		t.Fatalf("%d files, %v", len(read), err)
	}
	for i, f := range read[:30] {
		if filepath.Base(f.Name) != fmt.Sprintf("f%02d.csv", i) || f.Bytes != int64(len(content[filepath.Base(f.Name)])) || f.SHA256 == "" {
			t.Errorf("file %d is %s, %d bytes, sum %q", i, f.Name, f.Bytes, f.SHA256)
		}
	}
}

func TestProgressEndsAtTheWhole(t *testing.T) {
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 3000, saw, flat(60)), "b.csv": hourly(t, "2026-11-12 00:00", 30, saw, flat(60))})
	var last, total, calls int64
	_, err := Inspect(context.Background(), []string{dir}, nil, func(done, of int64, _ string) {
		if done < last {
			t.Errorf("went back from %d to %d", last, done)
		}
		last, total, calls = done, of, calls+1
	})
	if err != nil || last != total || calls < 2 {
		t.Errorf("ended at %d of %d after %d calls, %v", last, total, calls, err)
	}
}

// Ten days hourly at 3 to 5.4 °C; the third day, 24 h, is left out, and so are the steps to its neighbours.
func TestAnExcludedStretchIsUnknown(t *testing.T) {
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 241, saw, flat(60))})
	l := winter.Logger{Name: "a", Files: []string{"a.csv"}, Place: "room", Exclusions: []winter.Exclusion{{From: utc(t, "2026-11-14 00:00"), To: utc(t, "2026-11-15 00:00")}}}
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{l}}}}
	result, err := Review(context.Background(), w, Folder(dir), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := result.Barns[0].Coverage, 215.0/240; math.Abs(got-want) > 1e-12 { // 240 h less 24 and the one before
		t.Errorf("coverage %v, want %v", got, want)
	}
	c := result.Inputs[0].Loggers[0].TempC
	if c.Len() != 241-24 || len(c.Breaks) != 1 || c.Breaks[0] != utc(t, "2026-11-15 00:00") {
		t.Errorf("%d readings, broken at %v", c.Len(), c.Breaks)
	}
}

// A check of the logger against ice that found it 0.4 K high takes 0.4 K off every reading.
func TestACheckMovesTheReadings(t *testing.T) {
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 24, flat(5), flat(60))})
	said, is := 0.4, 0.0
	l := winter.Logger{Name: "a", Files: []string{"a.csv"}, Place: "room", Checks: []winter.Calibration{{Method: "ice", SaidC: &said, TrueC: &is}}}
	result, err := Review(context.Background(), winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{l}}}}, Folder(dir), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := result.Inputs[0].Loggers[0]; math.Abs(got.TempC.Val[0]-4.6) > 1e-12 || got.TempErrK != 0.3 || got.RelHumErr != 0.05 {
		t.Errorf("%v, ±%v K, ±%v", got.TempC.Val[0], got.TempErrK, got.RelHumErr)
	}
}

func TestACancelledReading(t *testing.T) {
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 30, saw, flat(60))})
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Inspect(ctx, []string{dir}, nil, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A"}}}
	if _, err := Review(ctx, w, Folder(dir), nil, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

func TestAnswersFindTheirFile(t *testing.T) {
	all := []winter.Answer{
		{File: "", ID: "zone", Option: "UTC"},
		{File: "north*.csv", ID: "zone", Option: "+02:00"},
		{File: "logs/north 1.csv", ID: "day_month", Option: "dmy"},
	}
	got := answersFor("logs/north 1.csv", all)
	if want := (importers.Answers{"zone": "+02:00", "day_month": "dmy"}); !reflect.DeepEqual(got, want) {
		t.Errorf("got %v", got)
	}
	if got := answersFor("logs/south.csv", all); !reflect.DeepEqual(got, importers.Answers{"zone": "UTC"}) {
		t.Errorf("got %v", got)
	}
}

// The same log under two names is said once, whatever the loggers are called.
func TestTheSameFileTwiceIsRemarked(t *testing.T) {
	same := File{Name: "a.csv", SHA256: "1", Export: &importers.Export{}}
	again := File{Name: "b.csv", SHA256: "1", Export: &importers.Export{}}
	other := File{Name: "c.csv", SHA256: "2", Export: &importers.Export{}}
	got := twins([]File{same, other, again})
	if len(got) != 1 || got[0].Code != SameFile || !slices.Equal(got[0].Args, []string{"b.csv", "a.csv"}) {
		t.Errorf("%+v", got)
	}
}

// A file whose question is open is left out until it is answered: nothing is read by a guess.
func TestAnOpenQuestionHoldsAFileBack(t *testing.T) {
	log := "Time,Temp (°C)\n"
	for h := range 9 {
		log += fmt.Sprintf("01/02/2026 %02d:00,4.0\n", h)
	}
	dir := t.TempDir()
	for name, text := range map[string]string{"a.csv": log, "plan.toml": "[winter]\nname=\"w\"\nzone=\"UTC\"\n[[barn]]\nname=\"b\"\n[[barn.logger]]\nname=\"a\"\nfiles=[\"a.csv\"]\nplace=\"room\"\n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	r, err := ReviewFile(context.Background(), filepath.Join(dir, "plan.toml"), nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Remarks) != 1 || r.Remarks[0].Code != WaitsForAnswer || r.Remarks[0].Args[2] != "day_month" || r.Inputs[0].Loggers[0].TempC.Len() != 0 {
		t.Errorf("%+v, %d readings used", r.Remarks, r.Inputs[0].Loggers[0].TempC.Len())
	}
}
