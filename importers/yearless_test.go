package importers

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"
)

// A log begun on 30 December without a year, in every print: the row after New Year is of the year after. What
// is wanted is arithmetic on the calendar; 2023 and 2025 have 365 days.
func TestDatesWithoutYear(t *testing.T) {
	for _, c := range []struct{ name, in, order string }{
		{"day first, dots", "Zeit;T °C\n30.12. 23:50;4,5\n01.01. 00:00;4,4\n", "dmy"},
		{"month first, strokes", "time,T °C\n12/30 23:50,4.5\n1/1 00:00,4.4\n", "mdy"},
		{"a time beside the date", "date,time,T °C\n30/12,23:50,4.5\n01/01,00:00,4.4\n", "dmy"},
		{"named months", "time,T °C\n30 Dec 23:50,4.5\n1 Jan 00:00,4.4\n", "dmy"},
		{"named months first", "time,T °C\nDec 30 11:50 PM,4.5\nJan 1 12:00 AM,4.4\n", "mdy"},
		{"parts", "month,day,hour,minute,T °C\n12,30,23,50,4.5\n1,1,0,0,4.4\n", "ymd"},
		{"day of the year", "doy,time,T °C\n364,23:50,4.5\n1,00:00,4.4\n", "doy"},
	} {
		for year := 2023; year <= 2025; year += 2 {
			e, err := Read(context.Background(), strings.NewReader(c.in), "f.csv", Answers{"year": time.Date(year, 1, 1, 0, 0, 0, 0, time.UTC).Format("2006")})
			if err != nil {
				t.Fatalf("%s: %v", c.name, err)
			}
			want := []int64{time.Date(year, 12, 30, 23, 50, 0, 0, time.UTC).UnixMilli(), time.Date(year+1, 1, 1, 0, 0, 0, 0, time.UTC).UnixMilli()}
			if s := e.Series[0]; !slices.Equal(s.FaceMS, want) || e.Layout.Clock.Order != c.order || len(e.Questions) > 0 || len(e.Remarks) > 0 {
				t.Errorf("%s: %v, want %v; order %s, %v %v", c.name, s.FaceMS, want, e.Layout.Clock.Order, e.Questions, e.Remarks)
			}
		}
		if e := readText(t, c.in); len(e.Questions) != 1 || e.Questions[0].ID != "year" || e.BadTime > 0 {
			t.Errorf("%s: %v, %d bad", c.name, e.Questions, e.BadTime)
		}
	}
}

// With the newest row on top the year turns the other way, and the year named is that of the earliest.
func TestDatesWithoutYearNewestFirst(t *testing.T) {
	e, err := Read(context.Background(), strings.NewReader("time,T °C\nJan 1 00:00,4.5\nDec 30 23:50,4.4\n"), "f.csv", Answers{"year": "2025"})
	if err != nil {
		t.Fatal(err)
	}
	want := []int64{time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC).UnixMilli(), time.Date(2025, 12, 30, 23, 50, 0, 0, time.UTC).UnixMilli()}
	if !slices.Equal(e.Series[0].FaceMS, want) {
		t.Errorf("%v, want %v", e.Series[0].FaceMS, want)
	}
}

// The last hour of a year ends in the next.
func TestTheLastHourOfAYearWithoutYear(t *testing.T) {
	e, err := Read(context.Background(), strings.NewReader("Zeit;T °C\n31.12. 23:00;4,5\n31.12. 24:00;4,4\n01.01. 01:00;4,4\n"), "f.csv", Answers{"year": "2025"})
	if err != nil {
		t.Fatal(err)
	}
	end := time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC).UnixMilli()
	if got := e.Series[0].FaceMS; !slices.Equal(got, []int64{end - hourMS, end, end + hourMS}) {
		t.Errorf("%v, want an hour before, at and after %d", got, end)
	}
}

// 2025 has no 29 February: the row is lost, with a remark, and no other.
func TestADayThatTheYearHasNot(t *testing.T) {
	file := "time,T °C\nFeb 28 23:00,4.5\nFeb 29 23:00,4.4\nMar 1 23:00,4.4\n"
	for answer, bad := range map[string]int{"2024": 0, "2025": 1} {
		e, err := Read(context.Background(), strings.NewReader(file), "f.csv", Answers{"year": answer})
		if err != nil || e.BadTime != bad || len(e.Series[0].Val) != 3-bad {
			t.Errorf("%s: %v, %d bad", answer, err, e.BadTime)
		}
	}
}

// Fractions and ratios beside values are no dates.
func TestNoDatesWithoutYear(t *testing.T) {
	for _, file := range []string{"ratio,temp\n1/2,4.5\n1/3,4.6\n", "depth,temp\n12.11,4.5\n12.12,4.6\n", "span,temp\n1-2,4.5\n2-3,4.6\n", "month,day,temp\n12,30,4.5\n12,31,4.6\n"} {
		if e, err := Read(context.Background(), strings.NewReader(file), "f.csv", nil); err == nil {
			t.Errorf("%q is read: %+v", file, e.Layout)
		}
	}
}
