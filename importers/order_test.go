package importers

import (
	"context"
	"strings"
	"testing"
	"time"
)

// 5 November 2024, day before month as dotted dates are written: read year first, the same cells are dates
// too (24 November 2005, 2006, …) and even evenly spaced, a year apart.
func TestALogThatLeapsByYearsIsReadInTheWrongOrder(t *testing.T) {
	file := "Datum;Zeit;Temperatur (°C)\n05.11.24;23:50;4,1\n06.11.24;00:00;4,2\n06.11.24;24:00;4,3\n07.11.24;00:10;4,2\n"
	e, err := Read(context.Background(), strings.NewReader(file), "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := e.Layout.Clock; got.Order != "dmy" || !got.OrderCertain {
		t.Errorf("order %s, certain %v; want dmy", got.Order, got.OrderCertain)
	}
}

// A spreadsheet that puts the month first takes 11/12/2025, written with the day first, for 12 November, and leaves
// 13/12/2025 as it is. The times are those of the standard library's calendar.
func TestMixedOrders(t *testing.T) {
	text, at := "Date,Temp C\n", time.Date(2025, 11, 1, 0, 0, 0, 0, time.UTC)
	first := at
	for range 2 * 60 {
		form := "2/1/2006 15:04"
		if at.Day() <= 12 {
			form = "1/2/2006 15:04"
		}
		text += at.Format(form) + ",4.5\n"
		at = at.Add(12 * time.Hour)
	}
	e := readText(t, text)
	for i, ms := range e.Series[0].FaceMS {
		if want := first.Add(time.Duration(i) * 12 * time.Hour).UnixMilli(); ms != want {
			t.Fatalf("row %d: %s, want %s", i, time.UnixMilli(ms).UTC(), time.UnixMilli(want).UTC())
		}
	}
	if len(e.Questions) > 0 || len(e.Remarks) != 1 || e.Remarks[0].Code != RemarkMixedOrders {
		t.Errorf("%v %v", e.Questions, e.Remarks)
	}
}
