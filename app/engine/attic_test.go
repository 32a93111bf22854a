package engine

import (
	"context"
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
)

// The open data: air in a cold attic, indoors and outdoors at one house in Finland, hourly, UTC+2 all year
// (anssilaukkarinen/trh-1, CC BY 4.0). What the review says of it is checked against sums made here, from
// the file by encoding/csv.
const sharedData = "../../../shared/data"

const atticPlan = `[winter]
name = "An attic"
zone = "+02:00"
[[barn]]
name = "Attic"
bees_in = 2010-11-23
bees_out = 2011-04-15
[[barn.logger]]
name = "attic"
files = ["d06*.csv"]
place = "room"
[[barn.logger]]
name = "indoor"
files = ["d08*.csv"]
place = "other"
[[outdoor]]
name = "outdoor"
files = ["d07*.csv"]
`

// rows are times and values of one column of a file, between bees in and bees out, both included.
func rows(t *testing.T, name, column string) (at []time.Time, val []float64) {
	t.Helper()
	all := cellsOf(t, filepath.Join(sharedData, name))
	c := slices.Index(all[0], column)
	for _, row := range all[1:] {
		if row[0] < "2010-11-23 00:00:00" || row[0] > "2011-04-15 00:00:00" {
			continue
		}
		when, err := time.Parse("2006-01-02 15:04:05", row[0])
		if err != nil {
			t.Fatal(err)
		}
		v, err := strconv.ParseFloat(row[c], 64)
		if err != nil {
			t.Fatal(err)
		}
		at, val = append(at, when), append(val, v)
	}
	return at, val
}

// outside is how many hours the straight lines between hourly values spend above (sign 1) or below (−1) a
// limit, and the area between, in value × hours.
func outside(val []float64, limit, sign float64) (hours, area float64) {
	for i := 1; i < len(val); i++ {
		a, b := sign*(val[i-1]-limit), sign*(val[i]-limit)
		switch {
		case a >= 0 && b >= 0:
			hours, area = hours+1, area+(a+b)/2
		case a > 0 || b > 0:
			part := math.Max(a, b) / math.Abs(a-b)
			hours, area = hours+part, area+part*math.Max(a, b)/2
		}
	}
	return hours, area
}

// cellsOf are the rows of a table, its heads first, by encoding/csv.
func cellsOf(t *testing.T, path string) [][]string {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	all, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// atticReview is the review of a plan of the attic.
func atticReview(t *testing.T, plan string) Result {
	t.Helper()
	if _, err := os.Stat(sharedData); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("the open data is not there: %v", err)
		}
		t.Skipf("the open data is not there: %v", err)
	}
	dir, err := filepath.Abs(sharedData)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "attic.toml")
	text := strings.ReplaceAll(plan, `["d0`, `["`+filepath.ToSlash(dir)+"/d0")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	result, err := ReviewFile(context.Background(), path, nil)
	if err != nil || result.Refused() {
		t.Fatalf("%v, %+v", err, result.Remarks)
	}
	return result
}

// Air below freezing may hold more water than ice would let it: nothing is clamped. The data's own figures: 3,992 of
// the attic's hours below 0 °C, 101 of them above saturation over ice, at most 104.7 %. Saturation here by
// Murphy and Koop 2005, water and ice, apart from the formulas under test; formulas part by some 0.05 %, which
// moves a few hours across the line.
func TestSupersaturationOverIceIsKept(t *testing.T) {
	attic := atticReview(t, atticPlan).Inputs[0].Loggers[0]
	ice := func(k float64) float64 { return math.Exp(9.550426 - 5723.265/k + 3.53068*math.Log(k) - 0.00728332*k) }
	water := func(k float64) float64 {
		return math.Exp(54.842763 - 6763.22/k - 4.210*math.Log(k) + 0.000367*k + math.Tanh(0.0415*(k-218.8))*(53.878-1331.22/k-9.44523*math.Log(k)+0.014025*k))
	}
	cold, over, most := 0, 0, 0.0
	for i, tempC := range attic.TempC.Val {
		if tempC >= 0 {
			continue
		}
		cold++
		overIce := attic.RelHum.Val[i] * water(tempC+273.15) / ice(tempC+273.15)
		if overIce > 1 {
			over++
		}
		most = math.Max(most, overIce)
	}
	if cold != 3992 || over < 98 || over > 104 || math.Abs(100*most-104.7) > 0.05 {
		t.Errorf("%d hours below 0 °C, %d over ice, at most %.2f %%", cold, over, 100*most)
	}
}

