package series_test

import (
	"math"
	"testing"
	"time"

	"thawbook/analysis/series"
)

const montreal = "d02_montreal_2012.csv"

func TestDailyMontreal(t *testing.T) {
	// pandas 1.5.3 resample("D") of the hourly weather of 2012: plain mean, minimum, maximum and count of
	// the readings, printed to ten digits. With gap limit 0 the curve is the bare readings, as there.
	rows := sharedRows(t, "oracles/pandas_daily_montreal2012.csv")[1:]
	if len(rows) != 366 {
		t.Fatalf("%d days, want 366", len(rows))
	}
	for q, column := range []int{1, 3} { // temperature, relative humidity
		bare := sharedCurve(t, montreal, column, 0)
		lines := bare
		lines.MaxStepMS = hour
		days := series.LocalDays(series.Span{From: whole(bare).From, To: whole(bare).To + 1}, time.UTC)
		bins, lineBins := bare.Bins(days), lines.Bins(days)
		for i, row := range rows {
			b, want := bins[i], row[1+4*q:]
			if b.From != clock(t, row[0]) {
				t.Fatalf("day %d starts at %d", i, b.From)
			}
			near(t, row[0]+" mean", b.Plain(), number(t, want[0]), 5e-9)
			near(t, row[0]+" min", b.Min, number(t, want[1]), 0)
			near(t, row[0]+" max", b.Max, number(t, want[2]), 0)
			near(t, row[0]+" n", float64(b.N), number(t, want[3]), 0)
			// The line goes on to the reading of the next midnight, which takes part in its extremes.
			atEnd := b.Min
			if i+1 < len(rows) {
				atEnd, _ = bare.At(b.To)
			}
			l := lineBins[i]
			near(t, row[0]+" mean, joined", l.Plain(), number(t, want[0]), 5e-9)
			near(t, row[0]+" min of the line", l.Min, min(number(t, want[1]), atEnd), 0)
			near(t, row[0]+" max of the line", l.Max, max(number(t, want[2]), atEnd), 0)
		}
	}
}

func TestThreeHourlyClosedRightMontreal(t *testing.T) {
	// pandas resample("3h", closed="right", label="right"): the cell labelled L is (L-3h, L]. Half-open
	// cells whose origin lies 1 ms later hold the same readings.
	temp, relHum := sharedCurve(t, montreal, 1, hour), sharedCurve(t, montreal, 3, hour)
	rows := sharedRows(t, "oracles/pandas_3h_closedright_montreal2012.csv")[1:]
	s := series.Span{From: clock(t, rows[0][0]) - 3*hour + 1, To: clock(t, rows[len(rows)-1][0]) + 1}
	cells := series.Steps(s, 3*hour, 1)
	if len(cells) != len(rows) {
		t.Fatalf("%d cells, want %d", len(cells), len(rows))
	}
	temps, relHums := temp.Bins(cells), relHum.Bins(cells)
	for i, row := range rows {
		near(t, row[0]+" label", float64(cells[i].To-1), float64(clock(t, row[0])), 0)
		near(t, row[0]+" temperature", temps[i].Plain(), number(t, row[1]), 1e-8)
		near(t, row[0]+" humidity", relHums[i].Plain(), number(t, row[2]), 1e-7)
	}
}

func TestDegreeHours(t *testing.T) {
	// Hourly 7, 9, 11, 8 against 8, by hand: triangles and trapezoids 0.25 + 2 + 1.5 = 3.75 in 2.5 h.
	c := series.Curve{MaxStepMS: hour, Readings: series.Readings{
		At: []int64{0, hour, 2 * hour, 3 * hour}, Val: []float64{7, 9, 11, 8}}}
	o := c.Outside(whole(c), math.Inf(-1), 8)
	near(t, "degree-hours", o.AboveArea/hour, 3.75, 1e-12)
	near(t, "hours", o.AboveMS/hour, 2.5, 1e-12)
	near(t, "below no limit", o.BelowMS+o.BelowArea, 0, 0)

	// Montreal 2012, exact for straight lines between the hourly readings (computed with numpy, four
	// decimals), and the hours of readings below 0 and -10 °C.
	m := sharedCurve(t, montreal, 1, hour)
	o = m.Outside(whole(m), 18, 25)
	near(t, "degree-hours below 18 °C", o.BelowArea/hour, 92625.6342, 5.1e-5)
	near(t, "degree-hours above 25 °C", o.AboveArea/hour, 1453.0814, 5.1e-5)
	near(t, "hours known", float64(o.KnownMS)/hour, 8783, 0)
	below := map[float64]int{}
	for _, v := range m.Val {
		for _, limit := range []float64{0, -10} {
			if v < limit {
				below[limit]++
			}
		}
	}
	for limit, want := range map[float64]int{0: 2164, -10: 494} {
		if below[limit] != want {
			t.Errorf("%d readings below %g °C, want %d", below[limit], limit, want)
		}
	}
}

func TestDifferenceOfTwoLoggers(t *testing.T) {
	// Attic minus outdoor air, 14,257 hours: the differences themselves to two decimals, mean, standard
	// deviation and count by numpy to six.
	attic, outdoor := sharedCurve(t, "d06_fi_attic_air.csv", 1, 2*hour), sharedCurve(t, "d07_fi_attic_outdoor.csv", 1, 2*hour)
	d := series.Zip(attic, outdoor, func(x, y float64) float64 { return x - y })
	rows := sharedRows(t, "oracles/diff_attic_minus_outdoor.txt")
	if d.Len() != 14257 || len(rows) != 14257 {
		t.Fatalf("%d differences and %d in the oracle, want 14257", d.Len(), len(rows))
	}
	squares := 0.0
	b := d.Bin(series.Span{From: whole(d).From, To: whole(d).To + 1})
	for i, v := range d.Val {
		near(t, "difference "+rows[i][0], v, number(t, rows[i][0]), 1e-9)
		squares += (v - b.Plain()) * (v - b.Plain())
	}
	near(t, "mean", b.Plain(), 2.485299, 5.1e-7)
	near(t, "standard deviation", math.Sqrt(squares/float64(d.Len()-1)), 3.947412, 5.1e-7)
	if got := series.ZipAlong(attic, outdoor, func(x, y float64) float64 { return x - y }); got.Len() != d.Len() {
		t.Errorf("along the same instants %d differences, want %d", got.Len(), d.Len())
	}
}
