package desk

import (
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
