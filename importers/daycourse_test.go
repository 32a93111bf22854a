package importers

import (
	"fmt"
	"strconv"
	"strings"
	"testing"
	"time"
)

// dayCourseFiles have rows of two days under names that say nothing of a time: how the date and the times of day are
// printed, and how many loggers and readings of each are wanted.
var dayCourseFiles = []struct {
	name, header      string
	from, step        int // minutes
	date              func(day int) string
	print             func(minute int) string
	loggers, readings int
	last              string
}{
	{"hours from 0 under no known word", "Datum;Xyz (SEV);T °C", 0, 60, dottedDay, hourAlone, 1, 48, "2025-11-16T23:00:00"},
	{"hours from 1 to 24 in a zone", "Datum;MEZ;T °C", 60, 60, dottedDay, hourAlone, 1, 48, "2025-11-17T00:00:00"},
	{"hours in Croatian", "Datum;Sat;T °C", 60, 60, dottedDay, hourAlone, 1, 48, "2025-11-17T00:00:00"},
	{"three hours from one to the next", "Datum;Xyz;T °C", 0, 180, dottedDay, hourAlone, 1, 16, "2025-11-16T21:00:00"},
	{"hours as numbers with a fraction", "Datum;Xyz;T °C", 0, 60, dottedDay, func(m int) string { return fmt.Sprintf("%d.0", m/60) }, 1, 48, "2025-11-16T23:00:00"},
	{"hours and minutes in one number, a name like a minimum's", "Fecha;HoraMin;T °C", 0, 30, dottedDay, compactTime, 1, 96, "2025-11-16T23:30:00"},
	{"hours and minutes in one number, noughts left out", "Date;Час;T °C", 0, 10, dottedDay, compactTime, 1, 288, "2025-11-16T23:50:00"},
	{"minutes of the day", "date;minute;T °C", 0, 30, dottedDay, strconv.Itoa, 1, 96, "2025-11-16T23:30:00"},
	{"hours beside year, month and day", "year;month;day;Xyz;T °C", 0, 60, func(day int) string { return fmt.Sprintf("2025;11;%d", day) }, hourAlone, 1, 48, "2025-11-16T23:00:00"},
	{"24 hives a day", "Datum;Volk;T °C", 60, 60, dottedDay, hourAlone, 24, 2, "2025-11-16T00:00:00"},
	{"depths in even steps", "Datum;Xyz;T °C", 180, 180, dottedDay, hourAlone, 8, 2, "2025-11-16T00:00:00"},
}

func dottedDay(day int) string { return fmt.Sprintf("%d.11.2025", day) }

func hourAlone(minute int) string { return fmt.Sprint(minute / 60) }

func compactTime(minute int) string { return strconv.Itoa(minute/60*100 + minute%60) }

func TestNumbersThatGoThroughTheDay(t *testing.T) {
	for _, c := range dayCourseFiles {
		var file strings.Builder
		file.WriteString(c.header + "\n")
		for day := 15; day < 17; day++ {
			for minute := c.from; minute < c.from+24*60; minute += c.step {
				fmt.Fprintf(&file, "%s;%s;%d.5\n", c.date(day), c.print(minute), minute/60%7)
			}
		}
		e := readText(t, file.String())
		s := e.Series[0]
		last := time.UnixMilli(s.FaceMS[len(s.FaceMS)-1]).UTC().Format("2006-01-02T15:04:05")
		if len(e.Series) != c.loggers || len(s.FaceMS) != c.readings || last != c.last || e.BadTime > 0 {
			t.Errorf("%s: %d series, the first of %d readings to %s, %d bad", c.name, len(e.Series), len(s.FaceMS), last, e.BadTime)
		}
	}
}

// Three readings a day, at 7, 14 and 21, under words for the hour.
func TestHoursUnderTheirNames(t *testing.T) {
	const want = "dmy - 2025-11-15T07:00:00 2025-11-15T14:00:00 2025-11-15T21:00:00 2025-11-16T07:00:00"
	for _, name := range []string{"Uur", "時", "时", "시", "Saat", "Ura", "Час", "Termin", "Termin (SEV)", "Tími", "Stundas", "Valanda", "hod", "Hourly", "Hour (local)"} {
		if got := clockSays("Datum;" + name + ";T °C\n15.11.2025;7;4,5\n15.11.2025;14;4,4\n15.11.2025;21;4,4\n16.11.2025;7;4,3\n"); got != want {
			t.Errorf("%s: %s", name, got)
		}
	}
	if got := clockSays("Datum;Hour (CET);T °C\n15.11.2025;7;4,5\n15.11.2025;14;4,4\n15.11.2025;21;4,4\n16.11.2025;7;4,3\n"); got != strings.Replace(want, "-", "+01:00", 1) {
		t.Errorf("Hour (CET): %s", got)
	}
}
