package desk

import (
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// Dates of another year than the record's: the record is not what is missing. Two loggers that print the same mean are
// not told apart.
func TestFirstLookOfDatesOutsideTheRecord(t *testing.T) {
	c := series.Curve{MaxStepMS: 2 * series.HourMS}
	for h := range int64(200) {
		c.Readings.At, c.Val = append(c.Readings.At, h*series.HourMS), append(c.Val, 4)
	}
	said := func(in, out int64) string {
		from, to := in*series.HourMS, out*series.HourMS
		barn := analysis.Input{Zone: time.UTC, BeesIn: &from, BeesOut: &to, PressurePa: 101325, Loggers: []analysis.Logger{
			{Name: "a", Place: "room", TempC: c, TempErrK: 0.5}, {Name: "b", Place: "room", TempC: c, TempErrK: 0.5},
		}}
		return strings.Join(textsOf(FirstLookOf(barn, analysis.Judge(barn), Units{})), "\n")
	}
	if all := said(9000, 9200); !strings.Contains(all, "the room's record lies outside the dates set down") || !strings.Contains(all, "the right year and days") {
		t.Errorf("another year:\n%s", all)
	}
	if all := said(0, 199); !strings.Contains(all, "The loggers in the room all read 4.0 °C on average") || strings.Contains(all, "outside the dates") {
		t.Errorf("the record's own days:\n%s", all)
	}
}
