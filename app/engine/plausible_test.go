package engine

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"thawbook/analysis/plausible"
	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/sampledata"
)

// demo is the demo winter in a folder, reviewed again and again with one file changed at a time.
type demo struct {
	dir   string
	files map[string]string
	truth sampledata.Truth
	cache Cache
}

// demoWinter makes the demo winter's folder.
func demoWinter(t *testing.T) *demo {
	t.Helper()
	made, err := sampledata.Demo(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	d := demo{files: map[string]string{}}
	for _, f := range made {
		d.files[f.Name] = string(f.Data)
	}
	if err := json.Unmarshal([]byte(d.files["truth.json"]), &d.truth); err != nil {
		t.Fatal(err)
	}
	d.dir = folder(t, d.files)
	return &d
}

// with is the winter with one file changed; the file is as it was when the test ends.
func (d *demo) with(t *testing.T, file string, change func(string) string) winter.Winter {
	t.Helper()
	put := func(text string) {
		if err := os.WriteFile(filepath.Join(d.dir, file), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	put(change(d.files[file]))
	t.Cleanup(func() { put(d.files[file]) })
	return d.plan(t)
}

// plan is the winter as its plan says, with the faults that are planted in the demo left out by what the truth says of
// them: a humidity that stuck, a logger that lay in the house. That they are found is tested beside the demo.
func (d *demo) plan(t *testing.T) winter.Winter {
	t.Helper()
	w, err := ReadPlan(filepath.Join(d.dir, "winter.toml"))
	if err != nil {
		t.Fatal(err)
	}
	for i, b := range d.truth.Barns {
		for k, l := range b.Loggers {
			if l.Name == w.Barns[i].Loggers[k].Name {
				w.Barns[i].Loggers[k].Exclusions = plantedIn(t, l)
			}
		}
	}
	return w
}

// plantedIn are the stretches in which a logger of the demo was stuck or not at its place.
func plantedIn(t *testing.T, l sampledata.LoggerTruth) (out []winter.Exclusion) {
	t.Helper()
	add := func(s sampledata.SpanTruth, quantity string) {
		from, errFrom := time.Parse(time.RFC3339, s.Start)
		to, errTo := time.Parse(time.RFC3339, s.End)
		if err := errors.Join(errFrom, errTo); err != nil {
			t.Fatal(err)
		}
		out = append(out, winter.Exclusion{From: from.UnixMilli(), To: to.UnixMilli(), Quantity: quantity})
	}
	for _, s := range l.InHouse {
		add(s, "")
	}
	for _, c := range l.Channels {
		if c.Stuck != nil {
			add(*c.Stuck, winter.OfHumidity)
		}
	}
	return out
}

// doubts is what there is to say of a winter of the demo's files.
func (d *demo) doubts(t *testing.T, w winter.Winter) ([]Proposal, []series.Remark) {
	t.Helper()
	r, err := Review(context.Background(), w, Folder(d.dir), &d.cache, nil)
	if err != nil || r.Refused() {
		t.Fatalf("%v, %+v", err, r.Remarks)
	}
	began := time.Now()
	proposals, remarks, err := Proposals(context.Background(), r)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("looked through in %v", time.Since(began))
	return proposals, remarks
}

// The demo's loggers have offsets, noise, lag and resolution, a wall that is wet and a room that is opened:
// all of it as it should be.
func TestADemoWinter(t *testing.T) {
	if testing.Short() {
		t.Skip("making the demo winter takes long beside the race detector")
	}
	d := demoWinter(t)
	if proposals, remarks := d.doubts(t, d.plan(t)); len(proposals) > 0 || len(remarks) > 0 {
		t.Errorf("%+v, %+v", proposals, remarks)
	}
	t.Run("coarse", func(t *testing.T) { leftInPeace(t, d) })
	for _, f := range demoFaults {
		t.Run(f.code, func(t *testing.T) { f.isProposed(t, d) })
	}
	t.Run("taken up", func(t *testing.T) { takenUp(t, d) })
}

// leftInPeace looks at the demo as loggers that print half and whole degrees would have it, all together and each
// alone: in a room that is held well they stand still for days.
func leftInPeace(t *testing.T, d *demo) {
	r, err := Review(context.Background(), d.plan(t), Folder(d.dir), &d.cache, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []struct{ tempK, relHum float64 }{{0.5, 0.01}, {1, 0.05}} {
		for alone := -1; alone < 4; alone++ {
			coarse := r
			coarse.Inputs = nil
			for _, in := range r.Inputs {
				in.Loggers = slices.Clone(in.Loggers)
				for k := range in.Loggers {
					l := &in.Loggers[k]
					l.TempC, l.RelHum, l.TempStepK = inSteps(l.TempC, step.tempK), inSteps(l.RelHum, step.relHum), step.tempK
					if alone >= 0 && k != alone && isRoom(*l) {
						l.TempC, l.RelHum = series.Curve{}, series.Curve{}
					}
				}
				coarse.Inputs = append(coarse.Inputs, in)
			}
			if _, remarks, err := Proposals(context.Background(), coarse); err != nil || len(remarks) > 0 {
				t.Errorf("in steps of %v, logger %d alone: %v %+v", step, alone, err, remarks)
			}
		}
	}
}

// inSteps is a curve as it is printed in steps.
func inSteps(c series.Curve, step float64) series.Curve {
	return c.Map(func(v float64) float64 { return math.Round(v/step) * step })
}

// betweenDays changes the cells of the rows of alder-west.csv (time, °C, %) from one day up to another.
func betweenDays(from, to string, f func(k int, cells []string)) func(string) string {
	return func(text string) string {
		lines := strings.Split(text, "\n")
		k := 0
		for i, line := range lines {
			cells := strings.Split(strings.TrimSpace(line), ",")
			if len(cells) != 3 || cells[0] < from || cells[0] >= to || cells[0][0] != '2' {
				continue
			}
			f(k, cells)
			k++
			lines[i] = strings.Join(cells, ",")
		}
		return strings.Join(lines, "\n")
	}
}

// number is a cell's.
func number(cell string) float64 {
	v, _ := strconv.ParseFloat(cell, 64)
	return v
}

// demoFault is a fault to be put into one logger of the demo winter. It is to be said once, with the stretch it
// was put into, and nothing else.
type demoFault struct {
	code, file string
	spoil      func(string) string
	logger     string
	quantity   plausible.Quantity
	from, to   string // UTC, of the stretch; "" none is proposed
	count      int
}

// southsClock is where the plan says how the clock of one logger goes.
var southsClock = regexp.MustCompile(`(name = "Rowan south"\n(?:.*\n)*?)follows_dst = false`)

var demoFaults = []demoFault{
	{DoubtStuck, "alder-west.csv", betweenDays("2025-01-10T12:00", "2025-01-14T12:00", func(_ int, c []string) { c[1] = "4.12" }), "Alder west", plausible.Temperature, "2025-01-10 10:00", "2025-01-14 10:00", 1},
	{DoubtSaturated, "alder-west.csv", betweenDays("2025-01-10T12:00", "2025-01-12T12:00", func(_ int, c []string) { c[2] = "100.00" }), "Alder west", plausible.Humidity, "2025-01-10 10:00", "2025-01-12 10:00", 1},
	{DoubtJumping, "alder-west.csv", betweenDays("2025-01-10T12:00", "2025-01-12T12:00", func(k int, c []string) {
		if k%100 == 50 {
			c[1] = fmt.Sprintf("%.2f", number(c[1])-9)
		}
	}), "Alder west", plausible.Temperature, "2025-01-10 14:00", "2025-01-12 10:00", 6},
	{DoubtSentinel, "alder-west.csv", betweenDays("2025-01-10T12:00", "2025-01-10T18:00", func(_ int, c []string) { c[1] = "-85.00" }), "Alder west", plausible.Temperature, "2025-01-10 10:00", "2025-01-10 16:00", 1},
	{DoubtFahrenheit, "alder-west.csv", betweenDays("2024-12-10T00:00", "2025-01-10T00:00", func(_ int, c []string) { c[1] = fmt.Sprintf("%.2f", 1.8*number(c[1])+32) }), "Alder west", plausible.Temperature, "2024-12-09 22:00", "2025-01-09 22:00", 1},
	{DoubtSwapped, "alder-west.csv", betweenDays("2024-12-10T00:00", "2025-01-10T00:00", func(_ int, c []string) { c[1], c[2] = c[2], c[1] }), "Alder west", plausible.Both, "2024-12-09 22:00", "2025-01-09 22:00", 1},
	{DoubtDriftOfTwo, "alder-west.csv", betweenDays("2024-11-01T00:00", "2025-05-01T00:00", func(k int, c []string) { c[1] = fmt.Sprintf("%.2f", number(c[1])+float64(k)/20000) }), "Alder east", plausible.Temperature, "", "", 1},
	{DoubtClockHours, "winter.toml", func(text string) string { return southsClock.ReplaceAllString(text, "${1}zone = \"+04:00\"") }, "Rowan south", 0, "", "", 1},
}

// isProposed puts the fault in and looks.
func (f demoFault) isProposed(t *testing.T, d *demo) {
	proposals, remarks := d.doubts(t, d.with(t, f.file, f.spoil))
	if len(remarks) != 1 || remarks[0].Code != f.code || remarks[0].Args[0] != f.logger || remarks[0].Count != f.count {
		t.Fatalf("said is %+v", remarks)
	}
	var all []winter.Exclusion
	for _, p := range proposals {
		all = append(all, p.Exclusions...)
	}
	if f.from == "" {
		if len(all) > 0 {
			t.Errorf("proposed is %+v", all)
		}
		return
	}
	if len(proposals) != 1 || proposals[0].Quantity != f.quantity || len(all) != f.count {
		t.Fatalf("proposed is %+v", proposals)
	}
	if apart(t, all[0].From, f.from) > 2 || apart(t, all[len(all)-1].To, f.to) > 6 {
		t.Errorf("proposed from %s to %s", time.UnixMilli(all[0].From).UTC(), time.UnixMilli(all[len(all)-1].To).UTC())
	}
}

// apart is how many hours lie between an instant and one in words, UTC.
func apart(t *testing.T, at int64, text string) float64 {
	t.Helper()
	want, err := time.Parse("2006-01-02 15:04", text)
	if err != nil {
		t.Fatal(err)
	}
	return math.Abs(float64(at-want.UnixMilli())) / series.HourMS
}

// takenUp takes a proposal up, the keeper's press: with its exclusions set down for the logger nothing is left
// to say.
func takenUp(t *testing.T, d *demo) {
	w := d.with(t, "alder-west.csv", demoFaults[0].spoil)
	proposals, _ := d.doubts(t, w)
	if len(proposals) != 1 {
		t.Fatalf("%+v", proposals)
	}
	p := proposals[0]
	if l, ok := w.Logger(p.Slot); !ok || l.Name != "Alder west" {
		t.Fatalf("the proposal is for %+v", p.Slot)
	}
	left := &w.Barns[p.Slot.List].Loggers[p.Slot.Index].Exclusions
	*left = append(*left, p.Exclusions...)
	if still, _ := d.doubts(t, w); len(still) > 0 {
		t.Errorf("still proposed: %+v", still)
	}
}

// A file's own dew point that is a frost point: by the Magnus formulas of WMO-No. 8 air of 75 % at −10 °C has its
// dew point at −13.6 °C and its frost point at −12.1 °C.
func TestAFilesOwnFrostPointIsNamed(t *testing.T) {
	magnusDew := func(c, h float64) float64 {
		l := math.Log(h) + 17.62*c/(243.12+c) // WMO-No. 8, over water
		return 243.12 * l / (17.62 - l)
	}
	magnusFrost := func(c, h float64) float64 {
		l := math.Log(h) + 17.62*c/(243.12+c) // vapour over water, its point over ice
		return 272.62 * l / (22.46 - l)
	}
	text := func(point func(c, h float64) float64) string {
		var b strings.Builder
		b.WriteString("Time,Temperature (°C),Humidity (%),Dew point (°C)\n")
		for i := range 240 {
			c := math.Round(100*(-10+5*math.Sin(float64(i)/9))) / 100
			h := float64(70+i%11) / 100
			fmt.Fprintf(&b, "2026-01-%02d %02d:00:00,%.2f,%.1f,%.2f\n", 1+i/24, i%24, c, 100*h, point(c, h))
		}
		return b.String()
	}
	for what, point := range map[string]func(c, h float64) float64{"": magnusDew, DoubtIce: magnusFrost} {
		dir := folder(t, map[string]string{"room.csv": text(point), "w.toml": planHead + planLogger("n", "room.csv", "outdoor")})
		r, err := ReviewFile(context.Background(), filepath.Join(dir, "w.toml"), nil)
		if err != nil {
			t.Fatal(err)
		}
		_, remarks, err := Proposals(context.Background(), r)
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, r := range remarks {
			got += r.Code
		}
		if got != what {
			t.Errorf("said %q, want %q: %+v", got, what, remarks)
		}
	}
}

// Looking stops when nobody waits any more.
func TestProposalsCanBeStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, _, err := Proposals(ctx, Result{Files: make([]File, 3)}); err == nil {
		t.Error("no error")
	}
}
