package plausible_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"

	"thawbook/analysis/plausible"
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

// Hourly weather at three New York airports in 2013 (tidyverse/nycflights13, CC0) holds one reading that is plainly wrong:
// 13.1 °F at one of them on the evening of 8 May, between 55 and 57 °F and with 12.0 °F dew point. It is found,
// and nothing else is in three stations' year, alone or together.
func TestTheOneBadReadingOfAPublicYearIsFound(t *testing.T) {
	stations := airports(t)
	for _, together := range []bool{false, true} {
		for i, s := range stations {
			traces, at := []plausible.Trace{s}, 0
			if together {
				traces, at = stations, i
			}
			found := plausible.NewRoom(traces, series.Curve{}).Findings(at)
			if s.Name != "JFK" {
				if len(found) > 0 {
					t.Errorf("%s, together %v: %+v", s.Name, together, found)
				}
				continue
			}
			if len(found) != 1 || found[0].Code != plausible.Jumping || found[0].Span.From != time.Date(2013, 5, 9, 2, 0, 0, 0, time.UTC).UnixMilli() {
				t.Errorf("%s, together %v: %+v", s.Name, together, found)
			}
		}
	}
	for i := range stations {
		if s, ok := plausible.ClockShift(stations[i].TempC, stations[(i+1)%3].TempC); ok && s.Apart() {
			t.Errorf("all on one clock, suggested %+v", s)
		}
	}
}

// airports are the stations of the file: temperature, printed in °F, and humidity.
func airports(t *testing.T) (out []plausible.Trace) {
	t.Helper()
	file, err := os.Open(filepath.Join(openData, "d01_nyc_asos_2013.csv"))
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
	for _, name := range []string{"EWR", "JFK", "LGA"} {
		var at []int64
		var tempC, relHum []float64
		for _, row := range rows[1:] {
			when, err := time.Parse(time.RFC3339, row[14])
			f, err1 := strconv.ParseFloat(row[5], 64)
			h, err2 := strconv.ParseFloat(row[7], 64)
			if row[0] != name || err != nil || err1 != nil || err2 != nil || len(at) > 0 && when.UnixMilli() <= at[len(at)-1] {
				continue
			}
			at, tempC, relHum = append(at, when.UnixMilli()), append(tempC, (f-32)/1.8), append(relHum, h/100)
		}
		out = append(out, plausible.Trace{Name: name, TempC: curve(t, at, tempC), RelHum: curve(t, at, relHum)})
	}
	return out
}
