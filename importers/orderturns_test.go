package importers

import (
	"testing"
	"time"
)

// readOut is rows an hour apart from an instant on, their dates in a form of the standard library's.
func readOut(from time.Time, hours int, form string) (text string, at []int64) {
	for i := range hours {
		t := from.Add(time.Duration(i) * time.Hour)
		text, at = text+t.Format(form)+",4.5\n", append(at, t.UnixMilli())
	}
	return text, at
}

// Two read-outs one below the other, of which the second has day and month the other way round and no day above 12.
func TestOrderTurns(t *testing.T) {
	const byDay, byMonth = "02/01/2006 15:04", "01/02/2006 15:04"
	day := func(month time.Month, d int) time.Time { return time.Date(2025, month, d, 0, 0, 0, 0, time.UTC) }
	for _, c := range []struct {
		name          string
		first, second time.Time
		hours, more   int
		form, turned  string
	}{
		{"one goes on with the other", day(1, 3), day(1, 7), 96, 96, byDay, byMonth},
		{"the month first above", day(1, 3), day(1, 11), 192, 20, byMonth, byDay},
		{"less than a day each", day(1, 3), day(1, 3).Add(20 * time.Hour), 20, 20, byMonth, byDay},
		{"a gap between", day(1, 3), day(2, 3), 96, 96, byDay, byMonth},
		{"a day above 12", day(1, 3), day(2, 3), 14 * 24, 96, byDay, byMonth},
	} {
		text, at := readOut(c.first, c.hours, c.form)
		below, more := readOut(c.second, c.more, c.turned)
		e := readText(t, "Date,Temp °C\n"+text+below)
		if len(e.Questions) > 0 || len(e.Remarks) != 1 || e.Remarks[0].Code != RemarkOrderTurns || e.Remarks[0].Line != 2+c.hours {
			t.Errorf("%s: %v %v", c.name, e.Questions, e.Remarks)
		}
		for i, want := range append(at, more...) {
			if got := e.Series[0].FaceMS[i]; got != want {
				t.Errorf("%s, row %d: %s, want %s", c.name, i, time.UnixMilli(got).UTC(), time.UnixMilli(want).UTC())
				break
			}
		}
	}
}

// A gap of months in one read-out turns no order, and is asked about where nothing tells the order.
func TestAGapTurnsNoOrder(t *testing.T) {
	text, _ := readOut(time.Date(2025, 1, 3, 0, 0, 0, 0, time.UTC), 48, "02/01/2006 15:04")
	below, _ := readOut(time.Date(2025, 3, 5, 0, 0, 0, 0, time.UTC), 96, "02/01/2006 15:04")
	e := readText(t, "Date,Temp °C\n"+text+below)
	if last := e.Series[0].FaceMS[143]; len(e.Remarks) > 0 || last != time.Date(2025, 3, 8, 23, 0, 0, 0, time.UTC).UnixMilli() {
		t.Errorf("%v, last %s", e.Remarks, time.UnixMilli(last).UTC())
	}
}

// Two tables below one another, each of which tells the order of its own dates.
func TestTablesTellTheirOwnOrder(t *testing.T) {
	text, _ := readOut(time.Date(2025, 1, 3, 0, 0, 0, 0, time.UTC), 14*24, "02/01/2006 15:04")
	below, at := readOut(time.Date(2025, 2, 3, 0, 0, 0, 0, time.UTC), 96, "01/02/2006 15:04")
	e := readText(t, "Date,Temp °C\n"+text+"Time,Temperature °C\n"+below)
	if len(e.Series) != 2 || len(e.Questions) > 0 {
		t.Fatalf("%d series, %v", len(e.Series), e.Questions)
	}
	for i, want := range at {
		if got := e.Series[1].FaceMS[i]; got != want {
			t.Fatalf("row %d: %s, want %s", i, time.UnixMilli(got).UTC(), time.UnixMilli(want).UTC())
		}
	}
}
