package engine

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
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

// saw climbs by a tenth an hour and starts again every ten days.
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

func TestAPanicIsThatFilesError(t *testing.T) {
	was := readExport
	defer func() { readExport = was }()
	readExport = func(ctx context.Context, r io.Reader, name string, answers importers.Answers) (*importers.Export, error) {
		if strings.HasSuffix(name, "b.csv") {
			panic("an index out of range")
		}
		return was(ctx, r, name, answers)
	}
	log := hourly(t, "2026-11-12 00:00", 30, saw, flat(60))
	read, err := Inspect(context.Background(), []string{folder(t, map[string]string{"a.csv": log, "b.csv": log, "c.csv": log})}, nil, nil)
	if err != nil || read[0].Err != nil || read[2].Err != nil {
		t.Fatalf("the neighbours suffered: %v, %+v", err, read)
	}
	var fault *Fault
	if !errors.As(read[1].Err, &fault) || read[1].Export != nil || !strings.Contains(fault.Error(), "b.csv") {
		t.Errorf("got %v", read[1].Err)
	}
}

// What goes to the program's makers says where the fault was and nothing of the keeper's.
func TestTheNoteOfAFaultHoldsNoData(t *testing.T) {
	for _, thrown := range []any{"4.25 degrees in secret barn.csv", errors.New("secret"), fmt.Errorf("%w", os.ErrPermission)} {
		note := faultOf(thrown).Note()
		if strings.Contains(note, "secret") || strings.Contains(note, "4.25") || !strings.Contains(note, "engine.faultOf") || !strings.Contains(note, ".go:") {
			t.Errorf("%v gives the note %q", thrown, note)
		}
	}
	var none []int
	if f := faultOf(func() { _ = none[7] }); !strings.Contains(f.Kind, "index out of range [7] with length 0") {
		t.Errorf("a runtime error is %q", f.Kind)
	}
}

// faultOf is the fault of throwing something, or of calling it.
func faultOf(thrown any) *Fault {
	var err error
	func() {
		defer caught(&err, "secret barn.csv")
		if call, is := thrown.(func()); is {
			call()
		}
		panic(thrown)
	}()
	return err.(*Fault)
}

func TestABarnsFaultCostsOnlyThatBarn(t *testing.T) {
	was := judgeBarn
	defer func() { judgeBarn = was }()
	judgeBarn = func(in analysis.Input, spread analysis.Spread, begin func(int, int)) analysis.Review {
		if in.Name == "B" {
			panic("fault")
		}
		return was(in, spread, begin)
	}
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 240, saw, flat(60))})
	l := []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: l}, {Name: "B", Loggers: l}, {Name: "C", Loggers: l}}}
	var cache Cache
	for range 2 { // what failed is not remembered
		result, err := Review(context.Background(), w, Folder(dir), &cache, nil)
		if err != nil {
			t.Fatal(err)
		}
		states := []analysis.State{result.Barns[0].Verdict.Held.State, result.Barns[1].Verdict.Held.State, result.Barns[2].Verdict.Held.State}
		if states[0] != analysis.Yes || states[1] != analysis.Unknown || states[2] != analysis.Yes || len(result.Faults) != 1 {
			t.Errorf("%v, %v", states, result.Faults)
		}
		if !slices.ContainsFunc(result.Remarks, func(r series.Remark) bool { return r.Code == BarnFault && r.Args[0] == "B" }) {
			t.Errorf("%+v", result.Remarks)
		}
	}
	judgeBarn = was
	if result, err := Review(context.Background(), w, Folder(dir), &cache, nil); err != nil || result.Barns[1].Verdict.Held.State != analysis.Yes {
		t.Errorf("%v", err)
	}
}

