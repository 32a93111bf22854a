package importers

import (
	"context"
	"strings"
	"testing"
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
