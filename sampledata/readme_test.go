package sampledata

import (
	_ "embed"
	"fmt"
	"strings"
	"testing"
)

//go:embed README.md
var readme string

// hasLine fails the test when the README lacks a row of cells.
func hasLine(t *testing.T, cells ...string) {
	t.Helper()
	if line := "| " + strings.Join(cells, " | ") + " |\n"; !strings.Contains(readme, line) {
		t.Errorf("the README lacks %s", line)
	}
}

// airRow is a line of the story tables: what, how it is written, and the figure of a barn.
type airRow struct {
	what, format string
	of           func(b BarnTruth) float64
	rowan        bool // the other barn has no such thing
}

var airRows = []airRow{
	{"hours", "%.0f", func(b BarnTruth) float64 { return b.Hours }, false},
	{"below 2 °C", "%.0f h", func(b BarnTruth) float64 { return b.HoursBelow2 }, false},
	{"2 to 6 °C", "%.0f h", func(b BarnTruth) float64 { return b.HoursIn }, false},
	{"above 6 °C", "%.0f h", func(b BarnTruth) float64 { return b.HoursAbove6 }, false},
	{"above 8 °C", "%.0f h", func(b BarnTruth) float64 { return b.HoursAbove8 }, false},
	{"mean air", "%.2f °C", func(b BarnTruth) float64 { return b.MeanC }, false},
	{"mean relative humidity", "%.1f %%", func(b BarnTruth) float64 { return b.MeanRelHumPct }, false},
	{"below 40 %", "%.0f h", func(b BarnTruth) float64 { return b.HoursRHBelow40 }, false},
	{"above 85 %", "%.0f h", func(b BarnTruth) float64 { return b.HoursRHAbove85 }, false},
}

var richRows = []airRow{
	{"dew on the north wall", "%.0f h", func(b BarnTruth) float64 { return b.Wall.DewHours }, false},
	{"frost on the north wall", "%.0f h", func(b BarnTruth) float64 { return b.Wall.FrostHours }, false},
	{"third stage called for", "%.0f h", func(b BarnTruth) float64 { return stageOf(b, 3).CalledHours }, false},
	{"third stage ran", "%.0f h", func(b BarnTruth) float64 { return stageOf(b, 3).RanHours }, false},
	{"floor loop ran", "%.0f h", func(b BarnTruth) float64 { return heatOf(b, "Floor loop").RanHours }, true},
	{"floor loop against a stage above its own", "%.0f h", func(b BarnTruth) float64 { return heatOf(b, "Floor loop").OverlapHours }, true},
	{"solar loop ran", "%.0f h", func(b BarnTruth) float64 { return heatOf(b, "Solar loop").RanHours }, true},
	{"solar loop against the same", "%.0f h", func(b BarnTruth) float64 { return heatOf(b, "Solar loop").OverlapHours }, true},
	{"without power, first hour's climb", "%.1f K", func(b BarnTruth) float64 { return *cutOf(b).FirstHourK }, false},
	{"then", "%.2f K/h", func(b BarnTruth) float64 { return *cutOf(b).LaterKH }, false},
	{"and came to", "%.1f °C", func(b BarnTruth) float64 { return *cutOf(b).PeakC }, false},
	{"calls due at 8 °C and half an hour", "%.0f", func(b BarnTruth) float64 { return float64(len(alarmOf(b).Due)) }, true},
}

// heatOf is a heat source of a barn; an empty one where there is none of that name.
func heatOf(b BarnTruth, name string) (none HeatTruth) {
	for _, h := range b.Heats {
		if h.Name == name {
			return h
		}
	}
	return none
}

// cutOf is a barn's power cut.
func cutOf(b BarnTruth) (none EventTruth) {
	for _, e := range b.Events {
		if e.Kind == "power cut" {
			return e
		}
	}
	return none
}

// alarmOf is a barn's alarm; one that never called where there is none.
func alarmOf(b BarnTruth) AlarmTruth {
	if b.Alarm == nil {
		return AlarmTruth{}
	}
	return *b.Alarm
}

// The README's story tables say what the truth says; what a barn has not got is a dash.
func TestReadmeTables(t *testing.T) {
	_, truth := demo(t)
	_, poor := thin(t)
	a, r, shed := truth.Barns[0], truth.Barns[1], poor.Barns[0]
	for _, row := range airRows {
		hasLine(t, row.what, fmt.Sprintf(row.format, row.of(a)), fmt.Sprintf(row.format, row.of(r)))
		hasLine(t, row.what, fmt.Sprintf(row.format, row.of(shed)))
	}
	for _, row := range richRows {
		of := fmt.Sprintf(row.format, row.of(a))
		if row.rowan {
			of = "–"
		}
		hasLine(t, row.what, of, fmt.Sprintf(row.format, row.of(r)))
	}
}

// The README's table of faulty records says what the truth says, in the winter's own time.
func TestReadmeFaults(t *testing.T) {
	_, truth := demo(t)
	east, west := truth.Barns[0].Loggers[0], truth.Barns[0].Loggers[1]
	south, north, wall := truth.Barns[1].Loggers[1], truth.Barns[1].Loggers[2], truth.Barns[1].Loggers[3]
	hasLine(t, "two read-outs overlap", "`"+east.Files[0].File+"`, `"+east.Files[1].File+"`", stretch(t, SpanTruth{east.Files[1].First, east.Files[0].Last}))
	hasLine(t, fmt.Sprintf("its clock gains %.0f min", east.ClockGainMin), "the same logger", "all winter")
	hasLine(t, "carried out late, then in the house", "`"+west.Files[0].File+"`", "from "+day(t, west.InHouse[0].Start))
	hasLine(t, "humidity stuck", "`"+south.Files[0].File+"`", stretch(t, *south.Channels[1].Stuck))
	hasLine(t, "31 h of silence", "`"+north.Files[0].File+"`", stretch(t, north.Silent[0]))
	hasLine(t, "clock put forward with summer time", "`rowan-north.csv`", "30 March 03:00")
	if !wall.EmptyBattery {
		t.Error("the wall's battery lasted")
	}
	hasLine(t, "battery empty", "`"+wall.Files[0].File+"`", "from "+day(t, wall.Files[0].Last))
}

// day is an instant of the truth in words, by the lowland's clocks.
func day(t *testing.T, text string) string {
	t.Helper()
	return tallinn.local(parsed(t, text), "2 January 15:04")
}

// stretch is the same of a stretch.
func stretch(t *testing.T, s SpanTruth) string { return day(t, s.Start) + " to " + day(t, s.End) }
