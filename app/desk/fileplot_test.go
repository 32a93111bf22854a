package desk

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Hourly readings 0, 1, 2 … 9, out of order and one of them twice, and a day later 10: the line rises evenly
// to 9 tenths, then the gap of 24 h is open, and the last stroke stands at the top.
func TestSmallPlots(t *testing.T) {
	const hour = int64(3_600_000)
	start := time.Date(2024, time.November, 13, 0, 0, 0, 0, time.UTC).UnixMilli()
	at := []int64{start + 9*hour, start + 3*hour, start + 3*hour}
	val := []float64{9, 3, 77}
	for _, h := range []int64{0, 1, 2, 4, 5, 6, 7, 8} {
		at, val = append(at, start+h*hour), append(val, float64(h))
	}
	at, val = append(at, start+33*hour), append(val, 10)
	p, ok := plotOf(at, val)
	if !ok || len(p.Columns) != plotColumns || p.From != "13 November 2024" || p.To != "14 November 2024" {
		t.Fatalf("%v, %d columns, %s, %s", ok, len(p.Columns), p.From, p.To)
	}
	// 33 h in 360 strokes: 4.5 h is at stroke 360·4.5/33 = 49, where the line stands at 4.5 of 10.
	if c := p.Columns[49]; !c.Known || c.Low < 0.44 || c.High > 0.46 {
		t.Errorf("%+v", c)
	}
	if c := p.Columns[200]; c.Known {
		t.Errorf("a line across the gap: %+v", c)
	}
	if c := p.Columns[plotColumns-1]; !c.Known || c.High != 1 {
		t.Errorf("the last: %+v", c)
	}
	if _, ok := plotOf([]int64{5, 5}, []float64{1, 2}); ok {
		t.Error("one instant is no plot")
	}
	if p, _ := plotOf([]int64{start, start + hour}, []float64{3, 3}); p.Columns[0] != (PlotColumn{0.5, 0.5, true}) {
		t.Errorf("readings that never change: %+v", p.Columns[0])
	}
}

// A list of events over 360 h, a stroke an hour: on from hour 7 to 20½ and from 300 on; each state holds until the next.
func TestARecordsPlotIsTheShareOn(t *testing.T) {
	const hour = int64(3_600_000)
	p, ok := heldPlotOf([]int64{0, 7 * hour, 20*hour + hour/2, 300 * hour, 360 * hour}, []float64{0, 1, 0, 1, 0})
	if !ok || len(p.Columns) != 360 {
		t.Fatalf("%v, %d columns", ok, len(p.Columns))
	}
	for k, want := range map[int]float64{0: 0, 6: 0, 7: 1, 19: 1, 20: 0.5, 21: 0, 299: 0, 300: 1, 359: 1} {
		if c := p.Columns[k]; !c.Known || math.Abs(c.High-want) > 1e-9 || c.Low != 0 {
			t.Errorf("stroke %d: %+v, want %g", k, c, want)
		}
	}
	var at []int64 // sampled every hour, with a gap: there nothing is known
	var val []float64
	for h := range int64(361) {
		if h < 100 || h > 200 {
			at, val = append(at, h*hour), append(val, 1)
		}
	}
	if p, _ = heldPlotOf(at, val); p.Columns[150].Known || !p.Columns[98].Known || p.Columns[98].High != 1 {
		t.Errorf("in the gap %+v, before it %+v", p.Columns[150], p.Columns[98])
	}
}

func TestRecordsArePlottedUnderTheirNames(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "fans.csv")
	text := "time,fan 2 (on/off),north door,fan 3 current (A)\n2025-11-02 00:00,on,closed,1.5\n2025-11-02 01:00,off,open,0.1\n2025-11-02 02:00,on,closed,1.6\n2025-11-02 03:00,on,closed,1.6\n"
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range pageOf(t, added(t, keeper(t), Book{}, loggerFile(t, dir, "cheap.csv", 4), path), "fans.csv").Plots {
		got = append(got, plain(p.Name+": "+p.Low+" to "+p.High))
	}
	if want := "Fan 2: off to on, North door: closed to open, Fan 3 current: 0.1 A to 1.6 A"; strings.Join(got, ", ") != want {
		t.Errorf("%s, want %s", strings.Join(got, ", "), want)
	}
}

func TestAFilesPlots(t *testing.T) {
	dir := t.TempDir()
	b := added(t, keeper(t), Book{}, loggerFile(t, dir, "cheap.csv", 4), aDay(t, dir, "waits.csv", "03/04/2024", inFahrenheit))
	p := pageOf(t, b, "cheap.csv").Plots
	if len(p) != 2 || p[0].Name != "Temperature" || plain(p[0].Low+" "+p[0].High) != "4.0 °C 4.4 °C" || p[1].Name != "Humidity" {
		t.Errorf("%+v", p)
	}
	if fahrenheit, _ := b.File("cheap.csv", Units{Temperature: Fahrenheit}); plain(fahrenheit.Plots[0].Low) != "39.2 °F" { // 4·9/5 + 32
		t.Error(fahrenheit.Plots[0].Low)
	}
	if len(pageOf(t, b, "waits.csv").Plots) != 0 {
		t.Error("readings at no sure time are drawn")
	}
}
