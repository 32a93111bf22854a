package sampledata

import (
	_ "embed"
	"fmt"
	"strings"
	"testing"
)

//go:embed README.md
var readme string

// The README's table says what the truth says.
func TestReadmeTable(t *testing.T) {
	_, truth := demo(t)
	a, r := truth.Barns[0], truth.Barns[1]
	for _, row := range []struct {
		what, format string
		a, r         float64
	}{
		{"hours", "%.0f", a.Hours, r.Hours},
		{"below 2 °C", "%.0f h", a.HoursBelow2, r.HoursBelow2},
		{"2 to 6 °C", "%.0f h", a.HoursIn, r.HoursIn},
		{"above 6 °C", "%.0f h", a.HoursAbove6, r.HoursAbove6},
		{"above 8 °C", "%.0f h", a.HoursAbove8, r.HoursAbove8},
		{"mean air", "%.2f °C", a.MeanC, r.MeanC},
		{"mean relative humidity", "%.1f %%", a.MeanRelHumPct, r.MeanRelHumPct},
		{"below 40 %", "%.0f h", a.HoursRHBelow40, r.HoursRHBelow40},
		{"above 85 %", "%.0f h", a.HoursRHAbove85, r.HoursRHAbove85},
		{"dew on the north wall", "%.0f h", a.Wall.DewHours, r.Wall.DewHours},
		{"frost on the north wall", "%.0f h", a.Wall.FrostHours, r.Wall.FrostHours},
		{"third stage called for", "%.0f h", a.Stages[2].CalledHours, r.Stages[2].CalledHours},
		{"third stage ran", "%.0f h", a.Stages[2].RanHours, r.Stages[2].RanHours},
	} {
		line := "| " + row.what + " | " + fmt.Sprintf(row.format, row.a) + " | " + fmt.Sprintf(row.format, row.r) + " |"
		if !strings.Contains(readme, line) {
			t.Errorf("the README lacks %q", line)
		}
	}
}
