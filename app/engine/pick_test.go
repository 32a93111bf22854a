package engine

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"thawbook/analysis/series"
	"thawbook/app/winter"
	"thawbook/importers"
)

// column is a series with one reading.
func column(logger, name string, q importers.Quantity) importers.Series {
	return importers.Series{Logger: logger, Column: name, Quantity: q, FaceMS: []int64{0}, Val: []float64{0}}
}

func TestWhichColumnsAreALoggers(t *testing.T) {
	export := &importers.Export{Series: []importers.Series{
		column("North", "Battery", importers.Other),
		column("North", "T", importers.AirTemperature),
		column("North", "RH", importers.RelativeHumidity),
		column("South", "T", importers.AirTemperature),
		column("South", "Probe", importers.SurfaceTemperature),
		column("South", "RH", importers.RelativeHumidity),
		column("South", "Stage 2", importers.State),
		column("South", "Stage 3", importers.State),
		{Logger: "Shed", Column: "value", Variable: "fan 7", Quantity: importers.State, FaceMS: []int64{0}, Val: []float64{1}},
	}}
	for _, c := range []struct {
		what             string
		logger           winter.Logger
		temp, hum, state int // numbers of the columns, −1 for none
	}{
		{"the first", winter.Logger{Name: "x", Place: "room"}, 1, 2, -1},
		{"the one of its name", winter.Logger{Name: "south", Place: "room"}, 3, 5, -1},
		{"a channel that is a logger", winter.Logger{Channel: "SOUTH", Place: "room"}, 3, 5, -1},
		{"on a wall the probe", winter.Logger{Channel: "south", Place: "wall"}, 4, 5, -1},
		{"a channel that is a column", winter.Logger{Channel: "probe", Place: "room"}, 4, -1, -1},
		{"a part of a column", winter.Logger{Channel: "pro", Place: "wall"}, 4, -1, -1},
		{"a record", winter.Logger{Channel: "stage 3", RecordsStage: "3"}, -1, -1, 7},
		{"a record nobody said of what", winter.Logger{Channel: "stage 3"}, -1, -1, 7},
		{"a record whose rows name the fan", winter.Logger{Channel: "Fan 7", RecordsStage: "7"}, -1, -1, 8},
		{"no such channel", winter.Logger{Channel: "attic"}, -1, -1, -1},
	} {
		p := pick(c.logger, export)
		for i, got := range []*importers.Series{p.temp, p.relHum, p.state} {
			want := []int{c.temp, c.hum, c.state}[i]
			if want < 0 && got != nil || want >= 0 && got != &export.Series[want] {
				t.Errorf("%s: choice %d is %+v, want column %d", c.what, i, got, want)
			}
		}
	}
}

// A column of an unknown name beside a temperature, 0 and 1 alone: a record where the keeper says so, nothing otherwise, and
// none with a 2 in it.
func TestZeroAndOneAreARecordWhereTheKeeperSaysSo(t *testing.T) {
	for _, c := range []struct {
		values []float64
		want   bool
	}{{[]float64{0, 1, 1, 0}, true}, {[]float64{0, 1, 2, 0}, false}, {[]float64{0, 0, 0, 0}, false}} {
		x := importers.Series{Logger: "shed", Column: "X1", Quantity: importers.Other, FaceMS: []int64{0, 1, 2, 3}, Val: c.values}
		export := &importers.Export{Series: []importers.Series{column("shed", "T", importers.AirTemperature), x}}
		p := pick(winter.Logger{Channel: "X1", RecordsStage: "1"}, export)
		if got := p.state != nil && slices.Equal(p.state.Val, c.values); got != c.want || p.limit != "" {
			t.Errorf("%v: a record %v, want %v, limit %q", c.values, got, c.want, p.limit)
		}
		if p := pick(winter.Logger{Name: "shed"}, export); p.state != nil {
			t.Errorf("%v: taken unasked", c.values)
		}
	}
}

