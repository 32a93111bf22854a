package sampledata

import (
	"bytes"
	"encoding/csv"
	"maps"
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
	fast      float64 // what its clock gains, as a share
}

var readings = []reading{
	{"alder-east-midwinter.csv", ';', "02.01.2006 15:04", 1, 5, "+02:00", 10411, 3, 31.0 / (158 * 24 * 60)},
	{"alder-east-spring.csv", ';', "02.01.2006 15:04", 1, 5, "+02:00", 15789, 3, 31.0 / (158 * 24 * 60)},
	{"alder-west.csv", ',', "2006-01-02T15:04:05", 1, 1, "+02:00", 45576, 3, 0},
	{"rowan-control.csv", ',', "2006-01-02T15:04:05", 1, 1, "+02:00", 227938, 2, 0},
	{"rowan-south.txt", '\t', "01/02/2006 03:04:05 PM", 2, 1, "+02:00", 45587, 4, 0},
	{"rowan-north.csv", ',', "2006-01-02 15:04", 2, 2, "Europe/Tallinn", 22607, 4, 0},
	{"rowan-wall.csv", ';', "02.01.2006 15:04", 1, 5, "+02:00", 11598, 3, 0},
	{"rowan-fans.csv", ',', "2006-01-02T15:04:05", 1, 1, "+02:00", 113970, 7, 0},
	{"outdoor.txt", '\t', "01/02/2006 03:04:05 PM", 2, 1, "UTC", 3807, 4, 0},
	{"shed.csv", ',', "1/2/2006 15:04", 1, 1, "-06:00", 8737, 3, 0},
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

// everyFile is what both demos wrote, by name, and every instrument's truth.
func everyFile(t *testing.T) (files map[string][]byte, loggers []LoggerTruth) {
	t.Helper()
	files, truth := demo(t)
	poor, thinTruth := thin(t)
	files = maps.Clone(files)
	files["shed.csv"] = poor["shed.csv"]
	loggers = slices.Clone(truth.Outdoor)
	for _, b := range append(truth.Barns, thinTruth.Barns...) {
		loggers = append(loggers, b.Loggers...)
	}
	return files, loggers
}

// readingOf is what is known of a file.
func readingOf(file string) reading {
	return readings[slices.IndexFunc(readings, func(r reading) bool { return r.file == file })]
}

// clockStart is when the clock that gains was right: as its logger's record began, 1 November 09:10 (+02:00).
var clockStart = time.Date(2024, 11, 1, 7, 10, 0, 0, time.UTC).UnixMilli()

// instants read a file's clock.
func (r reading) instants(t *testing.T, records [][]string) []int64 {
	t.Helper()
	zone := time.UTC
	switch r.zone {
	case "+02:00":
		zone = time.FixedZone("", 7200)
	case "-06:00":
		zone = time.FixedZone("", -21600)
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
		out[i] = clockStart + int64(float64(at.UnixMilli()-clockStart)/(1+r.fast))
	}
	return out
}

// loggerTruth finds a file's truth.
func loggerTruth(t *testing.T, all []LoggerTruth, file string) (LoggerTruth, FileTruth) {
	t.Helper()
	for _, l := range all {
		for _, f := range l.Files {
			if f.File == file {
				return l, f
			}
		}
	}
	t.Fatalf("no truth of %s", file)
	return LoggerTruth{}, FileTruth{}
}

// Every file parses with encoding/csv, has the rows its interval asks for, and rises in time as its clock says.
// The rows by hand, from 1 November 09:00 to 8 April 15:00 (158 days 6 h = 3798 h; Rowan 16:00, 3799 h; outdoors
// midnight, 3807 h): 3798·12; 3799·60 − 2; 3799·12 − 1; 3799·6 − 2 less the 185 that fall in the 30 h 50 min
// of silence (04:20 to 11:00 next day); up to 2 March 04:40 from 09:15 are 173 965 min, of 15 each 11 597.7; 3799·30;
// 3807. The clock that gains 31 min in 158 days makes 104 104.2 min of the 104 090 to its first read-out, 10 410.4 of
// ten; 227 901.0 of the 227 870 to its second, 22 790.1, less the 7002 before 20 December (70 019.5 min). From
// 20 October 19:30 to 20 April 19:30 are 182 days of 48, and one.
func TestFilesParse(t *testing.T) {
	files, loggers := everyFile(t)
	for _, r := range readings {
		records := r.records(t, files[r.file])
		l, want := loggerTruth(t, loggers, r.file)
		if len(records) != r.rows || want.Rows != r.rows {
			t.Errorf("%s: %d rows, the truth says %d, want %d", r.file, len(records), want.Rows, r.rows)
		}
		at := r.instants(t, records)
		for i := range at {
			if len(records[i]) != r.fields {
				t.Fatalf("%s, data line %d: %d fields, want %d", r.file, i+1, len(records[i]), r.fields)
			}
			stepS := 0.0
			if i > 0 {
				stepS = float64(at[i]-at[i-1]) / secondMS * (1 + r.fast)
			}
			if i > 0 && math.Abs(stepS-float64(l.IntervalS)) > 0.01 && !(r.file == "rowan-north.csv" && stepS == 186*600) {
				t.Fatalf("%s, data line %d: a step of %g s", r.file, i+1, stepS)
			}
		}
		// The simulation looks at a clock that gains every ten seconds.
		late := int64(0)
		if r.fast > 0 {
			late = stepS * secondMS
		}
		if first, last := parsed(t, want.First)-at[0], parsed(t, want.Last)-at[len(at)-1]; first < 0 || first > late || last < 0 || last > late {
			t.Errorf("%s: from %d to %d, the truth says %s to %s", r.file, at[0], at[len(at)-1], want.First, want.Last)
		}
	}
}

// What the channels say, less their true offsets, averages to what was there during the bees' time: noise and lag
// leave hundredths, resolution nothing. Humidity is clipped at 100 % nowhere in the barns.
func TestReadingsAgreeWithTheTruth(t *testing.T) {
	files, _ := everyFile(t)
	_, truth := demo(t)
	_, thinTruth := thin(t)
	for _, b := range append(truth.Barns, thinTruth.Barns...) {
		for _, l := range b.Loggers {
			r := readingOf(l.Files[0].File)
			records, at := joined(t, files, l)
			for k, c := range l.Channels {
				fahrenheit := strings.HasPrefix(c.Column, "Temp") && (r.delimiter == '\t' || r.file == "shed.csv")
				got, missing := average(records, at, r.first+k, scoredOf(t, b, c), fahrenheit)
				tolerance := map[string]float64{"air_temperature": 0.02, "surface_temperature": 0.02, "relative_humidity": 0.15, "state": 0.001}[c.Quantity]
				if math.Abs(got-c.Offset-*c.TrueMean) > tolerance {
					t.Errorf("%s, %s: mean %.4f less offset %g, want %.4f", l.Name, c.Column, got, c.Offset, *c.TrueMean)
				}
				if stage := slices.IndexFunc(b.Stages, func(s StageTruth) bool { return s.Name == c.Column }); stage >= 0 {
					near(t, c.Column+" ran", got*b.Hours, b.Stages[stage].RanHours, 0.005)
				}
				if missing != c.Missing {
					t.Errorf("%s, %s: %d missing, the truth says %d", l.Name, c.Column, missing, c.Missing)
				}
			}
		}
	}
}

// scoredOf are the stretches of the bees' time in which a channel was not stuck.
func scoredOf(t *testing.T, b BarnTruth, c ChannelTruth) []span {
	t.Helper()
	from, to := parsed(t, b.BeesIn), parsed(t, b.BeesOut)
	if c.Stuck == nil {
		return []span{{from, to}}
	}
	return []span{{from, parsed(t, c.Stuck.Start)}, {parsed(t, c.Stuck.End), to}}
}

// joined are all lines of a logger: of a later file those after the earlier one's end. What two files both hold says
// the same in both.
func joined(t *testing.T, files map[string][]byte, l LoggerTruth) (records [][]string, at []int64) {
	t.Helper()
	for _, f := range l.Files {
		r := readingOf(f.File)
		more := r.records(t, files[f.File])
		moreAt := r.instants(t, more)
		after := 0
		for ; len(at) > 0 && moreAt[after] <= at[len(at)-1]; after++ {
			if k, _ := slices.BinarySearch(at, moreAt[after]); !slices.Equal(records[k], more[after]) {
				t.Fatalf("%s, data line %d says other than the file before", f.File, after+1)
			}
		}
		if len(at) > 0 && after < 1000 {
			t.Errorf("%s repeats %d lines only", f.File, after)
		}
		records, at = append(records, more[after:]...), append(at, moreAt[after:]...)
	}
	return records, at
}

// average is a column's mean over some stretches, in °C where it is in °F, and how many of all its values are missing words.
func average(records [][]string, at []int64, column int, scored []span, fahrenheit bool) (mean float64, missing int) {
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
		if within(scored, at[i]) {
			sum, n = sum+v, n+1
		}
	}
	return sum / float64(n), missing
}

