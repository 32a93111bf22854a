package engine

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"

	"thawbook/analysis/series"
	"thawbook/importers"
)

// A yardstick beside other programs: the job a keeper's script would do with loggers' files, done with the importers and
// the series. For every file hourly means of temperature, humidity and dew point (an hour counts with 30 temperatures),
// degree-hours above 6 and below 2 °C and runs of 30 min and more above 6 °C, both over no gap of more than 10 min, each
// sample holding until the next. It reads the files named after the flags and prints what all came to. The same runs along
// straight lines, which no other program of the comparison finds, are asked for by themselves:
//
//	go test -c -o job ./app/engine && ./job -test.run '^TestJob$' FILE...
//	./job -test.run '^TestJobAlongLines$' FILE...
//
// .ci/bench.sh runs it.

const (
	jobWarmC, jobColdC = 6, 2
	jobGapMS           = 600_000
	jobRunMS           = 1_800_000
	jobLeast           = 30 // temperatures of an hour
)

// outcome is what the job finds, in one file or in all.
type outcome struct {
	rows, valid, hours, runs      int
	temp, relHum, dewPoint        float64 // sums of the hourly means
	warm, cold                    float64 // degree-hours
	runSeconds                    float64
	hour                          int64
	hourTemp, hourRelHum, hourDew float64
	temps, relHums, dews          int
	runFrom, before               int64
	beforeC                       float64
}

func TestJob(t *testing.T) {
	all := outcome{}
	for _, o := range ofFiles(t, func(e *importers.Export) (o outcome) { o.work(e); return o }) {
		all.add(o)
	}
	fmt.Fprintf(os.Stdout, "%d rows, %d valid, %d hours, %d runs of %.0f s by holding, means %.9g °C %.9g %% %.9g °C, degree-hours %.9g and %.9g\n",
		all.rows, all.valid, all.hours, all.runs, all.runSeconds, all.temp, all.relHum, all.dewPoint, all.warm, all.cold)
}

func TestJobAlongLines(t *testing.T) {
	runs, seconds := 0, 0.0
	for _, spans := range ofFiles(t, warmAlongLines) {
		for _, run := range spans {
			runs, seconds = runs+1, seconds+(run.To-run.From)/1000
		}
	}
	fmt.Fprintf(os.Stdout, "%d runs of %.0f s by straight lines\n", runs, seconds)
}