// A fan's current of 0.1 A at rest and 2.5 A at work: 240 hours, of which every third is at work. A logger that
// records a stage reads states from it; half way between the levels is 1.3 A.
func TestAStageIsRecordedByItsCurrent(t *testing.T) {
	var text strings.Builder
	text.WriteString("time,Current (A)\n")
	for i := range 240 {
		amps := 0.1
		if i%3 == 0 {
			amps = 2.5
		}
		fmt.Fprintf(&text, "2026-11-%02d %02d:00:00,%.1f\n", 12+i/24, i%24, amps)
	}
	dir := folder(t, map[string]string{"fan.csv": text.String()})
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Stages: []winter.Stage{{Name: "2", AlwaysOn: true}}, Loggers: []winter.Logger{{Name: "fan", Files: []string{"fan.csv"}, RecordsStage: "2"}}}}}
	result, err := Review(context.Background(), w, Folder(dir), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	state := result.Inputs[0].Loggers[0].State
	on := 0.0
	for _, v := range state.Val {
		on += v
	}
	if state.Len() != 240 || on != 80 {
		t.Errorf("%d readings, %v at work", state.Len(), on)
	}
	if !slices.ContainsFunc(result.Remarks, func(r series.Remark) bool { return r.Code == StateByLimit && r.Args[2] == "1.3 A" }) {
		t.Errorf("%+v", result.Remarks)
	}
}

// A fan on a drive: two hours at rest, one at 25 Hz, one at 50 Hz, over and over. It ran half of the time, and a mains of
// 50 Hz is the lowest the record does not pass.
func TestAStageIsRecordedByItsSpeed(t *testing.T) {
	var text strings.Builder
	text.WriteString("time,Fan speed (Hz)\n")
	for i := range 240 {
		fmt.Fprintf(&text, "2026-11-%02d %02d:00:00,%.1f\n", 12+i/24, i%24, []float64{0, 0, 25, 50}[i%4])
	}
	dir := folder(t, map[string]string{"fan.csv": text.String()})
	w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Stages: []winter.Stage{{Name: "2", AlwaysOn: true}}, Loggers: []winter.Logger{{Name: "fan", Files: []string{"fan.csv"}, RecordsStage: "2"}}}}}
	result, err := Review(context.Background(), w, Folder(dir), nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	l := result.Inputs[0].Loggers[0]
	if !slices.Equal(l.State.Val[:4], []float64{0, 0, 1, 1}) || !slices.Equal(l.Speed.Val[:4], []float64{0, 0, 0.5, 1}) || l.Speed.Len() != 240 {
		t.Errorf("states %v, speeds %v", l.State.Val[:4], l.Speed.Val[:4])
	}
	if !slices.ContainsFunc(result.Remarks, func(r series.Remark) bool { return r.Code == SpeedRead && r.Args[2] == "50 Hz" }) {
		t.Errorf("%+v", result.Remarks)
	}
}

// Light is read where a file has it: in lux, as 0 and 1, or as on and off under a name of light. A column of another
// name that says on and off is no light.
func TestLightIsPicked(t *testing.T) {
	for _, c := range []struct {
		header string
		cells  [3]string
		want   []float64
	}{
		{"Light (lux)", [3]string{"0", "12", "0"}, []float64{0, 12, 0}},
		{"Light", [3]string{"0", "1", "0"}, []float64{0, 1, 0}},
		{"Light", [3]string{"off", "on", "off"}, []float64{0, 1, 0}},
		{"Door", [3]string{"off", "on", "off"}, nil},
	} {
		text := "time,Temperature (°C)," + c.header + "\n"
		for i, cell := range c.cells {
			text += fmt.Sprintf("2026-11-12 %02d:00:00,4.%d,%s\n", i, i, cell)
		}
		dir := folder(t, map[string]string{"one.csv": text})
		w := winter.Winter{Zone: "UTC", Barns: []winter.Barn{{Name: "A", Loggers: []winter.Logger{{Name: "one", Place: "room", Files: []string{"one.csv"}}}}}}
		result, err := Review(context.Background(), w, Folder(dir), nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := result.Inputs[0].Loggers[0].Light.Val; !slices.Equal(got, c.want) {
			t.Errorf("%s %v: %v, want %v", c.header, c.cells, got, c.want)
		}
	}
}
