package engine

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"thawbook/analysis"
	"thawbook/analysis/series"
)

// logged is the first logger of a barn with a single log, and the remarks' codes.
func logged(t *testing.T, file string) (l analysis.Logger, said []string) {
	t.Helper()
	dir := folder(t, map[string]string{"a.csv": file, "w.toml": strings.Replace(planHead, "UTC", "Europe/London", 1) + planLogger("n", "a.csv", "room")})
	result, err := ReviewFile(context.Background(), dir+"/w.toml", nil)
	if err != nil || len(result.Faults) > 0 {
		t.Fatal(err, result.Faults)
	}
	for _, r := range result.Remarks {
		said = append(said, r.Code)
	}
	return result.Inputs[0].Loggers[0], said
}

// logRows are a log's rows from an instant on, minutes apart.
func logRows(from string, n int, minutes time.Duration) string {
	at, err := time.Parse("2006-01-02 15:04", from)
	if err != nil {
		panic(err)
	}
	var out strings.Builder
	for i := range n {
		fmt.Fprintf(&out, "%s,%d.%d\n", at.Add(time.Duration(i)*minutes*time.Minute).Format("2006-01-02 15:04"), 3+i%3, i%10)
	}
	return out.String()
}

// What a clock without its time showed is left out, whether it was set late or stopped midway; what was logged in
// another winter is not. Clocks in London stood an hour ahead all through 1970: that is no matter either.
func TestAClockThatLostItsTime(t *testing.T) {
	head, own := "time,temp °C\n", logRows("2025-11-15 10:00", 48, 10)
	for name, c := range map[string]struct {
		file string
		n    int
		lost bool
	}{
		"set late":      {head + logRows("1970-01-01 00:00", 5, 10) + own, 48, true},
		"begun anew":    {head + own + logRows("2000-01-01 00:00", 7, 10), 48, true},
		"two winters":   {head + logRows("2023-11-15 10:00", 5, 10) + own, 53, false},
		"never stopped": {head + own, 48, false},
	} {
		l, said := logged(t, c.file)
		at := l.TempC.Readings.At
		if len(at) != c.n || slices.Contains(said, ClockLost) != c.lost || at[len(at)-1] != utc(t, "2025-11-15 17:50") {
			t.Errorf("%s: %d readings, the last at %s, %v", name, len(at), time.UnixMilli(at[len(at)-1]).UTC(), said)
		}
	}
}

// A reading every ten seconds, begun at 12:00:40, its times without seconds: they are ten seconds apart again.
func TestMinutesThatComeSixTimes(t *testing.T) {
	var file strings.Builder
	file.WriteString("time,temp °C\n")
	at := time.Date(2025, 11, 15, 12, 0, 40, 0, time.UTC)
	for i := range 600 {
		fmt.Fprintf(&file, "%s,%.1f\n", at.Add(time.Duration(i)*10*time.Second).Format("2006-01-02 15:04"), 4+float64(i%4)/10)
	}
	l, said := logged(t, file.String())
	got := l.TempC.Readings
	if got.Len() != 600 || got.At[0] != at.UnixMilli() || got.Interval() != 10_000 || got.At[599]-got.At[0] != 599*10_000 || !slices.Contains(said, SecondsMissing) {
		t.Errorf("%d readings from %s every %d ms, %v", got.Len(), time.UnixMilli(got.At[0]).UTC(), got.Interval(), said)
	}
	for name, file := range map[string]string{
		"rows three times over": "time,temp °C\n" + tripled(logRows("2025-11-15 10:00", 60, 1), false),
		"minutes far apart":     "time,temp °C\n" + tripled(logRows("2025-11-15 10:00", 60, 10), true),
	} {
		if l, said := logged(t, file); l.TempC.Len() != 60 || slices.Contains(said, SecondsMissing) {
			t.Errorf("%s: %d readings, %v", name, l.TempC.Len(), said)
		}
	}
}

// tripled has every row three times, with other values if so asked.
func tripled(rows string, otherwise bool) string {
	var out strings.Builder
	for _, row := range strings.SplitAfter(rows, "\n") {
		out.WriteString(row + row)
		if otherwise && row != "" {
			row = strings.TrimSuffix(row, "\n") + "5\n"
		}
		out.WriteString(row)
	}
	return out.String()
}

// A record of states every minute, give or take some seconds, is sampled; one of events is not.
func TestJitterIsNoListOfEvents(t *testing.T) {
	made := func(steps ...int64) readout {
		r := series.Readings{At: []int64{0}, Val: []float64{0}}
		for i := range 90 {
			r.At, r.Val = append(r.At, r.At[i]+steps[i%len(steps)]), append(r.Val, float64(i%2))
		}
		return readout{readings: r, interval: r.Interval()}
	}
	if isEventList(made(59_000, 60_000, 61_000, 62_000, 58_000)) || isEventList(made(60_000)) {
		t.Error("a sampled record is taken for a list of events")
	}
	if !isEventList(made(60_000, 300_000, 4_000_000, 15_000, 700_000)) {
		t.Error("a list of events is taken for a sampled record")
	}
}

// A fan that ran three times for three hours, weeks apart, has steps that are mostly alike, and every one of them a change;
// readings every three hours that miss a week now and then are no such list.
func TestFewRunsOfLikeLengthAreAListOfEvents(t *testing.T) {
	made := func(val ...float64) readout {
		r := series.Readings{Val: val}
		for i, at := 0, int64(0); i < len(val); i++ {
			r.At = append(r.At, at)
			at += []int64{3 * hourMS, 500 * hourMS}[i%2]
		}
		return readout{readings: r, interval: r.Interval()}
	}
	if !isEventList(made(1, 0, 1, 0, 1, 0)) {
		t.Error("three runs are taken for a sampled record")
	}
	if isEventList(made(1, 0, 0, 0, 1, 0)) || isEventList(made(0.2, 0.8, 0.3, 0.7, 0.4, 0.6)) {
		t.Error("readings with gaps are taken for a list of events")
	}
}
