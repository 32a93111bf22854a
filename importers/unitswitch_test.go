package importers

import (
	"fmt"
	"math"
	"testing"
	"time"
)

// rowsOf are rows of a log, one every ten minutes.
func rowsOf(values ...float64) (rows string) {
	at := time.Date(2026, 1, 13, 10, 0, 0, 0, time.UTC)
	for i, v := range values {
		rows += fmt.Sprintf("%s,%.1f\n", at.Add(time.Duration(i)*10*time.Minute).Format("2006-01-02 15:04"), v)
	}
	return rows
}

// A logger is set from °C to °F and back; the temperatures themselves are 4.0 to 4.9 °C throughout, printed in °F by its
// definition, 1.8 times as many and 32.
func TestUnitSwitches(t *testing.T) {
	var printed, want []float64
	for i := range 90 {
		c := 4 + float64(i%10)/10
		want = append(want, c)
		if i >= 30 && i < 60 {
			c = 1.8*c + 32
		}
		printed = append(printed, c)
	}
	e := readText(t, "time,temp\n"+rowsOf(printed...))
	for i, v := range e.Series[0].Val {
		if math.Abs(v-want[i]) > 0.05 {
			t.Fatalf("row %d: %v, want %v", i, v, want[i])
		}
	}
	if len(e.Questions) > 0 || len(e.Remarks) != 1 || e.Remarks[0].Code != RemarkUnitSwitch || e.Remarks[0].Count != 2 || e.Remarks[0].Line != 32 || e.Remarks[0].LastLine != 62 {
		t.Errorf("%v %+v", e.Questions, e.Remarks)
	}
}

// A logger that is carried from a barn of 4 °C into a house, into a brood nest, or from frost to a stove has leapt by
// itself.
func TestLeapsThatAreNoSwitches(t *testing.T) {
	for from, to := range map[float64]float64{4: 21, 4.5: 35.5, -10: 20} {
		var values []float64
		for i := range 60 {
			v := from
			if i >= 30 {
				v = to
			}
			values = append(values, v+float64(i%3)/10)
		}
		e := readText(t, "time,temp\n"+rowsOf(values...))
		for i, v := range e.Series[0].Val {
			if math.Abs(v-values[i]) > 0.05 {
				t.Fatalf("%v to %v: row %d is %v", from, to, i, v)
			}
		}
	}
}