// ofFiles reads the files named after the flags, as the program does, and gives what is found in each.
func ofFiles[T any](t *testing.T, find func(e *importers.Export) T) []T {
	paths := flag.Args()
	if len(paths) == 0 {
		t.Skip("no files are named")
	}
	found := make([]T, len(paths))
	r := reader{source: Folder("")}
	err := each(t.Context(), len(paths), func(i int) {
		f := r.read(t.Context(), paths[i], &meter{})
		if f.Err != nil || f.SHA256 == "" {
			t.Error(f.Name, f.Err)
			return
		}
		found[i] = find(f.Export)
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// warmAlongLines are the runs of the job along the straight lines between the readings.
func warmAlongLines(e *importers.Export) []series.Run {
	i := slices.IndexFunc(e.Series, func(s importers.Series) bool { return s.Quantity == importers.AirTemperature })
	temp := e.Series[i]
	line := series.Curve{Readings: series.Readings{At: temp.FaceMS, Val: temp.Val}, MaxStepMS: jobGapMS}
	whole := series.Span{From: temp.FaceMS[0], To: temp.FaceMS[len(temp.FaceMS)-1] + 1}
	return slices.DeleteFunc(line.Above(whole, jobWarmC), func(run series.Run) bool { return run.To-run.From < jobRunMS })
}

// add sums two outcomes up.
func (o *outcome) add(other outcome) {
	o.rows, o.valid, o.hours = o.rows+other.rows, o.valid+other.valid, o.hours+other.hours
	o.runs, o.runSeconds = o.runs+other.runs, o.runSeconds+other.runSeconds
	o.temp, o.relHum, o.dewPoint = o.temp+other.temp, o.relHum+other.relHum, o.dewPoint+other.dewPoint
	o.warm, o.cold = o.warm+other.warm, o.cold+other.cold
}

// work does the job on a file of one logger.
func (o *outcome) work(e *importers.Export) {
	var temp, relHum importers.Series
	for _, s := range e.Series {
		switch s.Quantity {
		case importers.AirTemperature:
			temp = s
		case importers.RelativeHumidity:
			relHum = s
		}
	}
	o.rows, o.valid, o.runFrom, o.hour = e.Rows, len(temp.Val), math.MinInt64, math.MinInt64
	k := 0
	for i, at := range temp.FaceMS {
		for ; k < len(relHum.FaceMS) && relHum.FaceMS[k] < at; k++ {
			o.sample(relHum.FaceMS[k], math.NaN(), relHum.Val[k])
		}
		humid := math.NaN()
		if k < len(relHum.FaceMS) && relHum.FaceMS[k] == at {
			humid = relHum.Val[k]
			k++
		}
		o.sample(at, temp.Val[i], humid)
		o.hold(at, temp.Val[i])
	}
	for ; k < len(relHum.FaceMS); k++ {
		o.sample(relHum.FaceMS[k], math.NaN(), relHum.Val[k])
	}
	o.endHour(math.MaxInt64)
	o.endRun()
}

// sample adds a row to its hour. The dew point is Magnus's, as the other programs of the comparison reckon it.
func (o *outcome) sample(at int64, tempC, relHum float64) {
	if at >= o.hour+series.HourMS || o.hour == math.MinInt64 {
		o.endHour(at - at%series.HourMS)
	}
	if tempC == tempC {
		o.hourTemp, o.temps = o.hourTemp+tempC, o.temps+1
	}
	if relHum == relHum {
		o.hourRelHum, o.relHums = o.hourRelHum+100*relHum, o.relHums+1
	}
	if tempC == tempC && relHum == relHum {
		l := math.Log(relHum) + 17.62*tempC/(243.12+tempC)
		o.hourDew, o.dews = o.hourDew+243.12*l/(17.62-l), o.dews+1
	}
}

// endHour takes an hour's means in and begins the next.
func (o *outcome) endHour(next int64) {
	if o.temps >= jobLeast {
		o.hours++
		o.temp += o.hourTemp / float64(o.temps)
		if o.relHums > 0 {
			o.relHum += o.hourRelHum / float64(o.relHums)
		}
		if o.dews > 0 {
			o.dewPoint += o.hourDew / float64(o.dews)
		}
	}
	o.hour, o.temps, o.relHums, o.dews = next, 0, 0, 0
	o.hourTemp, o.hourRelHum, o.hourDew = 0, 0, 0
}

// hold has the sample before hold until this one.
func (o *outcome) hold(at int64, tempC float64) {
	near := at-o.before <= jobGapMS && o.before != 0
	if near {
		hours := float64(at-o.before) / series.HourMS
		o.warm += max(o.beforeC-jobWarmC, 0) * hours
		o.cold += max(jobColdC-o.beforeC, 0) * hours
	}
	if o.runFrom != math.MinInt64 && !near {
		o.endRun()
	}
	switch {
	case tempC > jobWarmC && o.runFrom == math.MinInt64:
		o.runFrom = at
	case tempC <= jobWarmC:
		o.endRun()
	}
	o.before, o.beforeC = at, tempC
}

// endRun ends a run with the last sample that was warm.
func (o *outcome) endRun() {
	if o.runFrom != math.MinInt64 && o.before-o.runFrom >= jobRunMS {
		o.runs, o.runSeconds = o.runs+1, o.runSeconds+float64(o.before-o.runFrom)/1000
	}
	o.runFrom = math.MinInt64
}
