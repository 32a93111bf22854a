package importers

import (
	"context"
	"strings"
	"testing"
)

// The series of a table with a day in each row and an hour in each column is named by what stands over it, never by the
// column of dates.
func TestHoursBearTheTitleOverThem(t *testing.T) {
	const rows = ",00:00,06:00,12:00,18:00\n2026-01-13,4.5,4.0,5.0,4.2\n2026-01-14,4.4,4.2,5.1,4.3\n2026-01-15,4.3,4.1,5.2,4.4\n"
	for _, c := range []struct{ over, column string }{
		{"Date", ""},
		{"Datum", ""},
		{"Shed north\nDate", "Shed north"},
		{"Winter 2026\nShed north\nDate", "Shed north"},
		{"Shed north", "Shed north"},
		{"Shed north\nTemperature °C\nDate", "Temperature °C"},
	} {
		e, err := Read(context.Background(), strings.NewReader(c.over+rows), "barn.csv", nil)
		if err != nil {
			t.Fatalf("%q: %v", c.over, err)
		}
		if len(e.Series) != 1 || len(e.Series[0].Val) != 12 {
			t.Fatalf("%q: %+v, want one series of 12 readings", c.over, e.Series)
		}
		if s := e.Series[0]; s.Column != c.column || s.Logger != "barn" {
			t.Errorf("%q: logger %q, column %q, want barn and %q", c.over, s.Logger, s.Column, c.column)
		}
	}
}