// What marks each layout, byte for byte.
func TestLayoutMarks(t *testing.T) {
	files, _ := everyFile(t)
	for file, start := range map[string]string{
		"shed.csv":                 "Date and time,Temperature (°F),Humidity (%)\r\n10/20/2024 19:30,",
		"alder-east-midwinter.csv": "\ufeffMeasurement report\r\nLogger;Alder east\r\nInterval;10 min\r\nChannels;2\r\n\r\nDate/time;Temperature (°C);Humidity (%)\r\n01.11.2024 09:10;",
		"alder-west.csv":           "Time,Temperature [°C],Relative humidity [%]\n2024-11-01T09:00:00,",
		"rowan-south.txt":          "\"Row\"\t\"Local date and time\"\t\"Temp in °F\"\t\"RH in %\"\r\n1\t11/01/2024 09:05:00 AM\t",
		"rowan-north.csv":          "Date,Time,Temperature,Humidity\r\n,,\xb0C,%\r\n2024-11-01,09:20,",
		"rowan-fans.csv":           "Time,Stage 1,Stage 2,Stage 3,Stage 4,Floor loop,Solar loop\n2024-11-01T09:00:00,on,",
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

// A channel that is stuck says one thing throughout, and another before and after.
func TestStuckHumidity(t *testing.T) {
	files, truth := demo(t)
	l, _ := loggerTruth(t, truth.Barns[1].Loggers, "rowan-south.txt")
	records, at := joined(t, files, l)
	stuck := l.Channels[1].Stuck
	from, to := parsed(t, stuck.Start), parsed(t, stuck.End)
	said := map[string]int{}
	for i, rec := range records {
		if from <= at[i] && at[i] < to {
			said[rec[3]]++
		}
	}
	if len(said) != 1 || to-from < 9*dayMS {
		t.Errorf("said over %d days: %v", (to-from)/dayMS, said)
	}
}

// The control logger, freed of its offset and put through the thermostat's rule, called for about what the truth says:
// its lag of three minutes against the thermostat's one blunts the peaks, so that it misses some.
func TestCalledHoursFollowFromTheControlLogger(t *testing.T) {
	files, truth := demo(t)
	rowan := truth.Barns[1]
	from, to := parsed(t, rowan.BeesIn), parsed(t, rowan.BeesOut)
	r := readingOf("rowan-control.csv")
	records := r.records(t, files[r.file])
	at := r.instants(t, records)
	control, _ := loggerTruth(t, rowan.Loggers, r.file)
	offset := control.Channels[0].Offset
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
