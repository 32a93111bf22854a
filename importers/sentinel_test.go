package importers

import (
	"context"
	"fmt"
	"strings"
	"testing"
)

// barnLog is an hourly log of 24 readings between 4.0 and 5.1 °C and 70 to 81 %, with what is printed for the
// sensors in its sixth and its last row.
func barnLog(temp, relHum string) string {
	var b strings.Builder
	b.WriteString("time,temp °C,rh %\n")
	for i := range 24 {
		t, h := fmt.Sprintf("%.1f", 4+float64(i*7%12)/10), fmt.Sprint(70+i*5%12)
		if i == 5 || i == 23 {
			t, h = temp, relHum
		}
		fmt.Fprintf(&b, "2025-11-12 %02d:00,%s,%s\n", i, t, h)
	}
	return b.String()
}

func readText(t *testing.T, file string) *Export {
	t.Helper()
	e, err := Read(context.Background(), strings.NewReader(file), "f.csv", nil)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// The quartiles of the temperatures lie about 0.6 K apart, those of the humidities about 6 %: what is more
// than 12 K or 120 % beyond the readings is far off.
func TestSentinels(t *testing.T) {
	for _, c := range []struct {
		printed      string
		temp, relHum int // how many are missing
	}{
		{"-200", 2, 2}, {"-999", 2, 2}, {"-999.9", 2, 2}, {"-9999", 2, 2}, {"6999", 2, 2}, {"9999", 2, 2}, {"32767", 2, 2}, {"65535", 2, 2}, {"-99.9", 2, 2},
		{"-40", 0, 0}, {"100", 0, 0}, {"-998", 0, 0}, {"-99", 2, 2},
	} {
		e := readText(t, barnLog(c.printed, c.printed))
		for i, want := range []int{c.temp, c.relHum} {
			s := e.Series[i]
			if s.Missing != want || len(s.Val) != 24-want || s.Unreadable != 0 {
				t.Errorf("%s in %s: %d missing, %d read, want %d missing", c.printed, s.Column, s.Missing, len(s.Val), want)
			}
		}
		noted := 0
		for _, r := range e.Remarks {
			if r.Code == RemarkSentinel && r.Count == 2 && r.Line == 7 && r.LastLine == 25 && r.Args[0] == c.printed {
				noted++
			}
		}
		if noted != min(1, c.temp)+min(1, c.relHum) {
			t.Errorf("%s: %+v", c.printed, e.Remarks)
		}
	}
}

// 999 is no reading of a thermometer and may be one of a lamp: among values from 0 to 1,700 it is not isolated.
func TestANumberAmongItsLikeIsNoSentinel(t *testing.T) {
	var b strings.Builder
	b.WriteString("time,light lux\n")
	for i := range 18 {
		fmt.Fprintf(&b, "2025-11-12 %02d:00,%d\n", i, i*100)
	}
	b.WriteString("2025-11-12 18:00,999\n")
	if s := readText(t, b.String()).Series[0]; s.Missing != 0 || len(s.Val) != 19 {
		t.Errorf("%d missing", s.Missing)
	}
}

// What the file names as no reading is none, far off or not.
func TestNamedSentinel(t *testing.T) {
	for _, line := range []string{"# missing value: -9.9\n", "Fehlwert;-9.9\n", "NODATA = -9.9\n"} {
		s := readText(t, line+"time,temp °C\n2025-11-12 10:00,4.5\n2025-11-12 11:00,-9.9\n2025-11-12 12:00,-9.8\n").Series[0]
		if s.Missing != 1 || len(s.Val) != 2 {
			t.Errorf("%q: %d missing, %v", line, s.Missing, s.Val)
		}
	}
}

// A sensor that was never plugged in has no readings.
func TestNothingButSentinels(t *testing.T) {
	s := readText(t, "time,temp °C,probe temp °C\n2025-11-12 10:00,4.5,-200\n2025-11-12 11:00,4.5,-200\n2025-11-12 12:00,4.6,-200\n").Series
	if len(s) != 2 || s[1].Missing != 3 || len(s[1].Val) != 0 || s[0].Missing != 0 {
		t.Errorf("%+v", s)
	}
}

// The value beyond which an instrument can't tell is kept, with a remark.
func TestLimits(t *testing.T) {
	e := readText(t, "time,temp °C,rh %\n2025-11-12 10:00,<0.5,>99\n2025-11-12 11:00,0.7,98\n2025-11-12 12:00,< 0.5,97\n")
	want := `utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n3 m0 u0 2025-11-12T10:00:00..2025-11-12T12:00:00 0.5..0.7
f|rh %|3 relative_humidity percent header n3 m0 u0 2025-11-12T10:00:00..2025-11-12T12:00:00 0.97..0.99
note limit 2:2 x2
note limit 2:3 x1`
	if got := describe(e); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// Thousands are parted where a fraction elsewhere shows the decimal mark, and never in a temperature: there it is a fraction behind the other mark.
func TestThousands(t *testing.T) {
	for _, c := range []struct {
		file string
		want string
	}{
		{"time;light lux;temp °C\n2025-11-12 10:00;1.234,5;4,5\n2025-11-12 11:00;12.345;4,6\n", "[1234.5 12345] [4.5 4.6]"},
		{"time;light lux;temp °C\n2025-11-12 10:00;1,234;4.5\n2025-11-12 11:00;12,345.5;4.6\n", "[1234 12345.5] [4.5 4.6]"},
		{"time;light lux;temp °C\n2025-11-12 10:00;1 234;4.5\n2025-11-12 11:00;12 345;4,625\n2025-11-12 12:00;12 345;4.5\n", "[1234 12345 12345] [4.5 4.625 4.5]"},
		{"time;temp °C\n2025-11-12 10:00;4,250\n2025-11-12 11:00;4,125\n", "[4.25 4.125]"},
	} {
		var got []string
		for _, s := range readText(t, c.file).Series {
			got = append(got, fmt.Sprint(s.Val))
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%q: %v, want %s", c.file, got, c.want)
		}
	}
}