func TestTheAtticsWinter(t *testing.T) {
	result := atticReview(t, atticPlan)
	review := result.Barns[0]
	if review.Coverage != 1 {
		t.Errorf("coverage %v, though no hour is missing", review.Coverage)
	}
	for _, c := range []struct{ place, logger, file string }{
		{"room", "attic", "d06_fi_attic_air.csv"},
		{"room", "", "d06_fi_attic_air.csv"},
		{"other", "indoor", "d08_fi_attic_indoor.csv"},
	} {
		at, tempC := rows(t, c.file, "T")
		if hours := at[len(at)-1].Sub(at[0]).Hours(); hours != float64(len(at)-1) {
			t.Fatalf("%s is not hourly: %v h, %d rows", c.file, hours, len(at))
		}
		checkRow(t, rowOf(t, review, "air_temperature", c.place, c.logger), tempC)
		_, relHum := rows(t, c.file, "RH")
		checkRow(t, rowOf(t, review, "relative_humidity", c.place, c.logger), relHum)
	}
	_, outC := rows(t, "d07_fi_attic_outdoor.csv", "Te")
	if out := result.Inputs[0].Loggers[2]; out.Place != "outdoor" || !slices.Equal(out.TempC.Val[:len(outC)], outC) {
		t.Error("the outdoor readings are not those of the file")
	}
}

// rowOf is the row of a quantity over the whole bees' time.
func rowOf(t *testing.T, r analysis.Review, quantity, place, logger string) analysis.QuantityRow {
	t.Helper()
	for _, row := range r.Quantities {
		if row.Quantity == quantity && row.Place == place && row.Logger == logger && row.Phase == "" {
			return row
		}
	}
	t.Fatalf("no row for %s at %s %s", quantity, place, logger)
	return analysis.QuantityRow{}
}

// checkRow holds a row to the values it was made of.
func checkRow(t *testing.T, row analysis.QuantityRow, val []float64) {
	t.Helper()
	what := row.Quantity + " " + row.Place + " " + row.Logger
	near := func(name string, got, want float64) {
		if math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
			t.Errorf("%s: %s is %v, want %v", what, name, got, want)
		}
	}
	area := 0.0
	for i := 1; i < len(val); i++ {
		area += (val[i-1] + val[i]) / 2
	}
	near("hours known", float64(row.KnownMS)/hourMS, float64(len(val)-1))
	near("min", row.Min.Mid, slices.Min(val))
	near("max", row.Max.Mid, slices.Max(val))
	near("mean", row.Mean.Mid, area/float64(len(val)-1))
	if len(row.Bands) == 0 {
		t.Errorf("%s: no bands", what)
	}
	for _, band := range row.Bands {
		above, aboveArea, below, belowArea := 0.0, 0.0, 0.0, 0.0
		if band.High != nil {
			above, aboveArea = outside(val, *band.High, 1)
		}
		if band.Low != nil {
			below, belowArea = outside(val, *band.Low, -1)
		}
		near(band.Name+" hours above", band.HoursAbove, above)
		near(band.Name+" hours below", band.HoursBelow, below)
		near(band.Name+" degree-hours above", band.DegHoursAbove, aboveArea)
		near(band.Name+" degree-hours below", band.DegHoursBelow, belowArea)
		near(band.Name+" hours in all", band.HoursAbove+band.HoursIn+band.HoursBelow, float64(len(val)-1))
	}
}
