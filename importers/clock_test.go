package importers

import (
	"bytes"
	"fmt"
	"math/rand"
	"testing"
	"time"
)

// goLayouts pair a date form with the standard library's way to print it.
var goLayouts = []struct {
	pattern string
	order   order
	layout  string
}{
	{"Y-#-#", ymd, "2006-01-02"}, {"Y/#/#", ymd, "2006/1/2"}, {"#.#.Y", dmy, "02.01.2006"}, {"#/#/Y", mdy, "1/2/2006"}, {"#-#-y", dmy, "02-01-06"},
	{"#/#/y", mdy, "01/02/06"}, {"#-#-y", ymd, "06-01-02"}, {"#-b-Y", dmy, "02-Jan-2006"}, {"# b Y", dmy, "2 January 2006"}, {"b #, Y", mdy, "Jan 2, 2006"},
	{"Wb # Y", mdy, "Mon Jan 2 2006"}, {"W# b Y", dmy, "Monday, 2 Jan 2006"}, {"Y22", ymd, "20060102"}, {"22Y", dmy, "02012006"}, {"Y-J", doy, "2006-002"}, {"#bY", dmy, "02Jan2006"},
}

var goTimes = []string{"15:04:05", "15:04", "03:04:05 PM", "3:04 PM", "15.04.05", "150405", "15:04:05.000"}

// Dates are held to the standard library, at random between 1970 and 2068 (where two digits say the year).
func TestDatesAgainstStandardLibrary(t *testing.T) {
	random := rand.New(rand.NewSource(1))
	for _, g := range goLayouts {
		form := formOf(t, g.pattern)
		form.orders = []order{g.order}
		c := &clock{read: readStamp, form: form, columns: []int{0}}
		for range 2000 {
			at := time.UnixMilli(random.Int63n(3124224000) * 1000).UTC()
			layout := goTimes[random.Intn(len(goTimes))]
			cell := at.Format(g.layout + " " + layout)
			want, err := time.Parse(g.layout+" "+layout, cell)
			if err != nil {
				t.Fatal(err)
			}
			got, _, ok := c.read(c, [][]byte{[]byte(cell)})
			if !ok || got != want.UnixMilli() {
				t.Fatalf("%s: %q gives %d %v, want %d", g.pattern, cell, got, ok, want.UnixMilli())
			}
		}
	}
}

func formOf(t *testing.T, pattern string) dateForm {
	t.Helper()
	for _, f := range dateForms {
		if f.pattern == pattern {
			return f
		}
	}
	t.Fatalf("no form %s", pattern)
	return dateForm{}
}

// Every day from 1900 to 2199, against the standard library.
func TestCivilDays(t *testing.T) {
	day := time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC)
	for day.Year() < 2200 {
		ms, ok := dateMS([3]int{day.Year(), int(day.Month()), day.Day()}, ymd)
		if !ok || ms != day.UnixMilli() {
			t.Fatalf("%s: %d %v", day, ms, ok)
		}
		day = day.AddDate(0, 0, 1)
	}
	for _, v := range [][3]int{{2025, 2, 29}, {2100, 2, 29}, {2024, 2, 30}, {2024, 4, 31}, {2024, 0, 1}, {2024, 13, 1}, {2024, 1, 0}} {
		if _, ok := dateMS(v, ymd); ok {
			t.Errorf("%v is taken for a date", v)
		}
	}
}

func TestTimesOfDay(t *testing.T) {
	for in, want := range map[string]string{
		"00:00": "0s", "9:05": "9h5m0s", "24:00": "24h0m0s", "12:00 AM": "0s", "12:30 PM": "12h30m0s", "1:00pm": "13h0m0s", "11:59:59.25 p.m.": "23h59m59.25s",
		"18.00.30": "18h0m30s", "0930": "9h30m0s", "093015": "9h30m15s", "10:00Z": "10h0m0s", "10:00:00+0200": "10h0m0s", "10:00 UTC-5": "10h0m0s", "10:00 CEST": "10h0m0s",
		"10:00:00,5": "10h0m0.5s",
		"":           "", "10": "", "10:": "", "10:6": "", "10:60": "", "24:01": "", "25:00": "", "13:00 AM": "", "10:00 XM": "", "10:00+15:00": "", "10:00:61": "", "-1:00": "",
	} {
		got, ok := parseTime([]byte(in))
		text := time.Duration(got.ms * int64(time.Millisecond)).String()
		if !ok {
			text = ""
		}
		if text != want {
			t.Errorf("%q: %q, want %q", in, text, want)
		}
	}
}

