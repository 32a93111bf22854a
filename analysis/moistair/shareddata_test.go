package moistair_test

import (
	"encoding/csv"
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// readShared reads a CSV file of the reference data that lies beside the repository: the header by
// column name and the rows. Without the data folder the test is skipped, and fails when CI=true.
func readShared(t *testing.T, name string) (column map[string]int, rows [][]string) {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "..", "shared", "data", name))
	if errors.Is(err, fs.ErrNotExist) && os.Getenv("CI") != "true" {
		t.Skip("reference data folder absent")
	}
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment, r.FieldsPerRecord = '#', -1
	if rows, err = r.ReadAll(); err != nil {
		t.Fatal(err)
	}
	column = make(map[string]int)
	for i, title := range rows[0] {
		column[title] = i
	}
	return column, rows[1:]
}

// number is the cell's number, NaN for an empty cell or a word.
func number(cell string) float64 {
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// near fails the test unless got is within tol of want; NaN is near NaN only.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.IsNaN(got) && math.IsNaN(want) {
		return
	}
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %g", what, got, want, tol)
	}
}
