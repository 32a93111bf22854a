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
// than 12 K or 120 % beyond the readings is far off. No air is colder than −90 °C or warmer than 100 °C, and no humidity is
// below 0 or above 110 %.
func TestSentinels(t *testing.T) {
	for _, c := range []struct {
		printed      string
		temp, relHum int // how many are missing
	}{
		{"-200", 2, 2}, {"-999", 2, 2}, {"-999.9", 2, 2}, {"-9999", 2, 2}, {"6999", 2, 2}, {"9999", 2, 2}, {"32767", 2, 2}, {"65535", 2, 2}, {"-99.9", 2, 2},
		{"-40", 0, 2}, {"100", 2, 0}, {"-998", 2, 2}, {"-99", 2, 2}, {"-90", 0, 2}, {"-90.5", 2, 2}, {"109.5", 2, 0}, {"110.5", 2, 2}, {"7777", 2, 2},
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

// hourly is a log of so many hours of a temperature, which goes from 12 to 20 °C and back in a day, and a humidity of 80 to
// 64 %; where a row has a number of its own, it stands in place of the reading.
func hourly(header string, hours int, temps, hums map[int]string) string {
	var b strings.Builder
	b.WriteString(header + "\n")
	for i := range hours {
		up := min(i%24, 24-i%24) // 0 to 12 and back
		t, h := fmt.Sprintf("%.1f", 12+float64(up)*8/12), fmt.Sprintf("%.1f", 80-float64(up)*16/12)
		if own := temps[i]; own != "" {
			t = own
		}
		if own := hums[i]; own != "" {
			h = own
		}
		fmt.Fprintf(&b, "2025-11-%02d %02d:00,%s,%s\n", 10+i/24, i%24, t, h)
	}
	return b.String()
}

// farOffs hold numbers that are no readings among air that changes by 8 K and 16 % in a day.
var farOffs = []struct{ name, in, want string }{
	{"99.9 for no reading does not make °F of the rest", hourly("date,temp,rh", 72, map[int]string{30: "99.9"}, nil),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n71 m1 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 12..20
f|rh|3 relative_humidity percent values n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..0.8
note sentinel 32:2 x1`},
	{"nor does 100", hourly("date,temp,rh", 72, map[int]string{30: "100"}, nil),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n71 m1 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 12..20
f|rh|3 relative_humidity percent values n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..0.8
note sentinel 32:2 x1`},
	{"nor does what no air has in °F either", hourly("date,temp,rh", 72, map[int]string{30: "1e20", 31: "9.97e36"}, nil),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp|2 air_temperature degC values n70 m2 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 12..20
f|rh|3 relative_humidity percent values n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..0.8
note sentinel 32:2 x2`},
	{"a number far off that may be a reading in °F leaves the unit open", hourly("date,temp,rh", 72, map[int]string{30: "71.3"}, nil),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp|2 air_temperature n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 12..71.3
f|rh|3 relative_humidity percent values n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..0.8
ask temperature_unit [degC degF]`},
	{"numbers that no air has, of both, one remark for each column", hourly("date,temp °C,rh %", 72, map[int]string{5: "-99.9", 30: "-327.68", 50: "7777"}, map[int]string{6: "-200", 31: "-5", 51: "120.5", 60: "150"}),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n69 m3 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 12..20
f|rh %|3 relative_humidity percent header n68 m4 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..0.8
note sentinel 8:3 x4
note sentinel 7:2 x3`},
	{"in °F the limits are those of °F: −126 °F is −88 °C, and −130 °F is −90 °C", hourly("date,temp °F,rh %", 72, map[int]string{5: "-131", 30: "-126"}, nil),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp °F|2 air_temperature degF header n71 m1 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 -87.77777777777777..-6.66667
f|rh %|3 relative_humidity percent header n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..0.8
note sentinel 7:2 x1`},
	{"the same number again and again, far from all others", hourly("date,temp °C,rh %", 72, map[int]string{5: "-62.5", 30: "-62.5", 50: "-62.5"}, nil),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n69 m3 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 12..20
f|rh %|3 relative_humidity percent header n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..0.8
note sentinel 7:2 x3`},
	{"air a little beyond saturation, and fractions beside a number that is none", hourly("date,temp °C,rh", 12, nil, map[int]string{0: "0.97", 1: "0.98", 2: "1.0", 3: "0.99", 4: "7777", 5: "0.95", 6: "0.94", 7: "0.93", 8: "0.9", 9: "0.92", 10: "0.96", 11: "0.91"}),
		`utf-8 "," "." line 2 rows 12 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n12 m0 u0 2025-11-10T00:00:00..2025-11-10T11:00:00 12..19.3
f|rh|3 relative_humidity fraction values n11 m1 u0 2025-11-10T00:00:00..2025-11-10T11:00:00 0.9..1
note sentinel 6:3 x1`},
	{"a sensor that prints up to 104.5 %", hourly("date,temp °C,rh %", 72, nil, map[int]string{30: "104.5", 31: "103.0"}),
		`utf-8 "," "." line 2 rows 72 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 12..20
f|rh %|3 relative_humidity percent header n72 m0 u0 2025-11-10T00:00:00..2025-11-12T23:00:00 0.64..1.045`},
	{"what is called a humidity and mostly can't be one", "date,temp °C,hum\n2025-11-10 00:00,4.5,412\n2025-11-10 01:00,4.0,455\n2025-11-10 02:00,3.5,87\n",
		`utf-8 "," "." line 2 rows 3 bad 0 clock [1] ymd
f|temp °C|2 air_temperature degC header n3 m0 u0 2025-11-10T00:00:00..2025-11-10T02:00:00 3.5..4.5
f|hum|3 other n3 m0 u0 2025-11-10T00:00:00..2025-11-10T02:00:00 87..455`},
}

func TestFarOffs(t *testing.T) { checkShapes(t, farOffs) }

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
