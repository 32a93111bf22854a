package sampledata

import (
	"bytes"
	"encoding/csv"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// reading is what a test knows of a file's writing, apart from the code that wrote it.
type reading struct {
	file      string
	delimiter rune
	stamp     string // the clock's columns joined by a blank
	first     int    // column of the first value
	head      int    // lines before the data
	zone      string
	rows      int // see TestFilesParse
	fields    int
}

var readings = []reading{
	{"alder-east.csv", ';', "02.01.2006 15:04", 1, 5, "+02:00", 22787, 3},
	{"alder-west.csv", ',', "2006-01-02T15:04:05", 1, 1, "+02:00", 45576, 3},
	{"rowan-control.csv", ',', "2006-01-02T15:04:05", 1, 1, "+02:00", 227938, 2},
	{"rowan-south.txt", '\t', "01/02/2006 03:04:05 PM", 2, 1, "+02:00", 45587, 4},
	{"rowan-north.csv", ',', "2006-01-02 15:04", 2, 2, "Europe/Tallinn", 22607, 4},
	{"rowan-wall.csv", ';', "02.01.2006 15:04", 1, 5, "+02:00", 15195, 3},
	{"rowan-fans.csv", ',', "2006-01-02T15:04:05", 1, 1, "+02:00", 113970, 5},
	{"outdoor.txt", '\t', "01/02/2006 03:04:05 PM", 2, 1, "UTC", 3807, 4},
}

// records are a file's data lines; encoding/csv skips blank lines.
func (r reading) records(t *testing.T, data []byte) [][]string {
	t.Helper()
	in := csv.NewReader(bytes.NewReader(data))
	in.Comma, in.FieldsPerRecord = r.delimiter, -1
	all, err := in.ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", r.file, err)
	}
	return all[r.head:]
}

// instants read a file's clock.
func (r reading) instants(t *testing.T, records [][]string) []int64 {
	t.Helper()
	zone := time.UTC
	switch r.zone {
	case "+02:00":
		zone = time.FixedZone("", 7200)
	case "Europe/Tallinn":
		var err error
		if zone, err = time.LoadLocation(r.zone); err != nil {
			t.Fatal(err)
		}
	}
	from := 0
	if r.delimiter == '\t' {
		from = 1
	}
	out := make([]int64, len(records))
	for i, rec := range records {
		at, err := time.ParseInLocation(r.stamp, strings.Join(rec[from:r.first], " "), zone)
		if err != nil {
			t.Fatalf("%s, data line %d: %v", r.file, i+1, err)
		}
		out[i] = at.UnixMilli()
	}
	return out
}

// loggerTruth finds a file's truth.
func loggerTruth(t *testing.T, truth Truth, file string) LoggerTruth {
	t.Helper()
	all := truth.Outdoor
	for _, b := range truth.Barns {
		all = append(all, b.Loggers...)
	}
	i := slices.IndexFunc(all, func(l LoggerTruth) bool { return l.File == file })
	if i < 0 {
		t.Fatalf("no truth of %s", file)
	}
	return all[i]
}

// Every file parses with encoding/csv, has the rows its interval asks for, and rises in time as its clock says.
// The rows by hand, from 1 November 09:00 to 8 April 15:00 (158 days 6 h = 3798 h; Rowan 16:00, 3799 h; outdoors
// midnight, 3807 h): 3798·6 − 1; 3798·12; 3799·60 − 2; 3799·12 − 1; 3799·6 − 2 less the 185 that fall in the 30 h 50 min
// of silence (04:20 to 11:00 next day); 3799·4 − 1; 3799·30; 3807.
func TestFilesParse(t *testing.T) {
	files, truth := demo(t)
	for _, r := range readings {
		records := r.records(t, files[r.file])
		want := loggerTruth(t, truth, r.file)
		if len(records) != r.rows || want.Rows != r.rows {
			t.Errorf("%s: %d rows, the truth says %d, want %d", r.file, len(records), want.Rows, r.rows)
		}
		at := r.instants(t, records)
		for i := range at {
			if len(records[i]) != r.fields {
				t.Fatalf("%s, data line %d: %d fields, want %d", r.file, i+1, len(records[i]), r.fields)
			}
			if i > 0 && at[i]-at[i-1] != want.IntervalS*secondMS && !(r.file == "rowan-north.csv" && at[i]-at[i-1] == 186*10*minuteMS) {
				t.Fatalf("%s, data line %d: a step of %d s", r.file, i+1, (at[i]-at[i-1])/secondMS)
			}
		}
		if at[0] != parsed(t, want.First) || at[len(at)-1] != parsed(t, want.Last) {
			t.Errorf("%s: from %d to %d, the truth says %s to %s", r.file, at[0], at[len(at)-1], want.First, want.Last)
		}
	}
}