// Spread over workers or one after another, a barn's review is the same to the last bit; a fault in a worker is the
// barn's, with where it was.
func TestSpreadingChangesNothing(t *testing.T) {
	content := map[string]string{"outdoor.csv": hourly(t, "2026-11-12 00:00", 3000, func(i int) float64 { return -5 + float64(i%37) }, flat(80))}
	w := winter.Winter{Zone: "UTC", Outdoor: []winter.Logger{{Name: "o", Files: []string{"outdoor.csv"}, Place: "outdoor"}}, Barns: []winter.Barn{{Name: "A"}}}
	for i := range 7 {
		name := fmt.Sprintf("l%d.csv", i)
		content[name] = hourly(t, "2026-11-12 00:00", 3000-i, func(k int) float64 { return 3 + float64(k*(i+3)%91)/20 }, func(k int) float64 { return 50 + float64(k%(30+i)) })
		w.Barns[0].Loggers = append(w.Barns[0].Loggers, winter.Logger{Name: name, Files: []string{name}, Place: []string{"room", "wall"}[i%2]})
	}
	result, err := Review(context.Background(), w, Folder(folder(t, content)), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(result.Barns[0], analysis.Judge(result.Inputs[0])) {
		t.Error("the reviews differ")
	}
	var fault error
	func() {
		defer caught(&fault, "barn A")
		spreadUntil(context.Background())(9, func(i int) {
			if i == 4 {
				panic("thrown in a worker")
			}
		})
	}()
	var f *Fault
	if !errors.As(fault, &f) || f.Doing != "barn A" || f.Kind != "string" || !strings.Contains(f.Note(), "TestSpreadingChangesNothing") {
		t.Errorf("%+v", fault)
	}
}

// An edit of one barn works out that barn anew and no other, whatever the edit; an edit taken back works out none.
func TestAnEditWorksOutItsBarnAlone(t *testing.T) {
	var lock sync.Mutex
	var judged []string
	was := judgeBarn
	defer func() { judgeBarn = was }()
	judgeBarn = func(in analysis.Input, spread analysis.Spread, begin func(int, int)) analysis.Review {
		lock.Lock()
		judged = append(judged, in.Name)
		lock.Unlock()
		return was(in, spread, begin)
	}
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 240, saw, flat(60)), "o.csv": hourly(t, "2026-11-12 00:00", 240, flat(-5), flat(80))})
	first := winter.Winter{Zone: "UTC", Barns: []winter.Barn{
		{Name: "A", Loggers: []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}},
		{Name: "B", Loggers: []winter.Logger{{Name: "b", Files: []string{"a.csv"}, Place: "room"}}},
	}}
	in := utc(t, "2026-11-14 00:00")
	bees, err := winter.SetBeesTime{Barn: 1, In: &in}.Apply(first)
	if err != nil {
		t.Fatal(err)
	}
	offset := bees
	offset.Barns = slices.Clone(bees.Barns)
	offset.Barns[0].Loggers = []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room", OffsetC: 1}}
	outdoor := offset
	outdoor.Outdoor = []winter.Logger{{Name: "o", Files: []string{"o.csv"}, Place: "outdoor"}}
	banded := outdoor
	good := 3.0
	banded.Bands.TempC.GoodLow = &good
	zoned := banded
	zoned.Zone = "Europe/Tallinn"
	var cache Cache
	for i, step := range []struct {
		w    winter.Winter
		want string
	}{{first, "A B"}, {first, ""}, {bees, "B"}, {offset, "A"}, {outdoor, "A B"}, {banded, "A B"}, {zoned, "A B"}, {outdoor, ""}, {first, ""}} {
		judged = nil
		result, err := Review(context.Background(), step.w, Folder(dir), &cache, nil)
		if err != nil {
			t.Fatal(err)
		}
		slices.Sort(judged)
		if got := strings.Join(judged, " "); got != step.want {
			t.Errorf("step %d judged %q, want %q", i, got, step.want)
		}
		if fresh, err := Review(context.Background(), step.w, Folder(dir), nil, nil); err != nil || !reflect.DeepEqual(fresh.Barns, result.Barns) || !reflect.DeepEqual(fresh.Remarks, result.Remarks) {
			t.Errorf("step %d: what was kept is not what is worked out fresh", i)
		}
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

// What was decoded once is not decoded again, unless the bytes or the answers are others.
func TestTheCache(t *testing.T) {
	decoded := 0
	was := readExport
	defer func() { readExport = was }()
	readExport = func(ctx context.Context, r io.Reader, name string, answers importers.Answers) (*importers.Export, error) {
		decoded++
		return was(ctx, r, name, answers)
	}
	dir := folder(t, map[string]string{"a.csv": hourly(t, "2026-11-12 00:00", 30, saw, flat(60))})
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{{Name: "a", Files: []string{"a.csv"}, Place: "room"}}}}}
	var cache Cache
	var results []Result
	for i, want := range []int{1, 1, 2, 3} {
		switch i {
		case 2:
			w.Answers = []winter.Answer{{File: "a.csv", ID: "zone", Option: "+02:00"}}
		case 3:
			folderFile := filepath.Join(dir, "a.csv")
			if err := os.WriteFile(folderFile, []byte(hourly(t, "2026-11-12 00:00", 30, saw, flat(61))), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		result, err := Review(context.Background(), w, Folder(dir), &cache, nil)
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, result)
		if decoded != want {
			t.Errorf("review %d: decoded %d times, want %d", i, decoded, want)
		}
	}
	if !reflect.DeepEqual(results[0], results[1]) {
		t.Error("the review from the cache is another")
	}
	if results[3].Inputs[0].Loggers[0].RelHum.Val[0] != 0.61 {
		t.Error("the new bytes did not arrive")
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
