package plausible_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"thawbook/analysis/series"
)

// The open data: air in a cold attic, in the house below it and outdoors, in Finland, hourly for 594 days
// (anssilaukkarinen/trh-1, CC BY 4.0). The instruments were research-grade, so a finding in it is false.
const openData = "../../../shared/data"

// measured are two columns of a file of the open data: °C and, as 0–1, humidity.
func measured(t *testing.T, name, temp, relHum string) (tempC, humid series.Curve) {
	t.Helper()
	file, err := os.Open(filepath.Join(openData, name))
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("the open data is not there: %v", err)
		}
		t.Skipf("the open data is not there: %v", err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	column := func(name string, scale float64) series.Curve {
		k := slices.Index(rows[0], name)
		var at []int64
		var val []float64
		for _, row := range rows[1:] {
			when, err := time.Parse("2006-01-02 15:04:05", row[0])
			if err != nil {
				t.Fatal(err)
			}
			v, err := strconv.ParseFloat(row[k], 64)
			if err != nil {
				t.Fatal(err)
			}
			at, val = append(at, when.Add(-2*time.Hour).UnixMilli()), append(val, v*scale)
		}
		return curve(t, at, val)
	}
	return column(temp, 1), column(relHum, 0.01)
}

// curve is a line through hourly readings.
func curve(t *testing.T, at []int64, val []float64) series.Curve {
	t.Helper()
	r, err := series.NewReadings(at, val)
	if err != nil {
		t.Fatal(err)
	}
	return series.Curve{Readings: r, MaxStepMS: 2 * series.HourMS}
}