func TestZones(t *testing.T) {
	for in, want := range map[string]string{
		"t_UTC+2": "+02:00", "Date Time, GMT-05:00": "-05:00", "time (UTC)": "+00:00", "UTC time": "+00:00", "Zeit (+01:00)": "+01:00", "Time [UTC+05:30]": "+05:30",
		"Europe/Tallinn": "Europe/Tallinn", "time (Europe/Oslo)": "Europe/Oslo", "Date/Time": "", "time": "", "Outcome": "", "utcx": "", "GMT\u22123": "-03:00",
	} {
		if got := zoneInName(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

// The memory of the last date changes nothing: any sequence of cells reads as each cell does alone.
func TestDateMemory(t *testing.T) {
	cells := []string{"1/2/2026 10:00", "1/2/2026 11:00", "11/2/2026 10:00", "1/12/2026 10:00", "1/1/2026 1:00", "1/1/2026  1:00", "1/1/2026", "1/1/202", "1/2/2026 10", "x"}
	form := formOf(t, "#/#/Y")
	shared := &clock{read: readStamp, form: form, columns: []int{0}}
	random := rand.New(rand.NewSource(1))
	for range 10_000 {
		cell := [][]byte{[]byte(cells[random.Intn(len(cells))])}
		alone := &clock{read: readStamp, form: form, columns: []int{0}}
		got, _, ok := shared.read(shared, cell)
		want, _, wanted := alone.read(alone, cell)
		if ok != wanted || ok && got != want {
			t.Fatalf("%q: %d %v, alone %d %v", cell[0], got, ok, want, wanted)
		}
	}
}

// FuzzClock holds every date form to its promises on any bytes: it stays within the cell, what it accepts is
// a date, and remembering the last date changes nothing.
func FuzzClock(f *testing.F) {
	for _, s := range []string{"2026-01-13T10:00:00+02:00", "13.01.26 18.00", "Jan 5, 2026 3:30 PM", "20260113 2300", "2026-032 10:00", "Monday, 5 Jan 2026 24:00", "1760000000", "2025111223", "202511122350", "20251112:0010", "12 févr. 2026 23:50",
		"12-nov.-2025 8h05", "miércoles, 12 de noviembre de 2025 23:50", "13.11.2025 12 Uhr", "13.11.2025 8:05 Uhr", "12:11:2025 23:50:00", "2025-11-12 23Z", "316.25", "2350", "22.5", "Nov.",
		"13:05 15.11.2025", "Sat Nov 15 13:05:00 CET 2025", "22:00-23:00", "2025. november 15. du. 1:05", "15. november 2025 kl. 13.05", "15.11.2025 (Sa) 13:05 Uhr (MEZ)", "hours since 2025-11-15 UTC", "dd/mm/yyyy hh:mm"} {
		f.Add([]byte(s), []byte(s))
	}
	f.Fuzz(func(t *testing.T, one, two []byte) {
		for _, form := range dateForms {
			shared := &clock{read: readStamp, form: form, columns: []int{0}}
			shared.read(shared, [][]byte{one})
			got, _, ok := shared.read(shared, [][]byte{two})
			alone := &clock{read: readStamp, form: form, columns: []int{0}}
			want, _, wanted := alone.read(alone, [][]byte{two})
			if ok != wanted || ok && got != want {
				t.Errorf("%s: %q after %q: %d %v, alone %d %v", form.pattern, two, one, got, ok, want, wanted)
			}
			if v, n, ok := form.parseDate(one); ok && (n < 1 || n > len(one) || v[0] < 0 || v[0] > 2199) {
				t.Errorf("%s: %q takes %d bytes, %v", form.pattern, one, n, v)
			}
		}
		before := bytes.Clone(one)
		for p := partYear; p <= partHalf; p++ {
			var d dayParts
			if d.set(p, one) && (d.ms < 0 || d.ms > 100*hourMS || d.year < 0 || d.year > 9999 || d.month > 9999 || d.yearDay > 366) {
				t.Errorf("part %d of %q: %+v", p, one, d)
			}
		}
		if ms, end, ok := timeSpan(one); ok && (ms < 0 || ms > dayMS || len(end) >= len(one)) {
			t.Errorf("span %q: %d, %q", one, ms, end)
		}
		if put := turned(nil, one); len(put) > len(one) {
			t.Errorf("%q turned to %q", one, put)
		}
		if offset, ok := parseZone(trim(one)); ok && (offset < -14*hourMS || offset > 14*hourMS) {
			t.Errorf("%q is %d from UTC", one, offset)
		}
		if s, ok := startOf(string(one)); ok && (s.ms < 0 || s.ms > dayMS) {
			t.Errorf("start %q: %+v", one, s)
		}
		parseTime(one)
		zoneInName(string(one))
		zoneInSentence(string(one))
		zoneOfValue("utc", string(one))
		orderInName(string(one))
		countUnit(string(one))
		isMonth(one)
		if !bytes.Equal(one, before) {
			t.Error("the cell was changed")
		}
	})
}

func ExampleRefusal_Error() {
	fmt.Println(&Refusal{Name: "north.csv", Code: RefusedLongLine, Line: 7, Args: []string{"1048576"}})
	// Output: north.csv:7: line too long (1048576)
}