// What the channels say, less their true offsets, averages to what was there during the bees' time: noise and lag
// leave hundredths, resolution nothing. Humidity is clipped at 100 % nowhere in the barns.
func TestReadingsAgreeWithTheTruth(t *testing.T) {
	files, truth := demo(t)
	for _, b := range truth.Barns {
		from, to := parsed(t, b.BeesIn), parsed(t, b.BeesOut)
		for _, l := range b.Loggers {
			r := readings[slices.IndexFunc(readings, func(r reading) bool { return r.file == l.File })]
			records := r.records(t, files[r.file])
			at := r.instants(t, records)
			for k, c := range l.Channels {
				got, missing := average(records, at, r.first+k, from, to, strings.HasPrefix(c.Column, "Temp") && r.delimiter == '\t')
				tolerance := map[string]float64{"air_temperature": 0.02, "surface_temperature": 0.02, "relative_humidity": 0.15, "state": 0.001}[c.Quantity]
				if math.Abs(got-c.Offset-*c.TrueMean) > tolerance+silence(l.File) {
					t.Errorf("%s, %s: mean %.4f less offset %g, want %.4f", l.File, c.Column, got, c.Offset, *c.TrueMean)
				}
				if stage := slices.IndexFunc(b.Stages, func(s StageTruth) bool { return s.Name == c.Column }); stage >= 0 {
					near(t, c.Column+" ran", got*b.Hours, b.Stages[stage].RanHours, 0.005)
				}
				if missing != c.Missing {
					t.Errorf("%s, %s: %d missing, the truth says %d", l.File, c.Column, missing, c.Missing)
				}
			}
		}
	}
}

// silence allows for the hours a logger did not see: 31 of 3568 h, in which the barn was within 2 K (or 20 %) of its
// mean.
func silence(file string) float64 {
	if file == "rowan-north.csv" {
		return 0.02
	}
	return 0
}

// average is a column's mean over a stretch, in °C where it is in °F, and how many of all its values are missing words.
func average(records [][]string, at []int64, column int, from, to int64, fahrenheit bool) (mean float64, missing int) {
	sum, n := 0.0, 0
	for i, rec := range records {
		text := strings.ReplaceAll(rec[column], ",", ".")
		switch text {
		case "n/a", "---":
			missing++
			continue
		case "on", "off":
			text = map[string]string{"on": "1", "off": "0"}[text]
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return math.NaN(), missing
		}
		if fahrenheit {
			v = (v - 32) / 1.8
		}
		if from <= at[i] && at[i] < to {
			sum, n = sum+v, n+1
		}
	}
	return sum / float64(n), missing
}

// What marks each layout, byte for byte.
func TestLayoutMarks(t *testing.T) {
	files, _ := demo(t)
	for file, start := range map[string]string{
		"alder-east.csv":  "\ufeffMeasurement report\r\nLogger;Alder east\r\nInterval;10 min\r\nChannels;2\r\n\r\nDate/time;Temperature (°C);Humidity (%)\r\n01.11.2024 09:10;",
		"alder-west.csv":  "Time,Temperature [°C],Relative humidity [%]\n2024-11-01T09:00:00,",
		"rowan-south.txt": "\"Row\"\t\"Local date and time\"\t\"Temp in °F\"\t\"RH in %\"\r\n1\t11/01/2024 09:05:00 AM\t",
		"rowan-north.csv": "Date,Time,Temperature,Humidity\r\n,,\xb0C,%\r\n2024-11-01,09:20,",
		"rowan-fans.csv":  "Time,Stage 1,Stage 2,Stage 3,Stage 4\n2024-11-01T09:00:00,on,",
	} {
		if !bytes.HasPrefix(files[file], []byte(start)) {
			t.Errorf("%s starts with %q", file, files[file][:len(start)])
		}
	}
	north := string(files["rowan-north.csv"])
	if !strings.Contains(north, "2025-03-30,02:50,") || strings.Contains(north, "2025-03-30,03:") || !strings.Contains(north, "2025-03-30,04:00,") {
		t.Error("rowan-north.csv does not skip the hour its clock skipped")
	}
}

// The control logger, freed of its offset and put through the thermostat's rule, called for about what the truth says:
// its lag of three minutes against the thermostat's one blunts the peaks, so that it misses some.
func TestCalledHoursFollowFromTheControlLogger(t *testing.T) {
	files, truth := demo(t)
	rowan := truth.Barns[1]
	from, to := parsed(t, rowan.BeesIn), parsed(t, rowan.BeesOut)
	r := readings[2]
	records := r.records(t, files[r.file])
	at := r.instants(t, records)
	offset := loggerTruth(t, truth, r.file).Channels[0].Offset
	on, minutes := false, 0
	for i, rec := range records {
		v, err := strconv.ParseFloat(rec[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		switch c := v - offset; {
		case c >= 4.5:
			on = true
		case c <= 3.7:
			on = false
		}
		if on && from <= at[i] && at[i] < to {
			minutes++
		}
	}
	near(t, "hours called for", float64(minutes)/60, rowan.Stages[1].CalledHours, 0.1)
}
