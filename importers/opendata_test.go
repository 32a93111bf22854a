package importers

import (
	"context"
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"
)

const openData = "../../shared/data/"

// openDataRow is a row of the answer key that lies beside the open data, by column name.
type openDataRow map[string]string

func (r openDataRow) number(t *testing.T, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func openDataKey(t *testing.T) []openDataRow {
	t.Helper()
	f, err := os.Open(openData + "expected.csv")
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatal("the open data is not beside the project:", err)
		}
		t.Skip("the open data is not beside the project")
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []openDataRow
	for _, record := range all[1:] {
		row := openDataRow{}
		for i, name := range all[0] {
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

// The answer key was made with pandas, a general-purpose library; its means are rounded to four decimals.
func TestOpenData(t *testing.T) {
	for _, want := range openDataKey(t) {
		t.Run(want["file"], func(t *testing.T) {
			e := readOpenData(t, want["file"])
			if float64(e.Rows) != want.number(t, "rows_total") || float64(e.BadTime) != want.number(t, "rows_bad_time") || len(e.Questions) > 0 {
				t.Errorf("%d rows, %d bad, questions %v", e.Rows, e.BadTime, e.Questions)
			}
			temp, relHum := firstOf(e, AirTemperature), firstOf(e, RelativeHumidity)
			checkTimes(t, temp, want)
			checkLevels(t, temp, want, "T", 1)
			checkLevels(t, relHum, want, "RH", 100)
		})
	}
}

func readOpenData(t *testing.T, name string) *Export {
	t.Helper()
	f, err := os.Open(openData + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	e, err := Read(context.Background(), f, name, nil)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func firstOf(e *Export, q Quantity) Series {
	for _, s := range e.Series {
		if s.Quantity == q {
			return s
		}
	}
	return Series{}
}

func checkTimes(t *testing.T, s Series, want openDataRow) {
	t.Helper()
	sum := s.Summary()
	counts := map[string]int{"rows_with_T": sum.Readings, "rows_T_missing": s.Missing, "mode_step_s": int(sum.IntervalMS / 1000), "gaps_gt_1p5_step": sum.Gaps,
		"dup_times": sum.Duplicates, "out_of_order": s.OutOfOrder}
	for column, got := range counts {
		if float64(got) != want.number(t, column) {
			t.Errorf("%s %d, want %s", column, got, want[column])
		}
	}
	for column, ms := range map[string]int64{"first": sum.FirstMS, "last": sum.LastMS} {
		if got := time.UnixMilli(ms).UTC().Format("2006-01-02 15:04:05"); got != want[column] {
			t.Errorf("%s %s, want %s", column, got, want[column])
		}
	}
	if s.Unit != "deg"+want["unit"] {
		t.Errorf("unit %s", s.Unit)
	}
}

func checkLevels(t *testing.T, s Series, want openDataRow, name string, scale float64) {
	t.Helper()
	sum := s.Summary()
	for column, got := range map[string]float64{"_min": sum.Min, "_mean": sum.Mean, "_max": sum.Max} {
		decimals := len(want[name+column]) - 1 - strings.IndexByte(want[name+column], '.')
		tolerance := 0.5001 * math.Pow10(-min(decimals, 4))
		if column != "_mean" {
			tolerance = 1e-9
		}
		if wanted := want.number(t, name+column); math.Abs(got*scale-wanted) > tolerance {
			t.Errorf("%s%s %v, want %v", name, column, got*scale, wanted)
		}
	}
}

// The airport file interleaves nothing but stacks three stations and carries both a UTC stamp and split local
// columns; 26,115 rows of three stations are what its publishers say (data notes beside the file).
func TestOpenDataStations(t *testing.T) {
	openDataKey(t)
	e := readOpenData(t, "d01_nyc_asos_2013.csv")
	var loggers []string
	for _, s := range e.Series {
		if s.Quantity == AirTemperature {
			loggers = append(loggers, s.Logger)
			if s.Unit != "degF" || s.OutOfOrder != 0 || !s.Instant {
				t.Errorf("%s: unit %s, %d out of order, instant %v", s.Logger, s.Unit, s.OutOfOrder, s.Instant)
			}
		}
	}
	if e.Rows != 26115 || strings.Join(loggers, " ") != "EWR JFK LGA" {
		t.Errorf("%d rows of %v", e.Rows, loggers)
	}
}
